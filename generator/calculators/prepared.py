"""A calculator made ready to run: units looked up, formulas parsed, equations joined in; and what is wrong with one."""

import re
from collections.abc import Generator, Iterator, Mapping
from dataclasses import dataclass, field
from typing import NamedTuple

from generator.book.records.calculator import Calculator, Input, Result, Weighed
from generator.findings import suggestion
from generator.formula import Formula, FormulaError, ListOf, check, parse
from generator.formula.nodes import CONSTANTS, FUNCTIONS
from generator.season.equations.equation import Equation
from generator.season.equations.every_equation import EQUATIONS
from generator.units import Unit, UnitError, to_si, unit

Path = tuple[str | int, ...]
MOST_KEPT = 200
_NAME = re.compile(r"[a-z][a-z0-9_]*")


@dataclass(frozen=True, order=True)
class CalculatorFault:
    """What an author must mend: path in the calculator's file, offset in the text there, what, and what instead."""

    path: Path
    offset: int
    what: str
    instead: str


@dataclass(frozen=True)
class Units:
    """The unit of each value, metric and US; a calculator has one set, or a second for a product that is weighed."""

    metric: Mapping[str, Unit]
    us: Mapping[str, Unit]


@dataclass(frozen=True)
class Rule:
    """How one result is worked out. constants_si: an equation's own, which stand beside the calculator's values."""

    formula: Formula
    constants_si: Mapping[str, float] = field(default_factory=dict)
    equation: Equation | None = None


class Limits(NamedTuple):
    """What an input may be, in SI units; None for a limit that is not set."""

    above: float | None
    at_least: float | None
    at_most: float | None
    usual_low: float | None
    usual_high: float | None


@dataclass(frozen=True)
class Prepared:
    """Everything `calculate` needs. `weighed` is None where the product is never weighed."""

    calculator: Calculator
    constants_si: Mapping[str, float]
    rules: Mapping[str, Rule]
    conditions: tuple[Formula, ...]
    measured: Units
    weighed: Units | None
    limits: Mapping[str, Limits]


_kept: dict[int, Prepared] = {}


def prepared(calculator: Calculator) -> Prepared:
    """The calculator ready to run; the work is done once for each.

    Raises FormulaError or UnitError for one in which `faults` finds something.
    """
    found = _kept.get(id(calculator))
    if found is None or found.calculator is not calculator:
        if len(_kept) >= MOST_KEPT:
            _kept.clear()
        found = _kept[id(calculator)] = _prepare(calculator)
    return found


def _prepare(calculator: Calculator) -> Prepared:
    return Prepared(
        calculator=calculator,
        constants_si={name: to_si(each.value, unit(each.unit)) for name, each in calculator.constants.items()},
        rules={name: rule_of(result) for name, result in calculator.results.items()},
        conditions=tuple(parse(warning.when) for warning in calculator.warnings),
        measured=_units(calculator, weighed=False),
        weighed=_units(calculator, weighed=True) if calculator.weighed else None,
        limits={name: Limits(*(limit_si(asked, limit) for limit in Limits._fields)) for name, asked in calculator.inputs.items()},
    )


def limit_si(asked: Input, limit: str) -> float | None:
    """One of above, at_least, at_most, usual_low and usual_high in SI units; None when it is not set."""
    value = getattr(asked, limit)
    return None if value is None else to_si(value, unit(asked.unit))


def rule_of(result: Result) -> Rule:
    """Raises FormulaError for text that is not a formula, and for an equation or an input of it that does not exist."""
    if result.formula is not None:
        return Rule(parse(result.formula))
    name = result.equation or ""
    equation = EQUATIONS.get(name)
    if equation is None:
        what = f"unknown equation '{name}'"
        raise FormulaError(0, what, suggestion(name, EQUATIONS, f"it knows {', '.join(sorted(EQUATIONS))}"))
    for name in result.given.keys() - equation.inputs.keys():
        listed = f"its inputs are {', '.join(equation.inputs)}"
        raise FormulaError(0, f"equation '{result.equation}' has no input '{name}'", suggestion(name, equation.inputs, listed))
    formula = parse(_NAME.sub(lambda found: result.given.get(found[0], found[0]), equation.text)) if result.given else equation.formula
    return Rule(formula, equation.constants_si, equation)


