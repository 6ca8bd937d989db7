"""Normals of a place of which somebody knows little: what is not known is taken from the nearest place that the book knows."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import NamedTuple

from generator.book.records.place import Place
from generator.book.stations.great_circle import great_circle_km

Twelve = tuple[float, ...]


@dataclass(frozen=True)
class TypedMonths:
    """What somebody typed or a table holds, January first [°C, mm]; None where it does not say."""

    maximum_c: Twelve | None = None
    minimum_c: Twelve | None = None
    mean_c: Twelve | None = None
    rain_mm: Twelve | None = None
    first_year: int | None = None
    last_year: int | None = None


class WholeMonths(NamedTuple):
    """Three whole series; assumed: what was taken from elsewhere, a sentence to each."""

    maximum_c: Twelve
    minimum_c: Twelve
    rain_mm: Twelve
    assumed: tuple[str, ...]


def nearest_place(places: Mapping[str, Place], latitude_deg: float, longitude_deg: float) -> tuple[Place, float] | None:
    """The nearest place of a book and how far off it is [km]; None in a book without any."""
    off = [(great_circle_km(latitude_deg, longitude_deg, each.latitude_deg, each.longitude_deg), id) for id, each in places.items()]
    return (places[min(off)[1]], min(off)[0]) if off else None


def whole_months(typed: TypedMonths, near: tuple[Place, float] | None) -> WholeMonths | None:
    """The series that the engine needs [°C, mm]; None where something is missing and no place is near to take it from.

    From twelve means, maximum and minimum are made with the daily range of the nearest place. That its range and rain are ours is an assumption,
    and said.
    """
    high, low, rain, assumed = typed.maximum_c, typed.minimum_c, typed.rain_mm, []
    if (high is None or low is None) and typed.mean_c is not None:
        if near is None:
            return None
        place, off_km = near
        halves = [(top - bottom) / 2 for top, bottom in zip(place.normals.mean_maximum_c, place.normals.mean_minimum_c)]
        high = tuple(round(mean + half, 1) for mean, half in zip(typed.mean_c, halves))
        low = tuple(round(mean - half, 1) for mean, half in zip(typed.mean_c, halves))
        assumed.append(f"Only the mean of each month is known here. How far a day swings about it is taken from {place.name}, {off_km:.0f} km away.")
    if rain is None:
        if near is None:
            return None
        place, off_km = near
        rain = place.normals.rain_mm
        assumed.append(f"Rain is taken from {place.name}, {off_km:.0f} km away.")
    if high is None or low is None:
        return None
    return WholeMonths(high, low, rain, tuple(assumed))
