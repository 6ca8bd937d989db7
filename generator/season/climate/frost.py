"""How likely a frost night is, when the last and first are due, and how many a month has.

The daily minimum is taken as normally distributed about the smooth curve of mean minima. Where a place publishes its
frost nights a month, each month is shifted until the model gives that many; where it publishes only the mean minimum,
the spread comes from a rule fitted to 48 Australian stations (data/season-groups.yml, `minimum_spread_*`).
Frost comes in runs, and some years are colder than others: both are counted where a date is asked for.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import accumulate
from math import exp, fsum, sqrt

from generator.season.calendar_days import DAYS, MONTH_LENGTHS, monthly_means
from generator.season.climate.climate import Climate, Daily, Site, Soil, Twelve, daily_climate
from generator.season.climate.frost_margin import FrostRules, below, minimum_spread, night_to_night, threshold_shift

# A cold season, a usual one and a warm one: three points that have the mean and spread of a normal distribution (Gauss and
# Hermite), each with its share of the years.
KINDS_OF_YEAR = ((sqrt(3), 1 / 6), (0.0, 4 / 6), (-sqrt(3), 1 / 6))
# What differs from year to year is part of the spread of nights; never take more than this share of it (our limit).
LARGEST_YEARLY_SHARE = 0.5


@dataclass(frozen=True)
class KindOfYear:
    """Frost in one kind of year, 365 nights, 1 January first.

    share: of all years, 0 to 1. chance: of a frost night, 0 to 1. onset: of a frost night that follows a frost-free one, the
    beginning of a run.
    """

    share: float
    chance: Daily
    onset: Daily

    def of_any(self, first_day: int, days: int) -> float:
        """Chance of at least one frost night in `days` nights from `first_day`: runs as a Poisson process."""
        return 1 - exp(-(self.chance[first_day % DAYS] + _between(self._running, first_day + 1, days - 1)))

    @cached_property
    def _running(self) -> tuple[float, ...]:
        return (0.0, *accumulate(self.onset))


@dataclass(frozen=True)
class Frost:
    """Frost at one site for one threshold, over all kinds of year; their shares add up to 1."""

    years: tuple[KindOfYear, ...]

    @cached_property
    def chance(self) -> Daily:
        """Chance of a frost night, 0 to 1, 365 nights, 1 January first."""
        return tuple(fsum(year.share * year.chance[day] for year in self.years) for day in range(DAYS))

    @cached_property
    def onset(self) -> Daily:
        """Chance that a run of frost begins, 0 to 1, 365 nights, 1 January first."""
        return tuple(fsum(year.share * year.onset[day] for year in self.years) for day in range(DAYS))

    def nights_per_month(self) -> Twelve:
        """Expected frost nights of each month, January first."""
        return tuple(mean * length for mean, length in zip(monthly_means(self.chance), MONTH_LENGTHS))

    def chance_of_any(self, first_day: int, days: int) -> float:
        """Chance of at least one frost night in `days` nights from `first_day`; the year wraps round. 0 to 1.

        Frost nights come in runs, so counting each night as a fresh chance would make a late frost look likelier than it
        is: 1 - exp(-(chance of the first night + expected beginnings of runs after it)), meaned over the kinds of year.
        Source: runs of frost taken as a Poisson process, as is usual for rare events that come in clusters. Limit: it counts
        10.5 runs a year for Seattle 2012 to 2015 where the record has 7 and independent nights would give 18, so it errs
        towards caution.
        """
        if days <= 0:
            return 0.0
        return fsum(year.share * year.of_any(first_day, days) for year in self.years)

    def chance_after(self, day: int, warmest_day: int) -> float:
        """Chance of any frost from the night of `day` on, up to summer: 0 to 1. For days in the half-year before `warmest_day`."""
        return self.chance_of_any(day, (warmest_day - day) % DAYS)

    def chance_before(self, day: int, warmest_day: int) -> float:
        """Chance that frost has come, after summer, by the night of `day`: 0 to 1. For the half-year after `warmest_day`."""
        return self.chance_of_any(warmest_day, (day - warmest_day) % DAYS + 1)

    def last_day(self, risk: float, warmest_day: int) -> int | None:
        """Last day whose night or any later one before the warmest day still carries more than `risk`; None if none does.

        In the half-year before `warmest_day`. From the day after, the chance of any frost left in the season is at most `risk`.
        """
        for before in range(1, DAYS // 2):
            day = (warmest_day - before) % DAYS
            if self.chance_after(day, warmest_day) > risk:
                return day
        return None

    def first_day(self, risk: float, warmest_day: int) -> int | None:
        """First day after the warmest day by which any frost has become likelier than `risk`; None if it never does."""
        for after in range(DAYS // 2):
            day = (warmest_day + after) % DAYS
            if self.chance_before(day, warmest_day) > risk:
                return day
        return None


@lru_cache(maxsize=1024)
def frost(climate: Climate, site: Site, soil: Soil, rules: FrostRules, ground: bool = False) -> Frost:
    """Nightly chance that the screen minimum falls to the frost threshold, in a cold, a usual and a warm year.

    ground: True takes the ground-frost threshold, at which grass itself may freeze while the screen stays above 0 °C.
    Method: normal distribution about the daily curve of mean minima. Fitted on 24 of 48 Bureau of Meteorology stations
    and tried on the other 24, months with at least one frost night recorded (72): mean absolute error 0.7 nights a
    month, always-zero 2.3 (0.9 and 3.8 at 2 °C, 105 months; 0.6 and 3.9 at three English stations); it counts 0.4 too few on average, because cold nights reach
    further below the mean than a normal distribution says. Source: our fit to figures of those stations, 2007-2017; correlation from night to
    night as `night_to_night`; spread from year to year from the daily record of Seattle, assumed elsewhere.
    """
    margins = _margins(climate, site, soil, rules, ground=False)
    if ground:
        # Two counts matched apart may cross by a few hundredths of a night; an air frost is a ground frost too.
        margins = tuple(map(max, margins, _margins(climate, site, soil, rules, ground=True)))
    return _of_margins(margins, climate, rules)


def chance_of_any_below(margins: Daily, climate: Climate, rules: FrostRules) -> float:
    """Chance, 0 to 1, that any night of a year falls below a mark that stands so far above each night's mean minimum.

    margins: 365, in standard deviations of the minimum [1]. Source: as `frost`.
    """
    return _of_margins(margins, climate, rules).chance_of_any(0, DAYS)


def _of_margins(margins: Daily, climate: Climate, rules: FrostRules) -> Frost:
    if max(margins) < TABLE_FROM:
        return _NEVER
    return Frost(tuple(_kind_of_year(colder, share, margins, climate, rules) for colder, share in KINDS_OF_YEAR))


def _kind_of_year(colder: float, share: float, margins: Daily, climate: Climate, rules: FrostRules) -> KindOfYear:
    """Frost in years that are `colder` standard deviations of the yearly departure below the mean, from the margins of all years."""
    chance, onset, tie = [], [], night_to_night(climate, rules)
    for margin, spread in zip(margins, minimum_spread(climate, rules)):
        yearly = min(rules.year_to_year_k, LARGEST_YEARLY_SHARE * spread)
        nightly = sqrt(spread * spread - yearly * yearly)
        of_nights = (margin * spread + colder * yearly) / nightly
        # What the years explain is taken from the correlation of the nights within one.
        tied = (tie * spread * spread - yearly * yearly) / (nightly * nightly)
        night = below(of_nights, 1.0)
        chance.append(night)
        onset.append(night * (1 - _again(of_nights, _again_table(round(max(0.0, tied) / CORRELATION_STEP) * CORRELATION_STEP))))
    return KindOfYear(share, tuple(chance), tuple(onset))


def _margins(climate: Climate, site: Site, soil: Soil, rules: FrostRules, ground: bool) -> Daily:
    """How far the threshold stands above each day's mean minimum, in standard deviations."""
    threshold = (rules.ground_frost_c if ground else rules.air_frost_c) + rules.counting_step_k
    minimum = daily_climate(climate, site, soil).minimum_c
    return tuple(
        (threshold + moved - low) / spread
        for low, spread, moved in zip(minimum, minimum_spread(climate, rules), threshold_shift(climate, soil, rules, ground))
    )


