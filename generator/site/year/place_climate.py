"""The climate of a place as its page shows it: the station, twelve months of figures, whose they are, and what to know of them."""

from typing import Any

from generator.book.book import Book
from generator.book.records.place import Normals
from generator.season.calendar_days import MONTHS
from generator.season.inputs import climate_of
from generator.season.season_cache import SeasonCache
from generator.season.water.need import evapotranspiration_method
from generator.site.page_context import PageContext
from generator.site.year.place_notes import place_notes
from generator.site.year.year_words import frost_words
from generator.words.figures import converted, value_words


def place_climate(seasons: SeasonCache, id: str, here: PageContext) -> dict[str, Any]:
    """The dict of the part place-climate."""
    book, place = seasons.book, seasons.book.places[id]
    normals = place.normals
    return {
        "place": place.name, "months": [_month_row(seasons, id, month) for month in range(12)],
        "station": normals.station, "first_year": normals.first_year, "last_year": normals.last_year,
        "elevation_m": place.elevation_m, "whole_degrees": normals.temperature_step_c >= 1,
        "coldest_night": _coldest_night(seasons, id), "zone": place.hardiness.zone if place.hardiness else None,
        "method": evapotranspiration_method(climate_of(place)), "methods_url": here.methods_url,
        "sources": [{"label": book.sources[each].label, "url": here.links.source(each)} for each in place.climate_sources], "notes": place_notes(place),
    }


def _coldest_night(seasons: SeasonCache, id: str) -> dict[str, str | None]:
    any_grass = next(iter(seasons.book.grasses))
    return value_words(round(seasons.season(any_grass, id).weather.coldest_night_c), "°C")


def called_by(book: Book, id: str) -> tuple[str, ...]:
    """What else people search for a place by: its region, its station."""
    place = book.places[id]
    return tuple(dict.fromkeys((place.region, place.normals.station, f"climate {place.name}")))


def _month_row(seasons: SeasonCache, id: str, month: int) -> dict[str, Any]:
    normals = seasons.book.places[id].normals
    return {
        "name": MONTHS[month],
        "maximum": _temperature_words(normals.mean_maximum_c[month], normals),
        "minimum": _temperature_words(normals.mean_minimum_c[month], normals),
        "rain": value_words(normals.rain_mm[month], "mm"),
        "frost": _frost_words(seasons, id, month),
    }


def _temperature_words(celsius: float, normals: Normals) -> dict[str, str | None]:
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
