"""Each broken book: `swardbook check` names the right file, line and column, and nothing else."""

import os
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner

from generator.cli import main
from tests.book_folders import BROKEN, SMALLEST, WHOLE, broken_book, broken_books, expected_lines

# Run as an author runs it; starting Python for every book would take a minute.
AS_AN_AUTHOR = ("not-utf-8", "several-problems")


@pytest.mark.parametrize("name", broken_books())
def test_check_prints_exactly_what_is_wrong(name: str, tmp_path: Path) -> None:
    book = broken_book(name, tmp_path)
    run = CliRunner().invoke(main, ["check", "--book", str(book)])
    assert run.stdout.splitlines() == expected_lines(name)
    count = len(expected_lines(name))
    assert run.stderr == ("1 problem\n" if count == 1 else f"{count} problems\n")
    assert run.exit_code == 1


@pytest.mark.parametrize("name", AS_AN_AUTHOR)
def test_check_as_an_author_runs_it(name: str, tmp_path: Path) -> None:
    """In a terminal that knows only ASCII, from the book's own folder."""
    book = broken_book(name, tmp_path)
    plain = {**os.environ, "PYTHONIOENCODING": "ascii"}
    run = subprocess.run(
        [sys.executable, "-c", "from generator.cli import main; main()", "check"],
        cwd=book, env=plain, capture_output=True, text=True, timeout=60,
    )  # fmt: skip
    assert run.stdout.splitlines() == expected_lines(name)
    assert "Traceback" not in run.stderr
    assert run.returncode == 1


def test_there_are_thirty_broken_books_and_each_says_what_it_expects() -> None:
    assert len(broken_books()) >= 30
    for name in broken_books():
        assert expected_lines(name), name
        for line in expected_lines(name):
            place, _, sentence = line.partition(": ")
            path, line_number, column = place.rsplit(":", 2)
            assert int(line_number) >= 1 and int(column) >= 1, line
            assert not path.startswith("/"), line
            assert "; " in sentence, f"{line} does not say what would be right"


def test_problems_in_many_files_are_told_in_one_run() -> None:
    files = {line.split(":")[0] for line in expected_lines("several-problems")}
    assert len(files) == 5


@pytest.mark.parametrize("book", [SMALLEST, WHOLE], ids=["smallest", "whole"])
def test_a_sound_book_is_told_so(book: Path) -> None:
    run = CliRunner().invoke(main, ["check", "--book", str(book)])
    assert run.exit_code == 0, run.output
    assert run.stdout.startswith("The book is in order: ")
    assert run.stdout.count("\n") == 1
    assert run.stderr == ""


def test_broken_books_differ_from_a_sound_one() -> None:
    for name in broken_books():
        assert [f for f in (BROKEN / name).iterdir() if f.name not in ("expected.txt", "base.txt")], name
