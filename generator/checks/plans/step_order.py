"""A renovation plan's steps come in an order that can be worked."""

from collections.abc import Iterator
from itertools import combinations

from generator.book.book import PartialBook
from generator.book.records.renovation import Renovation
from generator.book.records.step import Step
from generator.checks.check import Check
from generator.findings import Finding, suggestion

# On one day the trade keeps this order (common practice); feed may go before or after sand, so it is not here.
DAY_ORDER = ("cut-down", "scarify", "core", "overseed", "topdress", "level", "wetting-agent", "water")


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, plan in book.renovations.items():
        yield from _ids(book, id, plan)
        yield from _afters(book, id, plan)
        yield from _day_order(book, id, plan)
        yield from _last_days(book, id, plan)
    yield from _groups(book)


def _ids(book: PartialBook, id: str, plan: Renovation) -> Iterator[Finding]:
    seen: dict[str, int] = {}
    for position, step in enumerate(plan.steps):
        where = book.where("renovations", id, "steps", position, "id")
        if step.id in seen:
            first = book.where("renovations", id, "steps", seen[step.id], "id").line
            yield Finding(where, f"step '{step.id}' is here twice, first in line {first}", "give this one another id")
        seen.setdefault(step.id, position)


def _afters(book: PartialBook, id: str, plan: Renovation) -> Iterator[Finding]:
    by_id = {step.id: (step.day, position) for position, step in reversed(list(enumerate(plan.steps)))}
    for position, step in enumerate(plan.steps):
        for number, earlier in enumerate(step.after):
            where = book.where("renovations", id, "steps", position, "after", number)
            if earlier == step.id:
                yield Finding(where, f"step '{step.id}' waits for itself", "take it out")
            elif earlier not in by_id:
                otherwise = f"the steps are: {', '.join(by_id)}"
                yield Finding(where, f"step '{earlier}' is not in this plan", suggestion(earlier, by_id, otherwise))
            elif by_id[earlier] > (step.day, position):
                yield Finding(where, f"step '{step.id}' on day {step.day} waits for '{earlier}', which comes later",
                              f"move '{earlier}' above it, to day {step.day} or before, or take it out here")


def _day_order(book: PartialBook, id: str, plan: Renovation) -> Iterator[Finding]:
    named = [(position, step) for position, step in enumerate(plan.steps) if step.task in DAY_ORDER]
    for (_, above), (position, below) in combinations(named, 2):
        if above.day == below.day == 0 and _rank(above) > _rank(below) and not _comes_before(plan, below, above):
            yield Finding(book.where("renovations", id, "steps", position, "task"),
                          f"'{below.task}' comes after '{above.task}' on the day",
                          f"move step '{below.id}' above step '{above.id}'")


def _comes_before(plan: Renovation, below: Step, above: Step) -> bool:
    """True when the same task was already done above: a second cut, a second watering."""
    return any(step.task == below.task for step in plan.steps[: plan.steps.index(above)] if step.day == 0)


def _rank(step: Step) -> int:
    return DAY_ORDER.index(step.task)


def _last_days(book: PartialBook, id: str, plan: Renovation) -> Iterator[Finding]:
    for position, step in enumerate(plan.steps):
        if step.until_day is not None and step.until_day < step.day:
            yield Finding(book.where("renovations", id, "steps", position, "until_day"),
                          f"until_day {step.until_day} is before day {step.day}", "give the last day of the step")


def _groups(book: PartialBook) -> Iterator[Finding]:
    for id, grass in book.grasses.items():
        plan = book.renovations.get(grass.renovation)
        if plan and plan.season_group and plan.season_group != grass.season_group:
            fitting = [p for p, r in book.renovations.items() if r.season_group in (None, grass.season_group)]
            instead = f"the plans for it are: {', '.join(fitting)}" if fitting else "write a plan for its season group"
            yield Finding(book.where("grasses", id, "renovation"),
                          f"plan '{grass.renovation}' is for {plan.season_group}-season grass, and {grass.name} is not",
                          instead)


CHECK = Check("step-order", "Steps of a plan can be worked in their order.", ("renovations", "grasses"), _check)
