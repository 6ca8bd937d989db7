"""Growing degree days: warmth counted up, day by day."""

from itertools import accumulate

from generator.season.calendar_days import DAYS
from generator.season.climate.climate import Daily


def growing_degree_days(maximum_c: float, minimum_c: float, base_c: float) -> float:
    """Degree days of one day [°C day]: the mean of maximum and minimum above the base, and never less than 0.

    maximum_c, minimum_c: of the day [°C]. base_c: temperature below which nothing is counted [°C].
    Source: Purdue University Turf Science, Use growing degree days to better time your applications: 74 and 52 °F over
    a base of 50 °F give 13 °F days; 58 and 40 °F give none.
    """
    return max(0.0, (maximum_c + minimum_c) / 2 - base_c)


def degree_days_since(maximum_c: Daily, minimum_c: Daily, base_c: float, first_day: int) -> Daily:
    """Degree days counted up from a day on, to the end of each of 365 days [°C day]; the day before it holds the year's total.

    maximum_c, minimum_c: 365 daily values [°C], 1 January first. first_day: day number at which the count begins.
    Sums of `growing_degree_days` over the curves of the normals. Limit: a smooth year has no warm spells, so near the
    base it counts less than real years do.
    """
    order = [(first_day + ahead) % DAYS for ahead in range(DAYS)]
    sums = accumulate(growing_degree_days(maximum_c[day], minimum_c[day], base_c) for day in order)
    counted = dict(zip(order, sums))
    return tuple(counted[day] for day in range(DAYS))
