"""Our own book with one number of it mistyped: what a check would say of that file, without reading the whole book again."""

from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from typing import Any, NamedTuple

from generator.book.book import PartialBook
from generator.book.fields.numbers import BESIDE_UNIT
from generator.book.fields.walk import parts as walked
from generator.book.loading.folders import SINGLES, TABLES
from generator.book.loading.load import checked
from generator.book.loading.marked_yaml import Node
from generator.book.records import KINDS
from generator.book.records.step import Quantity
from generator.book.shared_figures import with_figures
from generator.checks import CHECKS, WARNINGS
from generator.findings import Where
from tests.our_book import book

THIS_YEAR = 2026
# Numbers that stand beside each other and may be told of at either: a range upside down is, and so is a country's box.
FIGURE = {*BESIDE_UNIT, "us_default", "south", "north", "west", "east"}
OTHER_SINGLES = ("inspection", "record", "key", "glossary", "services", "retired")
# Others read texts, pages or the whole book, or take long, and none of them looks at the size of a number.
NUMBERS = frozenset({
    "figure-units", "climates", "step-order", "aftercare-days", "place-on-earth", "months-of-a-place", "grass-figures", "practice-figures",
    "rules-in-order", "text-years", "filled-sizes", "unusual",
})  # fmt: skip


class Number(NamedTuple):
    """A number of our data: its record, its way there, its place and itself. beside: the places of the other numbers of its figure or row."""

    kind: str
    id: str
    path: tuple[str | int, ...]
    where: Where
    value: float
    beside: frozenset[Where]

    @property
    def name(self) -> str:
        return f"{self.kind}.{self.id}." + ".".join(map(str, self.path))


@cache
def our_partial_book() -> PartialBook:
    return replace(book(), this_year=THIS_YEAR)


def numbers() -> list[Number]:
    """Every number that an author wrote in our data, in the order of the files."""
    return [Number(kind, id, *found) for (kind, id), tree in our_partial_book().trees.items() for found in _of(tree, ())]


def _of(node: Node, path: tuple[str | int, ...]) -> Iterator[tuple[tuple[str | int, ...], Where, float, frozenset[Where]]]:
    ours = {key: child for key, child in node.children.items() if isinstance(child.value, int | float) and not isinstance(child.value, bool)}
    figure = frozenset(child.where for key, child in ours.items() if key in FIGURE)
    for key, child in node.children.items():
        if child.kind != "scalar":
            yield from _of(child, (*path, key))
        elif key in ours:
            yield (*path, key), child.where, child.value, figure if key in FIGURE else frozenset({child.where, *([node.where] if node.kind == "list" else [])})


def places_told(number: Number, instead: float) -> set[Where]:
    """Where something is told, a mistake or a warning, once another number stands there."""
    tree = node = our_partial_book().trees[number.kind, number.id]
    for key in number.path:
        node = node.children[key]
    hint = TABLES[f"{number.kind}.yml"] if number.kind in ("sources", "countries") else SINGLES.get(f"{number.kind}.yml") or KINDS[number.kind]
    top = Node(tree.where, "map", children={number.id: tree}, keys={number.id: tree.where}) if number.kind in ("sources", "countries") else tree
    node.value = instead
    try:
        record, findings = checked(top, hint)
    finally:
        node.value = number.value
    if record is None:
        return {finding.where for finding in findings}
    alone = _alone(number, record)
    asked = {*NUMBERS, "examples"} if number.kind == "calculators" else NUMBERS
    return {finding.where for check in (*CHECKS, *WARNINGS) if check.name in asked for finding in check.check(alone)}


def _alone(number: Number, record: Any) -> PartialBook:
    """That record, and of our book what a check holds it against: practice and seasons, the calculators and shared steps that it names."""
    whole, kind = our_partial_book(), number.kind
    parts: dict[str, Any] = {each: {} for each in (*KINDS, "sources")} | dict.fromkeys(OTHER_SINGLES)
    if kind in ("sources", "countries"):
        return replace(whole, **{**parts, kind: record})
    if kind not in KINDS:
        return replace(whole, **{**parts, kind.replace("-", "_"): record})
    if kind in ("calculators", "holds"):
        record, _ = with_figures(record, whole.tasks, whole.season_groups.rules.by_name if whole.season_groups else {})
    if kind == "renovations":
        record = record.model_copy(update={"steps": tuple(step.with_shared(whole.steps) for step in record.steps)})
        parts["steps"] = {step.use: whole.steps[step.use] for step in record.steps if step.use}
    named = {part.calculator for _, part in walked(record) if isinstance(part, Quantity)} | set(getattr(record, "calculators", ()))
    return replace(whole, **{**parts, "calculators": {id: whole.calculators[id] for id in named}, kind: {number.id: record}})
