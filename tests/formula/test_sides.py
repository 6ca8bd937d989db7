"""Whether the sides of a piece of lawn cross, and the mean of the driest half: both sides of the page against oracles of the test's own."""

import json
import random
from fractions import Fraction
from itertools import combinations

import pytest

from generator.formula import parse, to_javascript
from tests.formula.browser_side import run_in_browser

SIDES_CROSS = parse("sides_cross(corners)")
LOWEST_HALF = parse("lowest_half_mean(cans)")


def shared(one, other):
    """The share of the first side, from 0 to 1, at which two straight sides have a point in common: its least and greatest, or None.

    Exact: the two lines solved for where they meet (Cramer's rule), or one laid along the other.
    """
    (ax, ay), (bx, by) = one
    (cx, cy), (dx, dy) = other
    across = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    if across:
        along = Fraction((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx), across)
        back = Fraction((cx - ax) * (by - ay) - (cy - ay) * (bx - ax), across)
        return (along, along) if 0 <= along <= 1 and 0 <= back <= 1 else None
    if (cx - ax) * (by - ay) != (cy - ay) * (bx - ax):
        return None
    length = (bx - ax) ** 2 + (by - ay) ** 2
    low, high = sorted(Fraction((x - ax) * (bx - ax) + (y - ay) * (by - ay), length) for x, y in other)
    low, high = max(low, Fraction(0)), min(high, Fraction(1))
    return (low, high) if low <= high else None


def crosses(corners) -> bool:
    ring = [corner for place, corner in enumerate(corners) if corner != corners[place - 1]]
    sides = [(corner, ring[(place + 1) % len(ring)]) for place, corner in enumerate(ring)]
    if len(sides) < 3:
        return False
    for (place, one), (further, other) in combinations(enumerate(sides), 2):
        common = shared(one, other)
        neighbours = further - place == 1 or further - place == len(sides) - 1
        if common and (common[0] != common[1] if neighbours else True):
            return True
    return False


def pieces(count: int):
    """Corners on a grid, some drawn by lot and some round a middle, which seldom cross; now and then the first again at the end."""
    chance = random.Random(11)
    for _ in range(count):
        corners = [(chance.randint(0, 6), chance.randint(0, 6)) for _ in range(chance.randint(1, 7))]
        if chance.random() < 0.5:
            middle = (Fraction(31, 10), Fraction(29, 10))
            corners = sorted(set(corners), key=lambda corner: around(corner[0] - middle[0], corner[1] - middle[1]))
        yield corners + corners[:1] if chance.random() < 0.2 else corners


def around(x, y):
    """Something that grows as a point goes round the middle once."""
    return (0, y / (abs(x) + abs(y))) if x > 0 else (1, -y / (abs(x) + abs(y)))


PIECES = list(pieces(3000))


def as_typed(corners, unit, from_zero):
    return [float((value + from_zero) * unit) for corner in corners for value in corner]


@pytest.mark.parametrize(("unit", "from_zero"), [(1.0, 0), (0.3048, 0), (0.3048, 1000.25), (0.3048, -7)], ids=["m", "ft", "far off", "below zero"])
def test_sides_that_meet_are_seen(unit, from_zero):
    expected = [crosses(corners) for corners in PIECES]
    assert 0.2 < sum(expected) / len(expected) < 0.8
    for corners, cross in zip(PIECES, expected, strict=True):
        assert SIDES_CROSS.evaluate({"corners": as_typed(corners, unit, from_zero)}) == cross, corners


@pytest.mark.parametrize(
    ("corners", "cross"),
    [
        ("0 0 12 0 12 8 0 8", 0),  # A rectangle,
        ("0 0 12 0 12 8 0 8 0 0", 0),  # with its first corner given again,
        ("0 0 6 0 12 0 12 8 0 8", 0),  # with a corner in the middle of a side,
        ("0 0 0 8 12 8 12 0", 0),  # the other way round,
        ("0 0 12 8 12 0 0 8", 1),  # and with two corners in the wrong order.
        ("0 0 12 0 6 0 12 8 0 8", 1),  # A corner passed by and gone back to.
        ("0 0 6 0 12 0", 1),  # No lawn: three corners in a line.
        ("0 0 10 0 10 4 3 4 3 9 0 9", 0),  # An L,
        ("0 0 10 0 3 4 10 4 3 9 0 9", 0),  # another lawn of the same corners,
        ("0 0 10 0 10 4 0 9 3 9 3 4", 1),  # and one that cannot be walked.
        ("5 5", 0), ("0 0 3 0", 0), ("1 1 1 1 1 1", 0),
    ],
)  # fmt: skip
def test_lawns_that_can_be_drawn_by_hand(corners, cross):
    assert SIDES_CROSS.evaluate({"corners": [float(each) for each in corners.split()]}) == cross


def cans(count: int):
    chance = random.Random(12)
    return [[chance.randint(0, 400) / 8 for _ in range(chance.randint(1, 60))] for _ in range(count)]


def test_the_driest_half_is_what_no_other_half_is_below():
    """Whichever cans are taken, as many as half of them (a half can counts as one), none have a smaller mean; in eighths sums are exact."""
    for readings in cans(300):
        half = (len(readings) + 1) // 2
        found = LOWEST_HALF.evaluate({"cans": readings})
        left = list(readings)
        driest = [left.pop(left.index(min(left))) for _ in range(half)]
        assert found == float(Fraction(sum(map(Fraction, driest)), half))
        assert found <= sum(readings) / len(readings) and (not left or max(driest) <= min(left))


def test_the_browser_says_the_same(browser, tmp_path):
    corners = [as_typed(each, 0.3048, 3) for each in PIECES]
    readings = cans(300)
    script = (
        f"window.outcome = [{json.dumps(corners)}.map(function (one) {{ return Swardbook.formula.answer({to_javascript(SIDES_CROSS)}, {{ corners: one }}); }}),"
        f" {json.dumps(readings)}.map(function (one) {{ return Swardbook.formula.answer({to_javascript(LOWEST_HALF)}, {{ cans: one }}); }})];"
    )
    crossing, halves = run_in_browser(browser, tmp_path, script)
    assert crossing == [SIDES_CROSS.evaluate({"corners": each}) for each in corners]
    assert halves == [LOWEST_HALF.evaluate({"cans": each}) for each in readings]
