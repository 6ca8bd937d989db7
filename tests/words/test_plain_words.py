"""What clients read is plain."""

from collections.abc import Iterator
from pathlib import Path
from statistics import median
from typing import Any

import pytest

from tests.words.reading_grade import grade
from tests.yaml_files import read_yaml

DATA = Path(__file__).parents[2] / "data"
SHEETS = sorted((DATA / "aftercare").glob("*.yml"))
PROBLEMS = sorted((DATA / "problems").glob("*.yml"))
HIGHEST_MEDIAN_GRADE = 8

# The trade's words that a client need not know, unless the sheet is named after one of them.
TRADE_WORDS = (
    "scarif", "dethatch", "thatch", "rhizome", "stolon", "nitrogen", "irrigat", "aerat", "hollow tine", "renovat", "amend",
    "evapotranspiration", "herbicide", "pre-emergent", "dormant", "establish", "cultivar", "calibrat",
)  # fmt: skip


def prose(value: Any, key: str = "") -> Iterator[str]:
    """Every text of a file that a reader reads: not ids, sources, units or search words."""
    if isinstance(value, dict):
        for name, part in value.items():
            if name not in {"source", "misspellings", "unit", "id", "task", "tasks", "cautions", "after", "fill", "calculator", "names", "signs"}:
                yield from prose(part, name)
    elif isinstance(value, list):
        for part in value:
            yield from prose(part, key)
    elif isinstance(value, str) and " " in value:
        yield value


def read(path: Path) -> Any:
    return read_yaml(path)


def test_there_are_sheets_to_read():
    assert len(SHEETS) >= 5


@pytest.mark.parametrize("sheet", [*SHEETS, *PROBLEMS], ids=lambda path: path.stem)
def test_a_client_of_eight_years_schooling_can_read_each_sheet(sheet):
    grades = sorted((grade(text), text) for text in prose(read(sheet)))
    assert median(number for number, _ in grades) <= HIGHEST_MEDIAN_GRADE, grades[-5:]
    whole = " ".join(text if text.endswith((".", "!", "?")) else text + "." for _, text in grades)
    assert grade(whole) <= HIGHEST_MEDIAN_GRADE, grades[-5:]


@pytest.mark.parametrize("sheet", SHEETS, ids=lambda path: path.stem)
def test_a_sheet_uses_no_word_of_the_trade(sheet):
    record = read(sheet)
    text = " ".join(prose({name: part for name, part in record.items() if name not in {"name", "job"}})).lower()
    assert [word for word in TRADE_WORDS if word in text] == []
