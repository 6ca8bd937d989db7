"""Many lawns at once: their jobs, one shopping list, one gear list, and where two want the same machine on a day."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from math import ceil, fsum

from generator.book.records.step import Gear
from generator.calculators.calculate import Amount
from generator.calculators.single_value import single
from generator.jobs.amounts import SNAP, Purchased
from generator.jobs.job import Job


@dataclass(frozen=True)
class LawnJob:
    """One lawn's job. client: its code; lawn: what else names it, ids of grass, place, site and plan. town: the part of town it lies in, and
    travel_minutes to get there from the lawn before it, as the practice says."""

    client: str
    lawn: Mapping[str, str]
    job: Job
    town: str = ""
    travel_minutes: float = 0


@dataclass(frozen=True)
class LawnVisit:
    """A visit of a lawn's year that falls in the days of the round. lawn: ids of grass, place and site. year: the day it begins.
    minutes: of our own work [min]; None where the practice says nothing of it. gear: as this practice has it."""

    client: str
    lawn: Mapping[str, str]
    id: str
    year: str
    day: date
    tasks: tuple[str, ...]
    minutes: float | None
    gear: tuple[Gear, ...]
    town: str = ""
    travel_minutes: float = 0


@dataclass(frozen=True)
class SharedGear:
    """A thing that several jobs need: whose it is, and each day it is out with who has it."""

    name: str
    machine: str | None
    from_where: str
    book_by: date | None
    uses: tuple[tuple[date, str], ...]


@dataclass(frozen=True)
class Clash:
    """One machine wanted by several lawns on one day. from_where: own ones go round; a hired one has to be settled. better: for each lawn that
    would have to move, the nearest day of its job on which everything that it hires is free; without those that have none."""

    name: str
    from_where: str
    day: date
    clients: tuple[str, ...]
    better: tuple[tuple[str, date], ...] = ()


@dataclass(frozen=True)
class WorkDay:
    """A day's work: whose lawns are worked on, one part of town after the other, and how long the steps take together and the way from lawn to
    lawn [min], where the practice says."""

    day: date
    clients: tuple[str, ...]
    minutes: float
    travel_minutes: float = 0


@dataclass(frozen=True)
class Round:
    """Everything a round comes to. jobs, visits: by day, then by client, whatever order the lawns were given in."""

    jobs: tuple[LawnJob, ...]
    shopping: tuple[Purchased, ...]
    gear: tuple[SharedGear, ...]
    clashes: tuple[Clash, ...]
    days: tuple[WorkDay, ...]
    visits: tuple[LawnVisit, ...] = ()


def round_of(jobs: Iterable[LawnJob], visits: Iterable[LawnVisit] = ()) -> Round:
    """The round of these jobs and visits. What visits use up is bought by the year, and is not on the list."""
    ordered = tuple(sorted(jobs, key=lambda each: (each.job.request.on, each.client, *sorted(each.lawn.items()), each.job.request.area_m2)))
    visited = tuple(sorted(visits, key=lambda each: (each.day, each.client, each.id)))
    gear = _gear(ordered, visited)
    return Round(ordered, _shopping(ordered), gear, _clashes(gear), _days(ordered, visited), visited)


def _shopping(jobs: tuple[LawnJob, ...]) -> tuple[Purchased, ...]:
    """Each product once over all lawns, packs rounded up once: three half packs are two packs."""
    lines: dict[str, list[Purchased]] = {}
    for each in jobs:
        for bought in each.job.shopping:
            lines.setdefault(bought.product or f"{bought.name} {bought.note}", []).append(bought)
    return tuple(_together(lines[key]) for key in sorted(lines))


def _together(several: list[Purchased]) -> Purchased:
    first = several[0]
    total = Amount(fsum(single(each.amount.si) for each in several), first.amount.unit, first.amount.us_unit, first.amount.decimals)
    packs = None if first.pack_si is None else ceil(single(total.si) / first.pack_si - SNAP)
    return Purchased(first.name, first.product, total, packs, first.price_each, first.steps, first.pack_si, first.note)


@dataclass(frozen=True)
class _Use:
    """A thing that one client's work needs on some days."""

    client: str
    name: str
    machine: str | None
    from_where: str
    book_by: date | None
    days: tuple[date, ...]


def _gear(jobs: tuple[LawnJob, ...], visits: tuple[LawnVisit, ...]) -> tuple[SharedGear, ...]:
    things: dict[str, list[_Use]] = {}
    for each in jobs:
        for gear in each.job.gear:
            use = _Use(each.client, gear.name, gear.machine, gear.from_where, gear.book_by, gear.days)
            things.setdefault(gear.machine or gear.name, []).append(use)
    for visit in visits:
        for needed in visit.gear:
            book_by = None if needed.from_where == "own" else visit.day - timedelta(needed.book_days_ahead)
            use = _Use(visit.client, needed.name, needed.machine, needed.from_where, book_by, (visit.day,))
            things.setdefault(needed.machine or needed.name, []).append(use)
    return tuple(_shared(things[key]) for key in sorted(things))


def _shared(needed: list[_Use]) -> SharedGear:
    first = needed[0]
    book = [use.book_by for use in needed if use.book_by]
    uses = sorted({(day, use.client) for use in needed for day in use.days})
    return SharedGear(first.name, first.machine, first.from_where, min(book, default=None), tuple(uses))


def _clashes(gear: tuple[SharedGear, ...]) -> tuple[Clash, ...]:
    """Only machines clash: there is one of each in practice.yml, and rakes enough for all."""
    found = []
    for each in gear:
        by_day: dict[date, list[str]] = {}
        for day, client in each.uses if each.machine else ():
            by_day.setdefault(day, []).append(client)
        found += [Clash(each.name, each.from_where, day, tuple(clients)) for day, clients in by_day.items() if len(clients) > 1]
    return tuple(sorted(found, key=lambda clash: (clash.day, clash.name)))


def _days(jobs: tuple[LawnJob, ...], visits: tuple[LawnVisit, ...]) -> tuple[WorkDay, ...]:
    days: dict[date, dict[str, float]] = {}
    for each in jobs:
        for step in each.job.steps:
            if step.dated.step.step.who == "hands":
                clients = days.setdefault(step.dated.date, {})
                clients[each.client] = clients.get(each.client, 0.0) + (step.minutes or 0.0 if step.counted else 0.0)
    for visit in visits:
        clients = days.setdefault(visit.day, {})
        clients[visit.client] = clients.get(visit.client, 0.0) + (visit.minutes or 0.0)
    # A client with several lawns is one stop.
    stops: tuple[LawnJob | LawnVisit, ...] = (*jobs, *visits)
    town = {each.client: each.town for each in reversed(stops)}
    travel = {each.client: each.travel_minutes for each in reversed(stops)}
    return tuple(
        WorkDay(day, tuple(sorted(days[day], key=lambda client: (town[client], client))), fsum(days[day].values()), fsum(travel[client] for client in days[day]))
        for day in sorted(days)
    )
