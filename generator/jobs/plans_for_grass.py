"""Dated jobs of a book: which plans a grass may follow, and a plan turned into a job."""

from dataclasses import dataclass

from generator.book.book import Book
from generator.book.plan_fit import misfit
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
    wrong = misfit(plan, grass)
    if wrong is None:
        return None
    values = {
        "plan-group": {"wanted": wrong.id, "found": wrong.found}, "plan-habit": {"wanted": wrong.id, "found": wrong.found},
        "plan-task": {"task": book.tasks[wrong.id].name.lower() if wrong.id in book.tasks else "", "how": wrong.found},
        "plan-figure": {"figure": NEEDED_FIGURES.get(wrong.id, "")},
    }
    return NOT_FOR_GRASS[wrong.code].format(plan=plan.name, grass=grass.name, **values[wrong.code])
