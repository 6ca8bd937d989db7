"""Each figure has a unit the book knows, of the kind its field asks for."""

from collections.abc import Iterator

from generator.checks.check import Check
from generator.findings import Finding
from generator.model.book import Book
from generator.model.record import Claim, Figure
from generator.model.walk import measured, parts
from generator.units import UnitError, kind_of, unit


def _check(book: Book) -> Iterator[Finding]:
    for kind, id, record in book.records():
        for path, part in parts(record):
            if isinstance(part, Claim):
                yield from _unit(book, kind, id, path, part)
            for name in type(part).model_fields:
                figure = getattr(part, name)
                wanted = measured(part, name) if isinstance(figure, Figure) else None
                if wanted:
                    yield from _kind(book, kind, id, (*path, name), figure, wanted)


def _unit(book: Book, kind: str, id: str, path: tuple, claim: Claim) -> Iterator[Finding]:
    try:
        unit(claim.unit)
    except UnitError as error:
        yield Finding(book.where(kind, id, *path, "unit"), error.what, error.instead)


def _kind(book: Book, kind: str, id: str, path: tuple, figure: Figure, wanted: str) -> Iterator[Finding]:
    claims = [(path, figure), *(((*path, "others", n), claim) for n, claim in enumerate(figure.others))]
    for place, claim in claims:
        try:
            given = unit(claim.unit)
        except UnitError:
            continue  # Told once already.
        right = unit(wanted)
        if given.dimension != right.dimension:
            what = f"'{path[-1]}' is given in {claim.unit}, {given.kind}"
            instead = f"give {kind_of(right.dimension)}, such as {wanted}"
            yield Finding(book.where(kind, id, *place, "unit"), what, instead)


CHECK = Check(
    "figures", "Each figure has a unit the book knows, of the kind its field asks for.",
    ("grasses", "tasks", "renovations", "season-groups"), _check,
)  # fmt: skip
