"""A calculator turned round: a result is given, and one input is found that leads to it.

Twin: turned round.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from typing import Any

from generator.book.records.calculator import Calculator
from generator.calculators.calculate import Calculation, InputProblem, Said, calculate, show_amount, unknown_input
from generator.calculators.calculator_sentences import DIGITS, MOST_LISTED, SENTENCES
from generator.calculators.prepared import Prepared, limit_si, prepared
from generator.calculators.root_search import SEARCH, Meeting, meetings, points, side_of, with_extremes
from generator.findings import suggestion
from generator.formula import FormulaProblem
from generator.units import QuantityError, Unit, from_si, read_quantity, to_si


def solve(
    calculator: Calculator, wanted: Mapping[str, str | float], for_input: str, given: Mapping[str, str | float | Sequence[float]]
) -> Calculation:
    """The run whose input `for_input` is chosen so that one result comes to what is wanted.

    wanted: one result's name to text as typed ('2 packs') or to a value in SI units; given: the other inputs, as for
    `calculate`. Where a result goes in steps (whole packs), the input is the largest or smallest that still meets it, and
    a remark says so. Nothing is raised for what a person may type: `problems` of the run says why there is no answer.

    Source: bisection over the input's possible range; see `crossing`.
    """
    ready = prepared(calculator)
    refused = _refusals(calculator, wanted, for_input, given)
    if refused:
        return Calculation({}, {}, (), tuple(refused))
    start = calculate(calculator, given)
    typed = tuple(each for each in start.problems if each.code != "no-answer")
    if typed:
        return replace(start, results={}, problems=typed)
    (result, text), = wanted.items()
    units = ready.measured
    if ready.weighed and any(start.inputs[name].unit != units.metric[name] for name in start.inputs):
        units = ready.weighed
    try:
        target = read_quantity(text, units.metric[result]) if isinstance(text, str) else float(text)
    except QuantityError as error:
        return _none(start, result, "unreadable", SENTENCES["unreadable"].format(label=calculator.results[result].label, why=error.sentence))
    search = _Search(ready, for_input, result, target, start, units.metric[result], start.inputs[for_input].unit)
    found = search.found()
    if isinstance(found, str):
        return _none(start, result, "no-answer", found)
    run = calculate(calculator, {**given, for_input: found[0]})
    remark = (Said(found[1], "note", for_input),) if found[1] else ()
    return replace(run, warnings=(*remark, *run.warnings))


def _none(start: Calculation, about: str, code: str, sentence: str) -> Calculation:
    return replace(start, results={}, warnings=(), problems=(InputProblem(about, code, sentence),))


def _refusals(calculator: Calculator, wanted: Mapping[str, object], for_input: str, given: Mapping[str, object]) -> list[InputProblem]:
    asked = calculator.inputs.get(for_input)
    if asked is None:
        return [unknown_input(calculator, for_input)]
    found = [
        InputProblem(name, "unknown-result", f"There is no result '{name}'", suggestion(name, calculator.results, 'it gives ' + ', '.join(calculator.results)))
        for name in wanted if name not in calculator.results
    ]
    if len(wanted) != 1:
        found.append(InputProblem(for_input, "unknown-result", f"One result must be given to work back from; it gives {', '.join(calculator.results)}."))
    if for_input in given:
        found.append(InputProblem(for_input, "given-twice", f"{asked.question} is both given and asked for; leave its value out."))
    if asked.label_only:
        found.append(InputProblem(for_input, "not-solved", f"{asked.question} is never worked out here: only the {asked.printed_on} can give it."))
    if asked.many:
        found.append(InputProblem(for_input, "not-solved", f"{asked.question} is a list, which no single result can give back."))
    return found


class _Search:
    """One result as a function of one input, and what can be said of where it meets the wanted value."""

    def __init__(self, ready: Prepared, for_input: str, result: str, target: float, start: Calculation, unit: Unit, input_unit: Unit) -> None:
        self.asked, self.label = ready.calculator.inputs[for_input], ready.calculator.results[result].label
        self.target, self.unit, self.input_unit = target, unit, input_unit
        self.function = _response(ready, for_input, result, {name: amount.si for name, amount in start.inputs.items()})

    def found(self) -> tuple[float, str | None] | str:
        """(value [SI], a remark or None), or why there is none."""
        asked = self.asked
        above, least, self.high = (limit_si(asked, limit) for limit in ("above", "at_least", "at_most"))
        low = least if above is None or (least is not None and least > above) else above
        size, zero = self.input_unit.factor, self.input_unit.offset
        places = points(low, self.high, size, zero, low is not None and low == above, asked.whole)
        if not asked.whole:
            places = with_extremes(self.function, places)
        values = [value for value in map(self.function, places) if value is not None]
        if not values:
            return self._said("never")
        if max(values) - min(values) <= SEARCH.same * max(map(abs, values)):
            return self._said("same")
        met = meetings(self.function, places, self.target, asked.whole)
        if not met:
            # Where the low end itself is not possible, what the result tends to there is its bound all the same.
            end = None if low is None else self.function(low)
            values += [] if end is None else [end]
            return self._out_of_reach(min(values), max(values))
        if len(met) > 1:
            return self._several(met)
        return self._one(met[0])

    def _shown(self, value: float) -> str:
        return show_amount(value, self.unit)

    def _input(self, value: float) -> str:
        return show_amount(value, self.input_unit)

    def _said(self, name: str, **values: str) -> str:
        return SENTENCES[name].format(label=self.label, question=self.asked.question, wanted=self._shown(self.target), **values)

    def _out_of_reach(self, least: float, most: float) -> str:
        if self.target < least:
            return self._said("below", limit=self._shown(least))
        return self._said("beyond", limit=self._shown(most)) if self.target > most else self._said("jumps")

    def _several(self, met: list[Meeting]) -> str:
        if len(met) > MOST_LISTED:
            return self._said("too-many")
        return self._said("several", listed=" and ".join(self._input(self._chosen(each)) for each in met))

    def _chosen(self, met: Meeting) -> float:
        """The end of a stretch that uses the wanted amount to the full and no more; the side of a leap that stays within it."""
        if met.kind == "point":
            return self._tidy((met.first + met.last) / 2, within=False)
        if met.kind == "leap":
            return self._tidy(met.first if met.before < 0 else met.last, within=True)
        if met.before > 0 or (met.before < 0 and met.after <= 0):
            return self._tidy(met.first, within=True)
        return self._tidy(met.last, within=True)

    def _tidy(self, value: float, within: bool) -> float:
        """The value to nine digits where that meets what is wanted as well."""
        if self.asked.whole:
            return value
        short = to_si(float(f"{from_si(value, self.input_unit):.{DIGITS}g}"), self.input_unit)
        here, there = self.function(value), self.function(short)
        if here is None or there is None:
            return value
        if within:
            return short if side_of(there, self.target) == side_of(here, self.target) else value
        return short if abs(there - self.target) <= max(abs(here - self.target), SEARCH.same * abs(self.target)) else value

    def _one(self, met: Meeting) -> tuple[float, str | None]:
        chosen = self._chosen(met)
        if met.kind == "point":
            return chosen, None
        if met.kind == "leap":
            return chosen, self._of_a_leap(met, chosen)
        name = "open-stretch" if not met.after and self.high is None else "stretch"
        which = "largest" if abs(chosen - met.last) < abs(chosen - met.first) else "smallest"
        return chosen, self._said(name, first=self._input(met.first), last=self._input(met.last), which=which)

    def _of_a_leap(self, met: Meeting, chosen: float) -> str:
        rising = met.before < 0
        here, other = (met.first, met.last) if rising else (met.last, met.first)
        near, far = ("" if (answer := self.function(each)) is None else self._shown(answer) for each in (here, other))
        beyond = self._input(other) if self.asked.whole else SENTENCES["more" if rising else "less"]
        return self._said("leap", near=near, given=self._input(chosen), far=far, other=beyond)


def _response(ready: Prepared, for_input: str, result: str, values: Mapping[str, object]) -> Callable[[float], float | None]:
    """The result [SI] as a function of the input [SI]; None where it has no answer."""
    chain: list[str] = []
    needed = {result}
    for name in reversed(list(ready.calculator.results)):
        if name in needed:
            chain.insert(0, name)
            needed |= set(ready.rules[name].formula.names)

    def function(value: float) -> float | None:
        known: dict[str, Any] = {**ready.constants_si, **values, for_input: value}
        for name in chain:
            try:
                known[name] = ready.rules[name].formula.evaluate({**known, **ready.rules[name].constants_si})
            except FormulaProblem:
                continue
        answer: float | None = known.get(result)
        return answer

    return function
