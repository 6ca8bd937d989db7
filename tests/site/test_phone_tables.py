"""Tables, charts and reasons on the smallest telephone: nothing is cut, and each cell says what it is of."""

import re
from collections.abc import Callable
from datetime import date, datetime, timedelta
from pathlib import Path

import pytest
from playwright.sync_api import expect

from tests.asking import ask
from tests.our_book import book
from tests.site.reader import KINDS, Reader

SMALL = {"width": 360, "height": 640}
OTHER_PLACE = "places/urbana.html"
WITH_A_TABLE = [
    "jobs/index.html", "grasses/kikuyu.html", "renovate/kikuyu.html", "places/canberra.html", "calendars/canberra/couch.html",
    "calculators/granular-feed.html", "answers/how-low.html", "side-by-side.html#grass=couch.kikuyu.zoysia", "names.html", "aftercare/after-renovation.html", "methods.html", "how-to-use.html", OTHER_PLACE,
]
# Of each table, unfolded: whether it runs past its box or the page, and a cell that stands on a card without saying of what.
CUT = """() => {
  document.querySelectorAll('.md-content details').forEach(each => { each.open = true; });
  const wide = document.documentElement.clientWidth, found = [];
  for (const table of document.querySelectorAll('.md-content table')) {
    const name = table.className || (table.closest('[aria-label]') || table).getAttribute('aria-label');
    if (!table.getBoundingClientRect().width) continue;
    for (let box = table; box !== document.body; box = box.parentElement) if (box.scrollWidth > box.clientWidth + 1 && box.clientWidth) found.push(`${name} is cut`);
    const past = [...table.querySelectorAll('tbody :is(th, td)')].filter(each => each.getBoundingClientRect().right > wide + 1);
    if (past.length) found.push(`${name}: ${past[0].textContent} runs off`);
    if (!table.hasAttribute('data-cards')) continue;
    const cells = [...table.querySelectorAll('tbody td')];
    if (cells.some(each => each.textContent && !each.dataset.label)) found.push(`${name}: a cell without its column`);
    if ([table, ...table.querySelectorAll('tbody, tr, th, td')].some(each => !each.getAttribute('role'))) found.push(`${name}: a part without its role`);
  }
  return [...new Set(found)];
}"""


@pytest.fixture
def phone(reader: Callable[..., Reader]) -> Reader:
    return reader(viewport=SMALL, has_touch=True, is_mobile=True)


def test_no_table_of_any_page_kind_is_cut_at_360_pixels(phone: Reader) -> None:
    tables = 0
    for path in WITH_A_TABLE:
        page = phone.open(path)
        assert ask(page, CUT) == [], path
        tables += page.locator(".md-content table").count()
    assert tables > 2 * len(WITH_A_TABLE)


def test_every_page_kind_with_a_table_is_looked_at(site: Path) -> None:
    """A new kind of page with a table belongs on the list above; a month to write in stays a grid."""
    of_a_kind = {Path(path).parent if "/" in path else Path(path.partition("#")[0]) for path in WITH_A_TABLE}
    kinds = [path for path in KINDS.values() if "<table" in (site / path).read_text(encoding="utf-8")]
    assert {Path(path).parent if "/" in path else Path(path) for path in kinds} - {Path("calendars/sydney")} <= of_a_kind


def test_a_card_says_its_columns_in_the_reader_s_units_and_paper_keeps_the_table(phone: Reader) -> None:
    page = phone.open("calendars/canberra/couch.html")
    label = "() => getComputedStyle(document.querySelector('.sb-needs tbody td'), '::before').content"
    assert ask(page, label).startswith('"Nitrogen, g/m²"')
    page.evaluate("() => { document.documentElement.dataset.units = 'us'; }")
    assert "lb/1000" in ask(page, label)
    page.emulate_media(media="print")
    assert ask(page, "() => getComputedStyle(document.querySelector('.sb-needs tbody tr')).display") == "table-row"


@pytest.mark.parametrize("height", [640, 800])
def test_every_guide_opens_with_the_day_s_work(reader: Callable[..., Reader], height: int) -> None:
    """The window at home and the first lines of the day are on the first screen. The order of the day, with how hard and the way to the rest, ends
    within a screen and a half; a tall telephone has nearly all of it on the first."""
    phone, most = reader(viewport={"width": 360, "height": height}, has_touch=True, is_mobile=True), 1.5 if height == 640 else 1.2
    for grass in book().grasses:
        found = ask(phone.open(f"renovate/{grass}.html"), """() => {
          const bottom = each => each.getBoundingClientRect().bottom, shown = [...document.querySelectorAll('.sb-day-work > li')].filter(each => each.checkVisibility());
          const rest = document.querySelector('.sb-day-work__rest > summary');
          return {bottoms: shown.map(bottom), rest: rest ? bottom(rest) : 0, levels: shown.filter(each => each.querySelector('.sb-level')).length,
            line: document.querySelector('.sb-when-line').getBoundingClientRect().top, table: document.querySelector('.sb-when-table').checkVisibility()};
        }""")
        assert len(found["bottoms"]) > 8 and found["bottoms"][3] < height and max(found["bottoms"][-1], found["rest"]) < most * height, grass
        assert found["line"] < height / 2 and found["levels"] >= 3 and not found["table"], grass


