"""The rooms of generator/ stand in a row: who may import whom, read from every import with `ast`."""

import ast
import re
import sys
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1] / "generator"
FLOOR = {"findings", "units"}

# Room -> the rooms it may import, and the libraries from outside Python that it may use. Pages mark their own MathML
# as markup; render reads the examples beside each component, never the book.
MAY_IMPORT: dict[str, tuple[set[str], set[str]]] = {
    "findings": (set(), set()),
    "moment": (set(), set()),
    "units": ({"findings"}, {"pint"}),
    "model": (FLOOR, {"pydantic", "pydantic_core", "yaml"}),
    "formula": (FLOOR, set()),
    "turf": ({*FLOOR, "formula", "model"}, {"numpy"}),
    "checks": ({*FLOOR, "formula", "model", "turf"}, set()),
    "outputs": ({*FLOOR, "formula", "model", "turf"}, {"icalendar", "segno"}),
    "pages": ({*FLOOR, "formula", "model", "turf", "outputs"}, {"markupsafe"}),
    "search": ({"pages"}, {"yaml"}),
    "searchable": (set(), set()),
    "escaped": (set(), {"jinja2", "markupsafe"}),
    "glossed": ({"model", "pages"}, set()),
    "render": ({"units", "pages"}, {"jinja2", "markupsafe", "yaml"}),
    "site": ({*FLOOR, "model", "turf", "outputs", "pages", "render", "search", "searchable", "glossed"}, set()),
    "building": ({"findings", "model", "outputs", "render"}, {"mkdocs", "yaml"}),
    "commands": ({*FLOOR, "moment", "model", "formula", "turf", "checks", "outputs", "pages", "building"}, {"click"}),
    "plugin": ({*FLOOR, "moment", "model", "formula", "turf", "checks", "outputs", "pages", "render", "search", "searchable", "escaped", "site"}, {"jinja2", "mkdocs"}),
    "cli": ({*FLOOR, "model", "formula", "turf", "checks", "outputs", "pages", "commands"}, {"click"}),
    "start": ({"cli"}, set()),
}
# Of the model, turf takes the records; reading and writing files stays below.
MODEL_THAT_READS = {"load", "book", "tree", "syntax", "sentences", "folders", "disk", "settings", "written_page", "schema"}
# Turf's answers follow from what it is given, and from nothing else.
TURF_NEVER = {"random", "secrets", "os", "pathlib", "io", "time", "urllib", "socket", "subprocess"}
TODAY = {"today", "now", "utcnow", "fromtimestamp"}

FILES = sorted(ROOT.rglob("*.py"))


def room_of(file: Path) -> str:
    return file.relative_to(ROOT).parts[0].removesuffix(".py")


@cache
def nodes(file: Path) -> tuple[ast.AST, ...]:
    return tuple(ast.walk(ast.parse(file.read_text(encoding="utf-8"))))


def imports(file: Path) -> Iterator[str]:
    """Everything that a file imports: pint, and from the house with the name, generator.model.grass.Grass."""
    for node in nodes(file):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{file} imports relatively; write the import in full"
            ours = node.module.split(".")[0] == "generator"
            yield from (f"{node.module}.{alias.name}" for alias in node.names) if ours else (node.module,)


def calls(file: Path) -> Iterator[str]:
    for node in nodes(file):
        if isinstance(node, ast.Call):
            yield node.func.id if isinstance(node.func, ast.Name) else getattr(node.func, "attr", "")


def name(file: Path) -> str:
    return str(file.relative_to(ROOT))


@pytest.mark.parametrize("file", [f for f in FILES if f != ROOT / "__init__.py"], ids=name)
def test_a_room_imports_only_what_stands_below_it(file: Path) -> None:
    room = room_of(file)
    assert room in MAY_IMPORT, f"{name(file)} is in no room of the house"
    rooms, libraries = MAY_IMPORT[room]
    for module in imports(file):
        first, *rest = module.split(".")
        if first == "generator" and rest:
            assert rest[0] in {*rooms, room}, f"{name(file)} imports {module}"
        elif first != "generator" and first not in sys.stdlib_module_names:
            assert first in libraries, f"{name(file)} imports {module}"


@pytest.mark.parametrize("file", [f for f in FILES if room_of(f) == "turf"], ids=name)
def test_turf_is_pure(file: Path) -> None:
    for module in imports(file):
        first, *rest = module.split(".")
        assert first not in TURF_NEVER, f"{name(file)} imports {module}"
        if first == "generator" and rest[:1] == ["model"]:
            assert not MODEL_THAT_READS.intersection(rest[1:]), f"{name(file)} imports {module}, not a record"
    called = set(calls(file))
    assert "open" not in called, f"{name(file)} opens a file"
    assert not TODAY & called, f"{name(file)} asks what day it is"


@pytest.mark.parametrize("file", [f for f in FILES if room_of(f) != "moment"], ids=name)
def test_what_day_it_is_enters_at_the_door_only(file: Path) -> None:
    assert not {"today", "now", "utcnow"} & set(calls(file)), f"{name(file)} asks what day it is"


@pytest.mark.parametrize("file", FILES, ids=name)
def test_nothing_an_author_wrote_is_run_as_code(file: Path) -> None:
    assert not {"eval", "exec", "unsafe_load"} & set(calls(file)), f"{name(file)} runs text as code"


def own_files(*endings: str) -> list[Path]:
    """Files of those kinds that the project wrote: not a library that it ships."""
    return sorted(f for ending in endings for f in ROOT.rglob(f"*{ending}") if "vendor" not in f.parts)


@pytest.mark.parametrize("file", own_files(".js"), ids=name)
def test_scripts_write_text_and_never_markup(file: Path) -> None:
    text = file.read_text(encoding="utf-8")
    for word in (r"\binnerHTML\b", r"\bouterHTML\b", r"\binsertAdjacentHTML\b", r"\beval\s*\(", r"\bnew\s+Function\b",
                 r"\bdocument\.write", r"^\s*import\s", r"^\s*export\s"):  # fmt: skip
        assert not re.search(word, text, re.MULTILINE), f"{name(file)} uses {word}"


@pytest.mark.parametrize("file", own_files(".j2", ".html"), ids=name)
def test_templates_escape_what_authors_write(file: Path) -> None:
    text = file.read_text(encoding="utf-8")
    assert not re.search(r"\|\s*safe\b", text), f"{name(file)} prints something unescaped"
    assert not re.search(r"\son[a-z]+\s*=", text), f"{name(file)} holds an inline handler"


def test_the_guards_above_would_notice(tmp_path: Path) -> None:
    file = tmp_path / "sample.py"
    file.write_text("import pint.x\nfrom generator.model import load\nfrom generator import cli\nopen('x')\ndate.today()\n")
    assert list(imports(file)) == ["pint.x", "generator.model.load", "generator.cli"]
    assert {"open", "today"} <= set(calls(file))
