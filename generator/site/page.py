"""What a view returns: one page of the book as plain values."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any


@dataclass(frozen=True)
class Section:
    """A heading that the table of contents may list."""

    id: str
    title: str


@dataclass(frozen=True)
class PageEntry:
    """A part of a page that answers by itself, as a word of the glossary: search leads straight to it.

    id: of its element. title: what it is called. names, words: as a page's. text: what it says.
    """

    id: str
    title: str
    names: tuple[str, ...]
    words: tuple[str, ...]
    text: str


@dataclass(frozen=True)
class Page:
    """One page: where it stands, what it is called, and the values its template lays out.

    path: without ending, from the root of the site: 'grasses/kikuyu'. kind: name of its kind in the registry, whose template lays it out.
    names: other names of what the page is about; shown with the hit. They stand in `names` of the record, and nowhere else.
    words: slips, questions and whatever else search must hear; no reader is shown one.
    attribution: wording that owners of the data on this page ask for; stands in its footer.
    boost: how much sooner it answers a question than another page of its kind; a kind's own weight stands in the registry.
    about: paths of the pages that it joins, as a calendar a grass and a place: it goes by a name of each.
    in_search: False for a page that is only reached by its address.
    entries: parts that search finds one by one, instead of what the page says as a whole.
    foot: what it says once of where it comes from, the dict of the component sources-foot; None where each sentence has its mark.
    """

    path: str
    title: str
    kind: str
    context: Mapping[str, Any]
    description: str
    words: tuple[str, ...] = ()
    sections: tuple[Section, ...] = field(default=())
    attribution: tuple[str, ...] = ()
    boost: float = 1.0
    about: tuple[str, ...] = ()
    in_search: bool = True
    entries: tuple[PageEntry, ...] = ()
    foot: Mapping[str, Any] | None = None
    names: tuple[str, ...] = ()

    @property
    def template(self) -> str:
        """Path of its template, from the folder of the site room."""
        return f"pages/{self.kind.replace('-', '_')}/{self.kind}.html.j2"


class Links:
    """Addresses of pages, relative to the page that shows them, so that the book works from any folder."""

    def __init__(self, here: str):
        self._up = "../" * here.count("/")

    def to(self, path: str, anchor: str = "") -> str:
        return f"{self._up}{path}.html" + (f"#{anchor}" if anchor else "")

    def file(self, path: str) -> str:
        return self._up + path

    def grass(self, id: str) -> str:
        return self.to(f"grasses/{id}")

    def guide(self, id: str) -> str:
        return self.to(f"renovate/{id}")

    def task(self, id: str) -> str:
        return self.to(f"tasks/{id}")

    def caution(self, id: str) -> str:
        return self.to(f"cautions/{id}")

    def place(self, id: str) -> str:
        return self.to(f"places/{id}")

    def calendar(self, grass: str, place: str, anchor: str = "") -> str:
        return self.to(f"calendars/{place}/{grass}", anchor)

    def comparison(self, grass: str, place: str = "") -> str:
        return self.to(f"compare/{grass}", place)

    def calculator(self, id: str) -> str:
        return self.to(f"calculators/{id}")

    def aftercare(self, id: str) -> str:
        return self.to(f"aftercare/{id}")

    def problem(self, id: str, anchor: str = "") -> str:
        return self.to(f"problems/{id}", anchor)

    def answer(self, id: str) -> str:
        return self.to(f"answers/{id}")

    def source(self, id: str) -> str:
        return self.to("sources", id)
