"""The climate of a place day by day, and at its five sites: what every other module of the engine starts from."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from math import atan2, cos, fsum, pi, sin

from generator.season.calendar_days import DAYS, MONTH_LENGTHS
from generator.season.climate.climate_faults import climate_faults
from generator.season.climate.daily_curve import daily_curve, non_negative_daily, soil_curve

Twelve = tuple[float, ...]
Daily = tuple[float, ...]
# How far below the year's highest day still counts as the height of summer (our choice).
NEAR_TOP_K = 0.5


@dataclass(frozen=True)
class Climate:
    """Monthly normals of one place. Every series is 12 figures, January first, in either hemisphere.

    Temperatures are screen temperatures [°C]; rain is a monthly total [mm]; `frost_days` counts nights a month at or
    below 0 °C, `cold_days_at_or_below_2c` the same at 2 °C; sunshine is hours of a mean day, humidity that of 15:00 [%].
    None where the source does not say. `temperature_step_c` is the last printed step, 0.1 or 1. `coldest_night_c`: the published
    mean of each year's coldest night [°C]. `night_to_night`: measured correlation of a night's departure with the next night's, 0 to 1.
    `mean_spread_between_years_c`: standard deviation of the month's mean temperature from year to year [°C].
    """

    latitude_deg: float
    mean_maximum_c: Twelve
    mean_minimum_c: Twelve
    rain_mm: Twelve
    elevation_m: float | None = None
    frost_days: Twelve | None = None
    cold_days_at_or_below_2c: Twelve | None = None
    minimum_standard_deviation_c: Twelve | None = None
    temperature_step_c: float = 0.1
    sunshine_h_per_day: Twelve | None = None
    relative_humidity_3pm_percent: Twelve | None = None
    coldest_night_c: float | None = None
    night_to_night: float | None = None
    mean_spread_between_years_c: Twelve | None = None

    def __post_init__(self) -> None:
        if faults := climate_faults(self, self.latitude_deg):
            raise ValueError("; ".join(fault.what for fault in faults))

    @property
    def mean_c(self) -> Twelve:
        """Mean of maximum and minimum, as climate tables and the growth-potential model take it."""
        return tuple((high + low) / 2 for high, low in zip(self.mean_maximum_c, self.mean_minimum_c))


@dataclass(frozen=True)
class Site:
    """One lawn's microclimate against the open weather station.

    maximum_offset_k, minimum_offset_k: added to the daily maximum and minimum [K].
    evaporation_share: reference evapotranspiration against the open, 1 = the same.
    """

    id: str
    maximum_offset_k: float = 0.0
    minimum_offset_k: float = 0.0
    evaporation_share: float = 1.0


OPEN = Site("open")


@dataclass(frozen=True)
class DailyClimate:
    """Temperatures and rain of one site, 365 days, 1 January first: °C, and mm a day."""

    mean_c: Daily
    maximum_c: Daily
    minimum_c: Daily
    soil_c: Daily
    rain_mm: Daily

    @property
    def highest_mean_c(self) -> float:
        """The top of the year, from which rules count how far it has come [°C]."""
        return max(self.mean_c)

    @property
    def lowest_mean_c(self) -> float:
        """The bottom of the year, likewise [°C]."""
        return min(self.mean_c)

    @cached_property
    def hottest_day(self) -> int:
        """The middle of the height of summer. A flat top has no one hottest day: two weeks may be a hundredth of a degree apart."""
        return _middle(self.mean_c)

    @cached_property
    def coldest_day(self) -> int:
        """The middle of the depth of winter, likewise."""
        return _middle(tuple(-value for value in self.mean_c))

    @cached_property
    def warming(self) -> tuple[bool, ...]:
        """For each of 365 days, whether it lies between the coldest day and the next hottest."""
        half = (self.hottest_day - self.coldest_day) % DAYS
        return tuple((day - self.coldest_day) % DAYS < half for day in range(DAYS))


def _middle(daily: Daily) -> int:
    """Centre of gravity, round the year, of what rises above NEAR_TOP_K below the highest day."""
    top = max(daily)
    weights = [max(0.0, value - top + NEAR_TOP_K) for value in daily]
    angles = [2 * pi * day / DAYS for day in range(DAYS)]
    east = fsum(weight * cos(angle) for weight, angle in zip(weights, angles))
    north = fsum(weight * sin(angle) for weight, angle in zip(weights, angles))
    return round(atan2(north, east) / (2 * pi) * DAYS) % DAYS


@dataclass(frozen=True)
class Soil:
    """What the soil-temperature estimate needs: depth [m] and thermal diffusivity [m²/s]."""

    depth_m: float
    diffusivity_m2_per_s: float


@lru_cache(maxsize=512)
def daily_climate(climate: Climate, site: Site, soil: Soil) -> DailyClimate:
    """Daily curves at a site; monthly means equal the normals plus the site's offsets to 1e-9.

    Returns 365 days, 1 January first. Source: `daily_curve`, `soil_curve`; offsets from the book's data.
    """
    maximum = _moved(climate.mean_maximum_c, site.maximum_offset_k)
    minimum = _moved(climate.mean_minimum_c, site.minimum_offset_k)
    mean = tuple((high + low) / 2 for high, low in zip(maximum, minimum))
    return DailyClimate(
        mean_c=daily_curve(mean),
        maximum_c=daily_curve(maximum),
        minimum_c=daily_curve(minimum),
        soil_c=soil_curve(mean, soil.depth_m, soil.diffusivity_m2_per_s),
        rain_mm=daily_rain(climate.rain_mm),
    )


@lru_cache(maxsize=128)
def daily_rain(monthly_mm: Twelve) -> Daily:
    """Mean rain of each day [mm], 365 days, from 12 monthly totals [mm]; months keep their totals. Source: `non_negative_daily`."""
    return non_negative_daily([total / days for total, days in zip(monthly_mm, MONTH_LENGTHS)])


def _moved(monthly: Sequence[float], offset_k: float) -> Twelve:
    return tuple(value + offset_k for value in monthly)
