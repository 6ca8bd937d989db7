"""The computed years of the repository's own book, as files, made once a run."""

from datetime import date
from functools import cache

from generator.site.year.year_files import year_files
from tests.our_book import seasons

TODAY = date(2027, 2, 10)


@cache
def files() -> dict[str, str | bytes]:
    """The calendar and the weeks of every grass at every place with a calendar."""
    return year_files(seasons(), TODAY)


def pairs() -> list[tuple[str, str]]:
    """Grass and place of every calendar."""
    return [(grass, place) for place in seasons().calendar_places for grass in seasons().book.grasses]
