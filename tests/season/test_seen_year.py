"""A keeper's own notes: what a reading on a known curve says, on both halves of the year and of the world, and what it leaves alone."""

from datetime import date, timedelta
from math import pi, sin
from typing import Any

import pytest

from generator.formula import check, to_javascript
from generator.formula.unit_check import ListOf
from generator.season.calendar_days import DAYS
from generator.season.climate.climate import Soil
from generator.season.engine_rules import SeenRules
from generator.season.equations.seen_equations import SEEN_EQUATIONS
from generator.season.normals.record_normals import day_number
from generator.season.seen.seen_place import seen_place
from generator.season.seen.seen_year import SeenNotes, SeenYear, seen_year
from generator.units import unit
from tests.our_book import seasons

RULES, SOIL = SeenRules(most_days=30, fade_days=30, least_change_k=0.35), Soil(0.1, 5e-7)
MEAN_C, HALF_SWING_K = 15.0, 8.0


def curve(day: float, coldest: int) -> float:
    """A year's wave in closed form [°C], coldest on a day."""
    return MEAN_C - HALF_SWING_K * sin(2 * pi * (day - coldest) / DAYS + pi / 2)


def made_up(coldest: int, windows: list[list[Any]] | None = None, last_frost: int | None = None, green_up: int | None = None) -> dict[str, Any]:
    """A place whose soil follows that wave, finely enough to read it to a thousandth of a day."""
    soil = [100 * curve(day, coldest) for day in range(DAYS)]
    site = {"green_up": green_up, "last_frost": last_frost, "windows": {"renovation": windows or []}}
    return {"soil": soil, "coldest": coldest, "hottest": soil.index(max(soil)), "offsets": {"open": 0}, "grasses": {"couch": {"open": site}}}


def told(place: dict[str, Any], notes: SeenNotes, today: date | None = None) -> SeenYear:
    on = max(each for each in (notes.soil_on, notes.green_up_on, notes.last_frost_on) if each)
    return seen_year(place, "couch", "open", notes, today or on, RULES, SOIL)


# North: coldest in January. South: in July.
@pytest.mark.parametrize("coldest", [14, 200], ids=["north", "south"])
@pytest.mark.parametrize("days_on", [60, 90, 120, 240, 270, 300], ids=lambda days: f"{days} days after the coldest")
@pytest.mark.parametrize("late", [-12, -1, 0, 1, 9, 20])
def test_soil_that_runs_so_many_days_late_says_so_many_days(coldest: int, days_on: int, late: int) -> None:
    on = date(2025, 1, 1) + timedelta(coldest + days_on)
    found = told(made_up(coldest), SeenNotes(curve(coldest + days_on - late, coldest), None, on)).told[0]
    # Straight lines between days stand for the wave: its curvature over a day is some ten thousandths of a day.
    assert found.days == pytest.approx(late, abs=0.01)


@pytest.mark.parametrize("coldest", [14, 200])
def test_a_reading_of_the_usual_moves_nothing(coldest: int) -> None:
    first = (coldest + 100) % DAYS
    place = made_up(coldest, [[first, (first + 10) % DAYS, (first + 60) % DAYS, "w", "w", 14, 14]])
    on = date(2025, 1, 1) + timedelta(coldest + 90)
    assert told(place, SeenNotes(curve(coldest + 90, coldest), None, on)).windows == ()


def test_deeper_soil_lags_by_the_wave_of_the_year() -> None:
    """Carslaw and Jaeger: a wave of the period P is delayed by z sqrt(P / (4 pi D)); 100 mm deeper at 5e-7 m²/s, 2.6 days."""
    place, on = made_up(200), date(2025, 10, 8)
    shallow, deep = (told(place, SeenNotes(15.0, depth, on)).told[0].days for depth in (0.1, 0.2))
    lag = 0.1 * (365 * 86400 / (4 * pi * 5e-7)) ** 0.5 / 86400
    assert shallow is not None and deep is not None
    assert shallow - deep == pytest.approx(lag, abs=1e-9) and 2.5 < lag < 2.7


