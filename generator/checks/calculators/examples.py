"""Each calculator gives what its worked examples say."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.book.records.calculator import Calculator, Example
from generator.calculators.calculate import run_example
from generator.calculators.prepared import faults
from generator.checks.check import Check
from generator.findings import Finding, Where
from generator.units import UnitError, unit


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, calculator in book.calculators.items():
        sound = not faults(calculator)  # A formula that cannot be read has its finding already.
        for position, example in enumerate(calculator.examples):
            wrong_units = list(_wrong_units(book, id, position, example))
            yield from wrong_units
            if sound and not wrong_units:
                yield from _differences(book, id, calculator, position, example)


def _wrong_units(book: PartialBook, id: str, position: int, example: Example) -> Iterator[Finding]:
    for name, expected in example.results.items():
        try:
            unit(expected.unit)
        except UnitError as error:
            where = book.where("calculators", id, "examples", position, "results", name, "unit")
            yield Finding(where, error.what, error.instead)


def _differences(book: PartialBook, id: str, calculator: Calculator, position: int, example: Example) -> Iterator[Finding]:
    for fault in run_example(calculator, example):
        what = f"{fault.what[:1].lower()}{fault.what[1:]}".rstrip(".")
        instead = (fault.instead or "correct the formula, the example's inputs or its figure").rstrip(".")
        yield Finding(_where(book, id, position, example, fault.about), what, instead)


def _where(book: PartialBook, id: str, position: int, example: Example, about: str) -> Where:
    """The result or the input that a fault is about; all of the inputs where the example leaves it to its usual start."""
    if about in example.results:
        return book.where("calculators", id, "examples", position, "results", about, "value")
    if about not in example.inputs:
        return book.where("calculators", id, "examples", position, "inputs")
    of_key = () if about in book.calculators[id].inputs else ("[key]",)
    return book.where("calculators", id, "examples", position, "inputs", about, *of_key)


CHECK = Check("examples", "Each calculator gives what its worked examples say.", ("calculators",), _check)
