"""Running a calculator: what was typed becomes values, values become results, and every trouble becomes a sentence.

Twin: calculator.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from decimal import ROUND_HALF_UP, Context, Decimal

from generator.book.records.calculator import Calculator, Example, Input
from generator.calculators.calculator_sentences import SENTENCES, SINGULAR, SLACK
from generator.calculators.prepared import Limits, Prepared, Units, prepared
from generator.calculators.single_value import Value, readings, single
from generator.findings import suggestion
from generator.formula import FormulaProblem
from generator.units import QuantityError, Unit, from_si, read_list, read_quantity, to_si, unit

# A number as large or as small as there is has some 330 digits on either side of the point; the usual 28 would end in a traceback.
_ALL_DIGITS = Context(prec=700)
USAGE = ("unknown-input", "unknown-result", "given-twice", "not-solved", "missing", "unreadable")


@dataclass(frozen=True)
class InputProblem:
    """Why there is no answer.

    about: the input or result; code: unknown-input, missing, unreadable, impossible or no-answer, or of a calculator turned
    round unknown-result, given-twice or not-solved. what: what is wrong; instead: what would be right, where that can be named.
    """

    about: str
    code: str
    what: str
    instead: str | None = None

    @property
    def sentence(self) -> str:
        """Both, for people."""
        return self.what if self.instead is None else f"{self.what}; {self.instead}"


@dataclass(frozen=True)
class Said:
    """A remark beside an answer. about: the input it is about, or None; weight: note, care or danger."""

    sentence: str
    weight: str
    about: str | None = None


@dataclass(frozen=True)
class Amount:
    """One input or result. si: in SI units, a tuple for readings; unit and us_unit: how it is usually given."""

    si: Value
    unit: Unit
    us_unit: Unit
    decimals: int | None = None

    def value(self, wanted: Unit | None = None) -> Value:
        """In `unit`, or in another; twelve digits, so that 4.8 is not 4.800000000000001."""
        wanted = wanted or self.unit
        if isinstance(self.si, tuple):
            return tuple(_tidy(from_si(each, wanted)) for each in self.si)
        return _tidy(from_si(self.si, wanted))


@dataclass(frozen=True)
class Calculation:
    """A run. results lack what could not be worked out; problems say why."""

    inputs: Mapping[str, Amount]
    results: Mapping[str, Amount]
    warnings: tuple[Said, ...] = ()
    problems: tuple[InputProblem, ...] = field(default=())


def _tidy(value: float) -> float:
    return float(f"{value:.12g}")


def calculate(calculator: Calculator, given: Mapping[str, str | float | Sequence[float]]) -> Calculation:
    """Every result for what was given; an input not given takes its default.

    given: input name to text as typed ('240 m2', '12, 14, 15') or to a value in SI units.
    Nothing is raised for what a person may type: trouble is in `problems`.
    """
    ready = prepared(calculator)
    problems = [unknown_input(calculator, name) for name in given if name not in calculator.inputs]
    values, units = _read_all(ready, given, problems)
    inputs = {name: Amount(si, units.metric[name], units.us[name]) for name, si in values.items()}
    results = _results(ready, values, units, problems)
    known = {**ready.constants_si, **values, **{name: amount.si for name, amount in results.items()}}
    warnings = (*_unusual(ready, inputs), *_warnings(ready, known))
    return Calculation(inputs, results, warnings, tuple(problems))


def unknown_input(calculator: Calculator, name: str) -> InputProblem:
    """That a calculator has no such input, and which it has."""
    listed = f"it takes {', '.join(calculator.inputs)}"
    return InputProblem(name, "unknown-input", f"There is no input '{name}'", suggestion(name, calculator.inputs, listed))


def _read_all(ready: Prepared, given: Mapping[str, object], problems: list[InputProblem]) -> tuple[dict[str, Value], Units]:
    values: dict[str, Value] = {}
    units = ready.measured
    for name, asked in ready.calculator.inputs.items():
        if name not in given and asked.label_only:
            problems.append(InputProblem(name, "missing", f"{asked.question} is needed: only the {asked.printed_on} can give it."))
            continue
        try:
            values[name] = _read(asked, given.get(name), units.metric[name])
        except QuantityError as error:
            weighed = _read_weighed(ready, name, given[name]) if error.code == "wrong-dimension" else None
            if weighed is None:
                problems.append(_unreadable(name, asked, error))
                continue
            values[name], units = weighed, ready.weighed or units
        impossible = _impossible(asked, ready.limits[name], values[name], units.metric[name])
        if impossible:
            problems.append(InputProblem(name, "impossible", impossible))
            del values[name]
    return values, units


def _unreadable(name: str, asked: Input, error: QuantityError) -> InputProblem:
    if not error.instead:
        return InputProblem(name, "unreadable", f"{asked.question}: {error.sentence}")
    return InputProblem(name, "unreadable", f"{asked.question}: {error.what}", f"{error.instead}.")


def _read(asked: Input, typed: object, wanted: Unit) -> Value:
    if typed is None:
        return default_si(asked)
    if not isinstance(typed, str):
        assert isinstance(typed, int | float | Sequence), "what is given is text, a number or readings"
        return tuple(map(float, typed)) if isinstance(typed, Sequence) else float(typed)
    if asked.many:
        return tuple(read_list(typed, wanted))
    try:
        return read_quantity(typed, wanted)
    except QuantityError as error:
        # '5 °C' as a distance between temperatures: people leave the word 'difference' out.
        if error.code == "wrong-dimension" and wanted.kind == "a temperature difference":
            return read_quantity(f"{typed} difference", wanted)
        raise


def _read_weighed(ready: Prepared, name: str, typed: object) -> Value | None:
    if name not in ready.calculator.weighed or ready.weighed is None:
        return None
    try:
        return _read(ready.calculator.inputs[name], typed, ready.weighed.metric[name])
    except QuantityError:
        return None


def default_si(asked: Input) -> Value:
    """What an input starts with, in SI units."""
    start = unit(asked.unit)
    return tuple(to_si(each, start) for each in readings(asked.default)) if asked.many else to_si(single(asked.default), start)


def _impossible(asked: Input, limits: Limits, value: Value, shown: Unit) -> str | None:
    """The sentence for a value that cannot be, or None."""
    above, least, most, *_ = limits
    for each in value if isinstance(value, tuple) else (value,):
        if above is not None and each <= above:
            rule, limit = "above", above
        elif least is not None and each < least - _slack(least):
            rule, limit = "at-least", least
        elif most is not None and each > most + _slack(most):
            rule, limit = "at-most", most
        elif asked.whole and abs(each - round(each)) > SLACK:
            rule, limit = "whole", 0.0
        else:
            continue
        return SENTENCES[rule].format(question=asked.question, limit=show_amount(limit, shown), given=show_amount(each, shown))
    return None


def _slack(limit: float) -> float:
    return SLACK * abs(limit)


def _unusual(ready: Prepared, inputs: Mapping[str, Amount]) -> list[Said]:
    said = []
    for name, amount in inputs.items():
        asked, (*_, low, high) = ready.calculator.inputs[name], ready.limits[name]
        values = amount.si if isinstance(amount.si, tuple) else (amount.si,)
        if low is not None and min(values) < low - _slack(low):
            rule, limit, given = "seldom-under", low, min(values)
        elif high is not None and max(values) > high + _slack(high):
            rule, limit, given = "seldom-over", high, max(values)
        else:
            continue
        shown = {"limit": show_amount(limit, amount.unit), "given": show_amount(given, amount.unit)}
        said.append(Said(SENTENCES[rule].format(question=asked.question, **shown), "note", name))
    return said


def _results(ready: Prepared, values: dict[str, Value], units: Units, problems: list[InputProblem]) -> dict[str, Amount]:
    known: dict[str, Value] = {**ready.constants_si, **values}
    results: dict[str, Amount] = {}
    for name, result in ready.calculator.results.items():
        rule = ready.rules[name]
        try:
            known[name] = rule.formula.evaluate({**known, **rule.constants_si})
        except FormulaProblem as problem:
            # What rests on a value that is missing is silent: one cause, one sentence.
            if problem.code != "missing-value":
                why = f"{problem.sentence[:1].lower()}{problem.sentence[1:]}"
                problems.append(InputProblem(name, "no-answer", SENTENCES["no-answer"].format(label=result.label, why=why)))
            continue
        results[name] = Amount(known[name], units.metric[name], units.us[name], result.decimals)
    return results


def _warnings(ready: Prepared, known: Mapping[str, Value]) -> list[Said]:
    said = []
    for warning, condition in zip(ready.calculator.warnings, ready.conditions, strict=True):
        try:
            if condition.evaluate(known):
                said.append(Said(warning.say, warning.weight))
        except FormulaProblem:
            continue  # It rests on a value that is missing, which has its own sentence.
    return said


def figures(value: float, decimals: int | None) -> str:
    """A number as it can be measured out: at most `decimals`, but never fewer than two digits that count.

    value: in any unit. None stands for three digits that count. Rounds half away from zero; zeros at the end are left out.
    """
    exact = Decimal(repr(value))
    if not exact:
        return "0"
    fewest = (2 if decimals is None else 1) - exact.adjusted()
    places = max(fewest, decimals or 0)
    if decimals is not None and exact == exact.to_integral_value():
        places = 0  # A whole count stays as it is.
    text = f"{exact.quantize(Decimal(1).scaleb(-max(places, 0)), ROUND_HALF_UP, _ALL_DIGITS):f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def show_amount(si: float, wanted: Unit, decimals: int | None = None) -> str:
    """'4.8 kg', '75 %', '2 passes', from a value in SI units; a plain number has no unit."""
    number = figures(_tidy(from_si(si, wanted)), decimals if decimals is not None else 4)
    return f"{number} {unit_after(number, wanted)}".strip()


def unit_after(number: str, wanted: Unit) -> str:
    """The unit as it stands after a printed number: '1 pack', '2 packs'; empty for a plain number."""
    if wanted.kind == "a count" and number == "1":
        return SINGULAR.get(wanted.spelling, wanted.spelling)
    return "" if wanted.spelling == "1" else wanted.spelling


@dataclass(frozen=True)
class ExampleFault:
    """How a worked example differs from what the calculator gives. about: the input or result; instead: None where only its author can say."""

    about: str
    what: str
    instead: str | None = None


def run_example(calculator: Calculator, example: Example) -> list[ExampleFault]:
    """What is wrong with a worked example; empty when it agrees."""
    run = calculate(calculator, dict(example.inputs))
    found = [ExampleFault(problem.about, problem.what, problem.instead) for problem in run.problems]
    for name, expected in example.results.items():
        if name not in calculator.results:
            found.append(ExampleFault(name, f"There is no result '{name}'", suggestion(name, calculator.results, "name one of its results")))
        elif name in run.results:
            wanted = unit(expected.unit)
            if wanted.dimension != run.results[name].unit.dimension:
                found.append(ExampleFault(name, f"{name} is not measured in {wanted}", f"use {run.results[name].unit}"))
                continue
            got = single(run.results[name].value(wanted))
            if abs(got - expected.value) > expected.within * (1 + SLACK):
                shown = f"{expected.value:g} {wanted}"
                found.append(ExampleFault(name, f"{name} comes to {got:g} {wanted}, but the example says {shown}, within {expected.within:g}"))
    return found
