"""The sun at a latitude, day by day."""

from dataclasses import dataclass
from functools import cache, lru_cache
from math import radians

from generator.season.calendar_days import DAYS
from generator.season.equations.every_equation import EQUATIONS
from generator.units import from_si, unit

Daily = tuple[float, ...]


@dataclass(frozen=True)
class Sun:
    """The sun at one latitude, 365 days from 1 January.

    extraterrestrial_radiation_mj: radiation above the air [MJ/m²/day]. daylight_h: the day as the radiation equations take it
    [h]. day_length_h: from sunrise to sunset, as an almanac prints it [h].
    """

    extraterrestrial_radiation_mj: Daily
    daylight_h: Daily
    day_length_h: Daily


@lru_cache(maxsize=256)
def sun(latitude_deg: float) -> Sun:
    """Radiation above the air and the length of each day. latitude_deg: south is negative [°].

    Source: FAO-56 equations 21, 23, 24, 25, 34, and the U.S. Naval Observatory for sunrise to sunset; see the equations.
    """
    latitude = radians(latitude_deg)
    radiation, daylight, length = [], [], []
    for declination, inverse_distance, sine in _year_of_the_earth():
        angle = EQUATIONS["sunset-hour-angle"].evaluate(latitude=latitude, solar_declination=declination)
        watts = EQUATIONS["extraterrestrial-radiation"].evaluate(
            latitude=latitude, solar_declination=declination, sunset_hour_angle=angle, inverse_distance=inverse_distance,
        )
        # Polar night leaves a trace below zero, of rounding.
        radiation.append(max(0.0, from_si(watts, unit("MJ/m2/day"))))
        daylight.append(from_si(EQUATIONS["daylight"].evaluate(sunset_hour_angle=angle), unit("h")))
        length.append(from_si(EQUATIONS["day-length"].evaluate(latitude=latitude, sine_of_declination=sine), unit("h")))
    return Sun(tuple(radiation), tuple(daylight), tuple(length))


@cache
def _year_of_the_earth() -> tuple[tuple[float, float, float], ...]:
    """For each day what no latitude changes: solar declination [rad], inverse distance [1], sine of the seasons' declination [1]."""
    names = ("solar-declination", "inverse-distance", "sine-of-seasons-declination")
    declination, inverse_distance, sine = (
        tuple(EQUATIONS[name].evaluate(day_of_year=day) for day in range(1, DAYS + 1)) for name in names
    )
    return tuple(zip(declination, inverse_distance, sine, strict=True))
