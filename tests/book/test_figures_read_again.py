"""A random sample of figures, read again in their sources: what stands in the book is still what was read."""

import datetime

import pytest

from generator.book.book import Book
from tests.our_book import book as our_book
from tests.published_figures import Published, not_opened, published_figures, readings

READ = readings()


@pytest.fixture(scope="module")
def book() -> Book:
    return our_book()


@pytest.fixture(scope="module")
def figures(book: Book) -> list[Published]:
    return list(published_figures(book))


def as_listed(figure: dict) -> Published:
    numbers = {key: value for key, value in figure.items() if key in ("low", "high", "use", "value")}
    return Published(figure["file"], figure["path"], numbers, figure["unit"], figure["source"])


@pytest.mark.parametrize("entry", READ, ids=lambda entry: f"{entry['figure']['file']} {entry['figure']['path']}")
def test_the_figure_is_what_was_read(entry: dict, figures: list[Published]) -> None:
    listed = as_listed(entry["figure"])
    now = [each for each in figures if each[:2] == listed[:2]]
    assert now, "moved, taken out, or left without a source: read it again where it stands now"
    assert listed in now, "changed since it was read: read it again and write down what you read"


@pytest.mark.parametrize("entry", READ, ids=lambda entry: f"{entry['figure']['file']} {entry['figure']['path']}")
def test_a_reading_says_where_and_what(entry: dict) -> None:
    assert entry["verdict"] in ("agrees", "corrected")
    assert (entry["verdict"] == "corrected") == bool(entry.get("what")), "what was corrected is told under 'what'"
    assert entry["read"]["where"] and any(letter.isdigit() or letter.isalpha() for letter in entry["read"]["says"])
    assert isinstance(entry["read"]["date"], datetime.date)


def test_at_least_sixty_were_read_and_each_once() -> None:
    read = [(listed.file, listed.path, *listed.source) for listed in (as_listed(entry["figure"]) for entry in READ)]
    assert len(set(read)) == len(read) >= 60


def test_what_could_not_be_opened_is_told_apart_and_still_stands(figures: list[Published]) -> None:
    read = [as_listed(entry["figure"]) for entry in READ]
    for entry in not_opened():
        address = entry["file"], entry["path"], entry["source"]
        assert not any((each.file, each.path, each.source) == address for each in read), f"read: take it out of not-opened.yml: {address}"
        assert any((each.file, each.path, each.source) == address for each in figures), f"names another source now: read that: {address}"
        assert entry["why"]


def test_most_kinds_of_file_are_in_the_sample() -> None:
    """A sample of one file only would say little of the rest."""
    assert len({entry["figure"]["file"].split("/")[1] for entry in READ}) >= 4
