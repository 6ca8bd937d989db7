"""The year of a lawn: its site and soil redraw it at once, it is taken away as files, and places stand beside places."""

import csv
import gzip
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from icalendar import Calendar
from playwright.sync_api import Page, expect

from generator.site.year.charts import CHARTS, path, series_of
from generator.site.year.site_years import script_path, slots, soil_slots
from generator.site.year.year_words import summary
from tests.our_book import seasons
from tests.pages.shipped_book import pairs
from tests.site.reader import Reader
from tests.slices import every

COUCH = "calendars/canberra/couch.html"
FESCUE = "calendars/atlanta/tall-fescue.html"
LARGEST_BYTES = 15_000  # the promise for a grass and place, compressed
SLOTS = "() => Object.fromEntries([...document.querySelectorAll('[data-slot]')].map(each => [each.dataset.slot, each.textContent]))"


def choose(page: Page, site: str) -> None:
    """A site, until the page says that it shows it: what stood there before may read the same in part."""
    choice = page.locator(f".sb-site-switch input[value={site}]")
    choice.check(force=True)
    name = choice.evaluate("each => each.parentElement.textContent.trim()")
    expect(page.locator(".sb-site-switch__say")).to_have_text("" if site == "open" else re.compile(f"^Shown here: {re.escape(name)}"))


def flat(text: str) -> str:
    """Without white space, which lays out and does not say."""
    return re.sub(r"\s+", "", text)


def words(text: Any) -> str:
    """A text as the page has it, both systems of units in it."""
    if isinstance(text, str):
        return text
    return "".join(each if isinstance(each, str) else f"{each[0]} ({each[1]})" if each[1] and each[1] != each[0] else each[0] for each in text)


def slot_words(slot: dict[str, Any]) -> str:
    """An exact reason, the third of a line, says before it whose it is."""
    rows = slot.get("rows") or [[*line[:2], *(f"Exactly: {line[0]}{words(exact)}" for exact in line[2:])] for line in slot.get("lines", [])] or [[slot["text"]]]
    return flat("".join(words(text) for row in rows for text in row))


def test_the_hub_of_guides_tells_the_dates_of_the_calendar_at_home(site: Path) -> None:
    hub = (site / "renovate/index.html").read_text(encoding="utf-8")
    told = dict(re.findall(r'renovate/([a-z-]+)\.html">[^<]+</a></p>\s*<p class="sb-card__text">Sydney: ([^<]+)\.</p>', hub))
    assert set(told) == set(seasons().book.grasses)
    for grass, dates in told.items():
        calendar = (site / f"calendars/sydney/{grass}.html").read_text(encoding="utf-8")
        assert dates == "no window" or re.search(rf"(Renovate|Overseed) {dates}, best", calendar), grass


def test_the_years_of_all_sites_and_soils_are_small(site: Path) -> None:
    sizes = {each: len(gzip.compress((site / script_path(*each)).read_bytes())) for each in pairs()}
    assert {each: size for each, size in sizes.items() if size > LARGEST_BYTES} == {}


LIES = ("wall", "hollow", "shade", "exposed", "open")


def in_the_book_s_words(page: Page) -> None:
    """Also a page of a place whose people say otherwise."""
    page.evaluate("Swardbook.preferences.set('country', 'AU')")


@pytest.mark.parametrize(("calendar", "lies"), every(4, [(calendar, lies) for calendar in (COUCH, FESCUE) for lies in LIES]))
def test_a_site_shows_its_own_year_at_once(reader: Callable[..., Reader], calendar: str, lies: str) -> None:
    """Texts, rows and drawings against the engine's own year of that site; 'open' comes back after another was shown."""
    _, place, grass = calendar.removesuffix(".html").split("/")
    page = reader().open(calendar)
    in_the_book_s_words(page)
    choose(page, "hollow" if lies == "open" else "open")
    choose(page, lies)
    season = seasons().season(grass, place, lies)
    expect(page.locator("[data-slot=summary]")).to_have_text(summary(season))
    shown = page.evaluate(SLOTS)
    soil = next(iter(seasons().rules.soils.values()))
    for id, slot in {**slots(season), **soil_slots(seasons(), season, soil)}.items():
        assert flat(shown[id]) == slot_words(slot), id
    series = series_of(season)
    for chart in CHARTS:
        drawn = page.locator(f"#chart-{chart.id} [data-series]").evaluate_all("each => each.map(shape => shape.getAttribute('d'))")
        assert drawn == [path(shape.kind, [series[name] for name in shape.series]) for shape in chart.shapes]


