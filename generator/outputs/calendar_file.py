"""The year of a grass at a place as an iCalendar file (RFC 5545), for the calendar on a phone."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta

from icalendar import Calendar, Event

PRODUCT = "-//Swardbook//practice book//EN"


@dataclass(frozen=True)
class Entry:
    """A stretch of whole days that comes round every year.

    id: stable from build to build, unique in the file. first, last: inclusive days of the first year.
    """

    id: str
    title: str
    text: str
    first: date
    last: date
    address: str | None = None


def calendar_file(name: str, entries: Iterable[Entry], domain: str, made_on: date) -> bytes:
    """The file's bytes. domain: what makes the ids the book's own; made_on: the day the book was built."""
    calendar = Calendar()
    calendar.add("prodid", PRODUCT)
    calendar.add("version", "2.0")
    calendar.add("calscale", "GREGORIAN")
    calendar.add("x-wr-calname", name)
    stamp = datetime(made_on.year, made_on.month, made_on.day, tzinfo=UTC)
    for entry in entries:
        calendar.add_component(_event(entry, domain, stamp))
    return calendar.to_ical()


def _event(entry: Entry, domain: str, stamp: datetime) -> Event:
    event = Event()
    event.add("uid", f"{entry.id}@{domain}")
    event.add("dtstamp", stamp)
    event.add("dtstart", entry.first)
    event.add("dtend", entry.last + timedelta(days=1))  # RFC 5545: the end of a whole-day event is the day after
    event.add("rrule", {"freq": "yearly"})
    event.add("summary", entry.title)
    event.add("description", entry.text)
    event.add("transp", "TRANSPARENT")
    if entry.address:
        event.add("url", entry.address)
    return event
