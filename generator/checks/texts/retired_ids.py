"""A retired id is never used again, and what took its place is there."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.book.records import KINDS
from generator.book.references import KEY
from generator.checks.check import Check
from generator.findings import Finding, suggestion

FILE = "retired"


def _check(book: PartialBook) -> Iterator[Finding]:
    for kind in KINDS:
        used = _used(book, kind)
        for id, gone in book.retired_of(kind).items():
            if id in used:
                yield Finding(book.where(FILE, FILE, kind, id, KEY), f"the retired id '{id}' is in use in {used[id]}",
                              "old links still mean the one that has gone: choose another id there, or take it out here")
            if gone.instead is not None and gone.instead not in used and not _may_be_broken(book, kind):
                yield _not_there(book, kind, id, gone.instead)


def _used(book: PartialBook, kind: str) -> dict[str, str]:
    """Each id of a kind that is in use, broken ones too, and where. A plan's own steps count as steps: links name both alike."""
    ids = [*book.of(kind), *(id for of, id in book.broken if of == kind)]
    used = {id: f"data/{kind}/{id}.yml" for id in ids}
    if kind == "steps":
        used |= {step.id: f"data/renovations/{plan}.yml" for plan, record in book.renovations.items() for step in record.steps if step.id not in used}
    return used


def _may_be_broken(book: PartialBook, kind: str) -> bool:
    """Whether a plan that cannot be read may hold the step."""
    return kind == "steps" and any(of == "renovations" for of, _ in book.broken)


def _not_there(book: PartialBook, kind: str, id: str, instead: str) -> Finding:
    where = book.where(FILE, FILE, kind, id, "instead")
    also_gone = book.retired_of(kind).get(instead)
    if also_gone is None:
        return Finding(where, f"what took the place of '{id}' is not in data/{kind}: '{instead}'",
                       suggestion(instead, _used(book, kind), "name one that is, or leave `instead` out"))
    right = f"write '{also_gone.instead}'" if also_gone.instead in _used(book, kind) else "leave `instead` out"
    return Finding(where, f"what took the place of '{id}' is retired too: '{instead}'", right)


CHECK = Check("retired-ids", "A retired id is in use nowhere, and what took its place is there.", ("retired", *KINDS), _check)
