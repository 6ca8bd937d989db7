"""How well the opening of a season is told when part of its year is measured, against the usual year alone.

`python -m tests.season.held_years` prints the tables. A year is held back, the record is cut at each first of a month, and the opening that is then
told is compared with the day on which the rule is met in the full record. Seattle's years are real; the others are made up, and say so.
"""

from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import cache
from math import sqrt
from random import Random
from statistics import fmean

from generator.book.daily.daily_record import DailyRecord
from generator.season.calendar_days import DAYS, MONTHS
from generator.season.climate.climate import Climate, daily_climate
from generator.season.inputs import climate_of, grass_season_of
from generator.season.normals.record_normals import day_number, normals_of
from generator.season.observed.this_year import move, this_year
from tests.our_book import book, seasons
from tests.season.seattle import SEATTLE_LATITUDE, seattle_days

A_DAY = timedelta(days=1)
# Of the made-up years: how alike one day's departure is to the next day's, and how far days lie from the usual [K]. Seattle's own are 0.72 and 2.9.
TIE, SPREAD_K, HALF_RANGE_SPREAD_K = 0.7, 3.0, 1.5


@dataclass(frozen=True)
class HeldYear:
    """One year that is held back: what is usual without it, its days, and the grass whose main window opens in it."""

    name: str
    climate: Climate
    record: DailyRecord
    grass: str
    year: int


def told(held: HeldYear, until: date) -> tuple[int, int] | None:
    """The opening told with the record up to a day, and that of the usual year, day numbers; None where there is none."""
    rules, record = seasons().rules, book().grasses[held.grass]
    grass = grass_season_of(held.grass, record, book().season_groups)
    this = this_year(held.climate, grass, rules.sites["open"], rules, held.record.until(until))
    found, usual = ([window for window in each.windows["renovation"].windows if window.is_main] for each in (this.season, this.usual))
    return (found[0].first, usual[0].first) if found and usual else None


def turns(held: HeldYear) -> tuple[date, date]:
    """The first and last day of the half-year in which the main window opens: from the coldest day for warm-season grass, from the hottest for cool."""
    days = daily_climate(held.climate, seasons().rules.sites["open"], seasons().rules.soil)
    warm = book().grasses[held.grass].season_group == "warm"
    first, last = (days.coldest_day, days.hottest_day) if warm else (days.hottest_day, days.coldest_day)
    start = date(held.year - (first > last and held.climate.latitude_deg > 0 and warm), 1, 1) + first * A_DAY
    return start, start + ((last - first) % DAYS - 1) * A_DAY


def errors(held: HeldYear) -> dict[date, tuple[int, int]]:
    """By each first of a month, how many days the opening told lay from the true one, and how many the usual one did; empty for a year without."""
    start, end = turns(held)
    truth = told(held, end)
    if truth is None:
        return {}
    found = {}
    for day in firsts(start, end):
        if (said := told(held, day)) is not None:
            off = move(said[0], (truth[0],)), move(said[1], (truth[0],))
            if off[0] is not None and off[1] is not None:
                found[day] = abs(off[0]), abs(off[1])
    return found


def firsts(start: date, end: date) -> list[date]:
    days = [date(year, month, 1) for year in range(start.year, end.year + 1) for month in range(1, 13)]
    return [day for day in days if start <= day <= end]


@cache
def seattle_years(grass: str) -> tuple[HeldYear, ...]:
    """Seattle, 2012 to 2015, each year against the normals of the other three. Its file here holds no rain, which no opening of these needs."""
    days = seattle_days()
    whole = DailyRecord({day: high for day, _, high in days}, {day: low for day, low, _ in days}, {day: 3.0 for day, *_ in days})
    held = []
    for year in range(2012, 2016):
        others = DailyRecord(*({day: value for day, value in each.items() if day.year != year} for each in whole.each()))
        n = normals_of(others)
        climate = Climate(
            SEATTLE_LATITUDE, n.mean_maximum_c, n.mean_minimum_c, (30.0,) * 12, frost_days=n.frost_days, cold_days_at_or_below_2c=n.cold_days,
            minimum_standard_deviation_c=n.minimum_spread_c, night_to_night=n.night_to_night,
        )
        held.append(HeldYear(f"Seattle {year}", climate, whole, grass, year))
    return tuple(held)


def invented_year(place: str, grass: str, year: int, seed: int) -> HeldYear:
    """A made-up year at a place of the book: its usual days, and departures of which each is TIE of the one before it and chance for the rest."""
    lot, climate = Random(seed), climate_of(book().places[place])
    usual = daily_climate(climate, seasons().rules.sites["open"], seasons().rules.soil)
    off, highs, lows = lot.gauss(0, SPREAD_K), {}, {}
    day = date(year - 1, 1, 1)
    while day.year < year + 2:
        off = TIE * off + sqrt(1 - TIE * TIE) * lot.gauss(0, SPREAD_K)
        wider = abs(lot.gauss(0, HALF_RANGE_SPREAD_K)) - HALF_RANGE_SPREAD_K * sqrt(2 / 3.14159265)
        at = day_number(day)
        mean, half = usual.mean_c[at] + off, max(0.5, (usual.maximum_c[at] - usual.minimum_c[at]) / 2 + wider)
        highs[day], lows[day] = mean + half, mean - half
        day += A_DAY
    # Frost counts of the place are of its own nights; these nights are chance about the mean, so the rule for places without counts stands in.
    plain = replace(climate, frost_days=None, cold_days_at_or_below_2c=None, minimum_standard_deviation_c=None)
    return HeldYear(f"{place}, made up ({seed})", plain, DailyRecord(highs, lows, {}), grass, year)


def table(years: tuple[HeldYear, ...]) -> list[tuple[str, int, float, float]]:
    """By first of a month: its name, how many years, and the mean error of the opening told and of the usual one [days]."""
    every: dict[int, list[tuple[int, int]]] = {}
    first = turns(years[0])[0].month
    for held in years:
        for day, off in errors(held).items():
            every.setdefault((day.month - first) % 12, []).append(off)
    return [
        (f"1 {MONTHS[(first + ahead - 1) % 12]}", len(offs), fmean(a for a, _ in offs), fmean(b for _, b in offs)) for ahead, offs in sorted(every.items())
    ]


def main() -> None:
    """Print the tables."""
    groups = {
        "Seattle, 2012 to 2015, couch (real)": seattle_years("couch"),
        "Seattle, 2012 to 2015, tall fescue (real)": seattle_years("tall-fescue"),
        "Canberra, couch (made up)": tuple(invented_year("canberra", "couch", 2001, seed) for seed in range(12)),
        "Raleigh, couch (made up)": tuple(invented_year("raleigh", "couch", 2001, seed) for seed in range(12)),
    }
    for name, years in groups.items():
        print(f"\n{name}\n  record up to    years  error told  error of the usual year [days]")
        for day, count, told_off, usual_off in table(years):
            print(f"  {day:<15} {count:>5}  {told_off:>10.1f}  {usual_off:>10.1f}")


if __name__ == "__main__":
    main()
