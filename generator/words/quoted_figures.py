"""A figure that a text quotes: '{task.water.one-watering-on-sand}' stands for a figure of the book, so that no text types one again."""

import math
import re
from collections.abc import Callable, Iterator, Mapping
from typing import Any, NamedTuple, Protocol

from generator.book.fields.sourced import OURS, Claim
from generator.book.records.calculator import Constant
from generator.book.records.grass import Grass
from generator.book.records.inspection import Inspection
from generator.book.records.practice import Practice, SeasonGroups
from generator.calculators.bindings import bound_value
from generator.calculators.chosen import Chosen
from generator.calculators.filled_value import BindError, check_named, field_of, unit_of_field, words_of
from generator.findings import suggestion
from generator.units import known_unit
from generator.words.rough_words import SHARES

_PLACEHOLDER = re.compile(r"\{([^{}]*)\}")
ENDS = ("low", "high", "use")
AS_WORDS = "words"
WRITE = "write kind.id.figure, such as {task.water.one-watering-on-sand} or {grass.couch.mowing_height.low}"


class QuotedFrom(Protocol):
    """What a text may quote from: the book's records by id."""

    grasses: Mapping[str, Any]
    tasks: Mapping[str, Any]
    steps: Mapping[str, Any]
    problems: Mapping[str, Any]
    renovations: Mapping[str, Any]
    holds: Mapping[str, Any]
    calculators: Mapping[str, Any]
    practice: Practice | None
    season_groups: SeasonGroups | None
    inspection: Inspection | None


class Quote(NamedTuple):
    """What stands in for a placeholder: `claim`, a figure, or `words`. kind, id: the record it comes from. label: what it is there."""

    claim: Claim | None
    words: str | None
    kind: str
    id: str
    label: str


class Placeholder(NamedTuple):
    """A placeholder in a text: what stands between its braces, and where it begins [characters from 0]."""

    expression: str
    offset: int


def pieces(text: str) -> Iterator[str | Placeholder]:
    """A text as plain stretches and placeholders, in order."""
    at = 0
    for found in _PLACEHOLDER.finditer(text):
        if found.start() > at:
            yield text[at:found.start()]
        yield Placeholder(found[1].strip(), found.start())
        at = found.end()
    if at < len(text):
        yield text[at:]


def quote(expression: str, shelf: QuotedFrom) -> Quote:
    """What a placeholder stands for.

    expression: task.ID.FIGURE, problem.ID.FIGURE, grass.ID.FIELD, group.warm.FIELD, season.RULE, step.ID.depth, plan.ID.STEP (its days),
    hold.ID.CONSTANT, calculator.ID.CONSTANT, inspection.CONSTANT or practice.FIELD. After a figure, '.low', '.high' or '.use' takes
    one number of it, and '.words' says a share as a word: a third.
    Raises BindError for what names nothing.
    """
    kind, *names = expression.split(".")
    if kind not in _KINDS or not names:
        raise BindError(f"'{expression}' names no figure of the book", suggestion(kind, _KINDS, WRITE) if kind not in _KINDS else WRITE)
    end = names.pop() if len(names) > 1 and names[-1] in (*ENDS, AS_WORDS) else None
    found = _KINDS[kind](expression, names, shelf)
    if end is None:
        return found
    if found.claim is None:
        raise BindError(f"'{expression}' asks for a number of a word", f"leave out '.{end}'")
    return found._replace(words=_share(expression, found.claim)) if end == AS_WORDS else found._replace(claim=_one(found.claim, end))


def _one(claim: Claim, end: str) -> Claim:
    value = {"low": claim.lowest, "high": claim.highest, "use": claim.default}[end]
    return Claim(use=value, unit=claim.unit, source=claim.source, note=claim.note)


def _share(expression: str, claim: Claim) -> str:
    given = known_unit(claim.unit)
    percent = claim.measured_in("%").default if given and given.dimension.is_number else math.nan
    nearest = min(SHARES, key=lambda share: abs(share - percent))
    if not abs(nearest - percent) <= 1:
        raise BindError(f"'{expression}' is not a share that has a name", "leave out '.words'")
    return SHARES[nearest]


def _record(expression: str, names: list[str], table: Mapping[str, Any], what: str, parts: int) -> Any:
    if len(names) < parts:
        raise BindError(f"'{expression}' does not say which figure", WRITE)
    if names[0] not in table:
        raise BindError(f"{what} '{names[0]}' is not in the book", suggestion(names[0], table, f"name a {what} of the book"))
    return table[names[0]]


def _of_task(expression: str, names: list[str], shelf: QuotedFrom) -> Quote:
    return _own_figure(expression, names, shelf.tasks, "task", "tasks")


def _of_problem(expression: str, names: list[str], shelf: QuotedFrom) -> Quote:
    return _own_figure(expression, names, shelf.problems, "problem", "problems")


def _own_figure(expression: str, names: list[str], table: Mapping[str, Any], what: str, kind: str) -> Quote:
    """One of the `figures` of a record."""
    record = _record(expression, names, table, what, 2)
    if len(names) != 2 or names[1] not in record.figures:
        known = f"its figures are {', '.join(record.figures)}" if record.figures else "it has none"
        raise BindError(f"'{expression}' is not a figure of the {what}", suggestion(names[-1], record.figures, known))
    return Quote(record.figures[names[1]], None, kind, names[0], f"{record.name}: {names[1].replace('-', ' ')}")


def _of_grass(expression: str, names: list[str], shelf: QuotedFrom) -> Quote:
    grass = _record(expression, names, shelf.grasses, "grass", 2)
    return Quote(grass_claim(expression, grass, names[1:]), None, "grasses", names[0], f"{grass.name}: {words_of(names[-1])}")


