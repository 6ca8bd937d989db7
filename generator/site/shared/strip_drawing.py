"""What a season strip is drawn of, for the template and for the script that draws a year again.

A pattern is its width, its height and its parts, each a tag, a class and its attributes. Heights of growth are per cent of the strip;
what has no pattern of its own is drawn solid. The first letter of a growth stands for it in a script's data.
"""

from typing import Any

_Part = tuple[str, str, dict[str, float | str]]

PATTERNS: dict[str, tuple[float, float, tuple[_Part, ...]]] = {
    "dormant": (6, 6, (
        ("rect", "straw", {"width": 6, "height": 6}), ("circle", "straw-ink", {"cx": 1.5, "cy": 1.5, "r": 0.9}),
        ("circle", "straw-ink", {"cx": 4.5, "cy": 4.5, "r": 0.9}),
    )),
    "slow": (9, 9, (("rect", "tint", {"width": 9, "height": 9}), ("path", "hatch", {"d": "M-1 1 1 -1M0 9 9 0M8 10 10 8", "stroke-width": 1}))),
    "growing": (4.5, 4.5, (
        ("rect", "tint", {"width": 4.5, "height": 4.5}), ("path", "hatch", {"d": "M-1 1 1 -1M0 4.5 4.5 0M3.5 5.5 5.5 3.5", "stroke-width": 1.5}),
    )),
    "frost": (9, 10, (("path", "crystal", {"d": "M4.5 1V9M1 3 8 7M8 3 1 7"}),)),
    "chance": (9, 10, (("path", "crystal", {"d": "M4.5 3.5V6.5M3.2 4.2 5.8 5.8M5.8 4.2 3.2 5.8"}),)),
    "wet": (10, 6, (("path", "wave", {"d": "M0 3.5Q2.5 0.5 5 3.5T10 3.5"}),)),
    "renovation": (5, 12, (("rect", "ink", {"width": 3.6, "height": 12}),)),
    "overseeding": (6, 6, (("ellipse", "ink", {"cx": 1.8, "cy": 1.6, "rx": 1.5, "ry": 1}), ("ellipse", "ink", {"cx": 4.6, "cy": 4.4, "rx": 1.5, "ry": 1}))),
}
HEIGHTS = {"dormant": 20, "slow": 42, "growing": 70, "peak": 98}
# Of frost what is said where it is unlikely, possible and likely; of wet ground, what is said without it and with it.
# signs: what the key of a strip calls each sign but the growth.
SIGNS = {"frost": "Frost likely", "chance": "Frost possible", "wet": "Often too wet", "renovation": "Renovate", "overseeding": "Overseed"}
WORDS: dict[str, Any] = {
    "signs": SIGNS,
    "growth": {"dormant": "Dormant", "slow": "Slow", "growing": "Growing", "peak": "Peak growth"},
    "frost": ("unlikely", "possible", "likely"), "wet": ("", "often too wet"), "work": {"renovation": "renovate", "overseeding": "overseed"},
}
STRIP = {"patterns": PATTERNS, "heights": HEIGHTS, "words": WORDS}
