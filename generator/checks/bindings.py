"""What a plan or a calculator fills in exists, and fits the input it goes into."""

from collections.abc import Iterable, Iterator

from generator.checks.check import Check
from generator.findings import Finding, Where, suggestion
from generator.model.book import Book
from generator.model.calculator import Calculator, Input
from generator.model.grass import Grass
from generator.model.place import Place
from generator.model.renovation import Renovation, Step
from generator.turf.plan import BindError, Missing, bound_value, steps_for
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
                yield from _bound(book, where, wanted.binds, name, wanted, None, ())


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

    Without takers any grass may stand for the rest, and what one leaves out another may give.
    """
    if expression.startswith("place."):
        yield from _of_place(where, expression)
        return
    missing: dict[str, Missing] = {}
    for grass in takers or book.grasses.values():
        if book.practice is None:
            return
        try:
            bound = bound_value(expression, grass, book.practice, plan)
            given, right = unit(bound.unit), unit(wanted.unit)
        except Missing as error:
            missing[grass.name] = error
            continue
        except BindError as error:
            yield Finding(where, error.what, error.instead)
            return
        except UnitError:
            return  # Told at the unit itself.
        if given.dimension != right.dimension:
            yield Finding(where, f"'{expression}' is {given.kind} ({bound.unit}), and '{name}' asks for {right.kind}",
                          f"fill in {right.kind} such as {wanted.unit}")
            return
    if takers and missing:
        first = next(iter(missing.values()))
        yield Finding(where, f"{first.what} for {', '.join(missing)}", first.instead)


def _of_place(where: Where, expression: str) -> Iterator[Finding]:
    field = expression.removeprefix("place.")
    known = [name.removesuffix("_deg").removesuffix("_m") for name in Place.model_fields]
    if field not in known:
        yield Finding(where, f"'{expression}' names no field of a place", suggestion(field, known, "write 'place.latitude'"))


CHECK = Check("bindings", "What fills in a calculator's input exists and fits it.", ("renovations", "calculators"), _check)