def test_the_strip_of_a_site_has_its_frost_windows_and_key(reader: Callable[..., Reader]) -> None:
    page = reader().open(COUCH)
    strip = page.locator("#year")
    key = strip.locator("[data-key=renovation]")
    before = key.inner_text()
    words_before = strip.locator("table").inner_text()
    choose(page, "hollow")
    expect(key).not_to_have_text(before)
    season = seasons().season("couch", "canberra", "hollow")
    assert key.inner_text().split(": ")[1] in summary(season)
    frosty = sum(week.frosty or week.frost_possible for week in season.weeks)
    widths = strip.locator(".sb-season-strip__frost > svg").evaluate_all("each => each.map(piece => parseFloat(piece.getAttribute('width')))")
    assert sum(widths) == pytest.approx(100 * frosty / 52, abs=0.01)
    choose(page, "open")
    expect(key).to_have_text(before)
    assert strip.locator("table").inner_text() == words_before


def test_a_site_is_remembered_on_the_next_calendar_and_said_in_words(reader: Callable[..., Reader]) -> None:
    window = reader()
    page = window.open(COUCH)
    choose(page, "hollow")
    page = window.open("calendars/sydney/couch.html")
    expect(page.locator(".sb-site-switch__say")).to_contain_text("Low hollow")
    expect(page.locator("[data-slot=summary]")).to_have_text(summary(seasons().season("couch", "sydney", "hollow")))
    assert page.locator(".sb-site-switch input[value=hollow]").is_checked()


def test_a_soil_changes_water_and_feed_and_is_remembered(reader: Callable[..., Reader]) -> None:
    window = reader()
    page = window.open(COUCH)
    loam = page.locator("[data-slot=watering]").inner_text()
    page.get_by_label("Soil", exact=True).select_option("sand")
    expect(page.locator("[data-slot=watering]")).to_contain_text("Sand holds")
    assert page.locator("[data-slot=watering]").inner_text() != loam
    page.reload()
    expect(page.locator("[data-slot=watering]")).to_contain_text("Sand holds")


def test_a_switch_needs_no_mouse(reader: Callable[..., Reader]) -> None:
    page = reader().open(COUCH)
    page.locator(".sb-site-switch input[value=open]").focus()
    page.keyboard.press("ArrowRight")
    expect(page.locator(".sb-site-switch__say")).to_contain_text("By paving or a sunny wall")


def test_us_units_change_the_scales_and_the_figures(reader: Callable[..., Reader]) -> None:
    page = reader().open(COUCH)
    labels = page.locator("#chart-temperature .sb-year-chart__label:visible")
    assert labels.count() >= 2 and all(label.endswith("°C") for label in labels.all_text_contents())
    page.locator("header [data-units-choice=us]").click()
    assert labels.count() >= 2 and all(label.endswith("°F") for label in labels.all_text_contents())
    choose(page, "shade")
    expect(page.locator("[data-slot=chart-temperature] .sb-quantity__us").first).to_be_visible()
    expect(page.locator("[data-slot=chart-temperature] .sb-quantity__metric").first).to_be_hidden()


def test_each_chart_has_a_name_a_sentence_and_its_numbers_in_a_table(reader: Callable[..., Reader]) -> None:
    page = reader().open(COUCH)
    for chart in CHARTS:
        expect(page.get_by_role("img", name=re.compile(f"^{chart.title}.+[0-9]"))).to_have_count(1)
    page.get_by_text("The charts as a table").click()
    table = page.get_by_role("region", name=re.compile("^The charts as a table")).locator("tbody tr")
    expect(table).to_have_count(12)


def test_without_scripts_sites_and_soils_stand_in_tables(reader: Callable[..., Reader]) -> None:
    page = reader(java_script_enabled=False).open(COUCH)
    expect(page.locator(".sb-site-switch")).to_be_hidden()
    expect(page.get_by_label("Soil", exact=True)).to_be_hidden()
    assert page.get_by_role("region", name="Windows by site").locator("tbody tr").count() == 5
    assert page.get_by_role("region", name=re.compile("^Watering by soil")).locator("tbody tr").count() == 4
    expect(page.get_by_text("The figures below are for loam")).to_be_visible()
    expect(page.locator("#chart-water")).to_be_visible()


