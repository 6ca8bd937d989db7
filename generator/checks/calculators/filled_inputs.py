"""What a plan or a calculator fills in exists, and fits the input it goes into."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from functools import partial

from generator.book.book import PartialBook
from generator.book.records.calculator import Input
from generator.book.records.grass import Grass
from generator.book.records.renovation import Renovation
from generator.book.records.step import Step
from generator.calculators.bindings import bound_value, parts_of
from generator.calculators.chosen import Chosen
from generator.calculators.filled_value import BindError, Missing, Unchosen
from generator.checks.check import Check
from generator.findings import Finding, Where, suggestion
from generator.jobs.plan_steps import steps_for
from generator.units import UnitError, unit


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, plan in book.renovations.items():
        for position, step in enumerate(plan.steps):
            takers = _takers(book, id, plan, step)
            for number, quantity in enumerate(step.quantities):
                calculator = book.calculators.get(quantity.calculator)
                where = partial(book.step_where, id, position, "quantities", number, "fill")
                for name, expression in quantity.fill.items() if calculator else ():
                    yield from _filled(book, where, name, expression, quantity.calculator, Chosen(renovation=plan), takers)
    for id, sheet in book.aftercare.items():
        for position, days in enumerate(sheet.days):
            for number, quantity in enumerate(days.quantities):
                where = partial(book.where, "aftercare", id, "days", position, "quantities", number, "fill")
                for name, expression in quantity.fill.items() if quantity.calculator in book.calculators else ():
                    yield from _filled(book, where, name, expression, quantity.calculator, Chosen(), ())
    for id, task in book.tasks.items():
        if task.fill and not task.calculators:
            yield Finding(
                book.where("tasks", id, "fill", "[key]"), "this task has no calculator to fill in",
                "name one under 'calculators', or take 'fill' out",
            )
        for name, expression in task.fill.items() if task.calculators and task.calculators[0] in book.calculators else ():
            yield from _filled(book, partial(book.where, "tasks", id, "fill"), name, expression, task.calculators[0], Chosen(task=task), ())
        # A visit is of no plan: what fills its step in comes from the grass, the practice or the task itself.
        by = book.steps.get(task.on_a_visit) if task.on_a_visit else None
        for number, quantity in enumerate(by.quantities if by else ()):
            where = partial(book.where, "steps", task.on_a_visit or "", "quantities", number, "fill")
            for name, expression in quantity.fill.items() if quantity.calculator in book.calculators else ():
                yield from _filled(book, where, name, expression, quantity.calculator, Chosen(task=task), ())
    for id, calculator in book.calculators.items():
        for name, wanted in calculator.inputs.items():
            if wanted.binds is not None:
                binds = book.where("calculators", id, "inputs", name, "binds")
                if wanted.label_only:
                    yield Finding(binds, f"'{name}' is for the label to give", "take it out; the reader types it in")
                else:
                    yield from list(_own_default(binds, wanted.binds)) or _bound(book, binds, wanted.binds, name, wanted, Chosen(), ())


def _takers(book: PartialBook, id: str, plan: Renovation, step: Step) -> list[Grass]:
    """The grasses that follow a plan and keep this step of it."""
    followers = [grass for grass in book.grasses.values() if grass.renovation == id]
    return [grass for grass in followers if any(kept.step is step for kept in steps_for(plan, grass).kept)]


def _filled(book: PartialBook, where: Callable[..., Where], name: str, expression: str, id: str, around: Chosen,
            takers: Iterable[Grass]) -> Iterator[Finding]:  # fmt: skip
    inputs = book.calculators[id].inputs
    wanted = inputs.get(name)
    if wanted is None:
        known = f"its inputs are: {', '.join(inputs)}"
        yield Finding(where(name, "[key]"), f"calculator '{id}' has no input '{name}'",
                      suggestion(name, inputs, known))
    elif wanted.label_only:
        yield Finding(where(name), f"'{name}' is for the label to give", "take it out; the reader types it in")
    else:
        yield from _bound(book, where(name), expression, name, wanted, around, takers)


def _bound(book: PartialBook, where: Where, expression: str, name: str, wanted: Input, around: Chosen,
           takers: Iterable[Grass]) -> Iterator[Finding]:  # fmt: skip
    """At most one finding: a part that names nothing, another kind of quantity, or a taker that cannot fill it in.

    Without takers any grass may stand for the rest, and what one leaves out another may give. What waits for a choice (a
    place, a date, a product) is held to its unit only.
    """
    if book.practice is None:
        return
    around = replace(around, practice=book.practice, groups=book.season_groups, steps=book.steps, sheet=book.inspection)
    contexts = [replace(around, grass=grass) for grass in takers or book.grasses.values()] or [around]
    try:
        for part in parts_of(expression):
            for spelling in {_unit(part, context) for context in contexts} - {None}:
                given, right = unit(spelling), unit(wanted.unit)
                if given.dimension != right.dimension:
                    yield Finding(where, f"'{part}' is {given.kind} ({spelling}), and '{name}' asks for {right.kind}",
                                  f"fill in {right.kind} such as {wanted.unit}")
                    return
    except BindError as error:
        yield Finding(where, error.what, error.instead)
        return
    except UnitError:
        return  # Told at the unit itself.
    missing = {context.grass.name: fault for context in contexts if takers and context.grass and (fault := _missing(expression, context))}
    if missing:
        first = next(iter(missing.values()))
        yield Finding(where, f"{first.what} for {', '.join(missing)}", first.instead)


def _unit(part: str, context: Chosen) -> str | None:
    """The unit of what a part gives, or would give; None where nothing tells."""
    try:
        return bound_value(part, context).unit
    except Missing as error:
        return error.unit


def _missing(expression: str, context: Chosen) -> Missing | None:
    """Why a grass cannot fill it in; None where it can, or where a choice that is made later may."""
    try:
        bound_value(expression, context)
    except Unchosen:
        return None
    except Missing as error:
        return error
    return None


def _own_default(where: Where, expression: str) -> Iterator[Finding]:
    """A calculator's `binds` names fields only: its value to fall back on is the input's default."""
    for part in parts_of(expression):
        try:
            bound_value(part, Chosen())
        except BindError:
            continue
        yield Finding(where, f"'{part}' is a value, not a field", "take it out; the input's default is used if nothing else is given")
        return


CHECK = Check("filled-inputs", "What fills in a calculator's input exists and fits it.", ("renovations", "aftercare", "tasks", "calculators"), _check)
