"""A year of visits to one lawn: which works, in how many visits, on which days, and at what price; kept on the lawn in the browser."""

from collections.abc import Iterator
from itertools import groupby
from typing import Any

from generator.book.book import Book
from generator.book.records.practice import OPEN_SITE
from generator.jobs.planned_year import AskedYear, PlannedYear, planned_year
from generator.jobs.programme import MOST_VISITS, USUAL_VISITS
from generator.season.season_cache import SeasonCache
from generator.site.making import Making
from generator.site.page import Page
from generator.site.page_context import PageContext
from generator.site.pages.job import job_words
from generator.site.pages.job.job_scripts import BOOK_SCRIPT
from generator.site.pages.job.money_script import MONEY_SCRIPT
from generator.site.pages.job.view import DEFAULT_AREA_M2, MONEY, has_jobs, worked_out_by
from generator.site.pages.job.view import SCRIPT as JOB_SCRIPT
from generator.site.pages.programme.programme_scripts import FOLDER, programme_scripts
from generator.site.shared.lawn_pieces import CALCULATOR_SCRIPT
from generator.words.programme_words import SENTENCES, counted, moved_words

PATH, SCRIPT = "programme", "assets/programme.js"
TITLE = "A year of visits"
LEAD = "How many visits, which work at each, on which days, and what the year comes to. Choose a lawn, and keep its year with it."
WORDS = (
    "programme", "maintenance plan", "maintenance contract", "contract", "yearly plan", "annual plan", "regular visits", "how many visits a year",
    "visits by season", "price for a year", "service plan", "lawn care plan", "schedule of visits",
)


def programme_page(seasons: SeasonCache, here: PageContext) -> Page:
    scripts = [here.links.file(each) for each in (CALCULATOR_SCRIPT, JOB_SCRIPT, BOOK_SCRIPT, SCRIPT)]
    context = {"title": TITLE, "lead": LEAD, "programme": programme_view(seasons, here), "scripts": scripts}
    return Page(PATH, TITLE, "programme", context, LEAD, WORDS)


def programme_view(seasons: SeasonCache, here: PageContext) -> dict[str, Any]:
    """The programme component's dict."""
    book, practice = seasons.book, seasons.book.practice
    asked = AskedYear(practice.home_grass, practice.home_place, DEFAULT_AREA_M2, USUAL_VISITS, here.today, OPEN_SITE)
    return {
        "id": "programme", "usual": USUAL_VISITS, "most": MOST_VISITS, "tasks": task_names(book), "valid_days": practice.estimate_valid_days or 0,
        "tax": practice.tax_name or "Tax", "rate": (practice.tax_percent or 0) / 100, "inside": practice.prices_include_tax,
        "example": _example(book, here, planned_year(seasons, asked)),
        "targets": {
            **worked_out_by(book, here), "programmes": here.links.file(FOLDER), "lawns": here.links.to("lawns"), "planner": here.links.to("jobs/index"),
            "tasks": here.links.file("tasks/"), "record": here.links.to("record") if book.record else "",
            "money": [here.links.file(each) for each in (MONEY_SCRIPT, MONEY)],
        },
    }


def task_names(book: Book) -> dict[str, str]:
    """Names of the tasks that a calendar may list, by id."""
    return {id: task.name for id, task in book.tasks.items() if task.due}


def _example(book: Book, here: PageContext, found: PlannedYear) -> dict[str, Any]:
    """The year of the practice's own grass at home, as it is printed without scripts."""
    grass = book.grasses[found.asked.grass]
    return {
        "what": f"{grass.name} at {book.places[found.asked.place].name}: {counted(len(found.visits), 'visit')} in the year from {job_words.day(found.asked.start)}",
        "seasons": [
            {"name": season, "visits": [
                {
                    "day": job_words.day(each.day), "tasks": [{"name": book.tasks[task].name, "url": here.links.task(task)} for task in each.tasks],
                    "moved": [f"{book.tasks[one.work.task].name}: {moved_words(one.moved_weeks)}." for one in each.placed if one.moved_weeks],
                }
                for each in several
            ]}
            for season, several in groupby(found.visits, key=lambda each: each.season)
        ],
        "renovation": SENTENCES["renovation"].format(
            plan=book.renovations[grass.renovation].name, day=job_words.day(found.renovation_day),
        ) if found.renovation_day else "",
    }


def pages(making: Making) -> Iterator[Page]:
    if has_jobs(making.book):
        yield programme_page(making.seasons, making.here(PATH))


def files(making: Making) -> dict[str, str]:
    return programme_scripts(making.seasons) if has_jobs(making.book) else {}
