"""The built HTML as a link checker sees it: addresses, ids, titles and text of each page, read once."""

import fcntl
import pickle
import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import lru_cache
from html.parser import HTMLParser
from pathlib import Path

VOID = frozenset({"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"})
NAME = re.compile(r"[a-zA-Z][\w:.-]*")
ADDRESS_ATTRIBUTES = {("a", "href"), ("link", "href"), ("script", "src"), ("img", "src"), ("iframe", "src"), ("source", "src"), ("form", "action")}


@dataclass(frozen=True)
class Address:
    """One address in a page: `tag` says what asks for it, `rel` what a link is for."""

    tag: str
    value: str
    rel: str


@dataclass
class BuiltPage:
    path: str
    language: str = ""
    title: str = ""
    first_headings: list[str] = field(default_factory=list)
    ids: list[str] = field(default_factory=list)
    addresses: list[Address] = field(default_factory=list)
    loose: list[str] = field(default_factory=list)
    footer: str = ""
    text: str = ""


class _Reader(HTMLParser):
    def __init__(self, page: BuiltPage) -> None:
        super().__init__(convert_charrefs=True)
        self.page = page
        self.open: list[str] = []

    def updatepos(self, i: int, j: int) -> int:
        """Nobody asks for lines and columns, and the book has a million elements."""
        return j

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        if tag not in VOID:
            self.open.append(tag)
        if tag == "html":
            self.page.language = given.get("lang", "")
        if tag == "h1":
            self.page.first_headings.append("")
        if given.get("id"):
            self.page.ids.append(given["id"])
        for name, value in given.items():
            if (tag, name) in ADDRESS_ATTRIBUTES:
                self.page.addresses.append(Address(tag, value, given.get("rel", "")))
        self.page.loose.extend(loose(tag, given))

    def handle_endtag(self, tag: str) -> None:
        if tag in self.open:
            while self.open.pop() != tag:
                pass

    def handle_data(self, data: str) -> None:
        if "script" in self.open or "style" in self.open:
            return
        if "title" in self.open and "svg" not in self.open:
            self.page.title += data
        if "h1" in self.open and self.page.first_headings:
            self.page.first_headings[-1] += data
        if "footer" in self.open:
            self.page.footer += data
        self.page.text += data


def loose(tag: str, given: dict[str, str]) -> Iterator[str]:
    """What of an element runs or paints without a file of its own, or sends the reader elsewhere; a policy would have to let it in."""
    if tag == "script" and "src" not in given and given.get("type") != "application/json":
        yield "a script of its own"
    if tag in ("style", "base", "iframe", "object", "embed") or given.get("http-equiv", "").casefold() == "refresh":
        yield f"an element {tag}"
    for name, value in given.items():
        if name == "style" or name.startswith("on") or value.lstrip()[:11].casefold() == "javascript:" or not NAME.fullmatch(name):
            yield f"{tag} {name}={value[:80]}"


def loose_in(file: Path) -> list[str]:
    """What stands loose in one page, in words."""
    page = BuiltPage(file.name)
    reader = _Reader(page)
    reader.feed(file.read_text(encoding="utf-8"))
    reader.close()
    return page.loose


@lru_cache(maxsize=2)
def built_pages(site: Path) -> dict[str, BuiltPage]:
    """Every HTML page of a built site by its path, '404.html' apart: a server shows that one, and from any folder.

    Read once however many processes ask: the first leaves what it read beside the site, which nobody changes.
    """
    kept = site.parent / f"{site.name}.pages"
    with kept.with_suffix(".lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not kept.exists():
            kept.write_bytes(pickle.dumps(_read(site)))
        return pickle.loads(kept.read_bytes())


def _read(site: Path) -> dict[str, BuiltPage]:
    pages = {}
    for file in sorted(site.rglob("*.html")):
        path = file.relative_to(site).as_posix()
        if path != "404.html":
            pages[path] = BuiltPage(path)
            reader = _Reader(pages[path])
            reader.feed(file.read_text(encoding="utf-8"))
            reader.close()
    return pages
