"""However deep a formula is nested, reading it, checking it, running it and writing it take a blink, and end in an answer or in words."""

import signal
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from itertools import combinations

import pytest

from generator.formula import FormulaError, ListOf, check, parse, to_javascript, to_mathml
from generator.formula.nodes import FormulaProblem, text_of
from generator.units import unit

LONGEST_SECONDS = 2.0  # On a busy machine; what is written twice at every level would take years.
KNOWN = {"x": unit("1"), "y": unit("1"), "readings": ListOf(unit("1"))}
DEPTHS = (1, 5, 11, 20, 27, 40, 57, 61, 200)
VALUES = {"x": 1.0, "y": 2.0, "readings": [1.0, 2.0]}

# What is put around a formula again and again, one for each kind of part.
AROUND: dict[str, Callable[[str], str]] = {
    "power above": lambda inner: f"x**{inner}",
    "power below": lambda inner: f"({inner})**x",
    "whole power": lambda inner: f"({inner})**2",
    "fraction above": lambda inner: f"x/({inner})",
    "fraction below": lambda inner: f"({inner})/y",
    "sum": lambda inner: f"x+({inner})",
    "difference": lambda inner: f"x-({inner})",
    "product": lambda inner: f"x*({inner})",
    "sign": lambda inner: f"-{inner}",
    "root": lambda inner: f"sqrt({inner})",
    "exponential": lambda inner: f"exp({inner})",
    "several": lambda inner: f"max(x,{inner})",
    "list": lambda inner: f"sum(readings*({inner}))",
    "reading by reading": lambda inner: f"mean(max(readings,{inner}))",
    "choice, then": lambda inner: f"({inner})if x>1 else y",
    "choice, else": lambda inner: f"y if x>1 else({inner})",
    "choice, if": lambda inner: f"(x if({inner})>1 else y)",
    "comparison": lambda inner: f"(1 if x<({inner})<y else 2)",
    "not": lambda inner: f"(1 if not({inner})>x else 2)",
    "and": lambda inner: f"(1 if x>1 and({inner})>x else 2)",
}


@contextmanager
def in_time() -> Iterator[None]:
    def late(number: int, frame: object) -> None:
        raise TimeoutError("it takes too long")

    before = signal.signal(signal.SIGALRM, late)
    signal.setitimer(signal.ITIMER_REAL, LONGEST_SECONDS)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)
        signal.signal(signal.SIGALRM, before)


def everything_done_with(text: str) -> bool:
    """True for a formula that is read; False for one that is refused at one of its characters."""
    with in_time():
        try:
            formula = parse(text)
            check(formula, KNOWN, unit("1"))
        except FormulaError as error:
            assert 0 <= error.offset <= len(text) and error.what and error.instead
            return False
        try:
            formula.evaluate(VALUES)
        except FormulaProblem as problem:
            assert problem.sentence
        assert to_javascript(formula) and text_of(formula.root)
        # What is shown grows with what was written, and no faster.
        assert len(to_mathml(formula, {})) < 200 * len(text)
        return True


@pytest.mark.parametrize("kind", AROUND)
def test_every_kind_of_part_nested_in_itself(kind: str) -> None:
    text, read = "x", []
    for depth in range(1, 201):
        text = AROUND[kind](text)
        if depth in DEPTHS:
            read.append(everything_done_with(text))
    assert read[:3] == [True, True, True] and not read[-1]


def test_kinds_nested_in_each_other() -> None:
    """Each pair by turns, to the depth a formula may have."""
    read = 0
    for pair in combinations(AROUND.values(), 2):
        text = longest = "x"
        for depth in range(48):
            text = pair[depth % 2](text)
            longest = text if len(text) <= 400 else longest
        read += everything_done_with(longest)
    assert read > 100


def test_twenty_seven_powers_and_more_are_shown() -> None:
    for depth in (27, 50, 57):
        with in_time():
            assert to_mathml(parse("x**" * depth + "x"), {}).count("<msup>") == depth
    with pytest.raises(FormulaError, match="nested more than"):
        parse("x**" * 120 + "x")
