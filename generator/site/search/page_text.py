"""A page as search reads it: headings and sentences, without marks of sources, forms and drawings."""

import re
from dataclasses import dataclass
from html.parser import HTMLParser

SKIPPED_TAGS = {"script", "style", "svg", "math", "select", "textarea", "button", "template", "noscript"}
# What is explained by what follows: the two are one sentence, for neither says anything alone.
TERMS = {"dt"}
TERM_CLASSES = {"sb-glossary__word"}
SKIPPED_CLASSES = {"sb-source-marks", "sb-hidden", "headerlink"}
# What ends a run of text. Cells of a table row stay together: 'Mowing height' says nothing without its figure.
BLOCKS = {"p", "li", "ul", "ol", "tr", "table", "dt", "dd", "div", "section", "details", "summary", "figcaption", "caption", "label", "legend", "fieldset", "form"}
HEADINGS = {"h2", "h3", "h4"}
CELLS = {"td", "th"}
# A run that is little else than links leads on and says nothing itself.
MOSTLY = 0.6
EMPTY = {"br", "img", "input", "hr", "meta", "link", "col", "wbr", "source"}
# What is skipped anyway and never stands in itself: half of a page with charts. Taken out first, the rest is read in half the time.
_DRAWN = re.compile(r"<(svg|select|math)\b.*?</\1>", re.DOTALL)
_SENTENCE_END = re.compile(r"(?<=[.!?])\s+(?=[A-Z0-9“\"'])")


@dataclass(frozen=True)
class Reading:
    """headings: of the parts of a page. sentences: all else it says, in order, each once."""

    headings: tuple[str, ...]
    sentences: tuple[str, ...]


def read(html: str) -> Reading:
    """html: as our own templates and Python-Markdown write it."""
    reader = _Reader()
    reader.feed(_DRAWN.sub("", html))
    reader.close()
    reader.end_run()
    return Reading(tuple(dict.fromkeys(reader.headings)), tuple(dict.fromkeys(reader.sentences)))


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.headings: list[str] = []
        self.sentences: list[str] = []
        self._run: list[str] = []
        self._skipping = 0
        self._title = False
        self._in_link = 0
        self._linked = 0
        self._is_term = False
        self._term = ""

    def updatepos(self, i: int, j: int) -> int:
        """Nobody asks for lines and columns."""
        return j

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        classes = set((dict(attrs).get("class") or "").split())
        if tag in EMPTY:
            self._run.append(" ")
        elif self._skipping:
            self._skipping += 1
        elif tag in SKIPPED_TAGS or SKIPPED_CLASSES & classes:
            self._skipping = 1
        elif tag in BLOCKS or tag in HEADINGS or tag == "h1":
            self.end_run()
            self._title = tag == "h1"
            self._is_term = tag in TERMS or bool(TERM_CLASSES & classes)
        elif tag in CELLS:
            self._run.append(" ")
        elif tag == "a":
            self._in_link += 1

    def handle_endtag(self, tag: str) -> None:
        if tag in EMPTY:
            return
        if self._skipping:
            self._skipping -= 1
        elif self._is_term and (tag in TERMS or tag in HEADINGS):
            self._term, self._is_term, self._run = " ".join("".join(self._run).split()), False, []
        elif tag in HEADINGS:
            self.end_run(self.headings)
        elif tag == "h1":
            self._run, self._title = [], False
        elif tag in BLOCKS:
            self.end_run()
        elif tag in CELLS:
            self._run.append(" ")
        elif tag == "a":
            self._in_link -= 1

    def handle_data(self, data: str) -> None:
        if not self._skipping:
            self._run.append(data)
            self._linked += len(data.strip()) if self._in_link else 0

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
