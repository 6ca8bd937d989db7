"""What a person types for a job, read: an area, a day, rain. What no lawn can be, and no calendar hold, is refused here.

Each raises Refused, which says what is wrong and what would be right; the caller knows where it was typed.
"""

import re
from datetime import date

from generator.findings import shown
from generator.units import QuantityError, read_quantity, unit

# A thousand hectares; beyond that a slip of the pen is likelier than a lawn (our limit).
LARGEST_LAWN_M2 = 10_000_000
# Steps lie years about the day of a job at most, and dates end with the year 9999 (our limits).
FIRST_YEAR, LAST_YEAR = 1900, 2199
# The most rain ever measured in a day is 1825 mm, at Foc-Foc on Réunion in 1966: World Meteorological Organization, archive of extremes.
MOST_RAIN_MM = 2000
# The same as people may go to a job by the practice's file (book/fields/plausible.py).
MOST_PEOPLE = 50
# A thousand million of any currency: more than a lawn ever cost, and far from where a computer stops counting cents exactly.
MOST_CENTS = 10**11
MINUTE_S, DAY_MINUTES = 60, 24 * 60
_DATE = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
AS_A_DATE = "write year, month and day, such as 2026-10-12"


class Refused(ValueError):
    """what is wrong, and instead, what would be right; neither begins with a capital nor ends with a stop."""

    def __init__(self, what: str, instead: str) -> None:
        super().__init__(f"{what}; {instead}")
        self.what = what
        self.instead = instead


def is_date(text: str) -> bool:
    """Whether a text is a date as 2026-10-12, of any year."""
    try:
        return _DATE.fullmatch(text) is not None and date.fromisoformat(text) is not None
    except ValueError:
        return False


def given_day(text: str) -> date:
    """A day that a job may have something to do with."""
    if not is_date(text):
        raise Refused(f"'{shown(text)}' is not a date", AS_A_DATE)
    day = date.fromisoformat(text)
    if not FIRST_YEAR <= day.year <= LAST_YEAR:
        raise Refused(f"'{text}' is not a day for a job", f"give one from {FIRST_YEAR} to {LAST_YEAR}")
    return day


def given_area_m2(text: str) -> float:
    """An area of lawn [m2]."""
    area_m2 = _si(text, "m2", "240 m2")
    if area_m2 <= 0:
        raise Refused(f"an area of {shown(text)} is not a lawn", "give more than 0, such as '240 m2'")
    if area_m2 > LARGEST_LAWN_M2:
        raise Refused(f"an area of {shown(text)} is not a lawn", f"give at most {LARGEST_LAWN_M2:,} m2")
    return area_m2


def given_rain_mm(text: str) -> float:
    """Rain of a day [mm]."""
    rain_mm = _si(text, "mm", "8 mm") * 1000
    if not 0 <= rain_mm <= MOST_RAIN_MM:
        raise Refused(f"'{shown(text)}' is not a day's rain", f"give 0 to {MOST_RAIN_MM} mm")
    return rain_mm


def given_people(text: str) -> int:
    """How many people go to a job."""
    if not (text.isascii() and text.isdecimal() and 1 <= int(text[:9]) <= MOST_PEOPLE):
        raise Refused(f"'{shown(text)}' is no number of people", f"give 1 to {MOST_PEOPLE}")
    return int(text)


def given_travel_minutes(text: str) -> float:
    """Time on the way to a lawn [min], of a day at most."""
    minutes = _si(text, "min", "15 min") / MINUTE_S
    if not 0 <= minutes <= DAY_MINUTES:
        raise Refused(f"'{shown(text)}' is no way to a lawn", "give the minutes to get there, such as '15 min'")
    return minutes


def _si(text: str, wanted: str, example: str) -> float:
    try:
        return read_quantity(text, unit(wanted))
    except QuantityError as error:
        raise Refused(error.what, error.instead or f"write it as '{example}'") from None
