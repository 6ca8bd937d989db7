"""How likely a frost night is, when the last and first are due, and how many a month has.

The daily minimum is taken as normally distributed about the smooth curve of mean minima. Where a place publishes its
frost nights a month, each month is shifted until the model gives that many; where it publishes only the mean minimum,
the spread comes from a rule fitted to 48 Australian stations (data/season-groups.yml, `minimum_spread_*`).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import accumulate
from math import erfc, exp, sqrt

from generator.turf.calendar_days import DAYS, MONTH_LENGTHS, MONTH_STARTS, monthly_means, month_days
from generator.turf.climate import Climate, Daily, Site, Soil, Twelve, daily_climate

MID_MONTH = tuple(start + length / 2 - 0.5 for start, length in zip(MONTH_STARTS, MONTH_LENGTHS))
# Rounds of matching the published frost nights: each month is solved in turn while its neighbours stand still, and
# neighbours meet only at the ends of the month, so the error shrinks about fivefold a round.
MATCHING_ROUNDS = 8
BISECTIONS = 24
LARGEST_SHIFT_K = 6.0


@dataclass(frozen=True)
class FrostRules:
    """Numbers of the frost model; values and sources in data/season-groups.yml.

    air_frost_c, ground_frost_c: screen minima that count as air frost and as ground frost [°C].
    spread_base_k, spread_per_range: standard deviation of the daily minimum = base + slope x yearly range of mean minima [K].
    night_to_night: correlation of one night's departure from the mean minimum with the next night's, -1 to 1.
    counting_step_k: half the last digit of a read minimum; "at or below 0.0" catches minima up to 0.05 [K].
    """

    air_frost_c: float
    ground_frost_c: float
    spread_base_k: float
    spread_per_range: float
    night_to_night: float
    counting_step_k: float


@dataclass(frozen=True)
class Frost:
    """Frost at one site for one threshold, 365 nights, 1 January first.

    chance: of a frost night, 0 to 1. onset: of a frost night that follows a frost-free one, the beginning of a run.
    """

    chance: Daily
    onset: Daily

    def nights_per_month(self) -> Twelve:
        """Expected frost nights of each month, January first."""
        return tuple(mean * length for mean, length in zip(monthly_means(self.chance), MONTH_LENGTHS))

    def chance_of_any(self, first_day: int, days: int) -> float:
        """Chance of at least one frost night in `days` nights from `first_day`; the year wraps round. 0 to 1.

        Frost nights come in runs, so counting each night as a fresh chance would make a late frost look likelier than it
        is: 1 - exp(-(chance of the first night + expected beginnings of runs after it)).
        Source: runs of frost taken as a Poisson process, as usual for rare clustered events (from memory). Limit: tied by
        one night's correlation only, it counts 10 runs a year for Seattle 2012 to 2015 where the record has 7 and
        independent nights would give 18, so it errs towards caution.
        """
        if days <= 0:
            return 0.0
        return 1 - exp(-(self.chance[first_day % DAYS] + _between(self._running, first_day + 1, days - 1)))

    @cached_property
    def _running(self) -> tuple[float, ...]:
        return (0.0, *accumulate(self.onset))

    def last_day(self, risk: float, warmest_day: int) -> int | None:
        """Last day whose night or any later one before the warmest day still carries more than `risk`; None if none does.

        In the half-year before `warmest_day`. From the day after, the chance of any frost left in the season is at most `risk`.
        """
        for before in range(DAYS // 2):
            if self.chance_of_any(warmest_day - before, before) > risk:
                return (warmest_day - before) % DAYS
        return None

    def first_day(self, risk: float, warmest_day: int) -> int | None:
        """First day after the warmest day by which any frost has become likelier than `risk`; None if it never does."""
        for after in range(DAYS // 2):
            if self.chance_of_any(warmest_day, after + 1) > risk:
                return (warmest_day + after) % DAYS
        return None


@lru_cache(maxsize=1024)
def frost(climate: Climate, site: Site, soil: Soil, rules: FrostRules, ground: bool = False) -> Frost:
    """Nightly chance that the screen minimum falls to the frost threshold.

    ground: True takes the ground-frost threshold, at which grass itself may freeze while the screen stays above 0 °C.
    Returns 365 chances, 1 January first.
    Method: normal distribution about the daily curve of mean minima. Fitted on 24 of 48 Bureau of Meteorology stations
    and tried on the other 24, months with at least one frost night recorded (72): mean absolute error 0.7 nights a
    month, always-zero 2.3; it counts 0.4 too few on average, because cold nights reach further below the mean than a normal
    distribution says. Source: our fit to monthly figures of those stations, 2007-2017.
    """
    margins = _margins(climate, site, soil, rules, ground=False)
    if ground:
        # Two counts matched apart may cross by a few hundredths of a night; an air frost is a ground frost too.
        margins = tuple(map(max, margins, _margins(climate, site, soil, rules, ground=True)))
    chance = tuple(_below(margin, 1.0) for margin in margins)
    again = _again_table(rules.night_to_night)
    return Frost(chance, tuple(p * (1 - _again(margin, again)) for p, margin in zip(chance, margins)))


def _margins(climate: Climate, site: Site, soil: Soil, rules: FrostRules, ground: bool) -> Daily:
    """How far the threshold stands above each day's mean minimum, in standard deviations."""
    threshold = (rules.ground_frost_c if ground else rules.air_frost_c) + rules.counting_step_k
    minimum = daily_climate(climate, site, soil).minimum_c
    return tuple(
        (threshold + moved - low) / spread
        for low, spread, moved in zip(minimum, _spread(climate, rules), _shift(climate, soil, rules, ground))
    )


