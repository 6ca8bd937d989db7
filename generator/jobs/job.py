"""One job: a plan on one grass, lawn and day, with everything that follows from them. Twin: job work."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date, timedelta

from generator.book.fields.sourced import Statement
from generator.book.records.calculator import Calculator
from generator.book.records.grass import Grass
from generator.book.records.inspection import Inspection
from generator.book.records.practice import Outside, Practice, SeasonGroups
from generator.book.records.renovation import Renovation
from generator.book.records.step import Gear, Step
from generator.book.records.task import Task
from generator.calculators.chosen import Chosen
from generator.jobs.amounts import Purchased, Spoil, Stock, Worked, passes, shopping, spoil, worked
from generator.jobs.dates import DatedStep, dated_steps, day_of_year
from generator.jobs.job_watering import WateringDay, Waterings
from generator.jobs.plan_steps import Adjusted, LeftOut, steps_for
from generator.jobs.price import Cost, Done, cost
from generator.jobs.said_first import heat_said, winter_said
from generator.jobs.step_time import USUAL_PEOPLE, minutes_of, people_of, time_of
from generator.jobs.window_answer import Verdict, verdict
from generator.season.growth import yearly_growth
from generator.season.reasons import Reason
from generator.season.year import SeasonYear, WeekClass
from generator.units import to_si, unit

SECONDS_A_DAY = 86400


@dataclass(frozen=True)
class Request:
    """What a job is worked out for.

    area_m2: of grass [m2]. on: day 0. done: dates set by hand, by step id: done already, or put off. rain_mm: rain that is
    forecast, by date [mm in 24 hours]. adjusted: what differs on this lawn. people: who go to it; the practice's own number where None.
    """

    area_m2: float
    on: date
    done: Mapping[str, date] = field(default_factory=dict)
    rain_mm: Mapping[date, float] = field(default_factory=dict)
    adjusted: Adjusted = field(default_factory=Adjusted)
    people: int | None = None


@dataclass(frozen=True)
class Records:
    """What a book has that a job is worked out from.

    cool_growth: optimum [°C], spread [K] and course above it of the cool-season grass that is sprayed out.
    """

    practice: Practice
    groups: SeasonGroups
    tasks: Mapping[str, Task]
    calculators: Mapping[str, Calculator]
    cool_growth: tuple[float, float, bool]
    inspection: Inspection | None = None


@dataclass(frozen=True)
class JobStep:
    """A dated step with its quantities, its watering, how long it takes, and what the season usually is like on its date.

    passes: how often the machine goes over the lawn. minutes: with the people who go to the job [min].
    """

    dated: DatedStep
    worked: tuple[Worked, ...]
    watering: tuple[WateringDay, ...]
    passes: int
    minutes: float | None
    growth_class: WeekClass
    frost_chance: float
    mean_temperature_c: float

    @property
    def id(self) -> str:
        return self.dated.id

    @property
    def counted(self) -> bool:
        """Whether it is in what is bought, carried away, timed and charged; see `StepFor`."""
        return self.dated.step.counted


@dataclass(frozen=True)
class NeededGear:
    """A thing needed, when first, and by when to book and to check it; book_by is None for what stands in the shed.

    machine: its id in practice.yml, where it is one of the machines; days: every day on which a step needs it.
    """

    name: str
    machine: str | None
    days: tuple[date, ...]
    from_where: str
    needed: date
    book_by: date | None
    check_by: date
    check: str | None
    steps: tuple[str, ...]


@dataclass(frozen=True)
class Settling:
    """A step that has to settle, and the first day the job may be on once it is done on its date."""

    step: str
    done_on: date
    days: int
    first_day: date


@dataclass(frozen=True)
class Job:
    """A plan turned into a dated job.

    first: what is said before all else: a law against the grass, a winter that kills it, great heat. what_then: what to do about a day
    outside the window, what great heat costs, and about frost or heat that comes all the same.
    steps: by date, the plan's order within a day. people: who go to it.
    """

    request: Request
    first: tuple[Reason, ...]
    verdict: Verdict
    what_then: tuple[Statement, ...]
    steps: tuple[JobStep, ...]
    left_out: tuple[LeftOut, ...]
    shopping: tuple[Purchased, ...]
    gear: tuple[NeededGear, ...]
    spoil: Spoil
    settling: tuple[Settling, ...]
    cost: Cost | None
    people: int = USUAL_PEOPLE


def work_out(
    request: Request, renovation: Renovation, grass_id: str, grass: Grass, season: SeasonYear, records: Records,
    laws: tuple[Reason, ...] = (), outside: Outside | None = None,
) -> Job:
    """The job: dates, quantities, shopping, gear, watering and cost.

    grass_id: what the practice's seed is kept under. season: of the grass at the place. laws: against the grass there. outside: what to do
    about a day outside the plan's window. Raises BindError where the plan fills in what does not
    exist, which the checks of a book rule out.
    """
    plan, practice = steps_for(renovation, grass, request.adjusted), records.practice
    settling = {
        each.step.id: settling_days(each.step.settles, records.tasks, season, records.cool_growth)
        for each in plan.kept if each.step.settles
    }
    dated = dated_steps(plan.kept, request.on, settling, request.done)
    # What fills in a step's calculators hangs on the grass and the practice, not on the date: a plan moves, its rates stay.
    chosen = Chosen(grass, practice, renovation, records.groups, sheet=records.inspection, measured=request.adjusted.measured)
    water = Waterings(request.area_m2, request.rain_mm, chosen, records.calculators)
    amounts = [worked(each.step.step, chosen, records.calculators, request.area_m2) for each in dated]
    quantities = [(each.step.step, found) for each, found in zip(dated, amounts, strict=True) if each.step.counted]
    bought = shopping(quantities, Stock(practice, grass_id, grass.name))
    away, people = spoil(quantities, practice, records.calculators), people_of(practice, request.people)

    def minutes(step: Step, times: int) -> float | None:
        time = time_of(step, practice, records.calculators)
        return minutes_of(time, records.calculators, request.area_m2, times, people, away) if time else None

    steps = tuple(_step(each, found, water, minutes, season) for each, found in zip(dated, amounts, strict=True))
    counted = [each for each in steps if each.counted]
    found, heat = verdict(season, renovation.window, request.on), records.groups.great_heat
    hot = heat_said(season, heat.afternoons.measured_in("°C").default if heat else None, request.on)
    return Job(
        request, (*laws, *winter_said(season), *hot), found, what_then(found, outside, heat.cost if heat and hot else ()), steps, plan.left_out, bought,
        _gear([each.dated for each in counted], practice), away, _settling(dated),
        cost([Done(each.dated.step.step, each.dated.date, each.passes, each.dated.step.added) for each in counted], bought,
             away.volume_m3, practice, records.tasks, records.calculators, request.area_m2), people,
    )


def what_then(found: Verdict, outside: Outside | None, heat: tuple[Statement, ...] = ()) -> tuple[Statement, ...]:
    """What to do about where the day stands. heat: what great heat costs, where it is to be expected."""
    if outside is None:
        return heat
    side = outside.early if found.side == "before" else outside.late if found.side == "after" else ()
    return (*heat, *side, *outside.gone_wrong)


def outside_of(groups: SeasonGroups, plan: str, season_group: str) -> Outside | None:
    """What to do about a day outside a plan's window: what is written for the plan, else for all of the grass's group."""
    return next((each for each in groups.outside.values() if plan in each.plans), groups.outside.get(season_group))


def settling_days(figure: str, tasks: Mapping[str, Task], season: SeasonYear, cool_growth: tuple[float, float, bool]) -> tuple[int, ...]:
    """How many days a step has to settle by the day of the year it is done [days]; 365 values, 1 January first.

    figure: task.figure, a range of time. cool_growth: optimum [°C], spread [K] and course above it of what dies. The short end
    where the grass that dies would grow at its fullest, the long end where it would not grow at all; heat does not lengthen it, cold does.
    Source: common practice for the range, longer when cool; that it follows growth potential is an assumption of ours.
    """
    task, _, name = figure.partition(".")
    claim = tasks[task].figures[name]
    short, long = (to_si(value, unit(claim.unit)) / SECONDS_A_DAY for value in (claim.lowest, claim.highest))
    optimum_c, spread_k, _ = cool_growth
    growth = yearly_growth(season.climate.mean_c, (optimum_c, spread_k, True))
    return tuple(round(long - (long - short) * potential) for potential in growth.potential)


def _step(
    dated: DatedStep, quantities: tuple[Worked, ...], water: Waterings, minutes: Callable[[Step, int], float | None], season: SeasonYear
) -> JobStep:
    day, times = day_of_year(dated.date), passes(dated.step.step, quantities)
    return JobStep(
        dated, quantities, water.days(dated), times, minutes(dated.step.step, times), season.classes[day], season.view.frost.chance[day], season.climate.mean_c[day]
    )


def gear_of(gear: Gear, practice: Practice) -> Gear:
    """A step's gear as this practice has it: whose the machine is, how early to book it, and what to look at before the day."""
    machine = practice.machines.get(gear.machine) if gear.machine else None
    if machine is None:
        return gear
    days = gear.book_days_ahead if machine.book_days_ahead is None else machine.book_days_ahead
    return gear.model_copy(update={"from_where": machine.ownership, "book_days_ahead": days, "check": gear.check or machine.check})


