"""Where a function of one number meets a wanted value: a search over the whole possible range, then bisection.

Twin: root search.
"""

from collections.abc import Callable
from dataclasses import dataclass
from math import floor, inf
from typing import NamedTuple

Function = Callable[[float], float | None]
# A place that misses what is wanted, and on which side of it.
Side = tuple[float, int]


class Search(NamedTuple):
    """How a search goes, here and in the browser.

    same: two values this near, in parts of the wanted one, are one. narrow: a stretch narrower than this, in parts of where it lies,
    is a point. continuous: a leap smaller than this, in parts of the values about it, is no leap. pole: a function that runs off to
    this many times the values about it has no value there.
    """

    steps_a_decade: int = 16
    first_decade: int = -6
    last_decade: int = 9
    even_steps: int = 256
    halvings: int = 200
    thirds: int = 100
    same: float = 1e-12
    narrow: float = 1e-6
    continuous: float = 1e-9
    pole: float = 1e3


SEARCH = Search()


@dataclass(frozen=True)
class Meeting:
    """A stretch over which the wanted value is met, or the two sides of a leap over it.

    first, last: its ends; before, after: -1 below the wanted value, 1 above it, 0 where the range ends.
    kind: point, stretch or leap.
    """

    first: float
    last: float
    before: int
    after: int
    kind: str


def points(
    low: float | None, high: float | None, unit_size: float, zero: float = 0.0, low_open: bool = False, whole: bool = False
) -> list[float]:
    """Where to look, in order [SI]: close together near each end of the range, further apart away from it.

    low, high: ends of the range, None for an open one; low_open: the low end itself does not belong to it.
    unit_size: one of the unit people use; zero: where its zero lies. Whole numbers only where `whole`.

    Sixteen steps a decade, from a millionth of the unit to a thousand million of them; between two ends even steps too.
    """
    first, last = (SEARCH.steps_a_decade * decade for decade in (SEARCH.first_decade, SEARCH.last_decade))
    away = [unit_size * 10 ** (step / SEARCH.steps_a_decade) for step in range(first, last + 1)]
    found = set()
    if low is not None:
        found |= {low + each for each in away}
        if not low_open:
            found.add(low)
    if high is not None:
        found |= {high - each for each in away} | {high}
    if low is not None and high is not None:
        found |= {low + (high - low) * step / SEARCH.even_steps for step in range(1, SEARCH.even_steps)}
    if low is None and high is None:
        found |= {zero} | {zero + each for each in away} | {zero - each for each in away}
    if whole:
        found = {float(floor(each)) for each in found}
    return sorted(
        each for each in found
        if (low is None or each > low or (each == low and not low_open)) and (high is None or each <= high)
    )


def side_of(value: float | None, wanted: float) -> int | None:
    """-1 below what is wanted, 0 at it to twelve digits, 1 above, None for no value; both in any unit.
    """
    if value is None:
        return None
    return 0 if abs(value - wanted) <= SEARCH.same * abs(wanted) else -1 if value < wanted else 1


def with_extremes(function: Function, places: list[float]) -> list[float]:
    """The places, and those between them where the function is greatest and least, in any unit: a peak may lie between two.

    Source: ternary search, as in any textbook of numerical analysis; it holds for one peak between two neighbours.
    """
    known = [(place, value) for place in places if (value := function(place)) is not None]
    found = set(places)
    for sign in (1, -1):
        at = max(range(len(known)), key=lambda index: sign * known[index][1], default=0)
        if 0 < at < len(known) - 1:
            found.add(_extreme(function, known[at - 1][0], known[at + 1][0], sign))
    return sorted(found)


def _extreme(function: Function, low: float, high: float, sign: int) -> float:
    def height(place: float) -> float:
        value = function(place)
        return -inf if value is None else sign * value

    for _ in range(SEARCH.thirds):
        third = (high - low) / 3
        if height(low + third) < height(high - third):
            low += third
        else:
            high -= third
    return (low + high) / 2


def meetings(function: Function, places: list[float], wanted: float, whole: bool = False) -> list[Meeting]:
    """Every meeting that shows between two of `places`, in order; values in any unit.

    Source: bisection, as in any textbook of numerical analysis.
    """
    found: list[Meeting | None] = []
    off: tuple[float, int] | None = None  # The last place off the wanted value.
    met: list[float] = []
    for place in places:
        side = side_of(function(place), wanted)
        if side == 0:
            met.append(place)
            continue
        here = (place, side) if side else None
        if met:
            found.append(_stretch(function, wanted, whole, off, met[0], met[-1], here))
        elif off and here and off[1] != here[1]:
            found.append(_between(function, wanted, whole, off, here))
        off, met = here, []
    if met:
        found.append(_stretch(function, wanted, whole, off, met[0], met[-1], None))
    return [each for each in found if each is not None]


def _stretch(
    function: Function, wanted: float, whole: bool, off: Side | None, first: float, last: float, beyond: Side | None,
) -> Meeting:
    def met(place: float) -> bool:
        return side_of(function(place), wanted) == 0

    if off:
        first = _halve(lambda place: not met(place), off[0], first, whole)[1]
    if beyond:
        last = _halve(met, last, beyond[0], whole)[0]
    narrow = last - first <= SEARCH.narrow * max(abs(first), abs(last))
    return Meeting(first, last, off[1] if off else 0, beyond[1] if beyond else 0, "point" if narrow else "stretch")


def _between(function: Function, wanted: float, whole: bool, off: Side, beyond: Side) -> Meeting | None:
    near, far = _halve(lambda place: side_of(function(place), wanted) == off[1], off[0], beyond[0], whole)
    here, there = function(near), function(far)
    if here is None or there is None:
        return None
    if side_of(there, wanted) == 0:
        return _stretch(function, wanted, whole, (near, off[1]), far, far, beyond)
    about = max(abs(answer) for place in (off[0], beyond[0]) if (answer := function(place)) is not None)
    leap = abs(here - there)
    if leap > SEARCH.pole * about:
        return None
    kind = "point" if leap <= SEARCH.continuous * about else "leap"
    return Meeting(near, far, off[1], beyond[1], kind)


def _halve(is_near: Callable[[float], bool], near: float, far: float, whole: bool) -> tuple[float, float]:
    """The last place like `near` and the first that is not, as close as numbers go."""
    for _ in range(SEARCH.halvings):
        middle = float(floor((near + far) / 2)) if whole else (near + far) / 2
        if middle <= near or middle >= far:
            break
        if is_near(middle):
            near = middle
        else:
            far = middle
    return near, far
