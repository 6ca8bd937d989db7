"""Which tasks fall due in which month, for one grass at one place."""

from collections.abc import Iterator
from dataclasses import dataclass

from generator.book.book import Book
from generator.book.records.grass import Grass
from generator.book.records.task import Due, Task
from generator.season.calendar_days import MONTH_LENGTHS, MONTH_OF_DAY, MONTH_STARTS, week_days
from generator.season.task_schedule import Values, due_weeks, weekly_quantities
from generator.season.year import SeasonYear


@dataclass(frozen=True)
class DueTask:
    """A task in one month; `when` says which part of the month, in words."""

    task_id: str
    name: str
    due: Due
    when: str


def due_by_month(book: Book, grass: Grass, season: SeasonYear) -> list[list[DueTask]]:
    """Twelve lists, January first, each in the order of its days and, on one day, in the order of the grass's plan.

    A task that the grass does not take (operation level none) is left out. Where two rhythms of one task meet in a month
    (mowing every week, then every two), the one that fills more of it stands for both.
    """
    quantities = weekly_quantities(season)
    order = [step.task for step in book.renovations[grass.renovation].steps]
    months: list[list[tuple[int, int, DueTask]]] = [[] for _ in range(12)]
    for task_id, task in book.tasks.items():
        operation = grass.operations.get(task_id)
        if operation and operation.level == "none":
            continue
        rank = order.index(task_id) if task_id in order else len(order)
        for month, due, days in _chosen(task, quantities):
            months[month].append((days[0], rank, DueTask(task_id, task.name, due, _when(days, month, due.every_weeks))))
    return [[each for _, _, each in sorted(month, key=lambda entry: (entry[0], entry[1], entry[2].name))] for month in months]


def _chosen(task: Task, quantities: tuple[Values, ...]) -> Iterator[tuple[int, Due, list[int]]]:
    """Month, rule and days of each entry of one task."""
    rhythms: dict[int, tuple[Due, list[int]]] = {}
    for due in task.due:
        by_month: dict[int, list[int]] = {}
        for week in due_weeks(due, quantities):
            day = week_days(week.week - 1)[0]
            by_month.setdefault(MONTH_OF_DAY[day], []).append(day)
        for month, days in by_month.items():
            if not due.is_rhythm:
                yield month, due, days
            elif month not in rhythms or due.every_weeks * len(days) > rhythms[month][0].every_weeks * len(rhythms[month][1]):
                rhythms[month] = due, days
    for month, (due, days) in rhythms.items():
        yield month, due, days


def _when(days: list[int], month: int, every_weeks: int) -> str:
    """'all month' for what recurs, else the part of the month."""
    if len(days) > 2 and every_weeks <= 2:
        return "every week" if every_weeks == 1 else "every two weeks"
    if len(days) > 1:
        return f"{len(days)} times this month"
    third = (days[0] - MONTH_STARTS[month]) * 3 // MONTH_LENGTHS[month]
    return ("early in the month", "mid month", "late in the month")[min(third, 2)]
