"""Public lines by country, as cautions and experts show them: the home country's first, the others under it."""

import re
from typing import Any

from generator.book.book import Book
from generator.book.records.services import Service, ServiceKind, Services
from generator.site.shared.sourcing import Sourcing

LINES = "lines"  # Where a caution's own page has them for every country.


def telephone_link(number: str | None) -> str | None:
    """'01 2345 6789' -> 'tel:0123456789', for a phone to dial."""
    return "tel:" + re.sub(r"[^0-9+]", "", number) if number else None


def lines_at_home(book: Book, caution: str) -> list[dict[str, Any]]:
    """Whom this caution has a reader ring in the practice's own country: kind, name, number, link. Empty where it is none."""
    services = book.services
    if services is None:
        return []
    home = services.countries.get(home_country(book))
    return [
        {"kind": kind.name, "name": home.lines[id].name, "number": home.lines[id].number, "link": _link(home.lines[id])}
        for id, kind in _of(services, caution=caution) if home and id in home.lines
    ]


def lines_everywhere(book: Book, sourcing: Sourcing, caution: str = "", expert: str = "") -> list[dict[str, Any]]:
    """The lines of a caution or an expert, a kind each: name, and its lines, the home country first."""
    services = book.services
    if services is None:
        return []
    home = home_country(book)
    countries = sorted((code for code in book.countries if code in services.countries), key=lambda code: code != home)
    kinds = [
        {"name": kind.name, "lines": [
            {"country": book.countries[code].name, **_line(services.countries[code].lines[id], sourcing)}
            for code in countries if id in services.countries[code].lines
        ]}
        for id, kind in _of(services, caution, expert)
    ]
    return [kind for kind in kinds if kind["lines"]]


def lines_of(book: Book, caution: str) -> list[Service]:
    """The lines of a caution in every country."""
    if book.services is None:
        return []
    kinds = {id for id, _ in _of(book.services, caution)}
    return [service for country in book.services.countries.values() for id, service in country.lines.items() if id in kinds]


def called(book: Book, caution: str) -> tuple[str, ...]:
    """What people call the lines of a caution, in any country: they search for the caution by it."""
    return tuple(dict.fromkeys(word for each in lines_of(book, caution) for word in (each.name, *filter(None, [each.number]), *each.misspellings)))


def home_country(book: Book) -> str:
    return book.places[book.practice.home_place].country


def _of(services: Services, caution: str = "", expert: str = "") -> list[tuple[str, ServiceKind]]:
    return [(id, kind) for id, kind in services.kinds.items() if caution in kind.for_cautions or expert in kind.for_experts]


def _line(service: Service, sourcing: Sourcing) -> dict[str, Any]:
    return {
        "name": service.name, "number": service.number, "link": _link(service), "address": service.address, "note": service.note,
        "marks": sourcing.marks(service),
    }


def _link(service: Service) -> str | None:
    """What a tap on it does: ring, else open its page."""
    return telephone_link(service.number) or service.address
