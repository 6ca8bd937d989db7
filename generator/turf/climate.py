"""The climate of a place day by day, and at its five sites: what every other module of the engine starts from."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from math import isfinite

from generator.turf.calendar_days import MONTH_LENGTHS, MONTHS
from generator.turf.daily_curve import daily_curve, non_negative_daily, soil_curve

Twelve = tuple[float, ...]
Daily = tuple[float, ...]


@dataclass(frozen=True)
class Climate:
    """Monthly normals of one place. Every series is 12 figures, January first, in either hemisphere.

    Temperatures are screen temperatures [°C]; rain is a monthly total [mm]; `frost_days` counts nights a month at or
    below 0 °C, `cold_days_at_or_below_2c` the same at 2 °C; None where the source does not say. `temperature_step_c` is
    the last printed step, 0.1 or 1.
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

    def __post_init__(self) -> None:
        if faults := climate_faults(self):
            raise ValueError("; ".join(faults))

    @property
    def mean_c(self) -> Twelve:
        """Mean of maximum and minimum, as climate tables and the growth-potential model take it."""
        return tuple((high + low) / 2 for high, low in zip(self.mean_maximum_c, self.mean_minimum_c))


def climate_faults(climate: Climate) -> list[str]:
    """One sentence for each thing that cannot be true of a climate; empty when it can be computed with."""
    faults = []
    if not -90 <= climate.latitude_deg <= 90:
        faults.append(f"latitude {climate.latitude_deg:g} is not between -90 and 90 degrees")
    series = {
        "mean maximum": climate.mean_maximum_c, "mean minimum": climate.mean_minimum_c, "rain": climate.rain_mm,
        "frost days": climate.frost_days, "cold days": climate.cold_days_at_or_below_2c,
        "standard deviation of the minimum": climate.minimum_standard_deviation_c,
    }
    whole = True
    for name, values in series.items():
        if values is None:
            continue
        if len(values) != 12:
            faults.append(f"{name} has {len(values)} months where a year has 12")
            whole = False
        elif not all(isinstance(value, int | float) and isfinite(value) for value in values):
            faults.append(f"{name} has a month that is not a number")
            whole = False
    if not whole:
        return faults
    for month, name in enumerate(MONTHS):
        high, low = climate.mean_maximum_c[month], climate.mean_minimum_c[month]
        if low > high:
            faults.append(f"{name}: mean minimum {low:g} °C is above mean maximum {high:g} °C")
        if climate.rain_mm[month] < 0:
            faults.append(f"{name}: rain {climate.rain_mm[month]:g} mm is negative")
        for label in ("frost days", "cold days"):
            days = series[label]
            # A leap year has 29 days of February, and normals may count it.
            if days is not None and not 0 <= days[month] <= max(MONTH_LENGTHS[month], 29):
                faults.append(f"{name}: {days[month]:g} {label} do not fit a month of {MONTH_LENGTHS[month]} days")
        spread = climate.minimum_standard_deviation_c
        if spread is not None and spread[month] <= 0:
            faults.append(f"{name}: a standard deviation of {spread[month]:g} is not above 0")
    return faults


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

    @cached_property
    def hottest_day(self) -> int:
        return max(range(len(self.mean_c)), key=self.mean_c.__getitem__)

    @cached_property
    def coldest_day(self) -> int:
        return min(range(len(self.mean_c)), key=self.mean_c.__getitem__)


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
