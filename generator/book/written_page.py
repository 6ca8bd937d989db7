"""A page written by hand in content/: what its head says of it, and what lies beside it."""

import re
from collections.abc import Iterator
from difflib import get_close_matches
from pathlib import Path
from posixpath import dirname, join, normpath

from pydantic import BaseModel, ConfigDict

from generator.book.fields.characters import UNSEEN
from generator.book.fields.texts import Sentence, Title, Word
from generator.book.loading.disk import finding_of, walked
from generator.book.loading.load import checked, read_text
from generator.book.loading.marked_yaml import Node, read_tree
from generator.book.loading.text_slips import merge_marks
from generator.findings import Finding, first_told, shown

# As MkDocs knows the head of a page: between two lines of hyphens, at its very beginning.
PRIVATE = "private"  # What a head says of a page that clients do not get; and the folder of which they get nothing.
_HEAD = re.compile(r"---[ \t]*\n(.*?\n)(?:---|\.\.\.)[ \t]*\n", re.DOTALL)

_PAGE_LINK = re.compile(r"(?<![\w/:.-])[\w./-]+\.md\b")


class Head(BaseModel):
    """The keys that this book shows or searches; MkDocs knows others."""

    model_config = ConfigDict(extra="ignore")

    title: Title | None = None
    description: Sentence | None = None
    words: tuple[Word, ...] | None = None
    private: bool = False


def linked_pages(path: str, text: str) -> set[str]:
    """Pages that a page written by hand may link to, as paths from content/: whatever in it looks like one."""
    return {normpath(join(dirname(path), each)) for each in _PAGE_LINK.findall(text)}


def content_findings(root: Path, folder: Path) -> list[Finding]:
    """What is wrong with the folder of pages written by hand, and with their heads. Nothing is read that is no file of the book."""
    name = shown(folder.relative_to(root)) if folder.is_relative_to(root) else shown(folder)
    if not folder.exists() and not folder.is_symlink():
        return []  # MkDocs says so.
    if wrong := finding_of(folder, root, name):
        return [wrong]
    findings = []
    for file, path, wrong in walked(folder, name, folder):
        if wrong is not None:
            findings.append(wrong)
        elif file.suffix.lower() in (".md", ".markdown"):
            findings += _page_findings(file, path)
    return list(first_told(findings))


def _page_findings(file: Path, path: str) -> list[Finding]:
    text, findings = read_text(file, path, UNSEEN)
    if text is None:
        return findings
    if marks := merge_marks(text, path):
        return marks
    head = _HEAD.match(text)
    tree, findings = read_tree(f"\n{head[1]}", path) if head else (None, [])
    if tree is None:
        return findings
    return [*findings, *checked(tree, Head)[1], *_nearly_private(tree)]


def _nearly_private(tree: Node) -> Iterator[Finding]:
    """A key that MkDocs would pass over in silence, and clients would read the page."""
    for key, _ in tree.entries() if tree.kind == "map" else ():
        if key != PRIVATE and get_close_matches(key.casefold(), [PRIVATE], cutoff=0.8):
            yield Finding(tree.keys[key], f"unknown key '{shown(key)}'", f"did you mean '{PRIVATE}'?")
