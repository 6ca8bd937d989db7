"""Calendar files that any phone takes: icalendar, the outside reader, must make sense of every one (RFC 5545)."""

import random
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from functools import cache

import pytest
from icalendar import Calendar
from playwright.sync_api import Page

from generator.book.attribution import place_attribution
from generator.files.calendar_file import NO_DOMAIN, CalendarEntry, calendar_file
from generator.files.job_calendar import job_key
from generator.season.season_cache import SeasonCache
from generator.site.frame.render import SCRIPT, asset_files
from generator.site.year.year_files import calendar_path, year_calendar
from tests.our_book import seasons
from tests.pages.shipped_book import TODAY, files, pairs

ENTRY = CalendarEntry("town--couch--feed-1", "Feed; lightly, twice", "A line.\nAnother, with a comma", date(2027, 3, 1), date(2027, 3, 1), "https://x.example/a.html")


@cache
def read(grass: str, place: str) -> list:
    return Calendar.from_ical(files()[calendar_path(grass, place)]).walk("VEVENT")


def test_an_entry_comes_back_as_it_went_in():
    event = Calendar.from_ical(calendar_file("Town", [ENTRY], "x.example", TODAY)).walk("VEVENT")[0]
    assert event["summary"] == "Feed; lightly, twice"
    assert event["description"] == "A line.\nAnother, with a comma"
    assert event["uid"] == "town--couch--feed-1@x.example"
    assert event.decoded("dtstart") == date(2027, 3, 1)
    # RFC 5545, 3.6.1: the end of a whole day is the day after it.
    assert event.decoded("dtend") == date(2027, 3, 2)
    assert event["rrule"]["FREQ"] == ["YEARLY"]
    assert event["url"] == "https://x.example/a.html"


def test_what_has_a_date_of_its_own_rings_on_its_first_morning_and_what_comes_round_yearly_does_not():
    """RFC 5545, 3.6.6: a DISPLAY alarm has a DESCRIPTION and a TRIGGER; 3.8.6.3: it counts from the start, midnight for a whole day."""
    once = replace(ENTRY, id="once", last=date(2027, 3, 9), yearly=False)
    yearly, dated = Calendar.from_ical(calendar_file("Town", [ENTRY, once], "x.example", TODAY)).walk("VEVENT")
    assert yearly.walk("VALARM") == []
    [alarm] = dated.walk("VALARM")
    assert alarm["action"] == "DISPLAY" and alarm["description"] == "Feed; lightly, twice"
    assert datetime.combine(dated.decoded("dtstart"), datetime.min.time()) + alarm.decoded("trigger") == datetime(2027, 3, 1, 7, 0)


def test_lines_are_folded_and_end_as_the_standard_has_it():
    """RFC 5545, 3.1: lines end with CR LF and are no longer than 75 octets."""
    for name, content in files().items():
        if name.endswith(".ics"):
            assert isinstance(content, bytes)
            lines = content.split(b"\r\n")
            assert lines[-1] == b"" and not any(b"\n" in line for line in lines), name
            assert max(map(len, lines)) <= 75, name


@pytest.mark.parametrize("place", seasons().calendar_places)
def test_every_calendar_is_read_and_each_entry_is_whole(place):
    thanks = place_attribution(seasons().book, place)
    for grass in seasons().book.grasses:
        events = read(grass, place)
        assert events, grass
        ids = [str(event["uid"]) for event in events]
        assert len(ids) == len(set(ids)), grass
        for event in events:
            assert event["rrule"]["FREQ"] == ["YEARLY"]
            assert event.decoded("dtend") > event.decoded("dtstart")
            assert all(each in event["description"] for each in thanks)
            assert str(event["uid"]).endswith("@tussocklane.example")  # the name that the practice keeps, not its host


def test_a_window_is_where_the_engine_puts_it():
    """Sydney's couch: the window of the page, first and last day, though it crosses New Year."""
    window = seasons().season("couch", "sydney").renovation.windows[0]
    event = next(each for each in read("couch", "sydney") if str(each["uid"]).startswith("sydney--couch--renovation-1@"))
    assert window.last < window.first
    first, last = event.decoded("dtstart"), event.decoded("dtend") - timedelta(days=1)
    # 2026 and 2027 have no leap day, so that day numbers count from 1 January.
    assert (first.year, last.year) == (2026, 2027)
    assert ((first - date(2026, 1, 1)).days, (last - date(2027, 1, 1)).days) == (window.first, window.last)


