"""Formula text to a tree. Python's expression grammar, of which only arithmetic is let in.

The text is parsed with `ast` and never run as code.
"""

import ast
import math
import re
import warnings
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cached_property

from generator.findings import suggestion
from generator.formula import nodes as tree
from generator.formula.evaluate import Values, compiled
from generator.formula.nodes import Arithmetic, Both, Call, Choice, Comparison, FormulaError, Name, Negative, Node, Not, Number
from generator.formula.screen import ALLOWED, DEEPEST, screen, unreadable

_DECIMAL = re.compile(r"(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?")
_ARITHMETIC = {ast.Add: "+", ast.Sub: "-", ast.Mult: "*", ast.Div: "/", ast.Pow: "**"}
_COMPARED = {
    ast.Lt: "<", ast.LtE: "<=", ast.Gt: ">", ast.GtE: ">=", ast.Eq: "==", ast.NotEq: "!=",
}  # fmt: skip


@dataclass(frozen=True)
class Formula:
    """A parsed formula. Two are equal when their trees are, however they were spaced."""

    root: Node
    text: str = field(compare=False)

    @cached_property
    def evaluate(self) -> Callable[[Values], float]:
        """Call with {name: SI value, or list of SI values}; gives a float, or a bool for a
        condition. Raises FormulaProblem when these values have no answer."""
        return compiled(self.root)

    @cached_property
    def names(self) -> tuple[str, ...]:
        """Every input the formula reads, in the order of evaluation."""
        named = (part.name for part in tree.walk(self.root) if isinstance(part, Name))
        return tuple(dict.fromkeys(name for name in named if name not in tree.CONSTANTS))

    @property
    def is_condition(self) -> bool:
        return tree.is_condition(self.root)


def parse(text: str) -> Formula:
    """The formula that `text` says.

    Raises FormulaError, with the character offset, for everything that is not plain
    arithmetic, and for text longer than 400 characters, deeper than 60 levels or of more
    than 150 parts.
    """
    screen(text)
    indent = len(text) - len(text.lstrip())
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            root = ast.parse(text.strip(), mode="eval").body
    except SyntaxError as error:
        # Python gives offset 0 when the text ends too early.
        offset = indent + error.offset - 1 if error.offset else len(text)
        raise unreadable(text, offset) from error
    except (RecursionError, MemoryError, ValueError) as error:
        raise FormulaError(0, "the formula is nested too deeply", "split it in two") from error
    reader = _Reader(text, indent)
    return Formula(reader.read(root, 1), text)


def check_names(formula: Formula, known: Mapping[str, object]) -> None:
    """FormulaError at the first name that is not an input, with the nearest that is."""
    for part in tree.walk(formula.root):
        if isinstance(part, Name) and part.name not in known and part.name not in tree.CONSTANTS:
            listed = ", ".join(sorted(known)) or "no inputs"
            otherwise = f"it knows {listed}"
            instead = suggestion(part.name, [*known, *tree.CONSTANTS], otherwise)
            raise FormulaError(part.offset, f"unknown name '{part.name}'", instead)


