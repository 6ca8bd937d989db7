"""The whole site of a book in plain values: every page's HTML, every other file, and what search reads of them.

A build lays this into a folder with MkDocs; the fuzz tests go through it without.
"""

import re
from collections.abc import Mapping
from datetime import date
from functools import cached_property
from pathlib import Path
from typing import Any

from generator.book.attribution import attribution
from generator.book.book import Book
from generator.book.editions import OWN, Edition, told_to, without_parts
from generator.book.records.practice import Practice
from generator.files.json_book import json_files
from generator.files.season_json import as_json
from generator.season.season_cache import SeasonCache
from generator.site.frame.brand import brand_files, brand_view, practice_view
from generator.site.frame.glossary_links import GlossaryLinks
from generator.site.frame.left_out import LeavingOut
from generator.site.frame.offline import offline_files, preview_files
from generator.site.frame.policy import HEADERS_FILE, NO_REFERRER, header_lines, page_policy
from generator.site.frame.render import asset_files, parts_left_out, render, render_page, with_own_files
from generator.site.frame.theme_style import lean_theme
from generator.site.making import Making
from generator.site.page import Links, Page, Section
from generator.site.page_tree import PageTree
from generator.site.registry import KIND_OF, all_files, all_pages, beside_others, keeping, search_kinds
from generator.site.search.page_text import read
from generator.site.search.search_index import FILE as SEARCH
from generator.site.search.search_index import SearchIndex
from generator.site.shared import about_practice
from generator.site.shared.public_lines import telephone_link
from generator.site.year import printed_calendars

# What a page written by hand asks to have worked out.
PRINTED_CALENDARS = "<!-- swardbook: printed-calendars -->"
PRACTICE = "<!-- swardbook: practice -->"
OWN_COPY = "This is the practice's own copy, with its prices and its own pages. Clients get another."


