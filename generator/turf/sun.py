"""The sun at a latitude, day by day."""

from dataclasses import dataclass
from functools import lru_cache
from math import radians

from generator.turf.calendar_days import DAYS
from generator.turf.equations import EQUATIONS
from generator.units import from_si, unit

Daily = tuple[float, ...]


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
