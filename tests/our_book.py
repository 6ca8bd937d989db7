"""The repository's own book, read and checked once a process however many tests look into it."""

from functools import cache
from pathlib import Path

from generator.book.book import Book
from generator.book.loading.whole_book import Loaded
from generator.checks import check_book
from generator.season.season_cache import SeasonCache

ROOT = Path(__file__).parents[1]


@cache
def loaded() -> Loaded:
    return check_book(ROOT)


@cache
def book() -> Book:
    read, findings = loaded()
    assert read is not None, findings
    return read


@cache
def seasons() -> SeasonCache:
    return SeasonCache(book())
