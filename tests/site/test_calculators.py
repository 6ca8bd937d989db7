"""Calculators on the pages of the book: published examples typed as a reader would, and slips of typing."""

from collections.abc import Callable

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.site.reader import Reader
from tests.slices import first

UNIVERSAL_NONSENSE = ("abc", "-5", "1e999", "")
NEVER_SHOWN = ("NaN", "Infinity", "undefined", "null", "[object")


def entry(page: Page, name: str) -> Locator:
    return page.locator(f"[data-input={name}] .sb-calculator__input")


def figure(page: Page, name: str) -> Locator:
    return page.locator(f"[data-result={name}] .sb-calculator__figure")


def type_into(page: Page, name: str, text: str) -> None:
    entry(page, name).fill("")
    entry(page, name).press_sequentially(text)


def switch_units(page: Page, system: str) -> None:
    page.locator(f"header [data-units-choice={system}]").click()


@pytest.fixture
def window(reader: Callable[..., Reader]) -> Reader:
    return reader(viewport={"width": 1280, "height": 900})


def test_a_pound_of_nitrogen_from_28_3_6(window: Reader) -> None:
    """University of Nebraska-Lincoln, calculating fertiliser: 1 lb N per 1000 ft2 from 28-3-6 is 1 / 0.28 = 3.57 lb per 1000 ft2."""
    page = window.open("calculators/feed-for-nitrogen.html")
    switch_units(page, "us")
    type_into(page, "area", "1000")
    type_into(page, "nitrogen_rate", "1")
    type_into(page, "nitrogen_percent", "28")
    expect(figure(page, "rate")).to_have_text("3.57 lb/1000 ft²")
    expect(figure(page, "product")).to_have_text("3.57 lb")


def test_the_answer_follows_each_key(window: Reader) -> None:
    """2, then 20, then 200 m2 at 1.5 kg/100 m2 are 0.03, 0.3 and 3 kg."""
    page = window.open("calculators/granular-feed.html")
    entry(page, "area").fill("")
    seen = []
    for key in "200":
        entry(page, "area").press(key)
        seen.append(figure(page, "product").inner_text())
    assert seen == ["0.03 kg", "0.3 kg", "3 kg"]


def test_fifteen_catch_cans(window: Reader) -> None:
    """Grabow, NC State: these fifteen cans have a Christiansen's coefficient of 69.1 % and a low-quarter uniformity of 49.6 %."""
    page = window.open("calculators/catch-cans.html")
    type_into(page, "readings", "47 42 45 24 13 26 33 34 27 30 40 44 32 12 12")
    expect(figure(page, "christiansen")).to_have_text("69 %")
    expect(figure(page, "uniformity_low_quarter")).to_have_text("50 %")


@pytest.mark.parametrize("calculator", first(2, ["topdressing-sand", "tank-mix", "granular-feed", "irrigation-run-time", "catch-cans"]))
def test_nonsense_gets_a_sentence_and_never_a_number_that_is_none(window: Reader, calculator: str) -> None:
    page = window.open(f"calculators/{calculator}.html")
    names = page.locator(".sb-calculator__field:visible").evaluate_all("fields => fields.map(field => field.dataset.input)")
    assert names
    for name in names:
        before = entry(page, name).input_value()
        for nonsense in UNIVERSAL_NONSENSE:
            entry(page, name).fill(nonsense)
            problem = page.locator(f"[data-input={name}] .sb-calculator__problem")
            assert problem.is_visible(), f"{name}: {nonsense!r} is taken as it is"
            assert problem.inner_text().endswith((".", "?")), f"{name}: {nonsense!r}"
            shown = page.locator(".sb-calculator").inner_text()
            assert not [word for word in NEVER_SHOWN if word in shown], f"{name}: {nonsense!r}"
        entry(page, name).fill(before)


def test_units_switch_and_come_back(window: Reader) -> None:
    """100 m2 at 1.5 kg/100 m2 are 1.5 kg; 1000 ft2 at 3 lb/1000 ft2 are 3 lb."""
    page = window.open("calculators/granular-feed.html")
    expect(figure(page, "product")).to_have_text("1.5 kg")
    switch_units(page, "us")
    expect(figure(page, "product")).to_have_text("3 lb")
    switch_units(page, "metric")
    expect(figure(page, "product")).to_have_text("1.5 kg")


def test_what_a_reader_typed_is_converted_and_not_lost(window: Reader) -> None:
    """240 m2 / 0.09290304 m2/ft2 (NIST SP 811) = 2583 ft2."""
    page = window.open("calculators/granular-feed.html")
    type_into(page, "area", "240")
    switch_units(page, "us")
    assert entry(page, "area").input_value().replace(",", "").startswith("2583")


def test_a_guide_fills_in_its_grass_and_says_where_from(window: Reader) -> None:
    page = window.open("renovate/kikuyu.html")
    sand = page.locator(".sb-calculator[data-calculator=topdressing-sand]").first
    depth = sand.locator("[data-input=depth]")
    assert depth.locator(".sb-calculator__from").text_content() == "from this grass's topdressing depth"
    shown = depth.get_attribute("data-metric")
    window.open("grasses/kikuyu.html")
    row = page.locator(".sb-facts__row", has_text="Sand in one dressing")
    assert shown and shown in row.inner_text()


def test_two_guides_fill_in_different_figures(window: Reader) -> None:
    """Buffalo runs above ground: it takes a thinner dressing than kikuyu, and its guide must not show kikuyu's."""
    depths = []
    for grass in ("kikuyu", "buffalo"):
        page = window.open(f"renovate/{grass}.html")
        depths.append(float(page.locator(".sb-calculator[data-calculator=topdressing-sand] [data-input=depth]").first.get_attribute("data-metric") or 0))
    assert depths[0] > depths[1] > 0


def test_the_label_rate_is_for_the_reader_to_type(window: Reader) -> None:
    """240 m2 at 30 mL/100 m2 are 72 mL."""
    page = window.open("calculators/tank-mix.html")
    assert entry(page, "label_rate").input_value() == ""
    expect(page.locator(".sb-calculator [data-until-answered]")).to_be_visible()
    type_into(page, "area", "240")
    type_into(page, "label_rate", "30 mL/100 m2")
    expect(figure(page, "product")).to_have_text("72 mL")
    expect(page.locator(".sb-calculator [data-until-answered]")).to_be_hidden()
