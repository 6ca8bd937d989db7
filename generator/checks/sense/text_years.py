"""No text that is quoted is from a year to come."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.checks.check import Check
from generator.findings import Finding


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, source in book.sources.items():
        if source.year is not None and book.this_year is not None and source.year > book.this_year:
            yield Finding(book.where("sources", id, "year"), f"{source.year} has not come yet", "give the year of publication")


CHECK = Check("text-years", "No text that is quoted is from a year to come.", ("sources",), _check)
