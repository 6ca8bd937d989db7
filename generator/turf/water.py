"""Sun, evaporation and water need of each day."""

from dataclasses import dataclass
from functools import lru_cache
from math import radians

from generator.turf.calendar_days import DAYS, MONTH_OF_DAY
from generator.turf.climate import OPEN, Climate, Daily, Site, Soil, daily_climate, daily_rain
from generator.turf.equations import EQUATIONS
from generator.turf.growth import ZERO_CELSIUS_K
from generator.units import from_si, unit

MILLIMETRES_A_METRE = 1000.0
SECONDS_A_DAY = 86400.0


@dataclass(frozen=True)
class Sun:
    """The sun at one latitude, 365 days from 1 January: radiation above the air [MJ/m²/day] and daylight [h]."""

    extraterrestrial_radiation_mj: Daily
    daylight_h: Daily


@lru_cache(maxsize=256)
def sun(latitude_deg: float) -> Sun:
    """Extraterrestrial radiation and daylight of each day. latitude_deg: south is negative [°].

    Source: FAO-56 equations 21, 23, 24, 25, 34; see the equations of those names.
    """
    latitude = radians(latitude_deg)
    radiation, daylight = [], []
    for day in range(1, DAYS + 1):
        declination = EQUATIONS["solar-declination"].evaluate(day_of_year=day)
        angle = EQUATIONS["sunset-hour-angle"].evaluate(latitude=latitude, solar_declination=declination)
        watts = EQUATIONS["extraterrestrial-radiation"].evaluate(
            latitude=latitude, solar_declination=declination, sunset_hour_angle=angle,
            inverse_distance=EQUATIONS["inverse-distance"].evaluate(day_of_year=day),
        )
        # Polar night leaves a trace below zero, of rounding.
        radiation.append(max(0.0, from_si(watts, unit("MJ/m2/day"))))
        daylight.append(from_si(EQUATIONS["daylight"].evaluate(sunset_hour_angle=angle), unit("h")))
    return Sun(tuple(radiation), tuple(daylight))


@lru_cache(maxsize=512)
def reference_evapotranspiration(climate: Climate, site: Site, soil: Soil) -> Daily:
    """Evapotranspiration of well-watered reference grass [mm/day], 365 days from 1 January.

    Temperatures of the open station are used and the site's share applied: a hollow's colder nights widen the daily
    range, from which the equation would wrongly read more sun.
    Source: Hargreaves and Samani, FAO-56 equation 52.
    """
    open_air = daily_climate(climate, OPEN, soil)
    hargreaves, watts = EQUATIONS["hargreaves"], unit("MJ/m2/day").factor
    to_mm_a_day = MILLIMETRES_A_METRE * SECONDS_A_DAY * site.evaporation_share
    return tuple(
        max(0.0, to_mm_a_day * hargreaves.evaluate(
            minimum_temperature=low + ZERO_CELSIUS_K,
            # Smooth curves of two tables may touch in a place with hardly any daily range.
            maximum_temperature=max(low, high) + ZERO_CELSIUS_K,
            extraterrestrial_radiation=radiation * watts,
        ))
        for low, high, radiation in zip(
            open_air.minimum_c, open_air.maximum_c, sun(climate.latitude_deg).extraterrestrial_radiation_mj
        )
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
