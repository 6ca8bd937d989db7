"""Dates of a job's steps: from the day of the job along what waits for what.

Twins: job dates, days of the year.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta

from generator.jobs.plan_steps import StepFor
from generator.season.calendar_days import MONTH_STARTS

Day = date  # by another name where a field is called so
# How far back a step is looked for that has to settle first; our limit.
EARLIEST_DAYS_BACK = 365
# How long after a job frost and heat matter most, while the lawn is open or its roots are short: four weeks, our assumption.
LAID_BARE_DAYS = 28


@dataclass(frozen=True)
class DatedStep:
    """A step with its dates.

    planned: its date by the plan; date: when it falls; until: last date of a step that runs on, or None.
    settles_days: how long it has to settle before what waits for it, or None.
    moved_by: the step that moved it, when it falls later than planned; None when it stands or was set by hand.
    """

    step: StepFor
    planned: Day
    date: Day
    until: Day | None
    settles_days: int | None = None
    moved_by: str | None = None

    @property
    def id(self) -> str:
        return self.step.step.id

    @property
    def moved_days(self) -> int:
        """Days later than planned; negative for earlier."""
        return (self.date - self.planned).days


def dated_steps(
    steps: tuple[StepFor, ...], on: date, settling: Mapping[str, tuple[int, ...]], done: Mapping[str, date]
) -> tuple[DatedStep, ...]:
    """Every step with its dates, in order of date, the plan's order within a day.

    on: the day of the job, day 0. settling: for a step that has to settle, how many days that takes by the day of the year
    it is done, 365 values, 1 January first. done: dates set by hand, of steps that were done or are put off.
    A step that has to settle is dated early enough for what waits for it; a step that is late moves only what depends on it.

    Dates added along a chain. From the day on, what waits keeps the plan's distance, because growth is counted from
    what was done; before the day it only has to come after.
    """
    dated: dict[str, DatedStep] = {}
    for each in steps:
        step = each.step
        planned = on + timedelta(step.day)
        wanted = done.get(step.id)
        if wanted is None and step.id in settling:
            wanted = _early_enough(each, steps, on, planned, settling[step.id])
        earliest, mover = wanted or planned, None
        for earlier in each.after:
            if earlier in dated and step.id not in done:
                free = dated[earlier].date + timedelta(_gap(each, dated[earlier]))
                if free > earliest:
                    earliest, mover = free, earlier
        length = None if step.until_day is None else timedelta(step.until_day - step.day)
        takes = settling[step.id][day_of_year(earliest)] if step.id in settling else None
        dated[step.id] = DatedStep(each, planned, earliest, None if length is None else earliest + length, takes, mover)
    order = {each.step.id: position for position, each in enumerate(steps)}
    return tuple(sorted(dated.values(), key=lambda each: (each.date, order[each.id])))


def _gap(waiting: StepFor, earlier: DatedStep) -> int:
    """Days that must lie between an earlier step and the one that waits for it."""
    step, before = waiting.step, earlier.step.step
    if before.id in step.gaps:
        return step.gaps[before.id]
    if earlier.settles_days is not None:
        return earlier.settles_days
    return step.day - before.day if step.day > 0 else 0


def _early_enough(each: StepFor, steps: tuple[StepFor, ...], on: date, planned: date, takes: tuple[int, ...]) -> date:
    """The last date, planned or before, from which the step has settled by the time something waits for it."""
    waiting = [other.step.day for other in steps if each.step.id in other.after and each.step.id not in other.step.gaps]
    if not waiting:
        return planned
    needed = on + timedelta(min(waiting))
    for back in range(EARLIEST_DAYS_BACK):
        found = planned - timedelta(back)
        if found + timedelta(takes[day_of_year(found)]) <= needed:
            return found
    return planned


def day_of_year(day: date) -> int:
    """0 for 1 January; 29 February counts as the 28th, for the engine's year has none."""
    return MONTH_STARTS[day.month - 1] + min(day.day, 28 if day.month == 2 else 31) - 1
