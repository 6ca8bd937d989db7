"""Twelve months from a table: a line a month, of one year or of many, whose mean is then taken."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from math import fsum
from pathlib import Path

from generator.book.daily.daily_columns import column_meaning
from generator.book.daily.daily_reading import read_number
from generator.book.daily.daily_text import LineAt, daily_lines, separators_of, values_of
from generator.book.daily.daily_units import rain_unit, temperature_unit, to_engine
from generator.book.daily.layout_table import ROLES, Role, layout_table
from generator.findings import Finding, Where, first_told, one_line, shown

MONTH_WORDS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
# So many lines at the head may be a preamble, and one under the names may hold their units.
PREAMBLE_LINES = 30


@dataclass(frozen=True)
class MonthlyTable:
    """Means of each month, January first, by what they are [°C, mm]; the years they are of, where the table says; units as they were read."""

    months: Mapping[Role, tuple[float, ...]] = field(default_factory=dict)
    years: tuple[int, int] | None = None
    units: Mapping[Role, str] = field(default_factory=dict)


def read_months(file: Path, units: Mapping[Role, str]) -> tuple[MonthlyTable, list[Finding]]:
    """The twelve months of a table, or what is wrong with it. units: as somebody said them, in place of a guess."""
    name = one_line(file.name)
    lines, findings = daily_lines(file, name)
    if findings:
        return MonthlyTable(), findings
    for number, line in enumerate(lines[:PREAMBLE_LINES], 1):
        for separator in separators_of(line):
            meant = [column_meaning(each) for each in values_of(line, separator)]
            roles = [role for role, _ in meant]
            if "month" in roles and any(role in roles for role in ("maximum", "minimum")):
                columns = {role: at for at, role in reversed([*enumerate(roles)]) if role}
                named = {role: unit for role, unit in meant if role and unit}
                return _table(name, lines, number, separator, columns, named, units)
    return MonthlyTable(), [Finding(Where(name), "no line names the months and their temperatures", "begin the table with a line: month,maximum_c,minimum_c,rain_mm")]


def _table(
    name: str, lines: list[str], head: int, separator: str, columns: Mapping[str, int], named: Mapping[str, str], asked: Mapping[Role, str],
) -> tuple[MonthlyTable, list[Finding]]:
    roles = [role for role in ROLES if role in columns]
    found: dict[Role, list[list[float]]] = {role: [[] for _ in range(12)] for role in roles}
    years, findings, missing = [], [], layout_table().missing
    for number, line in enumerate(lines[head:], head + 1):
        values = values_of(line, separator)
        text = values[columns["month"]] if columns["month"] < len(values) else ""
        month = _month(text)
        if not line.strip() or (month is None and number == head + 1 and not any(read_number(each) is not None for each in values)):
            continue
        at = LineAt(name, number, line, separator)
        if month is None:
            if len(values) > 2:
                findings.append(Finding(at.where(columns["month"]), f"'{shown(text)}' is no month", "write 1 to 12, or its name"))
            continue
        if "year" in columns and (year := read_number(values[columns["year"]])) is not None:
            years.append(int(year))
        for role in roles:
            text = values[columns[role]] if columns[role] < len(values) else ""
            value = read_number(text)
            if value is not None:
                found[role][month].append(value)
            elif text not in missing:
                findings.append(Finding(at.where(columns[role]), f"'{shown(text)}' is not a number", "leave empty what is not known"))
    for role, months in found.items():
        empty = [str(month + 1) for month, values_there in enumerate(months) if not values_there]
        if empty and len(empty) < 12:
            findings.append(Finding(Where(name, head), f"no {role} of month {', '.join(empty)}", "a place needs all twelve months"))
        elif "year" not in columns and any(len(each) > 1 for each in months):
            findings.append(Finding(Where(name, head), "a month stands here twice, and no column says the year", "add a column 'year', or keep one line to a month"))
    if findings:
        return MonthlyTable(), list(first_told(findings))
    of_all = {role: [value for month in months for value in month] for role, months in found.items() if all(months)}
    warmth = next((unit for role in ("maximum", "minimum") if (unit := asked.get(role) or named.get(role))), None)
    warmth = warmth or temperature_unit(of_all.get("maximum", ()), of_all.get("minimum", ()))
    units = {role: asked.get(role) or named.get(role) or (rain_unit(warmth, [0.0]) if role == "rain" else warmth) for role in of_all}
    months_of = {role: tuple(to_engine(units[role])(fsum(month) / len(month)) for month in found[role]) for role in of_all}
    return MonthlyTable(months_of, (min(years), max(years)) if years else None, units), []


def _month(text: str) -> int | None:
    if text.strip().isdecimal() and 1 <= int(text[:9]) <= 12:
        return int(text) - 1
    word = text.strip().lower()[:3]
    return MONTH_WORDS.index(word) if word in MONTH_WORDS else None
