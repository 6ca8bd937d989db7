"""A work record that a practice kept: the CSV file that the page exports, read with the place of every value."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from generator.findings import Finding, Where, suggestion
from generator.model.lawns import NAMES_NOBODY
from generator.model.load import read_text
from generator.model.work_record import Column, WorkRecord
from generator.units import QuantityError, read_quantity, unit

LAWN_CODE = re.compile(r"[A-Za-z0-9][A-Za-z0-9-]{0,23}")
# A spreadsheet runs what begins like this; the export puts an apostrophe before it, and reading takes that off again.
_SHIELDED = re.compile(r"'+[=+\-@\t\r]")
_TIME = re.compile(r"([01]?[0-9]|2[0-3]):[0-5][0-9]")
_DATE = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")


@dataclass(frozen=True)
class Entry:
    """One row: what was written, by column, only what is not empty; and where the row begins."""

    values: dict[str, str]
    where: Where


@dataclass(frozen=True)
class Cell:
    text: str
    where: Where


def cells(text: str, path: str) -> Iterator[list[Cell]]:
    """The rows of a CSV text (RFC 4180), each value with the line and column of its first character."""
    row: list[Cell] = []
    at, line, start = 0, 1, 0
    while at < len(text):
        where = Where(path, line, at - start + 1)
        value, end = _cell(text, at)
        if (newline := text.rfind("\n", at, end)) >= 0:
            line, start = line + text.count("\n", at, end), newline + 1
        row.append(Cell(value, where))
        at = end
        if text[at : at + 1] == ",":
            at += 1
            if at < len(text):
                continue
            row.append(Cell("", Where(path, line, at - start + 1)))
        yield row
        row = []
        if at < len(text):
            at += 2 if text.startswith("\r\n", at) else 1
            line, start = line + 1, at


def _cell(text: str, at: int) -> tuple[str, int]:
    """The value that begins here and where it ends. A quote that is never closed takes the rest of the file."""
    if text[at : at + 1] != '"':
        end = min((place for mark in (",", "\n", "\r") if (place := text.find(mark, at)) >= 0), default=len(text))
        return text[at:end], end
    value, at = "", at + 1
    while at < len(text):
        close = text.find('"', at)
        if close < 0:
            return value + text[at:], len(text)
        value += text[at:close]
        if text[close + 1 : close + 2] != '"':
            end = close + 1
            while end < len(text) and text[end] not in ",\r\n":
                end += 1
            return value + text[close + 1 : end], end
        value, at = value + '"', close + 2
    return value, at


def read_kept(file: Path, record: WorkRecord, grasses: dict[str, object]) -> tuple[list[Entry], list[Finding]]:
    """Every entry of a file that can be read, and what is wrong with the others at line and column."""
    text, findings = read_text(file, file.name)
    if text is None:
        return [], findings
    rows = list(cells(text, file.name))
    if not rows:
        return [], [Finding(Where(file.name), "the file is empty", "export one from the work record's page")]
    findings = list(_header_findings(rows[0], record))
    if findings:
        return [], findings
    names, entries = [cell.text.strip() for cell in rows[0]], []
    for row in rows[1:]:
        if not any(cell.text.strip() for cell in row):
            continue
        wrong = list(_row_findings(names, row, record, grasses))
        findings += wrong
        if not wrong:
            values = {name: _plain(cell.text) for name, cell in zip(names, row, strict=False)}
            entries.append(Entry({name: value for name, value in values.items() if value}, row[0].where))
    return entries, findings


def _plain(text: str) -> str:
    return (text[1:] if _SHIELDED.match(text) else text).strip()


def _header_findings(header: list[Cell], record: WorkRecord) -> Iterator[Finding]:
    seen = set()
    for cell in header:
        name = cell.text.strip()
        if name not in record.columns:
            yield Finding(cell.where, f"unknown column '{name}'", suggestion(name, record.columns, f"the columns are: {', '.join(record.columns)}"))
        elif name in seen:
            yield Finding(cell.where, f"the column '{name}' stands here twice", "keep one of them")
        seen.add(name)
    for id, column in record.columns.items():
        if column.needed and id not in seen:
            yield Finding(header[0].where, f"the column '{id}' is missing", "add it to the first line")


def _row_findings(names: list[str], row: list[Cell], record: WorkRecord, grasses: dict[str, object]) -> Iterator[Finding]:
    if len(row) > len(names):
        yield Finding(row[len(names)].where, "this line has more values than there are columns", "put values with a comma in quotes")
        return
    given = dict(zip(names, row, strict=False))
    for id, column in record.columns.items():
        cell = given.get(id)
        value = _plain(cell.text) if cell else ""
        if not value:
            if column.needed:
                yield Finding(cell.where if cell else row[-1].where, f"'{id}' is empty", "fill it in")
        elif problem := _wrong(id, column, value, grasses):
            yield Finding(cell.where, *problem)


def _wrong(id: str, column: Column, value: str, grasses: dict[str, object]) -> tuple[str, str] | None:
    """What is wrong with one value, and what would be right; None for a sound one."""
    if id == "lawn" and not LAWN_CODE.fullmatch(value):
        return f"'{value[:30]}' is not a lawn's code", NAMES_NOBODY
    if column.kind == "date" and not _is_date(value):
        return f"'{value[:30]}' is not a date", "write year, month and day, as 2026-10-12"
    if column.kind == "time" and not _TIME.fullmatch(value):
        return f"'{value[:30]}' is not a time", "write hours and minutes, as 14:30"
    if column.kind == "grass" and value not in grasses:
        return f"no grass '{value[:30]}'", suggestion(value, grasses, "see data/grasses")
    if column.kind == "choice" and value not in column.choices:
        return f"'{value[:30]}' is not a choice here", f"it is one of {', '.join(column.choices)}"
    if column.kind == "number":
        return _wrong_number(column, value)
    return None


def _is_date(value: str) -> bool:
    try:
        return bool(_DATE.fullmatch(value)) and date.fromisoformat(value) is not None
    except ValueError:
        return False


def _wrong_number(column: Column, value: str) -> tuple[str, str] | None:
    first = None
    for spelling in (column.unit, *column.also):
        try:
            si = read_quantity(value, unit(spelling))
        except QuantityError as error:
            first = first or error
        else:
            below = si < 0 and unit(spelling).dimension != unit("°C").dimension
            return (f"'{value[:30]}' is less than nothing", f"give 0 or more, as '2 {column.unit}'") if below else None
    return first.sentence.rstrip("."), f"write a number with its unit, as '2 {column.unit}'"
