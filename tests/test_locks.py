"""What builds a book and what tests need are installed apart, each pinned with its hashes."""

import ast
import re
import shutil
import subprocess
import sys
import tomllib
from importlib.metadata import packages_distributions
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
SITE, TESTS, CHECKS, SOAK = (ROOT / f"requirements{which}.lock" for which in ("", "-dev", "-check", "-soak"))
SETTINGS = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
_PIN = re.compile(r"^([a-z0-9][a-z0-9.-]*)==(\S+)([^\n]*?) ?\\?\n((?:    --hash=\S+(?: \\)?\n)*)", re.MULTILINE)


def names(wanted: list[str]) -> set[str]:
    """'Pint>=0.24' as pint: names as packages are filed."""
    return {plain(re.match(r"[A-Za-z0-9._-]+", each)[0]) for each in wanted}


def plain(name: str) -> str:
    return re.sub(r"[-_.]+", "-", name).lower()


def pins(lock: Path) -> dict[str, set[str]]:
    """Name to what it is pinned to, with the Pythons it is for."""
    found: dict[str, set[str]] = {}
    for name, version, mark, _ in _PIN.findall(lock.read_text(encoding="utf-8")):
        found.setdefault(name, set()).add(version + mark.split("sys_platform")[0].rstrip(" ;"))
    return found


def imported(folder: str) -> dict[str, str]:
    """Distribution to one file that imports it, for what is neither ours nor Python's."""
    where = packages_distributions()
    found = {}
    for file in sorted((ROOT / folder).rglob("*.py")):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            modules = [each.name for each in node.names] if isinstance(node, ast.Import) else [node.module] if isinstance(node, ast.ImportFrom) else []
            for module in modules:
                first = module.split(".")[0]
                if first not in {*sys.stdlib_module_names, "generator", "tests"}:
                    found[plain(where[first][0])] = f"{file.relative_to(ROOT)} imports {module}"
    return found


RUNS = names(SETTINGS["project"]["dependencies"])
MAKES = names(SETTINGS["build-system"]["requires"])  # What makes the package, and never runs in it.
FOR_TESTS = names(SETTINGS["dependency-groups"]["dev"])


def test_the_generator_imports_only_what_builds_a_book() -> None:
    found = imported("generator")
    assert len(found) >= 7
    assert {why for name, why in found.items() if name not in RUNS | MAKES} == set()


def test_what_tests_need_is_named_and_not_installed_for_a_site() -> None:
    found = imported("tests")
    told = {why for name, why in found.items() if name not in RUNS | FOR_TESTS and not any(name in pins(lock) for lock in (SITE, TESTS))}
    assert told == set()
    assert "pytest" in FOR_TESTS and not FOR_TESTS & (RUNS | pins(SITE).keys())


def test_every_dependency_is_pinned_in_its_lock() -> None:
    assert RUNS | names(SETTINGS["dependency-groups"]["install"]) <= pins(SITE).keys()
    assert pins(TESTS).keys() >= FOR_TESTS


def test_what_reads_our_code_is_pinned_and_builds_nothing() -> None:
    wanted = names(SETTINGS["dependency-groups"]["check"])
    assert wanted <= pins(CHECKS).keys() and not wanted & (pins(SITE).keys() | pins(TESTS).keys())


def test_what_tries_our_tests_is_pinned() -> None:
    assert names(SETTINGS["dependency-groups"]["soak"]) <= pins(SOAK).keys()


@pytest.mark.parametrize(("one", "other"), [(SITE, TESTS), (SITE, SOAK), (TESTS, SOAK)], ids=lambda each: each.name)
def test_what_stands_in_two_locks_is_pinned_alike(one: Path, other: Path) -> None:
    both = pins(one).keys() & pins(other).keys()
    assert both and {name for name in both if {each.split(" ;")[0] for each in pins(one)[name]} != {each.split(" ;")[0] for each in pins(other)[name]}} == set()


@pytest.mark.parametrize("lock", [SITE, TESTS, CHECKS, SOAK], ids=lambda each: each.name)
def test_a_lock_has_hashes_and_names_no_place(lock: Path) -> None:
    """So that whoever hands out the packages hands out these, and nobody's own registry is asked for them."""
    text = lock.read_text(encoding="utf-8")
    assert all(hashes for *_, hashes in _PIN.findall(text)) and len(_PIN.findall(text)) == text.count("==") - text.count("'==") - len(re.findall(r"== ?'", text))
    assert not re.search(r"https?:|file:|--(extra-)?index-url|--find-links|@ ", text)


@pytest.mark.parametrize(("wanted", "locks"), [("site", {SITE}), ("check", {SITE, CHECKS}), ("serve", {SITE}), ("test", {SITE, TESTS, CHECKS}), ("soak", {SITE, TESTS, SOAK})])
def test_make_installs_what_is_asked_for(wanted: str, locks: set[Path], tmp_path: Path) -> None:
    for file in (ROOT / "Makefile", ROOT / "pyproject.toml", SITE, TESTS, CHECKS, SOAK):
        shutil.copy(file, tmp_path)
    told = subprocess.run(["make", "--dry-run", wanted], cwd=tmp_path, capture_output=True, text=True, check=True).stdout
    assert set(re.findall(r"-r (\S+)", told)) == {each.name for each in locks}