class BookSite:
    """today: the first year of the calendar files.

    written: pages written by hand, as paths of their Markdown. One of the name of ours takes its place; the others are `added`.
    edition: whose site it is. index: what search reads; it fills up while pages are written.
    Raises Unsaid where a text of the book says nothing but what this edition does not tell.
    """

    def __init__(self, book: Book, today: date, written: frozenset[str] = frozenset(), edition: Edition = OWN) -> None:
        told = told_to(edition, book)
        self.book, self.today, self.edition = without_parts(edition, told), today, edition
        self.making = Making(SeasonCache(self.book), today, written, edition, told)
        ours = {f"{page.path}.md": page for page in all_pages(self.making)}
        self.pages = {path: page for path, page in ours.items() if path not in written}
        self.added = frozenset(written - ours.keys())
        self.index = SearchIndex(search_kinds())
        self._glossary_links = GlossaryLinks(book.of("terms"))
        there = {f"{path.removesuffix('.md')}.html" for path in (*self.pages, *written)}
        self._left_out = LeavingOut(edition, there, parts_left_out(edition))
        self._written_by_hand: list[str] = []

    def html(self, page: Page) -> tuple[str, list[Section]]:
        """A page's HTML, its words linked, and the sections that are there; search reads it on the way."""
        whole = self._left_out.page(page.path, render_page(page.template, page.context, page.foot))
        laid_out = with_own_files(whole, Links(page.path).file(""))
        tree = PageTree(laid_out)
        if page.in_search:
            self.index.put(page, read(tree))
        # A page leaves out a part it has nothing for: its table of contents leaves it out too.
        there = [section for section in page.sections if f'id="{section.id}"' in laid_out]
        return self._glossary_links.page(page, laid_out, tree) if KIND_OF[page.kind].glossary else laid_out, there

    def written_html(self, html: str, path: str, title: str, meta: Mapping[str, Any]) -> tuple[str, list[str]]:
        """A page written by hand, with what it asks for worked out, and the wording that owners of its data ask for; search reads it on the way.

        path: without ending. meta: what its head says.
        """
        thanks: list[str] = []
        if PRINTED_CALENDARS in html:
            view = printed_calendars.printed_calendars(self.making.seasons, self.making.here(path))
            html = html.replace(PRINTED_CALENDARS, render(printed_calendars.TEMPLATE, view))
            thanks = attribution(self.book, [each.place for each in self.book.season_groups.published])
        if PRACTICE in html:
            html = html.replace(PRACTICE, render(about_practice.TEMPLATE, about_practice.about_practice(self.book.practice)))
        html = with_own_files(self._left_out.page(path, html), Links(path).file(""))
        self._written_by_hand.append(html)
        words = [str(word) for word in meta.get("words") or ()]
        self.index.put_written(path, title, str(meta.get("description", "")), words, read(PageTree(html)))
        return html, thanks

    @cached_property
    def files(self) -> dict[str, str | bytes]:
        """What the site has besides pages: path in it to content."""
        book, seasons = self.book, self.making.seasons
        years = {(grass, place): as_json(seasons.season(grass, place)) for grass in book.grasses for place in book.offered_places}
        return {
            **asset_files(book, self.edition), **brand_files(book), **all_files(self.making), **json_files(book, years, self.edition), HEADERS_FILE: header_lines(),
        }

    def write_last(self, folder: Path, settings: Mapping[str, Any], previewing: bool) -> None:
        """What can be said only when every page is written: which of the theme's style is of use, the words of search, and the worker that keeps a
        hosted book. settings: those of MkDocs."""
        lean_theme(folder, settings, "".join(self._written_by_hand))
        search = folder / SEARCH
        search.parent.mkdir(parents=True, exist_ok=True)
        search.write_text(self.index.script(), encoding="utf-8")
        kept = keeping(self.pages.values(), self.edition)
        for name, text in (preview_files() if previewing else offline_files(folder, kept, for_clients=self.edition.for_clients)).items():
            (folder / name).write_text(text, encoding="utf-8")

    def on_every_page(self, previewing: bool) -> dict[str, object]:
        """What the theme's templates ask for on each page."""
        practice = self.book.practice
        return {
            "footer": footer_notes(practice), "policy": page_policy(previewing), "referrer": NO_REFERRER,
            "lawn_pages": self._lawn_pages if self.edition.has("jobs") else None,
            "brand": brand_view(self.book), "practice": practice_view(self.book),
            "own_copy": None if self.edition.for_clients else OWN_COPY,
            "to_call": to_call(practice) if self.edition.for_clients else None,
        }

    @cached_property
    def _lawn_pages(self) -> list[dict[str, str]]:
        """Pages that are about a lawn, as the bar of every page offers them: words, and an address with {grass} and {place} in it.

        only: the ids for which there is such a page, parted by blanks; empty for a page that takes any lawn.
        """
        def there(pattern: str) -> str:
            found = (re.fullmatch(pattern, path) for path in self.pages)
            return " ".join(sorted({match[1] for match in found if match}))

        doors = (("Its job", "jobs/index"), ("Inspection", "inspection"), ("Work record", "record"))
        return [
            {"words": "Its guide", "page": "renovate/{grass}", "of": "grass", "only": there(r"renovate/([a-z0-9-]+)\.md")},
            {"words": "Its year", "page": "calendars/{place}/{grass}", "of": "place", "only": there(r"calendars/([a-z0-9-]+)/.*\.md")},
            {"words": "Its place", "page": "places/{place}", "of": "place", "only": there(r"places/([a-z0-9-]+)\.md")},
            *({"words": words, "page": path, "of": "", "only": ""} for words, path in doors if f"{path}.md" in self.pages),
        ]

    def front_matter(self, page: Page) -> dict[str, object]:
        """What the theme is told of a page."""
        hidden = [part for part, shown in (("navigation", page.path in beside_others(self.edition)), ("toc", page.sections)) if not shown]
        return {
            "title": page.title, "description": page.description, "hide": hidden, "footer_notes": list(page.attribution),
            "for_clients": KIND_OF[page.kind].for_clients,
        }


def to_call(practice: Practice) -> dict[str, str | None]:
    """Whose pages a client reads, and how to reach them: what stands at the top of each."""
    return {"name": practice.name, "telephone": practice.telephone, "telephone_link": telephone_link(practice.telephone)}


def footer_notes(practice: Practice) -> list[str]:
    if practice.invented:
        return [f"{practice.name}: an invented practice. Its people, clients, products and prices do not exist."]
    return [practice.name]
