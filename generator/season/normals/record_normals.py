"""The normals of a place from the days of a weather station."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from math import fsum, sqrt

from generator.book.daily.daily_record import DailyRecord
from generator.season.calendar_days import MONTH_LENGTHS, MONTHS
from generator.season.climate.daily_curve import daily_curve
from generator.season.normals.completeness import Month, MonthLeftOut, left_out, whole_months

Twelve = tuple[float, ...]
# A night at or below these counts [°C].
FROST_C, COLD_C = 0.0, 2.0
# Fewer years say nothing of how years differ (our limit); fewer than ten are no provisional normal by WMO-No. 1203.
LEAST_YEARS_TO_DIFFER, PROVISIONAL_YEARS, STANDARD_YEARS = 5, 10, 30
LEAST_NIGHTS_TIED = 300
DAY = timedelta(days=1)


@dataclass(frozen=True)
class RecordNormals:
    """Twelve figures a series, January first, as a place's record has them; the years behind them, and what was left out.

    years: how many years the minimum of each month is the mean of. night_to_night: correlation of one night's departure from the mean minimum
    with the next night's, 0 to 1. mean_spread_c: standard deviation, from year to year, of the month's mean temperature [°C].
    """

    first_year: int
    last_year: int
    years: tuple[int, ...]
    rain_years: tuple[int, ...]
    mean_maximum_c: Twelve
    mean_minimum_c: Twelve
    rain_mm: Twelve
    frost_days: Twelve
    cold_days: Twelve
    minimum_spread_c: Twelve
    lowest_minimum_c: Twelve
    mean_spread_c: Twelve | None
    night_to_night: float | None
    left_out: Mapping[str, tuple[MonthLeftOut, ...]]


class NoNormals(Exception):
    """Why a record gives no normals, a sentence to a reason."""

    def __init__(self, reasons: Sequence[str]) -> None:
        super().__init__("; ".join(reasons))
        self.reasons = tuple(reasons)


def normals_of(record: DailyRecord) -> RecordNormals:
    """The normals of a record. Raises NoNormals where a month of the year has no whole one in any year.

    A figure of a month is the mean over its years, each year's being the mean, total or count of its days; counts are of the days that were read,
    in proportion to the length of the month. Source: as `left_out` for which months count.
    """
    of = {"maximum": (record.maximum_c, False), "minimum": (record.minimum_c, False), "rain": (record.rain_mm, True)}
    whole = {name: whole_months(readings, is_sum) for name, (readings, is_sum) in of.items()}
    missing = [
        f"no {MONTHS[number]} of any year is whole enough for its {name}"
        for name, months in whole.items() for number in range(12) if not any(month == number + 1 for _, month in months)
    ]
    if missing:
        raise NoNormals(missing)
    lows = whole["minimum"]
    counted = sorted({year for months in (whole["maximum"], lows) for year, _ in months})
    return RecordNormals(
        first_year=counted[0], last_year=counted[-1], years=_years(lows), rain_years=_years(whole["rain"]),
        mean_maximum_c=_means(whole["maximum"], _mean), mean_minimum_c=_means(lows, _mean), rain_mm=_means(whole["rain"], _total),
        frost_days=_nights(lows, FROST_C), cold_days=_nights(lows, COLD_C),
        minimum_spread_c=tuple(_deviation(_pooled(lows, number)) for number in range(12)),
        lowest_minimum_c=tuple(min(_pooled(lows, number)) for number in range(12)),
        mean_spread_c=mean_spread(record), night_to_night=night_tie(record),
        left_out={name: tuple(left_out(readings, is_sum)) for name, (readings, is_sum) in of.items()},
    )


Months = Mapping[Month, Mapping[int, float]]


def _of_month(months: Months, number: int) -> list[Mapping[int, float]]:
    return [days for (_, month), days in months.items() if month == number + 1]


def _pooled(months: Months, number: int) -> list[float]:
    return [value for days in _of_month(months, number) for value in days.values()]


def _mean(days: Mapping[int, float]) -> float:
    return fsum(days.values()) / len(days)


def _total(days: Mapping[int, float]) -> float:
    return fsum(days.values())


def _means(months: Months, of_month: Callable[[Mapping[int, float]], float]) -> Twelve:
    return tuple(fsum(map(of_month, years)) / len(years) for years in (_of_month(months, number) for number in range(12)))


def _years(months: Months) -> tuple[int, ...]:
    return tuple(len(_of_month(months, number)) for number in range(12))


def _nights(months: Months, at_most_c: float) -> Twelve:
    """Nights of each month at or below a temperature: the mean of each year's share, for the month's length."""
    def share(days: Mapping[int, float]) -> float:
        return len([value for value in days.values() if value <= at_most_c]) / len(days)

    return tuple(part * length for part, length in zip(_means(months, share), MONTH_LENGTHS))


def _deviation(values: Sequence[float]) -> float:
    """Standard deviation of a sample; a tenth where all are alike, which no month of a place is."""
    if len(values) < 2:
        return 0.1
    mean = fsum(values) / len(values)
    return max(0.1, sqrt(fsum((value - mean) ** 2 for value in values) / (len(values) - 1)))


def mean_spread(record: DailyRecord) -> Twelve | None:
    """Standard deviation, from year to year, of each month's mean temperature [°C]; None with fewer than five years of any month."""
    months = whole_months(record.mean_c, is_sum=False)
    by_year = [[_mean(days) for days in _of_month(months, number)] for number in range(12)]
    return None if min(map(len, by_year)) < LEAST_YEARS_TO_DIFFER else tuple(map(_deviation, by_year))


def night_tie(record: DailyRecord) -> float | None:
    """Correlation of a night's departure from the smooth curve of mean minima with the next night's [1], 0 to 1; None for a short record."""
    months = whole_months(record.minimum_c, is_sum=False)
    if any(not _of_month(months, number) for number in range(12)):
        return None
    usual = daily_curve(_means(months, _mean))
    off = {day: low - usual[day_number(day)] for day, low in record.minimum_c.items()}
    pairs = [(value, off[day + DAY]) for day, value in off.items() if day + DAY in off]
    if len(pairs) < LEAST_NIGHTS_TIED:
        return None
    first, second = (fsum(pair[side] for pair in pairs) / len(pairs) for side in (0, 1))
    both = fsum((a - first) * (b - second) for a, b in pairs)
    spread = sqrt(fsum((a - first) ** 2 for a, _ in pairs) * fsum((b - second) ** 2 for _, b in pairs))
    return max(0.0, both / spread) if spread else None


def day_number(day: date) -> int:
    """Its number in the engine's year, from 0; 29 February is the 28th."""
    return day.replace(year=2001, day=min(day.day, 28) if day.month == 2 else day.day).timetuple().tm_yday - 1
