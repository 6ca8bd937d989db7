"""Each figure has a unit the book knows, of the kind its field asks for, and lies in what it may be there."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.book.fields.sourced import Claim, Figure, Measured
from generator.book.fields.walk import measured, parts
from generator.book.loading.marked_yaml import ValuePath
from generator.checks.check import Check
from generator.findings import Finding
from generator.season.task_figures import TASK_FIGURES
from generator.units import UnitError, from_si, kind_of, to_si, unit


def _check(book: PartialBook) -> Iterator[Finding]:
    for kind, id, record in book.records():
        for path, part in parts(record):
            if isinstance(part, Claim):
                yield from _unit(book, kind, id, path, part)
            for name in type(part).model_fields:
                figure = getattr(part, name)
                wanted = measured(part, name) if isinstance(figure, Figure) else None
                if wanted:
                    yield from _kind(book, kind, id, (*path, name), figure, wanted)
    for (task, name), wanted in TASK_FIGURES.items():
        if task in book.tasks and (figure := book.tasks[task].figures.get(name)):
            yield from _kind(book, "tasks", task, ("figures", name), figure, wanted)


def _unit(book: PartialBook, kind: str, id: str, path: ValuePath, claim: Claim) -> Iterator[Finding]:
    try:
        unit(claim.unit)
    except UnitError as error:
        yield Finding(book.where(kind, id, *path, "unit"), error.what, error.instead)


def _kind(book: PartialBook, kind: str, id: str, path: ValuePath, figure: Figure, wanted: Measured) -> Iterator[Finding]:
    claims = [(path, figure), *(((*path, "others", n), claim) for n, claim in enumerate(figure.others))]
    for place, claim in claims:
        try:
            given = unit(claim.unit)
        except UnitError:
            continue  # Told once already.
        right = unit(wanted.unit)
        if given.dimension != right.dimension:
            what = f"'{path[-1]}' is given in {claim.unit}, {given.kind}"
            instead = f"give {kind_of(right.dimension)}, such as {wanted.unit}"
            yield Finding(book.where(kind, id, *place, "unit"), what, instead)
            continue
        for key in ("low", "use", "high"):
            value = getattr(claim, key)
            if value is not None and not wanted.allows(from_si(to_si(value, given), right)):
                amount = f"{value:g}" if claim.unit == "1" else f"{value:g} {claim.unit}"
                limits = f"{wanted.lowest:g} to {wanted.highest:g}" + ("" if wanted.unit == "1" else f" {wanted.unit}")
                yield Finding(book.where(kind, id, *place, key), f"{amount} is out of the question for '{path[-1]}'", f"give {limits}")


CHECK = Check("figure-units", "Each figure has a unit the book knows, of the kind its field asks for, and is in what it may be there.",
    ("grasses", "tasks", "renovations", "season-groups"), _check,
)  # fmt: skip
