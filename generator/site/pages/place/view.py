"""A place: the year of each grass there, and the climate these are computed from."""

from collections.abc import Iterator
from typing import Any

from generator.book.attribution import place_attribution
from generator.book.book import Book
from generator.jobs.said_first import law_against
from generator.season.season_cache import SeasonCache
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext
from generator.site.pages.calendar.view import why_rows
from generator.site.year.place_climate import called_by, place_climate
from generator.site.year.strips import STRIP_MONTHS, strip_view
from generator.site.year.year_words import little_growth, summary
from generator.words.reason_text import said, sentence

SECTIONS = (Section("years", "The year for each grass"), Section("climate", "The climate"))


def place_page(seasons: SeasonCache, id: str, here: PageContext) -> Page:
    book = seasons.book
    place = book.places[id]
    context = {
        "title": place.name, "region": here.region(id), "kind": place.climate_kind, "country": place.country,
        "summary": place.summary,
        "years": {"of": "grass", "months": STRIP_MONTHS, "rows": [_year(seasons, grass, id, here) for grass in by_group(book)]},
        "climate": place_climate(seasons, id, here),
    }
    words = (*called_by(book, id), f"calendar {place.name}")
    return Page(
        f"places/{id}", place.name, "place", context, place.summary, words, sections=SECTIONS,
        attribution=tuple(place_attribution(book, id)),
    )


def by_group(book: Book) -> list[str]:
    """Ids of the grasses, warm-season before cool-season: their years are unlike, and like is compared with like."""
    return sorted(book.grasses, key=lambda id: book.grasses[id].season_group != "warm")


def _year(seasons: SeasonCache, grass: str, place: str, here: PageContext) -> dict[str, Any]:
    season = seasons.season(grass, place)
    links = [
        {"text": "renovation guide", "url": here.links.guide(grass)},
        {"text": "at other places", "url": here.links.comparison(grass, place)},
    ]
    if place in seasons.calendar_places:
        links.insert(0, {"text": "the year in full, with twelve months to print", "url": here.links.calendar(grass, place)})
    warning, laws = little_growth(season), law_against(seasons.book, grass, place)
    return {
        "id": grass, "name": seasons.book.grasses[grass].name, "url": here.links.grass(grass), "note": "",
        "strip": strip_view(season, f"strip-{grass}", "card", ""), "text": summary(season),
        "warning": " ".join(filter(None, ("A weed by law here." if laws else "", "Little growth here." if warning else ""))),
        "why": [
            *({"label": "Law", "text": sentence(said(each)), "exactly": ""} for each in laws),
            *([{"label": "Growth", "text": warning, "exactly": ""}] if warning else []),
            *why_rows(season),
        ],
        "links": links,
    }


def pages(making: Making) -> Iterator[Page]:
    yield from (place_page(making.seasons, id, making.here(f"places/{id}")) for id in making.book.offered_places)
