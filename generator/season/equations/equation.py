"""What a published equation is: its text, its units, where it stands and where it stops."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from generator.formula import Formula, parse
from generator.units import to_si, unit


@dataclass(frozen=True)
class EquationConstant:
    """A number inside an equation, in its unit, and what it is."""

    value: float
    unit: str
    meaning: str

    @property
    def si(self) -> float:
        return to_si(self.value, unit(self.unit))


ZERO_CELSIUS = EquationConstant(0, "°C", "zero of the Celsius scale")
ONE_DEGREE = EquationConstant(1, "K", "one degree, to make a temperature a plain number")


@dataclass(frozen=True)
class Equation:
    """One published equation.

    text: a formula over the names in `inputs` and `constants`. inputs: name to unit spelling, as a calculator asks for them; lists: the same
    of what is a list of readings.
    result_unit: of the answer. source: id in data/sources.yml; where: equation number or page. title and limits: plain words for
    the methods page.
    """

    id: str
    title: str
    text: str
    inputs: dict[str, str]
    result_unit: str
    source: str
    where: str
    limits: str
    constants: dict[str, EquationConstant] = field(default_factory=dict)
    lists: dict[str, str] = field(default_factory=dict)

    @cached_property
    def formula(self) -> Formula:
        return parse(self.text)

    @cached_property
    def constants_si(self) -> dict[str, float]:
        return {name: constant.si for name, constant in self.constants.items()}

    @cached_property
    def _evaluate(self) -> Callable[[Mapping[str, float | Sequence[float]]], float]:
        return self.formula.evaluate

    def evaluate(self, **inputs_si: float | Sequence[float]) -> float:
        """The answer in SI units, from inputs in SI units. Raises FormulaProblem where the values have no answer."""
        return self._evaluate({**self.constants_si, **inputs_si})
