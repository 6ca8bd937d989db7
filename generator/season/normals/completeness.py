"""Which months of a daily record are whole enough to be counted."""

from calendar import monthrange
from collections.abc import Iterator, Mapping
from datetime import date
from typing import Literal, NamedTuple

# WMO-No. 1203: a monthly mean is not worked out with so many days missing, or so many one after another.
MOST_MISSING, LONGEST_GAP = 11, 5
Month = tuple[int, int]
WhyLeftOut = Literal["days", "gap", "sum"]


class MonthLeftOut(NamedTuple):
    """A month that is not counted. missing: days without a reading; gap: most of them one after another; why: which rule leaves it out."""

    month: Month
    missing: int
    gap: int
    why: WhyLeftOut


def months_of(readings: Mapping[date, float]) -> dict[Month, dict[int, float]]:
    """The readings by year and month, and in it by day of the month; any unit."""
    months: dict[Month, dict[int, float]] = {}
    for day, value in readings.items():
        months.setdefault((day.year, day.month), {})[day.day] = value
    return months


def missing_of(month: Month, days: Mapping[int, float]) -> tuple[int, int]:
    """How many days of a month have no reading, and the most of them one after another [days]."""
    longest = gap = 0
    length = monthrange(*month)[1]
    for day in range(1, length + 1):
        gap = 0 if day in days else gap + 1
        longest = max(longest, gap)
    return length - len(days), longest


def left_out(readings: Mapping[date, float], is_sum: bool) -> Iterator[MonthLeftOut]:
    """The months that do not count, in order. readings: by date, in any unit. is_sum: the month's figure is a total of its days, such as rain.

    Source: World Meteorological Organization 2017, Guidelines on the Calculation of Climate Normals, WMO-No. 1203: no monthly mean where 11 days or
    more are missing, or 5 or more one after another; a total only of a month with all its days.
    """
    for month, days in sorted(months_of(readings).items()):
        missing, gap = missing_of(month, days)
        if is_sum and missing:
            yield MonthLeftOut(month, missing, gap, "sum")
        elif missing >= MOST_MISSING:
            yield MonthLeftOut(month, missing, gap, "days")
        elif gap >= LONGEST_GAP:
            yield MonthLeftOut(month, missing, gap, "gap")


def whole_months(readings: Mapping[date, float], is_sum: bool) -> dict[Month, dict[int, float]]:
    """The months that count, by year and month; any unit."""
    out = {each.month for each in left_out(readings, is_sum)}
    return {month: days for month, days in sorted(months_of(readings).items()) if month not in out}
