"""A tree to a fast function of its inputs, in plain double precision.

Every rule here (what is a problem, how ties and near-whole numbers round, the order of
sums) stands in the browser too. Twin: formula.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from itertools import repeat

from generator.formula.functions import LARGEST, MANY_NUMBERS, ONE_NUMBER, RefusedArgument, power
from generator.formula.nodes import (
    CONSTANTS,
    STEP_NAMES,
    Arithmetic,
    Both,
    Call,
    Choice,
    Comparison,
    FormulaProblem,
    Name,
    Negative,
    Node,
    Not,
    Number,
    is_by_reading,
    signed,
    step_of,
    takes_list,
)

Values = Mapping[str, float | Sequence[float]]
_Function = Callable[[Values], float]

# Whole constant powers up to this are multiplied out, so that both sides agree to the bit.
MULTIPLIED_OUT = 8


def compiled(root: Node) -> Callable[[Values], float]:
    """The function that evaluates `root`; it raises FormulaProblem and nothing else."""
    inner = _function(root)

    def evaluate(values: Values) -> float:
        try:
            return inner(values)
        except KeyError as error:
            raise FormulaProblem("missing-value", root.offset, str(error.args[0])) from error
        except TypeError as error:
            raise FormulaProblem("wrong-kind", root.offset) from error
        except OverflowError as error:
            raise FormulaProblem("too-large", root.offset) from error

    return evaluate


def _function(node: Node) -> _Function:
    match node:
        case Number(value):
            return lambda values: value
        case Name("pi"):
            return lambda values: math.pi
        case Name(name, offset):
            return _name(name, offset)
        case Negative(operand):
            inner = _function(operand)
            return lambda values: -inner(values)
        case Arithmetic():
            return _arithmetic(node)
        case Call():
            return _list_call(node) if takes_list(node) else _call(node)
        case Choice(condition, then, otherwise):
            test, yes, no = _function(condition), _function(then), _function(otherwise)
            return lambda values: yes(values) if test(values) else no(values)
        case Comparison():
            return _comparison(node)
        case Both(operator, conditions):
            tests = [_function(condition) for condition in conditions]
            joined = all if operator == "and" else any
            return lambda values: joined(test(values) for test in tests)
        case Not(condition):
            refused = _function(condition)
            return lambda values: not refused(values)
    raise AssertionError(f"no such part of a formula: {node!r}")


def _name(name: str, offset: int) -> _Function:
    def read(values: Values) -> float:
        value: float = values[name]  # type: ignore[assignment]  # Comparing a list raises the TypeError that `compiled` tells of.
        # A chained comparison is the cheapest test for NaN and infinity together.
        if -LARGEST <= value <= LARGEST:
            return value
        raise FormulaProblem("not-a-number", offset, name)

    return read


def _arithmetic(node: Arithmetic) -> _Function:
    left, right, offset = _function(node.left), _function(node.right), node.offset
    if node.operator == "**":
        return _power(node, left, right)

    def add(values: Values) -> float:
        result = left(values) + right(values)
        if -LARGEST <= result <= LARGEST:
            return result
        raise FormulaProblem("too-large", offset)

    def subtract(values: Values) -> float:
        result = left(values) - right(values)
        if -LARGEST <= result <= LARGEST:
            return result
        raise FormulaProblem("too-large", offset)

    def multiply(values: Values) -> float:
        result = left(values) * right(values)
        if -LARGEST <= result <= LARGEST:
            return result
        raise FormulaProblem("too-large", offset)

    def divide(values: Values) -> float:
        top, bottom = left(values), right(values)
        if bottom == 0:
            raise FormulaProblem("division-by-zero", offset)
        result = top / bottom
        if -LARGEST <= result <= LARGEST:
            return result
        raise FormulaProblem("too-large", offset)

    return {"+": add, "-": subtract, "*": multiply, "/": divide}[node.operator]


def whole_power(exponent: Node) -> int | None:
    """The exponent when it is a constant whole number small enough to multiply out."""
    negative, inner = signed(exponent)
    if isinstance(inner, Number) and inner.value.is_integer() and inner.value <= MULTIPLIED_OUT:
        return -int(inner.value) if negative else int(inner.value)
    return None


def _power(node: Arithmetic, base: _Function, exponent: _Function) -> _Function:
    offset, whole = node.offset, whole_power(node.right)
    if whole is None:
        return lambda values: power(base(values), exponent(values), offset)

    def multiplied_out(values: Values) -> float:
        factor, product = base(values), 1.0
        for _ in range(abs(whole)):
            product *= factor
        if not -LARGEST <= product <= LARGEST:
            raise FormulaProblem("too-large", offset)
        if whole >= 0:
            return product
        if product == 0:
            raise FormulaProblem("division-by-zero", offset)
        product = 1.0 / product
        if -LARGEST <= product <= LARGEST:
            return product
        raise FormulaProblem("too-large", offset)

    return multiplied_out


_COMPARE: dict[str, Callable[[float, float], bool]] = {
    "<": lambda a, b: a < b,
    "<=": lambda a, b: a <= b,
    ">": lambda a, b: a > b,
    ">=": lambda a, b: a >= b,
    "==": lambda a, b: a == b,
    "!=": lambda a, b: a != b,
}


def _comparison(node: Comparison) -> _Function:
    parts = [_function(operand) for operand in node.operands]
    tests = [_COMPARE[operator] for operator in node.operators]
    if len(tests) == 1:
        (left, right), test = parts, tests[0]
        return lambda values: test(left(values), right(values))

    def compare(values: Values) -> bool:
        # Every operand is evaluated, so that a problem shows whatever the others say.
        found = [part(values) for part in parts]
        return all(test(*pair) for test, *pair in zip(tests, found, found[1:], strict=False))

    return compare


def _call(node: Call) -> _Function:
    parts, offset = [_function(argument) for argument in node.arguments], node.offset
    if len(parts) > 1:
        several = MANY_NUMBERS[node.function]
        return lambda values: _sure(several([part(values) for part in parts]), offset)
    inner, one = parts[0], ONE_NUMBER[node.function]

    def apply(values: Values) -> float:
        try:
            return one(inner(values))
        except RefusedArgument as refused:
            raise FormulaProblem(str(refused), offset) from refused
        except OverflowError as error:
            raise FormulaProblem("too-large", offset) from error

    return apply


def _list_call(node: Call) -> _Function:
    readings_of, offset, many = _readings(node.arguments[0]), node.offset, MANY_NUMBERS[node.function]

    def reduce(values: Values) -> float:
        readings = readings_of(values)
        if isinstance(readings, int | float):
            raise FormulaProblem("wrong-kind", offset)
        try:
            return _sure(many(readings), offset)
        except RefusedArgument as refused:
            raise FormulaProblem(str(refused), offset) from refused

    return reduce


def _readings(node: Node) -> Callable[[Values], float | Sequence[float]]:
    """A part of a list: its readings, or one number that stands beside each of them."""
    if isinstance(node, Name) and node.name not in CONSTANTS:
        return _name_or_list(node)
    if not is_by_reading(node) or isinstance(node, Name):
        return _function(node)
    one, moved = step_of(node)
    step, parts, offset = _function(one), [_readings(part) for part in moved], node.offset

    def each(values: Values) -> float | Sequence[float]:
        found = [part(values) for part in parts]
        lengths = {len(part) for part in found if not isinstance(part, int | float)}
        if len(lengths) > 1:
            raise FormulaProblem("lists-unequal", offset)
        if not lengths:
            return step(dict(zip(STEP_NAMES, found, strict=False)))
        columns = [repeat(part) if isinstance(part, int | float) else part for part in found]
        return [step(dict(zip(STEP_NAMES, row, strict=False))) for row in zip(*columns, strict=False)]

    return each


def _name_or_list(node: Name) -> Callable[[Values], float | Sequence[float]]:
    name, offset, number = node.name, node.offset, _name(node.name, node.offset)

    def read(values: Values) -> float | Sequence[float]:
        readings = values[name]
        if isinstance(readings, int | float):
            return number(values)
        if len(readings) == 0:
            raise FormulaProblem("empty-list", offset, name)
        for reading in readings:
            if not -LARGEST <= reading <= LARGEST:
                raise FormulaProblem("not-a-number", offset, name)
        return readings

    return read


def _sure(result: float, offset: int) -> float:
    if -LARGEST <= result <= LARGEST:
        return result
    raise FormulaProblem("too-large", offset)
