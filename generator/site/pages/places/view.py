"""Every place of the book by country and region, offered or not."""

from collections.abc import Iterator
from typing import Any

from generator.book.book import Book
from generator.site.making import Making
from generator.site.page import Page
from generator.site.page_context import PageContext

PLACES = "places/index"


def places_page(book: Book, here: PageContext) -> Page:
    """Countries in the order of the book, each with its regions by name."""
    countries = [_country(book, code, here) for code in book.countries if any(place.country == code for place in book.places.values())]
    offered, others = len(book.offered_places), len(book.other_places)
    lead = f"{offered} places have a year for each grass in full."
    if others:
        lead += f" {others} more have their climate and the windows of each grass on one page."
    context = {"title": "Places", "lead": lead, "countries": countries, "calendars_url": here.links.to("calendars/index")}
    return Page(PLACES, "Places", "places", context, lead, ("towns", "cities", "list of places", "climates", "weather stations"))


def _country(book: Book, code: str, here: PageContext) -> dict[str, Any]:
    there = {id: place for id, place in book.places.items() if place.country == code}
    regions = sorted({place.region for place in there.values()})
    return {
        "id": code.lower(), "name": book.countries[code].name, "count": len(there),
        "regions": [
            {"name": region, "places": [
                {"id": id, "name": place.name, "url": here.links.place(id), "kind": place.climate_kind, "in_full": id in book.offered_places}
                for id, place in sorted(there.items(), key=lambda item: item[1].name) if place.region == region
            ]}
            for region in regions
        ],
    }


def pages(making: Making) -> Iterator[Page]:
    yield places_page(making.book, making.here(PLACES))
