"""This year by a keeper's own notes, as text for a terminal and as plain values.

Twin: seen.
"""

from typing import Any

from generator.formula.functions import nearest
from generator.season.calendar_days import day_words, month_and_day
from generator.season.engine_rules import SeenRules
from generator.season.normals.record_normals import day_number
from generator.season.seen.seen_year import MovedWindow, NoteTold, SeenYear, is_warming
from generator.words.seen_sentences import EDGES, HALVES, NOTES, SENTENCES, SOURCES

VERSION = 1


def seen_lines(year: SeenYear, place: dict[str, Any], reading: str, rules: SeenRules, labels: dict[str, str], us: bool) -> list[str]:
    """What is said, a line each: what each note tells, then each window that moves. reading: of the thermometer, as it was typed. labels: by kind."""
    lines = [_told(each, place, reading, rules, us) for each in year.told]
    lines += [f"{labels[each.kind]}: {moved_words(each)}." for each in year.windows]
    if any(each.days is not None for each in year.told):
        lines.append(SENTENCES["how"] if year.windows else SENTENCES["nothing"])
    return lines


def moved_words(window: MovedWindow) -> str:
    """'opens about 14 October instead of 5 October; is best about ...'."""
    return "; ".join(
        SENTENCES[edge].format(moved=day_words(moved), usual=day_words(usual))
        for edge, usual, moved in zip(EDGES, window.usual, window.moved, strict=True) if usual != moved
    )


def _told(told: NoteTold, place: dict[str, Any], reading: str, rules: SeenRules, us: bool) -> str:
    on = f"{day_words(day_number(told.on))} {told.on.year}"
    if told.days is None:
        return SENTENCES[str(told.idle)].format(on=on, note=NOTES[told.of])
    days, usual_day = days_words(nearest(abs(told.days))), day_words(told.usual or 0)
    most = [SENTENCES["most"].format(most=days_words(rules.most_days))] if told.is_most else []
    if told.of == "last_frost":
        return " ".join([SENTENCES["frost-late"], SENTENCES["frost-why"].format(on=on, days=days_words(told.usual_days), usual_day=usual_day), *most])
    code = "usual" if not nearest(told.days) else "late" if told.days > 0 else "early"
    half = HALVES["warming" if is_warming(place, told.on) else "cooling"]
    first = SENTENCES[code].format(half=half, days=days, source=SOURCES[told.of])
    if told.of == "green_up":
        return " ".join([first, SENTENCES["green-up-why"].format(on=on, usual_day=usual_day), *most])
    celsius = told.usual_c or 0.0
    usual = f"{nearest(celsius * 9 / 5 + 32):g} °F" if us else f"{nearest(celsius * 10) / 10:g} °C"
    return " ".join([first, SENTENCES["soil-why"].format(reading=reading, on=on, usual=usual, usual_day=usual_day), *most])


def days_words(days: float) -> str:
    """'1 day', '9 days'."""
    return f"{days:g} {'day' if days == 1 else 'days'}"


def seen_values(year: SeenYear, lines: list[str]) -> dict[str, Any]:
    """The notes and what moves, as plain values: days of a year MM-DD, dates YYYY-MM-DD, temperatures [°C]."""
    return {
        "version": VERSION,
        "notes": [
            {
                "note": each.of, "on": each.on.isoformat(), "days_late": None if each.days is None else round(each.days, 1), "moves_nothing": each.idle,
                "usual": None if each.usual is None else month_and_day(each.usual), "usual_soil_c": each.usual_c,
            }
            for each in year.told
        ],
        "windows": [
            {
                "kind": each.kind, "by": list(each.by),
                **{
                    name: {"usual": month_and_day(usual), "this_year": month_and_day(moved)}
                    for name, usual, moved in zip(("from", "best", "to"), each.usual, each.moved, strict=True)
                },
            }
            for each in year.windows
        ],
        "said": lines,
    }
