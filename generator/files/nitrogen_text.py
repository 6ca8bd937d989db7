"""The nitrogen of a kept record, as data and as lines for a terminal."""

from collections.abc import Mapping, Sequence
from typing import Any

from generator.book.records.grass import Grass
from generator.calculators.calculator_sentences import SLACK
from generator.field.nitrogen_record import LawnYear
from generator.units import from_si, to_si, unit

RANGE_WORDS = {"under": "less than it is usually given", "within": "within what it is usually given", "over": "more than it is usually given"}


def yearly_range(grass: Grass) -> tuple[float, float]:
    """What a grass is usually given in a year [kg/m2], least and most."""
    figure = grass.nitrogen_per_year
    return to_si(figure.lowest, unit(figure.unit)), to_si(figure.highest, unit(figure.unit))


def nitrogen_values(years: Sequence[LawnYear], grasses: Mapping[str, Grass], lines: Sequence[int]) -> dict[str, Any]:
    """{'lawns': [{lawn, year, grass, nitrogen: {value, unit}, range, against_range, feeds, not_counted}]}. lines: of each entry in its file."""
    return {"lawns": [_values(each, grasses, lines) for each in years]}


def _values(each: LawnYear, grasses: Mapping[str, Grass], lines: Sequence[int]) -> dict[str, Any]:
    values: dict[str, Any] = {
        "lawn": each.lawn, "year": each.year, "grass": each.grass, "feeds": each.feeds,
        "nitrogen": {"value": _grams(each.nitrogen_kg_per_m2), "unit": "g/m2"},
        "not_counted": [{"line": lines[number], "why": why} for number, why in each.left_out],
    }
    if each.grass:
        low, high = yearly_range(grasses[each.grass])
        total = each.nitrogen_kg_per_m2
        values["range"] = {"low": _grams(low), "high": _grams(high), "unit": "g/m2"}
        values["against_range"] = "under" if total < low * (1 - SLACK) else "over" if total > high * (1 + SLACK) else "within"
    return values


def _grams(kg_per_m2: float) -> float:
    return float(f"{from_si(kg_per_m2, unit('g/m2')):.9g}")


def nitrogen_text(values: Mapping[str, Any]) -> str:
    """The same as lines, one lawn and year each, and below it what was not counted."""
    if not values["lawns"]:
        return "No feed is written down."
    lines = []
    for each in values["lawns"]:
        feeds = "1 feed" if each["feeds"] == 1 else f"{each['feeds']} feeds"
        pounds = from_si(to_si(each["nitrogen"]["value"], unit("g/m2")), unit("lb/1000 ft2"))
        line = f"{each['lawn']} {each['year']}: {each['nitrogen']['value']:.4g} g/m2 of nitrogen ({pounds:.3g} lb/1000 ft2) in {feeds}"
        if "range" in each:
            line += f"; {each['grass']}: {RANGE_WORDS[each['against_range']]}, {each['range']['low']:g} to {each['range']['high']:g} g/m2 a year"
        lines += [line, *(f"  not counted: line {left['line']}, {left['why']}" for left in each["not_counted"])]
    return "\n".join(lines)
