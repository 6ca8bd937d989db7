"""No rule of when a task falls due, nor what the calendar says of it, names a month: it would be wrong on half the earth."""

import re
from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.checks.check import Check
from generator.findings import Finding
from generator.season.calendar_days import MONTHS

TEXTS = ("do_when", "not_when", "say", "because")
# May and March are also plain words; they are the month when they follow a word of time, or a day of the month.
_PLAIN = ("May", "March")
_SURE = [name for name in MONTHS if name not in _PLAIN]
_MONTH = re.compile(
    rf"(?i)\b({'|'.join(_SURE)})\b|\b(?:in|by|of|until|till|from|to|before|after|since|early|mid|late|\d{{1,2}})[ -](?-i:({'|'.join(_PLAIN)}))\b"
    r"|\bmonth *(?:==|[<>=!])"
)


def month_named(text: str) -> str | None:
    """The month that a text names, as it stands there; None where it names none."""
    found = _MONTH.search(text)
    return (found[1] or found[2] or "a month") if found else None


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, task in book.tasks.items():
        for position, due in enumerate(task.due):
            for name in TEXTS:
                if month := month_named(getattr(due, name) or ""):
                    yield Finding(
                        book.where("tasks", id, "due", position, name), f"a rule names {month}, which is another season elsewhere",
                        "say it in quantities of the season, such as soil_temperature or weeks_to_best",
                    )


CHECK = Check("no-months", "No rule of when a task falls due names a month.", ("tasks",), _check)
