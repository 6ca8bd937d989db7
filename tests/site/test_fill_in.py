"""'Fill in from': a reader chooses grass, place and date on a calculator's page, and the fields follow and say where from."""

from collections.abc import Callable

import pytest
from playwright.sync_api import Locator, Page, expect

from generator.files.season_json import as_json
from generator.words.local_words import local_words
from tests.our_book import seasons
from tests.site.reader import Reader

# 8 to 14 October: forty weeks of seven days go before day number 280.
WEEK_OF_12_OCTOBER = 40


def field(page: Page, name: str) -> Locator:
    return page.locator(f"[data-input={name}]")


def typed(page: Page, name: str) -> float:
    return float(field(page, name).locator(".sb-calculator__input").input_value())


def choose(page: Page, **choices: str) -> None:
    details = page.locator("[data-component=fill-in]")
    if details.get_attribute("open") is None:
        details.locator("summary").click()
    for kind, value in choices.items():
        each = details.locator(f"[data-choice={kind}]")
        each.fill(value) if kind in ("date", "until") else each.select_option(value)


@pytest.fixture
def window(reader: Callable[..., Reader]) -> Reader:
    return reader(viewport={"width": 1280, "height": 900})


@pytest.mark.parametrize(("place", "name", "grass"), [("sydney", "Sydney", "couch"), ("chicago", "Chicago", "kentucky-bluegrass")])
def test_the_water_need_of_a_week_is_the_season_s(window: Reader, place: str, name: str, grass: str) -> None:
    page = window.open("calculators/weekly-water-need.html")
    page.evaluate("Swardbook.preferences.set('units', 'metric')")  # As asked for: a place in the United States would bring its own.
    choose(page, grass=grass, place=place, date="2026-10-12")
    evapotranspiration = field(page, "reference_evapotranspiration")
    expect(evapotranspiration.locator(".sb-calculator__from")).to_have_text(f"from {name}, week of {'October 12' if place == 'chicago' else '12 October'}")
    week = as_json(seasons().season(grass, place))["weeks"][WEEK_OF_12_OCTOBER]
    assert week["from"] == "10-08"
    # The season tells the week's sum to a tenth of a millimetre; the field holds a day of it.
    assert typed(page, "reference_evapotranspiration") * 7 == pytest.approx(week["reference_evapotranspiration_mm"], abs=0.1)
    assert typed(page, "rain") == pytest.approx(week["rain_mm"], abs=0.1)
    expect(field(page, "crop_coefficient").locator(".sb-calculator__from")).to_contain_text("season group's crop coefficient")
    need = page.locator("[data-result=need] .sb-calculator__figure").inner_text()
    assert float(need.removesuffix(" mm")) == pytest.approx(week["water_need_mm"], abs=0.3)


def test_what_is_typed_over_is_from_nowhere(window: Reader) -> None:
    page = window.open("calculators/mowing-interval.html")
    choose(page, grass="couch")
    note = field(page, "cut_height").locator(".sb-calculator__from")
    expect(note).to_have_text("from this grass's mowing height")
    assert typed(page, "cut_height") == seasons().book.grasses["couch"].mowing_height.default
    field(page, "cut_height").locator(".sb-calculator__input").fill("40")
    expect(note).to_have_count(0)
    choose(page, place="sydney")  # Fills the growth in, and leaves what was typed.
    expect(field(page, "growth").locator(".sb-calculator__from")).to_contain_text("from Sydney, week of")
    assert typed(page, "cut_height") == 40


def test_a_choice_is_kept_for_the_next_calculator_but_a_link_brings_its_own_figures(window: Reader) -> None:
    page = window.open("calculators/reference-evapotranspiration.html")
    choose(page, place="oxford", date="2026-06-21")
    expect(field(page, "latitude").locator(".sb-calculator__from")).to_have_text("from Oxford, latitude")
    assert typed(page, "day_of_year") == 172  # 151 days to the end of May, and 21.
    page = window.open("calculators/evapotranspiration-of-a-day.html")
    expect(field(page, "latitude").locator(".sb-calculator__from")).to_have_text("from Oxford, latitude")
    # Today stands in the date from the start, and counts.
    expect(field(page, "day_of_year").locator(".sb-calculator__from")).to_contain_text("from the date, ")
    page = window.open("calculators/roof-water.html#v=1&rain=30+mm")
    assert typed(page, "rain") == 30
    expect(page.locator(".sb-calculator__from")).to_have_count(0)


def test_a_product_or_machine_brings_its_own_figures_in_the_reader_s_units(window: Reader) -> None:
    page = window.open("calculators/machine-hours.html")
    page.locator("header [data-units-choice=us]").click()
    id, machine = next(iter(seasons().book.practice.machines.items()))
    choose(page, machine=id)
    expect(field(page, "width").locator(".sb-calculator__from")).to_have_text(f"from {local_words(seasons().book, 'US').told(machine.name)}, working width")
    assert typed(page, "width") == pytest.approx(machine.working_width_m / 0.0254, rel=0.005)
    page = window.open("calculators/split-feed.html")
    offered = page.locator("[data-choice=product] option").all_text_contents()
    products = seasons().book.practice.products
    assert offered == ["None"] + [each.name for each in products.values() if each.full_rate_kg_per_100_m2]
    choose(page, product="starter-feed")
    expect(field(page, "nitrogen_percent").locator(".sb-calculator__from")).to_have_text(f"from {products['starter-feed'].name}, nitrogen")
    assert typed(page, "nitrogen_percent") == products["starter-feed"].nitrogen_percent


def test_degree_days_between_two_dates_are_those_of_a_usual_year(window: Reader) -> None:
    page = window.open("calculators/degree-days-between-dates.html")
    choose(page, grass="couch", place="sydney", date="2026-08-05", until="2026-10-07")
    weeks = as_json(seasons().season("couch", "sydney"))["weeks"]  # Week 31 ends on 5 August, week 40 on 7 October.
    expect(field(page, "count_at_last").locator(".sb-calculator__from")).to_have_text("from Sydney, usual count over 10 °C to 7 October")
    assert typed(page, "count_at_first") == pytest.approx(weeks[30]["growing_degree_days_c"], abs=1)
    assert typed(page, "count_at_last") == pytest.approx(weeks[39]["growing_degree_days_c"], abs=1)
    assert typed(page, "days") == 63


def test_without_scripts_nothing_offers_to_fill_in(reader: Callable[..., Reader]) -> None:
    page = reader(java_script_enabled=False).open("calculators/weekly-water-need.html")
    expect(page.locator("[data-component=fill-in]")).to_be_hidden()
