"""Every figure of the book that names a published source; and a fresh sample of them to read again.

    .venv/bin/python -m tests.published_figures 60 20261128

prints 60, drawn with that seed from those that stand neither in tests/published/figures nor among what could not be opened.
"""

import random
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from generator.book.book import Book
from generator.book.fields.sourced import UNPUBLISHED, Claim
from generator.book.fields.walk import parts
from generator.book.loading.whole_book import read_book
from generator.book.records.calculator import Constant
from tests.yaml_files import read_yaml

ROOT = Path(__file__).parents[1]
READINGS = ROOT / "tests" / "published" / "figures"
NOT_OPENED = READINGS / "not-opened.yml"


class Published(NamedTuple):
    """A figure as its file gives it: numbers by the file's own keys, in `unit`; only sources that were published.

    path: as the checks print it, but without a place among `others`, which shifts when one is added.
    """

    file: str
    path: str
    numbers: dict[str, float]
    unit: str
    source: list[str]


def published_figures(book: Book) -> Iterator[Published]:
    """Each once, where it is written: not where a calculator or a plan takes it from elsewhere."""
    for kind, id, record in book.records():
        for path, part in parts(record):
            if not isinstance(part, (Claim, Constant)) or not book.written(kind, id, *path):
                continue
            source = [each for each in part.sources if each not in UNPUBLISHED]
            if source:
                keys = ("value",) if isinstance(part, Constant) else ("low", "high", "use")
                numbers = {key: getattr(part, key) for key in keys if getattr(part, key) is not None}
                address = ".".join(str(step) for step in path if not isinstance(step, int) or path[-2:-1] != ("others",))
                yield Published(book.where(kind, id, *path).path, address, numbers, part.unit, source)


def readings() -> list[dict]:
    """What was read, of every file in tests/published/figures."""
    files = sorted(set(READINGS.glob("*.yml")) - {NOT_OPENED})
    return [entry for file in files for entry in read_yaml(file)]


def not_opened() -> list[dict]:
    return read_yaml(NOT_OPENED)


def main(count: str, seed: str) -> None:
    done = [(each["file"], each["path"], each["source"]) for each in [*(entry["figure"] for entry in readings()), *not_opened()]]
    left = [each for each in published_figures(read_book(ROOT)[0]) if (each.file, each.path, each.source) not in done]
    left.sort(key=lambda each: (each.file, each.path, each.source))
    for figure in random.Random(int(seed)).sample(left, min(int(count), len(left))):
        print(figure.file, figure.path, figure.numbers, figure.unit, *figure.source)


if __name__ == "__main__":
    main(*sys.argv[1:])
