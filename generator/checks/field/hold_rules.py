"""Each hold rule is a condition over what the reader is asked and the hold's own numbers, and its units agree."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.checks.check import Check
from generator.field.holds import faults
from generator.findings import Finding


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, hold in book.holds.items():
        twice = [name for name in hold.figures if book.written("holds", id, "constants", name)]
        for name in twice:
            yield Finding(book.where("holds", id, "constants", name, "[key]"), f"'{name}' is under both figures and constants",
                          "keep one of them")
        if hold.figures.keys() <= hold.constants.keys():  # A figure that is nowhere has its finding.
            for fault in faults(hold):
                yield Finding(book.character(fault.offset, "holds", id, *fault.path), fault.what, fault.instead)


CHECK = Check("hold-rules", "Each hold rule can be read, asks for what the reader can say, and its units agree.", ("holds",), _check)
