"""The year of a grass at a place, or a dated job, as an iCalendar file (RFC 5545), for the calendar on a phone. Twin: calendar file."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta

from icalendar import Alarm, Calendar, Event, vText

PRODUCT = "-//Swardbook//practice book//EN"
# A book that gives no name for its calendars still needs ids that nothing else has (RFC 2606 keeps this ending free).
NO_DOMAIN = "swardbook.invalid"
# Before any book was made: a file's number in the order of files is the minutes since then.
FIRST_MINUTE = datetime(2020, 1, 1, tzinfo=UTC)
# A day's work is told in the morning: so many hours after the day begins, by the clock of whoever keeps the calendar.
ALARM_HOUR = 7


def calendar_domain(calendar_name: str | None) -> str:
    """What makes the ids of a book's events its own: a name that the practice keeps for good, wherever the book is hosted."""
    return calendar_name or NO_DOMAIN


@dataclass(frozen=True)
class CalendarEntry:
    """A stretch of whole days.

    id: stable from build to build, unique in the file. first, last: inclusive days, of the first year where it comes round
    yearly. What has dates of its own wakes its reader on the morning of its first day; what comes round yearly is read at leisure.
    """

    id: str
    title: str
    text: str
    first: date
    last: date
    address: str | None = None
    yearly: bool = True


def calendar_file(name: str, entries: Iterable[CalendarEntry], domain: str, made: date) -> bytes:
    """The file's bytes. domain: what makes the ids the book's own; made: the day the book was built, or the moment the file was made.

    Of two files with the same ids the later one counts, so that an event whose date has moved moves in the calendar as well
    (RFC 5545, 3.8.7.3 and 3.8.7.4).
    """
    calendar = Calendar()
    calendar.add("prodid", PRODUCT)
    calendar.add("version", "2.0")
    calendar.add("calscale", "GREGORIAN")
    calendar.add("x-wr-calname", vText(name))  # A text like any other (RFC 5545, 3.8.8.2): commas are escaped.
    stamp = made if isinstance(made, datetime) else datetime(made.year, made.month, made.day, tzinfo=UTC)
    for entry in entries:
        calendar.add_component(_event(entry, domain, stamp))
    return bytes(calendar.to_ical())


def _event(entry: CalendarEntry, domain: str, stamp: datetime) -> Event:
    event = Event()
    event.add("uid", f"{entry.id}@{domain}")
    event.add("dtstamp", stamp)
    event.add("last-modified", stamp)
    event.add("sequence", max(0, (stamp - FIRST_MINUTE) // timedelta(minutes=1)))
    event.add("dtstart", entry.first)
    event.add("dtend", entry.last + timedelta(days=1))  # RFC 5545: the end of a whole-day event is the day after
    if entry.yearly:
        event.add("rrule", {"freq": "yearly"})
    event.add("summary", entry.title)
    event.add("description", entry.text)
    event.add("transp", "TRANSPARENT")
    if entry.address:
        event.add("url", entry.address)
    if not entry.yearly:
        event.add_component(_alarm(entry))
    return event


def _alarm(entry: CalendarEntry) -> Alarm:
    """A notice on the screen (RFC 5545, 3.6.6). An event of whole days begins at midnight, and the alarm counts from there (3.8.6.3)."""
    alarm = Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("description", entry.title)
    alarm.add("trigger", timedelta(hours=ALARM_HOUR))
    return alarm
