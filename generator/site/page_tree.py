"""The tree of a finished page, as a browser makes it: made once, and read by search and by the links into the glossary."""

from collections.abc import Iterator

from selectolax.lexbor import LexborHTMLParser, LexborNode

TEXT = "-text"  # What the library calls a text where an element has its tag.


class PageTree:
    """html: what stands between the head and the foot of a page, as our own templates and Python-Markdown write it."""

    def __init__(self, html: str) -> None:
        body = LexborHTMLParser(f"<!doctype html><body>{html}").body
        assert body is not None, "the parser makes a body of whatever it gets"
        self._body = body

    def walk(self, past: str) -> Iterator[tuple[LexborNode, bool]]:
        """Every text, and every element as it begins (True) and ends (False), in the order of the page.

        past: a selector of elements to be passed by whole. Without recursion: a page written by hand may nest as deep as it likes.
        """
        passed = {node.mem_id for node in self._body.css(past)}
        ahead = [(node, True) for node in self._body.iter(include_text=True)][::-1]
        while ahead:
            node, begins = ahead.pop()
            if node.mem_id not in passed:
                yield node, begins
                if begins and node.tag != TEXT:
                    ahead.append((node, False))
                    ahead += [(child, True) for child in node.iter(include_text=True)][::-1]

    def texts(self, past: str) -> Iterator[tuple[str, bool]]:
        """Every text in order, with True where it stands outside of all elements that the selector names."""
        outside = {node.mem_id for node, _ in self.walk(past)}
        for node in self._body.traverse(include_text=True):
            if node.tag == TEXT:
                yield node.text_content or "", node.mem_id in outside
