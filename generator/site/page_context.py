"""What every view works from: the book, its computed years, and the page it is writing."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from typing import Any

from generator.book.book import Book
from generator.book.editions import OWN, Edition
from generator.site.page import Links
from generator.site.shared.public_lines import LINES, lines_at_home
from generator.site.shared.sourcing import Sourcing

# Folders whose pages a client reads.
FOR_CLIENTS = ("aftercare", "answers")


@dataclass(frozen=True)
class PageContext:
    """One page in the making: the book, and helpers that know where the page stands. written: pages written by hand, as 'methods.md'.

    edition, quoted: as in `Making`.
    """

    book: Book
    path: str
    today: date
    written: frozenset[str] = frozenset()
    edition: Edition = OWN
    quoted: Book | None = None

    @property
    def shelf(self) -> Book:
        """What texts take their figures from."""
        return self.quoted or self.book

    @cached_property
    def links(self) -> Links:
        return Links(self.path)

    @cached_property
    def sourcing(self) -> Sourcing:
        return Sourcing(self.book.sources, self.links, for_clients=self.path.split("/")[0] in FOR_CLIENTS)

    @property
    def methods_url(self) -> str:
        """Where the book says how it works things out; empty in a book that does not."""
        return self.links.to("methods") if "methods.md" in self.written else ""

    def caution(self, id: str) -> dict[str, Any]:
        caution = self.book.cautions[id]
        return {
            "id": id, "name": caution.name, "weight": caution.weight, "summary": caution.summary,
            "url": self.links.caution(id), "defer": caution.defer_to_all, "lines": lines_at_home(self.book, id),
            "lines_url": self.links.to(f"cautions/{id}", LINES),
        }

    def cautions(self, ids: tuple[str, ...]) -> list[dict[str, Any]]:
        return [self.caution(id) for id in ids]

    def names(self, names: Mapping[str, tuple[str, ...]]) -> dict[str, Any]:
        return {"rows": [
            {"country": code, "country_name": country.name, "names": list(names[code])}
            for code, country in self.book.countries.items() if code in names
        ]}

    def region(self, place: str) -> str:
        """'Victoria, Australia'."""
        record = self.book.places[place]
        return f"{record.region}, {self.book.countries[record.country].name}"

    def task_link(self, id: str) -> dict[str, str]:
        return {"name": self.book.tasks[id].name, "url": self.links.task(id)}


def all_names(book: Book, names: Mapping[str, tuple[str, ...]]) -> tuple[str, ...]:
    """Every common name once, in the order of the countries."""
    return tuple(dict.fromkeys(name for code in book.countries for name in names.get(code, ())))
