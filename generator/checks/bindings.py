"""What a plan or a calculator fills in exists, and fits the input it goes into."""

from collections.abc import Iterable, Iterator

from generator.checks.check import Check
from generator.findings import Finding, Where, suggestion
from generator.model.book import Book
from generator.model.calculator import Calculator, Input
from generator.model.grass import Grass
from generator.model.renovation import Renovation, Step
from generator.turf.bindings import BindError, Context, Missing, Unchosen, bound_value, parts_of
from generator.turf.plan import steps_for
from generator.units import UnitError, unit


def _check(book: Book) -> Iterator[Finding]:
    for id, plan in book.renovations.items():
        for position, step in enumerate(plan.steps):
            takers = _takers(book, id, plan, step)
            for number, quantity in enumerate(step.quantities):
                calculator = book.calculators.get(quantity.calculator)
                place = ("renovations", id, "steps", position, "quantities", number, "fill")
                for name, expression in quantity.fill.items() if calculator else ():
                    yield from _filled(book, place, name, expression, quantity.calculator, calculator, plan, takers)
    for id, calculator in book.calculators.items():
        for name, wanted in calculator.inputs.items():
            if wanted.binds is not None:
                where = book.where("calculators", id, "inputs", name, "binds")
                if wanted.label_only:
                    yield Finding(where, f"'{name}' is for the label to give", "take it out; the reader types it in")
                else:
                    yield from list(_own_default(where, wanted.binds)) or _bound(book, where, wanted.binds, name, wanted, None, ())


def _takers(book: Book, id: str, plan: Renovation, step: Step) -> list[Grass]:
    """The grasses that follow a plan and keep this step of it."""
    followers = [grass for grass in book.grasses.values() if grass.renovation == id]
    return [grass for grass in followers if any(kept.step is step for kept in steps_for(plan, grass).kept)]


def _filled(book: Book, place: tuple, name: str, expression: str, id: str, calculator: Calculator,
            plan: Renovation, takers: list[Grass]) -> Iterator[Finding]:  # fmt: skip
    wanted = calculator.inputs.get(name)
    if wanted is None:
        known = f"its inputs are: {', '.join(calculator.inputs)}"
        yield Finding(book.where(*place, name, "[key]"), f"calculator '{id}' has no input '{name}'",
                      suggestion(name, calculator.inputs, known))
    elif wanted.label_only:
        yield Finding(book.where(*place, name), f"'{name}' is for the label to give", "take it out; the reader types it in")
    else:
        yield from _bound(book, book.where(*place, name), expression, name, wanted, plan, takers)


def _bound(book: Book, where: Where, expression: str, name: str, wanted: Input, plan: Renovation | None,
           takers: Iterable[Grass]) -> Iterator[Finding]:  # fmt: skip
    """At most one finding: a part that names nothing, another kind of quantity, or a taker that cannot fill it in.

    Without takers any grass may stand for the rest, and what one leaves out another may give. What waits for a choice (a
    place, a date, a product) is held to its unit only.
    """
    if book.practice is None:
        return
    contexts = [
        Context(grass, book.practice, plan, book.season_groups) for grass in takers or book.grasses.values()
    ] or [Context(None, book.practice, plan, book.season_groups)]
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
    missing = {context.grass.name: error for context in contexts if takers and (error := _missing(expression, context))}
    if missing:
        first = next(iter(missing.values()))
        yield Finding(where, f"{first.what} for {', '.join(missing)}", first.instead)


def _unit(part: str, context: Context) -> str | None:
    """The unit of what a part gives, or would give; None where nothing tells."""
    try:
        return bound_value(part, context).unit
    except Missing as error:
        return error.unit


def _missing(expression: str, context: Context) -> Missing | None:
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
            bound_value(part, Context())
        except BindError:
            continue
        yield Finding(where, f"'{part}' is a value, not a field", "take it out; the input's default stands where nothing else is given")
        return


CHECK = Check("bindings", "What fills in a calculator's input exists and fits it.", ("renovations", "calculators"), _check)
