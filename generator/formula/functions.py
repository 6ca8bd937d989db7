"""What the language's functions do: plain double precision, ties away from zero.

Twin: formula.
"""

import math
from collections.abc import Callable, Iterable, Sequence

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


def _polygon_area(corners: Sequence[float]) -> float:
    """Area inside corners in their order, each as two readings, along and across: the surveyor's cross products.

    They are taken from the first corner, so that a far-off zero costs no digits.
    """
    if len(corners) % 2:
        raise RefusedArgument("corners-unpaired")
    along = [each - corners[0] for each in corners[0::2]]
    across = [each - corners[1] for each in corners[1::2]]
    twice = 0.0
    for corner in range(1, len(along) - 1):
        twice += along[corner] * across[corner + 1] - along[corner + 1] * across[corner]
    return abs(twice) / 2


MANY_NUMBERS: dict[str, Callable[[Sequence[float]], float]] = {
    "min": min,
    "max": max,
    "sum": plain_sum,
    "mean": _mean,
    "count": lambda readings: float(len(readings)),
    "lowest_quarter_mean": _lowest_quarter_mean,
    "mean_deviation": _mean_deviation,
    "trapezoidal_sum": _trapezoidal_sum,
    "simpson_sum": _simpson_sum,
    "polygon_area": _polygon_area,
}


