"""What is said of a kind of page, in one line of the registry."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from importlib import import_module
from typing import Literal

from generator.book.editions import Audience, Edition
from generator.book.fields.private import Opened
from generator.site.making import Making
from generator.site.page import Page

Files = Mapping[str, str | bytes]
PAGES = f"{__package__}.pages"
DOORS, ABOUT = "doors", "about"
# When a browser keeps the pages of a kind, of a book that is hosted: before an edition takes over, or after one visit to any page.
KeptWhen = Literal["", "first", "at once"]


@dataclass(frozen=True)
class Tab:
    """A front door in the navigation. page: its path. among: with the doors, or under About; clients: the same in the site for clients."""

    words: str
    page: str
    among: str = DOORS
    clients: str = ABOUT


@dataclass(frozen=True)
class PageKind:
    """One kind of page. It lives in the folder of its name in `pages/`, which holds its template, `<name>.html.j2`, and its `view.py`.

    view.py may have `pages(making)`, every page that it makes, and `files(making)`, what these load: path in the site to content.
    said, weight: what search calls a page of this kind, and how much it counts. names_only: for a list of everything, which is found by
    name and not by what it lists. for_clients: it says nothing of the practice's own work. glossary: whether words of the trade in its
    text lead to the glossary. kept: when a browser keeps its pages for a telephone without signal. kept_chosen: files that are kept for the
    grass and the place that a reader chose, with {grass} and {place} in them, and * for any letters. tab: its place in the navigation.
    opened_by: the word by which a practice opens it to clients; None for a kind that they always get. audience: whose site alone has it.
    """

    name: str
    said: str
    weight: float
    names_only: bool = False
    glossary: bool = False
    for_clients: bool = False
    kept: KeptWhen = ""
    kept_chosen: tuple[str, ...] = ()
    tab: Tab | None = None
    opened_by: Opened | None = None
    audience: Audience | None = None

    def stands_in(self, edition: Edition) -> bool:
        return edition.has(self.opened_by) and self.audience in (None, edition.audience)

    def pages(self, making: Making) -> Iterable[Page]:
        return getattr(self._view(), "pages", _nothing)(making)

    def files(self, making: Making) -> Files:
        return dict(getattr(self._view(), "files", _nothing)(making))

    def _view(self) -> object:
        return import_module(f"{PAGES}.{folder_of(self.name)}.view")


def folder_of(kind: str) -> str:
    """'side-by-side' -> 'side_by_side': a folder that Python can import."""
    return kind.replace("-", "_")


def _nothing(making: Making) -> tuple[()]:
    return ()
