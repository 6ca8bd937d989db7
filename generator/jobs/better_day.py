"""A better day for a lawn whose hired machine another lawn has that day."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from datetime import date, timedelta

from generator.jobs.job import Job
from generator.jobs.lawn_round import Clash, LawnJob, LawnVisit, Round

# How far a job is moved to get a machine: further, and it is another plan (our limit).
FURTHEST_DAYS = 14
# How far a visit of a lawn's year is moved for it: to either side of its week (our limit).
FURTHEST_DAYS_OF_A_VISIT = 7

# Everything that a job hires, with each day that it is out.
Hired = frozenset[tuple[str, date]]


@dataclass(frozen=True)
class _Stop:
    """A job or a visit, as far as machines go. uses: a thing, by its machine's id or its name, and each day that it needs it. on: its day.
    furthest: how many days it may be moved. moved: what it hires on another day; None for a day that is not right for it."""

    client: str
    on: date
    uses: frozenset[tuple[str, date]]
    hired: Hired
    furthest: int
    moved: Callable[[date], Hired | None]


def with_better_days(found: Round, worked_out: Callable[[LawnJob, date], Job], earliest: date) -> Round:
    """The round, with a day for each lawn but the first at every clash of a hired machine; jobs go before visits.

    worked_out: the job of a lawn on another day. earliest: nothing is moved ahead of it. A lawn that was in its window stays in it. What
    one clash moves is where it was moved to when the next is looked at, so that all proposals go together.
    """
    stops = dict(enumerate((*(_of_job(each, worked_out) for each in found.jobs), *map(_of_visit, found.visits))))
    hired = {number: each.hired for number, each in stops.items()}
    moved: dict[int, date] = {}
    clashes = []
    for clash in found.clashes:
        better = []
        if clash.from_where != "own":
            for number in _wanting(clash, stops, found):
                if number not in moved and not _still(clash, number, hired, found):
                    continue
                if number not in moved and (free := _free_day(number, stops, hired, earliest)):
                    moved[number], hired[number] = free
                if number in moved:
                    better.append((stops[number].client, moved[number]))
        clashes.append(replace(clash, better=tuple(better)))
    return replace(found, clashes=tuple(clashes))


def _of_job(each: LawnJob, worked_out: Callable[[LawnJob, date], Job]) -> _Stop:
    def moved(day: date) -> Hired | None:
        job = worked_out(each, day)
        return _hired(job) if job.verdict.inside or not each.job.verdict.inside else None

    uses = frozenset((gear.machine or gear.name, day) for gear in each.job.gear for day in gear.days)
    return _Stop(each.client, each.job.request.on, uses, _hired(each.job), FURTHEST_DAYS, moved)


def _of_visit(each: LawnVisit) -> _Stop:
    def moved(day: date) -> Hired:
        return frozenset((gear.machine, day) for gear in each.gear if gear.machine and gear.from_where != "own")

    return _Stop(each.client, each.day, frozenset((gear.machine or gear.name, each.day) for gear in each.gear), moved(each.day), FURTHEST_DAYS_OF_A_VISIT, moved)


def _hired(job: Job) -> Hired:
    return frozenset((gear.machine, day) for gear in job.gear if gear.machine and gear.from_where != "own" for day in gear.days)


def _machine(clash: Clash, found: Round) -> str | None:
    return next(each.machine for each in found.gear if each.name == clash.name)


def _wanting(clash: Clash, stops: dict[int, _Stop], found: Round) -> Iterator[int]:
    """Every lawn at a clash but the first, which stays."""
    thing = _machine(clash, found) or clash.name
    wanting = [number for number, each in stops.items() if (thing, clash.day) in each.uses]
    yield from wanting[1:]


def _still(clash: Clash, number: int, hired: dict[int, Hired], found: Round) -> bool:
    """Whether another lawn still has the machine that day, after what was moved already."""
    machine = _machine(clash, found)
    return machine is not None and any((machine, clash.day) in days for other, days in hired.items() if other != number)


def _free_day(number: int, stops: dict[int, _Stop], hired: dict[int, Hired], earliest: date) -> tuple[date, Hired] | None:
    """The nearest day on which everything that it hires is free, a later one before an earlier one as near, and what it hires then."""
    each = stops[number]
    taken = {use for other, uses in hired.items() if other != number for use in uses}
    for days in (sign * far for far in range(1, each.furthest + 1) for sign in (1, -1)):
        day = each.on + timedelta(days)
        wanted = None if day < earliest else each.moved(day)
        if wanted is not None and not wanted & taken:
            return day, wanted
    return None
