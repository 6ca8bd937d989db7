"""Days as weather services write them."""

import re
from collections.abc import Callable, Iterable
from datetime import date
from itertools import islice
from typing import Literal

DateOrder = Literal["year-first", "day-first", "month-first"]
DATE_ORDERS: tuple[DateOrder, ...] = ("year-first", "day-first", "month-first")
_PARTS = re.compile(r"(\d{1,4})[/.\- ](\d{1,2})[/.\- ](\d{1,4})(?:[T ].*)?$")
_DENSE = re.compile(r"(\d{4})(\d{2})(\d{2})(?:[T: ]?\d{4,6})?$")
# So many days tell whether the first number is a day or a month.
LOOKED_AT = 20_000
FIRST_YEAR, LAST_YEAR = 1700, 2200


def date_order(written: Iterable[str]) -> DateOrder | None:
    """In which order the days are written; None where no day of them tells whether day or month comes first."""
    day_first = month_first = 0
    for text in islice(written, LOOKED_AT):
        if not (found := _PARTS.match(text)):
            continue
        first, second = found[1], found[2]
        if len(first) == 4:
            return "year-first"
        day_first += int(first) > 12
        month_first += int(second) > 12
    if not day_first and not month_first:
        return None
    return "day-first" if day_first > month_first else "month-first"  # A slip of the hand does not outweigh a file.


def date_reader(order: DateOrder) -> Callable[[str], date | None]:
    """Reads a day as it is written in this order; what is no day is None."""

    def read(text: str) -> date | None:
        try:
            if (found := _DENSE.match(text)) is not None:
                return day_of(*map(int, found.groups()))
            if (found := _PARTS.match(text)) is None:
                return None
            first, second, third = (int(part) for part in found.groups())
            if len(found[1]) == 4:
                return day_of(first, second, third)
            return day_of(third, second, first) if order == "day-first" else day_of(third, first, second)
        except ValueError:
            return None

    return read


def day_of(year: int, month: int, day: int) -> date | None:
    """A day of the calendar; None for what is none, or lies in no year of a thermometer."""
    if not FIRST_YEAR <= year <= LAST_YEAR:
        return None
    try:
        return date(year, month, day)
    except ValueError:
        return None
