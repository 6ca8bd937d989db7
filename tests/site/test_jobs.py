"""The page that plans a job: the same job before and after its script, moved by hand, kept, sent and taken back."""

import io
import json
import re
from collections.abc import Callable
from datetime import timedelta
from pathlib import Path
from unicodedata import normalize

import pytest
from icalendar import Calendar
from playwright.sync_api import Locator, Page, expect
from pypdf import PdfReader

from generator.jobs.plans_for_grass import plans_for
from tests.our_book import book as our_book
from tests.site.reader import Reader
from tests.slices import first

JOB = "jobs/index.html"
COUCH_AT_CANBERRA = "#v=1&part=all&plan=warm-below-ground&grass=couch&place=canberra&site=open&area=240&on="
# Every text of the worked-out parts; what only the script offers is left out of the comparison.
TEXTS = """root => {
  const gone = '[data-part=controls], [data-part=day-sheet-form], [data-part=day-sheet-cautions], [data-part=rain-box], [data-part=inspection-box], [data-part=form], [data-part=hold], .sb-job-step__tick, [data-part=next], [data-part=late], [data-part=moves], [data-part^=move-], [data-part^=stage-], [data-part=day-sheet-care] > summary, [data-part=looked-at-box] > summary, [data-part=then-box] > summary';
  const copy = root.cloneNode(true);
  copy.querySelectorAll(gone).forEach(part => part.remove());
  return copy.textContent.replace(/\\s+/g, '');
}"""


def part(page: Page, name: str) -> Locator:
    return page.locator(f".sb-job [data-part='{name}']")


def step(page: Page, id: str) -> Locator:
    return page.locator(f"[data-step='{id}']")


def unfolded(page: Page, id: str) -> Locator:
    """A step with its card open."""
    step(page, id).locator("[data-part=card]").evaluate("card => { card.open = true; }")
    return step(page, id)


def put_off(page: Page, id: str, to: str) -> None:
    unfolded(page, id)
    step(page, id).locator("[data-act=day]").fill(to)
    step(page, id).locator("[data-act=day]").dispatch_event("change")


def test_with_scripts_off_the_example_is_whole_and_the_script_says_the_same(reader: Callable[..., Reader]) -> None:
    plain = reader(java_script_enabled=False).open(JOB)
    running = reader().open(JOB)
    expect(part(running, "form")).to_be_visible()
    expect(step(running, "soil-test").locator("[data-part=controls]")).to_be_attached()
    assert plain.locator(".sb-job button:visible, .sb-job select:visible").count() == 0
    before, after = (window.locator(".sb-job > [data-part=worked]").evaluate(TEXTS) for window in (plain, running))
    assert before == after


def test_a_date_before_the_window_says_by_how_much_and_a_good_date_says_so(reader: Callable[..., Reader]) -> None:
    """By the normals of Canberra's record November has 0.3 frost nights and December none. A window opens once the four weeks that follow have a
    frost in one year of ten at most: after 1 November, whose weeks hold nearly all of the 0.3 (1 - exp(-0.3) = 26%), and before 1 December."""
    page = reader().open(JOB)
    page.locator("[data-choice=grass]").select_option("couch")
    page.locator("[data-choice=place]").select_option("canberra")
    page.locator("[data-choice=on]").fill("2026-10-12")
    expect(part(page, "edges")).to_contain_text(" November to ")
    opens = int(re.search(r"The window: (\d+) November to ", part(page, "edges").inner_text())[1])  # type: ignore[index]
    assert 1 < opens <= 30
    expect(part(page, "headline")).to_have_text(f"Outside the window: {31 - 12 + opens} days too early.")  # The rest of October, then November's.
    expect(part(page, "window-why")).to_contain_text(f"{opens} November")
    expect(part(page, "then")).to_contain_text("Wait if you can")
    expect(part(page, "frost")).to_contain_text("%")
    page.locator("[data-choice=on]").fill("2026-12-16")
    expect(part(page, "headline")).to_have_text("Inside the window.")


