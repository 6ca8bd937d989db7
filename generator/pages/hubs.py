"""Front doors: home, the calculators and the calendars."""


from typing import Any, get_args

from generator.model.book import Book
from generator.model.calculator import Topic
from generator.pages.almanac import Almanac
from generator.pages.desk import COUNTRY_NAMES, Desk
from generator.pages.job import has_jobs
from generator.pages.lawn_pieces import HOW_TO_BUILD_UP, gives_a_piece
from generator.pages.page import Page
from generator.pages.record import record_card


def home_page(almanac: Almanac, desk: Desk) -> Page:
    book = almanac.book
    practice = book.practice
    title = f"{practice.name}: practice book"
    context = {
        "title": practice.name, "about": practice.about, "invented": practice.invented,
        "picker": {
            "id": "this-month", "chosen_grass": practice.home_grass, "chosen_place": practice.home_place,
            "grasses": [{"id": id, "name": grass.name} for id, grass in book.grasses.items()],
            "places": [
                {"id": id, "name": book.places[id].name, "region": book.places[id].region} for id in almanac.calendar_places
            ],
            "targets": {
                "seasons": desk.links.file("assets/seasons/"),
                "calendars": desk.links.file("calendars/"), "guides": desk.links.file("renovate/"),
                "grasses": desk.links.file("grasses/"),
            },
        },
        "doors": [
            {"title": "Grasses", "url": desk.links.to("grasses/index"), "text": "What each one takes, and what never to do to it."},
            {"title": "Renovation guides", "url": desk.links.to("renovate/index"), "text": "When, how hard, in which order, how much of everything."},
            *jobs_door(book, desk),
            {"title": "Calendars", "url": desk.links.to("calendars/index"), "text": "A year for each grass and place, to print by the month."},
            {"title": "Calculators", "url": desk.links.to("calculators/index"), "text": "Feed, sand, cores, water, spray and seed, with the working shown."},
            {"title": "Aftercare", "url": desk.links.to("aftercare/index"), "text": "What a client does after the job, day by day."},
            *problems_door(book, desk),
            {"title": "Answers", "url": desk.links.to("answers/index"), "text": "What clients ask by e-mail, with an address to paste into the reply."},
            {"title": "Tasks", "url": desk.links.to("tasks/index"), "text": "Each job on the lawn and how it is done."},
            *filter(None, [record_card(book, desk)]),
        ],
    }
    return Page("index", title, "home", context, practice.about)


def jobs_door(book: Book, desk: Desk) -> list[dict[str, str]]:
    if not has_jobs(book):
        return []
    text = "This lawn, this plan, this day: dates, shopping, gear, the sheet for the day and price."
    return [{"title": "Plan a job", "url": desk.links.to("jobs/index"), "text": text}]


def problems_door(book: Book, desk: Desk) -> list[dict[str, str]]:
    if not book.problems:
        return []
    return [{"title": "What is wrong with it?", "url": desk.links.to("problems/index"), "text": "From what you see to the cause, and what to do."}]


def calculator_index(book: Book, desk: Desk) -> Page:
    lead = "Type what you have, in metric or US units; the answer follows as you type, with the working and published examples to check it by."
    groups = [
        {"title": topic[0].upper() + topic[1:], "cards": [
            {"title": calculator.name, "url": desk.links.calculator(id), "text": calculator.summary}
            for id, calculator in book.calculators.items() if calculator.topic == topic
        ], "note": HOW_TO_BUILD_UP if any(gives_a_piece(each) for each in book.calculators.values() if each.topic == topic) else None}
        for topic in get_args(Topic)
    ]
    context = {"title": "Calculators", "lead": lead, "groups": [group for group in groups if group["cards"]]}
    return Page("calculators/index", "Calculators", "index", context, lead)


def calendar_index(almanac: Almanac, desk: Desk) -> Page:
    """Places with printed months first, then those with a page only."""
    book = almanac.book
    comparisons = [{"name": grass.name, "url": desk.links.comparison(id)} for id, grass in book.grasses.items()]
    groups = [
        {"id": "months", "title": "With twelve months to print", "rows": [_calendar_row(almanac, id, desk) for id in almanac.calendar_places]},
        {"id": "years", "title": "The year only", "rows": [
            _calendar_row(almanac, id, desk) for id in book.places if id not in almanac.calendar_places
        ]},
    ]
    lead = "One year for each grass and place, computed from the climate there, with the reason for every date."
    context = {"title": "Calendars", "lead": lead, "groups": [group for group in groups if group["rows"]], "comparisons": comparisons}
    search = ("calendar", "month", "year planner", "monthly calendar", "lawn calendar", "print a month", "month by month", "what to do this month")
    return Page("calendars/index", "Calendars", "calendars", context, lead, search)


def _calendar_row(almanac: Almanac, id: str, desk: Desk) -> dict[str, Any]:
    place = almanac.book.places[id]
    return {
        "id": id, "place": place.name, "url": desk.links.place(id), "kind": place.climate_kind,
        "region": f"{place.region}, {COUNTRY_NAMES[place.country]}",
        "calendars": [
            {"name": grass.name, "url": almanac.year_address(desk.links, grass_id, id)} for grass_id, grass in almanac.book.grasses.items()
        ],
    }
