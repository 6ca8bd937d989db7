"""One job from the question whether the day will do to the client's last watering, on a telephone and without a network."""

import io
import re
from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path
from unicodedata import normalize

from icalendar import Calendar
from playwright.sync_api import Page, expect
from pypdf import PdfReader

from tests.site.reader import Reader
from tests.site.test_aftercare import ADDRESS, on_day
from tests.site.test_codes import read_back
from tests.site.test_jobs import JOB, part, step

PHONE = {"viewport": {"width": 360, "height": 780}, "locale": "en-AU", "accept_downloads": True}
# A Wednesday in Canberra's early summer, inside the window of couch there, and two days on.
DAY = date(2026, 12, 16)
LATER = DAY + timedelta(2)


def written(day: date) -> str:
    return f"{day:%a} {day.day} {day:%b %Y}"


def choose(page: Page) -> None:
    for name, value in (("grass", "couch"), ("plan", "warm-below-ground"), ("place", "canberra")):
        page.locator(f"[data-choice={name}]").select_option(value)
    page.locator("[data-choice=area]").fill("240 m2")
    page.locator("[data-choice=on]").fill(DAY.isoformat())
    expect(part(page, "headline")).to_have_text("Inside the window.")


def tell_the_day(page: Page, low: str, high: str, leaf: str, soil: str) -> None:
    for question, answer in (("Lowest temperature", low), ("Highest temperature", high)):
        field = step(page, "cut-down").get_by_label(question)
        field.fill(answer)
        field.press("Tab")
    for question, answer in (("Leaf", leaf), ("Soil", soil)):
        step(page, "cut-down").get_by_role("group", name=question).get_by_role("radio", name=answer, exact=True).check()


def hold_on_frost_and_go_two_days_later(page: Page) -> None:
    """Nothing is cut down in a frost (common practice, no source)."""
    cutting, core = step(page, "cut-down"), step(page, "core")
    cutting.locator("[data-part=hold] > summary").click()
    tell_the_day(page, "-2", "11", leaf="Frosted", soil="Moist")
    expect(cutting.locator("[data-part=hold-said]")).to_have_text("Hold")
    cutting.get_by_role("button", name="Go two days later").click()
    expect(cutting.locator("[data-part=date]").first).to_have_text(written(LATER))
    expect(core.locator("[data-part=date]").first).to_have_text(written(LATER))
    expect(part(page, "moves")).to_contain_text("What waits for it moves with it")
    if not cutting.get_by_label("Lowest temperature").is_visible():
        cutting.locator("[data-part=hold] > summary").click()
    expect(cutting.get_by_label("Lowest temperature")).to_have_value("")  # another day, not yet told
    tell_the_day(page, "11", "24", leaf="Dry", soil="Moist")
    expect(cutting.locator("[data-part=hold-said]")).to_have_text("Go")


def one_page(page: Page, paper: str) -> str:
    sheets = PdfReader(io.BytesIO(page.pdf(format=paper, prefer_css_page_size=True))).pages
    assert len(sheets) == 1
    return normalize("NFKC", " ".join(sheets[0].extract_text().split()))


def imported(page: Page, button: str, to: Path) -> dict[str, date]:
    """First line of each event of a calendar file to its first day, as another program reads them."""
    with page.expect_download() as waiting:
        page.locator(button).click()
    waiting.value.save_as(to)
    return {str(event["summary"]): event["dtstart"].dt for event in Calendar.from_ical(to.read_bytes()).walk("VEVENT")}


def test_from_will_the_day_do_to_the_clients_last_watering(reader: Callable[..., Reader], tmp_path: Path) -> None:
    window = reader(**PHONE)
    page = on_day(window, JOB + "#v=1&part=all", DAY)
    page.evaluate("window.print = () => {}")
    choose(page)
    hold_on_frost_and_go_two_days_later(page)
    page.clock.set_fixed_time(f"{LATER}T15:00:00")
    step(page, "core").locator("[data-act=done]").check()
    sand = part(page, "shopping").locator("tr", has_text="and").first
    assert sand.locator("td").first.inner_text()
    for sheet, words in (("sheet", "Core"), ("shopping", "Shopping list"), ("day-sheet", "Sheet for the day")):
        page.locator(f"[data-act=print-{sheet}]").click()
        assert words in one_page(page, "A4")
    events = imported(page, "[data-act=calendar]", tmp_path / "job.ics")
    assert events["Core the lawn"] == LATER
    page.locator(".sb-job a[data-part=maker]").click()
    expect(page).to_have_url(re.compile("aftercare/maker\\.html"))
    expect(page.locator("[data-part=link]")).to_contain_text(f"on={LATER}")
    link = page.locator("[data-part=link]").inner_text()
    assert "grass=couch" in link and "area=240" in link
    assert read_back(page.locator("[data-part=code] svg")) == [link]
    as_the_client(window, link.removeprefix(ADDRESS), tmp_path)


def as_the_client(window: Reader, path: str, folder: Path) -> None:
    today = window.page.locator("[data-part=today]")
    on_day(window, path, LATER)
    expect(today).to_contain_text("is day 0")
    expect(today).to_contain_text("Couch, 240 m²")
    on_day(window, path, LATER + timedelta(9))
    for words in ("is day 9", "stay off", "Every second day, for longer."):
        expect(today).to_contain_text(words)
    days = imported(window.page, "[data-component=aftercare-take] [data-part=calendar]", folder / "client.ics")
    assert LATER in days.values() and min(days.values()) == LATER
    page = on_day(window, path, LATER + timedelta(40))
    expect(today).to_contain_text("is day 40")
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    for paper in ("A4", "Letter"):
        assert "After the renovation" in one_page(page, paper)
