"""A place: the year of each grass there, and the climate these are computed from."""

from typing import Any

from generator.model.attribution import place_attribution
from generator.model.book import Book
from generator.model.place import Normals
from generator.pages.almanac import Almanac
from generator.pages.calendar import frost_words, why_rows
from generator.pages.desk import COUNTRY_NAMES, Desk
from generator.pages.page import Page, Section
from generator.pages.place_notes import place_notes
from generator.pages.quantity import converted, value_words
from generator.pages.strips import STRIP_MONTHS, strip_view
from generator.pages.year_words import little_growth, summary
from generator.turf.calendar_days import MONTHS
from generator.turf.inputs import climate_of
from generator.turf.water import evapotranspiration_method

SECTIONS = (Section("years", "The year for each grass"), Section("climate", "The climate"))


def place_page(almanac: Almanac, id: str, desk: Desk) -> Page:
    book = almanac.book
    place = book.places[id]
    normals = place.normals
    sources = dict.fromkeys(filter(None, (normals.source, normals.rain_source)))
    context = {
        "title": place.name, "region": f"{place.region}, {COUNTRY_NAMES[place.country]}", "kind": place.climate_kind,
        "summary": place.summary, "notes": place_notes(place),
        "years": {"of": "grass", "months": STRIP_MONTHS, "rows": [_year(almanac, grass, id, desk) for grass in by_group(book)]},
        "months": [_month_row(almanac, id, month) for month in range(12)],
        "station": normals.station, "first_year": normals.first_year, "last_year": normals.last_year,
        "elevation_m": place.elevation_m, "whole_degrees": normals.temperature_step_c >= 1,
        "method": evapotranspiration_method(climate_of(place)), "methods_url": desk.methods_url,
        "sources": [{"label": book.sources[each].label, "url": desk.links.source(each)} for each in sources],
    }
    words = (place.region, f"climate {place.name}", f"calendar {place.name}")
    return Page(
        f"places/{id}", place.name, "place", context, place.summary, words, sections=SECTIONS,
        attribution=tuple(place_attribution(book, id)),
    )


def by_group(book: Book) -> list[str]:
    """Ids of the grasses, warm-season before cool-season: their years are unlike, and like is compared with like."""
    return sorted(book.grasses, key=lambda id: book.grasses[id].season_group != "warm")


def _year(almanac: Almanac, grass: str, place: str, desk: Desk) -> dict[str, Any]:
    season = almanac.season(grass, place)
    links = [
        {"text": "renovation guide", "url": desk.links.guide(grass)},
        {"text": "at other places", "url": desk.links.comparison(grass, place)},
    ]
    if place in almanac.calendar_places:
        links.insert(0, {"text": "the year in full, with twelve months to print", "url": desk.links.calendar(grass, place)})
    warning = little_growth(season)
    return {
        "id": grass, "name": almanac.book.grasses[grass].name, "url": desk.links.grass(grass), "note": "",
        "strip": strip_view(season, f"strip-{grass}", "card", ""), "text": summary(season),
        "warning": "Little growth here." if warning else "",
        "why": [*([{"label": "Growth", "text": warning}] if warning else []), *why_rows(season)], "links": links,
    }


def _month_row(almanac: Almanac, id: str, month: int) -> dict[str, Any]:
    normals = almanac.book.places[id].normals
    return {
        "name": MONTHS[month],
        "maximum": temperature_words(normals.mean_maximum_c[month], normals),
        "minimum": temperature_words(normals.mean_minimum_c[month], normals),
        "rain": value_words(normals.rain_mm[month], "mm"),
        "frost": _frost_words(almanac, id, month),
    }


def temperature_words(celsius: float, normals: Normals) -> dict[str, str | None]:
    """As finely as the source gives it, in both systems: a converted decimal must not claim more."""
    digits = 0 if normals.temperature_step_c >= 1 else 1
    fahrenheit = converted(celsius, "°C", "°F")
    return {"metric": f"{celsius:.{digits}f} °C".replace("-", "−"), "us": f"{fahrenheit:.{digits}f} °F".replace("-", "−")}


def _frost_words(almanac: Almanac, id: str, month: int) -> str:
    """As published, or as the frost model gives it where the record does not say."""
    published = almanac.book.places[id].normals.frost_days
    if published is not None:
        return f"{published[month]:g}"
    any_grass = next(iter(almanac.book.grasses))
    return frost_words(almanac.season(any_grass, id).air_frost.nights_per_month()[month])
