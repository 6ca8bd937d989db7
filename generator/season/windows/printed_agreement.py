"""How far the computed windows agree with calendars that public bodies print."""

from collections.abc import Sequence
from dataclasses import dataclass

from generator.season.calendar_days import DAYS, MONTH_STARTS, WEEK_OF_DAY
from generator.season.windows.main_windows import Window

# Below this share of the printed weeks two calendars are said to disagree.
ENOUGH = 0.7


@dataclass(frozen=True)
class Agreement:
    """Weeks of the year in both calendars, and what share of each that is, 0 to 1."""

    shared_weeks: int
    share_of_printed: float
    share_of_computed: float

    @property
    def is_close(self) -> bool:
        """True where our window holds most of the printed weeks."""
        return self.share_of_printed >= ENOUGH


def day_number(month_day: str) -> int:
    """Day number, from 0, of a date written MM-DD."""
    month, day = map(int, month_day.split("-"))
    return MONTH_STARTS[month - 1] + day - 1


def agreement(first: str, last: str, windows: Sequence[Window]) -> Agreement | None:
    """A printed stretch of the year, MM-DD to MM-DD, against the windows we compute; None where we compute none.

    A week counts as in a window when more than half of its days are. Of two windows a year, the one that shares more is meant.
    """
    start = day_number(first)
    printed = _weeks(start, (day_number(last) - start) % DAYS + 1)
    found = [(printed & ours, ours) for ours in (_weeks(window.first, window.days) for window in windows)]
    if not found:
        return None
    shared, ours = max(found, key=lambda pair: len(pair[0]))
    return Agreement(len(shared), len(shared) / len(printed), len(shared) / len(ours))


def _weeks(first: int, days: int) -> set[int]:
    counted: dict[int, int] = {}
    for ahead in range(days):
        week = WEEK_OF_DAY[(first + ahead) % DAYS]
        counted[week] = counted.get(week, 0) + 1
    return {week for week, inside in counted.items() if inside > 3}
