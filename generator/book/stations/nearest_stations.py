"""The nearest stations of the national tables that come with the book."""

import csv
import gzip
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from heapq import nsmallest
from pathlib import Path
from typing import Any

import yaml

from generator.book.daily.daily_units import to_engine
from generator.book.stations.great_circle import great_circle_km

FOLDER = Path(__file__).parent
TABLES = FOLDER / "station_tables.yml"


@dataclass(frozen=True)
class StationTable:
    """One national table; `station_tables.yml` says what each key means."""

    id: str
    file: str
    first_year: int
    last_year: int
    country: str
    country_of_region: Mapping[str, str]
    columns: Mapping[str, str]
    units: Mapping[str, str]
    temperature_step_c: float
    flags: Mapping[str, str]
    whole_flags: tuple[str, ...]
    source: Mapping[str, Any]


@dataclass(frozen=True)
class Station:
    """A station with its normals: 12 figures a series, January first [°C, mm]. flags: what its table says of it, in words."""

    table: StationTable
    id: str
    name: str
    region: str
    country: str
    latitude_deg: float
    longitude_deg: float
    elevation_m: float | None
    flags: tuple[str, ...]
    is_whole: bool
    mean_maximum_c: tuple[float, ...]
    mean_minimum_c: tuple[float, ...]
    rain_mm: tuple[float, ...]


@dataclass(frozen=True)
class NearStation:
    """A station, how far off it is [km], and how much higher it lies [m]; None where either height is not known."""

    station: Station
    distance_km: float
    higher_m: float | None


def nearest_stations(latitude_deg: float, longitude_deg: float, elevation_m: float | None = None, most: int = 6) -> list[NearStation]:
    """The nearest stations of all tables, nearest first. Great-circle distances; see `great_circle_km`."""
    def off(station: Station) -> float:
        return great_circle_km(latitude_deg, longitude_deg, station.latitude_deg, station.longitude_deg)

    return [
        NearStation(each, off(each), None if elevation_m is None or each.elevation_m is None else each.elevation_m - elevation_m)
        for each in nsmallest(most, every_station(), key=off)
    ]


@cache
def station_tables() -> tuple[StationTable, ...]:
    raw = yaml.safe_load(TABLES.read_text(encoding="utf-8"))
    return tuple(StationTable(id=id, **entry) for id, entry in raw.items())


@cache
def every_station() -> tuple[Station, ...]:
    return tuple(station for table in station_tables() for station in stations_of(table, _rows(FOLDER / table.file)))


def _rows(file: Path) -> Iterator[dict[str, str]]:
    raw = file.read_bytes()
    text = (gzip.decompress(raw) if file.suffix == ".gz" else raw).decode("utf-8")
    yield from csv.DictReader(text.splitlines())


def stations_of(table: StationTable, rows: Iterable[Mapping[str, str]]) -> Iterator[Station]:
    """The stations of a table's rows. Raises KeyError or ValueError for a row that is not as its entry says."""
    at = table.columns
    convert = {name: to_engine(table.units[name]) for name in ("maximum", "minimum", "rain")}
    named = {name: [at[name].format(month=month) for month in range(1, 13)] for name in convert}
    for row in rows:
        twelve = {name: tuple(convert[name](float(row[column])) for column in named[name]) for name in convert}
        region, letters, height = row[at["region"]], row.get(at.get("flags", ""), ""), row[at["elevation"]]
        yield Station(
            table=table, id=row[at["id"]], name=row[at["name"]], region=region, country=table.country_of_region.get(region, table.country),
            latitude_deg=float(row[at["latitude"]]), longitude_deg=float(row[at["longitude"]]), elevation_m=float(height) if height else None,
            flags=tuple(table.flags.get(letter, letter) for letter in letters), is_whole=bool(letters) and set(letters) <= set(table.whole_flags),
            mean_maximum_c=twelve["maximum"], mean_minimum_c=twelve["minimum"], rain_mm=twelve["rain"],
        )
