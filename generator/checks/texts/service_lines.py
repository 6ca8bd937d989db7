"""Each line of services.yml is of a kind that is there and can be reached, and the practice's own country has its lines."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.book.references import KEY
from generator.checks.check import Check
from generator.findings import Finding, suggestion

HERE = ("services", "services")


def _check(book: PartialBook) -> Iterator[Finding]:
    if book.services is None:
        return
    kinds = book.services.kinds
    for code, country in book.services.countries.items():
        for kind, service in country.lines.items():
            where = (*HERE, "countries", code, "lines", kind)
            if kind not in kinds:
                yield Finding(book.where(*where, KEY), f"'{kind}' is no kind of line", suggestion(kind, kinds, f"the kinds are: {', '.join(kinds)}"))
            if service.number is None and service.address is None and service.note is None:
                yield Finding(book.where(*where), f"nobody can reach {service.name}", "give its number or its address, or say in 'note' how it is asked")
    yield from _home(book)


def _home(book: PartialBook) -> Iterator[Finding]:
    """The practice's own country is the one that a caution shows beside its text."""
    place = book.places.get(book.practice.home_place) if book.practice else None
    if place is None or book.services is None or not book.knows("countries", place.country):
        return
    home = book.services.countries.get(place.country)
    if home is None:
        yield Finding(book.where(*HERE, "countries"), f"the practice's own country, {place.country}, is not here", "add it, with its lines")


CHECK = Check("service-lines", "Each public line is of a kind that is there and can be reached.", ("services", "places", "practice"), _check)
