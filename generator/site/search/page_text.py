"""A page as search reads it: headings and sentences, without marks of sources, forms and drawings."""

import re
from dataclasses import dataclass

from selectolax.lexbor import LexborNode

from generator.site.page_tree import TEXT, PageTree

# A calendar of twelve printed months would fill search with months, and a calculator opened on many pages with its fields: what is
# marked `data-search-exclude` is passed by.
PASSED = ", ".join((
    "[data-search-exclude]", "script", "style", "svg", "math", "select", "textarea", "button", "template", "noscript",
    ".sb-source-marks", ".sb-hidden", ".headerlink",
))  # fmt: skip
# What is explained by what follows: the two are one sentence, for neither says anything alone.
TERMS = {"dt"}
TERM_CLASSES = {"sb-glossary__word"}
# What ends a run of text. Cells of a table row stay together: 'Mowing height' says nothing without its figure.
BLOCKS = {"p", "li", "ul", "ol", "tr", "table", "dt", "dd", "div", "section", "details", "summary", "figcaption", "caption", "label", "legend", "fieldset", "form"}
HEADINGS = {"h2", "h3", "h4"}
# What parts two words that stand on either side of it.
APART = {"td", "th", "br", "img", "input", "hr", "wbr"}
# A run that is little else than links leads on and says nothing itself.
MOSTLY = 0.6
_SENTENCE_END = re.compile(r"(?<=[.!?])\s+(?=[A-Z0-9“\"'])")


@dataclass(frozen=True)
class Reading:
    """headings: of the parts of a page. sentences: all else it says, in order, each once."""

    headings: tuple[str, ...]
    sentences: tuple[str, ...]


def read(page: PageTree) -> Reading:
    reader = _Reader()
    for node, begins in page.walk(PASSED):
        tag = node.tag or ""
        if tag == TEXT:
            reader.text(node.text_content or "")
        elif begins:
            reader.begin(tag, node)
        else:
            reader.end(tag)
    reader.end_run()
    return Reading(tuple(dict.fromkeys(reader.headings)), tuple(dict.fromkeys(reader.sentences)))


class _Reader:
    def __init__(self) -> None:
        self.headings: list[str] = []
        self.sentences: list[str] = []
        self._run: list[str] = []
        self._title = False
        self._in_link = 0
        self._linked = 0
        self._is_term = False
        self._term = ""

    def begin(self, tag: str, node: LexborNode) -> None:
        if tag in BLOCKS or tag in HEADINGS or tag == "h1":
            self.end_run()
            self._title = tag == "h1"
            self._is_term = tag in TERMS or bool(TERM_CLASSES & set((node.attributes.get("class") or "").split()))
        elif tag in APART:
            self._run.append(" ")
        elif tag == "a":
            self._in_link += 1

    def end(self, tag: str) -> None:
        if self._is_term and (tag in TERMS or tag in HEADINGS):
            self._term, self._is_term, self._run = " ".join("".join(self._run).split()), False, []
        elif tag in HEADINGS:
            self.end_run(self.headings)
        elif tag == "h1":
            self._run, self._title = [], False
        elif tag in BLOCKS:
            self.end_run()
        elif tag in APART:
            self._run.append(" ")
        elif tag == "a":
            self._in_link -= 1

    def text(self, text: str) -> None:
        self._run.append(text)
        self._linked += len(text.strip()) if self._in_link else 0

    def end_run(self, to: list[str] | None = None) -> None:
        text = " ".join("".join(self._run).split())
        linked, self._run, self._linked = self._linked, [], 0
        if not text or self._title:
            return
        if to is None and linked > MOSTLY * len(text):
            return
        if to is None:
            text, self._term = f"{self._term}: {text}" if self._term else text, ""
            self.sentences += _SENTENCE_END.split(text)
        else:
            to.append(text)
