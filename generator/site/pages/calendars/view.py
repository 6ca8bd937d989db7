"""The front door of the calendars: every place, with the years there."""

from collections.abc import Iterator
from typing import Any

from generator.season.season_cache import SeasonCache
from generator.site.making import Making
from generator.site.page import Page
from generator.site.page_context import PageContext
from generator.site.pages.places.view import PLACES
from generator.site.year.year_address import year_address


def pages(making: Making) -> Iterator[Page]:
    yield calendar_index(making.seasons, making.here("calendars/index"))


def calendar_index(seasons: SeasonCache, here: PageContext) -> Page:
    """Places with printed months first, then those with a page only."""
    book = seasons.book
    comparisons = [{"name": grass.name, "url": here.links.comparison(id)} for id, grass in book.grasses.items()]
    groups = [
        {"id": "months", "title": "With twelve months to print", "rows": [_calendar_row(seasons, id, here) for id in seasons.calendar_places]},
        {"id": "years", "title": "The year only", "rows": [
            _calendar_row(seasons, id, here) for id in book.offered_places if id not in seasons.calendar_places
        ]},
    ]
    lead = "One year for each grass and place, computed from the climate there, with the reason for every date."
    context = {
        "title": "Calendars", "lead": lead, "groups": [group for group in groups if group["rows"]], "comparisons": comparisons,
        "places": {"url": here.links.to(PLACES), "others": len(book.other_places)},
    }
    search = ("calendar", "month", "year planner", "monthly calendar", "lawn calendar", "print a month", "month by month", "what to do this month")
    return Page("calendars/index", "Calendars", "calendars", context, lead, search)


def _calendar_row(seasons: SeasonCache, id: str, here: PageContext) -> dict[str, Any]:
    place = seasons.book.places[id]
    return {
        "id": id, "place": place.name, "url": here.links.place(id), "kind": place.climate_kind,
        "region": here.region(id),
        "calendars": [
            {"name": grass.name, "url": year_address(seasons, here.links, grass_id, id)} for grass_id, grass in seasons.book.grasses.items()
        ],
    }
