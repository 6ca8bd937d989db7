"""A work record that a practice kept: the CSV file that the page exports, read with the place of every value. Twin: kept record."""

import re
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from pathlib import Path

from generator.book.lists.csv_reading import COMMA, Cell, header_findings, read_table, too_many
from generator.book.lists.for_a_job import is_date
from generator.book.lists.lawn_code import LAWN_CODE, NAMES_NOBODY
from generator.book.records.work_record import Column, WorkRecord
from generator.findings import Finding, Where, shown, suggestion
from generator.units import QuantityError, read_quantity, unit

_TIME = re.compile(r"([01]?[0-9]|2[0-3]):[0-5][0-9]")


@dataclass(frozen=True)
class KeptEntry:
    """One row: what was written, by column, only what is not empty; and where the row begins."""

    values: dict[str, str]
    where: Where


def read_kept(file: Path, record: WorkRecord, grasses: Collection[str], separator: str = COMMA) -> tuple[list[KeptEntry], list[Finding]]:
    """Every entry of a file that can be read, and what is wrong with the others at line and column."""
    rows, findings = read_table(file, separator)
    needed = [id for id, column in record.columns.items() if column.needed]
    findings = findings or header_findings(rows, record.columns, needed, separator)
    if findings:
        return [], findings
    names, entries = [cell.value for cell in rows[0]], []
    for row in rows[1:]:
        wrong = list(_row_findings(names, row, record, grasses))
        findings += wrong
        if not wrong:
            values = {name: cell.value for name, cell in zip(names, row, strict=False)}
            entries.append(KeptEntry({name: value for name, value in values.items() if value}, row[0].where))
    return entries, findings


def _row_findings(names: list[str], row: list[Cell], record: WorkRecord, grasses: Collection[str]) -> Iterator[Finding]:
    if wrong := too_many(row, names):
        yield wrong
        return
    given = dict(zip(names, row, strict=False))
    for id, column in record.columns.items():
        cell = given.get(id)
        value = cell.value if cell else ""
        if not value:
            if column.needed:
                yield Finding(cell.where if cell else row[-1].where, f"'{id}' is empty", "fill it in")
        elif cell and (problem := _wrong(id, column, value, grasses)):
            yield Finding(cell.where, *problem)


def _wrong(id: str, column: Column, value: str, grasses: Collection[str]) -> tuple[str, str] | None:
    """What is wrong with one value, and what would be right; None for a sound one."""
    if id == "lawn" and not LAWN_CODE.fullmatch(value):
        return f"'{shown(value)}' is not a lawn's code", NAMES_NOBODY
    if column.kind == "date" and not is_date(value):
        return f"'{shown(value)}' is not a date", "write year, month and day, such as 2026-10-12"
    if column.kind == "time" and not _TIME.fullmatch(value):
        return f"'{shown(value)}' is not a time", "write hours and minutes, such as 14:30"
    if column.kind == "grass" and value not in grasses:
        return f"no grass '{shown(value)}'", suggestion(value, grasses, "see data/grasses")
    if column.kind == "choice" and value not in column.choices:
        return f"'{shown(value)}' is not a choice here", f"it is one of {', '.join(column.choices)}"
    if column.kind == "number":
        return _wrong_number(column, value)
    return None


def _wrong_number(column: Column, value: str) -> tuple[str, str] | None:
    sentence = ""
    for spelling in (column.unit, *column.also):
        try:
            si = read_quantity(value, unit(spelling))
        except QuantityError as error:
            sentence = sentence or error.sentence
        else:
            below = si < 0 and unit(spelling).dimension != unit("°C").dimension
            return (f"'{shown(value)}' is less than nought", f"give 0 or more, such as '2 {column.unit}'") if below else None
    return sentence.rstrip("."), f"write a number with its unit, such as '2 {column.unit}'"
