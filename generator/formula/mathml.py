"""A tree to MathML Core, as the author wrote it, for "show the working"."""

from collections.abc import Mapping
from html import escape

from generator.formula import nodes as tree
from generator.formula.nodes import Arithmetic, Both, Call, Choice, Comparison, Name, Negative, Node, Not, Number
from generator.formula.parse import Formula

_SIGNS = {"*": "×", "-": "−", "+": "+", "<": "<", "<=": "≤", ">": ">", ">=": "≥", "==": "=", "!=": "≠"}
_AROUND = {"abs": ("|", "|"), "ceil": ("⌈", "⌉"), "floor": ("⌊", "⌋")}
_CALLED = {"log": "ln", "acos": "arccos"}


def to_mathml(formula: Formula, labels: Mapping[str, str], result: str = "") -> str:
    """A `<math>` element showing the formula, each name as its label.

    labels: name -> words; a name without one is shown with its underscores as spaces.
    result: a label to stand before an equals sign, when given.
    """
    body = _Writer(labels).write(formula.root)
    before = f"<mtext>{escape(result)}</mtext><mo>=</mo>" if result else ""
    return f'<math display="block"><mrow>{before}{body}</mrow></math>'


def _sign(text: str) -> str:
    return f"<mo>{escape(text)}</mo>"


def _row(*parts: str) -> str:
    return f"<mrow>{''.join(parts)}</mrow>"


def _words(text: str) -> str:
    return f"<mtext>{escape(text)}</mtext>"


def _bracketed(inner: str, around: tuple[str, str] = ("(", ")")) -> str:
    return _row(_sign(around[0]), inner, _sign(around[1]))


class _Writer:
    def __init__(self, labels: Mapping[str, str]) -> None:
        self.labels = labels

    def write(self, node: Node) -> str:
        match node:
            case Number(_, text):
                return f"<mn>{escape(text)}</mn>"
            case Name("pi"):
                return "<mi>π</mi>"
            case Name(name):
                return _words(self.labels.get(name, name.replace("_", " ")))
            case Negative():
                return _row(_sign("−"), *self.parts(node))
            case Arithmetic():
                return self.arithmetic(node)
            case Call():
                return self.call(node)
            case Choice():
                return self.choice(node)
            case Comparison(operators):
                return self.joined(node, [_sign(_SIGNS[operator]) for operator in operators])
            case Both(operator, conditions):
                return self.joined(node, [_words(f" {operator} ")] * (len(conditions) - 1))
            case Not():
                return _row(_words("not "), *self.parts(node))
        raise AssertionError(f"no such part of a formula: {node!r}")

    def parts(self, node: Node) -> list[str]:
        """The children, with brackets where the notation needs them."""
        return [self.part(*pair) for pair in zip(tree.children(node), tree.needs(node), strict=True)]

    def part(self, child: Node, need: int) -> str:
        """One child. Each is written once only: a part written twice at every level takes time without end."""
        written = self.write(child)
        return written if tree.binding(child) >= need else _bracketed(written)

    def joined(self, node: Node, signs: list[str]) -> str:
        first, *rest = self.parts(node)
        pairs = (sign + part for sign, part in zip(signs, rest, strict=True))
        return _row(first, *pairs)

    def arithmetic(self, node: Arithmetic) -> str:
        # A fraction bar and a raised exponent bracket what they hold.
        if node.operator == "/":
            return f"<mfrac>{_row(self.write(node.left))}{_row(self.write(node.right))}</mfrac>"
        if node.operator == "**":
            base = self.part(node.left, tree.needs(node)[0])
            return f"<msup>{_row(base)}{_row(self.write(node.right))}</msup>"
        return self.joined(node, [_sign(_SIGNS[node.operator])])

    def call(self, node: Call) -> str:
        inner = [self.write(argument) for argument in node.arguments]
        if node.function == "sqrt":
            return f"<msqrt>{_row(inner[0])}</msqrt>"
        if node.function == "exp":
            return f"<msup><mi>e</mi>{_row(inner[0])}</msup>"
        if node.function in _AROUND:
            return _bracketed(inner[0], _AROUND[node.function])
        name = _CALLED.get(node.function, node.function.replace("_", " "))
        return _row(f"<mi>{name}</mi>", _bracketed(_sign(",").join(inner)))

    def choice(self, node: Choice) -> str:
        """Cases, one a line: value, if condition; the last line is 'otherwise'."""
        lines: list[tuple[str, str]] = []
        rest: Node = node
        while isinstance(rest, Choice):
            condition = _row(_words("if "), self.write(rest.condition))
            lines.append((self.write(rest.then), condition))
            rest = rest.otherwise
        lines.append((self.write(rest), _words("otherwise")))
        rows = "".join(f"<mtr><mtd>{value}</mtd><mtd>{when}</mtd></mtr>" for value, when in lines)
        return _row('<mo stretchy="true">{</mo>', f"<mtable>{rows}</mtable>")
