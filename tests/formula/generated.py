"""Random formulas over every function and sign, and random values for them, by seed."""

import random

from generator.formula import nodes as tree
from generator.formula.nodes import Arithmetic, Both, Call, Choice, Comparison, Name, Negative, Node, Not, Number

NUMBERS = ("area", "depth", "rate", "share")
LISTS = ("readings", "catches")
LITERALS = ("0", "1", "2", "3", "4", "0.5", "0.25", "10", "100", "7.25", "1e-3", "1e6", "1e300", ".5")
EDGES = (0.0, -0.0, 1.0, -1.0, 0.5, 1.5, 2.5, -0.5, -2.5, 4.0000000001, 3.9999999999, 1e-320,
         1e308, -1e308, 709.9, 1e9 + 0.4, 4503599627370497.5, 0.49999999999999994)  # fmt: skip


def number(chance: random.Random, depth: int) -> Node:
    """A random part that gives a number, at most `depth` levels deep."""
    kind = chance.randint(0, 12) if depth > 0 else chance.randint(0, 3)
    if kind <= 1:
        return Name(chance.choice(NUMBERS))
    if kind == 2:
        return Name("pi") if chance.random() < 0.2 else literal(chance)
    if kind == 3:
        function = chance.choice((*tree.LIST_ONLY, *tree.LIST_OR_SEVERAL))
        return Call(function, (listed(chance, depth - 1),))
    if kind == 4:
        return Negative(number(chance, depth - 1))
    if kind <= 7:
        operator = chance.choice("+-*/")
        return Arithmetic(operator, number(chance, depth - 1), number(chance, depth - 1))
    if kind == 8:
        exponent = chance.choice([literal(chance), Negative(literal(chance)), number(chance, depth - 1)])
        return Arithmetic("**", number(chance, depth - 1), exponent)
    if kind <= 10:
        return Call(chance.choice(tree.ONE_NUMBER), (number(chance, depth - 1),))
    if kind == 11:
        several = tuple(number(chance, depth - 1) for _ in range(chance.randint(2, 3)))
        return Call(chance.choice(tree.LIST_OR_SEVERAL), several)
    parts = number(chance, depth - 1), number(chance, depth - 1)
    return Choice(condition(chance, depth - 1), *parts)


def listed(chance: random.Random, depth: int) -> Node:
    """A random list: one by its name, or arithmetic reading by reading."""
    kind = chance.randint(0, 9) if depth > 0 else 0
    if kind <= 3:
        return Name(chance.choice(LISTS if chance.random() < 0.95 else NUMBERS))
    if kind <= 6:
        operator = chance.choice("+-*/")
        parts = [listed(chance, depth - 1), chance.choice((listed, number))(chance, depth - 1)]
        chance.shuffle(parts)
        return Arithmetic(operator, *parts)
    if kind == 7:
        return Negative(listed(chance, depth - 1))
    if kind == 8:
        return Call(chance.choice(tree.ONE_NUMBER), (listed(chance, depth - 1),))
    several = (listed(chance, depth - 1), chance.choice((listed, number))(chance, depth - 1))
    return Call(chance.choice(tree.LIST_OR_SEVERAL), several)


def condition(chance: random.Random, depth: int) -> Node:
    """A random part that answers yes or no."""
    kind = chance.randint(0, 3) if depth > 0 else 0
    if kind <= 1:
        count = chance.choice((1, 1, 2))
        signs = tuple(chance.choice(["<", "<=", ">", ">=", "==", "!="]) for _ in range(count))
        return Comparison(signs, tuple(number(chance, depth - 1) for _ in range(count + 1)))
    if kind == 2:
        both = tuple(condition(chance, depth - 1) for _ in range(chance.randint(2, 3)))
        return Both(chance.choice(["and", "or"]), both)
    return Not(condition(chance, depth - 1))


def literal(chance: random.Random) -> Number:
    text = chance.choice(LITERALS)
    return Number(float(text), text)


def formula_text(chance: random.Random) -> str:
    """The text of a random formula within the length limit."""
    while True:
        root = number(chance, 5) if chance.random() < 0.85 else condition(chance, 5)
        text = tree.text_of(root)
        if len(text) <= 400:
            return text


def values(chance: random.Random) -> dict[str, float | list[float]]:
    """Random values for every name a formula may use; now and then one is missing or no number."""
    given: dict[str, float | list[float]] = {name: reading(chance) for name in NUMBERS}
    for name in LISTS:
        given[name] = [reading(chance) for _ in range(chance.choice((0, 1, 2, 3, 5, 6, 7, 15)))]
    if chance.random() < 0.7:
        given["catches"] = [reading(chance) for _ in given["readings"]]
    mishap, name = chance.random(), chance.choice(NUMBERS)
    if mishap < 0.02:
        given[name] = chance.choice([float("nan"), float("inf"), float("-inf")])
    elif mishap < 0.04:
        del given[name]
    elif mishap < 0.06:
        given["readings"] = [1.0, float("nan")]
    elif mishap < 0.08:
        given[name] = [1.0, 2.0]
    elif mishap < 0.10:
        given["catches"] = 5.0
    return given


def reading(chance: random.Random) -> float:
    if chance.random() < 0.2:
        return chance.choice(EDGES)
    if chance.random() < 0.5:
        return chance.uniform(-10, 10)
    return chance.uniform(-1, 1) * 10 ** chance.uniform(-6, 8)
