"""A place: the year of each grass there, and the climate these are computed from."""

from collections.abc import Iterator
from typing import Any

from generator.book.attribution import place_attribution
from generator.book.book import Book
from generator.book.records.place import Normals
from generator.season.calendar_days import MONTHS
from generator.season.inputs import climate_of
from generator.season.season_cache import SeasonCache
from generator.season.water.need import evapotranspiration_method
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext
from generator.site.pages.calendar.view import frost_words, why_rows
from generator.site.year.place_notes import place_notes
from generator.site.year.strips import STRIP_MONTHS, strip_view
from generator.site.year.year_words import little_growth, summary
from generator.words.figures import converted, value_words

SECTIONS = (Section("years", "The year for each grass"), Section("climate", "The climate"))


def place_page(seasons: SeasonCache, id: str, here: PageContext) -> Page:
    book = seasons.book
    place = book.places[id]
    normals = place.normals
    sources = dict.fromkeys(filter(None, (normals.source, normals.rain_source)))
    context = {
        "title": place.name, "region": here.region(id), "kind": place.climate_kind,
        "summary": place.summary, "notes": place_notes(place),
        "years": {"of": "grass", "months": STRIP_MONTHS, "rows": [_year(seasons, grass, id, here) for grass in by_group(book)]},
        "months": [_month_row(seasons, id, month) for month in range(12)],
        "station": normals.station, "first_year": normals.first_year, "last_year": normals.last_year,
        "elevation_m": place.elevation_m, "whole_degrees": normals.temperature_step_c >= 1,
        "method": evapotranspiration_method(climate_of(place)), "methods_url": here.methods_url,
        "sources": [{"label": book.sources[each].label, "url": here.links.source(each)} for each in sources],
    }
    words = (place.region, f"climate {place.name}", f"calendar {place.name}")
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
    warning = little_growth(season)
    return {
        "id": grass, "name": seasons.book.grasses[grass].name, "url": here.links.grass(grass), "note": "",
        "strip": strip_view(season, f"strip-{grass}", "card", ""), "text": summary(season),
        "warning": "Little growth here." if warning else "",
        "why": [*([{"label": "Growth", "text": warning}] if warning else []), *why_rows(season)], "links": links,
    }


def _month_row(seasons: SeasonCache, id: str, month: int) -> dict[str, Any]:
    normals = seasons.book.places[id].normals
    return {
        "name": MONTHS[month],
        "maximum": temperature_words(normals.mean_maximum_c[month], normals),
        "minimum": temperature_words(normals.mean_minimum_c[month], normals),
        "rain": value_words(normals.rain_mm[month], "mm"),
        "frost": _frost_words(seasons, id, month),
    }


def temperature_words(celsius: float, normals: Normals) -> dict[str, str | None]:
    """As finely as the source gives it, in both systems: a converted decimal must not claim more."""
    digits = 0 if normals.temperature_step_c >= 1 else 1
    fahrenheit = converted(celsius, "°C", "°F")
    return {"metric": f"{celsius:.{digits}f} °C".replace("-", "−"), "us": f"{fahrenheit:.{digits}f} °F".replace("-", "−")}


def _frost_words(seasons: SeasonCache, id: str, month: int) -> str:
    """As published, or as the frost model gives it where the record does not say."""
    published = seasons.book.places[id].normals.frost_days
    if published is not None:
        return f"{published[month]:g}"
    any_grass = next(iter(seasons.book.grasses))
    return frost_words(seasons.season(any_grass, id).weather.air_frost.nights_per_month()[month])


def pages(making: Making) -> Iterator[Page]:
    yield from (place_page(making.seasons, id, making.here(f"places/{id}")) for id in making.book.places)
