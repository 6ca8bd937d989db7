"""Front doors: home, the calculators and the calendars."""


from generator.model.book import Book
from generator.pages.desk import COUNTRY_NAMES, Desk
from generator.pages.page import Page


def home_page(book: Book, desk: Desk) -> Page:
    practice = book.practice
    title = f"{practice.name}: practice book"
    context = {
        "title": practice.name, "about": practice.about, "invented": practice.invented,
        "picker": {
            "id": "this-month", "chosen_grass": practice.home_grass, "chosen_place": practice.home_place,
            "grasses": [{"id": id, "name": grass.name} for id, grass in book.grasses.items()],
            "places": [{"id": id, "name": place.name, "region": place.region} for id, place in book.places.items()],
            "targets": {
                "seasons": desk.links.file("assets/seasons/"),
                "calendars": desk.links.file("calendars/"), "guides": desk.links.file("renovate/"),
                "grasses": desk.links.file("grasses/"),
            },
        },
        "doors": [
            {"title": "Grasses", "url": desk.links.to("grasses/index"), "text": "What each one takes, and what never to do to it."},
            {"title": "Renovation guides", "url": desk.links.to("renovate/index"), "text": "When, how hard, in which order, how much of everything."},
            {"title": "Calendars", "url": desk.links.to("calendars/index"), "text": "A year for each grass and place, to print by the month."},
            {"title": "Calculators", "url": desk.links.to("calculators/index"), "text": "Feed, sand, cores, water, spray and seed, with the working shown."},
            {"title": "Aftercare", "url": desk.links.to("aftercare/index"), "text": "What a client does after the job, day by day."},
            {"title": "Tasks", "url": desk.links.to("tasks/index"), "text": "Each job on the lawn and how it is done."},
        ],
    }
    return Page("index", title, "home", context, practice.about, boost=0.5)


def calculator_index(book: Book, desk: Desk) -> Page:
    lead = "Type what you have, in metric or US units; the answer follows as you type, with the working and published examples to check it by."
    cards = [
        {"title": calculator.name, "url": desk.links.calculator(id), "text": calculator.summary}
        for id, calculator in book.calculators.items()
    ]
    context = {"title": "Calculators", "lead": lead, "groups": [{"title": None, "cards": cards}]}
    return Page("calculators/index", "Calculators", "index", context, lead)


def calendar_index(book: Book, desk: Desk) -> Page:
    rows = [
        {"place": place.name, "region": f"{place.region}, {COUNTRY_NAMES[place.country]}", "kind": place.climate_kind, "url": desk.links.place(id),
         "calendars": [{"name": grass.name, "url": desk.links.calendar(grass_id, id)} for grass_id, grass in book.grasses.items()]}
        for id, place in book.places.items()
    ]
    lead = "One year for each grass and place, computed from the climate there. Open one, then print any month on one sheet."
    context = {"title": "Calendars", "lead": lead, "rows": rows}
    return Page("calendars/index", "Calendars", "calendars", context, lead, ("calendar", "month", "year planner"))
