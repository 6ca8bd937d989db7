"""Where a place's figures come from: the days of a station, twelve months, or the nearest station of a table."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from typing import Any

from generator.book.daily.daily_record import DailyRecord
from generator.book.stations.nearest_stations import NearStation
from generator.files.place_record import PlaceWritten
from generator.season.normals.borrowed_normals import WholeMonths
from generator.season.normals.completeness import MonthLeftOut
from generator.season.normals.record_normals import PROVISIONAL_YEARS, STANDARD_YEARS, RecordNormals

# 80 % of thirty years, as WMO-No. 1203 asks of a standard normal.
WHOLE_YEARS = 24
RULES = {
    "days": "11 days or more without a reading", "gap": "5 days or more without a reading one after another",
    "sum": "a day or more without a reading, and a total needs them all",
}
NAMES = {"maximum": "maxima", "minimum": "minima", "rain": "rain"}
MOST_TOLD = 6


@dataclass(frozen=True)
class Whereabouts:
    """What somebody says of a place, and no record tells."""

    name: str
    region: str
    country: str
    latitude_deg: float
    longitude_deg: float
    elevation_m: float | None
    station: str
    station_id: str | None
    source: str


def from_days(at: Whereabouts, normals: RecordNormals, record: DailyRecord, made_of: str) -> PlaceWritten:
    """The place of a daily record."""
    years, rain = (min(normals.years), max(normals.years)), (min(normals.rain_years), max(normals.rain_years))
    notes = [
        f"Worked out from the days of {record.first.year} to {record.last.year}. Months with too many missing days are left out, by the rules of the World "
        "Meteorological Organization.",
    ]
    if rain != years and rain[0] < WHOLE_YEARS:
        notes.append(f"Rain is the mean of {_years(rain)}.")
    return PlaceWritten(
        **_said(at), first_year=normals.first_year, last_year=normals.last_year, years=years if years[0] < WHOLE_YEARS else None,
        mean_maximum_c=normals.mean_maximum_c, mean_minimum_c=normals.mean_minimum_c, rain_mm=normals.rain_mm, frost_days=normals.frost_days,
        cold_days=normals.cold_days, minimum_spread_c=normals.minimum_spread_c, lowest_minimum_c=normals.lowest_minimum_c,
        mean_spread_c=normals.mean_spread_c, night_to_night=normals.night_to_night, notes=tuple(notes), made_of=(made_of,),
    )


def from_months(at: Whereabouts, months: WholeMonths, years: tuple[int, int], made_of: str) -> PlaceWritten:
    """The place of twelve months, typed or from a table."""
    return PlaceWritten(
        **_said(at), first_year=years[0], last_year=years[1], mean_maximum_c=months.maximum_c, mean_minimum_c=months.minimum_c, rain_mm=months.rain_mm,
        notes=months.assumed, made_of=(made_of,),
    )


def from_station(at: Whereabouts, near: NearStation, made_of: str) -> PlaceWritten:
    """The place of a station of a national table."""
    station, table = near.station, near.station.table
    higher = "" if near.higher_m is None or abs(near.higher_m) < 1 else f" and {abs(near.higher_m):.0f} m {'above' if near.higher_m > 0 else 'below'} it"
    notes = [f"The figures are those of {station.name}, {near.distance_km:.0f} km away{higher}."]
    if station.flags:
        notes.append(f"Its own table says of this record: {', '.join(station.flags)}.")
    return PlaceWritten(
        **_said(at), first_year=table.first_year, last_year=table.last_year, mean_maximum_c=station.mean_maximum_c,
        mean_minimum_c=station.mean_minimum_c, rain_mm=station.rain_mm, temperature_step_c=table.temperature_step_c, notes=tuple(notes), made_of=(made_of,),
    )


def _said(at: Whereabouts) -> dict[str, Any]:
    return dict(vars(at))


def near_line(number: int, near: NearStation) -> str:
    """A near station in a line of a list."""
    station, table = near.station, near.station.table
    height = "height not known" if station.elevation_m is None else f"{station.elevation_m:.0f} m"
    if near.higher_m is not None:
        height += f" ({near.higher_m:+.0f} m)"
    return (
        f"{number:>2}  {station.id:<12} {station.name}, {station.region}: {near.distance_km:.1f} km, {height}, {table.first_year} to {table.last_year}"
        f"{', ' if station.flags else ''}{', '.join(station.flags)}"
    )


def told_normals(normals: RecordNormals, record: DailyRecord) -> Iterator[str]:
    """The period, the years behind each month, and what was left out, a line each."""
    yield f"period: {_day(record.first)} to {_day(record.last)}; normals of {normals.first_year} to {normals.last_year}"
    years = min(normals.years), max(normals.years)
    yield f"years of each month: temperature {_years(years)}, rain {_years((min(normals.rain_years), max(normals.rain_years)))}"
    if years[0] < PROVISIONAL_YEARS:
        yield f"  fewer than {PROVISIONAL_YEARS} years are no climate yet, by WMO-No. 1203: one warm or cold year makes a difference"
    elif years[0] < STANDARD_YEARS:
        yield f"  a standard normal has {STANDARD_YEARS} years; with {PROVISIONAL_YEARS} or more this is a provisional one, by WMO-No. 1203"
    for name, out in normals.left_out.items():
        if out:
            yield f"left out of the {NAMES[name]}: {len(out)} {'month' if len(out) == 1 else 'months'}"
            yield from (f"  {_out(each)}" for each in out[:MOST_TOLD])
            if len(out) > MOST_TOLD:
                yield f"  and {len(out) - MOST_TOLD} more"
    tie = "too few days to tell" if normals.night_to_night is None else f"{normals.night_to_night:.2f}"
    yield f"correlation of one night with the next: {tie}"
    spread = normals.mean_spread_c
    yield "spread between years: too few years to tell" if spread is None else f"spread between years: {min(spread):.1f} to {max(spread):.1f} °C by the month"


def _out(each: MonthLeftOut) -> str:
    year, month = each.month
    return f"{year}-{month:02d}: {each.missing} missing, {each.gap} of them together ({RULES[each.why]})"


def _years(years: tuple[int, int]) -> str:
    return f"{years[0]} to {years[1]} years" if years[0] != years[1] else f"{years[0]} {'year' if years[0] == 1 else 'years'}"


def _day(day: date) -> str:
    return day.isoformat()
