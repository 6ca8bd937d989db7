"""What is possible and seldom so gets a line of its own, which refuses nothing; what must not be told is not."""

import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner

from generator.book.fields.plausible import OF_QUANTITY, PLAUSIBLE
from generator.cli import main
from generator.units import unit
from tests.book_folders import SMALLEST, WHOLE, edit

GRASS, PLACE, PRACTICE, TASK = "data/grasses/plaingrass.yml", "data/places/flatfield.yml", "data/practice.yml", "data/tasks/sweep.yml"


def told(base: Path, to: Path, edits: dict[str, dict[str, str]]) -> tuple[int, list[str]]:
    """How `swardbook check` ends for a book with these edits, and its lines."""
    book = Path(shutil.copytree(base, to / "book"))
    for file, changes in edits.items():
        edit(book / file, changes)
    run = CliRunner().invoke(main, ["check", "--book", str(book)])
    return run.exit_code, run.stdout.splitlines()


UNUSUAL = {
    "a meadow": (SMALLEST, GRASS, "low: 20, high: 30, use: 25", "low: 20, high: 300, use: 25", "8:32: unusual: 300 mm for 'mowing_height', where 3 to 150 mm is usual"),
    "a wet month": (SMALLEST, PLACE, "rain_mm: [80, 80,", "rain_mm: [80, 1300,", "16:17: unusual: 1300 mm for 'rain_mm', where 0 to 1200 mm is usual"),
    "a month out of step": (SMALLEST, PLACE, "mean_minimum_c: [17, 17, 15,", "mean_minimum_c: [17, 4, 15,", "15:24: unusual: February: the mean minimum lies 12 K below"),
    "frost in the warm": (SMALLEST, PLACE, "  rain_mm:", "  frost_days: [9, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]\n  rain_mm:", "16:16: unusual: January: 9 nights of frost"),
    "days like nights": (
        SMALLEST, PLACE, "mean_maximum_c: [28, 28, 26, 23, 20, 17, 16, 18, 21, 23, 25, 27]", "mean_maximum_c: [28, 28, 26, 20, 14, 9, 5.5, 9, 14, 20, 24, 27]",
        "14:43: unusual: July: days are no warmer",
    ),
    "few years": (SMALLEST, PLACE, "first_year: 1991", "first_year: 2019", "11:14: unusual: 2 years are few"),
    "a dear pack": (WHOLE, PRACTICE, "price: 40", "price: 40000", "11:12: unusual: 40000 for 'price', where 0 to 3000 is usual"),
    "a strong feed": (WHOLE, PRACTICE, "price: 40\n", "price: 40\n    full_rate_kg_per_100_m2: 9\n", "12:30: unusual: this rate brings 18 g/m2 of nitrogen"),
    "a start to ask about": (
        WHOLE, "data/calculators/sweeping.yml", "default: 50", "default: 50\n    usual_low: 80", "13:14: unusual: the form starts with 50, about which it would ask",
    ),
}  # fmt: skip


@pytest.mark.parametrize("case", UNUSUAL)
def test_what_is_unusual_is_told_and_refuses_nothing(case: str, tmp_path: Path) -> None:
    base, file, old, new, line = UNUSUAL[case]
    code, lines = told(base, tmp_path, {file: {old: new}})
    assert code == 0
    first, last = lines
    assert first.startswith(f"{file}:{line}") and "; " in first
    assert last.startswith("The book is in order: ")


def test_prices_are_not_judged_in_money_of_another_worth(tmp_path: Path) -> None:
    code, lines = told(WHOLE, tmp_path, {PRACTICE: {"price: 40\n": "price: 40000\n", "feed: plain-feed": "feed: plain-feed\ncurrency: JPY"}})
    assert (code, len(lines)) == (0, 1)


def test_an_unusual_number_beside_a_mistake_is_told_with_it_and_not_counted(tmp_path: Path) -> None:
    book = Path(shutil.copytree(SMALLEST, tmp_path / "book"))
    edit(book / PLACE, {"rain_mm: [80, 80,": "rain_mm: [80, 1300,", "country: AU": "country: OZ"})
    run = CliRunner().invoke(main, ["check", "--book", str(book)])
    assert run.exit_code == 1 and run.stderr == "1 problem\n" and len(run.stdout.splitlines()) == 2


@pytest.mark.parametrize("line", [
    "summary: An invented grass. # From memory.", "summary: An invented grass  # ours, not theirs", "summary: 'An invented grass #3.'",
    "summary: Grass#3 of a C# book.", "summary: '“Plain” is what they call it.'",
])
def test_an_honest_comment_and_a_quoted_sign_are_left_alone(line: str, tmp_path: Path) -> None:
    code, lines = told(SMALLEST, tmp_path, {GRASS: {"summary: An invented grass.": line}})
    assert (code, len(lines)) == (0, 1), lines


def test_every_line_of_the_table_has_its_usual_within_the_possible_and_a_reason() -> None:
    for name, row in {**PLAUSIBLE, **OF_QUANTITY}.items():
        assert row.lowest <= row.usual_low <= row.usual_high <= row.highest, name
        assert row.unit == "money" or unit(row.unit), name
        assert (row.why and row.why[0].islower()) or not row.why[0].isalpha(), name
        assert not row.why.endswith(".") and "; " not in row.why, f"{name}: a message ends it, and parts what is wrong from what is right by '; '"
