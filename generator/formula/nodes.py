"""The parts of a parsed formula. Offsets count characters of its text and are not compared."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import TypeGuard


class FormulaError(ValueError):
    """A formula its author must mend: where (character offset), what, and what instead."""

    def __init__(self, offset: int, what: str, instead: str) -> None:
        super().__init__(f"{what}; {instead}")
        self.offset = offset
        self.what = what
        self.instead = instead


class FormulaProblem(ArithmeticError):
    """A sound formula that has no answer for these values: a code, a sentence, an offset."""

    def __init__(self, code: str, offset: int, detail: str = "") -> None:
        self.code = code
        self.sentence = f"{SENTENCES[code]}{f' ({detail})' if detail else ''}."
        self.offset = offset
        super().__init__(self.sentence)


# The browser has them from the contract (generator/site/frame/contract.py).
SENTENCES = {
    "division-by-zero": "These values would divide by zero",
    "negative-root": "These values would take the square root of a negative number",
    "log-of-zero-or-less": "These values would take the logarithm of zero or less",
    "power-of-negative": "These values would raise a negative number to a fractional power",
    "angle-outside": "These values need an angle whose cosine is beyond 1",
    "empty-list": "At least one reading is needed",
    "lists-unequal": "The lists of readings are not the same length",
    "corners-unpaired": "Every corner needs two distances, along and across, and one of them is missing",
    "too-large": "These values give a number too large to work with",
    "not-a-number": "One of the values is not a number",
    "missing-value": "One of the values is missing",
    "wrong-kind": "There is a list where one value belongs, or one value where a list belongs",
}


@dataclass(frozen=True)
class Number:
    value: float
    text: str = field(compare=False)
    offset: int = field(default=0, compare=False)


@dataclass(frozen=True)
class Name:
    name: str
    offset: int = field(default=0, compare=False)


@dataclass(frozen=True)
class Negative:
    operand: "Node"
    offset: int = field(default=0, compare=False)


@dataclass(frozen=True)
class Arithmetic:
    """operator: one of + - * / **; the offset is the operator's."""

    operator: str
    left: "Node"
    right: "Node"
    offset: int = field(default=0, compare=False)


@dataclass(frozen=True)
class Call:
    function: str
    arguments: tuple["Node", ...]
    offset: int = field(default=0, compare=False)


@dataclass(frozen=True)
class Choice:
    """`then if condition else otherwise`; the offset is that of `if`."""

    condition: "Node"
    then: "Node"
    otherwise: "Node"
    offset: int = field(default=0, compare=False)


@dataclass(frozen=True)
class Comparison:
    """operands[0] operators[0] operands[1] ...; the offset is the first operator's."""

    operators: tuple[str, ...]
    operands: tuple["Node", ...]
    offset: int = field(default=0, compare=False)


@dataclass(frozen=True)
class Both:
    """operator: 'and' or 'or', over two or more conditions."""

    operator: str
    conditions: tuple["Node", ...]
    offset: int = field(default=0, compare=False)


@dataclass(frozen=True)
class Not:
    condition: "Node"
    offset: int = field(default=0, compare=False)


Node = Number | Name | Negative | Arithmetic | Call | Choice | Comparison | Both | Not
ByReading = Name | Negative | Arithmetic | Call

MOST_PARTS = 150
CONSTANTS = ("pi",)
LIST_ONLY = ("count", "lowest_quarter_mean", "lowest_half_mean", "mean_deviation", "trapezoidal_sum", "simpson_sum", "polygon_area", "sides_cross")
LIST_OR_SEVERAL = ("min", "max", "sum", "mean")
ONE_NUMBER = ("ceil", "floor", "round", "sqrt", "exp", "log", "abs", "sin", "cos", "tan", "acos")
STEP_NAMES = tuple(f"_{place}" for place in range(1, MOST_PARTS + 1))
FUNCTIONS = (*LIST_OR_SEVERAL, *LIST_ONLY, *ONE_NUMBER)


def children(node: Node) -> tuple[Node, ...]:
    """The parts directly below a node, in the order in which they are evaluated."""
    match node:
        case Negative(operand):
            return (operand,)
        case Arithmetic(_, left, right):
            return (left, right)
        case Call(_, arguments):
            return arguments
        case Choice(condition, then, otherwise):
            return (condition, then, otherwise)
        case Comparison(_, operands):
            return operands
        case Both(_, conditions):
            return conditions
        case Not(condition):
            return (condition,)
    return ()


