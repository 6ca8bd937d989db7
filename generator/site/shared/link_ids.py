"""What a client's link may name by its id: what is in the book, and what was in it once."""

from typing import Any

from generator.book.book import Book
from generator.book.records.retired import RetiredId


def present_name(book: Book, kind: str, gone: RetiredId) -> str:
    """What a retired thing is called now: the name of what took its place, its own where nothing did."""
    if gone.instead is None:
        return gone.name
    if kind == "steps":
        return step_titles(book)[gone.instead]
    if kind == "answers":
        return book.answers[gone.instead].question
    return str(book.of(kind)[gone.instead].name)


def step_titles(book: Book) -> dict[str, str]:
    """Title by id, of every step that a plan has or that plans may share."""
    return {id: step.title or "" for id, step in book.steps.items()} | {step.id: step.title or "" for plan in book.renovations.values() for step in plan.steps}


def known_ids(book: Book, kind: str, names: dict[str, str]) -> list[dict[str, Any]]:
    """What a link may name of a kind: id, name (as it is called now), gone (what to say of one that has left the book, else None).

    names: by id, of those that are there.
    """
    return [*({"id": id, "name": name, "gone": None} for id, name in sorted(names.items())), *retired_ids(book, kind)]


def retired_ids(book: Book, kind: str) -> list[dict[str, Any]]:
    """Those of a kind that have left the book: id, name (as it is called now), gone (what to say of it), instead (its id now, or None)."""
    return [
        {"id": id, "name": present_name(book, kind, gone), "gone": _told(book, kind, gone), "instead": gone.instead}
        for id, gone in book.retired_of(kind).items()
    ]


def _told(book: Book, kind: str, gone: RetiredId) -> str:
    now = f"In its place: {present_name(book, kind, gone)}." if gone.instead else "Nothing has taken its place."
    return f"“{gone.name}”, which this link names, is no longer in this book. {now} {gone.why}"
