"""The papers of the pages, and the inks that a practice's own colour gives on them: light, dark and printed.

The other colours of the book, which mean something (frost, straw, clay, the green of growth), are in the pages' own style.
"""

from typing import NamedTuple

from generator.book.contrast import DRAWING, TEXT_AA, TEXT_AAA, contrast, darker_until, lighter_until, lowest_contrast, mixed


class Papers(NamedTuple):
    """What text stands on: the page, what lies on the page, what is set back in it, and the tints of what means something."""

    paper: str
    leaf: str
    shade: str
    moss_tint: str
    straw_tint: str
    frost_tint: str
    clay_tint: str


class Accent(NamedTuple):
    """A practice's colour as links, buttons and edges; a tint of it to lie under text; and what is written on it."""

    ink: str
    tint: str
    on_ink: str


LIGHT = Papers("#f6f1e3", "#fffcf3", "#ebe4d0", "#dbe4c8", "#f1e2b8", "#d6e4ea", "#f3ddcf")
DARK = Papers("#181a15", "#21241d", "#2b2e26", "#2c3a27", "#3d3420", "#22343f", "#43291e")
PRINTED = Papers("#ffffff", "#ffffff", "#ffffff", "#eef2e4", "#faf4df", "#eaf2f6", "#faf0ea")
# How much of the colour a tint holds: so little that ink and links are read on it.
TINT, TINT_PRINTED = 0.12, 0.08
# What the browser's own tabs may be painted with.
TAB_LIGHT, TAB_DARK = "#ffffff", "#202124"


def falls_short(colour: str) -> tuple[float, str] | None:
    """The least contrast [1] that a colour has on a light page, and the nearest shade that reaches 4.5:1; None for one that does."""
    least = lowest_contrast(colour, LIGHT)
    return None if least >= TEXT_AA else (least, darker_until(colour, lambda shade: lowest_contrast(shade, LIGHT) >= TEXT_AA))


def accent_on_light(colour: str) -> Accent:
    return Accent(colour.lower(), mixed(colour, LIGHT.leaf, TINT), LIGHT.leaf)


def accent_on_dark(colour: str) -> Accent:
    """The same hue, as light as text on a dark page has to be."""
    ink = lighter_until(colour, lambda shade: lowest_contrast(shade, (DARK.paper, DARK.leaf)) >= TEXT_AAA and lowest_contrast(shade, DARK) >= TEXT_AA)
    return Accent(ink, mixed(ink, DARK.leaf, TINT), DARK.paper)


def accent_printed(colour: str) -> Accent:
    return Accent(colour.lower(), mixed(colour, PRINTED.paper, TINT_PRINTED), PRINTED.paper)


def in_a_tab(colour: str) -> str:
    """A shade that can be seen on a light tab of the browser and on a dark one: a drawing, not text."""
    dark_enough = darker_until(colour, lambda shade: contrast(shade, TAB_LIGHT) >= DRAWING)
    return lighter_until(dark_enough, lambda shade: contrast(shade, TAB_DARK) >= DRAWING)
