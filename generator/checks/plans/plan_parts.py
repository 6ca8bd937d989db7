"""What a step counts on is there: the figure it settles by, the result it buys, the steps its gaps name."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.book.records.renovation import Renovation
from generator.book.records.step import Quantity, Step
from generator.checks.check import Check
from generator.findings import Finding, suggestion
from generator.units import UnitError, unit


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, plan in book.renovations.items():
        yield from _needs(book, id, plan)
        for position, step in enumerate(plan.steps):
            yield from _gaps(book, id, position, step)
            yield from _settles(book, id, position, step)
            for number, quantity in enumerate(step.quantities):
                yield from _taken(book, id, position, number, quantity)


def _needs(book: PartialBook, id: str, plan: Renovation) -> Iterator[Finding]:
    for task in plan.needs:
        if task in book.tasks and not book.tasks[task].operation:
            yield Finding(book.where("renovations", id, "needs", task, "[key]"), f"no grass has a level for '{task}'",
                          suggestion(task, [each for each, record in book.tasks.items() if record.operation], "take it out"))


def _gaps(book: PartialBook, id: str, position: int, step: Step) -> Iterator[Finding]:
    for earlier, days in step.gaps.items():
        where = book.where("renovations", id, "steps", position, "gaps", earlier)
        if earlier not in step.after:
            known = f"it waits for {', '.join(step.after)}" if step.after else "name it under `after` too"
            yield Finding(where, f"step '{step.id}' does not wait for '{earlier}'", suggestion(earlier, step.after, known))
        elif days < 0:
            yield Finding(where, f"a gap of {days} days", "give days that must pass, 0 or more")


def _settles(book: PartialBook, id: str, position: int, step: Step) -> Iterator[Finding]:
    if step.settles is None:
        return
    where = book.step_where(id, position, "settles")
    task, _, name = step.settles.partition(".")
    figure = book.tasks[task].figures.get(name) if task in book.tasks else None
    if figure is None:
        known = [f"{each}.{figure}" for each, record in book.tasks.items() for figure in record.figures]
        if ("tasks", task) not in book.broken:
            yield Finding(where, f"no task has the figure '{step.settles}'", suggestion(step.settles, known, "write task.figure, such as 'spray-out.weeks-to-die'"))
    elif _dimension(figure.unit) not in (None, unit("day").dimension):
        yield Finding(where, f"'{step.settles}' is in {figure.unit}, and a step settles for a time", "name a figure in days or weeks")


def _taken(book: PartialBook, id: str, position: int, number: int, quantity: Quantity) -> Iterator[Finding]:
    calculator = book.calculators.get(quantity.calculator)
    if calculator is None:
        return
    wanted: list[tuple[tuple[str, ...], str, tuple[str, ...], str]] = []
    wanted += [(("buy", "result"), quantity.buy.result, ("kg", "m3", "m2"), "a mass, a volume or an area")] if quantity.buy else []
    wanted += [(("spoil",), quantity.spoil, ("m3",), "a volume")] if quantity.spoil else []
    for path, name, units, kind in wanted:
        where = book.step_where(id, position, "quantities", number, *path)
        result = calculator.results.get(name)
        if result is None:
            yield Finding(where, f"calculator '{quantity.calculator}' has no result '{name}'",
                          suggestion(name, calculator.results, f"its results are: {', '.join(calculator.results)}"))
        elif _dimension(result.unit) not in (None, *(unit(each).dimension for each in units)):
            yield Finding(where, f"'{name}' is in {result.unit}, and this takes {kind}", f"name a result that is {kind}")


def _dimension(spelling: str) -> object:
    try:
        return unit(spelling).dimension
    except UnitError:
        return None  # Told at the unit itself.


CHECK = Check("plan-parts", "What a plan's steps count on is there.", ("renovations", "steps"), _check)
