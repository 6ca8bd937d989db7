"""Hold or go: a task's hold rules, asked of a day.

What is not known stays not known. A rule that hangs on it is undecided, never silently passed: `leaf_wet and high > 30` on a
dry leaf is settled without the temperature, on a wet one it asks for it. Twin: hold or go.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Literal, get_args

from generator.book.records.hold import Hold, HoldRule
from generator.calculators.prepared import CalculatorFault
from generator.field.forecast import ANSWERED_BY, FLAGS, QUESTIONS, RULE_UNITS, Forecast, ago
from generator.findings import suggestion
from generator.formula import Formula, FormulaError, FormulaProblem, check
from generator.formula.conditions import parse_condition
from generator.formula.nodes import CONSTANTS, FUNCTIONS, Both, Name, Node, Not, walk
from generator.units import UnitError, to_si, unit

Answer = Literal["go", "care", "hold", "ask"]
# How soon another answer may come, from the shortest wait to the longest.
AGAIN = get_args(HoldRule.model_fields["again"].annotation)
_NAME = re.compile(r"[a-z][a-z0-9_]*")
_SEEN = re.compile(r"\{([a-z_]+)\}")


@dataclass(frozen=True)
class HoldReason:
    """A rule that holds. hold: the id of the record it stands in. said: its reason, with the day's own answers in it."""

    hold: str
    rule: HoldRule
    said: str


@dataclass(frozen=True)
class AskedHold:
    """What a rule needs and nobody has said. question: its id. could: the gravest answer that hangs on it. holds: by id, whose rules ask."""

    question: str
    could: Literal["hold", "care"]
    holds: tuple[str, ...]


@dataclass(frozen=True)
class HoldAnswer:
    """answer: hold when any rule says so; else ask while an unknown could still make it graver; else care, else go.

    reasons: every rule that holds, those that hold the work first. not_known: what is still to be asked, in the order of the
    questions; also when the answer stands already. quiet: ids of the holds that were asked and neither hold nor ask. presumed:
    questions that nobody answered and that were read as 'none', where another answer could have held the work or asked for care.
    """

    answer: Answer
    reasons: tuple[HoldReason, ...]
    not_known: tuple[AskedHold, ...]
    quiet: tuple[str, ...]
    presumed: tuple[str, ...] = ()

    @property
    def again(self) -> str:
        """When to ask again: the longest wait of what holds the work; empty where nothing does."""
        return max((each.rule.again for each in self.reasons if each.rule.answer == "hold"), key=AGAIN.index, default="")


def holds_of(task: str, holds: Mapping[str, Hold]) -> dict[str, Hold]:
    """The holds that a task is asked, by id."""
    return {id: hold for id, hold in holds.items() if task in hold.tasks}


def answer_for(holds: Mapping[str, Hold], forecast: Forecast) -> HoldAnswer:
    """Go, go with care, hold, or ask, with every reason and everything not known.

    holds: by id, as `check` has passed them. A comparison with what there is none of ('the label sets no such limit') is not
    true.
    """
    reasons: list[HoldReason] = []
    undecided: list[tuple[str, HoldRule, frozenset[str]]] = []
    quiet: list[str] = []
    presumed: set[str] = set()
    for id, hold in holds.items():
        before = len(reasons) + len(undecided)
        values = replace(forecast, known={**forecast.known, **constants_si(hold)})
        for rule in hold.rules:
            root, read = condition_of(rule).root, values.presumed()
            if _truth(root, values) is None:
                presumed |= set(_unknown(root, values)) & (read.absent - values.absent)
            truth = _truth(root, read)
            if truth:
                reasons.append(HoldReason(id, rule, said_reason(rule, values)))
            elif truth is None:
                undecided.append((id, rule, frozenset(_unknown(root, read))))
        if len(reasons) + len(undecided) == before:
            quiet.append(id)
    reasons.sort(key=lambda reason: reason.rule.answer != "hold")
    found = reasons[0].rule.answer if reasons else "go"
    graver = any(rule.answer == "hold" or found == "go" for _, rule, _ in undecided)
    answer = "ask" if found != "hold" and graver else found
    return HoldAnswer(answer, tuple(reasons), tuple(_asked(undecided)), tuple(quiet), tuple(id for id in QUESTIONS if id in presumed))


def said_reason(rule: HoldRule, forecast: Forecast | None = None) -> str:
    """A rule's reason with what was seen and when, 'frost was seen two nights ago'; without a day, as anybody may read it."""
    known = forecast.known if forecast else {}
    return _SEEN.sub(lambda seen: ago(known[seen[1]]) if seen[1] in known else QUESTIONS[seen[1]].lately or "", rule.reason)