# Margins, in standard deviations, between which the table below is computed, and its step.
TABLE_FROM, TABLE_TO, TABLE_STEP = -6.0, 4.0, 0.1
# Correlations are rounded to this, so that few tables are needed.
CORRELATION_STEP = 0.02


@lru_cache(maxsize=128)
def _again_table(correlation: float) -> tuple[float, ...]:
    """Chance that a frost night follows a frost night, for margins from TABLE_FROM to TABLE_TO.

    Two neighbouring nights are jointly normal with this correlation:
    P(both) / P(one) = integral to the margin of pdf(z) cdf((margin - r z) / sqrt(1 - r^2)) dz / cdf(margin).
    """
    rows = round((TABLE_TO - TABLE_FROM) / TABLE_STEP) + 1
    step = TABLE_STEP / 2
    scale = sqrt(1 - correlation * correlation)
    table = []
    for row in range(rows):
        margin = TABLE_FROM + row * TABLE_STEP
        # The weight falls off so fast below the margin that six standard deviations hold all of it.
        points = [margin - (k + 0.5) * step for k in range(round(6 / step))]
        weights = [exp(-z * z / 2 + margin * margin / 2) for z in points]
        both = fsum(w * below(margin - correlation * z, scale) for w, z in zip(weights, points))
        table.append(both / fsum(weights))
    return tuple(table)


def _again(margin: float, table: Sequence[float]) -> float:
    place = (min(max(margin, TABLE_FROM), TABLE_TO) - TABLE_FROM) / TABLE_STEP
    row = min(int(place), len(table) - 2)
    return table[row] + (place - row) * (table[row + 1] - table[row])


def _between(running: Sequence[float], first_day: int, days: int) -> float:
    """Sum over `days` days from `first_day` of the daily series whose running total is given; at most one year."""
    days = max(0, min(days, DAYS))
    start = first_day % DAYS
    end = start + days
    if end <= DAYS:
        return running[end] - running[start]
    return running[DAYS] - running[start] + running[end - DAYS]


_NEVER = Frost((KindOfYear(1.0, (0.0,) * DAYS, (0.0,) * DAYS),))
