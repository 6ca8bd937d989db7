"""Home: this month for a grass and a place, and the doors to everything else."""

from collections.abc import Iterator
from typing import Any

from generator.book.book import Book
from generator.season.season_cache import SeasonCache
from generator.site.making import Making
from generator.site.page import Page
from generator.site.page_context import PageContext
from generator.site.pages.job.day_sheet import WORK_START
from generator.site.pages.job.job_scripts import BOOK_SCRIPT
from generator.site.pages.job.view import SCRIPT as JOB_SCRIPT
from generator.site.pages.job.view import has_jobs, worked_out_by
from generator.site.pages.programme.view import PATH as PROGRAMME
from generator.site.pages.programme.view import task_names
from generator.site.pages.record.view import record_card
from generator.site.shared.hold_view import hold_scripts
from generator.site.shared.lawn_pieces import CALCULATOR_SCRIPT
from generator.site.shared.seen_script import seen_view
from generator.site.year.season_script import season_scripts

TODAY_SCRIPT = "assets/today.js"


def home_page(seasons: SeasonCache, here: PageContext) -> Page:
    book = seasons.book
    practice = book.practice
    title = practice.title
    context = {
        "title": practice.name, "about": practice.about, "invented": practice.invented,
        "picker": {
            "id": "this-month", "chosen_grass": practice.home_grass, "chosen_place": practice.home_place,
            "grasses": [{"id": id, "name": grass.name} for id, grass in book.grasses.items()],
            "places": [
                {"id": id, "name": book.places[id].name, "region": book.places[id].region} for id in seasons.calendar_places
            ],
            "targets": {
                "seasons": here.links.file("assets/seasons/"),
                "calendars": here.links.file("calendars/"), "guides": here.links.file("renovate/"),
                "grasses": here.links.file("grasses/"),
            },
        },
        "seen": seen_view(seasons, here, practice.home_place, practice.home_grass, "home"),
        "today": today_view(book, here) if has_jobs(book) else None,
        "scripts": [here.links.file(TODAY_SCRIPT)] if has_jobs(book) else [],
        "doors": [
            {"title": "Grasses", "url": here.links.to("grasses/index"), "text": "What each one takes, and what never to do to it."},
            {"title": "Renovation guides", "url": here.links.to("renovate/index"), "text": "When, how hard, in which order, how much of everything."},
            *jobs_door(book, here),
            {"title": "Calendars", "url": here.links.to("calendars/index"), "text": "A year for each grass and place, to print by the month."},
            {"title": "Calculators", "url": here.links.to("calculators/index"), "text": "Feed, sand, cores, water, spray and seed, with the working shown."},
            {"title": "Aftercare", "url": here.links.to("aftercare/index"), "text": "What a client does after the job, day by day."},
            *problems_door(book, here),
            {"title": "Answers", "url": here.links.to("answers/index"), "text": "What clients ask by e-mail, with an address to paste into the reply."},
            {"title": "Tasks", "url": here.links.to("tasks/index"), "text": "Each job on the lawn and how it is done."},
            *filter(None, [record_card(book, here)]),
        ],
    }
    return Page("index", title, "home", context, practice.described)


def today_view(book: Book, here: PageContext) -> dict[str, Any]:
    """The today component's dict: the planner's scripts, which it loads when there are jobs."""
    return {
        "id": "today", "start": WORK_START, "tasks": task_names(book),
        "targets": {
            **worked_out_by(book, here), "scripts": [here.links.file(each) for each in (CALCULATOR_SCRIPT, JOB_SCRIPT, BOOK_SCRIPT)],
            "holds": hold_scripts(here) if book.holds else [], "job_page": here.links.to("jobs/index"), "programme_page": here.links.to(PROGRAMME),
        },
    }


def jobs_door(book: Book, here: PageContext) -> list[dict[str, str]]:
    if not has_jobs(book):
        return []
    text = "This lawn, this plan, this day: dates, shopping, gear, the sheet for the day and price."
    visits = "Which work at which visit, on which days, and what the year comes to."
    return [
        {"title": "Plan a job", "url": here.links.to("jobs/index"), "text": text},
        {"title": "A year of visits", "url": here.links.to(PROGRAMME), "text": visits},
    ]


def problems_door(book: Book, here: PageContext) -> list[dict[str, str]]:
    if not book.problems:
        return []
    return [{"title": "What is wrong with it?", "url": here.links.to("problems/index"), "text": "From what you see to the cause, and what to do."}]


def pages(making: Making) -> Iterator[Page]:
    yield home_page(making.seasons, making.here("index"))


def files(making: Making) -> dict[str, str]:
    return season_scripts(making.seasons)