class _Reader:
    """Walks what `ast` understood and lets in only arithmetic."""

    def __init__(self, text: str, indent: int) -> None:
        self.text = text
        self.indent = indent
        self.parts = 0

    def read(self, node: ast.AST, depth: int) -> Node:
        self.parts += 1
        if depth > DEEPEST:
            raise FormulaError(
                self.start(node), f"the formula is nested more than {DEEPEST} deep", "split it in two"
            )
        if self.parts > tree.MOST_PARTS:
            what = f"the formula has more than {tree.MOST_PARTS} parts"
            raise FormulaError(self.start(node), what, "split it in two")
        reading: Callable[[ast.AST, int], Node] | None = getattr(self, f"_{type(node).__name__.lower()}", None)
        if reading is None:
            raise FormulaError(self.start(node), f"{self.shown(node)} is not arithmetic", ALLOWED)
        return reading(node, depth + 1)

    def number(self, node: ast.AST, depth: int) -> Node:
        found = self.read(node, depth)
        if tree.is_condition(found):
            what = f"{self.shown(node)} answers yes or no, but a number is needed here"
            raise FormulaError(found.offset, what, "choose one with 'a if condition else b'")
        return found

    def condition(self, node: ast.AST, depth: int) -> Node:
        found = self.read(node, depth)
        if not tree.is_condition(found):
            what = f"{self.shown(node)} is a number, but yes or no is needed here"
            raise FormulaError(found.offset, what, "compare it with something, such as rain > 0")
        return found

    def start(self, node: ast.AST) -> int:
        return self.indent + getattr(node, "col_offset", 0)

    def end(self, node: ast.AST) -> int:
        return self.indent + getattr(node, "end_col_offset", 0)

    def shown(self, node: ast.AST) -> str:
        written = self.text[self.start(node) : self.end(node)]
        return f"'{written}'" if len(written) <= 40 else f"'{written[:37]}...'"

    def sign(self, before: ast.expr, sign: str, after: ast.AST) -> int:
        """Where the sign between two parts stands; only brackets and blanks are beside it."""
        begin = self.end(before)
        found = self.text.find(sign, begin, self.start(after))
        return found if found >= 0 else begin

    def _constant(self, node: ast.Constant, depth: int) -> Node:
        written = self.text[self.start(node) : self.end(node)]
        if not _DECIMAL.fullmatch(written):
            raise FormulaError(self.start(node), f"{self.shown(node)} is not a plain number", ALLOWED)
        value = float(written)
        if not math.isfinite(value):
            raise FormulaError(self.start(node), f"{self.shown(node)} is too large", "use a unit")
        return Number(value, written, self.start(node))

    def _name(self, node: ast.Name, depth: int) -> Node:
        if node.id in tree.FUNCTIONS:
            what = f"{node.id} is a function"
            raise FormulaError(self.start(node), what, f"give it values: {node.id}(...)")
        if node.id.startswith("__"):
            raise FormulaError(self.start(node), f"{self.shown(node)} is not a name", ALLOWED)
        return Name(node.id, self.start(node))

    def _unaryop(self, node: ast.UnaryOp, depth: int) -> Node:
        if isinstance(node.op, ast.USub):
            return Negative(self.number(node.operand, depth), self.start(node))
        if isinstance(node.op, ast.Not):
            return Not(self.condition(node.operand, depth), self.start(node))
        raise FormulaError(self.start(node), "a sign '+' or '~' says nothing here", "leave it out")

    def _binop(self, node: ast.BinOp, depth: int) -> Node:
        left, right = self.number(node.left, depth), self.number(node.right, depth)
        sign = _ARITHMETIC.get(type(node.op))
        if sign is None:
            raise FormulaError(self.start(node), f"{self.shown(node)} is not arithmetic", ALLOWED)
        return Arithmetic(sign, left, right, self.sign(node.left, sign, node.right))

    def _compare(self, node: ast.Compare, depth: int) -> Node:
        signs = []
        for kind in node.ops:
            if type(kind) not in _COMPARED:
                what = f"{self.shown(node)} does not compare numbers"
                raise FormulaError(self.start(node), what, "use < <= > >= == or !=")
            signs.append(_COMPARED[type(kind)])
        parts = [node.left, *node.comparators]
        operands = tuple(self.number(part, depth) for part in parts)
        return Comparison(tuple(signs), operands, self.sign(parts[0], signs[0], parts[1]))

    def _boolop(self, node: ast.BoolOp, depth: int) -> Node:
        word = "and" if isinstance(node.op, ast.And) else "or"
        conditions = tuple(self.condition(part, depth) for part in node.values)
        return Both(word, conditions, self.sign(node.values[0], word, node.values[1]))

    def _ifexp(self, node: ast.IfExp, depth: int) -> Node:
        condition = self.condition(node.test, depth)
        then, otherwise = self.read(node.body, depth), self.read(node.orelse, depth)
        offset = self.sign(node.body, "if", node.test)
        if tree.is_condition(then) != tree.is_condition(otherwise):
            what = "one side of 'if' is a number and the other answers yes or no"
            raise FormulaError(offset, what, "give both sides the same kind")
        return Choice(condition, then, otherwise, offset)

    def _call(self, node: ast.Call, depth: int) -> Node:
        if not isinstance(node.func, ast.Name):
            raise FormulaError(self.start(node), f"{self.shown(node.func)} cannot be called", ALLOWED)
        function, begin = node.func.id, self.start(node)
        if function not in tree.FUNCTIONS:
            instead = suggestion(function, tree.FUNCTIONS, f"it knows {', '.join(tree.FUNCTIONS)}")
            raise FormulaError(begin, f"unknown function '{function}'", instead)
        if node.keywords:
            raise FormulaError(begin, f"{function} takes plain values only", "leave the name out")
        arguments = tuple(self.number(part, depth) for part in node.args)
        call = Call(function, arguments, begin)
        _check_arguments(call)
        return call


def _check_arguments(call: Call) -> None:
    given, function = len(call.arguments), call.function
    if function in tree.ONE_NUMBER:
        if given != 1:
            what = f"{function} takes one value, not {given}"
            raise FormulaError(call.offset, what, f"write {function}(x)")
        return
    listed = f"{function}(readings)"
    if given == 0 or (given > 1 and function in tree.LIST_ONLY):
        raise FormulaError(call.offset, f"{function} takes one list", f"write {listed}")
    if given == 1 and not any(isinstance(part, Name) for part in tree.walk(call.arguments[0])):
        instead = listed if function in tree.LIST_ONLY else f"{listed} or {function}(a, b)"
        what = f"{function} of one value needs a list of readings"
        raise FormulaError(call.arguments[0].offset, what, f"write {instead}")
