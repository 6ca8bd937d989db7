"""What a check is: one rule that must hold of a whole book."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from generator.book.book import PartialBook
from generator.findings import Finding


@dataclass(frozen=True)
class Check:
    """name: kebab-case. description: the rule as a sentence. scope: the kinds of record it reads.

    check: book to findings. The book may be incomplete (a broken file is missing from it), and
    whatever refers to something missing has its finding already: stay silent there.
    """

    name: str
    description: str
    scope: tuple[str, ...]
    check: Callable[[PartialBook], Iterable[Finding]]
