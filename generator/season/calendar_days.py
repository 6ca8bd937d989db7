"""The engine's year: 365 days, day 0 is 1 January, no leap day; 52 weeks, the last one takes the remainder."""

from collections.abc import Sequence
from itertools import accumulate
from math import fsum

MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)
DAYS = 365
WEEKS = 52
MONTH_LENGTHS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
MONTH_STARTS = tuple(accumulate((0, *MONTH_LENGTHS[:-1])))
MONTH_OF_DAY = tuple(month for month, length in enumerate(MONTH_LENGTHS) for _ in range(length))
WEEK_OF_DAY = tuple(min(day // 7, WEEKS - 1) for day in range(DAYS))
_WEEK_DAYS = tuple(range(week * 7, DAYS if week == WEEKS - 1 else week * 7 + 7) for week in range(WEEKS))
# By month, the weeks whose middle lies in it.
WEEKS_OF_MONTH = tuple(tuple(week for week, days in enumerate(_WEEK_DAYS) if MONTH_OF_DAY[days[3]] == month) for month in range(12))


def month_days(month: int) -> range:
    """Day numbers of a month, 0 for January."""
    return range(MONTH_STARTS[month], MONTH_STARTS[month] + MONTH_LENGTHS[month])


def week_days(week: int) -> range:
    """Day numbers of a week, 0 for the one that begins on 1 January; week 51 has eight days."""
    return _WEEK_DAYS[week]


def week_number(day: int) -> int:
    """The week a reader would call it, 1 to 52."""
    return WEEK_OF_DAY[day % DAYS] + 1


def month_and_day(day: int) -> str:
    """`MM-DD` of a day number; days outside the year wrap round."""
    day %= DAYS
    return f"{MONTH_OF_DAY[day] + 1:02d}-{day_of_month(day):02d}"


def day_words(day: int) -> str:
    """'12 October' for a day number; days outside the year wrap round."""
    return f"{day_of_month(day)} {MONTHS[MONTH_OF_DAY[day % DAYS]]}"


def day_of_month(day: int) -> int:
    """1 to 31 for a day number."""
    return day % DAYS - MONTH_STARTS[MONTH_OF_DAY[day % DAYS]] + 1


def monthly_means(daily: Sequence[float]) -> tuple[float, ...]:
    """Means over the twelve months of 365 daily values, January first; any unit, kept."""
    return tuple(fsum(daily[day] for day in month_days(month)) / MONTH_LENGTHS[month] for month in range(12))


def weekly_means(daily: Sequence[float]) -> tuple[float, ...]:
    """Means over the 52 weeks of 365 daily values; any unit, kept."""
    return tuple(fsum(daily[day] for day in week_days(week)) / len(week_days(week)) for week in range(WEEKS))


def weekly_sums(daily: Sequence[float]) -> tuple[float, ...]:
    """Sums over the 52 weeks of 365 daily values; the last week sums eight days. Any unit, kept."""
    return tuple(fsum(daily[day] for day in week_days(week)) for week in range(WEEKS))
