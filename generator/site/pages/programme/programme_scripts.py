"""What the page of visits reads: what each grass's visits do, and when that falls due at each place, as small classic scripts."""

import json
from typing import Any

from generator.book.book import Book
from generator.jobs.amounts import Stock
from generator.jobs.planned_year import season_of
from generator.jobs.programme import MOW, cuts, only_where
from generator.jobs.programme_works import Work, YearOfWork, year_of_work
from generator.jobs.visit_price import chosen_for, step_of
from generator.season.calendar_days import WEEKS
from generator.season.season_cache import SeasonCache
from generator.season.year import SeasonYear
from generator.site.pages.job.job_scripts import quantity_data, runs_of, sites_of, step_data

FOLDER = "assets/programmes/"


def programme_scripts(seasons: SeasonCache) -> dict[str, str]:
    """Path in the site to script text."""
    book = seasons.book
    files = {}
    for grass in book.grasses:
        files[f"{FOLDER}{grass}.js"] = _script("grass", _grass(book, grass), grass)
        for place in book.offered_places:
            files[f"{FOLDER}places/{place}--{grass}.js"] = _script("place", {site: _site(seasons, grass, place, site) for site in sites_of(seasons, place)}, grass, place)
    return files


def _script(kind: str, value: Any, *keys: str) -> str:
    text = json.dumps(value, ensure_ascii=False, separators=(",", ":"))
    return f"Swardbook.programmes.{kind}({','.join([*map(json.dumps, keys), text])});\n"


def _grass(book: Book, grass: str) -> dict[str, Any]:
    """The plan of the renovation, and of each task that a visit may do its step with amounts, as the planner has it, and what calendars say of it."""
    record = book.grasses[grass]
    return {
        "plan": record.renovation,
        "tasks": {
            id: _task(book, grass, id) for id, task in book.tasks.items()
            if task.due and not task.in_the_shed and not ((taken := record.operations.get(id)) and taken.level == "none")
        },
    }


def _task(book: Book, grass: str, task: str) -> dict[str, Any]:
    step, stock, calendar = step_of(book, task), Stock(book.practice, grass, book.grasses[grass].name), book.tasks[task]
    chosen = chosen_for(book, grass, task)
    return {
        "where": only_where(book, task), "says": [each.say for each in calendar.due],
        "step": {**step_data(book, step), "quantities": [quantity_data(book, each, step, chosen, stock) for each in step.quantities]},
    }


def _site(seasons: SeasonCache, grass: str, place: str, site: str) -> dict[str, Any]:
    """works: [task, position of its rule, week (0 for the first), weeks earlier, weeks later, what limits it]. renovation: its best day, 0 for
    1 January. seasons: what the weeks are called, as runs."""
    book, season = seasons.book, seasons.season(grass, place, site)
    year = year_of_work(book, book.grasses[grass], season)
    latitude = book.places[place].latitude_deg
    return {
        "works": [_work(each) for each in year.works], "shed": [[each.task, each.week] for each in year.shed],
        "renovation": _renovation(season, year), "cuts": list(cuts(year)),
        "routine": [[each.task, each.every_weeks, len(each.weeks)] for each in year.routine if each.task != MOW],
        "seasons": runs_of([season_of(week, latitude, season) for week in range(WEEKS)]),
    }


def _work(work: Work) -> list[Any]:
    return [work.task, work.rule, work.week, work.at.earlier, work.at.later, work.limit]


def _renovation(season: SeasonYear, year: YearOfWork) -> int | None:
    found = season.renovation.windows
    return found[0].best if found and year.renovation_week is not None else None
