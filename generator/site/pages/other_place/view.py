"""A place that the practice does not offer: its climate, each grass's windows in a table, and how to have it in full."""

from collections.abc import Iterator, Mapping
from math import asin, cos, radians, sin, sqrt
from typing import Any

from generator.book.attribution import place_attribution
from generator.book.book import Book
from generator.book.records.place import Place
from generator.jobs.said_first import law_against
from generator.season.season_cache import SeasonCache
from generator.season.windows.main_windows import Windows
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext
from generator.site.pages.grass.view import GROUP_WORDS
from generator.site.pages.places.view import PLACES
from generator.site.year.place_climate import called_by, place_climate
from generator.site.year.strips import preferred_dates, window_dates
from generator.site.year.year_words import little_growth
from generator.words.few_words import few_words
from generator.words.figures import converted
from generator.words.reason_text import said, said_exactly, sentence

SECTIONS = (Section("windows", "When to renovate and overseed"), Section("climate", "The climate"), Section("in-full", "In full"))
MOST_NEAREST = 2
EARTH_RADIUS_KM = 6371.0
# Distances are for choosing among places, so they are told in tens.
ROUNDED_TO = 10


def other_place_page(book: Book, id: str, here: PageContext) -> Page:
    """Its years are worked out here and let go: no other page shows them, and those of every place would fill the memory."""
    seasons, place = SeasonCache(book), book.places[id]
    sources = (book.sources[each] for each in place.climate_sources)
    context = {
        "title": place.name, "region": here.region(id), "kind": place.climate_kind, "summary": place.summary, "id": id, "country": place.country,
        "practice": book.practice.name, "nearest": nearest_offered(book, id, here), "places_url": here.links.to(PLACES),
        "groups": [group for each in ("warm", "cool") if (group := _group(seasons, each, id, here))["rows"]],
        "climate": {**place_climate(seasons, id, here), "terms": [source.licence for source in sources if source.licence]},
    }
    return Page(
        f"places/{id}", place.name, "other-place", context, place.summary, called_by(book, id), SECTIONS,
        attribution=tuple(place_attribution(book, id)),
    )


def nearest_offered(book: Book, id: str, here: PageContext) -> list[dict[str, Any]]:
    """The offered places nearest on the ground, the nearest first: name, address and distance in both systems."""
    place = book.places[id]
    away = sorted((distance_km(place, other), other_id) for other_id, other in book.offered_places.items())
    return [
        {"name": book.places[other].name, "url": here.links.place(other), "away": _distance_words(km)} for km, other in away[:MOST_NEAREST]
    ]


def distance_km(one: Place, other: Place) -> float:
    """Along the ground, of a round earth [km]. Source: the haversine formula (Sinnott 1984)."""
    latitude, longitude = (radians(getattr(other, axis) - getattr(one, axis)) for axis in ("latitude_deg", "longitude_deg"))
    half_chord = sin(latitude / 2) ** 2 + cos(radians(one.latitude_deg)) * cos(radians(other.latitude_deg)) * sin(longitude / 2) ** 2
    return 2 * EARTH_RADIUS_KM * asin(min(1.0, sqrt(half_chord)))


def _distance_words(km: float) -> dict[str, str]:
    def tens(distance: float) -> int:
        return max(ROUNDED_TO, round(distance / ROUNDED_TO) * ROUNDED_TO)

    return {"metric": f"{tens(km)} km", "us": f"{tens(converted(km, 'km', 'mi'))} mi"}


def _group(seasons: SeasonCache, group: str, place: str, here: PageContext) -> dict[str, Any]:
    """The grasses of a season group, a row each. Only cool-season lawns are sown over."""
    rows = [_row(seasons, id, place, here) for id, grass in seasons.book.grasses.items() if grass.season_group == group]
    return {"name": f"{GROUP_WORDS[group]}es", "overseeds": group == "cool", "rows": rows}


def _row(seasons: SeasonCache, grass: str, place: str, here: PageContext) -> dict[str, Any]:
    season = seasons.season(grass, place)
    return {
        "id": grass, "name": seasons.book.grasses[grass].name, "url": here.links.grass(grass), "little_growth": bool(little_growth(season)),
        "by_law": bool(law_against(seasons.book, grass, place)),
        "renovation": _cell(season.renovation), "overseeding": _cell(season.overseeding),
    }


def _cell(found: Windows) -> Mapping[str, Any]:
    """The windows of a kind, or why there is none: in a few words, and whole."""
    if found.why_none is None:
        return {"windows": [{"dates": window_dates(each), "best": preferred_dates(each)} for each in found.windows], "none": "", "why": "", "exactly": ""}
    return {"windows": [], "none": few_words(found.why_none), "why": sentence(said(found.why_none)), "exactly": sentence(said_exactly(found.why_none))}


def pages(making: Making) -> Iterator[Page]:
    yield from (other_place_page(making.book, id, making.here(f"places/{id}")) for id in making.book.other_places)
