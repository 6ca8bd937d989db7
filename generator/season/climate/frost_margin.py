"""How far the frost threshold stands above a night's mean minimum, so that months have the frost nights they are known to have."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import erfc, fsum, sqrt

from generator.season.calendar_days import DAYS, MONTH_LENGTHS, MONTH_STARTS, month_days
from generator.season.climate.climate import OPEN, Climate, Daily, Soil, daily_climate

MID_MONTH = tuple(start + length / 2 - 0.5 for start, length in zip(MONTH_STARTS, MONTH_LENGTHS))
# Rounds of matching the published frost nights: each month is solved in turn while its neighbours stand still, and
# neighbours meet only at the ends of the month, so the error shrinks about fivefold a round.
MATCHING_ROUNDS = 8
LARGEST_SHIFT_K = 6.0
# A shift that moves less than this is found: the nights of a month then change by less than a thousandth.
SETTLED_K = 1e-4
# The months with the coldest nights, whose daily swing says how much of a night's cold is its own.
COLD_MONTHS = 6
# No whole record at hand ties one night to the next more closely (Brussels, 0.74), so no place is taken to (our limit).
CLOSEST_TIE = 0.75


@dataclass(frozen=True)
class FrostRules:
    """Numbers of the frost model; values and sources in data/season-groups.yml.

    air_frost_c, ground_frost_c: screen minima that count as air frost and as ground frost [°C].
    spread_base_k, spread_per_range: standard deviation of the daily minimum = base + slope x yearly range of mean minima [K].
    night_to_night: correlation of one night's departure from the mean minimum with the next night's, 0 to 1, where mean minima swing as far
        through the year as temperature does through a day of the cold half-year; see `night_to_night`.
    year_to_year_k: standard deviation of a whole season's departure from the mean minimum, from year to year [K].
    counting_step_k: half the last digit of a read minimum; "at or below 0.0" catches minima up to 0.05 [K].
    """

    air_frost_c: float
    ground_frost_c: float
    spread_base_k: float
    spread_per_range: float
    night_to_night: float
    counting_step_k: float
    year_to_year_k: float


@lru_cache(maxsize=128)
def minimum_spread(climate: Climate, rules: FrostRules) -> Daily:
    """Standard deviation of each day's minimum [K], 365 days from 1 January: the published one, else the fitted rule.

    Source: the place's own record, or our fit to monthly figures of 24 Bureau of Meteorology stations, 2007-2017.
    """
    if climate.minimum_standard_deviation_c is not None:
        return between_months(climate.minimum_standard_deviation_c)
    yearly_range = max(climate.mean_minimum_c) - min(climate.mean_minimum_c)
    return (rules.spread_base_k + rules.spread_per_range * yearly_range,) * DAYS


@lru_cache(maxsize=128)
def night_to_night(climate: Climate, rules: FrostRules) -> float:
    """Correlation of one night's departure from the mean minimum with the next night's, 0 to `CLOSEST_TIE`.

    A night is cold with the air that lies over the place, which stays for days, or because it is itself clear and still, which the next need
    not be. How far mean minima swing through the year [K] stands for the one, how far temperature swings through a day of the six coldest
    months [K] for the other: tie / (1 - tie) = rules tie / (1 - rules tie) x yearly swing / daily swing.
    Source: our fit to daily minima of 16 stations of the Bureau of Meteorology that know frost, 2007-2017; the form is ours. On 16 others it is
    off by 0.02 (root mean square), where the mean of those fitted is by 0.05; at Seattle, New York, Brussels, Tunis and in Nebraska by 0.05,
    most at New York, where it is 0.09 too high. A place whose own days were measured has its own figure.
    """
    if climate.night_to_night is not None:
        return min(CLOSEST_TIE, climate.night_to_night)
    yearly = max(climate.mean_minimum_c) - min(climate.mean_minimum_c)
    coldest = sorted(zip(climate.mean_minimum_c, climate.mean_maximum_c))[:COLD_MONTHS]
    of_the_air = rules.night_to_night * yearly
    of_the_night = (1 - rules.night_to_night) * fsum(high - low for low, high in coldest) / COLD_MONTHS
    return min(CLOSEST_TIE, of_the_air / (of_the_air + of_the_night)) if of_the_air > 0 else 0.0


@lru_cache(maxsize=256)
def threshold_shift(climate: Climate, soil: Soil, rules: FrostRules, ground: bool) -> Daily:
    """How far each day's threshold is moved so that the open site's months hold their published frost nights [K].

    Returns 365 days from 1 January. The published count for the other threshold stands in when this one is missing; 0 where
    neither is published. Source: the place's own record; that a month's misfit is a matter of threshold is our choice.
    """
    counts = {False: climate.frost_days, True: climate.cold_days_at_or_below_2c}
    # The Met Office's frost days and the Bureau's differ by one reading step (below, against at or below); not worth a second rule.
    known_ground = ground if counts[ground] is not None else not ground
    counted = counts[known_ground]
    if counted is None:
        return (0.0,) * DAYS
    threshold = (rules.ground_frost_c if known_ground else rules.air_frost_c) + rules.counting_step_k
    minimum = daily_climate(climate, OPEN, soil).minimum_c
    deviation = minimum_spread(climate, rules)
    shifts = [0.0] * 12
    for _ in range(MATCHING_ROUNDS):
        before = tuple(shifts)
        for month, nights in enumerate(counted):
            shifts[month] = _month_shift(month, nights, shifts, minimum, deviation, threshold)
        if max(abs(now - then) for now, then in zip(shifts, before)) < SETTLED_K:
            break
    return between_months(shifts)


def _month_shift(
    month: int, nights: float, shifts: Sequence[float], minimum: Daily, deviation: Daily, threshold: float
) -> float:
    """The shift [K] at mid-month that gives this month its frost nights, its neighbours' shifts standing still."""
    alone = [float(other == month) for other in range(12)]
    neighbours = [0.0 if other == month else shift for other, shift in enumerate(shifts)]
    # Each night's margin without this month's shift [K], how much of that shift it takes, and its spread [K].
    nightly = [(threshold + _shift_on(day, neighbours) - minimum[day], _shift_on(day, alone), deviation[day]) for day in month_days(month)]

    def nights_with(shift: float) -> float:
        return fsum(below(margin + shift * taken, spread) for margin, taken, spread in nightly)

    # A printed 0.0 says fewer than half the last digit, 0.05 nights; a full month cannot be exceeded either.
    if nights < 0.05:
        if nights_with(0.0) <= 0.05:
            return 0.0
        nights = 0.05
    nights = min(nights, MONTH_LENGTHS[month] - 0.05)
    low, high = -LARGEST_SHIFT_K, LARGEST_SHIFT_K
    while high - low > SETTLED_K:
        middle = (low + high) / 2
        low, high = (middle, high) if nights_with(middle) < nights else (low, middle)
    return (low + high) / 2


def between_months(monthly: Sequence[float]) -> Daily:
    """Straight lines from mid-month to mid-month, round the year: 365 values, in any unit."""
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


def below(margin_k: float, spread_k: float) -> float:
    """Chance, 0 to 1, of lying below a mark that stands `margin_k` [K] above the mean, `spread_k` being the standard deviation [K].

    Source: the normal distribution.
    """
    return 0.5 * erfc(-margin_k / spread_k / sqrt(2))
