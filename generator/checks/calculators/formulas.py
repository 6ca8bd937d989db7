"""Each calculator's units are known, its formulas can be read, and their units agree."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.calculators.prepared import faults
from generator.checks.check import Check
from generator.findings import Finding


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, calculator in book.calculators.items():
        for fault in faults(calculator):
            where = book.character(fault.offset, "calculators", id, *fault.path)
            yield Finding(where, fault.what, fault.instead)


CHECK = Check("formulas", "Each unit is known, each formula can be read, and its units agree.", ("calculators",), _check)
