"""Now: the only file that asks the clock. SOURCE_DATE_EPOCH stands in for it, so that a book makes the same bytes on any day.

Source: https://reproducible-builds.org/specs/source-date-epoch/
"""

import os
from datetime import UTC, datetime

VARIABLE = "SOURCE_DATE_EPOCH"
# A calendar of the year 9999 would end on a day that no date can name.
LATEST_YEAR = 9000
LATEST = int(datetime(LATEST_YEAR, 1, 1, tzinfo=UTC).timestamp())


def moment() -> datetime:
    """The moment that what is made now is dated with, in UTC, so that one book has one date round the world.

    Raises ValueError with one line for a SOURCE_DATE_EPOCH that is no moment.
    """
    given = os.environ.get(VARIABLE)
    if given is None:
        return datetime.now(UTC)
    if not (given.isascii() and given.isdigit() and len(given) <= len(str(LATEST)) and int(given) <= LATEST):
        raise ValueError(
            f"{VARIABLE} '{given[:40]}' is not a moment; give the seconds since 1 January 1970 as a whole number, such as 1764374400, or leave it unset"
        )
    return datetime.fromtimestamp(int(given), UTC)


def this_year() -> int:
    """The year of the clock itself: what is still to come is so whatever day a build is dated with."""
    return datetime.now(UTC).year
