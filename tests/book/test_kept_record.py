"""A kept work record is read as Python's own csv module reads it, and every wrong value is told where it stands."""

import csv
import io
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.book.book import Book
from generator.book.lists.csv_reading import cells
from generator.book.lists.kept_record import read_kept
from tests.our_book import book as our_book

HEADER = "work,date,lawn,grass,area,product,amount,nitrogen_percent\n"


@pytest.fixture(scope="module")
def book() -> Book:
    return our_book()


def kept(tmp_path: Path, text: str) -> Path:
    file = tmp_path / "kept.csv"
    file.write_text(text, encoding="utf-8", newline="")
    return file


@given(st.lists(st.lists(st.text(alphabet='ab,"\n\' =', max_size=6), min_size=2, max_size=4), max_size=4))
def test_rows_are_those_of_the_csv_module(rows: list[list[str]]) -> None:
    """RFC 4180, with Python's csv module as the other reader."""
    written = io.StringIO()
    csv.writer(written).writerows(rows)
    assert [[cell.text for cell in row] for row in cells(written.getvalue(), "x")] == rows


def test_each_value_knows_its_line_and_column() -> None:
    rows = list(cells('a,"b\nc",d\r\ne,,f', "x"))
    assert [[(cell.text, cell.where.line, cell.where.column) for cell in row] for row in rows] == [
        [("a", 1, 1), ("b\nc", 1, 3), ("d", 2, 4)], [("e", 2 + 1, 1), ("", 3, 3), ("f", 3, 4)],
    ]


@pytest.mark.parametrize(("row", "told"), [
    ("feed,2026-02-30,L1,kikuyu,240 m2,P,5 kg,21 %", "kept.csv:2:6: '2026-02-30' is not a date; write year, month and day, such as 2026-10-12"),
    ("dig,2026-02-03,L1,kikuyu,240 m2,P,5 kg,21 %", "kept.csv:2:1: 'dig' is not a choice here; it is one of feed, spray"),
    ("feed,2026-02-03,Mr Smith,kikuyu,240 m2,P,5 kg,21 %", "kept.csv:2:17: 'Mr Smith' is not a lawn's code; use letters, digits and hyphens only"),
    ("feed,2026-02-03,L1,kikuyo,240 m2,P,5 kg,21 %", "kept.csv:2:20: no grass 'kikuyo'; did you mean 'kikuyu'?"),
    ("feed,2026-02-03,L1,kikuyu,some,P,5 kg,21 %", "kept.csv:2:27: 'some' is not a quantity"),
    ("feed,2026-02-03,L1,kikuyu,-4 m2,P,5 kg,21 %", "kept.csv:2:27: '-4 m2' is less than nought; give 0 or more"),
    ("feed,2026-02-03,L1,kikuyu,4 m2,,5 kg,21 %", "kept.csv:2:32: 'product' is empty; fill it in"),
    ("feed,2026-02-03,L1,kikuyu,4 m2,P,5 kg,21 %,more", "kept.csv:2:44: this line has more values than there are columns"),
])  # fmt: skip
def test_a_wrong_row_is_told_at_line_and_column(book: Book, tmp_path: Path, row: str, told: str) -> None:
    entries, findings = read_kept(kept(tmp_path, HEADER + row + "\n"), book.record, book.grasses)
    assert not entries
    assert [str(finding)[: len(told)] for finding in findings] == [told]


def test_wrong_columns_are_told(book: Book, tmp_path: Path) -> None:
    _, findings = read_kept(kept(tmp_path, "work,date,lawm,product,date\n"), book.record, book.grasses)
    assert [str(finding) for finding in findings] == [
        "kept.csv:1:11: unknown column 'lawm'; did you mean 'lawn'?",
        "kept.csv:1:24: the column 'date' is here twice; keep one of them",
        "kept.csv:1:1: the column 'lawn' is missing; add it to the first line",
    ]


def test_what_a_spreadsheet_would_run_is_read_as_it_was_typed(book: Book, tmp_path: Path) -> None:
    """Shielded by an apostrophe on the way out, as OWASP advises against formulas in CSV; taken off on the way in."""
    text = "work,date,lawn,product,remarks,temperature\nspray,2026-02-03,L1,\"'=SUM(A1)\",''@x,'-3 °C\n"
    entries, findings = read_kept(kept(tmp_path, "\ufeff" + text), book.record, book.grasses)
    assert not findings
    assert entries[0].values == {
        "work": "spray", "date": "2026-02-03", "lawn": "L1", "product": "=SUM(A1)", "remarks": "'@x", "temperature": "-3 °C",
    }