def walk(node: Node) -> Iterator[Node]:
    """The node and everything below it."""
    yield node
    for child in children(node):
        yield from walk(child)


def is_condition(node: Node) -> bool:
    """Whether a node answers yes or no rather than giving a number."""
    if isinstance(node, Choice):
        return is_condition(node.then)
    return isinstance(node, Comparison | Both | Not)


def takes_list(call: Call) -> bool:
    """Whether the one argument of a call is a list of readings: its name, or arithmetic done reading by reading."""
    return call.function not in ONE_NUMBER and len(call.arguments) == 1


def is_by_reading(node: Node) -> TypeGuard[ByReading]:
    """Whether a part inside a list is worked out for each reading, rather than once for all of them."""
    return isinstance(node, Name | Negative | Arithmetic) or (isinstance(node, Call) and not takes_list(node))


def names_by_reading(node: Node) -> Iterator[str]:
    """The names in a list that may stand for one value a reading; those within mean(a) or a choice stand for one in all."""
    if isinstance(node, Name):
        yield node.name
    elif is_by_reading(node):
        for child in children(node):
            yield from names_by_reading(child)


def step_of(node: Negative | Arithmetic | Call) -> tuple[Node, tuple[Node, ...]]:
    """One step of arithmetic reading by reading: the node over STEP_NAMES, and the parts that those stand for.

    Plain numbers stay where they are, so that a whole power stays one.
    """
    moved = tuple(child for child in children(node) if not _is_plain(child))
    names = iter(STEP_NAMES)
    stands = [child if _is_plain(child) else Name(next(names), child.offset) for child in children(node)]
    if isinstance(node, Negative):
        return Negative(stands[0], node.offset), moved
    if isinstance(node, Arithmetic):
        left, right = stands
        return Arithmetic(node.operator, left, right, node.offset), moved
    return Call(node.function, tuple(stands), node.offset), moved


def signed(node: Node) -> tuple[bool, Node]:
    """Whether a part is turned negative, and the part itself."""
    return (True, node.operand) if isinstance(node, Negative) else (False, node)


def _is_plain(node: Node) -> bool:
    return isinstance(node, Number) or (isinstance(node, Negative) and isinstance(node.operand, Number))


_LOOSEST, _OR, _AND, _NOT, _COMPARE, _ADD, _MULTIPLY, _SIGN, _POWER, _ATOM = range(10)
_BINDING = {"+": _ADD, "-": _ADD, "*": _MULTIPLY, "/": _MULTIPLY, "**": _POWER}


def binding(node: Node) -> int:
    """How tightly a node holds together, for deciding where brackets are needed."""
    match node:
        case Choice():
            return _LOOSEST
        case Both(operator):
            return _OR if operator == "or" else _AND
        case Not():
            return _NOT
        case Comparison():
            return _COMPARE
        case Arithmetic(operator):
            return _BINDING[operator]
        case Negative():
            return _SIGN
    return _ATOM


def needs(node: Node) -> tuple[int, ...]:
    """For each child, how tightly it must hold to stand without brackets."""
    match node:
        case Choice():
            return (_OR, _OR, _LOOSEST)
        case Arithmetic("**"):
            return (_ATOM, _SIGN)
        case Arithmetic(operator):
            return (_BINDING[operator], _BINDING[operator] + 1)
        case Negative():
            return (_SIGN,)
        case Not():
            return (_NOT,)
        case Comparison() | Both():
            return (binding(node) + 1,) * len(children(node))
    return (_LOOSEST,) * len(children(node))


def text_of(node: Node) -> str:
    """The formula in plain notation; parses back to the same tree."""
    parts = [
        text if binding(child) >= need else f"({text})"
        for child, need in zip(children(node), needs(node), strict=True)
        for text in [text_of(child)]
    ]
    match node:
        case Number(_, text):
            return text
        case Name(name):
            return name
        case Negative():
            return f"-{parts[0]}"
        case Arithmetic(operator):
            return f"{parts[0]}{operator}{parts[1]}" if operator == "**" else f" {operator} ".join(parts)
        case Call(function):
            return f"{function}({', '.join(parts)})"
        case Choice():
            return f"{parts[1]} if {parts[0]} else {parts[2]}"
        case Comparison(operators):
            return parts[0] + "".join(f" {o} {p}" for o, p in zip(operators, parts[1:], strict=True))
        case Both(operator):
            return f" {operator} ".join(parts)
    return f"not {parts[0]}"
