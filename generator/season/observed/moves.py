"""What moves this year: openings, endings and turns of the season, against a usual year and within the spread of years."""

from collections.abc import Iterator
from dataclasses import dataclass

from generator.season.events import events
from generator.season.observed.this_year import ThisYear, move
from generator.season.windows.every_kind import KINDS
from generator.season.year import SeasonYear

# Turns of the year that warmth sets, by the names of events.
TURNS = ("green_up", "spring_transition", "slow_down", "last_frost_tenth", "last_ground_frost_tenth", "first_ground_frost_tenth", "first_frost_tenth")


@dataclass(frozen=True)
class Move:
    """One day of the year, numbers from 0. later: days against the usual one. earliest, latest: with the days ahead a standard deviation of years
    warmer or cooler than usual; None where the place has no spread, or the day is past. is_past: it was measured."""

    day: int
    usual: int
    later: int
    is_past: bool
    earliest: int | None
    latest: int | None


def moves(this: ThisYear) -> dict[str, Move]:
    """Every day that this year has near a usual one, by name: 'renovation opens', 'renovation closes', 'green_up'."""
    usual, cooler, warmer = (None if each is None else dict(_days(each)) for each in (this.usual, this.cooler, this.warmer))
    found: dict[str, Move] = {}
    for name, day in _days(this.season):
        before = (usual or {}).get(name)
        later = None if before is None else move(day, (before,))
        if before is None or later is None:
            continue
        past = this.circle.is_measured(day)
        ways = [] if past else [
            near for each in (cooler, warmer) if each and name in each and (near := move(each[name], (day,))) is not None
        ]
        band = (day + min(0, *ways), day + max(0, *ways)) if ways else (None, None)
        found[name] = Move(day, before, later, past, *band)
    return found


def _days(season: SeasonYear) -> Iterator[tuple[str, int]]:
    for kind in KINDS:
        for window in season.windows[kind].windows:
            if window.is_main and window.days < 365:
                yield f"{kind} opens", window.first
                yield f"{kind} closes", window.last
    told = events(season)
    for name in TURNS:
        if (day := told[name].first) is not None:
            yield name, day
