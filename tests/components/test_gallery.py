"""The components in a real browser, as the theme dresses them: read by axe, tapped, printed, with scripts off."""

import json
from calendar import monthrange
from datetime import date
from pathlib import Path

import pytest
from pypdf import PdfReader

from generator.site.frame.render import COMPONENTS, environment, render_component
from tests.components.gallery import page_of, write_gallery
from tests.slices import first
from tests.yaml_files import read_yaml

AXE = Path(__file__).parents[1] / "vendor" / "axe.min.js"
# Rules about a whole page; the gallery here is a bare one. The built site is held to them in tests/site.
OF_WHOLE_PAGES = ("bypass", "region", "landmark-one-main", "page-has-heading-one")


def example(name: str, at: int = 0) -> dict:
    return read_yaml(COMPONENTS / name / f"{name}.yml")["examples"][at]["view"]


@pytest.fixture(scope="module")
def folder(tmp_path_factory) -> Path:
    """Pages on a disk: the gallery, and a calendar of twelve months from the one example month."""
    made = tmp_path_factory.mktemp("gallery")
    write_gallery(made)
    sheets = environment().get_template("month-sheet/month-sheet.html.j2").module
    year = "<h1>A year</h1>" + render_component("season-strip", example("season-strip")) + str(sheets.month_sheet_controls({"year": 2026}))
    (made / "year.html").write_text(page_of(year + "".join(str(sheets.month_sheet(month(number))) for number in range(1, 13))), encoding="utf-8")
    (made / "picker.html").write_text(page_of("<h1>Home</h1>" + render_component("picker", example("picker"))), encoding="utf-8")
    season = {
        "grass": "Couch", "place": "Sydney", "summary": "Renovate in spring.", "description": "A year.",
        "weeks": ["pr"] * 20 + ["df"] * 12 + ["gw"] * 20,
        "months": [{"due": [{"task": f"Job of month {number}", "url": "tasks/x.html", "when": "all month", "say": "<b>Plain</b>", "because": "it grows."}]}
                   for number in range(1, 13)],
    }
    (made / "assets" / "seasons").mkdir()
    (made / "assets" / "seasons" / "couch--sydney.js").write_text(f'Swardbook.season("couch","sydney",{json.dumps(season)});', encoding="utf-8")
    return made


def month(number: int) -> dict:
    """The example month as month `number`; June is full, July as full as a month gets."""
    view = example("month-sheet")
    name = date(2026, number, 1).strftime("%B")
    tasks = view["tasks"] * {6: 3, 7: 7}.get(number, 1)
    return {**view, "id": name.lower(), "month_number": number, "month_name": name, "tasks": tasks, "strip": {**view["strip"], "id": f"strip-{number}"}}


@pytest.fixture
def opened(browser, folder):
    """Opens one of the pages at a width, and closes what it opened."""
    contexts = []

    def open_page(name: str, width: int = 1280, **options):
        context = browser.new_context(viewport={"width": width, "height": 800}, **options)
        contexts.append(context)
        page = context.new_page()
        page.set_default_timeout(5000)
        page.goto((folder / name).as_uri())
        return page

    yield open_page
    for context in contexts:
        context.close()


@pytest.mark.parametrize(("width", "scheme"), first(2, [(360, "slate"), (1280, "default"), (360, "default"), (1280, "slate")]))
def test_axe_finds_nothing(opened, scheme, width):
    page = opened("components.html", width)
    page.evaluate("scheme => document.body.setAttribute('data-md-color-scheme', scheme)", scheme)
    page.add_script_tag(path=AXE)
    rules = {rule: {"enabled": False} for rule in OF_WHOLE_PAGES}
    found = page.evaluate("rules => axe.run(document, {rules, preload: false, resultTypes: ['violations']})", rules)["violations"]
    assert [(each["id"], each["nodes"][0]["html"][:120]) for each in found] == []


@pytest.mark.parametrize("name", ["components.html", "year.html", "picker.html"])
def test_nothing_scrolls_sideways_on_a_small_phone(opened, name):
    assert opened(name, 360).evaluate("document.documentElement.scrollWidth") <= 360


