"""Colours can be read, in the sun and in the dark.

Contrast ratio and its bounds: W3C, Web Content Accessibility Guidelines 2.2, success criteria 1.4.3 (4.5:1), 1.4.6 (7:1)
and 1.4.11 (3:1 for edges of controls and parts of drawings).
"""

import re

import pytest

from generator.book.contrast import contrast
from generator.site.frame.ink_style import ink_style
from generator.site.frame.render import ASSETS

TOKENS = f"{(ASSETS / 'tokens.css').read_text(encoding='utf-8')}\n{ink_style(None)}"
SCREENS = {"light": r':root,\s*\[data-md-color-scheme="default"\] \{(.*?)\}', "dark": r'\n\[data-md-color-scheme="slate"\] \{(.*?)\}'}
PAPERS = ("--sb-paper", "--sb-leaf", "--sb-shade")
PAIRS = [
    *[("--sb-ink", paper, 7) for paper in PAPERS],
    *[("--sb-ink-soft", paper, 7) for paper in ("--sb-paper", "--sb-leaf")],
    *[("--sb-moss", paper, 7) for paper in ("--sb-paper", "--sb-leaf")],
    ("--sb-moss", "--sb-shade", 4.5), ("--sb-ink-soft", "--sb-shade", 4.5), ("--sb-on-moss", "--sb-moss", 7),
    ("--sb-clay", "--sb-paper", 4.5), ("--sb-clay", "--sb-leaf", 4.5), ("--sb-leaf", "--sb-clay", 4.5),
    ("--sb-straw-ink", "--sb-straw-tint", 4.5), ("--sb-ink", "--sb-straw-tint", 7), ("--sb-frost", "--sb-leaf", 4.5),
    ("--sb-rule-strong", "--sb-paper", 3), ("--sb-rule-strong", "--sb-leaf", 3), ("--sb-moss", "--sb-moss-tint", 3),
]


def colours(screen: str) -> dict[str, str]:
    on_screen = re.sub(r"@media print \{[^{]*\{[^}]*\}\s*\}", "", TOKENS)
    return dict(re.findall(r"(--sb-[a-z-]+):\s*(#[0-9a-f]{6})", " ".join(re.findall(SCREENS[screen], on_screen, re.S))))


@pytest.mark.parametrize("screen", SCREENS)
@pytest.mark.parametrize(("ink", "paper", "least"), PAIRS)
def test_ink_can_be_read_on_paper(screen, ink, paper, least):
    known = colours(screen)
    assert contrast(known[ink], known[paper]) >= least


def test_components_take_their_colours_from_the_tokens():
    for path in sorted(ASSETS.parent.glob("parts/*/*.css")):
        bare = path.read_text(encoding="utf-8").split("@media print")[0]
        assert re.findall(r"#[0-9a-fA-F]{3,6}\b|\brgba?\(|\bhsl", bare) == [], path.name


def test_light_and_dark_name_the_same_colours():
    assert colours("light").keys() == colours("dark").keys()
