"""No grass is given harder treatment than where and when it grows lets it survive."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.book.records.grass import Grass
from generator.checks.check import Check
from generator.findings import Finding, suggestion

LEVELS = ("none", "light", "moderate", "hard")

# Common practice, as the trade states it: what runs above ground only has nothing left below to come
# back from; a cool-season grass is cut lower, never to soil, and scarified lightly if at all.
_LIMITS = {
    "above ground": ({"cut-down": "light", "scarify": "light"}, "it runs above ground only"),
    "bunch": ({"cut-down": "moderate", "scarify": "light"}, "it grows in bunches and does not run"),
    "cool": ({"cut-down": "moderate", "scarify": "light"}, "it is a cool-season grass"),
}


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, grass in book.grasses.items():
        yield from _too_hard(book, id, grass)
        yield from _not_operations(book, id, grass)


def _too_hard(book: PartialBook, id: str, grass: Grass) -> Iterator[Finding]:
    for task, operation in grass.operations.items():
        for trait in (grass.habit, grass.season_group):
            limits, reason = _LIMITS.get(trait, ({}, ""))
            most = limits.get(task, "hard")
            if LEVELS.index(operation.level) > LEVELS.index(most):
                what = f"'{task}' is {operation.level} for {grass.name}, but {reason}"
                instead = f"write '{most}' at most, or correct its habit and season group"
                yield Finding(book.where("grasses", id, "operations", task, "level"), what, instead)
                break


def _not_operations(book: PartialBook, id: str, grass: Grass) -> Iterator[Finding]:
    known = [task for task, record in book.tasks.items() if record.operation]
    for task in grass.operations:
        if task in book.tasks and task not in known:
            otherwise = f"take it out, or set 'operation: true' in data/tasks/{task}.yml"
            yield Finding(book.where("grasses", id, "operations", task, "[key]"),
                          f"task '{task}' is not an operation that grasses differ in", suggestion(task, known, otherwise))


CHECK = Check("operations", "No grass is cut down or scarified harder than its habit and season group let it survive.",
    ("grasses", "tasks"), _check,
)  # fmt: skip
