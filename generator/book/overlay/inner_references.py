"""Ids that a record names without a kind of their own: the causes of its problem, a step of some plan, what took a retired id's place."""

import re
from collections.abc import Iterable, Iterator, Mapping
from typing import Any, NamedTuple

from generator.book.loading.marked_yaml import Node, ValuePath

_OF_PRACTICE = re.compile(r"practice\.(products|machines)\.([a-z0-9-]+)\.")
QUANTITIES = "quantities"


class Inner(NamedTuple):
    """of: what it is an id of. path: what goes where there is no such thing. narrows: an empty list would say something else than none."""

    of: str
    id: str
    path: ValuePath
    narrows: bool = True


def inner_references(kind: str, record: Any, tree: Node) -> Iterator[Inner]:
    """Every such id of a record. A cause is `cause`, a step `step`; anything else is a kind of record."""
    if kind == "problems":
        for at, question in enumerate(record.questions):
            for number, answer in enumerate(question.answers):
                for position, cause in enumerate(answer.causes):
                    yield Inner("cause", cause, ("questions", at, "answers", number, "causes", position))
    elif kind == "inspection":
        for at, question in enumerate(record.questions):
            for number, outcome in enumerate(question.outcomes):
                for position, step in enumerate(outcome.steps):
                    yield Inner("step", step, ("questions", at, "outcomes", number, "steps", position))
    elif kind == "retired":
        for of in type(record).model_fields:
            for id, retired in getattr(record, of).items():
                if retired.instead:
                    yield Inner(of, retired.instead, (of, id), False)
    elif kind in ("renovations", "steps"):
        yield from _of_practice(tree, ())


def _of_practice(tree: Node, path: ValuePath) -> Iterator[Inner]:
    """A quantity that is filled in from a product or a machine by name."""
    if isinstance(tree.value, str):
        for of, id in _OF_PRACTICE.findall(tree.value):
            whole = path[: path.index(QUANTITIES) + 2] if QUANTITIES in path else path
            yield Inner(of, id, whole, False)
    for key, child in tree.children.items():
        yield from _of_practice(child, (*path, key))


def steps_where_needed(plans: Iterable[Any], shared: Mapping[str, Any]) -> set[str]:
    """Ids of the steps that these plans do only where a lawn needs them."""
    return {step.id for plan in plans for step in (each.with_shared(shared) for each in plan.steps) if step.only_where}
