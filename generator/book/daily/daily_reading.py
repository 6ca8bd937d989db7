"""Files of days into one record, with what was guessed of them, and everything that is wrong with them at line and column."""

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from math import isfinite
from pathlib import Path
from typing import NamedTuple

from generator.book.daily.daily_columns import DaysHead, head_of
from generator.book.daily.daily_dates import DateOrder, date_order, date_reader
from generator.book.daily.daily_forms import FORMS, DayReading, Written
from generator.book.daily.daily_record import DailyRecord
from generator.book.daily.daily_text import LineAt, daily_lines
from generator.book.daily.daily_units import rain_unit, temperature_unit, to_engine
from generator.book.daily.layout_table import ROLES, Role, layout_table
from generator.book.fields.plausible import PLAUSIBLE
from generator.findings import Finding, first_told, one_line, shown

MOST_RAIN_MM = 2000.0  # Of a day; above any on record (our limit).
_NUMBER = re.compile(r"([-+]?(?:\d+(?:[.,]\d*)?|[.,]\d+))\s?[A-Za-z#*$]?$")  # A letter or mark behind a number is a service's remark.


@dataclass(frozen=True)
class AskedOfDays:
    """What somebody said of a file, in place of guesses. columns: names by what they hold; units: ours, by reading; leave_out: days that are wrong;
    folder: that findings name before a file."""

    columns: Mapping[str, str] = field(default_factory=dict)
    units: Mapping[Role, str] = field(default_factory=dict)
    dates: DateOrder | None = None
    leave_out: bool = False
    folder: str = ""


@dataclass(frozen=True)
class FileRead:
    """What was made of one file, to be shown. left_out: what was wrong, and is not in the record."""

    name: str
    head: DaysHead
    units: Mapping[Role, str]
    days: int
    left_out: int = 0
    first_left_out: Finding | None = None


DayOf = Callable[[DayReading], date | None]


class _Wrong(NamedTuple):
    """What is wrong with a value of a line, before it is worked out at which column that stands: there may be a hundred thousand."""

    line: int
    value: int
    what: str
    instead: str


def read_days(files: Sequence[Path], asked: AskedOfDays) -> tuple[DailyRecord, list[FileRead], list[Finding]]:
    """The days of all the files together; where there are findings, the record is not to be used."""
    together: dict[Role, dict[date, float]] = {role: {} for role in ROLES}
    reads, findings, at_role = [], [], dict[Role, str]()
    for file in files:
        days, read, wrong = _read_file(file, asked)
        findings += wrong
        if read is None:
            continue
        reads.append(read)
        for role, readings in days.items():
            if not readings:
                continue
            again = readings.keys() & together[role].keys()
            if again:
                what = f"{len(again)} days of {role} stand in {at_role[role]} too, such as {min(again)}"
                findings.append(Finding(LineAt(read.name, 1, "", ",").where(), what, "name each day's file once"))
            at_role[role] = read.name
            together[role] |= readings
    return DailyRecord(*({day: together[role][day] for day in sorted(together[role])} for role in ROLES)), reads, findings


def _read_file(file: Path, asked: AskedOfDays) -> tuple[dict[Role, dict[date, float]], FileRead | None, list[Finding]]:
    name = one_line(asked.folder + file.name)
    lines, findings = daily_lines(file, name)
    if findings:
        return {}, None, findings
    head, findings = head_of(name, lines, asked.columns)
    if head is None:
        return {}, None, findings
    form = head.layout.form if head.layout else "columns"
    written = FORMS[form](lines, head)
    reader, wrong = _day_reader(name, lines, head, written, asked.dates)
    if reader is None:
        return {}, None, wrong
    units = _units(head, written, asked)
    told: set[_Wrong] = set()
    days = {role: _settled(head, role, readings, reader, units[role], told) for role, readings in written.items()}
    told.update(_crossed(days, written, reader))
    count = len({day for readings in days.values() for day in readings})
    if not count and not told:
        nothing = Finding(LineAt(name, max(1, head.line), "", ",").where(), "no day of the file has a reading", "look at its columns and its signs for none")
        return {}, None, [nothing]

    def found() -> Iterator[Finding]:
        for wrong in sorted(told):
            yield Finding(LineAt(name, wrong.line, lines[wrong.line - 1], head.separator or ",").where(wrong.value), wrong.what, wrong.instead)

    if asked.leave_out and count:
        return days, FileRead(name, head, units, count, len(told), next(found(), None)), []
    return days, FileRead(name, head, units, count), list(first_told(found()))


def _crossed(days: dict[Role, dict[date, float]], written: Written, day_of_reading: DayOf) -> Iterator[_Wrong]:
    """Takes out the days whose minimum is above the maximum, and tells of them."""
    highs, lows = days.get("maximum", {}), days.get("minimum", {})
    crossed = {day for day, low in lows.items() if low > highs.get(day, low)}
    for reading in written.get("minimum", ()) if crossed else ():
        if (day := day_of_reading(reading)) in crossed and day is not None:
            crossed.remove(day)
            what = f"{day}: the minimum, {lows.pop(day):g} °C, is above the maximum, {highs.pop(day):g} °C"
            yield _Wrong(reading.line, reading.value, what, "check whether the two are swapped, or leave both empty")