def _units(calculator: Calculator, weighed: bool) -> Units:
    metric, us = {}, {}
    named: list[tuple[str, Input | Result]] = [*calculator.inputs.items(), *calculator.results.items()]
    for name, each in named:
        pair: Input | Result | Weighed = calculator.weighed[name] if weighed and name in calculator.weighed else each
        metric[name] = unit(pair.unit)
        us[name] = unit(pair.us_unit) if pair.us_unit else metric[name]
    return Units(metric, us)


def faults(calculator: Calculator) -> list[CalculatorFault]:
    """Everything wrong with a calculator but its examples, in the order of its file.

    A formula that rests on something faulty is left alone: one cause, one fault.
    """
    found = [*_name_faults(calculator), *_unit_faults(calculator)]
    if not found:
        found += [fault for weighed in (False, True) if calculator.weighed or not weighed
                  for fault in _formula_faults(calculator, weighed)]
    return sorted(set(found), key=lambda fault: [str(part) for part in fault.path])


def _name_faults(calculator: Calculator) -> Iterator[CalculatorFault]:
    seen: dict[str, str] = {}
    for group in ("inputs", "constants", "results"):
        for name in getattr(calculator, group):
            path = (group, name, "[key]")
            if name in FUNCTIONS or name in CONSTANTS:
                yield CalculatorFault(path, 0, f"'{name}' is a word of the formula language", "choose another name")
            elif name in seen:
                yield CalculatorFault(path, 0, f"'{name}' is already in {seen[name]}", "give each value a name of its own")
            seen.setdefault(name, group)
    known = {*calculator.inputs, *calculator.results}
    for name in calculator.weighed.keys() - known:
        yield CalculatorFault(("weighed", name, "[key]"), 0, f"'{name}' is not an input or result", suggestion(name, known, "name one of them"))
    if not any(result.main for result in calculator.results.values()):
        yield CalculatorFault(("results",), 0, "no result is the main one", "write 'main: true' at the answer people come for")


def _unit_faults(calculator: Calculator) -> Iterator[CalculatorFault]:
    for group in ("inputs", "results", "weighed"):
        for name, each in getattr(calculator, group).items():
            metric = yield from _unit_fault((group, name, "unit"), each.unit)
            us = (yield from _unit_fault((group, name, "us_unit"), each.us_unit)) if each.us_unit else None
            if metric and us and metric.dimension != us.dimension:
                what = f"'{us}' is {us.kind}, but '{metric}' is {metric.kind}"
                yield CalculatorFault((group, name, "us_unit"), 0, what, "give a US unit of the same kind")
    for name, constant in calculator.constants.items():
        yield from _unit_fault(("constants", name, "unit"), constant.unit)


def _unit_fault(path: Path, spelling: str) -> Generator[CalculatorFault, None, Unit | None]:
    try:
        return unit(spelling)
    except UnitError as error:
        yield CalculatorFault(path, 0, error.what, error.instead)
        return None


def _formula_faults(calculator: Calculator, weighed: bool) -> Iterator[CalculatorFault]:
    units = _units(calculator, weighed).metric
    known: dict[str, Unit | ListOf] = {name: unit(each.unit) for name, each in calculator.constants.items()}
    known |= {name: ListOf(units[name]) if each.many else units[name] for name, each in calculator.inputs.items()}
    broken: set[str] = set()
    for name, result in calculator.results.items():
        path = ("results", name, "formula" if result.formula is not None else "equation")
        try:
            rule = rule_of(result)
            if not broken.intersection(rule.formula.names):
                check_rule(rule, known, units[name])
        except FormulaError as error:
            broken.add(name)
            yield CalculatorFault(path, error.offset if rule_is_text(result) else 0, error.what, error.instead)
        known[name] = units[name]
    for index, warning in enumerate(calculator.warnings):
        try:
            condition = parse(warning.when)
            if not broken.intersection(condition.names):
                check(condition, known, None)
        except FormulaError as error:
            yield CalculatorFault(("warnings", index, "when"), error.offset, error.what, error.instead)


def rule_is_text(result: Result) -> bool:
    """True where the author wrote the formula, so that an offset in it is a place in the file."""
    return result.formula is not None


def check_rule(rule: Rule, known: Mapping[str, Unit | ListOf], result: Unit) -> None:
    """FormulaError unless the rule's names are known and its units come to the result's."""
    own = {} if rule.equation is None else {name: unit(each.unit) for name, each in rule.equation.constants.items()}
    check(rule.formula, {**known, **own}, result)