def test_each_line_of_the_day_leads_to_its_step_and_a_long_day_unfolds(phone: Reader) -> None:
    page = phone.open("renovate/kikuyu.html")
    steps = page.locator(".sb-day-work > li")
    expect(steps.last).to_be_hidden()
    page.locator(".sb-day-work__rest > summary").click()
    expect(steps.last).to_be_visible()
    page.set_viewport_size({"width": 1280, "height": 900})
    page.reload()
    expect(steps.last).to_be_visible()  # A wide screen has room for the whole day.
    steps.nth(1).locator("a").click()
    title = steps.nth(1).locator("a").inner_text()
    assert title in page.locator(page.url.partition("#")[2].join(["#", ""])).inner_text()


def test_the_window_of_another_place_is_one_choice_away(phone: Reader) -> None:
    page = phone.open("renovate/kikuyu.html")
    line = page.locator(".sb-when-line")
    said = {place: page.locator(f".sb-when-table [data-place={place}] .sb-when-table__line").first.text_content() or "" for place in ("sydney", "canberra")}
    assert said["sydney"] in line.inner_text() and said["canberra"] not in line.inner_text()
    line.locator("select").select_option("canberra")
    assert said["canberra"] in line.inner_text()
    # The best time is two weeks of a window (`preferred_weeks`). By Canberra's normals the last frosts, 2.4 nights in October and 0.3 in November,
    # come after it has warmed enough for the best time to begin (from July's 6.4 to 17.7 of January's 22.1 °C in November is 72%), so the best
    # time begins with the window, in November.
    opens, best, until = re.search(r"(\d+) Nov to .*best (\d+) to (\d+) Nov", line.inner_text()).groups()  # type: ignore[union-attr]
    assert opens == best and int(until) == int(best) + 2 * 7
    assert page.reload() is None or page.locator(".sb-when-line select").input_value() == "canberra"


def test_a_reason_is_plain_and_the_exact_one_a_tap_away(phone: Reader) -> None:
    page = phone.open("calendars/canberra/kikuyu.html")
    windows = page.locator("[data-slot=window-renovation]")
    assert "week 46" not in windows.inner_text() and "growth potential" not in windows.inner_text()
    windows.locator(".sb-exactly summary").first.click()
    in_the_open = weeks_named(windows.inner_text())
    page.locator(".sb-site-switch label", has_text="By paving").click()
    windows.locator(".sb-exactly summary").first.click()
    by_paving = weeks_named(windows.inner_text())
    # Nights by paving are 2 K warmer (data/season-groups.yml, `wall`), so the frost that both windows wait for is over earlier there.
    assert by_paving[0] < in_the_open[0]


def weeks_named(text: str) -> list[date]:
    """The days that a reason names with their weeks, "week 46 (12 November)": week 1 begins on 1 January, and each has seven days."""
    found = re.findall(r"week (\d+) \((\d+ \w+)\)", text)
    days = [datetime.strptime(f"{day} 2026", "%d %B %Y").date() for _, day in found]
    assert days and [day - timedelta(7 * (int(week) - 1)) for (week, _), day in zip(found, days)] == [date(2026, 1, 1)] * len(days)
    return days


def test_each_year_that_is_drawn_has_its_key_on_the_page(phone: Reader) -> None:
    for path in ("places/canberra.html", "compare/couch.html", "renovate/index.html", "grasses/index.html", "calendars/canberra/couch.html", "index.html"):
        page = phone.open(path)
        page.locator(".sb-season-strip").first.wait_for()
        unkeyed = ask(page, """() => {
          const filled = element => [...element.querySelectorAll('[fill^=url]')].map(each => each.getAttribute('fill').replace(/.*-(\\w+)\\)/, '$1'));
          const known = new Set([...document.querySelectorAll('.sb-season-strip__legend li:not([hidden])')].filter(each => each.getBoundingClientRect().height).flatMap(filled));
          return [...new Set([...document.querySelectorAll('.sb-season-strip__year')].flatMap(filled))].filter(name => !known.has(name));
        }""")
        assert unkeyed == [], path
