"""A tree to one JavaScript expression over `F` (assets/formula.js) and `v` (the values).

The generator writes it into a static file; nothing is compiled in the browser.
"""

import json

from generator.formula import tree
from generator.formula.evaluate import whole_power
from generator.formula.parse import Formula
from generator.formula.tree import (
    Arithmetic,
    Both,
    Call,
    Choice,
    Comparison,
    Name,
    Negative,
    Node,
    Not,
    Number,
)

_NAMES = {
    "lowest_quarter_mean": "lowestQuarterMean", "mean_deviation": "meanDeviation", "trapezoidal_sum": "trapezoidalSum",
    "simpson_sum": "simpsonSum", "polygon_area": "polygonArea",
}


def to_javascript(formula: Formula) -> str:
    """One expression, to stand in `function (F, v) { return ...; }`.

    F is `Swardbook.formula`; v maps names to SI numbers, or arrays for lists. It gives a
    number or, for a condition, true or false, and throws F.Problem with the codes of
    FormulaProblem.
    """
    return _expression(formula.root)


def _expression(node: Node) -> str:
    parts = [_expression(child) for child in tree.children(node)]
    match node:
        case Number(value):
            return repr(value)
        case Name("pi"):
            return "Math.PI"
        case Name(name):
            return f"F.value(v, {json.dumps(name)})"
        case Negative():
            return f"(-{parts[0]})"
        case Arithmetic():
            return _arithmetic(node, *parts)
        case Call(function) if tree.takes_list(node):
            name = json.dumps(node.arguments[0].name)
            return f"F.{_NAMES.get(function, function)}(F.list(v, {name}))"
        case Call(function) if len(parts) > 1:
            return f"F.{function}([{', '.join(parts)}])"
        case Call(function):
            return f"F.{function}({parts[0]})"
        case Choice():
            return f"({parts[0]} ? {parts[1]} : {parts[2]})"
        case Comparison(operators):
            return _comparison(operators, parts)
        case Both(operator):
            return f"({(' && ' if operator == 'and' else ' || ').join(parts)})"
        case Not():
            return f"(!{parts[0]})"
    raise AssertionError(f"no such part of a formula: {node!r}")


def _arithmetic(node: Arithmetic, left: str, right: str) -> str:
    if node.operator == "/":
        return f"F.divide({left}, {right})"
    if node.operator != "**":
        return f"F.sure({left} {node.operator} {right})"
    whole = whole_power(node.right)
    return f"F.power({left}, {right})" if whole is None else f"F.whole({left}, {whole})"


def _comparison(operators: tuple[str, ...], parts: list[str]) -> str:
    exact = [{"==": "===", "!=": "!=="}.get(operator, operator) for operator in operators]
    if len(exact) == 1:
        return f"({parts[0]} {exact[0]} {parts[1]})"
    return f"F.ordered({json.dumps(exact)}, [{', '.join(parts)}])"
