"""Whether a date is in the window that a plan belongs in, and if not, by how much and why; and the next day that is.

Twin: next day.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import lru_cache
from typing import Literal

from generator.book.records.renovation import PlanWindow
from generator.jobs.dates import LAID_BARE_DAYS, day_of_year
from generator.season.calendar_days import DAYS
from generator.season.climate.frost import Frost
from generator.season.reasons import Day, Reason, Several, Value, because, both, count
from generator.season.windows.main_windows import runs_of
from generator.season.winter import KILLED, killed_by_winter
from generator.season.year import SeasonYear

Side = Literal["before", "after"]

# Classes of growth in which a plan without a window of its own may be done.
GROWING = ("growing", "peak")


@dataclass(frozen=True)
class Stretch:
    """A window as the planner needs it: inclusive days 0 to 364, and why it opens and closes where it does."""

    first: int
    best: int | None
    last: int
    why: Reason | Several
    why_first: Reason | Several
    why_last: Reason | Several

    @property
    def days(self) -> int:
        return (self.last - self.first) % DAYS + 1


@dataclass(frozen=True)
class Verdict:
    """Where a date stands to the plan's window.

    side, days_outside: before it opens or after it closed, by so many days; None and 0 inside, and where there is no window.
    stretch: the window it is in or next to; None where there is none. frost_chance: of any frost in the four weeks from the
    date, on the ground for grass that runs above it, 0 to 1.
    """

    kind: PlanWindow
    inside: bool
    side: Side | None
    days_outside: int
    stretch: Stretch | None
    why: Reason | Several
    frost_chance: float


def stretches(season: SeasonYear, kind: PlanWindow) -> tuple[tuple[Stretch, ...], Reason | None]:
    """The windows of one kind, and why there is none. Source: `season.windows`; `growing` is read off the growth classes."""
    if kind != "growing":
        found = season.windows[kind]
        return tuple(
            Stretch(each.first, each.best, each.last, each.why, both(each.why_first), both(each.why_last))
            for each in found.windows
        ), found.why_none
    if killed := killed_by_winter(season.weather, season.grass):
        return (), killed
    runs = runs_of([name in GROWING for name in season.classes])
    if not runs:
        return (), because("never-grows-strongly")
    return tuple(
        Stretch(
            first, None, last, because("grows-enough" if (last - first) % DAYS + 1 < DAYS else "grows-enough-all-year"),
            because("becomes-strong-enough"), because("becomes-too-slow"),
        )
        for first, last in runs
    ), None


def next_day(found: Sequence[Stretch], ready: date) -> date:
    """The day that a job is best planned for, from `ready` on, the first day that leaves time to prepare.

    In an open window: its best day while that is ahead, else `ready`. Outside one: the best day of the next to open, or its first
    where none is best. `ready` where there is no window.
    """
    day = day_of_year(ready)
    here = next((each for each in found if (day - each.first) % DAYS < each.days), None)
    if here:
        ahead = here.best is not None and (here.best - day) % DAYS <= (here.last - day) % DAYS
        return _on_or_after(ready, here.best) if ahead and here.best is not None else ready
    if not found:
        return ready
    opens = min(found, key=lambda each: (each.first - day) % DAYS)
    return _on_or_after(ready, opens.first if opens.best is None else opens.best)


def _on_or_after(ready: date, number: int) -> date:
    """The next such day of the year, 0 to 364; a 29 February on the way makes it a day later."""
    later = ready + timedelta((number - day_of_year(ready)) % DAYS)
    return later if day_of_year(later) == number else later + timedelta(1)


# The same for every grass of a place, and asked for each.
@lru_cache(maxsize=512)
def frost_ahead(frost: Frost) -> tuple[float, ...]:
    """Chance of any frost in the four weeks from each day of the year, 0 to 1; 365 values, 1 January first [1].

    Source: as `season.climate.frost`.
    """
    return tuple(frost.chance_of_any(day, LAID_BARE_DAYS) for day in range(DAYS))


def verdict(season: SeasonYear, kind: PlanWindow, on: date) -> Verdict:
    """Where a date stands to the windows of a kind; 29 February counts as the 28th."""
    day = day_of_year(on)
    found, why_none = stretches(season, kind)
    frost = season.view.frost.chance_of_any(day, LAID_BARE_DAYS)
    if why_none is not None:
        return Verdict(kind, False, None, 0, None, no_window(why_none), frost)
    for each in found:
        if (day - each.first) % DAYS < each.days:
            return Verdict(kind, True, None, 0, each, each.why, frost)
    near: list[tuple[int, Side, Stretch]] = [((each.first - day) % DAYS, "before", each) for each in found]
    near += [((day - each.last) % DAYS, "after", each) for each in found]
    days, side, stretch = min(near, key=lambda each: each[0])
    return Verdict(kind, False, side, days, stretch, outside(_days(days), side, stretch), frost)


def no_window(why: Reason) -> Reason:
    """What is said of any day where there is no window; how cold it gets is said before the answer (`said_first`)."""
    if why.code == KILLED:
        return because("no-window-for-winter")
    return because("no-window-here", why=why)


def outside(days: Value, side: Side, stretch: Stretch) -> Reason:
    """What is said of a day outside a window. days: how many it is out."""
    if side == "before":
        return because("before-window", days=days, day=Day(stretch.first), why=stretch.why_first)
    return because("after-window", days=days, day=Day(stretch.last), why=stretch.why_last)


def _days(days: int) -> Reason:
    return because("one-day") if days == 1 else because("several-days", days=count(days))
