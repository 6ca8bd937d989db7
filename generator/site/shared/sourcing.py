"""Every figure says where it comes from: marks, statements and figures as plain values, and what a page says once at its foot."""

from collections import Counter
from collections.abc import Iterable
from typing import Any, Protocol

from generator.book.fields.sourced import ASSUMPTION, COMMON_PRACTICE, OURS, Claim, Figure, Statement
from generator.book.records import Source
from generator.site.page import Links
from generator.words.figures import claim_words, default_words

Marks = list[dict[str, Any]]
# What rests on no publication, by the kind of its mark.
KINDS = {COMMON_PRACTICE: "practice", ASSUMPTION: "assumption", OURS: "ours"}
# A reader of the trade meets these beside what they are true of. The rest is said once, at the foot.
IN_TEXT = {"published", "assumption"}


class HasSources(Protocol):
    """Whatever says where it comes from."""

    @property
    def sources(self) -> tuple[str, ...]: ...


class Sourcing:
    """Turns sourced records into values that name their sources, for one page, and remembers which it was asked for.

    for_clients: whether the page is written for a client, who gets no mark in the text.
    """

    def __init__(self, sources: dict[str, Source], links: Links, for_clients: bool = False):
        self._sources = sources
        self._links = links
        self._in_text = frozenset() if for_clients else IN_TEXT
        self._met: dict[str, dict[str, Any]] = {}

    def marks(self, sourced: HasSources) -> dict[str, Marks]:
        return self.marks_of(sourced.sources)

    def marks_of(self, sources: Iterable[str]) -> dict[str, Marks]:
        made = {id: self._mark(id) for id in sources}
        self._met |= made
        return {"marks": _told_apart([mark for mark in made.values() if mark["kind"] in self._in_text])}

    def _mark(self, id: str) -> dict[str, Any]:
        if id in KINDS:
            return {"kind": KINDS[id], "label": id, "url": None}
        return {"kind": "published", "label": self._sources[id].label, "url": self._links.source(id)}

    def foot(self) -> dict[str, Any] | None:
        """What the page says once below its text, of all that it was asked for; None where every sentence has its mark.

        listed: published sources that have no mark in the text. unmarked: kinds of what has none. marked: whether anything has one.
        """
        silent = [mark for mark in self._met.values() if mark["kind"] not in self._in_text]
        if not silent:
            return None
        return {
            "listed": _told_apart([mark for mark in silent if mark["kind"] == "published"]),
            "unmarked": {mark["kind"] for mark in silent} - {"published"}, "marked": len(silent) < len(self._met),
            "sources_url": self._links.to("sources"),
        }

    def statement(self, statement: Statement) -> dict[str, Any]:
        return {"text": statement.text, "note": statement.note, "marks": self.marks(statement)}

    def statements(self, statements: Iterable[Statement]) -> list[dict[str, Any]]:
        return [self.statement(each) for each in statements]

    def claim(self, claim: Claim) -> dict[str, Any]:
        return {"quantity": claim_words(claim), "taken": None, "text": None, "note": claim.note, "marks": self.marks(claim)}

    def figure(self, label: str, figure: Figure) -> dict[str, Any]:
        """A row of the facts component; `taken` is the number that calculators take, when the range leaves it open."""
        row = {"label": label, **self.claim(figure), "because": figure.because}
        row["others"] = [self.claim(other) for other in figure.others]
        if figure.use is not None and figure.lowest != figure.highest:
            row["taken"] = default_words(figure)
        return row


def _told_apart(marks: Marks) -> Marks:
    """Side by side, sources of the same short name: 'UC IPM', 'UC IPM (2)'."""
    count: Counter[str] = Counter()
    apart = []
    for mark in marks:
        count[mark["label"]] += 1
        number = count[mark["label"]]
        apart.append(mark if number == 1 else {**mark, "label": f"{mark['label']} ({number})"})
    return apart
