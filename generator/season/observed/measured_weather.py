"""The weather of this year: measured as far as the record goes, and the usual one ahead."""

from dataclasses import dataclass, replace
from functools import cached_property
from typing import Self

from generator.book.daily.daily_record import DailyRecord
from generator.season.calendar_days import DAYS
from generator.season.climate.climate import OPEN, Climate, Daily, DailyClimate, Site, daily_climate
from generator.season.climate.frost import Frost, KindOfYear
from generator.season.climate.frost_margin import between_months
from generator.season.growth import Growth
from generator.season.inputs import EngineRules
from generator.season.normals.record_normals import day_number
from generator.season.observed.departures import Circle, circle_about, departures, in_the_soil
from generator.season.water.need import hargreaves_mm
from generator.season.weather import WeatherYear, weather


@dataclass(frozen=True)
class MeasuredDays(DailyClimate):
    """Temperatures and rain of this year. What the rules count from, the top and the turn of the year, is the usual year's."""

    usual: DailyClimate

    @property
    def highest_mean_c(self) -> float:
        return self.usual.highest_mean_c

    @property
    def lowest_mean_c(self) -> float:
        return self.usual.lowest_mean_c

    @property
    def hottest_day(self) -> int:
        return self.usual.hottest_day

    @property
    def coldest_day(self) -> int:
        return self.usual.coldest_day

    @property
    def warming(self) -> tuple[bool, ...]:
        return self.usual.warming


@dataclass(frozen=True)
class MeasuredGrowth(Growth):
    """Growth of this year, against the most and the least that the place gives in a usual one."""

    usual: Growth

    @property
    def best(self) -> float:
        return self.usual.best

    @property
    def least(self) -> float:
        return self.usual.least

    @cached_property
    def share(self) -> Daily:
        return tuple(min(1.0, value / self.best) if self.best else 0.0 for value in self.potential)

    @cached_property
    def swing(self) -> Daily:
        span = self.best - self.least
        return tuple(min(1.0, max(0.0, (value - self.least) / span)) if span else 1.0 for value in self.potential)


@dataclass(frozen=True)
class KindOfYearSoFar(KindOfYear):
    """Frost of a kind of year from now on; nights: of the year's 365, whether frost was measured, None where the night is still to come."""

    nights: tuple[bool | None, ...]

    def of_any(self, first_day: int, days: int) -> float:
        """Certain where a frost was measured among the nights."""
        if any(self.nights[(first_day + ahead) % DAYS] for ahead in range(min(days, DAYS))):
            return 1.0
        return super().of_any(first_day, days)


@dataclass(frozen=True)
class MeasuredWeather(WeatherYear):
    """The weather of a site this year. usual: of a usual year there; circle: which days are measured."""

    usual: WeatherYear
    circle: Circle

    def moved(self, shift_k: float) -> Self:
        """The same with all temperatures moved [K]; frost and water are left as they stand."""
        usual, days = self.usual.moved(shift_k), self.days

        def shifted(daily: Daily) -> Daily:
            return tuple(value + shift_k for value in daily)

        moved = MeasuredDays(shifted(days.mean_c), shifted(days.maximum_c), shifted(days.minimum_c), shifted(days.soil_c), days.rain_mm, usual.days)
        return replace(self, days=moved, usual=usual)


def measured_weather(climate: Climate, site: Site, rules: EngineRules, record: DailyRecord, ahead_in_spreads: float = 0.0) -> MeasuredWeather:
    """The weather at a site of a place, measured until the last day of the record that has a maximum and a minimum.

    ahead_in_spreads: how far the days to come lie from the usual, in standard deviations of the place's months from year to year; 0 is the usual.
    Raises ValueError for a record without a day that has both. Temperatures [°C] are those of the station, moved by the site's offsets; evapotranspiration is
    the usual of the day times what Hargreaves' equation makes of this year's maximum and minimum against the usual ones.
    """
    until = record.last_warmth
    if until is None:
        raise ValueError("no day of the record has both a maximum and a minimum")
    usual = weather(climate, site, rules.soil, rules.frost)
    circle = circle_about(until, usual.days)
    open_air = daily_climate(climate, OPEN, rules.soil)
    spread = between_months(climate.mean_spread_between_years_c or (0.0,) * 12)

    ahead = tuple(ahead_in_spreads * each for each in spread) if ahead_in_spreads else None
    high = departures(circle, record.maximum_c, open_air.maximum_c, ahead)
    low = departures(circle, record.minimum_c, open_air.minimum_c, ahead)
    mean = tuple((top + bottom) / 2 for top, bottom in zip(high, low))
    rain = departures(circle, record.rain_mm, open_air.rain_mm)
    days = MeasuredDays(
        mean_c=_plus(usual.days.mean_c, mean), maximum_c=_plus(usual.days.maximum_c, high), minimum_c=_plus(usual.days.minimum_c, low),
        soil_c=_plus(usual.days.soil_c, in_the_soil(circle, mean, rules.soil)),
        rain_mm=tuple(max(0.0, value) for value in _plus(usual.days.rain_mm, rain)), usual=usual.days,
    )
    before = hargreaves_mm(climate.latitude_deg, open_air.maximum_c, open_air.minimum_c)
    now = hargreaves_mm(climate.latitude_deg, _plus(open_air.maximum_c, high), _plus(open_air.minimum_c, low))
    return MeasuredWeather(
        normals=usual.normals, site=site, soil=usual.soil, frost_rules=usual.frost_rules, days=days,
        air_frost=_frost_so_far(usual.air_frost, circle, record, rules.frost.air_frost_c - site.minimum_offset_k),
        ground_frost=_frost_so_far(usual.ground_frost, circle, record, rules.frost.ground_frost_c - site.minimum_offset_k),
        daylight_h=usual.daylight_h,
        reference_evapotranspiration_mm=_times(usual.reference_evapotranspiration_mm, now, before),
        evapotranspiration_method=usual.evapotranspiration_method,
        effective_rain_mm=_times(usual.effective_rain_mm, days.rain_mm, usual.days.rain_mm), usual=usual, circle=circle,
    )


def _plus(usual: Daily, departure: Daily) -> Daily:
    return tuple(value + more for value, more in zip(usual, departure))


def _times(usual: Daily, now: Daily, before: Daily) -> Daily:
    """The usual, in the proportion of what is now to what was before; what is now where there was nothing before."""
    return tuple(value * new / old if old > 0 else new for value, new, old in zip(usual, now, before))


def _frost_so_far(usual: Frost, circle: Circle, record: DailyRecord, at_or_below_c: float) -> Frost:
    nights: list[bool | None] = [None] * DAYS
    for day in circle.dates[: circle.measured_days]:
        low = record.minimum_c.get(day)
        if low is not None:
            nights[day_number(day)] = low <= at_or_below_c
    known = [None if night is None else float(night) for night in nights]
    return Frost(tuple(
        KindOfYearSoFar(
            year.share, tuple(chance if night is None else night for chance, night in zip(year.chance, known)),
            tuple(chance if night is None else night for chance, night in zip(year.onset, known)), tuple(nights),
        )
        for year in usual.years
    ))
