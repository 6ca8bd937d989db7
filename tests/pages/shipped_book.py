"""The repository's own book and its computed years, loaded once a run."""

from datetime import date
from functools import cache
from pathlib import Path

from generator.checks import check_book
from generator.pages.almanac import Almanac
from generator.pages.year_files import year_files

ROOT = Path(__file__).parents[2]
TODAY = date(2027, 2, 10)


@cache
def almanac() -> Almanac:
    loaded = check_book(ROOT)
    assert loaded.book is not None, loaded.findings
    return Almanac(loaded.book)


@cache
def files(today: date = TODAY) -> dict[str, str | bytes]:
    """The calendar and the weeks of every grass at every place with a calendar."""
    return year_files(almanac(), today)


def pairs() -> list[tuple[str, str]]:
    """Grass and place of every calendar."""
    return [(grass, place) for place in almanac().calendar_places for grass in almanac().book.grasses]
