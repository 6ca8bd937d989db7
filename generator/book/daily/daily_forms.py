"""The three forms that days are written in, each taken apart into readings that nobody has looked at yet."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from generator.book.daily.daily_columns import DaysHead, roles_in
from generator.book.daily.daily_dates import day_of
from generator.book.daily.daily_text import values_of
from generator.book.daily.layout_table import Role, layout_table


@dataclass(frozen=True)
class DayReading:
    """A reading of a day as it is written, and where: line, and the number of its value there, from 0."""

    line: int
    value: int
    day: str | date | None
    text: str


Written = dict[Role, list[DayReading]]


def _by_columns(lines: Sequence[str], head: DaysHead) -> Written:
    columns, missing = head.columns, layout_table().missing
    roles = roles_in(head)
    written: Written = {role: [] for role in roles}
    parts = [columns[part] for part in ("year", "month", "day")] if "date" not in columns else []
    at_date, over = columns.get("date", -1), columns.get("over_days", -1)
    ends = head.layout.ends_with if head.layout else None
    for number, line in enumerate(lines[head.line :], head.line + 1):
        if not line.strip():
            continue
        values = values_of(line, head.separator)
        if ends and values[0] == ends:
            break
        if over >= 0 and over < len(values) and values[over] not in ("", "1"):
            continue  # One reading for several days belongs to none of them.
        if parts:
            day: str | date | None = _from_parts([values[at] if at < len(values) else "" for at in parts])
        else:
            day = values[at_date] if at_date < len(values) else ""
        for role in roles:
            at = columns[role]
            text = values[at] if at < len(values) else ""
            if text not in missing:
                written[role].append(DayReading(number, at, day, text))
            elif day is None or day == "":
                written[role].append(DayReading(number, at, day, ""))
    return written


def _from_parts(parts: Sequence[str]) -> date | None:
    try:
        year, month, day = (int(float(part)) for part in parts)
    except (ValueError, OverflowError):
        return None
    return day_of(year, month, day)


def _by_elements(lines: Sequence[str], head: DaysHead) -> Written:
    layout = head.layout
    assert layout is not None and layout.elements is not None
    order, missing = list(layout.order), layout_table().missing
    at_date, at_element, at_value, at_refused = (order.index(each) for each in ("date", "element", "value", layout.refused_by or "value"))
    written: Written = {role: [] for role in layout.elements.values()}
    for number, line in enumerate(lines, 1):
        if not line.strip():
            continue
        values = values_of(line, head.separator)
        role = layout.elements.get(values[at_element]) if len(values) > at_value else None
        if role is None or values[at_value] in missing:
            continue
        if layout.refused_by and len(values) > at_refused and values[at_refused]:
            continue  # It failed a check of the service.
        written[role].append(DayReading(number, at_value, values[at_date], values[at_value]))
    return written


def _by_width(lines: Sequence[str], head: DaysHead) -> Written:
    layout = head.layout
    assert layout is not None and layout.fixed is not None and layout.elements is not None
    spans = layout.fixed

    def part(line: str, name: str, shift: int = 0) -> str:
        first, last = spans[name]
        return line[first - 1 + shift : last + shift].strip()

    written: Written = {role: [] for role in layout.elements.values()}
    missing = layout_table().missing
    for number, line in enumerate(lines, 1):
        role = layout.elements.get(part(line, "element"))
        if role is None:
            continue
        for ahead in range(31):
            text = part(line, "value", ahead * spans["width"])
            if text in missing or part(line, "quality", ahead * spans["width"]):
                continue
            day = _from_parts([part(line, "year"), part(line, "month"), str(ahead + 1)])
            written[role].append(DayReading(number, spans["value"][0] - 1 + ahead * spans["width"], day, text))
    return written


FORMS: Mapping[str, Callable[[Sequence[str], DaysHead], Written]] = {"columns": _by_columns, "elements": _by_elements, "fixed": _by_width}
