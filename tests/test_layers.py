"""The rooms of generator/ stand in a row: who may import whom, read from every import with `ast`."""

import ast
import io
import re
import sys
import tokenize
from collections import Counter
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from generator.site.page_kind import folder_of
from generator.site.registry import PAGE_KINDS

ROOT = Path(__file__).parents[1] / "generator"
FLOOR = {"findings", "units"}
ENGINE = {*FLOOR, "formula", "book", "season", "calculators", "words", "jobs", "field"}

# Room -> the rooms it may import, and the libraries from outside Python that it may use. Pages mark their own MathML as markup; the frame
# reads the examples beside each part, never the book.
MAY_IMPORT: dict[str, tuple[set[str], set[str]]] = {
    "findings": (set(), set()),
    "moment": (set(), set()),
    "units": ({"findings"}, {"pint"}),
    "formula": (FLOOR, set()),
    "book": (FLOOR, {"pydantic", "pydantic_core", "yaml"}),
    "season": ({*FLOOR, "formula", "book"}, set()),
    "calculators": ({*FLOOR, "formula", "book", "season"}, set()),
    "words": ({*FLOOR, "formula", "book", "season", "calculators"}, set()),
    "jobs": (ENGINE - {"field"}, set()),
    "field": (ENGINE, set()),
    "checks": (ENGINE, set()),
    "files": (ENGINE, {"icalendar", "segno"}),
    "site": ({*ENGINE, "files"}, {"jinja2", "markupsafe", "rcssmin", "rjsmin", "selectolax", "yaml"}),
    "building": ({"findings", "book", "files", "site"}, {"jinja2", "mkdocs", "setuptools", "yaml"}),
    "commands": ({*ENGINE, "moment", "checks", "files", "building"}, {"click"}),
    "plugin_reading": ({"moment", "book", "checks"}, {"mkdocs"}),
    "plugin": ({*FLOOR, "moment", "book", "checks", "site", "plugin_reading"}, {"jinja2", "mkdocs"}),
    "cli": ({*ENGINE, "checks", "files", "commands"}, {"click"}),
    "start": ({"cli"}, set()),
}
# Rooms whose answers follow from what they are given, and from nothing else: of the book they take records, and read no file.
PURE = {"season", "calculators", "words", "jobs", "field", "formula", "units"}
READS = ("generator.book.loading", "generator.book.lists.csv_reading", "generator.book.settings", "generator.book.written_page")
PURE_NEVER = {"random", "secrets", "os", "pathlib", "io", "time", "urllib", "socket", "subprocess"}
TODAY = {"today", "now", "utcnow", "fromtimestamp"}
MOST_FILES, MOST_LINES, MOST_LINES_OF_THE_PLUGIN = 20, 300, 120
SOURCE = {".py", ".js", ".css", ".j2", ".html", ".yml"}

FILES = sorted(ROOT.rglob("*.py"))
ALL_FILES = {folder: [path for path in (ROOT.parent / folder).rglob("*") if path.is_file()] for folder in ("generator", "tests", "data", ".ci")}


def room_of(file: Path) -> str:
    return file.relative_to(ROOT).parts[0].removesuffix(".py")


@cache
def nodes(file: Path) -> tuple[ast.AST, ...]:
    return tuple(ast.walk(ast.parse(file.read_text(encoding="utf-8"))))


def imports(file: Path) -> Iterator[str]:
    """Everything that a file imports: pint, and from the house with the name, generator.book.records.grass.Grass."""
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


@pytest.mark.parametrize("file", [f for f in FILES if room_of(f) in PURE], ids=name)
def test_the_engine_is_pure(file: Path) -> None:
    for module in imports(file):
        assert module.split(".")[0] not in PURE_NEVER, f"{name(file)} imports {module}"
        assert not module.startswith(READS), f"{name(file)} imports {module}, not a record"
    called = set(calls(file))
    assert "open" not in called, f"{name(file)} opens a file"
    assert not TODAY & called, f"{name(file)} asks what day it is"


def test_a_command_goes_by_the_engine_and_never_by_the_pages() -> None:
    for file in (*(ROOT / "commands").glob("*.py"), ROOT / "cli.py", ROOT / "start.py"):
        assert not [module for module in imports(file) if module.startswith("generator.site.book_site")], name(file)


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


def source_files() -> list[Path]:
    return [file for file in ROOT.rglob("*") if file.suffix in SOURCE and "vendor" not in file.parts]


