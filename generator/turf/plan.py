"""A renovation plan for one grass: which steps it keeps, in order, and what fills in the calculators at each.

A step whose task the grass does not take is left out with the grass's own reason; what waited for it then waits for
whatever it waited for. Later, dates and delays hang on the same `after` chains, so nothing here knows a calendar.
"""

import re
from dataclasses import dataclass
from typing import Any, Literal, NamedTuple

from generator.findings import suggestion
from generator.model.grass import Grass, Operation
from generator.model.practice import Practice
from generator.model.record import Claim, Record
from generator.model.renovation import Renovation, Step
from generator.units import UnitError, unit

Stage = Literal["before", "day", "after"]

# What the end of a field's name says its plain number is counted in, longest first.
_UNIT_OF_FIELD = {"_kg_per_100_m2": "kg/100 m2", "_percent": "%", "_kg": "kg"}
_LITERAL = re.compile(r"(?P<number>[0-9]+(?:\.[0-9]+)?)(?: (?P<unit>\S.*))?")
_KINDS = ("grass", "practice", "renovation")


@dataclass(frozen=True)
class StepFor:
    """A step as one grass takes it.

    stage: before (day below 0), day (day 0) or after. operation: how hard and how this grass takes the step's task;
    None when the step has no task or the grass's file says nothing of it. after: ids of kept steps that must come first.
    """

    step: Step
    stage: Stage
    operation: Operation | None
    after: tuple[str, ...]


@dataclass(frozen=True)
class LeftOut:
    """A step this grass does not get; the reason is a sentence of its own file wherever that speaks of the task."""

    step: Step
    reason: str
    operation: Operation | None


@dataclass(frozen=True)
class PlanSteps:
    """kept: in order of day, the plan's own order within a day; left_out: in the plan's order.

    not_taken: what this grass must not have and the plan has no step for either, by task: somebody will ask why not.
    """

    kept: tuple[StepFor, ...]
    left_out: tuple[LeftOut, ...]
    not_taken: dict[str, Operation]

    def stage(self, stage: Stage) -> tuple[StepFor, ...]:
        """The kept steps of one stage, in order."""
        return tuple(kept for kept in self.kept if kept.stage == stage)


def stage_of(day: int) -> Stage:
    """The stage of a day counted from renovation day [days]: before, day or after."""
    return "before" if day < 0 else "day" if day == 0 else "after"


def steps_for(renovation: Renovation, grass: Grass) -> PlanSteps:
    """The steps of a plan that a grass takes, and those it does not, each with its reason."""
    left_out = []
    for step in renovation.steps:
        operation = _operation(step, grass)
        reason = _reason_to_leave_out(step, grass, operation)
        if reason:
            left_out.append(LeftOut(step, reason, operation))
    gone = {left.step.id: left.step for left in left_out}
    kept = [
        StepFor(step, stage_of(step.day), _operation(step, grass), _after(step, gone))
        for step in renovation.steps
        if step.id not in gone
    ]
    planned = {step.task for step in renovation.steps}
    not_taken = {
        task: operation for task, operation in grass.operations.items() if operation.level == "none" and task not in planned
    }
    return PlanSteps(tuple(sorted(kept, key=lambda each: each.step.day)), tuple(left_out), not_taken)


def _operation(step: Step, grass: Grass) -> Operation | None:
    return grass.operations.get(step.task) if step.task else None


def _reason_to_leave_out(step: Step, grass: Grass, operation: Operation | None) -> str | None:
    if step.only_habits and grass.habit not in step.only_habits:
        return f"Only for grass that grows {' or '.join(step.only_habits)}; {grass.name} grows {grass.habit}."
    if operation is None:
        return None
    unwanted = operation.level == "none" or (step.only_levels and operation.level not in step.only_levels)
    return operation.how if unwanted else None


def _after(step: Step, gone: dict[str, Step], seen: frozenset[str] = frozenset()) -> tuple[str, ...]:
    """What a step waits for once the steps left out are skipped; a circle in the plan ends rather than runs on."""
    waits: dict[str, None] = {}
    for earlier in step.after:
        if earlier in seen:
            continue
        if earlier in gone:
            waits |= dict.fromkeys(_after(gone[earlier], gone, seen | {earlier}))
        else:
            waits[earlier] = None
    return tuple(waits)


class BindError(ValueError):
    """A `fill` that names nothing that can be filled in: what is wrong, and what would be right."""

    def __init__(self, what: str, instead: str) -> None:
        super().__init__(f"{what}; {instead}")
        self.what = what
        self.instead = instead


class Missing(BindError):
    """The field exists, but this grass or this product leaves it out; another may well have it."""


