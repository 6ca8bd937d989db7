"""What readers come for: this month on their lawn, their units, a client's dates; and what a hostile link gets."""

import re
from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.site.reader import Reader
from tests.slices import every

TODAY = date(2026, 10, 14)  # a spring Wednesday in Sydney
SHEET = "aftercare/after-renovation.html"
HOSTILE = (
    "v=1&on=<img src=x onerror=alert(1)>",
    "v=1&on=%3Cscript%3Ealert(1)%3C/script%3E",
    "v=1&on=2026-10-05&grass=<b>couch</b>",
    f"v=1&on=2026-10-05&grass={'a' * 400}",
    "v=2&on=2026-10-05",
    "on=2026-10-05",
    "v=1&on=2026-13-40",
    "v=1&on=2026-02-29",
    "v=1&on=tomorrow",
    "v=1&on=2026-10-05&__proto__=x",
    "v=1&on=2026-10-05&name=Jane",
)


def opened(window: Reader, path: str) -> Page:
    """A page opened on TODAY."""
    window.page.clock.set_fixed_time(f"{TODAY.isoformat()}T09:00:00")
    return window.open(path)


def choose(page: Page, grass: str, place: str) -> None:
    page.locator("[data-choice=grass]").select_option(grass)
    page.locator("[data-choice=place]").select_option(place)


def test_home_shows_this_month_for_the_grass_and_place_chosen_and_remembers_them(reader: Callable[..., Reader]) -> None:
    window = reader()
    page = opened(window, "index.html")
    choose(page, "kikuyu", "canberra")
    answer = page.locator(".sb-picker__answer")
    expect(answer.locator("h3")).to_have_text("October: Kikuyu at Canberra")
    jobs = answer.locator(".sb-picker__job").all_inner_texts()
    assert jobs, "nothing due in the middle of spring"
    page.reload()
    expect(answer.locator("h3")).to_have_text("October: Kikuyu at Canberra")
    assert page.locator("[data-choice=grass]").input_value() == "kikuyu"
    answer.get_by_role("link", name="October to print").click()
    page.wait_for_url("**/calendars/canberra/kikuyu.html#october")
    sheet = page.locator(".sb-month-sheet[data-month='10']")
    assert sheet.locator(".sb-month-sheet__job a").all_inner_texts() == jobs
    expect(sheet.locator("[data-print-month]")).to_be_visible()
    expect(sheet).to_be_in_viewport()


def test_the_months_jobs_lead_to_their_pages(reader: Callable[..., Reader]) -> None:
    page = opened(reader(), "index.html")
    choose(page, "couch", "sydney")
    job = page.locator(".sb-picker__job").first
    name = job.inner_text()
    job.click()
    expect(page.locator("h1")).to_have_text(name)


def test_another_grass_brings_another_answer(reader: Callable[..., Reader]) -> None:
    page = opened(reader(), "index.html")
    choose(page, "buffalo", "perth")
    expect(page.locator(".sb-picker__month")).to_have_text("October: Buffalo at Perth")
    choose(page, "tall-fescue", "atlanta")
    expect(page.locator(".sb-picker__month")).to_have_text("October: Tall fescue at Atlanta")
    assert page.locator(".sb-picker__month").count() == 1


def test_units_start_metric_everywhere_and_are_remembered(reader: Callable[..., Reader]) -> None:
    window = reader(locale="en-US")
    page = window.open("calculators/granular-feed.html")
    assert page.locator("html").get_attribute("data-units") == "metric"
    page.locator("header [data-units-choice=us]").click()
    window.open("grasses/kikuyu.html")
    assert page.locator("html").get_attribute("data-units") == "us"
    expect(page.locator("header [data-units-choice=us]")).to_have_attribute("aria-pressed", "true")


def test_nothing_is_kept_but_what_the_reader_chose(reader: Callable[..., Reader]) -> None:
    window = reader()
    page = opened(window, f"{SHEET}#v=1&on=2026-10-05&grass=couch")
    kept = page.evaluate("() => [...Object.keys(localStorage), ...Object.keys(sessionStorage)]")
    assert not [name for name in kept if re.search(r"on|date|job", name.rsplit(".", 1)[-1])]
    assert window.context.cookies() == []


def test_a_date_in_the_form_dates_the_sheet(reader: Callable[..., Reader]) -> None:
    page = opened(reader(locale="en-AU"), SHEET)
    page.locator("form[data-component=aftercare-date] input[name=on]").fill("2026-10-12")
    expect(page.locator("[data-from-day='0']").locator("[data-part=dates]")).to_contain_text("12 Oct")


def test_the_code_of_a_sheet_stands_on_its_page(reader: Callable[..., Reader], site: Path) -> None:
    page = reader().open(SHEET)
    image = page.locator(".sb-qr img")
    assert image.evaluate("image => image.complete && image.naturalWidth > 0")
    assert (site / "assets/qr/after-renovation.svg").read_text(encoding="utf-8").startswith("<svg")


def test_a_clients_link_says_what_to_do_today_first(reader: Callable[..., Reader]) -> None:
    done = TODAY - timedelta(days=9)
    page = opened(reader(viewport={"width": 390, "height": 844}), f"{SHEET}#v=1&on={done.isoformat()}")
    note = page.locator("[data-part=today]")
    expect(note).to_be_visible()
    expect(note).to_contain_text("day 9")
    todays = page.locator(".sb-aftercare__stretch--today").first
    assert int(todays.get_attribute("data-from-day") or 99) <= 9 <= int(todays.get_attribute("data-to-day") or 0)
    expect(note.locator("[data-answer]")).to_have_count(6)
    expect(note).to_be_in_viewport()


def test_a_link_opened_before_the_job_and_long_after_says_so(reader: Callable[..., Reader]) -> None:
    page = opened(reader(), f"{SHEET}#v=1&on=2026-11-02")
    expect(page.locator("[data-part=today]")).to_contain_text("The job is on")
    expect(page.locator("[data-part=today]")).to_contain_text("Until then, use, mow and water the lawn as usual.")
    opened_again = f"{page.url.split('#')[0]}#v=1&on=2025-11-02"
    page.goto(opened_again)
    page.reload()
    expect(page.locator("[data-part=today]")).to_contain_text("this sheet is finished")


@pytest.mark.parametrize("fragment", every(4, HOSTILE), ids=range(len(HOSTILE)))
def test_a_hostile_or_damaged_link_shows_the_sheet_and_a_plain_notice(reader: Callable[..., Reader], fragment: str) -> None:
    window = reader()
    plain = window.open(SHEET).locator(".md-content *").count() + 1  # the notice
    page = opened(reader(), f"{SHEET}#{fragment}")
    expect(page.locator("[data-part=today]")).to_contain_text("damaged")
    assert page.locator(".md-content *").count() == plain, "something of the link became markup"
    assert page.locator("[data-part=dates]").all_inner_texts() == [""] * page.locator("[data-part=dates]").count()
    expect(page.locator("h1")).to_be_visible()
