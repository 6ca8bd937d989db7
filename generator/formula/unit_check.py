"""Whether a formula's units agree, told in the trade's words at the character that is wrong.

Dimensions come from pint through `generator.units`; numbers in a formula are plain
numbers. A literal 0 may be compared with anything but a temperature reading, since
nothing is nothing in every unit.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from generator.formula import nodes as tree
from generator.formula.evaluate import compiled
from generator.formula.nodes import Arithmetic, Both, Call, Choice, Comparison, FormulaError, FormulaProblem, Name, Negative, Node, Not, Number
from generator.formula.parse import Formula, check_names
from generator.units import NUMBER, Dimension, Unit, kind_of, like

HIGHEST_POWER = 4
ABSOLUTE = Dimension(temperature=Fraction(1), absolute=True)

_MEAN_INSTEAD = "take the mean(a, b), or the difference of two readings"


@dataclass(frozen=True)
class ListOf:
    """An input that holds several readings in one unit."""

    unit: Unit


Inputs = Mapping[str, Unit | ListOf]


def result_dimension(formula: Formula, inputs: Inputs) -> Dimension | None:
    """The dimension of what the formula gives; None when it answers yes or no.

    Raises FormulaError at the character where units disagree or a name is unknown.
    """
    check_names(formula, inputs)
    _check_constants(formula.root)
    return _Checker(inputs).of(formula.root)


def check(formula: Formula, inputs: Inputs, result: Unit | None) -> None:
    """FormulaError unless the formula gives `result` (None: a yes-or-no condition)."""
    found = result_dimension(formula, inputs)
    root, shown = formula.root, _shown(formula.root)
    if result is None:
        if found is not None:
            what = f"{shown} is {_described(found)}, but yes or no is needed here"
            raise FormulaError(root.offset, what, "compare it with something, such as rain > 0")
    elif found is None:
        what = f"{shown} answers yes or no, but the result is declared in {result}"
        raise FormulaError(root.offset, what, "choose a value with 'a if condition else b'")
    elif found != result.dimension and not _zero(root, result.dimension):
        what = f"{shown} is {_described(found)}, but the result is declared in {result}"
        raise FormulaError(root.offset, what, _instead(found))


def _instead(found: Dimension) -> str:
    if found.is_number:
        return "use 1 or %, or multiply by a constant that has the unit"
    usual = [known.spelling for known in like(found)][:2]
    if not usual:
        return "no unit of the book measures that; look for a factor too many or too few"
    return f"use {kind_of(found).split(' or ')[0]} such as {' or '.join(reversed(usual))}"


def _described(found: Dimension | None) -> str:
    """'a volume (L)'; a plain number needs no unit."""
    if found is None:
        return "yes or no"
    usual = like(found)
    if found.is_number or not usual:
        return kind_of(found)
    return f"{kind_of(found)} ({usual[0]})"


def _shown(node: Node) -> str:
    text = tree.text_of(node)
    return text if len(text) <= 60 else f"{text[:57]}..."


def _zero(node: Node, beside: Dimension | None) -> bool:
    return isinstance(node, Number) and node.value == 0 and beside != ABSOLUTE


def _check_constants(node: Node) -> None:
    """FormulaError for a part without inputs that has no answer, such as 1 / 0."""
    if all(not isinstance(p, Name) or p.name in tree.CONSTANTS for p in tree.walk(node)):
        try:
            compiled(node)({})
        except FormulaProblem as problem:
            what = f"{_shown(node)} has no answer"
            instead = f"{problem.sentence[:1].lower()}{problem.sentence[1:].rstrip('.')}"
            raise FormulaError(problem.offset, what, instead) from problem
        return
    for child in tree.children(node):
        _check_constants(child)


class _Checker:
    """Finds the dimension of each part, or the character where units disagree."""

    def __init__(self, inputs: Inputs) -> None:
        self.inputs = inputs
        self.is_reading_by_reading = False

    def once(self, node: Node) -> Dimension | None:
        """The dimension of a part that is worked out once, even where readings stand around it."""
        outside, self.is_reading_by_reading = self.is_reading_by_reading, False
        found = self.of(node)
        self.is_reading_by_reading = outside
        return found

    def of(self, node: Node) -> Dimension | None:
        match node:
            case Number():
                return NUMBER
            case Name():
                return self.name(node)
            case Negative(operand):
                found = self.number(operand)
                self.no_reading(found, node, "turned negative")
                return found
            case Arithmetic("+" | "-"):
                return self.sum_of_two(node)
            case Arithmetic("**"):
                return self.power(node)
            case Arithmetic():
                return self.product(node)
            case Call():
                return self.call(node)
            case Choice() if self.is_reading_by_reading:
                return self.once(node)
            case Choice(condition, then, otherwise):
                self.of(condition)
                return self.same((then, otherwise), node.offset, "'if' gives")
            case Comparison(_, operands):
                self.same(operands, node.offset, "cannot compare")
            case Both() | Not():
                for child in tree.children(node):
                    self.of(child)
        return None

    def number(self, node: Node) -> Dimension:
        """The dimension of a part that the parser lets stand only if it gives a number."""
        found = self.of(node)
        assert found is not None, "no condition stands where a number belongs"
        return found

    def name(self, node: Name) -> Dimension:
        if node.name in tree.CONSTANTS:
            return NUMBER
        declared = self.inputs[node.name]
        if isinstance(declared, ListOf):
            if self.is_reading_by_reading:
                return declared.unit.dimension
            what = f"{node.name} is a list of readings"
            raise FormulaError(node.offset, what, f"reduce it first, such as mean({node.name})")
        return declared.dimension

    def no_reading(self, found: Dimension, node: Node, what: str) -> None:
        if found == ABSOLUTE:
            what = f"a temperature reading cannot be {what}"
            raise FormulaError(node.offset, what, _MEAN_INSTEAD)

    def sum_of_two(self, node: Arithmetic) -> Dimension:
        left, right = self.number(node.left), self.number(node.right)
        if ABSOLUTE in (left, right):
            return self.with_reading(node, left, right)
        if left != right:
            verb = "add" if node.operator == "+" else "subtract"
            what = (
                f"cannot {verb} {_shown(node.left)}, {_described(left)},"
                f" and {_shown(node.right)}, {_described(right)}"
            )
            raise FormulaError(node.offset, what, "give both the same kind of unit")
        return left

    def with_reading(self, node: Arithmetic, left: Dimension, right: Dimension) -> Dimension:
        """°C - °C is a difference; °C plus or minus a difference is °C."""
        difference = ABSOLUTE.difference()
        if node.operator == "-" and left == right == ABSOLUTE:
            return difference
        if (left, right) == (ABSOLUTE, difference):
            return ABSOLUTE
        if node.operator == "+" and (left, right) == (difference, ABSOLUTE):
            return ABSOLUTE
        if left == right:
            raise FormulaError(node.offset, "two temperature readings cannot be added", _MEAN_INSTEAD)
        what = (
            f"cannot {'add' if node.operator == '+' else 'subtract'} {_shown(node.left)},"
            f" {_described(left)}, and {_shown(node.right)}, {_described(right)}"
        )
        raise FormulaError(node.offset, what, "only a difference in K moves a temperature reading")

    def product(self, node: Arithmetic) -> Dimension:
        left, right = self.number(node.left), self.number(node.right)
        done = "multiplied" if node.operator == "*" else "divided"
        for found in (left, right):
            self.no_reading(found, node, done)
        return left * right if node.operator == "*" else left / right

    def power(self, node: Arithmetic) -> Dimension:
        base, exponent = self.number(node.left), self.number(node.right)
        self.no_reading(base, node, "raised to a power")
        if exponent != NUMBER:
            what = f"the exponent {_shown(node.right)} is {_described(exponent)}"
            raise FormulaError(node.right.offset, what, "an exponent is a plain number")
        if base == NUMBER:
            return NUMBER
        negative, number = tree.signed(node.right)
        if not isinstance(number, Number):
            what = f"{_shown(node.left)} is {_described(base)}, and its exponent is not a constant"
            raise FormulaError(node.right.offset, what, "write the exponent as a number, such as 2")
        if number.value > HIGHEST_POWER:
            what = f"the exponent {_shown(node.right)} of {_described(base)} is beyond {HIGHEST_POWER}"
            raise FormulaError(node.right.offset, what, "divide by a constant of that unit first")
        return base ** Fraction(str(-number.value if negative else number.value))

    def same(self, parts: tuple[Node, ...], offset: int, failure: str) -> Dimension | None:
        """The one dimension of all parts, literal zeros aside."""
        found = [self.of(part) for part in parts]
        first = next((i for i, part in enumerate(parts) if not _zero(part, None)), 0)
        for part, dimension in zip(parts, found, strict=True):
            if dimension != found[first] and not _zero(part, found[first]):
                what = (
                    f"{failure} {_shown(parts[first])}, {_described(found[first])},"
                    f" and {_shown(part)}, {_described(dimension)}"
                )
                raise FormulaError(offset, what, "give both the same kind of unit")
        return found[first]

    def call(self, node: Call) -> Dimension:
        found: Dimension | None
        if tree.takes_list(node):
            found = self.list_of(node)
        elif len(node.arguments) > 1:
            found = self.same(node.arguments, node.offset, f"{node.function} cannot take")
        else:
            return self.one_number(node)
        assert found is not None, "a call takes no conditions"
        if node.function == "count":
            return NUMBER
        if node.function == "mean_deviation":
            return found.difference()
        if node.function in ("sum", "trapezoidal_sum", "simpson_sum", "polygon_area"):
            self.no_reading(found, node, "added up")
        if node.function == "sides_cross":
            return NUMBER
        return found * found if node.function == "polygon_area" else found

    def list_of(self, node: Call) -> Dimension:
        """The dimension of each of the readings that a call reduces."""
        argument = node.arguments[0]
        outside, self.is_reading_by_reading = self.is_reading_by_reading, True
        found = self.number(argument)
        self.is_reading_by_reading = outside
        if any(isinstance(self.inputs.get(name), ListOf) for name in tree.names_by_reading(argument)):
            return found
        several = "" if node.function in tree.LIST_ONLY else f", or write {node.function}(a, b)"
        what = f"{_shown(argument)} is one value, but {node.function} takes a list"
        raise FormulaError(argument.offset, what, f"give a list of readings{several}")

    def one_number(self, node: Call) -> Dimension:
        found, argument = self.number(node.arguments[0]), node.arguments[0]
        if node.function == "abs":
            self.no_reading(found, node, "made positive")
            return found
        if node.function == "sqrt":
            self.no_reading(found, node, "put under a root")
            return found ** Fraction(1, 2)
        if not found.is_number:
            what = f"{node.function} needs a plain number, but {_shown(argument)} is {_described(found)}"
            instead = "divide it by a constant of the same unit first"
            raise FormulaError(argument.offset, what, instead)
        return NUMBER
