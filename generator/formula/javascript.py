"""A tree to one JavaScript function, which assets/formula.js runs. The generator writes it into a static file.

Nothing is compiled in the browser. The function is short, because a page loads many: `v.area` reads a number by its name
and `l.catches` a list of readings, and each is checked as it is read.
"""

from collections.abc import Mapping
from types import MappingProxyType

from generator.formula import nodes as tree
from generator.formula.evaluate import whole_power
from generator.formula.nodes import Arithmetic, Both, Call, Choice, Comparison, Name, Negative, Node, Not, Number
from generator.formula.parse import Formula

_NAMES = {
    "lowest_quarter_mean": "lowestQuarterMean", "lowest_half_mean": "lowestHalfMean", "mean_deviation": "meanDeviation",
    "trapezoidal_sum": "trapezoidalSum", "simpson_sum": "simpsonSum", "polygon_area": "polygonArea", "sides_cross": "sidesCross",
}
LONGEST_WHOLE = 1e9


def to_javascript(formula: Formula, constants: Mapping[str, float] = MappingProxyType({})) -> str:
    """A function to hand to `Swardbook.formula.answer` with the values: SI numbers, or arrays for lists, by name.

    constants: SI values by name, written in as numbers.
    It gives a number or, for a condition, true or false, and throws Swardbook.formula.Problem with the codes of
    FormulaProblem.
    """
    return f"(F,v,l)=>{_expression(formula.root, constants)}"


def _expression(node: Node, constants: Mapping[str, float]) -> str:
    if isinstance(node, Name) and node.name in constants:
        value = constants[node.name]
        return _number(value) if value >= 0 else f"({_number(value)})"
    if isinstance(node, Call) and tree.takes_list(node):
        return f"F.{_NAMES.get(node.function, node.function)}({_readings(node.arguments[0], constants)})"
    return _joined(node, [_expression(child, constants) for child in tree.children(node)])


def _readings(node: Node, constants: Mapping[str, float]) -> str:
    """A part of a list: its readings, or one number that stands beside each of them."""
    if isinstance(node, Name) and node.name not in (*tree.CONSTANTS, *constants):
        return f"l.{node.name}"
    if not tree.is_by_reading(node) or isinstance(node, Name):
        return _expression(node, constants)
    step, moved = tree.step_of(node)
    names, operands = tree.STEP_NAMES[: len(moved)], (_readings(part, constants) for part in moved)
    return f"F.each(({','.join(names)})=>{_expression(step, {})},[{','.join(operands)}])"


def _number(value: float) -> str:
    """Every bit of a number, 4 for 4.0."""
    return str(int(value)) if value.is_integer() and abs(value) < LONGEST_WHOLE else repr(value)


def _joined(node: Node, parts: list[str]) -> str:
    """What a node does with its children, already written."""
    match node:
        case Number(value):
            return _number(value)
        case Name("pi"):
            return "Math.PI"
        case Name(name) if name in tree.STEP_NAMES:
            return name
        case Name(name):
            return f"v.{name}"
        case Negative():
            return f"(-{parts[0]})"
        case Arithmetic():
            return _arithmetic(node, *parts)
        case Call(function) if len(parts) > 1:
            return f"F.{function}([{','.join(parts)}])"
        case Call(function):
            return f"F.{function}({parts[0]})"
        case Choice():
            return f"({parts[0]}?{parts[1]}:{parts[2]})"
        case Comparison(operators):
            return _comparison(operators, parts)
        case Both(operator):
            return f"({('&&' if operator == 'and' else '||').join(parts)})"
        case Not():
            return f"(!{parts[0]})"
    raise AssertionError(f"no such part of a formula: {node!r}")


def _arithmetic(node: Arithmetic, left: str, right: str) -> str:
    if node.operator == "/":
        return f"F.divide({left},{right})"
    if node.operator != "**":
        return f"F.sure({left}{node.operator}{right})"
    whole = whole_power(node.right)
    return f"F.power({left},{right})" if whole is None else f"F.whole({left},{whole})"


def _comparison(operators: tuple[str, ...], parts: list[str]) -> str:
    exact = [{"==": "===", "!=": "!=="}.get(operator, operator) for operator in operators]
    if len(exact) == 1:
        return f"({parts[0]}{exact[0]}{parts[1]})"
    signs = ",".join(f'"{sign}"' for sign in exact)
    return f"F.ordered([{signs}],[{','.join(parts)}])"
