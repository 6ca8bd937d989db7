"""Files of days that somebody spoilt: findings at line and column, all at once, and never a traceback."""

import time
from datetime import date, timedelta
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from generator.book.daily.daily_reading import AskedOfDays, read_days
from generator.book.daily.monthly_reading import read_months

NOTHING_SAID = AskedOfDays()
HEAD = "date,tmax,tmin,rain\n"


def told(folder: Path, content: str | bytes, asked: AskedOfDays = NOTHING_SAID) -> list[str]:
    file = folder / "days.csv"
    file.write_bytes(content.encode() if isinstance(content, str) else content)
    return [str(each) for each in read_days([file], asked)[2]]


@pytest.mark.parametrize(
    ("content", "expected"),
    [
        ("", ["days.csv:1:1: the file is empty"]),
        (bytes(range(256)) * 20, ["days.csv:1:1: this is no text"]),
        ("hello\n", ["days.csv:1:1: no names of columns that are known"]),
        (HEAD + "2001-02-30,20,10,1\n", ["days.csv:2:1: '2001-02-30' is no day of the calendar"]),
        (HEAD + "2001-01-01,20,10,1\n2001-01-01,20,10,1\n", [f"days.csv:3:{column}: 2001-01-01 has a {what} already" for column, what in
                                                           ((12, "maximum"), (15, "minimum"), (18, "rain"))]),
        (HEAD + "2001-01-01,10,20,1\n", ["days.csv:2:15: 2001-01-01: the minimum, 20 °C, is above the maximum, 10 °C"]),
        (HEAD + "2001-01-01,warm,10,-1\n", ["days.csv:2:12: 'warm' is not a number", "days.csv:2:20: a rain of -1 is less than none"]),
        (HEAD + "03/04/2001,20,10,1\n", ["days.csv:2:1: '03/04/2001': no day of the file tells whether the day or the month comes first"]),
        ("date,tmax,max,tmin\n2001-01-01,20,21,10\n", ["days.csv:1:11: two columns may hold the maximum: 'tmax' and 'max'"]),
        (HEAD + "2001-01-01,,,\n", ["days.csv:1:1: no day of the file has a reading"]),
    ],
    ids=["empty", "binary", "no table", "no such day", "twice", "crossed", "no number", "which order", "two columns", "nothing in it"],
)
def test_what_is_wrong_is_told_where_it_stands(content: str | bytes, expected: list[str], tmp_path: Path) -> None:
    found = told(tmp_path, content)
    assert len(found) == len(expected) and all(line.startswith(start) for line, start in zip(found, expected, strict=True)), found


def test_wrong_readings_can_be_left_out_and_are_counted(tmp_path: Path) -> None:
    file = tmp_path / "days.csv"
    file.write_text(HEAD + "2001-01-01,10,20,1\n2001-01-02,20,10,x\n", encoding="utf-8")
    record, reads, findings = read_days([file], AskedOfDays(leave_out=True))
    assert findings == [] and reads[0].left_out == 2 and record.maximum_c == {date(2001, 1, 2): 20.0}


def test_a_day_that_two_files_have_is_told(tmp_path: Path) -> None:
    for name in ("a.csv", "b.csv"):
        (tmp_path / name).write_text(HEAD + "2001-01-01,20,10,1\n", encoding="utf-8")
    findings = read_days([tmp_path / "a.csv", tmp_path / "b.csv"], AskedOfDays())[2]
    assert len(findings) == 3 and "1 days of maximum stand in a.csv too" in str(findings[0])


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.one_of(st.binary(max_size=400), st.lists(st.text(alphabet='0123456789-/.,;"T \t°abdetmxinru\n', max_size=40), max_size=8).map(
    lambda lines: (HEAD + "2001-01-01,20,10,1\n" + "\n".join(lines)).encode(),
)))
def test_no_file_is_read_with_a_traceback(tmp_path: Path, content: bytes) -> None:
    file = tmp_path / "days.csv"
    file.write_bytes(content)
    for asked in (AskedOfDays(), AskedOfDays({"maximum": "tmax"}, leave_out=True)):
        record, reads, findings = read_days([file], asked)
        assert findings or record or not reads
    read_months(file, {})


@pytest.mark.alone
def test_fifty_years_are_read_in_seconds_and_so_is_a_file_in_which_all_is_wrong(tmp_path: Path) -> None:
    days = [date(1970, 1, 1) + timedelta(days=number) for number in range(18_262)]
    sound = HEAD + "".join(f"{day},{20 + day.day % 5},{10 - day.day % 4},{day.day % 3}\n" for day in days)
    began = time.perf_counter()
    assert told(tmp_path, sound) == []
    assert time.perf_counter() - began < 4
    began = time.perf_counter()
    assert len(told(tmp_path, HEAD + "2001-01-01,20,30,x\n" * 100_000)) == 101
    assert time.perf_counter() - began < 15
