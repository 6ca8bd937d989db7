"""A number of our own data that is mistyped is told at its place: a thousand times too large, with the other sign, or beyond all sense.

By lot, and all of them in `make soak`. What may stand there all the same is listed with its reason.
"""

import re
from collections.abc import Callable
from random import Random

import pytest

from tests.checks.mistyped import Number, numbers, our_partial_book, places_told

WRONG: dict[str, Callable[[float], float]] = {
    "a thousand times as large": lambda value: value * 1000, "with the other sign": lambda value: -value, "beyond all sense": lambda value: value * 0 + 10**12,
}  # fmt: skip
BY_LOT = 2  # Of each kind of file.


Holds = Callable[[Number, str], bool]


def least(limit: float) -> Holds:
    return lambda number, slip: abs(number.value) <= limit


def any_of_them(number: Number, slip: str) -> bool:
    return True


def without_a_limit(number: Number, slip: str) -> bool:
    """Whether nothing says how large, or how small, the start of an input may be."""
    limits = ("above", "at_least", "usual_low") if "sign" in slip else ("at_most", "usual_high")
    asked = our_partial_book().trees[number.kind, number.id].children["inputs"].children[number.path[1]]
    below_nothing = any(asked.children[limit].value < 0 for limit in limits if limit in asked.children)  # So may the start be, then.
    return below_nothing or not any(limit in asked.children for limit in limits)


# The name of a number, which slips it may hold untold, up to which size, and why.
MAY_BE: tuple[tuple[str, tuple[str, ...], Holds, str], ...] = (
    (r"places\..*\.elevation_m", ("thousand",), least(2.6), "a plain at two metres and a plateau at two thousand are both lived on"),
    (r"places\..*\.rain_mm\.\d+", ("thousand",), least(1.2), "a dry month with a millimetre may be a wet one with a metre"),
    (r"places\..*\.pan_evaporation_mm_per_day\.\d+", ("thousand",), least(0.02), "as of rain"),
    (r"places\..*\.mean_m..imum_c\.\d+", ("sign",), least(5), "a month may lie on either side of freezing"),
    (r"places\..*\.lowest_minimum_c\.\d+", ("sign",), least(9), "so may the coldest night of a month"),
    (r"places\..*\.longitude_deg", ("sign",), least(9), "Greenwich runs through Britain"),
    (r"countries\..*\.(south|north|west|east)", ("sign",), any_of_them, "a part of a country is told of by the places that lie in it"),
    (r"practice\..*\.pack_mass_kg", ("thousand",), least(2), "seed is sold by the kilogram and sand by the tonne"),
    (r"(renovations|inspection)\..*\.(day|until_day)", ("sign",), any_of_them, "a step may come before the day or after it"),
    (r"season-groups\..*\.(maximum|minimum)_offset\.use", ("sign",), any_of_them, "a site may be warmer or colder than open ground"),
    (r"inspection\..*\.(at_least|at_most)", ("thousand", "sign"), any_of_them, "how much of an answer a sheet lets in is its own affair"),
    (r"calculators\..*\.(at_least|at_most|above|usual_low|usual_high)", ("thousand", "sign", "sense"), any_of_them,
     "what a form lets in or asks about is its own affair, as long as its start is within"),
    (r"calculators\..*\.(default|us_default)(\.\d+)?", ("thousand", "sign", "sense"), without_a_limit,
     "a start that no limit and no usual range is given for: a coordinate, a reading, a price"),
    (r"calculators\..*\.within", ("thousand", "sense"), any_of_them, "an answer that is held loosely is still held"),
    (r"calculators\..*\.constants\..*\.value", ("thousand", "sign"), any_of_them, "a formula's own constant is held by its worked examples, or is a plain number"),
)  # fmt: skip


def may_be(number: Number, slip: str) -> bool:
    return any(re.fullmatch(name, number.name) and any(word in slip for word in slips) and holds(number, slip) for name, slips, holds, _ in MAY_BE)


def untold(asked: list[Number], slip: str) -> list[str]:
    wrong = WRONG[slip]
    return [
        f"{number.where} {number.name} {number.value:g} -> {wrong(number.value):g}" for number in asked
        if wrong(number.value) != number.value and not may_be(number, slip) and not number.beside & places_told(number, wrong(number.value))
    ]  # fmt: skip


def of_kind(kind: str) -> list[Number]:
    return [number for number in numbers() if number.kind == kind]


WITH_NUMBERS = ("grasses", "tasks", "places", "calculators", "holds", "renovations", "aftercare", "problems", "practice", "season-groups", "inspection", "sources")


@pytest.mark.parametrize("slip", WRONG)
def test_a_mistyped_number_is_told_at_its_place(slip: str) -> None:
    lot = Random(slip)
    for kind in WITH_NUMBERS:
        written = of_kind(kind)
        assert untold(lot.sample(written, min(BY_LOT, len(written))), slip) == []


@pytest.mark.soak
@pytest.mark.parametrize("slip", WRONG)
@pytest.mark.parametrize("kind", WITH_NUMBERS)
def test_every_mistyped_number_is_told_at_its_place(kind: str, slip: str) -> None:
    assert untold(of_kind(kind), slip) == []


def test_nothing_is_told_of_the_numbers_as_they_are() -> None:
    """Else a line that stands there anyway would pass for an answer."""
    for kind in WITH_NUMBERS:
        number = Random(kind).choice(of_kind(kind))
        assert places_told(number, number.value) == set(), number


def test_each_exception_is_of_a_number_that_there_is() -> None:
    names = [number.name for number in numbers()]
    for name, *_ in MAY_BE:
        assert any(re.fullmatch(name, each) for each in names), name
