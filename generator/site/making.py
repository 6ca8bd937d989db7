"""What every page of a site is made from: the book, its computed years, the day, and one context for each page."""

from dataclasses import dataclass, field
from datetime import date

from generator.book.book import Book
from generator.book.editions import OWN, Edition
from generator.season.season_cache import SeasonCache
from generator.site.page_context import PageContext


@dataclass(frozen=True)
class Making:
    """A site in the making.

    today: only where a printed calendar starts; nothing computed depends on it. written: pages written by hand, as paths of their Markdown.
    edition: whose site it is. quoted: what texts take their figures from, also where the page of a figure does not stand in this edition; the book
    itself where left out.
    """

    seasons: SeasonCache
    today: date
    written: frozenset[str] = frozenset()
    edition: Edition = OWN
    quoted: Book | None = None
    _contexts: dict[str, PageContext] = field(default_factory=dict)

    @property
    def book(self) -> Book:
        return self.seasons.book

    def here(self, path: str) -> PageContext:
        """The context of the page at a path, 'grasses/kikuyu'; the same one each time, for it remembers which sources the page named."""
        return self._contexts.setdefault(path, PageContext(self.book, path, self.today, self.written, self.edition, self.quoted))
