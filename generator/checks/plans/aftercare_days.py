"""An aftercare sheet's days run forward."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.checks.check import Check
from generator.findings import Finding


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, sheet in book.aftercare.items():
        previous = 0
        for position, days in enumerate(sheet.days):
            place = ("aftercare", id, "days", position)
            if days.to_day < days.from_day:
                yield Finding(book.where(*place, "to_day"), f"to_day {days.to_day} is before from_day {days.from_day}",
                              "swap them, or correct one")
            elif days.from_day < previous:
                yield Finding(book.where(*place, "from_day"), f"from_day {days.from_day} comes after day {previous} above",
                              "put the days in order; they may overlap")
            previous = max(previous, days.from_day)


CHECK = Check("aftercare-days", "The days of an aftercare sheet run forward.", ("aftercare",), _check)
