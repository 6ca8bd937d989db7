"""What of a page is markup already when it reaches the theme, and what is text that the theme's templates must escape.

MkDocs renders its theme without escaping: a title with `<` in it would be read as markup. Here escaping is turned on for all of the theme's
templates, and only what MkDocs calls HTML is handed over as such: a page's content, and the titles in its table of contents.
"""

from collections.abc import Iterable, Sequence
from html import unescape
from typing import Any

from jinja2 import Environment
from markupsafe import Markup, escape

# These of the theme's features print a title as markup from a script, which escaping here cannot mend.
UNSAFE_FEATURES = {"content.tooltips"}


def without_unsafe(features: Iterable[str]) -> list[str]:
    """The theme's features as a book asks for them, without those that would run what is written in a title."""
    return [feature for feature in features if feature not in UNSAFE_FEATURES]


def escape_in(environment: Environment) -> None:
    """Turn escaping on before a template is compiled. The theme's own words in other languages also go into JSON: they stay as they are."""
    environment.autoescape = lambda name: not (name or "").startswith("partials/languages/")


def plain_title(page: Any) -> str:
    """The title of a page of MkDocs as a reader reads it: one taken from its first heading has its letters escaped already.

    page: with `title`, `meta` and what MkDocs found in the heading, as it is after its text was read.
    """
    from_heading = "title" not in page.meta and page.title == page._title_from_render
    return unescape(page.title) if from_heading else str(page.title or "")


def mark_titles(pages: Iterable[Any]) -> None:
    """Hand over the titles of pages and of their tables of contents as markup, each letter escaped once."""
    for page in pages:
        page.title = escape(plain_title(page))
        _mark_contents(list(page.toc))


def mark_content(page: Any) -> None:
    """The finished HTML of a page, ours or written by hand, is markup."""
    page.content = Markup(page.content)


def as_title(text: str) -> str:
    """Plain text as a title in a table of contents, which is HTML."""
    return str(escape(text))


def _mark_contents(links: Sequence[Any]) -> None:
    for link in links:
        link.title = Markup(link.title)
        _mark_contents(link.children)