@pytest.mark.parametrize("name", ["components.html", "year.html", "picker.html"])
def test_everything_to_tap_is_44_pixels_high(opened, name):
    small = opened(name, 360).evaluate(
        """() => [...document.querySelectorAll('button, select, summary, .sb-button, input:not([type=checkbox]):not([type=radio])')]
        .filter(each => each.offsetParent !== null && each.getBoundingClientRect().height < 44)
        .map(each => each.outerHTML.slice(0, 90))"""
    )
    assert small == []


def test_one_choice_of_units_is_shown_and_kept(opened):
    page = opened("components.html", locale="en-AU")
    metric, us = (page.locator(f".sb-facts .sb-quantity__{system}").first for system in ("metric", "us"))
    assert metric.is_visible() and not us.is_visible()
    page.evaluate("Swardbook.preferences.set('units', 'us')")
    assert us.is_visible() and not metric.is_visible()
    page.reload()
    assert us.is_visible() and us.inner_text() == "1 to 1½ in"
    # A figure that reads the same everywhere stays.
    assert page.get_by_text("14 days", exact=True).is_visible()


def test_every_reader_starts_in_metric(opened):
    assert opened("components.html", locale="en-US").locator("html").get_attribute("data-units") == "metric"


def test_without_scripts_both_units_the_days_and_the_calendars_are_there(opened):
    page = opened("components.html", java_script_enabled=False)
    assert page.locator(".sb-facts .sb-quantity").first.inner_text() == "25 to 38 mm (1 to 1½ in)"
    days = page.locator(".sb-month-sheet__day").all_inner_texts()
    assert days == [str(day) for day in range(1, 32)]  # the example month is October
    assert page.locator('.sb-picker a[href="calendars/sydney/couch.html"]').count() == 1
    assert not page.locator(".sb-picker__form").is_visible()
    assert not page.locator("[data-print-month]").first.is_visible()


def test_today_is_marked_where_it_falls_in_the_year(browser, folder):
    context = browser.new_context()
    page = context.new_page()
    page.clock.set_fixed_time("2026-07-02T12:00:00")  # day 183 of 365, so 182/365 of the year has passed
    page.goto((folder / "components.html").as_uri())
    left = page.locator("#strip-south .sb-season-strip__today").evaluate("line => parseFloat(line.style.left)")
    context.close()
    assert left == pytest.approx(100 * 182 / 365)


# Python's own calendar is the outside witness. 2028 is a leap year; February 2026 fills four weeks from a Sunday.
@pytest.mark.parametrize(("begins", "shift"), [("1", 0), ("0", 1)])
def test_days_stand_under_their_weekday(opened, begins, shift):
    page = opened("year.html")
    for year, number in [(2026, 2), (2027, 1), (2028, 2), (2026, 8)]:
        days_of_one_month_stand(page, year, number, begins, shift)


def days_of_one_month_stand(page, year, number, begins, shift):
    page.get_by_role("spinbutton", name="Year").fill(str(year))
    page.get_by_label("Weeks begin on").select_option(begins)
    rows = page.locator(f'[data-month="{number}"] .sb-month-sheet__days tbody tr').evaluate_all(
        "rows => rows.map(row => [...row.cells].map(cell => cell.textContent))"
    )
    first, days = monthrange(year, number)  # Monday is 0
    blanks = (first + shift) % 7
    cells = [cell for row in rows for cell in row]
    assert cells[:blanks] == [""] * blanks
    assert cells[blanks : blanks + days] == [str(day) for day in range(1, days + 1)]
    assert {len(row) for row in rows} == {7}
    heads = page.locator(f'[data-month="{number}"] thead th').all_inner_texts()
    assert heads[0] == ("Mon" if begins == "1" else "Sun")


def test_a_year_that_is_none_gets_a_sentence_and_changes_nothing(opened):
    page = opened("year.html")
    before = page.locator('[data-month="3"] tbody').inner_text()
    page.get_by_role("spinbutton", name="Year").fill("27")
    assert page.get_by_role("status").first.inner_text() == "Type a four-digit year between 1900 and 2200."
    assert page.locator('[data-month="3"] tbody').inner_text() == before


