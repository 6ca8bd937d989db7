"""Why something is so, as data: a code and its numbers with their units. No sentence is made here; `words/sentences.py` says each in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import NamedTuple


class NumberSaid(NamedTuple):
    """A number and how finely it is said.

    value: in `unit`, a spelling of the list of units; '1' for a plain number. shown: as Python formats a number, '.2f', 'g', '.0%'.
    """

    value: float
    unit: str
    shown: str


class Day(NamedTuple):
    """A day of the engine's year, 0 for 1 January."""

    number: int


@dataclass(frozen=True)
class Reason:
    """code: which sentence of `words/sentences.py` says it. values: what that sentence's places hold, by name."""

    code: str
    values: Mapping[str, Value]


class Several(NamedTuple):
    """Reasons said one after another. between: the code of the word that joins them: 'and', 'then'."""

    reasons: tuple[Reason, ...]
    between: str


Value = NumberSaid | Day | Reason | Several | str


def because(code: str, **values: Value) -> Reason:
    """A reason by its code. A text among the values is a name of the book's own, such as a soil's."""
    return Reason(code, values)


def both(reasons: tuple[Reason, ...]) -> Several:
    """Reasons that hold together."""
    return Several(reasons, "and")


def degrees(celsius: float, step_c: float) -> NumberSaid:
    """A temperature [°C] as finely as the normals were printed. step_c: of their print [K]."""
    return NumberSaid(celsius, "°C", "z.0f" if step_c >= 1 else "z.1f")  # z: never "-0.0"


def limit_degrees(celsius: float) -> NumberSaid:
    """A temperature that a rule names [°C], to a tenth: one that was published in °F has no end in °C."""
    return NumberSaid(celsius, "°C", ".3g")


def difference(kelvins: float) -> NumberSaid:
    """A difference of temperatures that a rule names [K]."""
    return NumberSaid(kelvins, "°C difference", "g")


def share(part: float) -> NumberSaid:
    """A share of a whole, 0 to 1 [1], said in hundredths."""
    return NumberSaid(part, "1", ".0%")


def growth(potential: float) -> NumberSaid:
    """A growth potential, 0 to 1 [1]."""
    return NumberSaid(potential, "1", ".2f")


def times(factor: float) -> NumberSaid:
    """A factor, or a count that may be broken, as a rule names it [1]."""
    return NumberSaid(factor, "1", "g")


def count(number: float) -> NumberSaid:
    """A whole number of things, or the number of a week [1]."""
    return NumberSaid(number, "1", ".0f")


def depth_a_week(millimetres: float) -> NumberSaid:
    """Water in a week [mm]."""
    return NumberSaid(millimetres, "mm", ".0f")


def numbers(reason: Reason) -> Iterator[tuple[str, NumberSaid | Day]]:
    """Every number of a reason by name, those of reasons within it too."""
    for name, value in reason.values.items():
        if isinstance(value, NumberSaid | Day):
            yield name, value
        elif isinstance(value, Reason):
            yield from numbers(value)
        elif isinstance(value, Several):
            for each in value.reasons:
                yield from numbers(each)
