"""What is wrong with a book, as data: where, what, and what would be right.

Every check returns findings; only here do they become text. One line each:
`path:line:column: what is wrong; what would be right`.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches


@dataclass(frozen=True, order=True)
class Where:
    """A place in an author's file. Lines and columns count from 1, as editors do."""

    path: str
    line: int = 1
    column: int = 1

    def __str__(self) -> str:
        return f"{self.path}:{self.line}:{self.column}"

    def moved(self, columns: int) -> "Where":
        """The place `columns` characters further along the same line."""
        return Where(self.path, self.line, self.column + columns)


@dataclass(frozen=True, order=True)
class Finding:
    """One problem, told to the author of the data."""

    where: Where
    what: str
    instead: str

    def __str__(self) -> str:
        return f"{self.where}: {self.what}; {self.instead}"


def suggestion(word: str, known: Iterable[str], otherwise: str) -> str:
    """The nearest known name as a question, or `otherwise` when none is near."""
    near = get_close_matches(word, list(known), n=1, cutoff=0.6)
    return f"did you mean '{near[0]}'?" if near else otherwise
