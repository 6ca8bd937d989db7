"""The two sites that one book makes: the practice's own, and the one that its clients get; and the book as each of them is told it.

This is the one place that asks what is private. The site for clients is made from a book that does not hold it (`told_to`), so no page,
script or file can give it away; which pages, parts and files stand in it is said where each of them is described.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Any, Literal, TypeVar, get_args

from pydantic import BaseModel

from generator.book.book import TERMS, Book
from generator.book.fields.private import ALSO, Opened, opened_by
from generator.book.records.practice import Machine, Practice, PricedOperation, Product
from generator.findings import Finding

Audience = Literal["practice", "clients"]
AUDIENCES: tuple[Audience, ...] = get_args(Audience)
# Kinds and files of the data that go with a part of the site, by each of their names: clients get them where that part is open.
OF_DATA: dict[str, Opened] = {
    "calculators": "calculators", "renovations": "plans", "plans": "plans", "steps": "plans", "holds": "holds", "inspection": "inspection", "record": "record",
}
# The lists in records that lead to pages of a part, by the word that opens it; and the kinds that have them.
_LEADING_TO: dict[Opened, tuple[str, ...]] = {"calculators": ("calculators", "quantities"), "plans": ("plans",)}
_LEADING = ("tasks", "steps", "renovations", "problems", "answers")
_QUOTED = re.compile(r"\{\s*practice\.([^{}]*)\}")
_GONE = object()
SomeRecord = TypeVar("SomeRecord", bound=BaseModel)


class Unsaid(Exception):
    """A text that has to stand in the site for clients says nothing but what is private. finding: where, and what would be right."""

    def __init__(self, finding: Finding) -> None:
        super().__init__(str(finding))
        self.finding = finding


@dataclass(frozen=True)
class Edition:
    """audience: whose site it is. opened: what the practice lets clients see beside what they always see."""

    audience: Audience = "practice"
    opened: frozenset[Opened] = frozenset()

    @property
    def for_clients(self) -> bool:
        return self.audience == "clients"

    def has(self, word: Opened | None) -> bool:
        """Whether what this word opens stands in this site; None: what nobody hides."""
        return not self.for_clients or word is None or word in self.opened

    def either(self, practice: str, clients: str) -> str:
        """A sentence that speaks to the practice in its own site, and to clients in theirs."""
        return clients if self.for_clients else practice

    def publishes(self, data: str) -> bool:
        """Whether a kind or a single file of the data stands in it as data."""
        return self.has(OF_DATA.get(data))


OWN = Edition()


def edition_for(audience: Audience, practice: Practice) -> Edition:
    opened = {also for word in practice.public for also in (word, *ALSO.get(word, ()))}
    return Edition(audience, frozenset(opened))


def told_to(edition: Edition, book: Book) -> Book:
    """The book without the values that this edition does not tell, and without the texts that quote one.

    Raises Unsaid where nothing would be left of a text that has to be there.
    """
    if not edition.for_clients:
        return book
    hidden = _hidden_fields(edition)
    glossary = book.glossary and book.glossary.model_copy(update={TERMS: _texts(book, "glossary", book.of(TERMS), hidden)})
    return replace(
        book, practice=_without_private(book.practice, edition), glossary=glossary,
        answers=_texts(book, "answers", book.answers, hidden), problems=_texts(book, "problems", book.problems, hidden),
    )


def without_parts(edition: Edition, book: Book) -> Book:
    """The same book without what only parts go by that do not stand in this edition, so that no page offers them.

    A calculator in an aftercare sheet stays, for it tells a client how long to water; and the one that a work record adds up with.
    """
    left: dict[str, Any] = {"holds": {}, "inspection": None, "record": None}
    gone = {name: nothing for name, nothing in left.items() if not edition.publishes(name)}
    fields = frozenset(field for word, fields in _LEADING_TO.items() if not edition.has(word) for field in fields)
    if fields:
        gone |= {kind: {id: _without_fields(record, fields) for id, record in book.of(kind).items()} for kind in _LEADING}
        gone["glossary"] = _without_fields(book.glossary, fields)
    if not edition.has("calculators"):
        used = {quantity.calculator for sheet in book.aftercare.values() for days in sheet.days for quantity in days.quantities}
        used |= {book.record.nitrogen_by} if book.record is not None and edition.publishes("record") else set()
        gone["calculators"] = {id: calculator for id, calculator in book.calculators.items() if id in used}
    return replace(book, **gone) if gone else book


def _without_fields(value: Any, names: frozenset[str]) -> Any:
    """A value in whose records the lists of these names are empty."""
    if isinstance(value, tuple):
        return _same_or(value, tuple(_without_fields(each, names) for each in value))
    if isinstance(value, Mapping):
        return {key: _without_fields(each, names) for key, each in value.items()}
    if not isinstance(value, BaseModel):
        return value
    here = {name: () if name in names else _without_fields(getattr(value, name), names) for name in type(value).model_fields}
    changed = {name: each for name, each in here.items() if each is not getattr(value, name)}
    return value.model_copy(update=changed) if changed else value


def _without_private(record: SomeRecord, edition: Edition) -> SomeRecord:
    kept: dict[str, Any] = {}
    for name, field in type(record).model_fields.items():
        value = getattr(record, name)
        if not edition.has(opened_by(field)):
            kept[name] = field.get_default(call_default_factory=True)
        elif isinstance(value, BaseModel):
            kept[name] = _without_private(value, edition)
        elif isinstance(value, Mapping):
            told = {key: _without_private(each, edition) if isinstance(each, BaseModel) else each for key, each in value.items()}
            kept[name] = {key: each for key, each in told.items() if each == value[key] or _says_something(each)}
    return record.model_copy(update=kept)


def _says_something(record: BaseModel) -> bool:
    return any(getattr(record, name) != field.get_default(call_default_factory=True) for name, field in type(record).model_fields.items())


def _hidden_fields(edition: Edition) -> frozenset[str]:
    return frozenset(
        name for kind in (Practice, Product, Machine, PricedOperation) for name, field in kind.model_fields.items() if not edition.has(opened_by(field))
    )


def _texts(book: Book, kind: str, records: Mapping[str, Any], hidden: frozenset[str]) -> dict[str, Any]:
    said = {id: _unquoting(record, hidden) for id, record in records.items()}
    for id, record in said.items():
        if record is _GONE:
            where = book.where(kind, *((kind, TERMS, id) if kind == "glossary" else (id,)))
            raise Unsaid(Finding(
                where, "what it has to say quotes what clients are not shown", "say it without, or name the word that opens it under 'public' in practice.yml",
            ))
    return said


def _unquoting(value: Any, hidden: frozenset[str]) -> Any:
    """A value without the texts that quote a hidden field; _GONE where nothing is left that may stand there.

    A text goes as a whole: the sentence behind one that is gone would lean on nothing.
    """
    if isinstance(value, str):
        return _GONE if any(_quotes(found, hidden) for found in _QUOTED.findall(value)) else value
    if isinstance(value, tuple):
        return _same_or(value, tuple(each for each in (_unquoting(one, hidden) for one in value) if each is not _GONE))
    if isinstance(value, Mapping):
        return {key: each for key, one in value.items() if (each := _unquoting(one, hidden)) is not _GONE}
    return _record(value, hidden) if isinstance(value, BaseModel) else value


def _record(record: BaseModel, hidden: frozenset[str]) -> Any:
    changed: dict[str, Any] = {}
    for name, field in type(record).model_fields.items():
        value = getattr(record, name)
        said = _unquoting(value, hidden)
        if said is _GONE and field.is_required():
            return _GONE
        if said is not value:
            changed[name] = field.get_default(call_default_factory=True) if said is _GONE else said
    return record.model_copy(update=changed) if changed else record


def _quotes(expression: str, hidden: Iterable[str]) -> bool:
    return not set(hidden).isdisjoint(expression.strip().split("."))


def _same_or(before: tuple[Any, ...], after: tuple[Any, ...]) -> tuple[Any, ...]:
    """The same tuple where nothing of it changed."""
    return before if len(before) == len(after) and all(one is other for one, other in zip(before, after, strict=True)) else after
