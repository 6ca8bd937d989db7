"""What a command ends with, as README says it: a script may go by the number alone."""

import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from generator.cli import main
from generator.commands.exit_codes import OF_EVERY_COMMAND, OF_HOLD
from tests.book_folders import BOOKS

ROOT = Path(__file__).parents[2]
WHOLE = str(BOOKS / "whole")


def code(*words: str) -> int:
    return CliRunner().invoke(main, list(words)).exit_code


def test_the_readme_has_the_same_numbers() -> None:
    rows = re.findall(r"^\| (\d+) \| ", (ROOT / "README.md").read_text(encoding="utf-8"), re.MULTILINE)
    assert [int(row) for row in rows] == [code.value for code, _ in (*OF_EVERY_COMMAND, *OF_HOLD[1:])]


def test_help_says_them() -> None:
    assert "0 when" in CliRunner().invoke(main, ["--help"]).output and "30" in CliRunner().invoke(main, ["hold", "--help"]).output


def test_done_findings_and_usage() -> None:
    assert code("check", "--book", WHOLE) == 0
    assert code("check", "--book", str(BOOKS / "broken/empty-file")) == 1
    assert code("calc", "sweping", "--book", WHOLE) == 2
    assert code("nothing-such") == 2


@pytest.mark.parametrize(("answer", "number"), [("go", 0), ("care", 10), ("hold", 20), ("ask", 30)])
def test_hold_answers_by_a_number(answer: str, number: int) -> None:
    """One rule of the invented hold for each answer; `--json` ends alike."""
    words = {"go": ["leaf=dry", "soil=moist", "wind=2 km/h"], "care": ["leaf=wet", "soil=moist", "wind=2 km/h"], "hold": ["wind=60 km/h"], "ask": []}[answer]
    for form in ([], ["--json"]):
        assert code("hold", "sweep", *words, *form, "--book", WHOLE) == number
