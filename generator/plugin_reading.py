"""What the hooks of MkDocs read and sort out before a site is made: the book, the day, and what of content/ clients get."""

from collections.abc import Iterable
from datetime import date
from pathlib import Path

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.utils.meta import get_data

from generator.book.book import Book
from generator.book.settings import chosen_day
from generator.book.written_page import PRIVATE, linked_pages
from generator.checks import check_book
from generator.moment import moment, this_year


def whole_book(root: Path) -> Book:
    """The book in a folder. Raises PluginError with every problem, one a line."""
    loaded = check_book(root, this_year())
    if loaded.book is None:
        raise PluginError("\n".join(str(finding) for finding in loaded.findings))
    return loaded.book


def day(named: str | date | None) -> date:
    """The day that mkdocs.yml names, or today. Raises PluginError for one that cannot be, and where the moment of the build cannot be told."""
    try:
        today = moment().date()
    except ValueError as error:
        raise PluginError(str(error)) from None
    try:
        return chosen_day(named) if named else today
    except ValueError as error:
        raise PluginError(f"mkdocs.yml: 'today' of the plugin swardbook is not a day that a build can start from: {error}") from error


def leave_out_private(files: Files) -> None:
    """Take what content/ keeps private out of a site for clients: what lies in its folder for that, and pages whose head says so."""
    for file in files:
        said = get_data(file.content_string)[1].get(PRIVATE) if file.is_documentation_page() else None
        if file.src_uri.split("/")[0] == PRIVATE or said not in (None, False, "false"):
            file.inclusion = InclusionLevel.EXCLUDED


def name_left_out(files: Files, written: Iterable[str], config: MkDocsConfig) -> None:
    """What pages written by hand link to and a site for clients has not, named as left out, so that MkDocs takes it for no mistake.

    The site takes the links off their words. That a link leads nowhere in any site is told by the build of the practice's own.
    """
    texts = {path: file.content_string for path in written if (file := files.get_file_from_path(path)) is not None}
    for linked in {linked for path, text in texts.items() for linked in linked_pages(path, text)}:
        if files.get_file_from_path(linked) is None and not linked.startswith(".."):
            files.append(File.generated(config, linked, content="", inclusion=InclusionLevel.EXCLUDED))
