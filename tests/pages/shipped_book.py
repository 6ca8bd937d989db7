"""The computed years of the repository's own book, as files, made once a run."""

from datetime import date
from functools import cache

from generator.pages.year_files import year_files
from tests.our_book import almanac

TODAY = date(2027, 2, 10)


@cache
def files() -> dict[str, str | bytes]:
    """The calendar and the weeks of every grass at every place with a calendar."""
    return year_files(almanac(), TODAY)


def pairs() -> list[tuple[str, str]]:
    """Grass and place of every calendar."""
    return [(grass, place) for place in almanac().calendar_places for grass in almanac().book.grasses]
