"""Each calculator's units are known, its formulas can be read, and their units agree."""

from collections.abc import Iterator

from generator.checks.check import Check
from generator.findings import Finding, suggestion
from generator.formula import FormulaError, ListOf, check, parse
from generator.model.book import Book
from generator.model.calculator import Calculator
from generator.turf.equations import EQUATIONS
from generator.units import Unit, UnitError, unit

_Names = dict[str, Unit | ListOf]


def _check(book: Book) -> Iterator[Finding]:
    for id, calculator in book.calculators.items():
        yield from _Calculator(book, id, calculator).findings()


class _Calculator:
    """One calculator on its way through the check: what its formulas may name so far."""

    def __init__(self, book: Book, id: str, calculator: Calculator) -> None:
        self.book, self.id, self.calculator = book, id, calculator
        self.names: _Names = {}
        self.unknown: set[str] = set()  # Names whose own unit is wrong: formulas over them stay silent.

    def findings(self) -> Iterator[Finding]:
        for name, wanted in self.calculator.inputs.items():
            found = yield from self._unit(wanted.unit, "inputs", name, "unit")
            self._learn(name, ListOf(found) if found and wanted.many else found)
            yield from self._us_unit(found, wanted.us_unit, "inputs", name, "us_unit")
        for name, constant in self.calculator.constants.items():
            yield from self._clash(name, "constants")
            self._learn(name, (yield from self._unit(constant.unit, "constants", name, "unit")))
        for name, result in self.calculator.results.items():
            yield from self._clash(name, "results")
            found = yield from self._unit(result.unit, "results", name, "unit")
            yield from self._us_unit(found, result.us_unit, "results", name, "us_unit")
            if result.formula is not None and found:
                yield from self._formula(result.formula, found, "results", name, "formula")
            if result.equation is not None and result.equation not in EQUATIONS:
                known = f"the equations are: {', '.join(EQUATIONS)}"
                yield Finding(self._where("results", name, "equation"), f"unknown equation '{result.equation}'",
                              suggestion(result.equation, EQUATIONS, known))
            self._learn(name, found)
        for number, warning in enumerate(self.calculator.warnings):
            yield from self._formula(warning.when, None, "warnings", number, "when")

    def _learn(self, name: str, found: Unit | ListOf | None) -> None:
        if found is None:
            self.unknown.add(name)
        else:
            self.names[name] = found

    def _clash(self, name: str, place: str) -> Iterator[Finding]:
        if name in self.names or name in self.unknown:
            yield Finding(self._where(place, name, "[key]"), f"the name '{name}' is already taken above",
                          "give inputs, constants and results names of their own")

    def _unit(self, spelling: str, *path: str):  # -> Generator[Finding, None, Unit | None]
        try:
            return unit(spelling)
        except UnitError as error:
            yield Finding(self._where(*path), error.what, error.instead)
            return None

    def _us_unit(self, metric: Unit | None, spelling: str | None, *path: str) -> Iterator[Finding]:
        if spelling is None:
            return
        found = yield from self._unit(spelling, *path)
        if found and metric and found.dimension != metric.dimension:
            yield Finding(self._where(*path), f"us_unit {spelling} is {found.kind}, and unit {metric} is {metric.kind}",
                          "give two units of the same kind")

    def _formula(self, text: str, result: Unit | None, *path: str | int) -> Iterator[Finding]:
        try:
            formula = parse(text)
            if not self.unknown.intersection(formula.names):
                check(formula, self.names, result)
        except FormulaError as error:
            where = self.book.character(error.offset, "calculators", self.id, *path)
            yield Finding(where, error.what, error.instead)

    def _where(self, *path: str | int):
        return self.book.where("calculators", self.id, *path)


CHECK = Check(
    "formulas", "Each unit is known, each formula can be read, and its units agree.", ("calculators",), _check
)