def test_an_edge_moves_less_the_further_off_it_is_and_only_if_warmth_sets_it() -> None:
    """e to the power of -days/30: 20 days late are 20 on the day, 14 ten days on (20 e^-1/3 = 14.3), 7 thirty days on."""
    on = date(2025, 9, 28)
    seen = day_number(on)
    windows = [[(seen + ahead) % DAYS, (seen + ahead + 5) % DAYS, (seen + ahead + 90) % DAYS, by, "", 30, 30] for ahead in (0, 10, 30) for by in ("w", "")]
    found = told(made_up(200, windows), SeenNotes(curve(seen - 20, 200), None, on))
    assert [(each.moved[0] - each.usual[0]) % DAYS for each in found.windows] == [20, 14, 7]


def test_other_rules_leave_no_more_room() -> None:
    on = date(2025, 9, 28)
    seen = day_number(on)
    found = told(made_up(200, [[seen, seen + 20, seen + 90, "w", "", 4, 0]]), SeenNotes(curve(seen + 15, 200), None, on))
    assert found.windows[0].moved[0] - found.windows[0].usual[0] == -4


def test_a_frost_after_the_usual_last_one_pushes_what_waits_for_it_and_an_earlier_one_says_nothing() -> None:
    windows = [[310, 320, 30, "f", "w", 0, 0], [310, 320, 30, "w", "w", 0, 0]]
    place = made_up(200, windows, last_frost=290)
    late = told(place, SeenNotes(last_frost_on=date(2025, 10, 28)))
    # Ten days late (28 October is day 300), ten days ahead of the edge: 10 e^-1/3 = 7.2.
    assert [(each.usual[0], each.moved[0]) for each in late.windows] == [(310, 317)]
    # Never before the morning after it.
    assert told(place, SeenNotes(last_frost_on=date(2025, 12, 11))).windows[0].moved[0] == 345
    early = told(place, SeenNotes(last_frost_on=date(2025, 9, 28)))
    assert early.windows == () and early.told[0].idle == "not_late"


def test_last_years_notes_and_an_older_note_move_nothing() -> None:
    seen = day_number(date(2025, 9, 28))
    place = made_up(200, [[seen + 5, seen + 9, seen + 90, "w", "w", 14, 14]], green_up=seen - 8)
    notes = SeenNotes(12.0, None, date(2025, 9, 28))
    assert told(place, notes).windows
    gone = told(place, notes, date(2026, 9, 28))
    assert gone.windows == () and gone.told[0].idle == "over"
    # Spring's note says nothing of the autumn that follows.
    assert told(place, notes, date(2026, 3, 1)).windows == ()
    both = told(place, SeenNotes(12.0, None, date(2025, 9, 28), date(2025, 10, 1)))
    assert [(each.of, each.idle) for each in both.told] == [("soil", "older"), ("green_up", None)]
    assert both.told[1].days == pytest.approx(11)  # Green-up on day 273, usually on day 262.


def test_soil_that_stands_still_says_nothing() -> None:
    assert told(made_up(200), SeenNotes(9.0, None, date(2025, 7, 22))).told[0].idle == "still"


@pytest.mark.parametrize("place", ["canberra", "atlanta", "darwin", "sydney"])
def test_no_window_of_the_book_turns_over(place: str) -> None:
    """Whatever is read, a window opens before it closes, and its best day lies in it."""
    data, rules = seen_place(seasons(), place), seasons().rules
    for grass in data["grasses"]:
        for day in range(0, 365, 45):
            for reading in (-10.0, 12.0, 45.0):
                on = date(2025, 1, 1) + timedelta(day)
                for each in seen_year(data, grass, "open", SeenNotes(reading, None, on, on, on), on, rules.seen, rules.soil).windows:
                    first, best, last = ((number - each.usual[0] + 60) % DAYS for number in each.moved)
                    assert first <= best <= last, (place, grass, on, reading, each)
                    assert abs(first - 60) <= 21 or "last_frost" in each.by


@pytest.mark.parametrize("equation", SEEN_EQUATIONS.values(), ids=lambda equation: equation.id)
def test_units_agree_and_the_browser_gets_the_same_text(equation: Any) -> None:
    names: dict[str, Any] = {name: unit(spelling) for name, spelling in equation.inputs.items()}
    names |= {name: unit(constant.unit) for name, constant in equation.constants.items()}
    names |= {name: ListOf(unit(spelling)) for name, spelling in equation.lists.items()}
    check(equation.formula, names, unit(equation.result_unit))
    assert set(equation.formula.names) == set(names)
    assert to_javascript(equation.formula, equation.constants_si)
