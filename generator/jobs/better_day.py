"""A better day for a lawn whose hired machine another lawn has that day."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import date, timedelta

from generator.jobs.job import Job
from generator.jobs.lawn_round import Clash, LawnJob, Round

# How far a job is moved to get a machine: further, and it is another plan (our limit).
FURTHEST_DAYS = 14

# Everything that a job hires, with each day that it is out.
Hired = frozenset[tuple[str, date]]


def with_better_days(found: Round, worked_out: Callable[[LawnJob, date], Job], earliest: date) -> Round:
    """The round, with a day for each lawn but the first at every clash of a hired machine.

    worked_out: the job of a lawn on another day. earliest: no job is moved ahead of it. A lawn that was in its window stays in it. What
    one clash moves is where it was moved to when the next is looked at, so that all proposals go together.
    """
    jobs = dict(enumerate(found.jobs))
    hired = {number: _hired(each.job) for number, each in jobs.items()}
    moved: dict[int, date] = {}
    clashes = []
    for clash in found.clashes:
        better = []
        if clash.from_where != "own":
            for number in _wanting(clash, jobs):
                if number not in moved and not _still(clash, number, hired, found):
                    continue
                if number not in moved and (day := _free_day(number, jobs, hired, worked_out, earliest)):
                    moved[number], job = day, worked_out(jobs[number], day)
                    hired[number] = _hired(job)
                if number in moved:
                    better.append((jobs[number].client, moved[number]))
        clashes.append(replace(clash, better=tuple(better)))
    return replace(found, clashes=tuple(clashes))


def _hired(job: Job) -> Hired:
    return frozenset((gear.machine, day) for gear in job.gear if gear.machine and gear.from_where != "own" for day in gear.days)


def _wanting(clash: Clash, jobs: dict[int, LawnJob]) -> Iterator[int]:
    """Every lawn at a clash but the first, which stays."""
    wanting = [number for number, each in jobs.items() if any(gear.name == clash.name and clash.day in gear.days for gear in each.job.gear)]
    yield from wanting[1:]


def _still(clash: Clash, number: int, hired: dict[int, Hired], found: Round) -> bool:
    """Whether another lawn still has the machine that day, after what was moved already."""
    machine = next(each.machine for each in found.gear if each.name == clash.name)
    return machine is not None and any((machine, clash.day) in days for other, days in hired.items() if other != number)


def _free_day(number: int, jobs: dict[int, LawnJob], hired: dict[int, Hired], worked_out: Callable[[LawnJob, date], Job], earliest: date) -> date | None:
    """The nearest day on which everything that the job hires is free, a later one before an earlier one as near."""
    each = jobs[number]
    taken = {use for other, uses in hired.items() if other != number for use in uses}
    for days in (sign * far for far in range(1, FURTHEST_DAYS + 1) for sign in (1, -1)):
        day = each.job.request.on + timedelta(days)
        if day < earliest:
            continue
        job = worked_out(each, day)
        if (job.verdict.inside or not each.job.verdict.inside) and not _hired(job) & taken:
            return day
    return None
