"""A groundskeeper in the United States reads the book as it would be written there: names of grasses, units, seasons and dates."""

import re
from collections.abc import Callable
from datetime import date, timedelta

import pytest
from playwright.sync_api import Page, expect

from tests.site.reader import KINDS, Reader

# What an American should not have to read. 'Blue couch' is what Digitaria didactyla is called there too, English couch is another plant, and a
# unit after a stroke is one that somebody may type.
FOREIGN = re.compile(
    r"°C(?! day)|(?<![/\w])\d[\d.]* ?-?(?:mm|cm|m|km|m²|m2|m³|m3|g|kg|t|L|mL|ha)\b(?![²/])|\bmm\b|\bmillimetres?\b|\blitres\b"
    r"|(?<!Blue )(?<!blue )(?<!English )\b[Cc]ouch\b|\b[Bb]uffalo\b|\b[Aa]utumns?\b"
    r"|\b\d{1,2} (?:January|February|March|April|May|June|July|August|September|October|November|December|Jan|Feb|Mar|Apr|Jun|Jul|Aug|Sep|Oct|Nov|Dec)\b"
)  # fmt: skip
# A page as it is read with all that folds out open. Of a list to choose from, what is chosen; of a field, what stands in it. Left out is what tells
# names and units apart, the names of publications, and formulas with their numbers.
READ = """() => {
  document.querySelectorAll('details').forEach(each => { each.open = true; });
  const page = document.body.cloneNode(true);
  document.querySelectorAll('input[type=text]').forEach(each => page.querySelectorAll('input[type=text]').forEach(copy => {
    if (copy.id && copy.id === each.id) copy.replaceWith(' ' + each.value + ' ');
  }));
  const selects = document.querySelectorAll('select');
  page.querySelectorAll('select').forEach((copy, at) => { const one = selects[at].selectedOptions[0]; copy.replaceWith(one ? ' ' + one.textContent + ' ' : ''); });
  page.querySelectorAll('[data-as-written], cite, .sb-source-marks, .sb-sources-foot, .sb-calculator__working, .sb-quoted, script, style, .md-search').forEach(each => each.remove());
  document.body.replaceWith(page);
  return document.title + '\\n' + page.innerText;
}"""
# Pages that are read whole, a kind each; the walk reads more.
READ_KINDS = ("grass", "place", "comparison", "answer", "work record", "inspection sheet")


def foreign(page: Page) -> list[str]:
    """What stands out on the page, each with its surroundings. The page is of no use afterwards."""
    text = page.evaluate(READ)
    return [text[max(0, found.start() - 40):found.end() + 30].replace("\n", " | ") for found in FOREIGN.finditer(text)]


@pytest.fixture
def phone(reader: Callable[..., Reader]) -> Reader:
    return reader(viewport={"width": 360, "height": 740}, has_touch=True)


def at_home_in_atlanta(phone: Reader) -> Page:
    page = phone.open("index.html")
    page.locator("[data-choice=grass]").select_option("couch")
    page.locator("[data-choice=place]").select_option("atlanta")
    return page


@pytest.mark.walk
def test_the_walk_of_an_american_groundskeeper(phone: Reader) -> None:
    page = at_home_in_atlanta(phone)
    expect(page.locator("[data-choice=grass] option:checked")).to_have_text("Bermudagrass")
    expect(page.locator("html")).to_have_attribute("data-units", "us")
    expect(page.locator(".sb-picker .sb-note[role=status]")).to_contain_text("US units")
    page.get_by_role("link", name="Renovation guide").first.click()
    expect(page.locator("h1")).to_contain_text("ermudagrass")
    assert foreign(page) == [], "the guide"
    for path in (
        "calendars/atlanta/couch.html", "jobs/index.html", "calculators/irrigation-run-time.html", "aftercare/maker.html",
        f"aftercare/after-renovation.html#v=1&on={date.today() - timedelta(3)}&grass=couch&area=450&done=core", "tasks/scarify.html",
    ):  # fmt: skip
        page = phone.open(path)
        if "aftercare/after" in path:
            expect(page.locator("[data-part=today]")).to_contain_text("Bermudagrass")
            expect(page.locator("[data-part=today]")).to_contain_text("844 ft²")
        assert foreign(page) == [], path


def test_no_kind_of_page_speaks_of_millimetres_couch_or_autumn(phone: Reader) -> None:
    at_home_in_atlanta(phone)
    assert {kind: found for kind in READ_KINDS if (found := foreign(phone.open(KINDS[kind])))} == {}


def test_the_other_grass_called_buffalo_is_told_apart(phone: Reader) -> None:
    """American buffalograss is Bouteloua dactyloides (University of California; Texas A&M AgriLife)."""
    at_home_in_atlanta(phone)
    page = phone.open("grasses/buffalo.html")
    expect(page.locator("h1")).to_have_text("St. Augustinegrass")
    expect(page.locator("main")).to_contain_text("What this book calls buffalo is not American buffalograss (Bouteloua dactyloides)")
    expect(page.locator(".sb-names-table")).to_contain_text("soft-leaf buffalo")
    page = phone.open("index.html")
    page.locator(".md-header label[for=__search]").first.click()
    page.locator(".md-search__input").fill("buffalo grass")
    first = page.locator(".sb-search__link").first
    expect(first.locator(".sb-search__title")).to_have_text("St. Augustinegrass")
    expect(first.locator(".sb-search__also")).to_have_text("also called buffalo grass")


def test_a_reader_elsewhere_and_one_who_asked_for_metric_units_keep_them(phone: Reader) -> None:
    page = phone.open("index.html")
    expect(page.locator("[data-choice=grass] option[value=couch]")).to_have_text("Couch")
    page.evaluate("Swardbook.preferences.set('units', 'metric')")
    page.locator("[data-choice=place]").select_option("atlanta")
    expect(page.locator("[data-choice=grass] option[value=couch]")).to_have_text("Bermudagrass")
    expect(page.locator("html")).to_have_attribute("data-units", "metric")
    expect(page.locator(".sb-picker .sb-note[role=status]")).to_have_count(0)
    page.locator("[data-choice=place]").select_option("sydney")
    expect(page.locator("[data-choice=grass] option[value=couch]")).to_have_text("Couch")


def test_what_a_reader_typed_stays_as_it_was_typed(phone: Reader) -> None:
    page = at_home_in_atlanta(phone)
    page.evaluate("""() => {
      const main = document.querySelector('main');
      main.append(Swardbook.asWritten(Swardbook.element('p', 'typed', 'Couch, 12 m x 8 m')), Swardbook.element('p', 'told', 'Couch, 25 mm, 3 September'));
    }""")
    expect(page.locator(".typed")).to_have_text("Couch, 12 m x 8 m")
    expect(page.locator(".told")).to_have_text("Bermudagrass, 1 in, September 3")


def test_a_week_that_needs_no_water_leaves_the_start_and_says_so(phone: Reader) -> None:
    """Dormant bermudagrass in Atlanta needs no water in December: that is no run time of nothing, and no error."""
    at_home_in_atlanta(phone)
    page = phone.open("calculators/irrigation-run-time.html")
    page.locator("[data-component=fill-in] [data-choice=date]").fill("2026-12-15")
    expect(page.locator(".sb-fill-in__told")).to_contain_text("None is needed in that week of a usual year")
    expect(page.locator("[aria-invalid=true]")).to_have_count(0)
    assert page.locator(".sb-calculator__figure").first.inner_text() != "–"
