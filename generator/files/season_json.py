"""A computed year as plain values, in the shape of the contract."""

from typing import Any

from generator.season.calendar_days import month_and_day, week_days
from generator.season.events import events
from generator.season.reasons import Day, NumberSaid, Reason, numbers
from generator.season.year import SeasonYear
from generator.words.reason_text import text


def as_json(season: SeasonYear) -> dict[str, Any]:
    """The year as the contract of `swardbook season --json` has it, with the figures rounded for reading.

    reference_evapotranspiration_method: "penman-monteith" or "hargreaves-samani", and what it assumed. weeks: 52 dicts.
    windows: per kind a list of {from, best, to, preferred_from, preferred_to (MM-DD), why, reasons, because, main, edges}; `from` after `to` crosses New Year.
    reasons: in words; because: the same as codes, each with its numbers and their units (a day as MM-DD). edges:
    for `from` and `to` the rules that set it and whether it is undecided, with its earliest and latest day if so.
    why_none: per kind without a window, the reason; undecided: those of them that half a printed degree would change.
    events: per event {from, to (null where it does not happen), why}.
    """
    method = season.weather.evapotranspiration_method
    # Whole degrees stay whole: a decimal would claim what was not measured.
    digits = 0 if season.whole_degrees else 1
    return {
        "reference_evapotranspiration_method": method.id,
        "reference_evapotranspiration_assumed": list(method.assumed),
        "weeks": [
            {
                "week": week.week,
                "from": week.starts,
                "mean_temperature_c": round(week.mean_temperature_c, digits),
                "growth_potential": round(week.growth_potential, 3),
                "growth_share": round(week.growth_share, 3),
                "growth": week.growth_class,
                "frost_probability": round(week.frost_probability, 3),
                "reference_evapotranspiration_mm": round(week.reference_evapotranspiration_mm, 1),
                "rain_mm": round(week.rain_mm, 1),
                "water_need_mm": round(week.water_need_mm, 1),
                "soil_temperature_c": round(week.soil_temperature_c, digits),
                "growing_degree_days_c": round(season.degree_days[week_days(week.week - 1)[-1]]),
            }
            for week in season.weeks
        ],
        "windows": {
            kind: [
                {
                    "from": month_and_day(window.first),
                    "best": month_and_day(window.best),
                    "to": month_and_day(window.last),
                    "preferred_from": month_and_day(window.preferred.first),
                    "preferred_to": month_and_day(window.preferred.last),
                    "why": text(window.why),
                    "reasons": {
                        "from": _said(window.why_first), "best": text(window.preferred.why), "to": _said(window.why_last), "notes": _said(window.notes),
                    },
                    "because": {
                        "from": _data(window.why_first), "best": _data((window.preferred.why,)), "to": _data(window.why_last),
                        "notes": _data(window.notes),
                    },
                    "main": window.is_main,
                    "edges": {
                        "from": _edge(window.limited_by[0], window.undecided_first),
                        "to": _edge(window.limited_by[1], window.undecided_last),
                    },
                }
                for window in found.windows
            ]
            for kind, found in season.windows.items()
        },
        "why_none": {kind: text(found.why_none) for kind, found in season.windows.items() if found.why_none},
        "undecided": [kind for kind, found in season.windows.items() if found.undecided],
        "events": {
            name: {"from": _day(event.first), "to": _day(event.last), "why": text(event.why)} for name, event in events(season).items()
        },
    }


def _said(reasons: tuple[Reason, ...]) -> list[str]:
    return [text(each) for each in reasons]


def _data(reasons: tuple[Reason, ...]) -> list[dict[str, Any]]:
    return [{"code": each.code, "numbers": {name: _number(value) for name, value in numbers(each)}} for each in reasons]


def _number(value: NumberSaid | Day) -> dict[str, Any] | str:
    if isinstance(value, Day):
        return month_and_day(value.number)
    return {"value": float(f"{value.value:.6g}"), "unit": value.unit}


def _day(day: int | None) -> str | None:
    return None if day is None else month_and_day(day)


def _edge(rules: tuple[str, ...], undecided: tuple[int, int] | None) -> dict[str, Any]:
    edge: dict[str, Any] = {"rules": list(rules), "undecided": undecided is not None}
    if undecided is not None:
        edge |= {"earliest": month_and_day(undecided[0]), "latest": month_and_day(undecided[1])}
    return edge
