"""`swardbook place` as someone at a terminal sees it: a record that passes the check, from what is known of a place's weather."""

import shutil
from datetime import date, timedelta
from pathlib import Path

import pytest
from click.testing import CliRunner

from generator.cli import main
from tests.book_folders import WHOLE
from tests.yaml_files import read_yaml

FACTS = ("--country", "GB", "--region", "Cheshire", "--station-name", "Mill: 'North'", "--service", "Met Office", "--address", "none", "--terms", "Open: as the service says")


@pytest.fixture
def book(tmp_path: Path) -> Path:
    shutil.copytree(WHOLE, tmp_path / "book")
    return tmp_path / "book"


def run(book: Path, *words: str):
    return CliRunner().invoke(main, ["place", "--book", str(book), *words])


def made(book: Path, id: str) -> dict:
    """The record, of a book that passes its check."""
    result = CliRunner().invoke(main, ["check", "--book", str(book)])
    assert result.exit_code == 0, result.output
    return read_yaml(book / "data" / "places" / f"{id}.yml")


def days(file: Path, years: range = range(1991, 2003)) -> str:
    """Twelve years: 20 and 5 °C in the north's summer half, 8 and -1 in the other, in °F; a tenth of an inch on each day."""
    lines = ["DATE,TMAX (F),TMIN (F),PRCP (in)"]
    day = date(years[0], 1, 1)
    while day.year in years:
        high, low = (68, 41) if 4 <= day.month <= 9 else (46.4, 30.2 + day.day % 2)
        lines.append(f"{day},{high + day.year % 3},{low},0.1")
        day += timedelta(days=1)
    file.write_text("\n".join(lines), encoding="utf-8")
    return str(file)


def test_a_place_from_its_days(book: Path, tmp_path: Path) -> None:
    result = run(book, "Hill End", "--daily", days(tmp_path / "days.csv"), "--near=53.3,-2.1", *FACTS)
    assert result.exit_code == 0, result.output
    for said in ("column 'TMAX (F)', in °F", "column 'PRCP (in)', in in", "period: 1991-01-01 to 2002-12-31", "12 years", "WMO-No. 1203"):
        assert said in result.output, result.output
    record = made(book, "hill-end")
    normals = record["normals"]
    assert record["name"] == "Hill End" and normals["years_of_each_month"] == [12, 12]
    # 41 °F is 5 °C; a tenth of an inch on 30 days of June is 76.2 mm.
    assert normals["mean_minimum_c"][5] == 5.0 and normals["rain_mm"][5] == 76.2 and normals["frost_days"][0] == 31
    assert len(normals["mean_spread_between_years_c"]) == 12
    source = read_yaml(book / "data" / "sources.yml")[normals["source"]]
    assert source["organisation"] == "Met Office" and source["licence"] == "Open: as the service says"


def test_what_is_missing_is_told_all_at_once_and_nothing_is_written(book: Path, tmp_path: Path) -> None:
    before = (book / "data/sources.yml").read_bytes()
    result = run(book, "hill-end", "--daily", days(tmp_path / "days.csv"), "--near=53.3,-2.1")
    assert result.exit_code == 2 and "also say --country, --region, --station-name, --service, --address, --terms" in " ".join(result.output.split())
    assert not (book / "data/places/hill-end.yml").exists() and (book / "data/sources.yml").read_bytes() == before


def test_a_place_from_twelve_means_says_what_it_takes_from_elsewhere(book: Path) -> None:
    means = "3 3 5 8 11 14 16 16 13 10 6 4"
    result = run(book, "hill-end", "--mean", means, "--years", "1991-2020", "--near=53.3,-2.1", *FACTS)
    assert result.exit_code == 0, result.output
    record = made(book, "hill-end")
    assert record["normals"]["first_year"] == 1991 and len(record["notes"]) == 2 and "km away" in record["notes"][0]
    high, low = record["normals"]["mean_maximum_c"][6], record["normals"]["mean_minimum_c"][6]
    assert (high + low) / 2 == pytest.approx(16, abs=0.051)


def test_a_place_from_a_table_of_many_years(book: Path, tmp_path: Path) -> None:
    """As the Met Office lays out its historic stations: a line under the names holds units, --- stands for nothing, * and # for remarks."""
    lines = ["Hill End", "Location 3300E 3800N, Lat 53.3 Lon -2.1, 60 metres amsl", "   yyyy  mm   tmax    tmin      af    rain     sun",
             "              degC    degC    days      mm   hours"]
    lines += [f"   {year}  {month:>2}   {10 + month / 10 + year % 2:.1f}*    {month / 10:.1f}     ---    60.0    50.1#" for year in range(1991, 2021) for month in range(1, 13)]
    (tmp_path / "hill.txt").write_text("\n".join(lines), encoding="utf-8")
    result = run(book, "hill-end", "--monthly", str(tmp_path / "hill.txt"), "--near=53.3,-2.1", *FACTS)
    assert result.exit_code == 0, result.output
    normals = made(book, "hill-end")["normals"]
    assert (normals["first_year"], normals["last_year"], normals["mean_maximum_c"][0]) == (1991, 2020, 10.6)


def test_a_place_from_the_nearest_station(book: Path) -> None:
    result = run(book, "raleigh-north", "--near", "35.8,-78.6", "--elevation", "90")
    assert result.exit_code == 0, result.output
    assert "8.9 km, 122 m (+32 m), 1981 to 2010" in result.output and "--station USC00317074" in result.output
    record = made(book, "raleigh-north")
    assert record["normals"]["source"] == "noaa-normals-1981-2010" and "9 km away and 32 m above it" in record["notes"][0]
    other = run(book, "raleigh-north", "--near", "35.8,-78.6", "--station", "USC00317074", "--replace")
    assert other.exit_code == 0 and made(book, "raleigh-north")["normals"]["station"] == "Raleigh 4 Sw"


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ((), "name the place"), (("hill-end",), "say what is known"), (("hill-end", "--near", "95,3"), "95, 3 is no place on earth"),
        (("hill-end", "--near", "north"), "'north' is not a latitude and a longitude"), (("flatfield", "--near", "35,-78"), "there is a place 'flatfield' already"),
        (("hill-end", "--mean", "1 2 3", "--years", "1991-2020", "--near", "53,-2", *FACTS), "3 figures where a year has 12 months"),
        (("!!!", "--near", "35,-78"), "makes no name of a file"), (("hill-end", "--near", "35.8,-78.6", "--station", "USC0031707"), "did you mean 'USC0031707"),
    ],
)
def test_what_cannot_be_made_is_told(words: tuple[str, ...], said: str, book: Path) -> None:
    result = run(book, *words)
    assert result.exit_code == 2 and said in " ".join(result.output.split()), result.output
    assert not (book / "data/places/hill-end.yml").exists()


def test_what_can_be_read_is_listed(book: Path) -> None:
    result = run(book, "--list")
    assert result.exit_code == 0
    for body in ("NOAA", "Bureau of Meteorology", "Met Office", "Environment and Climate Change Canada", "Deutscher Wetterdienst", "us-1981-2010"):
        assert body in result.output
    near = run(book, "--list", "--near", "35.8,-78.6")
    assert near.exit_code == 0 and near.output.startswith(" 1  USC00317079")
