"""Dated jobs of a book: which plans a grass may follow, and a plan turned into a job."""

from dataclasses import dataclass
from operator import attrgetter

from generator.book.book import Book
from generator.book.records.grass import Grass
from generator.book.records.practice import OPEN_SITE
from generator.book.records.renovation import Renovation
from generator.jobs.job import Job, Records, Request, outside_of, work_out
from generator.jobs.job_sentences import NEEDED_FIGURES, NOT_FOR_GRASS
from generator.jobs.said_first import law_against
from generator.season.season_cache import SeasonCache

# Why a step is left out that whoever plans the job has crossed off; the page says the same.
NOT_NEEDED = NOT_FOR_GRASS["step-not-needed"]


@dataclass(frozen=True)
class AskedJob:
    """What a job is asked for: ids of the book, and the request itself."""

    renovation: str
    grass: str
    place: str
    request: Request
    site: str = OPEN_SITE


def job_of(book: Book, seasons: SeasonCache, asked: AskedJob) -> Job:
    """The dated job. Raises KeyError for an id that is not in the book; see `why_not` for plans that a grass may not follow."""
    season, grass = seasons.season(asked.grass, asked.place, asked.site), book.grasses[asked.grass]
    return work_out(
        asked.request, book.renovations[asked.renovation], asked.grass, grass, season, records_of(seasons),
        law_against(book, asked.grass, asked.place), outside_of(book.season_groups, asked.renovation, grass.season_group),
    )


def records_of(seasons: SeasonCache) -> Records:
    """What the book has that a job is worked out from."""
    book = seasons.book
    return Records(book.practice, book.season_groups, book.tasks, book.calculators, seasons.rules.oversowing.ryegrass, book.inspection)


def plans_for(book: Book, grass: Grass) -> tuple[str, ...]:
    """Ids of the plans a grass may follow, its own first."""
    fitting = [id for id, plan in book.renovations.items() if why_not(book, plan, grass) is None]
    return tuple(sorted(fitting, key=lambda id: id != grass.renovation))


def why_not(book: Book, plan: Renovation, grass: Grass) -> str | None:
    """Why a grass may not follow a plan, in a sentence; None where it may."""
    if plan.season_group and plan.season_group != grass.season_group:
        return _said("plan-group", plan, grass, wanted=plan.season_group, found=grass.season_group)
    if plan.habits and grass.habit not in plan.habits:
        return _said("plan-habit", plan, grass, wanted=" or ".join(plan.habits), found=grass.habit)
    for task, levels in plan.needs.items():
        operation = grass.operations.get(task)
        if operation is not None and operation.level not in levels:
            return _said("plan-task", plan, grass, task=book.tasks[task].name.lower(), how=operation.how)
    for field in plan.takes:
        if attrgetter(field)(grass) is None:
            return _said("plan-figure", plan, grass, figure=NEEDED_FIGURES[field])
    return None


def _said(code: str, plan: Renovation, grass: Grass, **values: str) -> str:
    return NOT_FOR_GRASS[code].format(plan=plan.name, grass=grass.name, **values)
