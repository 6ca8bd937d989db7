"""Each figure has a unit the book knows, of the kind its field asks for, and lies in what it may be there."""

from collections.abc import Iterator
from typing import NamedTuple

from generator.book.book import PartialBook
from generator.book.fields.plausible import Plausible, amount, meant_by
from generator.book.fields.sourced import Claim, Figure
from generator.book.fields.walk import meant, parts
from generator.book.loading.marked_yaml import ValuePath
from generator.book.records.calculator import Constant
from generator.checks.check import Check
from generator.findings import Finding
from generator.season.task_figures import TASK_FIGURES
from generator.units import Unit, UnitError, from_si, kind_of, known_unit, to_si, unit

# Where figures stand that have a name of the author's own.
NAMED_FIGURES = {"tasks": "figures", "renovations": "figures", "problems": "figures", "holds": "constants", "inspection": "constants", "calculators": "constants"}
ENDS = ("low", "use", "high", "value")


class Held(NamedTuple):
    """A figure and what it is held to. path: of the figure in its record. name: as messages call it. asked: True where only such a unit will do."""

    kind: str
    id: str
    path: ValuePath
    figure: Claim | Constant
    row: Plausible
    name: str
    asked: bool

    def numbers(self) -> Iterator[tuple[str, float]]:
        """Each number of it with its key."""
        yield from ((key, value) for key in ENDS if (value := getattr(self.figure, key, None)) is not None)

    def in_row(self, value: float) -> float:
        """A number of it in the unit of its row; a unit of another kind has been told before."""
        given, right = unit(self.figure.unit), unit(self.row.unit)
        return value if given == right else from_si(to_si(value, given), right)


def held_figures(book: PartialBook) -> Iterator[Held]:
    """Every figure of a book whose meaning is known, with those of other sources beside it."""
    for kind, id, record in book.records():
        for path, value, row in meant(record):
            if isinstance(value, Claim):
                yield from _with_others(kind, id, path, value, row, True)
    for (task, name), wanted in TASK_FIGURES.items():
        if task in book.tasks and (figure := book.tasks[task].figures.get(name)):
            yield from _with_others("tasks", task, ("figures", name), figure, wanted.row, True)
    for kind, id, record in book.records():
        for name, value in getattr(record, NAMED_FIGURES[kind]).items() if kind in NAMED_FIGURES else ():
            given: Unit | None = known_unit(value.unit)
            path = (NAMED_FIGURES[kind], name)
            if given and (id, name) not in TASK_FIGURES and book.written(kind, id, *path) and (known := meant_by(f"{kind}.{id}.{name}", given)):
                yield from _with_others(kind, id, path, value, known, False)


def _with_others(kind: str, id: str, path: ValuePath, figure: Claim | Constant, row: Plausible, asked: bool) -> Iterator[Held]:
    yield Held(kind, id, path, figure, row, str(path[-1]), asked)
    for position, claim in enumerate(figure.others if isinstance(figure, Figure) else ()):
        yield Held(kind, id, (*path, "others", position), claim, row, str(path[-1]), asked)


def _check(book: PartialBook) -> Iterator[Finding]:
    for kind, id, record in book.records():
        for path, part in parts(record):
            if isinstance(part, Claim):
                yield from _unit(book, kind, id, path, part)
    for held in held_figures(book):
        yield from _kind(book, held)


def _unit(book: PartialBook, kind: str, id: str, path: ValuePath, claim: Claim) -> Iterator[Finding]:
    try:
        unit(claim.unit)
    except UnitError as error:
        yield Finding(book.where(kind, id, *path, "unit"), error.what, error.instead)


def _kind(book: PartialBook, held: Held) -> Iterator[Finding]:
    given, right = known_unit(held.figure.unit), unit(held.row.unit)
    if given is None:
        return  # Told once already.
    if given.dimension != right.dimension:
        if held.asked:
            what = f"'{held.name}' is given in {held.figure.unit}, {given.kind}"
            instead = f"give {kind_of(right.dimension)}, such as {held.row.unit}"
            yield Finding(book.where(held.kind, held.id, *held.path, "unit"), what, instead)
        return
    for key, value in held.numbers():
        if not held.row.allows(held.in_row(value)):
            said = held.row.refusal(amount(f"{value:g}", held.figure.unit), held.name, value)
            yield Finding(book.where(held.kind, held.id, *held.path, key), *said)


CHECK = Check("figure-units", "Each figure has a unit the book knows, of the kind its field asks for, and is in what it may be there.",
    ("grasses", "tasks", "renovations", "problems", "holds", "inspection", "calculators", "season-groups"), _check,
)  # fmt: skip
