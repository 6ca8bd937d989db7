"""What a plan or a calculator fills in exists, and fits the input it goes into."""

from collections.abc import Iterator

from generator.checks.check import Check
from generator.findings import Finding, Where, suggestion
from generator.model.book import Book
from generator.model.calculator import Calculator, Input
from generator.model.place import Place
from generator.model.renovation import Renovation
from generator.turf.plan import BindError, Missing, bound_value
from generator.units import UnitError, unit


def _check(book: Book) -> Iterator[Finding]:
    for id, plan in book.renovations.items():
        for position, step in enumerate(plan.steps):
            for number, quantity in enumerate(step.quantities):
                calculator = book.calculators.get(quantity.calculator)
                place = ("renovations", id, "steps", position, "quantities", number, "fill")
                for name, expression in quantity.fill.items() if calculator else ():
                    yield from _filled(book, place, name, expression, quantity.calculator, calculator, plan)
    for id, calculator in book.calculators.items():
        for name, wanted in calculator.inputs.items():
            if wanted.binds is not None:
                yield from _bound(book, book.where("calculators", id, "inputs", name, "binds"), wanted.binds, name, wanted)


def _filled(book: Book, place: tuple, name: str, expression: str, id: str, calculator: Calculator,
            plan: Renovation) -> Iterator[Finding]:  # fmt: skip
    wanted = calculator.inputs.get(name)
    if wanted is None:
        known = f"its inputs are: {', '.join(calculator.inputs)}"
        yield Finding(book.where(*place, name, "[key]"), f"calculator '{id}' has no input '{name}'",
                      suggestion(name, calculator.inputs, known))
    elif wanted.label_only:
        yield Finding(book.where(*place, name), f"'{name}' is for the label to give", "take it out; the reader types it in")
    else:
        yield from _bound(book, book.where(*place, name), expression, name, wanted, plan)


def _bound(book: Book, where: Where, expression: str, name: str, wanted: Input,
           plan: Renovation | None = None) -> Iterator[Finding]:  # fmt: skip
    """One finding when no grass can fill it in, or when what fills it in is another kind of quantity."""
    if expression.startswith("place."):
        yield from _of_place(where, expression)
        return
    if book.practice is None or not book.grasses:
        return
    missing: Missing | None = None
    for grass in book.grasses.values():
        try:
            bound = bound_value(expression, grass, book.practice, plan)
            given, right = unit(bound.unit), unit(wanted.unit)
        except Missing as error:
            missing = error
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
    if missing is not None and plan is not None:
        yield Finding(where, f"{missing.what} by any grass", missing.instead)


def _of_place(where: Where, expression: str) -> Iterator[Finding]:
    field = expression.removeprefix("place.")
    known = [name.removesuffix("_deg").removesuffix("_m") for name in Place.model_fields]
    if field not in known:
        yield Finding(where, f"'{expression}' names no field of a place", suggestion(field, known, "write 'place.latitude'"))


CHECK = Check("bindings", "What fills in a calculator's input exists and fits it.", ("renovations", "calculators"), _check)
