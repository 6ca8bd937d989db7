"""This year by a keeper's own notes: how many days early or late the season runs, and which days that moves.

Twin: seen.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any, Literal

from generator.season.calendar_days import DAYS
from generator.season.climate.climate import Soil
from generator.season.engine_rules import SeenRules
from generator.season.equations.seen_equations import SEEN_EQUATIONS
from generator.season.growth import ZERO_CELSIUS_K
from generator.season.normals.record_normals import day_number
from generator.season.seen.seen_place import BY_FROST, BY_WARMTH, HUNDREDTHS

SECONDS_AN_HOUR = 3600.0
A_WEEK = 7
Of = Literal["soil", "green_up", "last_frost"]
# Why a note moves nothing: it is of a half-year that is over; soil hardly changes just now; the grass has no green-up; a frost was no later than usual;
# another note is newer.
Idle = Literal["over", "still", "no_green_up", "not_late", "older"]


@dataclass(frozen=True)
class SeenNotes:
    """What a keeper saw. soil_c at soil_depth_m [m]; None where it was not seen."""

    soil_c: float | None = None
    soil_depth_m: float | None = None
    soil_on: date | None = None
    green_up_on: date | None = None
    last_frost_on: date | None = None


@dataclass(frozen=True)
class NoteTold:
    """What one note says. days: the season runs so many days late, early below 0; None where it says nothing, and idle why. usual: the day on which it is usual,
    in days of the half-year and so of any size; usual_c: usual soil on the day of the reading [°C]. is_most: the season is taken to run no further.
    usual_days: between the day and the usual one, whatever is taken of it."""

    of: Of
    on: date
    days: float | None
    idle: Idle | None = None
    usual: int | None = None
    usual_c: float | None = None
    is_most: bool = False
    usual_days: int = 0


@dataclass(frozen=True)
class MovedWindow:
    """A window with its days as usual and as moved, numbers from 0; by: the notes that moved them."""

    kind: str
    usual: tuple[int, int, int]
    moved: tuple[int, int, int]
    by: tuple[Of, ...]


@dataclass(frozen=True)
class SeenYear:
    told: tuple[NoteTold, ...]
    windows: tuple[MovedWindow, ...]


def seen_year(place: Mapping[str, Any], grass: str, site: str, notes: SeenNotes, today: date, rules: SeenRules, soil: Soil) -> SeenYear:
    """What the notes say on a day. place: as `seen_place` gives it; rules, soil: those of the engine."""
    of = place["grasses"][grass][site]
    told = [each for each in (_soil(place, site, notes, rules, soil), _green_up(place, of, notes, rules)) if each]
    told = [NoteTold(each.of, each.on, None, "over") if _over(place, each.on, today) else each for each in told]
    saying = [each for each in told if each.days is not None]
    newest = max(saying, key=lambda each: each.on, default=None)
    told = [each if each is newest or each.days is None else NoteTold(each.of, each.on, None, "older", each.usual, each.usual_c) for each in told]
    frost = _frost(place, of, notes, rules, today)
    if frost:
        told.append(frost)
    moved = [
        _moved(place, kind, edges, newest, frost if frost and frost.days is not None else None, rules)
        for kind, windows in of["windows"].items() for edges in windows
    ]
    return SeenYear(tuple(told), tuple(each for each in moved if each.moved != each.usual))


def _half(place: Mapping[str, Any], day: int) -> tuple[int, int, int]:
    """The half-year of a day: its first day, its length, and 1 where soil warms, -1 where it cools."""
    cold, hot = place["coldest"], place["hottest"]
    warming = (hot - cold) % DAYS
    return (cold, warming, 1) if (day - cold) % DAYS < warming else (hot, DAYS - warming, -1)


def is_warming(place: Mapping[str, Any], on: date) -> bool:
    """Whether usual soil warms on a day."""
    return _half(place, day_number(on))[2] > 0


def _over(place: Mapping[str, Any], on: date, today: date) -> bool:
    first, length, _ = _half(place, day_number(on))
    return (today - on).days > length - (day_number(on) - first) % DAYS or today < on


def _soil(place: Mapping[str, Any], site: str, notes: SeenNotes, rules: SeenRules, soil: Soil) -> NoteTold | None:
    if notes.soil_c is None or notes.soil_on is None:
        return None
    on = day_number(notes.soil_on)
    first, length, rising = _half(place, on)
    curve = [(place["soil"][(first + day) % DAYS] + place["offsets"][site]) / HUNDREDTHS for day in range(length + 1)]
    seen = (on - first) % DAYS
    usual_c = curve[seen]
    # The week about it, within the half-year: at its ends soil stands still.
    begin = min(max(seen - A_WEEK // 2, 0), length - A_WEEK)
    if (curve[begin + A_WEEK] - curve[begin]) * rising < rules.least_change_k:
        return NoteTold("soil", notes.soil_on, None, "still", usual_c=usual_c)
    depth = soil.depth_m if notes.soil_depth_m is None else notes.soil_depth_m
    lag = SEEN_EQUATIONS["seen-depth-lag"].evaluate(depth=depth, told_depth=soil.depth_m, diffusivity=soil.diffusivity_m2_per_s)
    kelvins = [value + ZERO_CELSIUS_K for value in curve]
    usual = lag + SEEN_EQUATIONS["seen-soil-day"].evaluate(
        reading=notes.soil_c + ZERO_CELSIUS_K, rising=rising, soil=kelvins[:-1], next_soil=kelvins[1:],
    )
    days = _later(seen, usual, rules)
    return NoteTold("soil", notes.soil_on, days, None, (first + round(usual)) % DAYS, usual_c, abs(days) >= rules.most_days)


def _green_up(place: Mapping[str, Any], of: Mapping[str, Any], notes: SeenNotes, rules: SeenRules) -> NoteTold | None:
    if notes.green_up_on is None:
        return None
    if of["green_up"] is None:
        return NoteTold("green_up", notes.green_up_on, None, "no_green_up")
    return _dated("green_up", notes.green_up_on, of["green_up"], rules)


def _dated(of: Of, on: date, usual: int, rules: SeenRules) -> NoteTold:
    """A day that was seen against its usual one, the nearest way round the year."""
    later = (day_number(on) - usual + DAYS // 2) % DAYS - DAYS // 2
    days = _later(later, 0, rules)
    return NoteTold(of, on, days, None, usual, None, abs(days) >= rules.most_days, later)


def _frost(place: Mapping[str, Any], of: Mapping[str, Any], notes: SeenNotes, rules: SeenRules, today: date) -> NoteTold | None:
    """A frost after the usual last one moves what waits for the last frost; one before it, or none, says nothing."""
    on, usual = notes.last_frost_on, of["last_frost"]
    if on is None:
        return None
    if _over(place, on, today):
        return NoteTold("last_frost", on, None, "over")
    if _half(place, day_number(on))[2] < 0:
        return NoteTold("last_frost", on, None, "not_late", usual)
    found = _dated("last_frost", on, day_number(on) if usual is None else usual, rules)
    return found if found.days and found.days > 0 else NoteTold("last_frost", on, None, "not_late", usual)


def _later(seen: float, usual: float, rules: SeenRules) -> float:
    return SEEN_EQUATIONS["seen-days-later"].evaluate(seen=seen, usual=usual, most=rules.most_days)


def _moved(place: Mapping[str, Any], kind: str, edges: list[Any], warmth: NoteTold | None, frost: NoteTold | None, rules: SeenRules) -> MovedWindow:
    first, best, last, opens, closes, room_earlier, room_later = edges

    def by(note: NoteTold | None, day: int, earlier: float, later: float) -> int:
        """Whole days that a note moves a day of its own half-year by."""
        if note is None or note.days is None:
            return 0
        seen = day_number(note.on)
        begin, length, _ = _half(place, seen)
        at = (day - begin) % DAYS
        if at >= length:
            return 0
        ahead = at - (seen - begin) % DAYS
        return int(SEEN_EQUATIONS["seen-move"].evaluate(days=note.days, ahead=ahead, fade=rules.fade_days, earlier=earlier, later=later))

    most = rules.most_days
    warm = by(warmth, first, 0 if BY_FROST in opens else room_earlier, most) if BY_WARMTH in opens else 0
    cold = by(frost, first, 0, most) if BY_FROST in opens else 0
    if cold and frost:
        cold = max(cold, 1 + (day_number(frost.on) - first + DAYS // 2) % DAYS - DAYS // 2)  # Never before the morning after it.
    opening = max(warm, cold) if BY_FROST in opens else warm
    closing = by(warmth, last, most, 0 if BY_FROST in closes else room_later) if BY_WARMTH in closes else 0
    length = (last - first) % DAYS
    # The best day waits for warmth wherever the opening hangs on the season; no day passes another.
    middle = by(warmth, best, most, most) if opens else 0
    begins = min(opening, length)
    ends = max(length + closing, begins)
    finest = min(max((best - first) % DAYS + middle, begins), ends)
    used = tuple(of for of, moves in (("soil", warm or closing or middle), ("last_frost", cold and cold >= warm)) if moves)
    return MovedWindow(
        kind, (first, best, last), ((first + begins) % DAYS, (first + finest) % DAYS, (first + ends) % DAYS),
        tuple(warmth.of if of == "soil" and warmth else of for of in used),  # type: ignore[misc]  # Names of notes.
    )