def _gear(dated: Iterable[DatedStep], practice: Practice) -> tuple[NeededGear, ...]:
    """Each thing once, for the first day it is needed, with the longest booking time and the first check given for it."""
    uses: dict[str, list[tuple[DatedStep, Gear]]] = {}
    for each in dated:
        for gear in each.step.step.gear:
            uses.setdefault(gear.machine or gear.name, []).append((each, gear_of(gear, practice)))
    return tuple(_needed(several) for several in uses.values())


def _needed(uses: list[tuple[DatedStep, Gear]]) -> NeededGear:
    first, gear = uses[0]
    days = max(each.book_days_ahead for _, each in uses)
    return NeededGear(
        gear.name, gear.machine, tuple(dict.fromkeys(each.date for each, _ in uses)), gear.from_where, first.date,
        None if gear.from_where == "own" else first.date - timedelta(days),
        first.date - timedelta(1), next((each.check for _, each in uses if each.check), None), tuple(each.id for each, _ in uses),
    )


def _settling(dated: tuple[DatedStep, ...]) -> tuple[Settling, ...]:
    found = []
    for each in dated:
        if each.settles_days is None:
            continue
        waiting = [other.step.step.day for other in dated if each.id in other.step.after]
        ready = each.date + timedelta(each.settles_days)
        found.append(Settling(each.id, each.date, each.settles_days, ready - timedelta(min(waiting, default=0))))
    return tuple(found)
