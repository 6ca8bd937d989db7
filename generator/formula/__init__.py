"""The formula language: arithmetic with units, checked, evaluated, compiled and printed."""

from generator.formula.functions import plain_sum
from generator.formula.javascript import to_javascript
from generator.formula.mathml import to_mathml
from generator.formula.nodes import FormulaError, FormulaProblem, text_of
from generator.formula.parse import Formula, check_names, parse
from generator.formula.unit_check import ListOf, check, result_dimension


def to_text(formula: Formula) -> str:
    """The formula in plain notation; parses back to the same tree."""
    return text_of(formula.root)


__all__ = [
    "Formula",
    "FormulaError",
    "FormulaProblem",
    "ListOf",
    "check",
    "check_names",
    "parse",
    "plain_sum",
    "result_dimension",
    "to_javascript",
    "to_mathml",
    "to_text",
]
