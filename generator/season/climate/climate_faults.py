"""What cannot be true of a climate, a sentence for each thing."""

from collections.abc import Callable
from dataclasses import dataclass
from math import isfinite
from typing import Protocol

from generator.season.calendar_days import DAYS, MONTH_LENGTHS, MONTHS, month_days
from generator.season.climate.sun import sun

Series = tuple[float, ...] | None

# Name in a climate -> what a reader calls it.
NAMES = {
    "mean_maximum_c": "mean maximum",
    "mean_minimum_c": "mean minimum",
    "rain_mm": "rain",
    "frost_days": "frost days",
    "cold_days_at_or_below_2c": "cold days",
    "minimum_standard_deviation_c": "standard deviation of the minimum",
    "sunshine_h_per_day": "sunshine",
    "relative_humidity_3pm_percent": "humidity at 15:00",
}
HOTTEST_C, COLDEST_C = 60.0, -90.0
# The air bends the low sun over the horizon, which lengthens the day by some minutes over the equations'.
REFRACTION_H = 0.3


class NormalsToJudge(Protocol):
    """What is looked at: the monthly figures of a place, as its record or as the engine has them."""

    @property
    def mean_maximum_c(self) -> tuple[float, ...]: ...
    @property
    def mean_minimum_c(self) -> tuple[float, ...]: ...
    @property
    def rain_mm(self) -> tuple[float, ...]: ...
    @property
    def frost_days(self) -> Series: ...
    @property
    def cold_days_at_or_below_2c(self) -> Series: ...
    @property
    def minimum_standard_deviation_c(self) -> Series: ...
    @property
    def sunshine_h_per_day(self) -> Series: ...
    @property
    def relative_humidity_3pm_percent(self) -> Series: ...


@dataclass(frozen=True)
class ClimateFault:
    """One thing that cannot be: in which series (None: the latitude) and month (0 to 11, None: all of it); what would be right."""

    series: str | None
    month: int | None
    what: str
    instead: str


def climate_faults(climate: NormalsToJudge, latitude_deg: float) -> list[ClimateFault]:
    """One fault for each thing that cannot be true of a climate; empty when it can be computed with.

    climate: 12 figures a series, January first; temperatures [°C], rain [mm a month], nights a month, hours, per cent.
    latitude_deg: south is negative [°]; outside -90 to 90 it is a fault itself.
    Source: calendar and sun; the coldest and hottest monthly means are our limits, beyond any on record.
    """
    faults = []
    if not -90 <= latitude_deg <= 90:
        faults.append(ClimateFault(None, None, f"latitude {latitude_deg:g} is not between -90 and 90 degrees", "south is negative"))
    series = {name: values for name in NAMES if (values := getattr(climate, name)) is not None}
    broken = [fault for name, values in series.items() if (fault := _broken(name, values))]
    if broken:
        return faults + broken
    # Without a place on earth there is no day to hold the sunshine against.
    daylight_h = (24.0,) * DAYS if faults else sun(latitude_deg).daylight_h
    for month in range(12):
        longest_day_h = max(daylight_h[day] for day in month_days(month)) + REFRACTION_H
        faults += _in_month({name: values[month] for name, values in series.items()}, month, longest_day_h)
    return faults


def _broken(name: str, values: tuple[float, ...]) -> ClimateFault | None:
    if len(values) != 12:
        return ClimateFault(name, None, f"{NAMES[name]} has {len(values)} months where a year has 12", "give one figure a month")
    for month, value in enumerate(values):
        if not isinstance(value, int | float) or not isfinite(value):
            return ClimateFault(name, month, f"{NAMES[name]} has a month that is not a number", "write a number")
    return None


def _in_month(figures: dict[str, float], month: int, longest_day_h: float) -> list[ClimateFault]:
    # A leap year has 29 days of February, and normals may count it.
    length, longest_month = MONTH_LENGTHS[month], max(MONTH_LENGTHS[month], 29)
    high, frosts = figures["mean_maximum_c"], figures.get("frost_days")
    found = []

    def must(name: str, holds: Callable[[float], bool], what: str, instead: str) -> None:
        value = figures.get(name)
        if value is not None and not holds(value):
            sentence = what.format(value=value, name=NAMES[name])
            found.append(ClimateFault(name, month, f"{MONTHS[month]}: {sentence}", instead))

    must("mean_minimum_c", lambda value: value <= high, f"mean minimum {{value:g}} °C is above mean maximum {high:g} °C",
         "check whether the two are swapped")
    for name in ("mean_maximum_c", "mean_minimum_c"):
        must(name, lambda value: COLDEST_C <= value <= HOTTEST_C, "{name} {value:g} °C was never measured", "give it in degrees Celsius")
    must("rain_mm", lambda value: value >= 0, "rain {value:g} mm is negative", "give 0 or more")
    for name in ("frost_days", "cold_days_at_or_below_2c"):
        must(name, lambda value: 0 <= value <= longest_month, f"{{value:g}} {{name}} do not fit a month of {length} days",
             f"give 0 to {longest_month}")
    if frosts is not None:
        must("cold_days_at_or_below_2c", lambda value: value >= frosts,
             f"{{value:g}} nights at or below 2 °C are fewer than the {frosts:g} at or below 0 °C", "check whether the two are swapped")
    must("minimum_standard_deviation_c", lambda value: value > 0, "a standard deviation of {value:g} is not above 0",
         "leave the row out if it is not known")
    must("sunshine_h_per_day", lambda value: 0 <= value <= longest_day_h,
         f"{{value:g}} hours of sunshine do not fit a day of {longest_day_h:.1f} hours",
         "give the mean of a day, and check the sign of the latitude")
    must("relative_humidity_3pm_percent", lambda value: 0 < value <= 100, "a humidity of {value:g} % is not above 0 and up to 100",
         "give it in per cent")
    return found