def test_ids_and_days_are_the_same_whenever_the_book_is_built():
    for later in (date(2027, 2, 11), date(2031, 11, 30)):
        for grass in seasons().book.grasses:
            before, after = read(grass, "sydney"), Calendar.from_ical(year_calendar(seasons(), grass, "sydney", later)).walk("VEVENT")
            assert [str(each["uid"]) for each in before] == [str(each["uid"]) for each in after]
            assert [f"{each.decoded('dtstart'):%m-%d}" for each in before] == [f"{each.decoded('dtstart'):%m-%d}" for each in after]


def test_no_id_is_in_two_calendars():
    ids = [str(event["uid"]) for grass, place in pairs() for event in read(grass, place)]
    assert len(ids) == len(set(ids))


def test_what_the_grass_does_not_take_is_not_in_its_calendar():
    book = seasons().book
    for grass, record in book.grasses.items():
        never = [task for task, operation in record.operations.items() if operation.level == "none"]
        ids = [str(event["uid"]).split("--")[2] for event in read(grass, "sydney")]
        assert not [id for id in ids for task in never if id.startswith(f"{task}-")], grass


def test_a_rhythm_is_told_once_and_not_every_week():
    """A cut a week for half a year would bury everything else: fewer entries than one a week."""
    assert all(len(read(grass, place)) < 52 for grass, place in pairs())
    assert any("every week until" in event["summary"] for event in read("couch", "sydney"))


def test_a_book_that_moves_to_another_host_keeps_its_ids() -> None:
    """Calendars on telephones go by the id of an event: at a new address it must be the same event."""
    book = seasons().book
    moved = SeasonCache(replace(book, practice=book.practice.model_copy(update={"public_address": "https://elsewhere.example/lawns/"})))
    after = Calendar.from_ical(year_calendar(moved, "couch", "sydney", TODAY)).walk("VEVENT")
    assert {str(event["uid"]) for event in after} == {str(event["uid"]) for event in read("couch", "sydney")}


def test_a_book_without_an_address_has_ids_of_its_own():
    book = seasons().book
    nowhere = SeasonCache(replace(book, practice=book.practice.model_copy(update={"public_address": None, "calendar_name": None})))
    events = Calendar.from_ical(year_calendar(nowhere, "couch", "sydney", TODAY)).walk("VEVENT")
    assert all(str(event["uid"]).endswith(f"@{NO_DOMAIN}") and "url" not in event for event in events)


WRITE = """([name, entries, made]) => Swardbook.calendarFile(name, entries.map(each => Object.assign({}, each, {
  first: Swardbook.dates.fromIso(each.first), last: Swardbook.dates.fromIso(each.last)
})), 'x.example', new Date(made))"""


def test_the_browser_writes_the_same_calendar(page: Page) -> None:
    """As an outside reader finds it, for the order of lines is free: long lines, signs that are escaped, and letters of four bytes."""
    draw, made = random.Random(5), datetime(2027, 3, 1, 10, 30, tzinfo=UTC)
    texts = ["".join(draw.choices("abc ;,\\\nöç草😀", k=draw.choice((1, 8, 90, 300)))).strip() or "x" for _ in range(40)]
    days = [date(2026, 12, 20) + timedelta(draw.randrange(400)) for _ in texts]
    entries = [
        CalendarEntry(f"job-{number}", text, f"{text}!", day, day + timedelta(number % 3), "https://x.example/a.html" if number % 2 else None, yearly=False)
        for number, (text, day) in enumerate(zip(texts, days, strict=True))
    ]
    page.goto("about:blank")
    page.add_script_tag(content=asset_files()[SCRIPT])
    plain = [{"id": each.id, "title": each.title, "text": each.text, "first": f"{each.first}", "last": f"{each.last}", "address": each.address} for each in entries]
    theirs = page.evaluate(WRITE, ["Jobs; all", plain, made.isoformat()])
    ours = calendar_file("Jobs; all", entries, "x.example", made)
    assert max(len(line) for line in theirs.encode().split(b"\r\n")) <= 75
    assert _read(theirs.encode()) == _read(ours)


def _read(text: bytes) -> list[dict[str, str]]:
    calendar = Calendar.from_ical(text)
    return [{name: value.to_ical().decode() for name, value in part.items()} for part in (calendar, *calendar.walk("VEVENT"), *calendar.walk("VALARM"))]


def test_the_ids_of_a_job_begin_alike_on_both_sides(page: Page) -> None:
    files = asset_files()
    page.goto("about:blank")
    page.add_script_tag(content=files[SCRIPT] + files["assets/job-planner.js"])
    job = {"plan": "warm", "grass": "couch", "place": "perth", "site": "open", "on": "2027-02-09", "name": "", "key": ""}
    assert page.evaluate("job => Swardbook.jobFiles.key(job)", job) == job_key(("warm", "couch", "perth", "open"), date(2027, 2, 9))