def test_a_step_put_off_moves_what_depends_on_it_and_a_reload_keeps_it(reader: Callable[..., Reader]) -> None:
    window = reader()
    page = window.open(JOB + COUCH_AT_CANBERRA + "2026-12-16")
    expect(step(page, "core").locator("[data-part=date]")).to_have_text("Wed 16 Dec 2026")
    water_before = step(page, "client-ready").locator("[data-part=date]").inner_text()
    put_off(page, "core", "2026-12-18")
    expect(step(page, "core").locator("[data-part=moved]")).to_have_text("2 days later than planned: set by you.")
    expect(part(page, "moves")).to_contain_text("What waits for it moves with it")
    assert page.locator("[data-part=moved]", has_text="because of").count() > 0
    expect(step(page, "client-ready").locator("[data-part=date]")).to_have_text(water_before)
    step(page, "soil-test").locator("[data-act=done]").check()
    page.reload()
    expect(step(page, "core").locator("[data-part=date]")).to_have_text("Fri 18 Dec 2026")
    expect(step(page, "soil-test").locator("[data-act=done]")).to_be_checked()
    step(page, "core").locator("[data-act=back]").click()
    expect(step(page, "core").locator("[data-part=date]")).to_have_text("Wed 16 Dec 2026")


def test_a_late_tick_moves_nothing_and_another_day_is_asked_about_first(reader: Callable[..., Reader]) -> None:
    """Ticked two days late the cut counts as done on its day; done a day later, it would hold up the scarifying, which waits for it."""
    window = reader(viewport={"width": 360, "height": 780})
    window.page.clock.set_fixed_time("2026-12-18T09:00:00")
    page = window.open(JOB + COUCH_AT_CANBERRA + "2026-12-16")
    cut, dates = step(page, "cut-down"), part(page, "date")
    before, client = dates.all_inner_texts(), part(page, "maker").get_attribute("href")
    cut.locator("[data-act=done]").check()
    expect(cut.locator("[data-act=day]")).to_have_value("2026-12-16")
    expect(cut.locator("[data-part=day-label]")).to_have_text("Done on")
    assert dates.all_inner_texts() == before
    put_off(page, "cut-down", "2026-12-17")
    expect(cut.locator("[data-part=tick-said]")).to_contain_text("Thu 17 Dec 2026")
    expect(cut.locator("[data-part=tick-moves]")).to_contain_text("Scarify, first direction: Wed 16 Dec → Thu 17 Dec")
    assert dates.all_inner_texts() == before
    cut.get_by_role("button", name="Leave the dates as they are").click()
    expect(cut.locator("[data-part=tick-ask]")).to_be_hidden()
    expect(cut.locator("[data-act=day]")).to_have_value("2026-12-16")
    assert dates.all_inner_texts() == before and part(page, "maker").get_attribute("href").startswith(client.partition("&done")[0])
    put_off(page, "cut-down", "2026-12-17")
    expect(cut.locator("[data-part=tick-ask]")).to_be_visible()
    page.locator("[data-choice=area]").fill("250 m2")  # Another job now: what was asked of the one before is asked no more.
    expect(cut.locator("[data-part=tick-ask]")).to_be_hidden()
    put_off(page, "cut-down", "2026-12-17")
    cut.get_by_role("button", name="Move them").click()
    expect(step(page, "scarify").locator("[data-part=date]")).to_have_text("Thu 17 Dec 2026")
    page.reload()
    expect(step(page, "scarify").locator("[data-part=date]")).to_have_text("Thu 17 Dec 2026")
    step(page, "cut-down").locator("[data-act=done]").uncheck()
    assert dates.all_inner_texts() == before


def test_a_step_that_is_done_folds_up_and_the_next_one_is_a_tap_away(reader: Callable[..., Reader]) -> None:
    page = reader(viewport={"width": 360, "height": 780}).open(JOB + COUCH_AT_CANBERRA + "2026-12-16")
    done, link = step(page, "soil-test"), part(page, "next").locator("a")
    expect(link).to_have_text(done.locator("[data-part=title]").inner_text())
    done.locator("[data-act=done]").check()
    expect(done.locator("[data-part=say]")).not_to_be_visible()
    expect(done.locator("[data-act=done]")).to_be_visible()
    expect(link).not_to_have_text(done.locator("[data-part=title]").inner_text())
    link.click()
    expect(page.get_by_role("heading", name=link.inner_text())).to_be_in_viewport()
    expect(part(page, "notice")).not_to_be_visible()
    done.locator("[data-act=done]").uncheck()
    expect(done.locator("[data-part=say]")).to_be_visible()


