"""What is wrong with a book, as data: where, what, and what would be right.

Every check returns findings; only here do they become text. One line each:
`path:line:column: what is wrong; what would be right`. Twin: nearest.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from difflib import get_close_matches

LONGEST_SHOWN = 60
_LONG_WORD = re.compile(rf"\S{{{2 * LONGEST_SHOWN},}}")


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
        # Whoever lists what there is, lists also what somebody mistyped: a word as long as a page is cut here, for all of them.
        return one_line(f"{self.where}: {short_words(f'{self.what}; {self.instead}')}")


def one_line(text: object) -> str:
    """A path or a text as it stands in one line of a message: line breaks and control signs are written out."""
    return "".join(sign if sign.isprintable() else repr(sign)[1:-1] for sign in str(text))


def shown(text: object) -> str:
    """What somebody wrote as a message quotes it: in one line, and cut where it is long."""
    line = one_line(str(text)[: LONGEST_SHOWN + 1])
    return line if len(line) <= LONGEST_SHOWN else line[: LONGEST_SHOWN - 3] + "..."


def short_words(message: str) -> str:
    """A message that others wrote round what somebody typed, with such words cut; names of ours are shorter."""
    return _LONG_WORD.sub(lambda word: shown(word[0]), message)


# So many are told of one file or by one check; looking for the right name of each of thousands would take minutes.
MOST_TOLD = 100


def not_told(where: Where, count: int) -> Finding:
    """One line for all that is not told; where: the first of them."""
    return Finding(where, f"{count} more like those above, from here on", f"fix the first {MOST_TOLD}; the next check shows the rest")


def first_told(findings: Iterable[Finding]) -> Iterator[Finding]:
    """The first findings of many, each worked out only when it is asked for, and one line where there are more."""
    for count, finding in enumerate(findings):
        if count == MOST_TOLD:
            yield Finding(finding.where, "more is wrong from here on", f"fix the first {MOST_TOLD}; the next check shows the rest")
            return
        yield finding


# A name is near when at least so much of both is alike, as difflib counts it; of a long word only its beginning is looked at.
LEAST_ALIKE, LONGEST_MISSPELT = 0.6, 2 * LONGEST_SHOWN


def nearest(word: str, known: Iterable[str]) -> str | None:
    """The nearest known name; None when none is near."""
    near = get_close_matches(word[:LONGEST_MISSPELT], list(known), n=1, cutoff=LEAST_ALIKE)
    return near[0] if near else None


def suggestion(word: str, known: Iterable[str], otherwise: str) -> str:
    """The nearest known name as a question, or `otherwise` when none is near."""
    near = nearest(word, known)
    return otherwise if near is None else f"did you mean '{near}'?"
