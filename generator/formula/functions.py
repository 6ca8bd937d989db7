"""What the language's functions do: plain double precision, ties away from zero.

Twin: formula.
"""

import math
from collections.abc import Callable, Iterable, Sequence
from itertools import pairwise

from generator.formula.nodes import FormulaProblem

LARGEST = 1.7976931348623157e308
# ceil and floor take a number this near a whole one for that whole number: 4.000000000001
# packs are four. The slack grows with the number, as its rounding error does, to a limit.
SNAP = 1e-9
WIDEST_SNAP = 1e-3


class RefusedArgument(Exception):
    """A function's own problem code, before its place in the formula is known."""


def power(base: float, exponent: float, offset: int) -> float:
    """base ** exponent, or the problem that keeps it from being a number."""
    if base == 0 and exponent < 0:
        raise FormulaProblem("division-by-zero", offset)
    if base < 0 and exponent != math.floor(exponent):
        raise FormulaProblem("power-of-negative", offset)
    try:
        return math.pow(base, exponent)
    except OverflowError as error:
        raise FormulaProblem("too-large", offset) from error


def nearest(value: float) -> float:
    """The nearest whole number, halves away from zero."""
    below = math.floor(abs(value))
    whole = below + 1 if abs(value) - below >= 0.5 else below
    return float(-whole if value < 0 else whole)


def _snapped(value: float) -> float:
    """A whole number for a value within rounding error of one, else the value."""
    whole = nearest(value)
    slack = min(SNAP * max(1.0, abs(value)), WIDEST_SNAP)
    return whole if abs(value - whole) <= slack else value


def _root(value: float) -> float:
    if value < 0:
        raise RefusedArgument("negative-root")
    return math.sqrt(value)


def _logarithm(value: float) -> float:
    if value <= 0:
        raise RefusedArgument("log-of-zero-or-less")
    return math.log(value)


def _arc_cosine(value: float) -> float:
    if not -1 <= value <= 1:
        raise RefusedArgument("angle-outside")
    return math.acos(value)


ONE_NUMBER: dict[str, Callable[[float], float]] = {
    "ceil": lambda value: float(math.ceil(_snapped(value))),
    "floor": lambda value: float(math.floor(_snapped(value))),
    "round": nearest,
    "sqrt": _root,
    "exp": math.exp,
    "log": _logarithm,
    "abs": abs,
    "sin": math.sin,
    "cos": math.cos,
    "tan": math.tan,
    "acos": _arc_cosine,
}


def plain_sum(readings: Iterable[float]) -> float:
    """Numbers of one unit added one after another, as the browser adds them; 0.0 for none.

    Not the built-in sum, which compensates for rounding in newer Pythons. What no script adds up too takes math.fsum.
    """
    total = 0.0
    for reading in readings:
        total += reading
    return total


def _mean(readings: Sequence[float]) -> float:
    return plain_sum(readings) / len(readings)


