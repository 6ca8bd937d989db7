"""The place that the book opens with, and those whose months are printed, are among the places that the practice offers."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.checks.check import Check
from generator.findings import Finding


def _check(book: PartialBook) -> Iterator[Finding]:
    practice = book.practice
    if practice is None or practice.places is None:
        return
    asked = [(practice.home_place, ("home_place",)), *((id, ("calendar_places", at)) for at, id in enumerate(practice.calendar_places or ()))]
    for id, path in asked:
        if id not in practice.places and book.knows("places", id):
            yield Finding(book.where("practice", "practice", *path), f"'{id}' is not among the places that the practice offers", "add it to 'places'")


CHECK = Check("offered-places", "The home place and the places of the calendars are offered.", ("practice",), _check)