def _day_reader(name: str, lines: Sequence[str], head: DaysHead, written: Written, asked: DateOrder | None) -> tuple[DayOf | None, list[Finding]]:
    days = [each for readings in written.values() for each in readings if isinstance(each.day, str)]
    order = asked or date_order(each.day for each in days if isinstance(each.day, str))
    if order is None and any(isinstance(each.day, str) and "/" in each.day for each in days):
        first = days[0]
        return None, [Finding(
            LineAt(name, first.line, lines[first.line - 1], head.separator).where(head.columns.get("date", 0)),
            f"'{shown(first.day)}': no day of the file tells whether the day or the month comes first", "say it: --dates day-first, or --dates month-first",
        )]
    read = date_reader(order or "day-first")
    known: dict[str, date | None] = {}

    def day(reading: DayReading) -> date | None:
        if not isinstance(reading.day, str):
            return reading.day
        if reading.day not in known:
            known[reading.day] = read(reading.day)
        return known[reading.day]

    return day, []


def _units(head: DaysHead, written: Written, asked: AskedOfDays) -> dict[Role, str]:
    """By option, by the service, by the name of the column, by the values, in this order."""
    numbers = {role: [value for each in readings if (value := read_number(each.text)) is not None] for role, readings in written.items()}
    of_service: Mapping[str, str] = (head.layout.units or {}) if head.layout else {}
    said: dict[Role, str] = {role: unit for role in written if (unit := asked.units.get(role) or of_service.get(role) or head.named_units.get(role))}
    warmth = next((said[role] for role in ("maximum", "minimum") if role in said), None)
    if warmth is None:
        warmth = temperature_unit(numbers.get("maximum", ()), numbers.get("minimum", ()))
    return {role: said.get(role) or (rain_unit(warmth, numbers[role]) if role == "rain" else warmth) for role in written}


def read_number(text: str) -> float | None:
    found = _NUMBER.match(text)
    if not found or len(text) > 24:
        return None
    value = float(found[1].replace(",", "."))
    return value if isfinite(value) else None


def _settled(
    head: DaysHead, role: Role, readings: Iterable[DayReading], day_of_reading: DayOf, unit: str, told: set[_Wrong],
) -> dict[date, float]:
    """The readings of one kind by day, in °C or mm. told: takes what is wrong."""
    convert, no_rain = to_engine(unit), layout_table().no_rain
    settled: dict[date, float] = {}
    halves = bool(head.layout and head.layout.worst_first)
    for reading in readings:
        wrong = None
        day = day_of_reading(reading)
        value = 0.0 if role == "rain" and reading.text in no_rain else read_number(reading.text)
        if day is None:
            at_date = head.columns.get("date", head.columns.get("year", head.layout.order.index("date") if head.layout and head.layout.order else 0))
            said = reading.day if isinstance(reading.day, str) else "this"
            wrong = (at_date, f"'{shown(said)}' is no day of the calendar" if said else "this line has no day", "write year, month and day, such as 2026-10-12")
        elif value is None:
            wrong = reading.value, f"'{shown(reading.text)}' is not a number", f"write the {role} in {unit}, and leave empty what was not measured"
        else:
            value = convert(value)
            if problem := _out_of_reach(role, value, reading.text, unit):
                wrong = reading.value, *problem
            elif day in settled and not halves:
                wrong = reading.value, f"{day} has a {role} already", "keep one line to a day"
        if wrong:
            told.add(_Wrong(reading.line, *wrong))
        elif day is not None and value is not None:
            settled[day] = value if day not in settled else (min if role == "minimum" else max)(settled[day], value)
    return settled


def _out_of_reach(role: Role, value: float, text: str, unit: str) -> tuple[str, str] | None:
    if role == "rain":
        if value < 0:
            return f"a rain of {shown(text)} is less than none", "leave empty what was not measured"
        if value > MOST_RAIN_MM:
            return f"a rain of {value:g} mm in a day was never measured", f"the rain is read in {unit}; say another unit with --unit rain=..."
        return None
    row = PLAUSIBLE["temperature of a month"]
    if not row.allows(value):
        return f"a {role} of {value:.1f} °C: {row.why}", f"the {role} is read in {unit}; say another unit with --unit {role}=..., or leave it empty"
    return None


def told_reads(reads: Sequence[FileRead]) -> Iterator[str]:
    """What was made of each file, a line each: whose layout, which columns and units."""
    for read in reads:
        head = read.head
        whose = f"laid out as by {head.layout.service}: {head.layout.what}" if head.layout else "columns guessed by their names"
        yield f"{read.name}: {whose}"
        for role, unit in read.units.items():
            column = f"column '{shown(head.names[head.columns[role]])}'" if role in head.columns else "its own lines"
            yield f"  {role}: {column}, in {unit}"
        if read.first_left_out:
            yield f"  left out, as wrong: {read.left_out} readings, the first: {read.first_left_out}"