@pytest.mark.parametrize("paper", first(1, ["Letter", "A4"]))
def test_a_year_prints_as_the_strip_and_twelve_sheets(opened, tmp_path, paper):
    page = opened("year.html")
    page.get_by_role("spinbutton", name="Year").fill("2026")
    page.pdf(path=tmp_path / "year.pdf", format=paper, prefer_css_page_size=True)
    sheets = PdfReader(tmp_path / "year.pdf").pages
    assert len(sheets) == 13
    texts = [sheet.extract_text() for sheet in sheets]
    for number in range(1, 13):
        assert date(2026, number, 1).strftime("%B") in texts[number]
        assert str(monthrange(2026, number)[1]) in texts[number]
    assert all(sheet.mediabox.width > sheet.mediabox.height for sheet in sheets)


def test_a_full_month_prints_every_job(opened, tmp_path):
    page = opened("year.html")
    page.pdf(path=tmp_path / "year.pdf", format="A4", prefer_css_page_size=True)
    pages = PdfReader(tmp_path / "year.pdf").pages
    june, july = (" ".join(pages[number].extract_text().split()) for number in (6, 7))
    assert june.count("First light dressing of the season") == 3
    assert june.count("The grass can use it now") == 3
    assert july.count("First light dressing of the season") == 7


@pytest.mark.parametrize("paper", first(1, ["Letter", "A4"]))
def test_one_month_prints_alone(opened, tmp_path, paper):
    page = opened("year.html")
    page.evaluate("window.print = () => {}")
    page.locator('[data-month="8"]').get_by_role("button", name="Print this month").click()
    page.pdf(path=tmp_path / "month.pdf", format=paper, prefer_css_page_size=True)
    sheets = PdfReader(tmp_path / "month.pdf").pages
    assert len(sheets) == 1
    assert "August" in sheets[0].extract_text()
    page.evaluate("window.dispatchEvent(new Event('afterprint'))")
    assert page.locator("[data-print-hidden]").count() == 0


def test_the_picker_shows_what_is_due_and_says_so_to_the_page(opened):
    page = opened("picker.html")
    page.locator(".sb-picker__due").wait_for()
    name = date.today().strftime("%B")
    assert page.get_by_role("heading", name=f"{name}: Couch at Sydney").is_visible()
    assert page.get_by_role("link", name=f"Job of month {date.today().month}", exact=True).get_attribute("href") == "tasks/x.html"
    assert "<b>Plain</b>" in page.locator(".sb-picker__due").inner_text()  # text, never markup
    assert page.get_by_role("link", name="The whole year").get_attribute("href") == "calendars/sydney/couch.html"
    assert page.locator("#picker-strip-frost").count() == 1
    assert not page.locator(".sb-picker__plain").is_visible()


def test_a_year_that_is_missing_leaves_the_plain_list_and_the_choice_is_kept(opened):
    page = opened("picker.html")
    page.get_by_label("Grass").select_option("kikuyu")
    page.get_by_text("does not have the year of this grass and place").wait_for()
    assert page.locator(".sb-picker__plain").is_visible()
    page.reload()
    assert page.get_by_label("Grass").input_value() == "kikuyu"


def test_a_component_that_fails_leaves_the_others_working(opened, folder):
    broken = page_of('<p data-component="broken">Text</p>' + render_component("season-strip", example("season-strip"))).replace(
        "</body>", "<script defer src='broken.js'></script></body>"
    )
    (folder / "broken.html").write_text(broken, encoding="utf-8")
    (folder / "broken.js").write_text("Swardbook.component('broken', function () { throw new Error('made to fail'); });", encoding="utf-8")
    page = opened("broken.html")
    assert page.locator(".sb-season-strip__today").count() == 1
    assert page.get_by_text("Text", exact=True).is_visible()


def test_a_browser_that_refuses_storage_keeps_a_choice_for_the_page(browser, folder):
    context = browser.new_context()
    page = context.new_page()
    page.add_init_script("Object.defineProperty(window, 'localStorage', {get() { throw new DOMException('refused'); }})")
    page.goto((folder / "components.html").as_uri())
    page.evaluate("Swardbook.preferences.set('units', 'us')")
    assert page.locator(".sb-quantity__us").first.is_visible()
    assert page.evaluate("Swardbook.preferences.get('units')") == "us"
    context.close()
