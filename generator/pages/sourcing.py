"""Every figure says where it comes from: marks, statements and figures as plain values for templates."""

from collections.abc import Iterable
from typing import Any

from generator.model import Source
from generator.model.record import ASSUMPTION, COMMON_PRACTICE, Claim, Figure, Sourced, Statement
from generator.pages.page import Links
from generator.pages.quantity import claim_words, default_words

Marks = list[dict[str, Any]]


class Sourcing:
    """Turns sourced records into values that name their sources, for one page."""

    def __init__(self, sources: dict[str, Source], links: Links):
        self._sources = sources
        self._links = links

    def marks(self, sourced: Sourced) -> dict[str, Marks]:
        return self.marks_of(sourced.sources)

    def marks_of(self, sources: Iterable[str]) -> dict[str, Marks]:
        return {"marks": [self._mark(id) for id in sources]}

    def _mark(self, id: str) -> dict[str, Any]:
        if id == COMMON_PRACTICE:
            return {"kind": "practice", "label": "common practice", "url": None}
        if id == ASSUMPTION:
            return {"kind": "assumption", "label": "assumption", "url": None}
        return {"kind": "published", "label": self._sources[id].label, "url": self._links.source(id)}

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
