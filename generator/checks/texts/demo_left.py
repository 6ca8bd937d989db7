"""A practice that is not invented keeps nothing of the one that this book came with: its name, its telephone, its addresses, its numbers.

The generator may not name that practice, or its name would go out with every book. So it knows these by their digests alone; a test
holds them to the data that they were taken from.
"""

import re
from collections.abc import Iterator
from functools import cache
from hashlib import sha256

from generator.book.book import PartialBook
from generator.book.loading.disk import walked
from generator.book.loading.folders import SCHEMA_FOLDER, SETTINGS
from generator.book.settings import settings_of
from generator.checks.check import Check
from generator.findings import Finding, Where, shown

# Digest of the first word -> of what begins with it, the longest first: its digest, how many words it has, and what it is.
DEMO: dict[str, tuple[tuple[str, int, str], ...]] = {
    "b5b2dd1ecfcc": (("87c1e27fad77", 4, "the name"), ("bc341735748f", 2, "the name")),
    "4f01a36aa99d": (("4f01a36aa99d", 1, "the host"),),
    "a953f09a1b6b": (("ff457c707ba4", 3, "the telephone"),),
    "25494aca95d4": (("25494aca95d4", 1, "the telephone"),),
    "d029fa3a95e1": (("b807aae54fe9", 4, "the telephone"),),
    "f1534392279b": (("cf0cbaee1f79", 4, "the registration"), ("94e2c6db1fd7", 2, "the account")),
}
TEXTS = (".yml", ".yaml", ".md", ".markdown", ".txt", ".csv", ".svg", ".html")
SIGNS = 12
LARGEST_BYTES = 1_000_000
_WORD = re.compile(r"[^\W_]+")


@cache
def digest(text: str) -> str:
    """Of the words of a text, however they are parted and written."""
    return sha256(" ".join(_WORD.findall(text.casefold())).encode()).hexdigest()[:SIGNS]


def _check(book: PartialBook) -> Iterator[Finding]:
    if book.practice is None or book.practice.invented:
        return
    for path, text in _texts(book):
        for number, line in enumerate(text.splitlines(), start=1):
            for column, said, what in left_in(line):
                yield Finding(Where(path, number, column), f"'{shown(said)}' is {what} of the invented practice that this book came with",
                              "write your own there, or take it out")


def left_in(line: str) -> Iterator[tuple[int, str, str]]:
    """What of that practice stands in a line: its column from 1, its words, and what they are. Of what stands inside another, only the longer."""
    words, taken = list(_WORD.finditer(line)), 0
    for at, first in enumerate(words):
        for known, count, what in DEMO.get(digest(first[0]), ()) if first.start() >= taken else ():
            said = line[first.start() : words[min(at + count, len(words)) - 1].end()]
            if digest(said) == known:
                taken = first.start() + len(said)
                yield first.start() + 1, said, what
                break


def _texts(book: PartialBook) -> Iterator[tuple[str, str]]:
    """Every text file of the book with its path: its data, its settings, its pages written by hand."""
    pages, _ = settings_of(book.root)
    folders = [(book.root / "data", "data"), *([(pages, shown(pages.relative_to(book.root)))] if pages and pages.is_relative_to(book.root) else [])]
    files = [(book.root / SETTINGS, SETTINGS)]
    for folder, name in folders:
        if folder.is_dir() and not folder.is_symlink():
            files += [(file, path) for file, path, wrong in walked(folder, name, folder) if wrong is None and file.suffix.lower() in TEXTS]
    for file, path in files:
        if not path.startswith(f"data/{SCHEMA_FOLDER}/") and file.is_file() and file.stat().st_size <= LARGEST_BYTES:
            yield path, file.read_text(encoding="utf-8", errors="replace")


CHECK = Check("demo-left", "A practice that is not invented keeps nothing of the invented one.", ("practice",), _check)
