"""An answer or a calculator stands under a heading that its list has."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.checks.check import Check
from generator.findings import Finding, shown, suggestion


def _check(book: PartialBook) -> Iterator[Finding]:
    for kind in ("answers", "calculators"):
        listed = getattr(book.topics, kind) if book.topics is not None else ()
        for id, record in book.of(kind).items() if listed else ():
            if record.topic not in listed:
                otherwise = f"the topics are: {', '.join(listed)}; a new one is added to data/topics.yml"
                yield Finding(book.where(kind, id, "topic"), f"'{shown(record.topic)}' is no topic of {kind}", suggestion(record.topic, listed, otherwise))


CHECK = Check("known-topics", "Answers and calculators stand under a heading of topics.yml.", ("answers", "calculators", "topics"), _check)