def test_a_step_that_is_not_needed_goes_and_comes_back(reader: Callable[..., Reader]) -> None:
    page = reader().open(JOB + COUCH_AT_CANBERRA + "2026-12-16")
    step(page, "spray-out").locator("[data-act=without]").click()
    expect(step(page, "spray-out")).to_have_count(0)
    part(page, "left-out-box").locator("summary").click()
    part(page, "left-out").get_by_role("button", name="Bring it back").click()
    expect(step(page, "spray-out")).to_have_count(1)


def test_area_is_typed_with_its_unit_and_the_lists_follow(reader: Callable[..., Reader]) -> None:
    page = reader().open(JOB + COUCH_AT_CANBERRA + "2026-12-16")
    expect(part(page, "area")).to_contain_text("240 m²")
    page.locator("[data-choice=area]").fill("20 m x 10 m")
    expect(part(page, "area")).to_contain_text("200 m²")
    for name in ("shopping", "gear", "day-sheet", "water", "price"):
        assert part(page, name).locator("tr").count() > 0, name
    page.locator("[data-choice=area]").fill("a few")
    expect(part(page, "area-trouble")).to_be_visible()
    part(page, "day-sheet-start").fill("06:00")
    expect(part(page, "day-sheet").locator("th").first).to_have_text(re.compile("^06:00"))


def test_a_job_goes_into_a_file_and_comes_back(reader: Callable[..., Reader], tmp_path: Path) -> None:
    page = reader(accept_downloads=True).open(JOB + COUCH_AT_CANBERRA + "2026-12-16")
    put_off(page, "core", "2026-12-19")
    with page.expect_download() as waiting:
        page.locator("[data-act=export]").click()
    file = tmp_path / "job.json"
    waiting.value.save_as(file)
    assert json.loads(file.read_text(encoding="utf-8"))["jobs"][0]["put"] == {"core": "2026-12-19"}
    other = reader().open(JOB)
    part(other, "take").set_input_files(file)
    expect(part(other, "told")).to_have_text("1 job taken from the file.")
    expect(step(other, "core").locator("[data-part=date]")).to_have_text("Sat 19 Dec 2026")
    broken = tmp_path / "broken.json"
    broken.write_text('{"v": 1, "jobs": [{"plan": "<b>", "on": 7}]}', encoding="utf-8")
    part(other, "take").set_input_files(broken)
    expect(part(other, "told")).to_have_text(
        "No job could be read from that file. Job 1 in it is left out, because this is wrong or missing: plan, grass, place, site, area, day."
    )


@pytest.mark.parametrize("kept", first(1, ['{"v": 1, "jobs": [null, {"on": "2026-02-30"}]}', '{"v": 2}', "{", "7"]))
def test_damaged_storage_is_told_and_does_no_harm(reader: Callable[..., Reader], kept: str) -> None:
    page = reader().open(JOB)
    page.evaluate("kept => localStorage.setItem('swardbook.jobs', kept)", kept)
    page.reload()
    expect(page.locator(".sb-kept--aside")).to_contain_text("damaged")
    expect(step(page, "soil-test").locator("[data-part=controls]")).to_be_attached()


def test_links_open_their_job_and_damaged_or_unknown_ones_say_so(reader: Callable[..., Reader]) -> None:
    window = reader()
    page = window.open(JOB + "#v=1&part=all&plan=core-only")
    expect(page.locator("[data-choice=plan]")).to_have_value("core-only")
    page.locator("[data-act=link]").click()
    text = part(page, "text").input_value()
    assert text.startswith("https://tussocklane.example/book/jobs/index.html#v=1&plan=core-only&grass=couch&place=")
    assert len(text.partition("#")[2]) <= 300
    for hostile in (
        "v=2&plan=core-only", "v=1&plan=<b>x</b>", "v=1&area=-4", "v=1&area=1e99", "v=1&on=2026-02-30", "v=1&x=1", "v=1&v=1", "v=1&plan=" + "a" * 400,
        "v=1&plan=%00", "v=1&grass=__proto__&__proto__=1", "=&=&=", "v=1&on=２０２６-10-12",
    ):
        page.evaluate("text => { window.location.hash = text; }", hostile)
        expect(part(page, "notice")).to_contain_text("damaged")
    page.evaluate("window.location.hash = 'v=1&plan=no-such&grass=couch&place=canberra&on=2026-12-16'")
    expect(part(page, "notice")).to_contain_text("no plan “no-such”")
    expect(page.locator("[data-choice=place]")).to_have_value("canberra")
    page.evaluate("window.location.hash = 'v=1&plan=constructor&grass=valueof'")
    expect(part(page, "notice")).to_contain_text("no plan “constructor”")
    assert page.locator(".sb-job b").count() == 0


