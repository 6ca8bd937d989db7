"""A month goes onto exactly one sheet, whatever month, paper and calendar; a year onto thirteen; the days are right."""

import calendar
import io
import re
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest
from playwright.sync_api import Page
from pypdf import PdfReader

from tests.site.reader import Reader
from tests.slices import first

CALENDARS = (
    "calendars/atlanta/kentucky-bluegrass.html", "calendars/sydney/kikuyu.html", "calendars/darwin/zoysia.html",
    "calendars/canberra/couch.html", "calendars/canberra/perennial-ryegrass.html",
)  # fmt: skip
PAPERS = ("A4", "Letter")


@dataclass(frozen=True)
class Sheet:
    month: int
    name: str
    jobs: tuple[str, ...]


def busiest(site: Path, path: str) -> Sheet:
    """The month of a calendar with the most jobs on it."""
    sections = (site / path).read_text(encoding="utf-8").split('data-component="month-sheet" ')[1:]
    sheets = [
        Sheet(
            int(re.search(r'data-month="(\d+)"', section)[1]),
            calendar.month_name[int(re.search(r'data-month="(\d+)"', section)[1])],
            tuple(re.findall(r'sb-month-sheet__job"><a[^>]*>([^<]+)', section)),
        )
        for section in sections
    ]
    return max(sheets, key=lambda sheet: len(sheet.jobs))


def six_week_year(month: int) -> int:
    """A year in which this month touches six weeks that begin on Monday; February never does."""
    years = (year for year in range(2027, 2060) if len(calendar.monthcalendar(year, month)) == 6)
    return next(years, 2027)


def open_calendar(window: Reader, path: str, year: int) -> Page:
    """A calendar for a year that the reader typed; printing goes nowhere."""
    page = window.open(path)
    page.evaluate("() => { window.print = () => { window.printed = true; }; }")
    page.locator("#sheet-year").fill("")
    page.locator("#sheet-year").press_sequentially(str(year))
    page.locator("#sheet-week").select_option("1")
    return page


def printed(page: Page, paper: str) -> list[str]:
    """Text of each page as it would leave the printer."""
    return [each.extract_text() for each in PdfReader(io.BytesIO(page.pdf(format=paper, prefer_css_page_size=True))).pages]


def weeks_shown(page: Page, month: int) -> list[list[int]]:
    """Rows of days of a month as the page shows them, 0 for an empty box."""
    rows = page.locator(f".sb-month-sheet[data-month='{month}'] .sb-month-sheet__days tbody tr")
    return rows.evaluate_all("rows => rows.map(row => [...row.cells].map(cell => Number(cell.textContent)))")


def test_may_2027_needs_six_weeks() -> None:
    """1 May 2027 is a Saturday, so that 31 days from there end on a sixth Monday: 5 empty boxes + 31 days > 35."""
    assert calendar.weekday(2027, 5, 1) == calendar.SATURDAY
    assert six_week_year(5) == 2027


@pytest.mark.parametrize("path", first(1, CALENDARS))
def test_the_busiest_month_prints_on_one_sheet_with_every_job(reader: Callable[..., Reader], site: Path, path: str) -> None:
    window, sheet = reader(viewport={"width": 1280, "height": 900}), busiest(site, path)
    assert sheet.jobs
    year = six_week_year(sheet.month)
    page = open_calendar(window, path, year)
    for paper in PAPERS:
        page.locator(f".sb-month-sheet[data-month='{sheet.month}'] [data-print-month]").click()
        assert page.evaluate("window.printed") is True
        texts = printed(page, paper)
        assert len(texts) == 1, paper
        flat = re.sub(r"\s+", " ", texts[0])
        assert f"{sheet.name} {year}" in flat
        assert not [job for job in sheet.jobs if re.sub(r"\s+", " ", job) not in flat], paper
        assert "Search" not in flat and "Renovation guide" not in flat


@pytest.mark.soak
def test_every_calendar_prints_as_thirteen_sheets(reader: Callable[..., Reader], site: Path) -> None:
    window, counts = reader(viewport={"width": 1280, "height": 900}), {}
    for file in sorted((site / "calendars").glob("*/*.html")):
        path = file.relative_to(site).as_posix()
        page = open_calendar(window, path, 2027)
        counts |= {(path, paper): len(printed(page, paper)) for paper in PAPERS}
    assert {each: count for each, count in counts.items() if count != 13} == {}


def test_after_printing_the_page_is_whole_again(reader: Callable[..., Reader]) -> None:
    page = open_calendar(reader(), "calendars/sydney/couch.html", 2027)
    always = page.locator("[data-print-hidden]").count()  # the buttons of the calculator on this page
    page.locator(".sb-month-sheet[data-month='5'] [data-print-month]").click()
    assert page.locator("[data-print-hidden]").count() > always
    page.evaluate("() => window.dispatchEvent(new Event('afterprint'))")
    assert page.locator("[data-print-hidden]").count() == always


# The long run counts the pages of every calendar on both papers; here the fullest year is read.
@pytest.mark.parametrize(("path", "paper"), first(1, [("calendars/atlanta/kentucky-bluegrass.html", "Letter"), ("calendars/canberra/couch.html", "A4")]))
def test_a_printed_year_is_the_year_at_a_glance_and_twelve_months(reader: Callable[..., Reader], path: str, paper: str) -> None:
    page = open_calendar(reader(viewport={"width": 1280, "height": 900}), path, 2027)
    page.locator("[data-print-year]").click()
    texts = printed(page, paper)
    assert len(texts) == 13
    for month, text in zip(calendar.month_name[1:], texts[1:], strict=True):
        assert f"{month} 2027" in re.sub(r"\s+", " ", text)


@pytest.mark.parametrize("year", [2024, 2027, 2100])
def test_days_stand_under_the_weekdays_of_the_year_typed(reader: Callable[..., Reader], year: int) -> None:
    """2024 is a leap year; 2100 is none, being a century not divisible by 400. Python's calendar module is the judge."""
    page = open_calendar(reader(), "calendars/sydney/couch.html", year)
    for month in range(1, 13):
        assert weeks_shown(page, month) == calendar.monthcalendar(year, month), (year, month)


def test_weeks_may_begin_on_sunday(reader: Callable[..., Reader]) -> None:
    page = open_calendar(reader(), "calendars/sydney/couch.html", 2027)
    page.locator("#sheet-week").select_option("0")
    assert weeks_shown(page, 2) == calendar.Calendar(calendar.SUNDAY).monthdayscalendar(2027, 2)


def test_a_printed_month_names_the_owners_of_its_data(reader: Callable[..., Reader]) -> None:
    page = open_calendar(reader(), "calendars/sydney/couch.html", 2027)
    page.locator(".sb-month-sheet[data-month='10'] [data-print-month]").click()
    assert "Bureau of Meteorology" in re.sub(r"\s+", " ", printed(page, "A4")[0])
