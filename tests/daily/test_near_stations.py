"""The nearest station of a table, by a published distance; and a table more is an entry more."""

from math import pi

import pytest

from generator.book.stations.great_circle import EARTH_RADIUS_KM, great_circle_km
from generator.book.stations.nearest_stations import every_station, nearest_stations, station_tables, stations_of


def degrees(whole: int, minutes: int, seconds: float) -> float:
    return whole + minutes / 60 + seconds / 3600


def test_a_great_circle_against_a_published_distance() -> None:
    """Flinders Peak to Buninyong, 54 972.271 m on the ellipsoid: Intergovernmental Committee on Surveying and Mapping, Geocentric Datum of Australia
    Technical Manual, the worked example of its chapter on distances. On a ball it may be off by half a per cent."""
    found = great_circle_km(-degrees(37, 57, 3.7203), degrees(144, 25, 29.5244), -degrees(37, 39, 10.1561), degrees(143, 55, 35.3839))
    assert found == pytest.approx(54.972271, rel=0.005)


def test_great_circles_that_need_no_formula() -> None:
    assert great_circle_km(0, 0, 0, 90) == pytest.approx(EARTH_RADIUS_KM * pi / 2)
    assert great_circle_km(90, 0, -90, 137) == pytest.approx(EARTH_RADIUS_KM * pi)
    assert great_circle_km(10, 179.5, 10, -179.5) == pytest.approx(great_circle_km(10, -0.5, 10, 0.5))
    assert great_circle_km(-35.3, 149.2, -35.3, 149.2) == 0


def test_the_stations_near_raleigh() -> None:
    near = nearest_stations(35.8923, -78.7819, 120.5)
    assert near[0].station.name.startswith("Raleigh Durham") and near[0].distance_km < 3
    assert near[0].higher_m == pytest.approx(6, abs=1) and [each.distance_km for each in near] == sorted(each.distance_km for each in near)
    # NOAA's 30-year means beside those of the airport's later years in data/places: cooler by half a degree, and no more than 1.5 apart.
    assert near[0].station.mean_maximum_c[6] == pytest.approx(32.5, abs=1.5)


def test_every_row_of_the_table_can_be_true() -> None:
    assert len(every_station()) > 6000
    for each in every_station():
        assert all(low <= high for low, high in zip(each.mean_minimum_c, each.mean_maximum_c, strict=True)), each.id
        assert min(each.rain_mm) >= 0 and -90 <= each.latitude_deg <= 90 and -180 <= each.longitude_deg <= 180


def test_a_table_in_other_units_is_an_entry_more() -> None:
    table = station_tables()[0]
    other = type(table)(**{
        **vars(table), "units": {"maximum": "°F", "minimum": "°F", "rain": "in"}, "country": "NZ", "country_of_region": {},
        "columns": {**table.columns, "maximum": "high {month}", "minimum": "low {month}", "rain": "wet {month}"},
    })
    row = {"station_id": "1", "name": "Hill", "state": "Otago", "lat": "-45.9", "lon": "170.5", "elev_m": "", "flags": ""}
    row |= {f"{name} {month}": value for month in range(1, 13) for name, value in (("high", "68"), ("low", "50"), ("wet", "2"))}
    (station,) = stations_of(other, [row])
    assert station.mean_maximum_c[0] == pytest.approx(20) and station.rain_mm[11] == pytest.approx(50.8)
    assert (station.country, station.elevation_m, station.is_whole) == ("NZ", None, False)
