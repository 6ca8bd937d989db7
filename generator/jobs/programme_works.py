"""What falls due on one lawn through a year, sorted for a programme of visits. The weeks are those of the calendars (`due_weeks`)."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from generator.book.book import Book
from generator.book.records.grass import Grass
from generator.book.records.task import Due
from generator.jobs.visit_grouping import Movable
from generator.season.calendar_days import WEEKS
from generator.season.task_schedule import RuleWeeks, due_weeks, rule_weeks, weekly_quantities
from generator.season.windows.every_kind import KINDS
from generator.season.year import SeasonYear

# A rule that marks a moment, such as eight weeks before the best date, is as right two weeks off (assumption): earlier where it counts to
# something that has to find it done, later where it counts from something.
SLACK_WEEKS = 2
TO, SINCE = "weeks_to_", "weeks_since_"
# Moved further than this within the time that its rule allows, and it is the work of another part of the year (assumption).
FURTHEST_WEEKS = 6
# What comes round keeps three quarters of the weeks between: an eighth of them to either side (assumption).
PART_OF_INTERVAL = 8
# The quantity by which a rule says that its task is part of the renovation.
BEST = "weeks_to_best"
# Quantities of a rule that are windows of the season: a task of one of these is never moved out of it.
WINDOWS = frozenset(f"{kind}_window" for kind in KINDS)

# Why a work can be moved no further: its window, the weeks between two of its kind, what forbids it, or that it is too far.
Limit = Literal["window", "interval", "far"]


@dataclass(frozen=True)
class Work:
    """Something that falls due once. rule: the position of its rule in the task's `due`. limit: what keeps it from going further."""

    task: str
    rule: int
    at: Movable
    limit: Limit

    @property
    def week(self) -> int:
        """The week it falls due, 0 for the first."""
        return self.at.week


@dataclass(frozen=True)
class Routine:
    """What comes round every few weeks, and is no matter of single visits. weeks: 0 for the first."""

    task: str
    rule: int
    every_weeks: int
    weeks: tuple[int, ...]


@dataclass(frozen=True)
class YearOfWork:
    """Everything that a calendar lists for a grass at a place, each in one part.

    works: for visits. renovation: tasks of the renovation, which is a job of its own, and renovation_week. routine: what comes round
    every few weeks. shed: what is done to the machines.
    """

    works: tuple[Work, ...]
    renovation: tuple[str, ...]
    renovation_week: int | None
    routine: tuple[Routine, ...]
    shed: tuple[Work, ...]


def year_of_work(book: Book, grass: Grass, season: SeasonYear) -> YearOfWork:
    """What falls due, in the order of its weeks; a task that the grass does not take is left out, as the calendars leave it out."""
    quantities = weekly_quantities(season)
    works: list[Work] = []
    shed: list[Work] = []
    routine: list[Routine] = []
    renovation: list[tuple[int, str]] = []
    for task_id, task in book.tasks.items():
        operation = grass.operations.get(task_id)
        if operation and operation.level == "none":
            continue
        for rule, due in enumerate(task.due):
            weeks = tuple(each.week - 1 for each in due_weeks(due, quantities))
            if due.is_rhythm:
                routine += [Routine(task_id, rule, due.every_weeks, weeks)] if weeks else []
                continue
            found = rule_weeks(due, quantities)
            for week in weeks:
                if BEST in found.names and quantities[week][BEST] == 0:
                    renovation.append((week, task_id))
                else:
                    (shed if task.in_the_shed else works).append(_work(task_id, rule, week, due, found, alone=len(weeks) == 1))
    works = _apart(works, book)
    order = _plan_order(book, grass)
    by_week = sorted(renovation, key=lambda each: (order.get(each[1], len(order)), each[1]))
    return YearOfWork(
        _in_order(works), tuple(dict.fromkeys(task for _, task in by_week)), by_week[0][0] if by_week else None,
        tuple(routine), _in_order(shed),
    )


def _apart(works: list[Work], book: Book) -> list[Work]:
    """Works with their reach cut short where another begins that wants weeks between them; each keeps its own week."""

    def apart(one: Work, other: Work) -> bool:
        return other.task in book.tasks[one.task].not_on_one_visit or one.task in book.tasks[other.task].not_on_one_visit

    def shortened(work: Work) -> Work:
        taken = {week for other in works if apart(work, other) for week in weeks_of(other.at)}
        earlier, later = (
            next((by for by in range(most) if (work.week + way * (by + 1)) % WEEKS in taken), most)
            for way, most in ((-1, work.at.earlier), (1, work.at.later))
        )
        return replace(work, at=Movable(work.week, earlier, later))

    return [shortened(work) for work in works]


def weeks_of(at: Movable) -> set[int]:
    """Every week to which a work may go, its own among them."""
    return {(at.week + by) % WEEKS for by in range(-at.earlier, at.later + 1)}


def _in_order(works: list[Work]) -> tuple[Work, ...]:
    return tuple(sorted(works, key=lambda work: (work.week, work.task, work.rule)))


def _plan_order(book: Book, grass: Grass) -> dict[str, int]:
    return {step.task: at for at, step in reversed(list(enumerate(book.renovations[grass.renovation].steps))) if step.task}


def _work(task: str, rule: int, week: int, due: Due, found: RuleWeeks, alone: bool) -> Work:
    windowed, furthest = bool(found.do_names & WINDOWS), FURTHEST_WEEKS if alone else min(FURTHEST_WEEKS, due.every_weeks // PART_OF_INTERVAL)
    limit: Limit = "window" if windowed else "far" if alone else "interval"
    earlier, later = (len(list(_reach(week, way, furthest, found, windowed))) for way in (-1, 1))
    return Work(task, rule, Movable(week, earlier, later), limit)


def _reach(week: int, way: int, furthest: int, found: RuleWeeks, windowed: bool) -> Iterator[int]:
    """The weeks to which a work may be moved one way, the nearest first: never one that `not_when` forbids."""
    against = TO if way > 0 else SINCE
    slack = 0 if any(name.startswith(against) for name in found.do_names) else SLACK_WEEKS
    for by in range(1, furthest + 1):
        at = (week + way * by) % WEEKS
        if found.forbidden[at] or (not found.holds[at] and (windowed or by > slack)):
            return
        yield at


