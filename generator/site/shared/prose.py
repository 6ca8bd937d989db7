"""Texts that quote the book's figures: as pieces for a template, as plain text, and the list of what they quote."""

from collections.abc import Callable, Iterable
from typing import Any

from generator.book.fields.sourced import Claim, Sourced
from generator.site.page_context import PageContext
from generator.words.figures import claim_words
from generator.words.quoted_figures import Placeholder, Quote, pieces, quote

# Units that a sentence spells out: one, many.
_SPELT = {"h": ("hour", "hours"), "min": ("minute", "minutes"), "/m2": ("a square metre", "a square metre")}
Words = dict[str, str | None]


class Prose:
    """The texts of one page, with the figures that they quote put in from the records."""

    def __init__(self, here: PageContext):
        self._desk = here
        self._quoted: dict[str, Quote] = {}

    def pieces(self, text: str) -> list[dict[str, Any]]:
        """Plain stretches {'text', 'quantity': None} and figures {'text': None, 'quantity': both systems}, in order."""
        return [self._piece(piece) for piece in pieces(text)]

    def plain(self, text: str) -> str:
        """The same as one text, a figure in metric units and in US units in brackets."""
        found = (self._piece(piece) for piece in pieces(text))
        return "".join(piece["text"] if piece["quantity"] is None else _both(piece["quantity"]) for piece in found)

    def sentence(self, said: Sourced, text: str) -> dict[str, Any]:
        """A sourced text: its pieces, the marks of its own sources, and its note."""
        return {"pieces": self.pieces(text), "marks": self._desk.sourcing.marks(said), "note": said.note}

    def sentences(self, statements: Iterable[Any]) -> list[dict[str, Any]]:
        return [self.sentence(each, each.text) for each in statements]

    def quoted(self) -> list[dict[str, Any]]:
        """What has been quoted so far, each figure once: its name, where it stands, its words, its sources and note."""
        return [self._row(found, found.claim) for found in self._quoted.values() if found.claim is not None]

    def _piece(self, piece: str | Placeholder) -> dict[str, Any]:
        if isinstance(piece, str):
            return {"text": piece, "quantity": None}
        found = quote(piece.expression, self._desk.shelf)  # type: ignore[arg-type]  # Its protocol says that the fields may be set.
        self._quoted.setdefault(found.label, found)
        if found.claim is None or found.words is not None:
            return {"text": found.words, "quantity": None}
        return {"text": None, "quantity": spelt(found.claim)}

    def _row(self, found: Quote, claim: Claim) -> dict[str, Any]:
        return {
            "label": found.label, "url": self._home(found), "quantity": spelt(claim), "marks": self._desk.sourcing.marks(claim),
            "note": claim.note,
        }

    def _home(self, found: Quote) -> str | None:
        links = self._desk.links
        pages: dict[str, Callable[[str], str]] = {
            "tasks": links.task, "grasses": links.grass, "calculators": links.calculator,
            "renovations": lambda id: links.to(f"plans/{id}"), "inspection": links.to, "problems": links.problem,
        }
        return pages[found.kind](found.id) if found.kind in pages else None


def spelt(claim: Claim) -> Words:
    """A figure as a sentence says it: {'metric': '24 hours', 'us': None}."""
    words = claim_words(claim)
    if claim.unit in _SPELT:
        one, many = _SPELT[claim.unit]
        number = (words["metric"] or "").removesuffix(f" {claim.unit}")
        return {"metric": f"{number} {one if number == '1' else many}", "us": None}
    return words


def _both(words: Words) -> str:
    return f"{words['metric']} ({words['us']})" if words["us"] and words["us"] != words["metric"] else str(words["metric"])
