"""mkdocs.yml and the pages written by hand: what the site shows of them is fit to be shown, and nothing comes from outside the book."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.book.settings import settings_of
from generator.book.written_page import content_findings
from generator.checks.check import Check
from generator.findings import Finding


def _check(book: PartialBook) -> Iterator[Finding]:
    folder, findings = settings_of(book.root)
    yield from findings
    if folder is not None:
        yield from content_findings(book.root, folder)


CHECK = Check("site-settings", "What mkdocs.yml and the pages written by hand say can be shown, and is the book's own.", ("mkdocs", "content"), _check)
