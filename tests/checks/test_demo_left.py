"""The invented practice that this book came with stands in two files, and in nothing that goes out with every book."""

import re
from dataclasses import replace
from pathlib import Path

import pytest

from generator.checks.texts.demo_left import CHECK, left_in
from tests import our_book

GENERATOR = our_book.ROOT / "generator"
DEMO = our_book.book().practice
MARKS = {
    "name": DEMO.name, "title": DEMO.title, "telephone": DEMO.telephone, "dialled": re.sub(r"\D", "", str(DEMO.telephone)), "e-mail": DEMO.email,
    "public address": DEMO.public_address, "street": DEMO.invoice.address[0], "registration": DEMO.invoice.registration, "account": DEMO.invoice.how_to_pay,
}  # fmt: skip


@pytest.mark.parametrize("mark", MARKS)
def test_all_that_names_the_invented_practice_is_known_wherever_it_stands(mark: str) -> None:
    """The digests are those of the data, so neither can change alone."""
    assert list(left_in(f"Call us - {MARKS[mark]}; or write."))


@pytest.mark.parametrize("line", ["A tussock in a lane.", "Lane and Tussock", "Telephone 02 5551 0134, 9 to 5", "tussock-forming grass", "", "00-0102"])
def test_words_of_the_trade_and_other_numbers_are_nobodys(line: str) -> None:
    assert not list(left_in(line))


def test_a_name_is_told_once_and_at_its_column() -> None:
    assert [(column, said) for column, said, _ in left_in(f"By {DEMO.name.upper()}.")] == [(4, DEMO.name.upper())]


def test_our_own_book_would_have_to_change_two_files_only() -> None:
    yours = replace(our_book.book(), practice=DEMO.model_copy(update={"invented": False}))
    assert {finding.where.path for finding in CHECK.check(yours)} == {"data/practice.yml", "mkdocs.yml"}


def test_the_generator_never_names_the_invented_practice() -> None:
    """It would go out with every book, whoever's it is. The vendored libraries and drawings are read too."""
    files = [file for file in GENERATOR.rglob("*") if file.is_file() and "__pycache__" not in file.parts]
    assert len(files) > 300
    assert not [f"{name_of(file)}: {said}" for file in files for line in text_of(file).splitlines() for _, said, _ in left_in(line)]


def name_of(file: Path) -> str:
    return file.relative_to(GENERATOR).as_posix()


def text_of(file: Path) -> str:
    return file.read_text(encoding="utf-8", errors="replace")
