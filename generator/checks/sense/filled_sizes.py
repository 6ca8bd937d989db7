"""A value that is typed into a plan, a sheet or a task lies in what it goes into: a calculator's input, or one watering."""

from collections.abc import Iterator
from typing import NamedTuple

from generator.book.book import PartialBook
from generator.book.fields.plausible import PLAUSIBLE
from generator.book.fields.walk import parts
from generator.book.loading.marked_yaml import ValuePath
from generator.book.records.calculator import Input
from generator.book.records.step import Quantity, Watering
from generator.calculators.bindings import bound_value, parts_of
from generator.calculators.chosen import Chosen
from generator.calculators.filled_value import BindError, Bound
from generator.checks.check import Check
from generator.findings import Finding, Where
from generator.units import from_si, known_unit, to_si, unit

WATERING = PLAUSIBLE["depth of water"]


class Typed(NamedTuple):
    """A value that an author typed: where, as what, and the input it goes into; None for the depth of a watering."""

    where: Where
    value: Bound
    name: str
    into: Input | None

    def in_unit_of_it(self) -> float | None:
        """The number in the unit of what it goes into; None for another kind of quantity, which is told elsewhere."""
        given, right = known_unit(self.value.unit), unit(self.into.unit if self.into else WATERING.unit)
        if given is None or given.dimension != right.dimension:
            return None
        return self.value.value if given == right else from_si(to_si(self.value.value, given), right)


def typed_values(book: PartialBook) -> Iterator[Typed]:
    """Every value that is typed in a `fill`, and every depth of a watering."""
    for kind in ("renovations", "steps", "aftercare"):
        for id, record in book.of(kind).items():
            for path, part in parts(record):
                if not book.written(kind, id, *path):
                    continue
                if isinstance(part, Watering):
                    yield from _typed(book, kind, id, (*path, "depth"), part.depth, "depth", None)
                elif isinstance(part, Quantity) and (calculator := book.calculators.get(part.calculator)):
                    for name, expression in part.fill.items():
                        if name in calculator.inputs:
                            yield from _typed(book, kind, id, (*path, "fill", name), expression, name, calculator.inputs[name])
    for id, task in book.tasks.items():
        calculator = book.calculators.get(task.calculators[0]) if task.calculators else None
        for name, expression in task.fill.items():
            if calculator and name in calculator.inputs:
                yield from _typed(book, "tasks", id, ("fill", name), expression, name, calculator.inputs[name])


def _typed(book: PartialBook, kind: str, id: str, path: ValuePath, expression: str, name: str, into: Input | None) -> Iterator[Typed]:
    for part in parts_of(expression):
        try:
            value = bound_value(part, Chosen())
        except BindError:
            continue  # A field, which is held where it stands; or nothing, which is told elsewhere.
        if into is None or known_unit(into.unit):
            yield Typed(book.where(kind, id, *path), value, name, into)


def _check(book: PartialBook) -> Iterator[Finding]:
    for typed in typed_values(book):
        number = typed.in_unit_of_it()
        if number is None:
            continue
        if typed.into is None:
            if not WATERING.allows(number) or number == 0:
                yield Finding(typed.where, f"{typed.value.typed} is no watering: {WATERING.why}", f"give more than 0 and up to {WATERING.highest:g} mm")
        elif limits := _limits(typed.into, number):
            yield Finding(typed.where, f"{typed.value.typed} does not go into '{typed.name}'", limits)


def _limits(asked: Input, number: float) -> str | None:
    for holds, limit, words in (
        (asked.above is None or number > asked.above, asked.above, "more than"), (asked.at_least is None or number >= asked.at_least, asked.at_least, "at least"),
        (asked.at_most is None or number <= asked.at_most, asked.at_most, "at most"),
    ):
        if not holds:
            return f"give {words} {limit:g}" + ("" if asked.unit == "1" else f" {asked.unit}")
    return None


CHECK = Check("filled-sizes", "A value that is typed into a plan, a sheet or a task lies in what it goes into.", ("renovations", "steps", "aftercare", "tasks"), _check)
