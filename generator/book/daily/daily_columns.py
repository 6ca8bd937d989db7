"""Which layout a file has, and which of its columns holds what."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from generator.book.daily.daily_text import BLANKS, LineAt, separators_of, values_of
from generator.book.daily.layout_table import ROLES, DailyLayout, Role, bare, layout_table
from generator.findings import Finding, shown, suggestion

DATES = ("date", "year", "month", "day")
_FIXED = re.compile(r"[A-Z]{2}[A-Z0-9_\-]{9}\d{6}[A-Z0-9]{4}[ \-\d]{5}")
_IN_SIGNS = re.compile(r"^(.*?)\s*[(\[]([^()\[\]]*)[)\]]\s*$")


@dataclass(frozen=True)
class DaysHead:
    """What a file's head says. layout: None where it is nobody's and its names were guessed. columns: what is in which, from 0.

    line: the number, from 1, of the line with the names; 0 where there is none. named_units: what stands beside a name.
    """

    layout: DailyLayout | None
    separator: str
    line: int
    names: Sequence[str] = ()
    columns: Mapping[str, int] = field(default_factory=dict)
    named_units: Mapping[str, str] = field(default_factory=dict)


def head_of(path: str, lines: Sequence[str], asked: Mapping[str, str]) -> tuple[DaysHead | None, list[Finding]]:
    """How a file is laid out, or why that cannot be told. asked: columns by what they hold, as somebody named them."""
    table = layout_table()
    first_number, first = next((number, line) for number, line in enumerate(lines, 1) if line.strip())
    if not asked:
        if _FIXED.match(first):
            return DaysHead(next(each for each in table.layouts.values() if each.form == "fixed"), "", 0), []
        values = values_of(first, ",")
        if len(values) >= 4 and re.fullmatch(r"\d{8}", values[1]) and re.fullmatch(r"[A-Z0-9]{4}", values[2]):
            return DaysHead(next(each for each in table.layouts.values() if each.form == "elements"), ",", 0), []
    wrong: list[Finding] = []
    for number, line in enumerate(lines[: table.preamble_lines], 1):
        for separator in separators_of(line):
            names = [name.strip('"') for name in values_of(line, separator)]
            if asked and all(name in names for name in asked.values()):
                return _asked(path, number, line, separator, names, asked)
            if len(names) < 3 or asked:
                continue
            if (layout := _known(names)) is not None:
                return DaysHead(layout, separator, number, names, _by_layout(layout, names)), []
            guessed = _guessed(number, separator, names)
            wrong = wrong or [Finding(LineAt(path, number, line, separator).where(at), what, instead) for at, what, instead in guessed[1]]
            if guessed[0] is not None:
                return guessed[0], []
    at = LineAt(path, first_number, first, ",").where()
    if asked:
        name = next(iter(asked.values()))
        every = values_of(first, separators_of(first)[0])
        return None, [Finding(at, f"no line of the file names the columns {', '.join(shown(each) for each in asked.values())}",
                              suggestion(name, every, "the columns are named as they stand in the file"))]
    return None, wrong or [Finding(
        at, f"no names of columns that are known; the file begins '{shown(first.strip())}'",
        "give it a first line such as date,maximum_c,minimum_c,rain_mm, or say which column is which: --column maximum=NAME",
    )]


def _known(names: Sequence[str]) -> DailyLayout | None:
    fit = [layout for layout in layout_table().layouts.values() if layout.known_by and set(layout.known_by) <= set(names)]
    return max(fit, key=lambda layout: len(layout.known_by), default=None)


def _by_layout(layout: DailyLayout, names: Sequence[str]) -> dict[str, int]:
    found = {}
    for role, called in (layout.columns or {}).items():
        there = [names.index(name) for name in called if name in names]
        if there:
            found[role] = there[0]
    return found


def _guessed(number: int, separator: str, names: Sequence[str]) -> tuple[DaysHead | None, list[tuple[int, str, str]]]:
    """The head, where a line names a day and a temperature; else None, and what is wrong where it nearly does."""
    columns: dict[str, int] = {}
    units: dict[str, str] = {}
    twice = []
    for at, name in enumerate(names):
        role, unit = column_meaning(name)
        if role is None:
            continue
        if role in columns and separator != BLANKS:
            twice.append((at, f"two columns may hold the {role}: '{shown(names[columns[role]])}' and '{shown(name)}'", f"say which: --column {role}=NAME"))
        elif role not in columns:
            columns[role] = at
            if unit:
                units[role] = unit
    if "day" in columns and not {"date", "year"} & set(columns):
        columns["date"] = columns.pop("day")  # Without a year beside it, it is the whole of the date.
    dated = "date" in columns or {"year", "month", "day"} <= set(columns)
    read = [role for role in ROLES if role in columns]
    if not dated or not read:
        return None, []
    if "date" in columns:  # A column 'day' beside a whole date is another thing, such as the day of the week.
        columns = {role: at for role, at in columns.items() if role not in ("year", "month", "day")}
        twice = [each for each in twice if not any(f"the {role}:" in each[1] for role in ("year", "month", "day", "date"))]
    if twice:
        return None, twice
    return DaysHead(None, separator, number, names, columns, units), []


def column_meaning(name: str) -> tuple[str | None, str | None]:
    """What a column of that name holds, and the unit that its name says."""
    table = layout_table()
    split = _IN_SIGNS.match(name)
    tries = [(split[1], table.unit_names.get(bare(split[2].replace("0.1", "01"))))] if split else []
    tries.append((name, None))
    for mark in ("_", " "):
        before, sign, after = name.rpartition(mark)
        if sign and (unit := table.unit_names.get(bare(after))):
            tries.append((before, unit))
    for text, unit in tries:
        word = bare(text)
        for role, words in table.guessed.items():
            if word in words:
                return role, unit
    return None, None


def _asked(
    path: str, number: int, line: str, separator: str, names: Sequence[str], asked: Mapping[str, str]
) -> tuple[DaysHead | None, list[Finding]]:
    guessed, _ = _guessed(number, separator, [name if name not in asked.values() else "" for name in names])
    columns = dict(guessed.columns) if guessed else {role: at for at, name in enumerate(names) if (role := column_meaning(name)[0]) in DATES}
    columns |= {role: names.index(name) for role, name in asked.items()}
    if "date" not in columns and not {"year", "month", "day"} <= set(columns):
        return None, [Finding(LineAt(path, number, line, separator).where(), "no column with the day", "say which it is: --column date=NAME")]
    units = {role: unit for role, at in columns.items() if (unit := column_meaning(names[at])[1])}
    return DaysHead(None, separator, number, names, columns, units), []


def roles_in(head: DaysHead) -> list[Role]:
    """What the columns of a file hold beside the day."""
    return [role for role in ROLES if role in head.columns]
