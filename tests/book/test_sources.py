"""The sources of this book: each from the body that published it, most with a page of its own, and all of them used."""

import re

import pytest

from generator.book.book import Book
from generator.book.fields.walk import parts
from generator.season.equations.every_equation import EQUATIONS
from tests.our_book import book as our_book

LEAST_SHARE_WITH_AN_ADDRESS = 0.85
# How something was come by is told by `read`, in one of three words.
OF_THE_READING = re.compile(r"(?i)\b(copy|copies|re-?posted|relay(s|ed)?|recalled|from memory|was read|were read|as read|first part|opening read|abstract read)\b")


@pytest.fixture(scope="module")
def book() -> Book:
    return our_book()


def test_most_sources_lead_to_the_body_that_published(book: Book) -> None:
    without = [id for id, source in book.sources.items() if not source.address]
    assert len(without) <= (1 - LEAST_SHARE_WITH_AN_ADDRESS) * len(book.sources), without


def test_a_source_without_an_address_says_why_in_a_sentence(book: Book) -> None:
    silent = {id: source.no_address for id, source in book.sources.items() if source.no_address and not re.fullmatch(r"[A-Z].{9,}\.", source.no_address)}
    assert silent == {}


def test_a_source_tells_of_itself_and_not_of_how_it_was_read(book: Book) -> None:
    told = {id: found[0] for id, source in book.sources.items() for text in (source.title, source.where, source.note)
            if text and (found := OF_THE_READING.search(text))}  # fmt: skip
    assert told == {}


def test_every_source_is_cited(book: Book) -> None:
    cited = {source for _, _, record in book.records() for _, part in parts(record) for source in getattr(part, "sources", ())}
    cited |= {equation.source for equation in EQUATIONS.values()}
    cited |= {source for place in book.places.values() for source in place.climate_sources}
    assert set(book.sources) - cited == set()