def longest_plan() -> tuple[str, str]:
    """The plan of the shipped book with the most steps, and a grass that follows it."""
    book = our_book()
    plan = max(book.renovations, key=lambda id: len(book.renovations[id].steps))
    return plan, next(id for id, grass in book.grasses.items() if plan in plans_for(book, grass))


@pytest.mark.parametrize(("units", "paper"), first(1, [("us", "Letter"), ("metric", "A4"), ("metric", "Letter"), ("us", "A4")]))
def test_each_sheet_goes_onto_one_page(reader: Callable[..., Reader], units: str, paper: str) -> None:
    plan, grass = longest_plan()
    page = reader(viewport={"width": 1280, "height": 900}).open(f"{JOB}#v=1&part=all&plan={plan}&grass={grass}&place=canberra&area=2400&on=2026-12-16")
    page.evaluate("units => { window.print = () => {}; Swardbook.preferences.set('units', units); }", units)
    expect(step(page, "soil-test").locator("[data-part=controls]")).to_be_attached()
    titles = [each for each in page.locator("[data-part=title]").all_inner_texts() if each]
    waits = [f"Wait for: {each}" for each in page.locator("[data-part=wait]").all_inner_texts() if each]
    cares = set(page.locator("[data-part=cautions] a").all_inner_texts())
    assert waits and cares
    for sheet, words in (("sheet", [*titles, *waits, *cares]), ("shopping", ["Shopping list", "Gear"]), ("day-sheet", ["Sheet for the day", "07:30"])):
        page.locator(f"[data-act=print-{sheet}]").click()
        pages = PdfReader(io.BytesIO(page.pdf(format=paper, prefer_css_page_size=True))).pages
        assert len(pages) == 1, sheet
        text = normalize("NFKC", " ".join(pages[0].extract_text().split()))  # the font joins f and i
        assert not [each for each in words if each not in text], sheet
        assert not re.search(r"[a-z][;,][A-Z]", text), "a list on paper has room between its words"


def test_the_calendar_file_has_the_dates_of_the_plan(reader: Callable[..., Reader], tmp_path: Path) -> None:
    page = reader(accept_downloads=True).open(JOB + COUCH_AT_CANBERRA + "2028-02-29")
    expect(step(page, "core").locator("[data-part=date]")).to_have_text("Tue 29 Feb 2028")
    part(page, "name").fill("Kööke 17; back, left \\ lawn 草坪")
    part(page, "name").dispatch_event("change")
    with page.expect_download() as waiting:
        page.locator("[data-act=calendar]").click()
    waiting.value.save_as(tmp_path / "job.ics")
    data = (tmp_path / "job.ics").read_bytes()
    assert data.endswith(b"\r\n") and b"\n" not in data.replace(b"\r\n", b"")
    assert max(map(len, data.split(b"\r\n"))) <= 75
    events = Calendar.from_ical(data).walk("VEVENT")
    shown = {id: step(page, id).locator("[data-part=date]").inner_text() for id in ("soil-test", "core", "client-ready")}
    by_step = {str(event["uid"]).partition("@")[0]: event for event in events}
    assert len(by_step) == len(events) == page.locator("[data-step]").count()
    for id, text in shown.items():
        event = next(event for uid, event in by_step.items() if uid.endswith(f"-{id}"))
        first = event["dtstart"].dt
        assert f"{first:%a} {first.day} {first:%b %Y}" == text
        assert event["dtend"].dt == first + timedelta(1)
        assert str(event["summary"]).startswith("Kööke 17; back, left \\ lawn 草坪: ")
