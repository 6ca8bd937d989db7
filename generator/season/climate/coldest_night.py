"""The coldest night of a usual year: as published by hardiness zone, or from the normals."""

from functools import lru_cache

from generator.season.climate.climate import OPEN, Climate, Soil, daily_climate
from generator.season.climate.frost import chance_of_any_below
from generator.season.climate.frost_margin import FrostRules, minimum_spread
from generator.units import from_si, to_si, unit

COLDEST_ZONE_F, ZONE_F, HALF_ZONE_F = -60, 10, 5
# It is told to a degree.
FOUND_K = 0.25
# How far below the coldest night's mean it is looked for, in standard deviations: beyond what half of all years reach, either way.
LEAST_SPREADS, MOST_SPREADS = 0.5, 4.0


def zone_middle_c(zone: str) -> float:
    """The middle of a half zone, such as '8a' [°C].

    Source: USDA Plant Hardiness Zone Map, 2012: zones of 10 °F from -60 °F up, each in two halves, of the mean of
    each year's lowest temperature.
    """
    number, half = int(zone[:-1]), zone[-1]
    return from_si(to_si(COLDEST_ZONE_F + ZONE_F * (number - 1) + HALF_ZONE_F * ((half == "b") + 0.5), unit("°F")), unit("°C"))


@lru_cache(maxsize=512)
def coldest_night_c(climate: Climate, soil: Soil, rules: FrostRules) -> float:
    """The screen minimum that half of all years fall below, in the open [°C].

    The published zone, else the frost model, whose spread was fitted in Australia; in American winters it comes out about 4 K too mild, so
    places there should give their zone.
    """
    if climate.coldest_night_c is not None:
        return climate.coldest_night_c
    minimum, spread = daily_climate(climate, OPEN, soil).minimum_c, minimum_spread(climate, rules)
    low, high = min(minimum) - MOST_SPREADS * max(spread), min(minimum) - LEAST_SPREADS * min(spread)
    while high - low > FOUND_K:
        middle = (low + high) / 2
        margins = tuple((middle - mean) / deviation for mean, deviation in zip(minimum, spread, strict=True))
        low, high = (low, middle) if chance_of_any_below(margins, climate, rules) > 0.5 else (middle, high)
    return (low + high) / 2