def _asked(undecided: list[tuple[str, HoldRule, frozenset[str]]]) -> Iterator[AskedHold]:
    for question in QUESTIONS:
        asking = [(id, rule) for id, rule, names in undecided if question in {ANSWERED_BY[name] for name in names}]
        if asking:
            could: Literal["hold", "care"] = "hold" if any(rule.answer == "hold" for _, rule in asking) else "care"
            yield AskedHold(question, could, tuple(dict.fromkeys(id for id, _ in asking)))


def asks_of(holds: Mapping[str, Hold]) -> tuple[str, ...]:
    """Ids of every question that these holds may ask, in the order of the questions."""
    names = {name for hold in holds.values() for rule in hold.rules for name in condition_of(rule).names}
    return tuple(id for id in QUESTIONS if id in {ANSWERED_BY.get(name) for name in names})


def condition_of(rule: HoldRule) -> Formula:
    """The rule's condition, a yes-or-no name spelt out as `name > 0`. Raises FormulaError for text that is no formula."""
    return _parsed(rule.when)


@lru_cache(maxsize=500)
def _parsed(text: str) -> Formula:
    return parse_condition(text, FLAGS, lambda formula: None)


def constants_si(hold: Hold) -> dict[str, float]:
    """The hold's own numbers and the figures it names, in SI units."""
    return {name: to_si(each.value, unit(each.unit)) for name, each in hold.constants.items()}


def _names(node: Node) -> set[str]:
    return {part.name for part in walk(node) if isinstance(part, Name) and part.name not in CONSTANTS}


def _truth(node: Node, forecast: Forecast) -> bool | None:
    """Whether a condition holds; None while that hangs on what is not known."""
    match node:
        case Both(operator, conditions):
            decides = operator == "or"
            parts = [_truth(each, forecast) for each in conditions]
            return decides if decides in parts else None if None in parts else not decides
        case Not(condition):
            inner = _truth(condition, forecast)
            return None if inner is None else not inner
    names = _names(node)
    if names & forecast.absent:
        return False
    if names - forecast.known.keys():
        return None
    try:
        return bool(Formula(node, "").evaluate(forecast.known))
    except FormulaProblem:
        return None


def _unknown(node: Node, forecast: Forecast) -> Iterator[str]:
    """The names that an undecided condition hangs on."""
    if _truth(node, forecast) is not None:
        return
    match node:
        case Both(_, conditions):
            for each in conditions:
                yield from _unknown(each, forecast)
        case Not(condition):
            yield from _unknown(condition, forecast)
        case _:
            names = _names(node) & ANSWERED_BY.keys()
            # With every value there and still no answer, the values themselves have to be looked at again.
            yield from names - forecast.known.keys() or names


def faults(hold: Hold) -> list[CalculatorFault]:
    """Everything wrong with a hold, in the order of its file."""
    found = list(_name_faults(hold))
    units = dict(RULE_UNITS)
    for name, constant in hold.constants.items():
        try:
            units[name] = unit(constant.unit)
        except UnitError as error:
            if name not in hold.figures:  # A task's figure is told of in the task.
                found.append(CalculatorFault(("constants", name, "unit"), 0, error.what, error.instead))
    if found:
        return found
    for index, rule in enumerate(hold.rules):
        try:
            parse_condition(rule.when, FLAGS, lambda formula: check(formula, units, None))
        except FormulaError as error:
            found.append(CalculatorFault(("rules", index, "when"), error.offset, error.what, error.instead))
        seen = {name for name, question in QUESTIONS.items() if question.lately}
        for named in _SEEN.finditer(rule.reason):
            if named[1] not in seen:
                instead = f"write one of these: {', '.join(f'{{{name}}}' for name in sorted(seen))}"
                found.append(CalculatorFault(("rules", index, "reason"), named.start(), f"a reason cannot say when {named[0]} was", instead))
    return found or list(_idle_faults(hold))


def _name_faults(hold: Hold) -> Iterator[CalculatorFault]:
    for group in ("figures", "constants"):
        for name in getattr(hold, group):
            if group == "constants" and name in hold.figures:
                continue
            path = (group, name, "[key]")
            if not _NAME.fullmatch(name):
                yield CalculatorFault(path, 0, f"'{name}' cannot be used in a formula", "use small letters, digits and underscores: heavy_rain")
            elif name in FUNCTIONS or name in CONSTANTS:
                yield CalculatorFault(path, 0, f"'{name}' is a word of the formula language", "choose another name")
            elif name in ANSWERED_BY or name in QUESTIONS:
                by = "the label" if name.startswith("label_") else "the reader"
                yield CalculatorFault(path, 0, f"'{name}' is for {by} to give", "take it out, or choose another name")


def _idle_faults(hold: Hold) -> Iterator[CalculatorFault]:
    used = {name for rule in hold.rules for name in condition_of(rule).names}
    for group in ("figures", "constants"):
        for name in getattr(hold, group):
            if name not in used and not (group == "constants" and name in hold.figures):
                yield CalculatorFault((group, name, "[key]"), 0, f"no rule uses '{name}'", suggestion(name, used, "use it in a rule, or take it out"))
