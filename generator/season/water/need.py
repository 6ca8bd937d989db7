"""Evaporation and water need of each day."""

from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from generator.season.calendar_days import MONTH_OF_DAY
from generator.season.climate.climate import OPEN, Climate, Daily, Site, Soil, daily_climate, daily_rain
from generator.season.climate.daily_curve import non_negative_daily
from generator.season.climate.sun import sun
from generator.season.equations.every_equation import EQUATIONS
from generator.season.growth import ZERO_CELSIUS_K
from generator.season.water.penman import ASSUMED_WIND_M_PER_S, monthly_penman_monteith
from generator.units import unit

MILLIMETRES_A_METRE = 1000.0
SECONDS_A_DAY = 86400.0


@dataclass(frozen=True)
class Method:
    """How reference evapotranspiration was worked out. words: for a page; assumed: what stands in for what was not measured."""

    id: Literal["penman-monteith", "hargreaves-samani"]
    words: str
    assumed: tuple[str, ...]


WIND = f"wind of {ASSUMED_WIND_M_PER_S:g} m/s, where none is given"
RADIATION = "the sun's radiation from the hours of sunshine"
HARGREAVES = Method(
    "hargreaves-samani", "Hargreaves and Samani, from the day's maximum and minimum",
    ("the daily range of temperature stands for sun, humidity and wind",),
)


def evapotranspiration_method(climate: Climate) -> Method:
    """Which method the normals of a place allow.

    Source: FAO-56 chapter 4: Penman-Monteith with its procedures for missing data where sunshine is known (radiation by
    equation 35; without humidity, dew point taken at the minimum, equation 48), else Hargreaves, equation 52.
    """
    if climate.sunshine_h_per_day is None:
        return HARGREAVES
    if climate.relative_humidity_3pm_percent is None:
        humidity = "air as damp as at dawn: its dew point taken at the minimum"
    else:
        humidity = "humidity at 15:00 taken for the day's lowest, at the maximum temperature"
    elevation = ("sea level, where the height of the station is not known",) if climate.elevation_m is None else ()
    return Method("penman-monteith", "FAO-56 Penman-Monteith", (RADIATION, humidity, WIND, *elevation))


@lru_cache(maxsize=512)
def reference_evapotranspiration(climate: Climate, site: Site, soil: Soil) -> Daily:
    """Evapotranspiration of well-watered reference grass [mm/day], 365 days from 1 January.

    By the method of `evapotranspiration_method`. Temperatures of the open station are used and the site's share applied:
    a hollow's colder nights widen the daily range, from which an equation would wrongly read more sun.
    Source: FAO-56 equations 6 and 52; Penman-Monteith is worked out by the month and drawn through the days.
    """
    if evapotranspiration_method(climate) is HARGREAVES:
        daily = _hargreaves(climate, soil)
    else:
        daily = non_negative_daily(monthly_penman_monteith(climate))
    return tuple(value * site.evaporation_share for value in daily)


def _hargreaves(climate: Climate, soil: Soil) -> Daily:
    open_air = daily_climate(climate, OPEN, soil)
    return hargreaves_mm(climate.latitude_deg, open_air.maximum_c, open_air.minimum_c)


def hargreaves_mm(latitude_deg: float, maximum_c: Daily, minimum_c: Daily) -> Daily:
    """Evapotranspiration from each day's maximum and minimum [mm/day], 365 days from 1 January. Source: FAO-56 equation 52."""
    hargreaves, watts = EQUATIONS["hargreaves"], unit("MJ/m2/day").factor
    return tuple(
        max(0.0, MILLIMETRES_A_METRE * SECONDS_A_DAY * hargreaves.evaluate(
            minimum_temperature=low + ZERO_CELSIUS_K,
            # Smooth curves of two tables may touch in a place with hardly any daily range.
            maximum_temperature=max(low, high) + ZERO_CELSIUS_K,
            extraterrestrial_radiation=radiation * watts,
        ))
        for low, high, radiation in zip(minimum_c, maximum_c, sun(latitude_deg).extraterrestrial_radiation_mj)
    )


@lru_cache(maxsize=256)
def effective_rain(monthly_mm: tuple[float, ...]) -> Daily:
    """The part of each day's mean rain that the grass can use [mm/day], 365 days, from 12 monthly totals [mm].

    Source: monthly formula of the USDA Soil Conservation Service, see the equation `effective-rain`; the month's share
    is applied to each of its days.
    """
    shares = tuple(
        EQUATIONS["effective-rain"].evaluate(rain=rain / MILLIMETRES_A_METRE) * MILLIMETRES_A_METRE / rain if rain else 1.0
        for rain in monthly_mm
    )
    return tuple(rain * shares[MONTH_OF_DAY[day]] for day, rain in enumerate(daily_rain(monthly_mm)))


def water_need(reference_mm: Daily, rain_mm: Daily, crop_coefficient: float) -> Daily:
    """Water the grass would use beyond effective rain [mm/day], never negative, 365 days.

    reference_mm: reference evapotranspiration [mm/day]. rain_mm: effective rain [mm/day]. crop_coefficient [1].
    Source: FAO-56 single crop coefficient (chapter 6); no store in the soil is counted, so it is a long-run mean need.
    """
    return tuple(max(0.0, crop_coefficient * used - rain) for used, rain in zip(reference_mm, rain_mm))