class Bound(NamedTuple):
    """A filled-in value: the number in `unit`, and where it comes from in words for the page."""

    value: float
    unit: str
    where_from: str

    @property
    def typed(self) -> str:
        """As a reader would type it into the calculator: '6 mm'."""
        return f"{self.value:.10g}" if self.unit == "1" else f"{self.value:.10g} {self.unit}"


def bound_value(expression: str, grass: Grass, practice: Practice, renovation: Renovation | None = None) -> Bound:
    """What a `fill` or `binds` expression stands for on one grass.

    expression: '5 mm'; 'grass.topdressing_depth'; 'grass.nitrogen_per_year.high', an end of a range;
    'practice.feed.nitrogen_percent' (the product that practice.feed names) or
    'practice.products.fine-granule.pack_mass_kg'; 'renovation.feed-later' (the plan's own figures); or several
    parted by ' or ', of which the first that is given counts.
    Raises Missing when every part exists but none is given here, BindError for a part that names nothing.
    """
    missing: list[Missing] = []
    for part in expression.split(" or "):
        try:
            return _bound(part.strip(), grass, practice, renovation)
        except Missing as error:
            missing.append(error)
    raise Missing(" and ".join(error.what for error in missing), missing[0].instead)


def _bound(part: str, grass: Grass, practice: Practice, renovation: Renovation | None) -> Bound:
    kind, _, path = part.partition(".")
    if kind not in _KINDS or not path:
        return _literal(part)
    names = path.split(".")
    if kind == "renovation":
        return _of_plan(part, names, renovation)
    if kind == "grass" and names[-1] in ("low", "high"):
        # The ends of a range carry no unit of their own.
        return Bound(_field(part, grass, names), _field(part, grass, names[:-1]).unit, f"from this grass's {_words(names[-2])}")
    if kind == "grass":
        return _as_bound(part, _field(part, grass, names), names[-1], f"this grass's {_words(names[-1])}")
    product = _product(part, practice, names)
    return _as_bound(part, _field(part, product, names[-1:]), names[-1], f"{product.name}, {_words(names[-1])}")


def _literal(part: str) -> Bound:
    found = _LITERAL.fullmatch(part)
    if not found:
        raise BindError(
            f"'{part}' is neither a value nor a field", "write a value with its unit, as '5 mm', or a field, as 'grass.seed_rate'"
        )
    try:
        spelling = unit(found["unit"] or "1").spelling
    except UnitError as error:
        raise BindError(error.what, error.instead) from error
    return Bound(float(found["number"]), spelling, "set by this plan")


def _of_plan(part: str, names: list[str], renovation: Renovation | None) -> Bound:
    figures = renovation.figures if renovation else {}
    name = ".".join(names)
    if name not in figures:
        known = f"the plan's figures are {', '.join(figures)}" if figures else "give the plan `figures`, or write a value"
        raise BindError(f"'{part}' is not among this plan's figures", suggestion(name, figures, known))
    figure = figures[name]
    return Bound(figure.default, figure.unit, "set by this plan")


def _product(part: str, practice: Practice, names: list[str]) -> Record:
    if len(names) == 2 and names[0] == "feed":
        product = practice.feed
    elif len(names) == 3 and names[0] == "products":
        product = names[1]
    else:
        raise BindError(f"'{part}' is no product's field", "write 'practice.feed.nitrogen_percent' or 'practice.products.NAME.pack_mass_kg'")
    if product not in practice.products:
        known = f"the products are {', '.join(practice.products)}"
        raise BindError(f"product '{product}' is not in practice.yml", suggestion(product, practice.products, known))
    return practice.products[product]


def _field(part: str, record: Record, names: list[str]) -> Any:
    value: Any = record
    for name in names:
        if not isinstance(value, Record) or name not in type(value).model_fields:
            known = type(value).model_fields if isinstance(value, Record) else ()
            raise BindError(f"'{part}' names no field", suggestion(name, known, "see the fields of its kind in data/schema"))
        value = getattr(value, name)
        if value is None:
            raise Missing(f"'{part}' is not given", "give it, or add a value to fall back on, as 'grass.seed_rate or 20 g/m2'")
    return value


def _as_bound(part: str, value: Any, field: str, whose: str) -> Bound:
    if isinstance(value, Claim):
        return Bound(value.default, value.unit, f"from {whose}")
    spelling = next((spelling for end, spelling in _UNIT_OF_FIELD.items() if field.endswith(end)), None)
    if spelling is None or not isinstance(value, int | float):
        raise BindError(f"'{part}' is not a quantity", "name a field that holds a figure, such as 'grass.seed_rate'")
    return Bound(float(value), spelling, f"from {whose}")


def _words(field: str) -> str:
    """'full_rate_kg_per_100_m2' -> 'full rate': the field's name without its unit."""
    end = next((end for end in _UNIT_OF_FIELD if field.endswith(end)), "")
    return field.removesuffix(end).replace("_", " ")
