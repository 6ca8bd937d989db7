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
    for sentence in run_example(calculator, example):
        what, _, instead = sentence.rstrip(".").partition("; ")
        yield Finding(_where(book, id, position, example, sentence), f"{what[:1].lower()}{what[1:]}",
                      instead or "correct the formula, the example's inputs or its figure")


def _where(book: PartialBook, id: str, position: int, example: Example, sentence: str) -> Where:
    """The result or the input that the sentence speaks of."""
    words = sentence.replace("'", " ").split()
    for group, step in (("results", "value"), ("inputs", None)):
        for name in getattr(example, group):
            if name in words:
                if group == "inputs" and name not in book.calculators[id].inputs:
                    step = "[key]"
                path = ("examples", position, group, name, *([step] if step else []))
                return book.where("calculators", id, *path)
    return book.where("calculators", id, "examples", position, "inputs")


CHECK = Check("examples", "Each calculator gives what its worked examples say.", ("calculators",), _check)