def test_a_copy_without_the_years_says_so(reader: Callable[..., Reader]) -> None:
    window = reader()
    window.context.route("**/assets/years/*.js", lambda route: route.abort())
    page = window.open(COUCH)
    page.locator(".sb-site-switch input[value=shade]").check(force=True)
    expect(page.locator(".sb-site-switch__say")).to_have_text("This copy of the book does not have the years of other sites.")
    window.wrong = [wrong for wrong in window.wrong if "ERR_FAILED" not in wrong]


def test_the_page_says_how_evapotranspiration_was_worked_out(reader: Callable[..., Reader]) -> None:
    window = reader()
    assert "Hargreaves and Samani" in window.open(COUCH).locator(".sb-year-parts").inner_text()
    assert "FAO-56 Penman-Monteith" in window.open("calendars/sydney/couch.html").locator(".sb-year-parts").inner_text()
    assert "Penman-Monteith" in window.open("places/sydney.html").locator(".md-content").inner_text()


def test_the_year_is_taken_away_as_files_that_other_programs_read(reader: Callable[..., Reader]) -> None:
    page = reader(accept_downloads=True).open(COUCH)
    with page.expect_download() as calendar:
        page.get_by_role("link", name="Calendar file (.ics)").click()
    events = Calendar.from_ical(calendar.value.path().read_bytes()).walk("VEVENT")
    assert any("Renovate: window" in event["summary"] for event in events)
    with page.expect_download() as weeks:
        page.get_by_role("link", name="Weeks (.csv)").click()
    with weeks.value.path().open(encoding="utf-8", newline="") as file:
        assert len(list(csv.DictReader(file))) == 52


def test_every_calendar_file_of_the_site_is_read_by_icalendar(site: Path) -> None:
    files = sorted((site / "calendars").glob("*/*.ics"))
    assert [file.with_suffix(".html") for file in files] == sorted((site / "calendars").glob("*/*.html"))
    assert all(Calendar.from_ical(file.read_bytes()).walk("VEVENT") for file in files)


def test_one_grass_stands_place_by_place_with_the_earliest_window_first(reader: Callable[..., Reader]) -> None:
    page = reader().open("compare/couch.html")
    rows = page.locator(".sb-compare-strips__row")
    assert rows.count() == len(seasons().book.offered_places) == 34
    south = page.locator(".sb-compare-strips").first.locator(".sb-compare-strips__row")
    openings = []
    for id in south.evaluate_all("rows => rows.map(row => row.id)"):
        assert seasons().book.places[id].latitude_deg < 0
        found = seasons().season("couch", id).renovation.windows
        openings.append((found[0].first - 182) % 365 if found else 400)  # days after the middle of the southern winter
    assert openings == sorted(openings)
    page.locator("#canberra a").first.click()
    expect(page.locator("h1")).to_have_text("Couch at Canberra")


def test_one_place_stands_grass_by_grass_on_one_axis(reader: Callable[..., Reader]) -> None:
    page = reader(viewport={"width": 1280, "height": 800}).open("places/hobart.html")
    assert page.locator(".sb-compare-strips__row").count() == len(seasons().book.grasses)
    expect(page.locator("#zoysia")).to_contain_text("Little growth here.")
    axis = page.locator(".sb-compare-strips__months").bounding_box()
    strip = page.locator("#couch .sb-season-strip__year").bounding_box()
    assert axis and strip
    assert (axis["x"], axis["width"]) == pytest.approx((strip["x"], strip["width"]), abs=1)


def test_the_comparisons_are_reached_from_the_hub_the_grass_and_the_calendar(reader: Callable[..., Reader]) -> None:
    window = reader()
    for opened, name in (("calendars/index.html", "^Couch ?, place by place$"), ("grasses/couch.html", "^Couch, place by place$"), (COUCH, "^Couch at other places$")):
        window.open(opened).get_by_role("link", name=re.compile(name)).click()
        expect(window.page.locator("h1")).to_have_text("Couch: place by place")


def test_the_methods_page_lists_every_printed_calendar_and_explains_those_that_differ(reader: Callable[..., Reader]) -> None:
    published = seasons().book.season_groups.published
    page = reader().open("methods.html")
    table = page.get_by_role("region", name="Printed calendars and our windows")
    assert table.locator("tbody tr").count() == sum(len(each.grasses) for each in published)
    text = page.locator(".md-content").inner_text()
    assert not [each.place for each in published if each.explained and each.explained.strip() not in text]
    differ = table.locator("tbody tr", has=page.locator("td strong"))
    for row in differ.all():
        grass, place = row.locator("th").inner_text().split(", ")
        assert re.search(rf"{grass}[^.]*, {place}\.", text), (grass, place)
