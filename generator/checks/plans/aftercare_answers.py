"""A client's sheet answers what clients ask on every one of its days, each question once a day, and waters by one amount at a time."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from generator.book.book import PartialBook
from generator.book.records.aftercare import Aftercare, AnswerByDays
from generator.checks.check import Check
from generator.findings import Finding


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, sheet in book.aftercare.items():
        for question, told in sheet.asked.by_days.items():
            yield from _gaps(book, id, question, told, sheet.last_day)
        yield from _order(book, id, sheet)
        yield from _amounts(book, id, sheet)


def _gaps(book: PartialBook, id: str, question: str, told: Sequence[AnswerByDays], last_day: int) -> Iterator[Finding]:
    expected = 0
    for position, each in enumerate(told):
        place = ("aftercare", id, "asked", question, position)
        if each.to_day < each.from_day:
            yield Finding(book.where(*place, "to_day"), f"to_day {each.to_day} is before from_day {each.from_day}", "swap them, or correct one")
        elif each.from_day != expected:
            gap = f"says nothing on {_days(expected, each.from_day - 1)}" if each.from_day > expected else f"answers day {each.from_day} twice"
            yield Finding(book.where(*place, "from_day"), f"'{question}' {gap}", f"write {expected}, so that each day has one answer")
        expected = each.to_day + 1
    if expected != last_day + 1:
        gap = f"says nothing on {_days(expected, last_day)}" if expected <= last_day else "goes on after the last day of the sheet"
        where = book.where("aftercare", id, "asked", question, len(told) - 1, "to_day")
        yield Finding(where, f"'{question}' {gap}", f"let it end on day {last_day}, as the days below do")


def _order(book: PartialBook, id: str, sheet: Aftercare) -> Iterator[Finding]:
    previous = 0
    for position, each in enumerate(sheet.asked.coming):
        if not previous < each.day <= sheet.last_day:
            yield Finding(
                book.where("aftercare", id, "asked", "coming", position, "day"), f"day {each.day} is not after day {previous}, or not on the sheet",
                f"put them in order, from day 1 to day {sheet.last_day}",
            )
        previous = max(previous, each.day)


def _amounts(book: PartialBook, id: str, sheet: Aftercare) -> Iterator[Finding]:
    """An answer that runs over days with other amounts would tell an amount on the wrong day."""
    for position, told in enumerate(sheet.asked.water):
        stretches = [each for each in sheet.days if each.from_day <= told.to_day and each.to_day >= told.from_day]
        for before, after in pairwise(stretches):
            if before.quantities != after.quantities:
                yield Finding(
                    book.where("aftercare", id, "asked", "water", position, "to_day"),
                    f"'water' has one answer up to day {told.to_day}, and from day {after.from_day} the days below tell another amount",
                    f"part it there: to_day {after.from_day - 1}",
                )


def _days(first: int, last: int) -> str:
    return f"day {first}" if first == last else f"days {first} to {last}"


CHECK = Check("aftercare-answers", "An aftercare sheet answers what clients ask on each of its days.", ("aftercare",), _check)
