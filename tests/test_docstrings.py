"""Each public function of turf says what it takes and gives in which units, and where its rule comes from."""

import ast
import re
from pathlib import Path

import pytest

TURF = Path(__file__).parents[1] / "generator" / "turf"
# A unit in square brackets or in words; "any unit" for arithmetic that keeps whatever it is given.
UNIT = re.compile(r"(?i)\[[^\]]+\]|°C|\bSI\b|\bany unit\b")
ORIGIN = re.compile(r"\b(Sources?|Ours): \S")


def public_functions() -> list[tuple[str, ast.FunctionDef]]:
    found = []
    for file in sorted(TURF.glob("*.py")):
        for node in ast.parse(file.read_text(encoding="utf-8")).body:
            if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
                found.append((f"{file.stem}.{node.name}", node))
    return found


FUNCTIONS = public_functions()


def numeric(node: ast.FunctionDef) -> bool:
    """True for a function that takes or gives measured numbers itself, rather than counts or records that know units."""
    hints = [a.annotation for a in (*node.args.args, *node.args.kwonlyargs)] + [node.returns]
    return any(re.search(r"\b(float|Series|Daily)\b", ast.unparse(hint)) for hint in hints if hint)


@pytest.mark.parametrize(("name", "node"), FUNCTIONS, ids=[name for name, _ in FUNCTIONS])
def test_a_function_says_what_it_does(name: str, node: ast.FunctionDef) -> None:
    assert ast.get_docstring(node), f"{name} has no docstring"


@pytest.mark.parametrize(("name", "node"), [f for f in FUNCTIONS if numeric(f[1])], ids=lambda v: v if isinstance(v, str) else "")
def test_a_function_over_numbers_names_its_units_and_its_source(name: str, node: ast.FunctionDef) -> None:
    text = ast.get_docstring(node) or ""
    assert UNIT.search(text), f"{name} names no unit"
    assert ORIGIN.search(text), f"{name} has no 'Source:' line, nor one that begins 'Ours:'"


def test_there_are_functions_to_look_at() -> None:
    assert len(FUNCTIONS) > 20
