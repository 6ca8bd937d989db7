"""How well one colour can be read on another, and shades of a colour that can.

W3C, Web Content Accessibility Guidelines 2.2: relative luminance and contrast ratio as defined there
(https://www.w3.org/TR/WCAG22/#dfn-relative-luminance, #dfn-contrast-ratio); 4.5:1 for text is its success criterion 1.4.3 (level AA),
7:1 its criterion 1.4.6 (AAA), 3:1 for edges of controls and parts of drawings its criterion 1.4.11. Colours are '#rrggbb' in sRGB.
"""

import colorsys
from collections.abc import Callable, Iterable

TEXT_AA, TEXT_AAA, DRAWING = 4.5, 7.0, 3.0
# Shades are tried at steps of lightness finer than two colours of 24 bits differ by.
STEPS = 1000


def luminance(colour: str) -> float:
    """Relative luminance [1]: 0 for black, 1 for white."""
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in _parts(colour))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio [1]: 1 for a colour on itself, 21 for black on white."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def lowest_contrast(ink: str, papers: Iterable[str]) -> float:
    """Of the contrasts that one colour has on each of these."""
    return min(contrast(ink, paper) for paper in papers)


def darker_until(colour: str, fit: Callable[[str], bool]) -> str:
    """The lightest shade of a colour, not lighter than itself, that is fit; black where none is. Hue and saturation stay."""
    return next((each for each in _shades(colour, down=True) if fit(each)), "#000000")


def lighter_until(colour: str, fit: Callable[[str], bool]) -> str:
    """The darkest shade of a colour, not darker than itself, that is fit; white where none is."""
    return next((each for each in _shades(colour, down=False) if fit(each)), "#ffffff")


def mixed(colour: str, paper: str, share: float) -> str:
    """So much of a colour [0 to 1] on a paper, part by part."""
    return _text(share * part + (1 - share) * other for part, other in zip(_parts(colour), _parts(paper), strict=True))


def _shades(colour: str, down: bool) -> Iterable[str]:
    hue, lightness, saturation = colorsys.rgb_to_hls(*_parts(colour))
    yield colour.lower()
    start = int(lightness * STEPS)
    for step in range(start, -1, -1) if down else range(start + 1, STEPS + 1):
        yield _text(colorsys.hls_to_rgb(hue, step / STEPS, saturation))


def _parts(colour: str) -> tuple[float, float, float]:
    red, green, blue = (int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5))
    return red, green, blue


def _text(parts: Iterable[float]) -> str:
    return "#" + "".join(f"{round(255 * part):02x}" for part in parts)
