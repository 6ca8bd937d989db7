"""What of a page search should read: everything but the parts marked data-search-exclude.

A calendar of twelve printed months would fill search with months, and a calculator opened on many pages with its fields.
"""

import re

MARK = "data-search-exclude"

_MARKED = re.compile(rf"<(\w+)\b[^<>]*\s{MARK}\b[^<>]*>")


def searchable(html: str) -> str:
    """The page without its marked parts. html: as our own templates write it, every element closed, `<` and `>` escaped."""
    kept, at = [], 0
    while found := _MARKED.search(html, at):
        kept.append(html[at:found.start()])
        at = _end_of(found[1], html, found.end())
    return "".join([*kept, html[at:]])


def _end_of(tag: str, html: str, at: int) -> int:
    """Where the element ends whose start tag ended at `at`."""
    depth = 1
    for found in re.compile(rf"<(/?){tag}\b[^<>]*>").finditer(html, at):
        depth += -1 if found[1] else 1
        if depth == 0:
            return found.end()
    return len(html)
