"""A unit that is none, or of another kind, is told at its line wherever it stands, and nothing else goes wrong for it."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
import yaml

from generator.book.fields.sourced import Claim
from generator.book.fields.walk import parts
from generator.checks import check_book
from generator.season.task_figures import TASK_FIGURES
from tests.book_folders import WHOLE
from tests.our_book import ROOT
from tests.slices import every
from tests.yaml_files import read_yaml

NO_UNIT, ANOTHER_KIND = "hectre", "psi"


def figures(root: Path) -> Iterator[tuple[str, tuple[str | int, ...]]]:
    """Each figure of a book: its file, and its place there."""
    book = check_book(root).book
    for kind, id, record in book.records():
        for path, part in parts(record):
            if isinstance(part, Claim):
                yield book.where(kind, id).path, path


def files_told(root: Path, to: Path, file: str, path: tuple[str | int, ...], unit: str) -> set[str]:
    """Files in which something is told once that figure has that unit."""
    for part in ("data", "content"):
        shutil.copytree(root / part, to / part)
    shutil.copy(root / "mkdocs.yml", to)
    written = read_yaml(to / file)
    at = written
    for key in path:
        at = at[key]
    at["unit"] = unit
    (to / file).write_text(yaml.dump(written, Dumper=yaml.CSafeDumper, allow_unicode=True, sort_keys=False, width=4000), encoding="utf-8")
    return {finding.where.path for finding in check_book(to).findings}


@pytest.mark.parametrize("unit", [NO_UNIT, ANOTHER_KIND])
@pytest.mark.parametrize(("file", "path"), every(9, list(figures(WHOLE))))
def test_a_wrong_unit_is_told_in_its_file(file: str, path: tuple[str | int, ...], unit: str, tmp_path: Path) -> None:
    told = files_told(WHOLE, tmp_path, file, path, unit)
    assert file in told or (unit == ANOTHER_KIND and path[0] == "figures")  # What no code reads by name may be of any kind.


@pytest.mark.soak
@pytest.mark.parametrize("unit", [NO_UNIT, ANOTHER_KIND])
@pytest.mark.parametrize(("task", "name"), TASK_FIGURES)
def test_a_wrong_unit_of_what_the_engine_takes_from_tasks_is_told(task: str, name: str, unit: str, tmp_path: Path) -> None:
    assert f"data/tasks/{task}.yml" in files_told(ROOT, tmp_path, f"data/tasks/{task}.yml", ("figures", name), unit)
