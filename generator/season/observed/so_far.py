"""What was measured since the last turn of the year, beside what those days bring in a usual year."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from math import fsum

from generator.book.daily.daily_record import DailyRecord
from generator.season.calendar_days import DAYS
from generator.season.climate.climate import Daily
from generator.season.climate.degree_days import growing_degree_days
from generator.season.normals.record_normals import day_number
from generator.season.observed.this_year import ThisYear


@dataclass(frozen=True)
class SoFar:
    """One quantity of the days since the turn. measured: None where no day was read. usual: of the same days; days: how many were read."""

    measured: float | None
    usual: float
    unit: str
    days: int


def since(this: ThisYear) -> date:
    """The first day that counts as this year's: the last turn of the usual year."""
    return this.circle.dates[this.circle.measured_days - 1]


def so_far(this: ThisYear, record: DailyRecord) -> dict[str, SoFar]:
    """Warmth, growth, soil, frost, rain and water of the days since the turn, by name; usual figures are of just the days that were read."""
    dates = sorted(this.circle.dates[: this.circle.measured_days])
    season, usual, base = this.season, this.usual, this.season.grass.growth_base_c
    weather = usual.weather
    both = [day for day in dates if day in record.mean_c]
    warmth = {day: growing_degree_days(record.maximum_c[day], record.minimum_c[day], base) for day in both}
    usual_warmth = tuple(growing_degree_days(high, low, base) for high, low in zip(usual.climate.maximum_c, usual.climate.minimum_c))
    frosts = {day: float(record.minimum_c[day] <= season.weather.frost_rules.air_frost_c) for day in dates if day in record.minimum_c}
    today = this.circle.today
    return {
        "mean_temperature": _mean(record.mean_c, usual.climate.mean_c, both, "°C"),
        "growth_potential": _mean(_by_date(season.growth.potential, both), usual.growth.potential, both, "1"),
        "growing_degree_days": _sum(warmth, usual_warmth, both, "°C day"),
        "soil_temperature_now": SoFar(season.climate.soil_c[today], usual.climate.soil_c[today], "°C", len(both)),
        "frost_nights": _sum(frosts, weather.air_frost.chance, [*frosts], "1"),
        "rain": _sum(record.rain_mm, usual.climate.rain_mm, [day for day in dates if day in record.rain_mm], "mm"),
        "reference_evapotranspiration": _sum(
            _by_date(season.weather.reference_evapotranspiration_mm, both), weather.reference_evapotranspiration_mm, both, "mm",
        ),
        "water_need": _sum(_by_date(season.water_need_mm, both), usual.water_need_mm, both, "mm"),
    }


def _by_date(daily: Daily, dates: list[date]) -> dict[date, float]:
    return {day: daily[day_number(day)] for day in dates}


def _sum(measured: Mapping[date, float], usual: Daily, dates: list[date], unit: str) -> SoFar:
    of_usual = fsum(usual[day_number(day) % DAYS] for day in dates)
    return SoFar(fsum(measured[day] for day in dates) if dates else None, of_usual, unit, len(dates))


def _mean(measured: Mapping[date, float], usual: Daily, dates: list[date], unit: str) -> SoFar:
    total, days = _sum(measured, usual, dates, unit), len(dates)
    return SoFar(None if total.measured is None else total.measured / days, total.usual / days if days else 0.0, unit, days)