# Margins, in standard deviations, between which the table below is computed, and its step.
TABLE_FROM, TABLE_TO, TABLE_STEP = -6.0, 4.0, 0.1


@lru_cache(maxsize=8)
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
        both = sum(w * _below(margin - correlation * z, scale) for w, z in zip(weights, points))
        table.append(both / sum(weights))
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


@lru_cache(maxsize=128)
def _spread(climate: Climate, rules: FrostRules) -> Daily:
    """Standard deviation of each day's minimum [K]: the published one, else the fitted rule."""
    if climate.minimum_standard_deviation_c is not None:
        return _between_months(climate.minimum_standard_deviation_c)
    yearly_range = max(climate.mean_minimum_c) - min(climate.mean_minimum_c)
    return (rules.spread_base_k + rules.spread_per_range * yearly_range,) * DAYS


@lru_cache(maxsize=256)
def _shift(climate: Climate, soil: Soil, rules: FrostRules, ground: bool) -> Daily:
    """How far each day's threshold is moved so that the open site's months hold their published frost nights [K].

    The published count for the other threshold stands in when this one is missing; 0 where neither is published.
    """
    counts = {False: climate.frost_days, True: climate.cold_days_at_or_below_2c}
    # The Met Office's frost days and the Bureau's differ by one reading step (below, against at or below); not worth a second rule.
    known_ground = ground if counts[ground] is not None else not ground
    if counts[known_ground] is None:
        return (0.0,) * DAYS
    threshold = (rules.ground_frost_c if known_ground else rules.air_frost_c) + rules.counting_step_k
    minimum = daily_climate(climate, Site("open"), soil).minimum_c
    deviation = _spread(climate, rules)
    shifts = [0.0] * 12
    for _ in range(MATCHING_ROUNDS):
        for month, nights in enumerate(counts[known_ground]):
            shifts[month] = _month_shift(month, nights, shifts, minimum, deviation, threshold)
    return _between_months(shifts)


def _month_shift(
    month: int, nights: float, shifts: Sequence[float], minimum: Daily, deviation: Daily, threshold: float
) -> float:
    """The shift [K] at mid-month that gives this month its frost nights, its neighbours' shifts standing still."""
    trial = list(shifts)

    def nights_with(shift: float) -> float:
        trial[month] = shift
        return sum(
            _below(threshold + _shift_on(day, trial) - minimum[day], deviation[day]) for day in month_days(month)
        )

    # A printed 0.0 says fewer than half the last digit, 0.05 nights; a full month cannot be exceeded either.
    if nights < 0.05:
        if nights_with(0.0) <= 0.05:
            return 0.0
        nights = 0.05
    nights = min(nights, MONTH_LENGTHS[month] - 0.05)
    low, high = -LARGEST_SHIFT_K, LARGEST_SHIFT_K
    for _ in range(BISECTIONS):
        middle = (low + high) / 2
        low, high = (middle, high) if nights_with(middle) < nights else (low, middle)
    return (low + high) / 2


def _between_months(monthly: Sequence[float]) -> Daily:
    """Straight lines from mid-month to mid-month, round the year: 365 values."""
    return tuple(_shift_on(day, monthly) for day in range(DAYS))


def _shift_on(day: int, monthly: Sequence[float]) -> float:
    before, share = _KNOTS[day]
    return monthly[before] * (1 - share) + monthly[(before + 1) % 12] * share


def _knot(day: int) -> tuple[int, float]:
    """The month whose middle was last passed, and how far (0 to 1) the day lies towards the next month's middle."""
    before = max((month for month in range(12) if MID_MONTH[month] <= day), default=11)
    start = MID_MONTH[before] - (DAYS if day < MID_MONTH[0] else 0)
    end = MID_MONTH[(before + 1) % 12] + (DAYS if before == 11 and day >= MID_MONTH[0] else 0)
    return before, (day - start) / (end - start)


_KNOTS = tuple(_knot(day) for day in range(DAYS))


def _below(margin_k: float, spread_k: float) -> float:
    """Normal chance of lying below a mark that stands `margin_k` above the mean."""
    return 0.5 * erfc(-margin_k / spread_k / sqrt(2))

