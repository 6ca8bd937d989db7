"""What of a page search should read: everything but the parts marked data-search-exclude.

The theme's own search leaves such parts' headings in its index, one record each; a calendar of twelve printed months
would fill it with months. Here the marked parts are gone before the index sees the page.
"""

import re
from collections.abc import Iterable

MARK = "data-search-exclude"

# Where search cuts a text and a query into words. Search takes a word typed for the start of a word, so 'when to scarify'
# would ask for every page with 'topdress'; little words are therefore cut away like the spaces around them.
LITTLE_WORDS = (
    "a an and are as at be by can do does for from grass how i if in is it long many much my of on or should that the this to "
    "was what when where which who why will with you your"
).split()
SEPARATOR = rf"[\s\-]+|\b(?:{'|'.join(LITTLE_WORDS)})\b"
_LITTLE_START = re.compile(rf"^(?:(?:{'|'.join(LITTLE_WORDS)})\b[\s\-]*)+")
_MARKED = re.compile(rf"<(\w+)\b[^<>]*\s{MARK}\b[^<>]*>")


def searchable(html: str) -> str:
    """The page without its marked parts. html: as our own templates write it, every element closed, `<` and `>` escaped."""
    kept, at = [], 0
    while found := _MARKED.search(html, at):
        kept.append(html[at:found.start()])
        at = _end_of(found[1], html, found.end())
    return "".join([*kept, html[at:]])


def search_words(words: Iterable[str]) -> list[str]:
    """Other names as search should hold them, each once and without little words in front.

    The theme takes a name whose first word was cut away for the tail of the name before, and marks the wrong letters.
    """
    return list(dict.fromkeys(filter(None, (_LITTLE_START.sub("", word) for word in words))))


def _end_of(tag: str, html: str, at: int) -> int:
    """Where the element ends whose start tag ended at `at`."""
    depth = 1
    for found in re.compile(rf"<(/?){tag}\b[^<>]*>").finditer(html, at):
        depth += -1 if found[1] else 1
        if depth == 0:
            return found.end()
    return len(html)