def _lowest_quarter_mean(readings: Sequence[float]) -> float:
    """Mean of the lowest quarter; the count n/4 rounds half up (15 -> 4, 46 -> 12), at least 1."""
    lowest = max(1, (len(readings) + 2) // 4)
    return _mean(sorted(readings)[:lowest])


def _lowest_half_mean(readings: Sequence[float]) -> float:
    """Mean of the lowest half; the count n/2 rounds half up (15 -> 8)."""
    return _mean(sorted(readings)[: (len(readings) + 1) // 2])


def _mean_deviation(readings: Sequence[float]) -> float:
    middle = _mean(readings)
    return _mean([abs(reading - middle) for reading in readings])


def _trapezoidal_sum(readings: Sequence[float]) -> float:
    """Area under readings one step apart, straight between them: the two at the ends count half."""
    return plain_sum(readings) - (readings[0] + readings[-1]) / 2


def _simpson_sum(readings: Sequence[float]) -> float:
    """Area under readings one step apart by Simpson's rule: a parabola through each three.

    With an even number of readings one step is left over at the end; it is taken as straight.
    """
    whole = len(readings) - 1 if len(readings) % 2 else len(readings) - 2
    area = 0.0
    for start in range(0, whole, 2):
        area += (readings[start] + 4 * readings[start + 1] + readings[start + 2]) / 3
    return area if len(readings) % 2 else area + (readings[-2] + readings[-1]) / 2


_Corner = tuple[float, float]


def _from_first(corners: Sequence[float]) -> list[_Corner]:
    """Two readings each, along and across, as corners measured from the first, so that a far-off zero costs no digits."""
    if len(corners) % 2:
        raise RefusedArgument("corners-unpaired")
    return [(along - corners[0], across - corners[1]) for along, across in zip(corners[0::2], corners[1::2], strict=True)]


def _polygon_area(corners: Sequence[float]) -> float:
    """Area inside corners in their order, each as two readings, along and across: the surveyor's cross products."""
    points = _from_first(corners)
    twice = 0.0
    for (along, across), (next_along, next_across) in pairwise(points):
        twice += along * next_across - next_along * across
    return abs(twice) / 2


def _sides_cross(corners: Sequence[float]) -> float:
    """1.0 where two sides between corners in their order meet anywhere but at the corner between them, else 0.0.

    A corner that is given twice running, as the first again at the end, is one. Sides meet where they cross, touch, or lie on
    each other, by as little as SNAP of the whole.
    """
    points = _from_first(corners)
    ring = [point for point, before in zip(points, [points[-1], *points[:-1]], strict=True) if point != before]
    span = max((max(abs(along), abs(across)) for along, across in ring), default=0.0)
    sides = list(zip(ring, [*ring[1:], *ring[:1]], strict=True))
    if len(sides) < 3:
        return 0.0
    for later in range(1, len(sides)):
        for earlier in range(later):
            follow = later - earlier == 1
            if follow or later - earlier == len(sides) - 1:
                first, second = (earlier, later) if follow else (later, earlier)
                if _folds_back(*sides[first], sides[second][1], span):
                    return 1.0
            elif _meet(sides[earlier], sides[later], span):
                return 1.0
    return 0.0


def _turn(start: _Corner, end: _Corner, point: _Corner, span: float) -> int:
    """Whether a point lies to the left of a side (1), to its right (-1), or on its line (0)."""
    cross = (end[0] - start[0]) * (point[1] - start[1]) - (end[1] - start[1]) * (point[0] - start[0])
    slack = SNAP * span * span
    return 1 if cross > slack else -1 if cross < -slack else 0


def _folds_back(start: _Corner, middle: _Corner, end: _Corner, span: float) -> bool:
    ahead = (middle[0] - start[0]) * (end[0] - middle[0]) + (middle[1] - start[1]) * (end[1] - middle[1])
    return _turn(start, middle, end, span) == 0 and ahead < 0


def _meet(one: tuple[_Corner, _Corner], other: tuple[_Corner, _Corner], span: float) -> bool:
    ends = [(one, other[0]), (one, other[1]), (other, one[0]), (other, one[1])]
    turns = [_turn(*side, point, span) for side, point in ends]
    if turns[0] * turns[1] < 0 and turns[2] * turns[3] < 0:
        return True
    return any(turn == 0 and _beside(*side, point, span) for turn, (side, point) in zip(turns, ends, strict=True))


def _beside(start: _Corner, end: _Corner, point: _Corner, span: float) -> bool:
    """Whether a point on the line of a side lies between its ends."""
    slack = SNAP * span
    return all(min(start[axis], end[axis]) - slack <= point[axis] <= max(start[axis], end[axis]) + slack for axis in (0, 1))


MANY_NUMBERS: dict[str, Callable[[Sequence[float]], float]] = {
    "min": min,
    "max": max,
    "sum": plain_sum,
    "mean": _mean,
    "count": lambda readings: float(len(readings)),
    "lowest_quarter_mean": _lowest_quarter_mean,
    "lowest_half_mean": _lowest_half_mean,
    "mean_deviation": _mean_deviation,
    "trapezoidal_sum": _trapezoidal_sum,
    "simpson_sum": _simpson_sum,
    "polygon_area": _polygon_area,
    "sides_cross": _sides_cross,
}