def grass_claim(expression: str, grass: Grass, names: list[str]) -> Claim:
    """A grass's figure by the path of its field. Raises Missing where this grass leaves it out, BindError for what is no figure."""
    claim = field_of(expression, grass, names)
    if not isinstance(claim, Claim):
        raise BindError(f"'{expression}' is not a figure", "name a field that holds one, such as mowing_height")
    return claim


def grass_field(expression: str, grass: Grass) -> Claim | str:
    """What a field of every grass, 'grass.mowing_height' or 'grass.tolerance.shade.level', is for this one: a figure or a word.

    Raises Missing where this grass leaves it out, BindError for what is neither.
    """
    kind, *names = expression.split(".")
    if kind != "grass" or not names:
        raise BindError(f"'{expression}' names no field of a grass", "write grass.field, such as grass.mowing_height")
    value = field_of(expression, grass, names)
    if not isinstance(value, Claim | str):
        raise BindError(f"'{expression}' is neither a figure nor a word", "name a field such as grass.mowing_height")
    return value


def _of_group(expression: str, names: list[str], shelf: QuotedFrom) -> Quote:
    groups = {name: getattr(shelf.season_groups, name) for name in ("warm", "cool")} if shelf.season_groups else {}
    figures = _record(expression, names, groups, "season group", 2)
    claim = field_of(expression, figures, names[1:])
    if not isinstance(claim, Claim):
        raise BindError(f"'{expression}' is not a figure", "name a field that holds one, such as growth_optimum")
    return Quote(claim, None, "season-groups", names[0], f"{names[0].capitalize()}-season grass: {words_of(names[-1])}")


def _of_season(expression: str, names: list[str], shelf: QuotedFrom) -> Quote:
    rules = shelf.season_groups.rules.by_name if shelf.season_groups else {}
    rule = _record(expression, names, rules, "season rule", 1)
    return Quote(rule, None, "season-groups", names[0], f"The season: {names[0].replace('_', ' ')}")


def _of_step(expression: str, names: list[str], shelf: QuotedFrom) -> Quote:
    step = _record(expression, names, shelf.steps, "step", 2)
    bound = bound_value(expression, Chosen(steps=shelf.steps))
    claim = Claim(use=bound.value, unit=bound.unit, source=step.sources)
    return Quote(claim, None, "steps", names[0], f"{step.title}: {names[1]}")


def _of_plan(expression: str, names: list[str], shelf: QuotedFrom) -> Quote:
    plan = _record(expression, names, shelf.renovations, "plan", 2)
    steps = {step.id: step for step in plan.steps}
    if len(names) != 2 or names[1] not in steps:
        raise BindError(f"'{expression}' is not a step of the plan", suggestion(names[-1], steps, f"its steps are {', '.join(steps)}"))
    step = steps[names[1]]
    first, last = sorted((abs(step.day), abs(step.day if step.until_day is None else step.until_day)))
    claim = Claim(low=first, high=last, use=first if first == last else None, unit="day", source=step.sources)
    return Quote(claim, None, "renovations", names[0], f"{plan.name}: {step.title}")


def _constant(expression: str, names: list[str], constants: Mapping[str, Constant], kind: str, id: str, whose: str) -> Quote:
    if len(names) != 1 or names[0] not in constants:
        known = f"it has {', '.join(constants)}" if constants else "it has none"
        raise BindError(f"'{expression}' is not a number of {whose}", suggestion(names[-1] if names else "", constants, known))
    found = constants[names[0]]
    claim = Claim(use=found.value, unit=found.unit, source=found.source, note=found.note)
    return Quote(claim, None, kind, id, f"{whose}: {found.meaning}")


def _of_hold(expression: str, names: list[str], shelf: QuotedFrom) -> Quote:
    hold = _record(expression, names, shelf.holds, "hold", 2)
    return _constant(expression, names[1:], hold.constants, "holds", names[0], hold.name)


def _of_calculator(expression: str, names: list[str], shelf: QuotedFrom) -> Quote:
    calculator = _record(expression, names, shelf.calculators, "calculator", 2)
    return _constant(expression, names[1:], calculator.constants, "calculators", names[0], calculator.name)


def _of_inspection(expression: str, names: list[str], shelf: QuotedFrom) -> Quote:
    if shelf.inspection is None:
        raise BindError(f"'{expression}' names the inspection sheet, and the book has none", "quote another figure")
    return _constant(expression, names, shelf.inspection.constants, "inspection", "inspection", shelf.inspection.title)


def _of_practice(expression: str, names: list[str], shelf: QuotedFrom) -> Quote:
    check_named(expression, Practice, names[0])
    value = field_of(expression, shelf.practice, names) if shelf.practice else None
    label = f"Our own terms: {words_of(names[-1])}"
    if isinstance(value, int | float) and not isinstance(value, bool):
        claim = Claim(use=value, unit=unit_of_field(names[-1]) or "1", source=OURS)
        return Quote(claim, None, "practice", "practice", label)
    if not isinstance(value, str):
        raise BindError(f"'{expression}' is neither a number nor a word", "name a field that holds one, such as minimum_charge")
    return Quote(None, value, "practice", "practice", label)


_KINDS: dict[str, Callable[[str, list[str], QuotedFrom], Quote]] = {
    "task": _of_task, "problem": _of_problem, "grass": _of_grass, "group": _of_group, "season": _of_season, "step": _of_step, "plan": _of_plan,
    "hold": _of_hold, "calculator": _of_calculator, "inspection": _of_inspection, "practice": _of_practice,
}

