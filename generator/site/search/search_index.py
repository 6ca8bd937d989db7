"""The whole book for the reader's search: a record a page, and the words that mean the same, as one script."""

import json
from collections import Counter
from collections.abc import Container, Iterable, Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path
from typing import Any

import yaml

from generator.site.page import Page
from generator.site.search.page_text import Reading

FILE = "assets/search/book.js"
WORDS = Path(__file__).with_name("words.yml")
# A sentence on more pages than this says nothing about any of them.
MOST_PAGES = 4
# What an entry of a page is to search, a word of the glossary; and a page written by hand.
ENTRY, WRITTEN = "term", "written"


@dataclass(frozen=True)
class SearchKind:
    """What search makes of a kind of page: what it calls one, how much one counts, and whether it is found by name alone."""

    said: str
    weight: float
    names_only: bool = False


# What no line of the registry of pages stands for.
OTHERS = {ENTRY: SearchKind("glossary", 0.06), WRITTEN: SearchKind("about this book", 0.8)}


@dataclass
class SearchIndex:
    """Collects pages while they are written. kinds: of page, by name.

    In a record, `names` may be shown with a hit, and `heard` is only matched: it holds slips and turns of phrase.
    """

    kinds: Mapping[str, SearchKind]
    readings: dict[str, tuple[Mapping[str, Any], Reading]] = field(default_factory=dict)

    def put(self, page: Page, reading: Reading) -> None:
        head = {
            "path": f"{page.path}.html", "title": page.title, "kind": page.kind, "lead": _opening(page),
            "names": list(page.names), "heard": list(page.words), "about": [f"{each}.html" for each in page.about], "boost": page.boost,
        }
        self.readings[page.path] = head, reading
        for entry in page.entries:
            path = f"{page.path}.html#{entry.id}"
            told = {
                "path": path, "title": entry.title, "kind": ENTRY, "lead": entry.text, "names": list(entry.names), "heard": list(entry.words),
                "about": [],
            }
            self.readings[path] = told, Reading((), ())

    def put_written(self, path: str, title: str, description: str, words: Iterable[str], reading: Reading) -> None:
        head = {"path": f"{path}.html", "title": title, "kind": WRITTEN, "lead": description, "names": [], "heard": list(words), "about": []}
        self.readings[path] = head, reading

    def script(self) -> str:
        """A call that hands the book to whoever loads it."""
        kinds = {**self.kinds, **OTHERS}
        said = {name: {"say": kind.said, "weight": kind.weight} for name, kind in kinds.items()}
        names_only = {name for name, kind in kinds.items() if kind.names_only}
        told = {"pages": list(_records(self.readings.values(), names_only)), **spoken(), "kinds": said}
        return f"Swardbook.search.read({json.dumps(told, ensure_ascii=False, separators=(',', ':'))});\n"


def _opening(page: Page) -> str:
    """What a page says first. A guide's description only names its parts."""
    summary = page.context.get("summary")
    return summary if isinstance(summary, str) else page.description


def _records(read: Iterable[tuple[Mapping[str, Any], Reading]], names_only: Container[str]) -> Iterable[dict[str, Any]]:
    read = list(read)
    spread = Counter(sentence for _, reading in read for sentence in reading.sentences)
    for head, reading in read:
        sentences = [] if head["kind"] in names_only else [
            each for each in reading.sentences if spread[each] <= MOST_PAGES and each != head["lead"]
        ]
        headings = [] if head["kind"] in names_only else list(reading.headings)
        yield {**{key: value for key, value in head.items() if value not in ([], 1.0)}, "headings": headings, "sentences": sentences}


@lru_cache(maxsize=1)
def spoken() -> dict[str, Any]:
    """words.yml as plain lists."""
    words = yaml.safe_load(WORDS.read_text(encoding="utf-8"))
    return {**words, "little": words["little"].split(), "weak": words["weak"].split()}
