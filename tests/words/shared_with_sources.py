"""Runs of words that the book shares with published texts. By hand: `python -m tests.words.shared_with_sources FOLDER`

FOLDER holds sources as plain text, one file each, gathered by whoever runs it; they belong to others and are never kept here.
Prints file, line, the shared words and the source's file, then a count; leaves with 1 when anything is shared.
"""

import re
import sys
from collections import defaultdict
from collections.abc import Iterable, Mapping
from functools import cache
from pathlib import Path
from typing import NamedTuple

from tests.words.texts import Text, book_texts, guide_texts
from tests.yaml_files import read_yaml

LONGEST_FREE_RUN = 7
_WORD = re.compile(r"[a-z]+(?:'[a-z]+)?|\d+(?:[.,]\d+)*")


class Shared(NamedTuple):
    path: str
    line: int
    words: str
    source: str

    def __str__(self) -> str:
        return f"{self.path}:{self.line}: {self.words!r} stands in {self.source} too; say it in your own words"


def words(text: str) -> list[str]:
    return _WORD.findall(text.lower().replace("’", "'"))


@cache
def free_phrases() -> tuple[tuple[str, ...], ...]:
    """The phrases that may be shared, each as words, the longest first."""
    lists = read_yaml(Path(__file__).with_suffix(".yml")).values()
    return tuple(sorted((tuple(words(phrase)) for phrases in lists for phrase in phrases), key=len, reverse=True))


def shared_runs(texts: Iterable[Text], sources: Mapping[str, str]) -> list[Shared]:
    """Every run longer than seven words that stands in a text and in a source, as long as it goes.

    sources: the text of each by its name.
    """
    said, starts = {name: words(text) for name, text in sources.items()}, defaultdict(list)
    size = LONGEST_FREE_RUN + 1
    for name, source in said.items():
        for at in range(len(source) - size + 1):
            starts[tuple(source[at : at + size])].append((name, at))
    found = []
    for text in texts:
        own, at = words(text.text), 0
        while at <= len(own) - size:
            longest, of = 0, ""
            for name, start in starts.get(tuple(own[at : at + size]), ()):
                length = size
                while at + length < len(own) and start + length < len(said[name]) and own[at + length] == said[name][start + length]:
                    length += 1
                longest, of = max((longest, of), (length, name))
            run = own[at : at + longest]
            if longest and words_left(run) > LONGEST_FREE_RUN:
                found.append(Shared(text.path, text.line_of(run[0]), " ".join(run), of))
            at += max(longest, 1)
    return found


def words_left(run: list[str]) -> int:
    """How many words of a run are no part of a name, a unit or set words."""
    left, at = 0, 0
    while at < len(run):
        phrase = next((each for each in free_phrases() if tuple(run[at : at + len(each)]) == each), None)
        left += phrase is None
        at += len(phrase or (0,))
    return left


def main(folder: str) -> int:
    files = [file for file in sorted(Path(folder).rglob("*")) if file.suffix in {".txt", ".md", ".yml"}]
    sources = {file.relative_to(folder).as_posix(): file.read_text(encoding="utf-8", errors="replace") for file in files}
    found = shared_runs((*book_texts(), *guide_texts()), sources)
    print(*found, sep="\n")
    total = sum(len(words(text)) for text in sources.values())
    print(f"{len(sources)} sources of {total} words; {len(found)} runs of {LONGEST_FREE_RUN + 1} words or more shared", file=sys.stderr)
    return 1 if found else 0


if __name__ == "__main__":
    if len(sys.argv) != 2:
        raise SystemExit("name the folder that holds the sources' texts")
    raise SystemExit(main(sys.argv[1]))
