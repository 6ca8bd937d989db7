"""What a source that nobody has read for the book is said to say, is marked as recalled."""

from collections.abc import Iterator

from generator.checks.check import Check
from generator.findings import Finding
from generator.model.book import Book
from generator.model.record import Sourced
from generator.model.walk import parts


def _check(book: Book) -> Iterator[Finding]:
    for kind, id, record in book.records():
        for path, part in parts(record):
            if isinstance(part, Sourced) and not part.from_memory:
                yield from _unread(book, kind, id, path, part)


def _unread(book: Book, kind: str, id: str, path: tuple, part: Sourced) -> Iterator[Finding]:
    for position, source in enumerate(part.sources):
        if source in book.sources and not book.sources[source].read:
            one_of = () if isinstance(part.source, str) else (position,)
            yield Finding(
                book.where(kind, id, *path, "source", *one_of),
                f"source '{source}' has not been read for this book",
                "read it and set 'read: true' in data/sources.yml, or add 'from_memory: true' here",
            )


CHECK = Check(
    "sources", "What is cited from a source that was not read is marked from_memory.",
    ("grasses", "tasks", "cautions", "calculators", "holds", "renovations", "aftercare", "problems", "experts", "season-groups"), _check,
)  # fmt: skip
