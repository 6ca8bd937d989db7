"""What a site for clients leaves out of its finished pages: parts that do not stand in it, and links to pages that do not.

No template asks whose site it lays out. It marks what is private where it stands: `data-private="links"` names the word that opens an
element to clients. A link to a page that is not there keeps its words and is no link any more; what is nothing without its links is
marked `data-doors` and goes with the last of them.
"""

import re
from collections.abc import Container, Iterator
from posixpath import dirname, join, normpath
from urllib.parse import unquote, urlsplit

from generator.book.editions import Edition

_TAG = re.compile(r"<(/?)([a-zA-Z][\w-]*)([^<>]*)>")
_ATTRIBUTE = re.compile(r"""([\w-]+)(?:="([^"]*)")?""")
_MARKS = re.compile(r' data-(?:private="[^"]*"|doors)(?=[ >])')
_VOID = frozenset("area base br col embed hr img input link meta source track wbr".split())


class LeavingOut:
    """pages: every page of the site, as 'tasks/core.html'. private_parts: components that do not stand in it."""

    def __init__(self, edition: Edition, pages: Container[str], private_parts: Container[str]):
        self._edition, self._pages, self._private_parts = edition, pages, private_parts

    def page(self, path: str, html: str) -> str:
        """A page without what its site leaves out. path: of the page, without ending; html: `<` and `>` escaped in texts and attributes."""
        if not self._edition.for_clients:
            return html
        tags = list(_TAG.finditer(html))
        ends = dict(_elements(tags))
        gone: list[tuple[int, int]] = []  # Stretches of the text, from and up to.
        at = 0
        for number, attributes in self._opening(tags, ends):
            whole = (tags[number].start(), tags[ends[number]].end())
            if whole[0] < at:
                continue  # It stands in one that is gone.
            if self._is_private(attributes) or ("data-doors" in attributes and self._leads_nowhere(path, tags, ends, number)):
                gone.append(whole)
                at = whole[1]
            elif tags[number][2] == "a" and self._is_absent(path, attributes):
                gone += [tags[number].span(), tags[ends[number]].span()]
        return _MARKS.sub("", _without(html, gone))

    def _opening(self, tags: list[re.Match[str]], ends: dict[int, int]) -> Iterator[tuple[int, dict[str, str]]]:
        for number, tag in enumerate(tags):
            if number in ends and (tag[2] == "a" or "data-" in tag[3]):
                yield number, dict(_ATTRIBUTE.findall(tag[3]))

    def _is_private(self, attributes: dict[str, str]) -> bool:
        word = attributes.get("data-private")
        parts = attributes.get("data-component", "").split()
        return (word is not None and not self._edition.has(word)) or any(part in self._private_parts for part in parts)  # type: ignore[arg-type]  # Held by a test.

    def _leads_nowhere(self, path: str, tags: list[re.Match[str]], ends: dict[int, int], number: int) -> bool:
        """True for an element that has links and none of them to a page that is there; one without any link is whole as it is."""
        links = [dict(_ATTRIBUTE.findall(tag[3])) for tag in tags[number : ends[number] + 1] if tag[2] == "a" and not tag[1]]
        return bool(links) and all(self._is_absent(path, each) for each in links)

    def _is_absent(self, path: str, attributes: dict[str, str]) -> bool:
        parts = urlsplit(attributes.get("href", ""))
        if parts.scheme or parts.netloc or not parts.path.endswith(".html"):
            return False
        return normpath(join(dirname(path), unquote(parts.path))) not in self._pages


def _elements(tags: list[re.Match[str]]) -> Iterator[tuple[int, int]]:
    """The tag that begins each element, and the one that ends it: the same for one that holds nothing."""
    begun: list[int] = []
    for number, tag in enumerate(tags):
        name = tag[2].lower()
        if tag[1]:
            if any(tags[each][2].lower() == name for each in begun):
                while tags[at := begun.pop()][2].lower() != name:
                    pass  # An end that may be left out, as of a paragraph: it is no element that anything here asks for.
                yield at, number
        elif name in _VOID or tag[3].endswith("/"):
            yield number, number
        else:
            begun.append(number)


def _without(html: str, gone: list[tuple[int, int]]) -> str:
    kept, at = [], 0
    for start, end in sorted(gone):
        kept.append(html[at:start])
        at = max(at, end)
    return "".join([*kept, html[at:]])
