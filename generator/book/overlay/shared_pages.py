"""The shared pages written by hand, as a book over the shared knowledge shows them: without what it does not have."""

import re
from collections.abc import Collection

from generator.book.book import PartialBook
from generator.book.overlay.knowledge import knowledge_folder
from generator.book.overlay.mentions import Unspoken

CONTENT = "content"

_LINK = re.compile(r"\[([^\]]*)\]\(([^)#\s]+\.md)(#[^)\s]*)?\)")
_HEADING = re.compile(r"(#+) ")
_ITEM = re.compile(r"\s*([-*+]|\d+\.) |\||<!--|:?-{3}")


def shared_pages(book: PartialBook, own: Collection[str]) -> dict[str, str]:
    """Path to text of each shared page that the book has no page of its own for; none where it stands alone. own: paths of the book's own."""
    if book.practice is None or not book.practice.shared_knowledge:
        return {}
    folder = knowledge_folder() / CONTENT
    files = {file.relative_to(folder).as_posix(): file for file in sorted(folder.rglob("*.md"))}
    return {path: without_words(file.read_text(encoding="utf-8"), book.unsaid) for path, file in files.items() if path not in own}


def without_words(text: str, said: Unspoken | None) -> str:
    """A page in Markdown without what speaks of something that is not in the book: sentences, items, rows, and a heading with its section."""
    if said is None:
        return text
    kept: list[str] = []
    dropped: int | None = None  # The level of a heading that is gone.
    for block in _blocks(text):
        heading = _HEADING.match(block)
        if dropped is not None and not (heading and len(heading[1]) <= dropped):
            continue
        dropped = None
        if heading and said.in_text(block):
            dropped = len(heading[1])
        elif heading or block.startswith(("---", "```", "    ")) or not said.in_text(block):
            kept.append(block)
        elif _ITEM.match(block):
            continue
        elif left := said.without(" ".join(block.split("\n"))):
            kept.append(left)
    return "\n".join(kept) + "\n"


def without_dead_links(text: str, there: Collection[str]) -> str:
    """The same with the words of a link in its place, where the book has no such page."""
    return _LINK.sub(lambda link: link[0] if link[2] in there else link[1], text)


def _blocks(text: str) -> list[str]:
    """The lines of a page, those of one paragraph together. What stands in a head between two lines of hyphens stays one block."""
    blocks: list[str] = []
    lines = text.split("\n")
    if lines[0] == "---" and "---" in lines[1:]:
        end = lines.index("---", 1)
        blocks.append("\n".join(lines[: end + 1]))
        lines = lines[end + 1 :]
    joined = False
    for line in lines:
        alone = not line.strip() or _HEADING.match(line) or line.startswith(("```", "    ", "|", "<!--"))
        if joined and not alone and not _ITEM.match(line):
            blocks[-1] += f"\n{line}"
        else:
            blocks.append(line)
        joined = not alone
    return blocks
