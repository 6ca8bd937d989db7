"""Each public function of the engine says what it takes and gives in which units, and where its rule comes from."""

import ast
import re
from pathlib import Path

import pytest

GENERATOR = Path(__file__).parents[1] / "generator"
ROOMS = ("season", "calculators", "jobs", "field", "words")
# A unit in square brackets or in words; "any unit" for arithmetic that keeps whatever it is given.
UNIT = re.compile(r"(?i)\[[^\]]+\]|°C|\bSI\b|\bany unit\b")
# What is said to be a source: who published it and when, an equation by its number, a text of the book, a function of ours, or the trade itself.
ORIGIN = re.compile(r"\bSources?: +(?P<said>.+?)(?:\.\s|\.$|\Z)", re.DOTALL)
REAL = re.compile(r"\b(1[89]|20)[0-9]{2}\b|equations? |chapter |\bdata/|`|University|OWASP|Observatory|Soil Conservation|RFC|common practice|textbook|the place's own record|normal distribution|FAO-56|calendar and sun|Poisson")


def public_functions() -> list[tuple[str, ast.FunctionDef]]:
    found = []
    for file in sorted(file for room in ROOMS for file in (GENERATOR / room).rglob("*.py")):
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
def test_a_function_over_numbers_names_its_units(name: str, node: ast.FunctionDef) -> None:
    assert UNIT.search(ast.get_docstring(node) or ""), f"{name} names no unit"


@pytest.mark.parametrize(("name", "node"), FUNCTIONS, ids=[name for name, _ in FUNCTIONS])
def test_what_is_called_a_source_is_one(name: str, node: ast.FunctionDef) -> None:
    """What has no source says none: that it is ours goes without saying."""
    text = " ".join((ast.get_docstring(node) or "").split())
    assert not re.search(r"\bOurs\b[.:]", text), name
    assert all(REAL.search(found["said"]) for found in ORIGIN.finditer(text)), f"{name}: {text}"


def test_there_are_functions_to_look_at() -> None:
    assert len(FUNCTIONS) > 20
