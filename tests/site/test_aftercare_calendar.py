"""The days of a client's sheet as a calendar file: icalendar reads it back (RFC 5545), and Python's own calendar has its dates."""

import random
import re
from collections.abc import Callable
from datetime import UTC, date, datetime, time, timedelta
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from icalendar import Calendar
from playwright.sync_api import Page, expect

from tests.site.conftest import ROOT
from tests.site.reader import Reader
from tests.site.test_aftercare import ADDRESS, PHONE, SHEET, on_day
from tests.slices import every
from tests.yaml_files import read_yaml

SHEETS = sorted((ROOT / "data/aftercare").glob("*.yml"))
BUTTON = "[data-component=aftercare-take] [data-part=calendar]"


def downloaded(page: Page, to: Path) -> bytes:
    with page.expect_download() as waiting:
        page.locator(BUTTON).click()
    waiting.value.save_as(to / waiting.value.suggested_filename)
    return (to / waiting.value.suggested_filename).read_bytes()


def name_of(value: Any) -> str:
    return value.stem if isinstance(value, Path) else str(value)


@pytest.mark.parametrize(("file", "on"), every(4, [(file, on) for on in (date(2028, 2, 29), date(2026, 10, 3)) for file in SHEETS]), ids=name_of)
def test_each_stretch_is_an_entry_with_its_dates(reader: Callable[..., Reader], tmp_path: Path, file: Path, on: date) -> None:
    """A leap day, and the day before Sydney's clocks change."""
    written = read_yaml(file)
    page = on_day(reader(**PHONE, timezone_id="Australia/Sydney"), f"aftercare/{file.stem}.html#v=1&on={on}&grass=couch&done=core", on)
    data = downloaded(page, tmp_path)
    assert (tmp_path / f"{file.stem}-{on}.ics").exists()
    assert data.endswith(b"\r\n") and b"\n" not in data.replace(b"\r\n", b"") and max(map(len, data.split(b"\r\n"))) <= 75
    events = Calendar.from_ical(data).walk("VEVENT")
    assert [(event.decoded("dtstart"), event.decoded("dtend")) for event in events] == [
        (on + timedelta(days["from_day"]), on + timedelta(days["to_day"] + 1)) for days in written["days"]
    ]
    assert len({str(event["uid"]) for event in events}) == len(events)
    for event, days in zip(events, written["days"], strict=True):
        assert event["summary"] == f"{written['name']}: {days['title']}"
        assert all(each in event["description"] for each in [*days["do"], *days.get("leave", [])])
        assert event["url"] == f"{ADDRESS}aftercare/{file.stem}.html#v=1&on={on}&grass=couch&done=core"
        assert str(event["uid"]).endswith("@tussocklane.example")  # the host of the practice's public address
        [alarm] = event.walk("VALARM")  # RFC 5545, 3.6.6: seen on the screen, at seven in the morning of the first day
        assert (alarm["action"], alarm["description"], alarm.decoded("trigger")) == ("DISPLAY", event["summary"], timedelta(hours=7))


def test_an_entry_keeps_its_id_and_another_day_has_others(reader: Callable[..., Reader], tmp_path: Path) -> None:
    window = reader(**PHONE)
    ids = []
    for on, seen in ((date(2026, 10, 12), 0), (date(2026, 10, 12), 9), (date(2026, 10, 13), 0)):
        page = on_day(window, f"{SHEET}#v=1&on={on}", on + timedelta(seen))
        ids.append({str(event["uid"]) for event in Calendar.from_ical(downloaded(page, tmp_path)).walk("VEVENT")})
    assert ids[0] == ids[1] and not ids[0] & ids[2]


def test_a_sheet_without_a_day_offers_no_dates_until_one_is_typed(reader: Callable[..., Reader], tmp_path: Path) -> None:
    page = reader().open(SHEET)
    assert not page.locator(BUTTON).is_visible()
    page.locator("input[name=on]").fill("2026-10-12")
    expect(page.locator(BUTTON)).to_be_visible()
    events = Calendar.from_ical(downloaded(page, tmp_path)).walk("VEVENT")
    assert events[0].decoded("dtstart") == date(2026, 10, 12)
    page.locator("input[name=on]").fill("0212-10-12")  # half typed: no link carries such a day
    expect(page.locator(BUTTON)).not_to_be_visible()


# Days of jobs -> the dates in their files, as 'first last', made in one page.
DATES_OF = """days => days.map(on => {
  Swardbook.aftercareSheet.start = Swardbook.dates.fromIso(Swardbook.clientLink.read("v=1&on=" + on).on);
  return Swardbook.aftercareSheet.calendar(new Date()).text.match(/(DTSTART|DTEND);VALUE=DATE:\\d{8}(?=\\r)/g).map(line => line.split(":")[1]).join(" ");
})"""


def test_two_hundred_years_of_days_have_pythons_dates(reader: Callable[..., Reader]) -> None:
    """The ends of February and of the year, in each year that a link may name, and a thousand days besides."""
    written = read_yaml(ROOT / "data/aftercare/after-renovation.yml")["days"]
    years = range(2000, 2200)
    days = [date(year, 3, 1) - timedelta(1) for year in years] + [date(year, month, day) for year in years for month, day in ((3, 1), (12, 31))]
    dice = random.Random(5)
    days += [date(2000, 1, 1) + timedelta(dice.randrange(200 * 365)) for _ in range(1000)]
    got = reader(timezone_id="America/New_York").open(SHEET).evaluate(DATES_OF, [day.isoformat() for day in days])
    for day, dates in zip(days, got, strict=True):
        assert dates.split() == [f"{day + timedelta(each):%Y%m%d}" for stretch in written for each in (stretch["from_day"], stretch["to_day"] + 1)]


# The Sundays on which clocks change there, by public rule: first of April and October, second of March and first of November.
CHANGES = (
    ("Australia/Sydney", date(2026, 4, 5)), ("Australia/Sydney", date(2026, 10, 4)),
    ("America/New_York", date(2026, 3, 8)), ("America/New_York", date(2026, 11, 1)),
)  # fmt: skip


@pytest.mark.parametrize(("zone", "change"), CHANGES, ids=str)
def test_the_day_turns_at_the_clients_own_midnight_when_clocks_change(reader: Callable[..., Reader], zone: str, change: date) -> None:
    window, on = reader(timezone_id=zone, locale="en-AU"), change - timedelta(5)
    page = on_day(window, f"{SHEET}#v=1&on={on}", on)  # its clock stands before its scripts begin to count
    for day in (change, change + timedelta(1)):
        for clock in (time(0, 1), time(23, 59)):
            moment = datetime.combine(day, clock, ZoneInfo(zone))
            page.clock.set_fixed_time(moment.astimezone(UTC))
            page.evaluate("() => Swardbook.aftercareSheet.open(Swardbook.clientLink.ofPage())")
            said = page.locator(".sb-aftercare__headline").inner_text()
            assert int(re.search(r"is day (\d+)", said)[1]) == (day - on).days, moment
