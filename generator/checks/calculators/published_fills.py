"""Published figures that a calculator offers by name fit the fields that they fill."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.book.references import KEY
from generator.calculators.calculate import calculate
from generator.calculators.prepared import faults
from generator.checks.check import Check
from generator.findings import Finding, suggestion


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, calculator in book.calculators.items():
        sound = not faults(calculator)  # A unit or a formula that cannot be read has its finding already.
        for position, each in enumerate(calculator.published):
            for name, text in each.fills.items():
                where = ("calculators", id, "published", position, "fills", name)
                asked = calculator.inputs.get(name)
                if asked is None:
                    yield Finding(book.where(*where, KEY), f"there is no input '{name}' to fill", suggestion(name, calculator.inputs, "name one of its inputs"))
                    continue
                if not sound:
                    continue
                wrong = next((problem for problem in calculate(calculator, {name: text}).problems if problem.about == name), None)
                if wrong:
                    what = f"'{text}' does not fit: {wrong.sentence.removesuffix('.')}"
                    yield Finding(book.where(*where), what, f"write it as a reader would type it, in {asked.unit}")


CHECK = Check("published-fills", "Published figures that a calculator offers fit the fields that they fill.", ("calculators",), _check)
