"""Days of weather services, read as the services describe their own files."""

from datetime import date
from pathlib import Path

import pytest

from generator.book.daily.daily_reading import AskedOfDays, FileRead, read_days
from generator.book.daily.daily_record import DailyRecord
from generator.book.daily.layout_table import layout_table

# The third day of each file has no maximum, and the fourth failed a check of the service where it marks that.
FIRST = date(2001, 1, 1)
NOTHING_SAID = AskedOfDays()


def read(folder: Path, text: str, name: str = "days.csv", asked: AskedOfDays = NOTHING_SAID) -> tuple[DailyRecord, FileRead]:
    file = folder / name
    file.write_text(text, encoding="utf-8")
    record, reads, findings = read_days([file], asked)
    assert findings == []
    return record, reads[0]


def fixed(month: str, element: str, values: list[str]) -> str:
    """A line of GHCN-Daily by the columns of its readme (https://www.ncei.noaa.gov/pub/data/ghcn/daily/readme.txt, III): ID 1-11, YEAR 12-15, MONTH 16-17,
    ELEMENT 18-21, then VALUE 22-26, MFLAG 27, QFLAG 28, SFLAG 29, and the same eight columns for each further day."""
    line = f"ASN00066062{month}{element}" + "".join(values)
    return line + "-9999   " * ((269 - len(line)) // 8)


def test_ghcn_daily_in_fixed_columns(tmp_path: Path) -> None:
    text = "\n".join([
        fixed("200101", "TMAX", ["  271  a", "  305  a", "-9999   ", "  999 Xa"]), fixed("200101", "TMIN", ["  203  a", "  -12  a", "  198  a", "  201  a"]),
        fixed("200101", "PRCP", ["    0  a", "   54  a", "    0  a", "    0  a"]), fixed("200101", "SNWD", ["   10  a"]),
    ])
    assert all(len(line) == 269 for line in text.splitlines())
    record, _ = read(tmp_path, text, "ASN00066062.dly")
    assert record.maximum_c == {date(2001, 1, 1): 27.1, date(2001, 1, 2): 30.5}
    assert record.minimum_c[date(2001, 1, 2)] == -1.2 and record.rain_mm[date(2001, 1, 2)] == 5.4 and len(record.rain_mm) == 4


def test_ghcn_daily_by_station(tmp_path: Path) -> None:
    """ID, date, element, value, M-flag, Q-flag, S-flag, time: https://www.ncei.noaa.gov/pub/data/ghcn/daily/readme-by_station.txt"""
    record, _ = read(tmp_path, "USW00013722,20010101,TMAX,106,,,W,\nUSW00013722,20010101,TMIN,-28,,,W,2400\nUSW00013722,20010101,PRCP,13,,,W,\n"
                               "USW00013722,20010102,TMAX,990,,X,W,\nUSW00013722,20010101,AWND,31,,,W,\n")
    assert (record.maximum_c, record.minimum_c, record.rain_mm) == ({FIRST: 10.6}, {FIRST: -2.8}, {FIRST: 1.3})


COLUMNS = {
    "ncei-daily-summaries": '"STATION","NAME","DATE","PRCP","TMAX","TMIN"\n"USW00013722","RALEIGH, NC US","2001-01-01","0.05","51","27"\n"USW00013722","RALEIGH, NC US","2001-07-01","0.50","95","70"\n',
    "bom-maximum": "Product code,Bureau of Meteorology station number,Year,Month,Day,Maximum temperature (Degree C),Days of accumulation of maximum temperature,Quality\n"
                   "IDCJAC0010,066062,2001,01,01,10.6,1,Y\nIDCJAC0010,066062,2001,01,02,,,\nIDCJAC0010,066062,2001,01,04,31.0,2,N\n",
    "environment-canada": '"Longitude (x)","Station Name","Date/Time","Year","Month","Day","Max Temp (°C)","Max Temp Flag","Min Temp (°C)","Mean Temp (°C)","Total Precip (mm)"\n'
                          '"-79.40","TORONTO","2001-01-01","2001","01","01","10.6","","-2.8","3.9","1.3"\n',
    "dwd-climate": "STATIONS_ID;MESS_DATUM;QN_3;  FX;QN_4; RSK;RSKF; TMK; TXK; TNK; TGK;eor\n"
                   "         44;20010101; -999;-999;    3;   1.3;   6;   3.9;  10.6;  -2.8;  -4.0;eor\n         44;20010102; -999;-999;    3;  -999;   6;   3.9;  -999;  -999;  -999;eor\n",
    "midas-temperature": "Conventions,G,BADC-CSV,1\nobservation_station,G,bradford\ndata\nob_end_time,id_type,id,ob_hour_count,max_air_temp,min_air_temp\n"
                         "2001-01-01 09:00:00,DCNN,1,12,8.0,-2.8\n2001-01-01 21:00:00,DCNN,1,12,10.6,NA\nend data\n",
    "niwa": "Station,Date(NZST),Tmax(C),Period(Hrs),Tmin(C),Amount(mm)\nLincoln,20010101:0800,10.6,24,-2.8,1.3\n",
}


@pytest.mark.parametrize("name", COLUMNS)
def test_national_layouts_are_known_by_their_heads(name: str, tmp_path: Path) -> None:
    record, told = read(tmp_path, COLUMNS[name])
    assert told.head.layout is not None and told.head.layout.name == name
    assert record.maximum_c[FIRST] == pytest.approx(10.6, abs=0.1)
    if record.minimum_c:
        assert record.minimum_c[FIRST] == pytest.approx(-2.8, abs=0.1)
    if record.rain_mm:
        assert record.rain_mm[FIRST] == pytest.approx(1.3, abs=0.05)
    assert date(2001, 1, 2) not in record.maximum_c and date(2001, 1, 4) not in record.maximum_c


def test_each_layout_names_its_body_and_where_it_says_so() -> None:
    for layout in layout_table().layouts.values():
        assert layout.service and layout.address.startswith("https://")


@pytest.mark.parametrize(
    ("text", "units"),
    [
        ("date,tmax,tmin,rain\n2001-01-01,106,-28,13\n2001-07-01,301,180,0\n", ["tenths of °C", "tenths of °C", "tenths of mm"]),
        ("date,tmax,tmin,rain\n2001-01-01,51,27,0.05\n2001-07-01,95,70,1.5\n", ["°F", "°F", "in"]),
        ("Day;Max. Temp;Min. Temp;Rainfall\n01/01/2001;10,6;-2,8;1,3\n13/01/2001;30,1;18,0;0\n", ["°C", "°C", "mm"]),
        ("DATE|TMAX_F|TMIN_F|PRCP_IN\n01/01/2001|51|27|T\n01/13/2001|40|30|0.05\n", ["°F", "°F", "in"]),
        ("year month day high (°C) low (°C)\n2001 1 1 10.6 -2.8\n", ["°C", "°C"]),
    ],
    ids=["tenths", "Fahrenheit by values", "decimal commas", "Fahrenheit by name", "blanks"],
)
def test_columns_and_units_are_guessed(text: str, units: list[str], tmp_path: Path) -> None:
    if "high (" in text:
        text = text.replace("high (°C) low (°C)", "high_c low_c")
    record, told = read(tmp_path, text)
    assert list(told.units.values()) == units
    assert record.maximum_c[FIRST] == pytest.approx(10.6, abs=0.1) and record.minimum_c[FIRST] == pytest.approx(-2.8, abs=0.1)


def test_what_is_guessed_can_be_said(tmp_path: Path) -> None:
    text = "when,hot,cold,wet\n02/03/2001,20,10,1\n"
    asked = AskedOfDays({"date": "when", "maximum": "hot", "minimum": "cold", "rain": "wet"}, {"maximum": "°C", "rain": "in"}, "month-first")
    record, _ = read(tmp_path, text, asked=asked)
    assert record.maximum_c == {date(2001, 2, 3): 20.0} and record.rain_mm == {date(2001, 2, 3): pytest.approx(25.4)}


def test_three_files_of_one_station_are_one_record(tmp_path: Path) -> None:
    for name, values in {"high": "tmax\n2001-01-01,20", "low": "tmin\n2001-01-01,10", "wet": "rain\n2001-01-01,3"}.items():
        (tmp_path / f"{name}.csv").write_text(f"date,quality,{values.replace(',', ',Y,')}\n", encoding="utf-8")
    record, _, findings = read_days([tmp_path / f"{name}.csv" for name in ("high", "low", "wet")], AskedOfDays())
    assert findings == [] and (record.maximum_c, record.minimum_c, record.rain_mm) == ({FIRST: 20.0}, {FIRST: 10.0}, {FIRST: 3.0})
