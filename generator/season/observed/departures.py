"""How far this year's days lie from the usual ones, smoothed as much as normals are, and what the soil makes of it."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache, cached_property
from math import erfc, exp, fsum, sqrt

from generator.season.calendar_days import DAYS
from generator.season.climate.climate import Daily, DailyClimate, Soil
from generator.season.normals.record_normals import day_number

# The rules were made for curves through the means of months. A month's mean spreads a day over 31 days evenly, whose standard deviation is this;
# a measured year is smoothed as much, by a bell, which has no edges that would show.
SMOOTHING_DAYS = 31 / sqrt(12)
REACH_DAYS = 27
# From a turn of the year on, this year takes over from the usual one within so many days: what lies before the turn is last season's (our choice).
TAKING_OVER_DAYS = 14
SECONDS_A_DAY = 86400.0
SOIL_MEMORY_DAYS = 60
A_DAY = timedelta(days=1)


@dataclass(frozen=True)
class Circle:
    """The engine's year about the last measured day. until: that day. measured_days: how many days up to it are this season's, the others lie ahead."""

    until: date
    measured_days: int

    @cached_property
    def today(self) -> int:
        """The number of the last measured day in the engine's year, from 0."""
        return day_number(self.until)

    def offset(self, day: int) -> int:
        """How far a day of the year lies from the last measured one [days]: 0 or less where it lies behind."""
        ahead = (day - self.today) % DAYS
        return ahead - DAYS if DAYS - ahead < self.measured_days else ahead

    def is_measured(self, day: int) -> bool:
        return self.offset(day) <= 0

    @cached_property
    def dates(self) -> tuple[date, ...]:
        """The last days with a number of their own, the newest first: 29 February has none. Enough of them to smooth all that is measured."""
        found: list[date] = []
        day = self.until
        while len(found) < self.measured_days + REACH_DAYS:
            if (day.month, day.day) != (2, 29):
                found.append(day)
            day -= A_DAY
        return tuple(found)


def circle_about(until: date, usual: DailyClimate) -> Circle:
    """The year about a day: what was measured counts back to the last turn of the usual year, its coldest or hottest day."""
    today = day_number(until)
    return Circle(until, 1 + min((today - turn) % DAYS for turn in (usual.coldest_day, usual.hottest_day)))


def departures(circle: Circle, measured: Mapping[date, float], usual: Daily, ahead: Daily | None = None) -> Daily:
    """Each day's departure from the usual, smoothed: 365 values from 1 January, 0 where the usual year stands.

    measured: by date; usual: 365 values, in the same unit; any unit. ahead: what is taken for the days to come, 365 values from 1 January; nothing,
    where it is left out. A day without a reading counts for nothing; its neighbours stand for it.
    """
    line: list[float | None] = [None if (value := measured.get(day)) is None else value - usual[day_number(day)] for day in reversed(circle.dates)]
    today, still = len(line) - 1, DAYS - circle.measured_days + REACH_DAYS
    line += [ahead[(circle.today + days) % DAYS] if ahead else 0.0 for days in range(1, still + 1)]

    def smoothed(offset: int) -> float:
        if ahead is None and offset > REACH_DAYS:
            return 0.0
        near = line[today + offset - REACH_DAYS : today + offset + REACH_DAYS + 1]
        found = [(weight, value) for weight, value in zip(_BELL, near) if value is not None]
        if not found:
            return 0.0
        mean = fsum(weight * value for weight, value in found) / fsum(weight for weight, _ in found)
        return mean * min(1.0, (circle.measured_days + offset) / TAKING_OVER_DAYS) if offset <= 0 else mean

    return tuple(smoothed(circle.offset(day)) for day in range(DAYS))


_BELL = tuple(exp(-0.5 * (step / SMOOTHING_DAYS) ** 2) for step in range(-REACH_DAYS, REACH_DAYS + 1))


def in_the_soil(circle: Circle, at_surface: Daily, soil: Soil) -> Daily:
    """What departures at the surface make of the soil at its depth, 365 values [K].

    Each day's step is felt below as erfc(z / (2 sqrt(D t))) of it after the time t: heat conduction into a deep uniform soil whose surface changes
    at once. Source: Carslaw and Jaeger 1959, Conduction of Heat in Solids, 2nd edition, section 2.4. Limits: as `soil_curve`.
    """
    felt = felt_after(soil)

    def below(day: int) -> float:
        offset = circle.offset(day)
        back = range(min(len(felt), offset + circle.measured_days))
        return fsum(felt[lag] * at_surface[(day - lag) % DAYS] for lag in back)

    return tuple(below(day) for day in range(DAYS))


@cache
def felt_after(soil: Soil) -> Daily:
    """The part of a departure that is felt so many days later, today first [1]; they add up to 1."""
    def step(days: float) -> float:
        return erfc(soil.depth_m / (2 * sqrt(soil.diffusivity_m2_per_s * days * SECONDS_A_DAY))) if days > 0 else 0.0

    steps = [step(lag + 0.5) - step(lag - 0.5) for lag in range(SOIL_MEMORY_DAYS)]
    return tuple(each / fsum(steps) for each in steps)
