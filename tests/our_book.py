"""The repository's own book, read and checked once a process however many tests look into it."""

from functools import cache
from pathlib import Path

from generator.checks import check_book
from generator.model.book import Book, Loaded
from generator.pages.almanac import Almanac

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
def almanac() -> Almanac:
    return Almanac(book())
