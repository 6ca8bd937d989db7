"""A practice's colour is held to what the W3C publishes, and gives inks that can be read on every paper of the book.

W3C, Web Content Accessibility Guidelines 2.2: relative luminance, contrast ratio, and success criteria 1.4.3 (4.5:1), 1.4.11 (3:1).
"""

import itertools

import pytest

from generator.book.contrast import contrast, darker_until, lighter_until, luminance, mixed
from generator.book.palette import DARK, LIGHT, PRINTED, TAB_DARK, TAB_LIGHT, accent_on_dark, accent_on_light, accent_printed, falls_short, in_a_tab
from generator.site.frame.ink_style import ink_style

# Eight steps of each part: the corners of the colour cube, greys, and what lies between.
COLOURS = ["#" + "".join(f"{part:02x}" for part in parts) for parts in itertools.product(range(0, 256, 51), repeat=3)]


# Black on white is 21:1 by definition. The greys are those at which text on white passes and fails level AA, as widely published: #767676 is
# the lightest that passes. #0000ff on white by hand: luminance 0.0722, so 1.05 / 0.1222 = 8.59.
@pytest.mark.parametrize(("ink", "paper", "ratio"), [
    ("#000000", "#ffffff", 21), ("#ffffff", "#ffffff", 1), ("#767676", "#ffffff", 4.54), ("#777777", "#ffffff", 4.48), ("#0000ff", "#ffffff", 8.59),
])  # fmt: skip
def test_contrast_is_the_published_one_whichever_is_the_ink(ink: str, paper: str, ratio: float) -> None:
    assert contrast(ink, paper) == pytest.approx(ratio, abs=0.005)
    assert contrast(paper, ink) == contrast(ink, paper)


def test_luminance_goes_from_nought_to_one_by_the_published_weights() -> None:
    assert [luminance(each) for each in ("#000000", "#ff0000", "#00ff00", "#0000ff", "#ffffff")] == pytest.approx([0, 0.2126, 0.7152, 0.0722, 1])


def test_the_nearest_shade_is_the_first_that_is_fit_and_keeps_its_hue() -> None:
    on_white = darker_until("#999999", lambda shade: contrast(shade, "#ffffff") >= 4.5)
    assert on_white == "#767676"  # the published lightest grey
    assert lighter_until("#000000", lambda shade: contrast(shade, "#000000") >= 21) == "#ffffff"
    red = darker_until("#ff0000", lambda shade: contrast(shade, "#ffffff") >= 4.5)
    assert red.endswith("0000") and contrast(red, "#ffffff") >= 4.5 > contrast("#ff0000", "#ffffff")
    assert mixed("#000000", "#ffffff", 0.2) == "#cccccc"


@pytest.mark.parametrize("paper", LIGHT)
def test_a_colour_is_refused_that_falls_short_on_any_paper(paper: str) -> None:
    for colour in COLOURS:
        short = falls_short(colour)
        assert contrast(colour if short is None else short[1], paper) >= 4.5, colour
        assert short is None or short[0] < 4.5


def test_whatever_colour_is_taken_every_page_can_be_read() -> None:
    for given in COLOURS:
        short = falls_short(given)
        colour = short[1] if short else given
        for accent, papers in ((accent_on_light(colour), LIGHT), (accent_on_dark(colour), DARK), (accent_printed(colour), PRINTED)):
            assert min(contrast(accent.ink, paper) for paper in (*papers, accent.tint, accent.on_ink)) >= 4.5, colour
        assert min(contrast(in_a_tab(colour), tab) for tab in (TAB_LIGHT, TAB_DARK)) >= 3, colour


def test_a_dark_page_keeps_the_hue() -> None:
    assert accent_on_dark("#24527a").ink != "#24527a" and accent_on_dark("#ffcc00").ink == "#ffcc00"
    red, green, blue = (int(accent_on_dark("#24527a").ink[at : at + 2], 16) for at in (1, 3, 5))
    assert red < green < blue


def test_a_practice_without_a_colour_keeps_the_books_own() -> None:
    assert "--sb-accent" not in ink_style(None)
    assert ink_style("#24527A").count("--sb-accent: #24527a") == 2  # light and printed
