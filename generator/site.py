"""The whole site of a book in plain values: every page's HTML, every other file, and what search reads of them.

A build lays this into a folder with MkDocs; the fuzz tests go through it without.
"""

from datetime import date
from functools import cached_property

from generator.glossed import Glossed
from generator.model.book import Book
from generator.outputs.json_book import json_files
from generator.outputs.qr import qr_files
from generator.pages import all_pages
from generator.pages.almanac import Almanac
from generator.pages.calculator_script import calculator_script
from generator.pages.fill_in import COUNTS_FILE, FILE as FILL_IN, counts_script, fill_in_script
from generator.pages.hold_script import PATH as HOLDS, hold_script
from generator.pages.inspection import SPEC as INSPECTION
from generator.pages.inspection_script import inspection_script
from generator.pages.job import has_jobs
from generator.pages.job_scripts import job_scripts
from generator.pages.page import Page, Section
from generator.pages.record import SPEC as RECORD, record_script
from generator.pages.season_script import season_scripts
from generator.pages.year import year_scripts
from generator.pages.year_files import year_files
from generator.render import render_page
from generator.search.book import Shelf
from generator.search.reading import read
from generator.searchable import searchable
from generator.turf.season_json import as_json


class Site:
    """today: the first year of the calendar files.

    written: pages written by hand, as paths of their Markdown. One of the name of ours takes its place; the others are `added`.
    shelf: what search reads; it fills up while pages are written.
    """

    def __init__(self, book: Book, today: date, written: frozenset[str] = frozenset()) -> None:
        self.book, self.today = book, today
        self.almanac = Almanac(book)
        ours = {f"{page.path}.md": page for page in all_pages(self.almanac, today, written)}
        self.pages = {path: page for path, page in ours.items() if path not in written}
        self.added = frozenset(written - ours.keys())
        self.shelf = Shelf()
        self._glossed = Glossed(book.of("terms"))

    def html(self, page: Page) -> tuple[str, list[Section]]:
        """A page's HTML, its words linked, and the sections that are there; search reads it on the way."""
        laid_out = render_page(f"{page.template}.html.j2", page.context, page.foot)
        if page.in_search:
            self.shelf.put(page, read(searchable(laid_out)))
        # A page leaves out a part it has nothing for: its table of contents leaves it out too.
        there = [section for section in page.sections if f'id="{section.id}"' in laid_out]
        return self._glossed.page(page, laid_out), there

    @cached_property
    def files(self) -> dict[str, str | bytes]:
        """What the book's data makes besides pages: path in the site to content."""
        book, almanac = self.book, self.almanac
        years = {(grass, place): as_json(almanac.season(grass, place)) for grass in book.grasses for place in book.places}
        scripts = {f"assets/calculators/{id}.js": calculator_script(id, calculator) for id, calculator in book.calculators.items()}
        if book.inspection is not None:
            scripts[INSPECTION] = inspection_script(book.inspection)
        if book.holds:
            scripts[HOLDS] = hold_script(book)
        if book.record is not None:
            scripts[RECORD] = record_script(book)
        if has_jobs(book):
            scripts |= job_scripts(almanac)
        return {
            **scripts, **season_scripts(almanac), **year_scripts(almanac), **year_files(almanac, self.today),
            FILL_IN: fill_in_script(almanac), COUNTS_FILE: counts_script(almanac), **qr_files(book), **json_files(book, years),
        }