def test_a_room_stays_small_enough_to_look_over() -> None:
    """Drawings of one part are no source; words.yml and the like are read by search, not by people."""
    beside = Counter(name(file.parent) for file in source_files())
    assert {folder: count for folder, count in beside.items() if count > MOST_FILES} == {}
    code = [file for file in source_files() if file.suffix in {".py", ".js"}]
    lines = {name(file): len(file.read_text(encoding="utf-8").splitlines()) for file in code}
    assert {path: count for path, count in lines.items() if count > MOST_LINES} == {}
    assert lines["plugin.py"] < MOST_LINES_OF_THE_PLUGIN


def test_one_name_means_one_thing() -> None:
    """No two files, no two public classes of one name. A command's file is named for what is typed; a view and a room's head for their place."""
    own = [file for file in FILES if room_of(file) != "commands" and file.stem not in {"__init__", "view"}]
    stems = Counter(file.stem for file in own)
    classes = Counter(node.name for file in FILES for node in nodes(file) if isinstance(node, ast.ClassDef) and not node.name.startswith("_"))
    assert [each for counted in (stems, classes) for each, count in counted.items() if count > 1] == []


# What a text of ours points at: a file with its ending, or a module of the house.
_FILE = re.compile(r"(?<![\w./-])(?:[\w-]+/)+[\w.-]+\.(?:py|js|yml|css|md|j2)\b|(?<![\w./-])[\w-]+\.(?:py|js|j2)\b")
_MODULE = re.compile(r"\bgenerator(?:\.[a-z_]+)+")
# Written by a build, or by a person into a book of their own.
NOT_OURS = ("assets/", "data/", "book/", "site/", "content/", "mkdocs.js")


def pointers(text: str) -> set[str]:
    return {each for each in _FILE.findall(text) if not each.startswith(NOT_OURS)}


@pytest.mark.parametrize("file", [*own_files(".py", ".js", ".css", ".j2"), ROOT / "../DEVELOPERS.md", ROOT / "../README.md"], ids=lambda file: file.name)
def test_what_a_text_points_at_is_there(file: Path) -> None:
    """A path may be told from the repository, from the generator, from a room, or be the name of a file alone."""
    there = [f"/{path.relative_to(ROOT.parent).as_posix()}" for folder in ("generator", "tests", "data", ".ci") for path in ALL_FILES[folder]]
    text = file.read_text(encoding="utf-8")
    said = text if file.suffix == ".md" else " ".join([*comments_of(file, text)])
    stale = {each for each in pointers(said) if not any(path.endswith(f"/{each}") for path in there) and not (file.parent / each).exists()}
    stale |= {each for each in _MODULE.findall(said) if file.suffix == ".py" and not is_module(each)}
    assert stale == set(), f"{file}: {stale}"


def comments_of(file: Path, text: str) -> Iterator[str]:
    if file.suffix == ".py":
        yield from (token.string for token in tokenize.generate_tokens(io.StringIO(text).readline) if token.type == tokenize.COMMENT)
        documented = (ast.Module, ast.ClassDef, ast.FunctionDef)
        yield from (ast.get_docstring(node) or "" for node in nodes(file) if isinstance(node, documented))
    else:
        yield from re.findall(r"/\*.*?\*/|\{#.*?#\}|^\s*//.*$", text, re.DOTALL | re.MULTILINE)


def is_module(dotted: str) -> bool:
    path = ROOT.parent / dotted.replace(".", "/")
    return path.is_dir() or path.with_suffix(".py").is_file() or path.parent.with_suffix(".py").is_file()


def test_every_kind_of_page_is_one_folder_and_one_line() -> None:
    folders = {folder.name for folder in (ROOT / "site/pages").iterdir() if folder.is_dir() and folder.name != "__pycache__"}
    assert folders == {folder_of(kind.name) for kind in PAGE_KINDS}
    for kind in PAGE_KINDS:
        folder = ROOT / "site/pages" / folder_of(kind.name)
        assert (folder / f"{kind.name}.html.j2").is_file() and (folder / "view.py").is_file(), kind.name


def test_the_guards_above_would_notice(tmp_path: Path) -> None:
    file = tmp_path / "sample.py"
    file.write_text("import pint.x\nfrom generator.book import load\nfrom generator import cli\nopen('x')\ndate.today()\n")
    assert list(imports(file)) == ["pint.x", "generator.book.load", "generator.cli"]
    assert {"open", "today"} <= set(calls(file))
