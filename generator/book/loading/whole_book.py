"""A folder into a book: every record, references resolved, or everything that is wrong with it."""

from collections.abc import Iterable, Iterator
from pathlib import Path
from types import MappingProxyType
from typing import Any, NamedTuple

from generator.book.book import OF_PRACTICE, TERMS, Book, PartialBook
from generator.book.daily.observed_file import read_observed
from generator.book.loading.folders import SINGLES, TABLES
from generator.book.loading.layers import PRACTICE, Layer, read_layers
from generator.book.loading.load import checked
from generator.book.loading.marked_yaml import Node
from generator.book.overlay.choosing import InBook, choose
from generator.book.overlay.mentions import Unspoken
from generator.book.records import KINDS, MAY_BE_MISSING, SINGULAR
from generator.book.references import Named, named_by
from generator.book.shared_figures import SEASON_RULES, with_figures
from generator.findings import Finding, Where, first_told, shown, suggestion

# Single file -> the kinds whose ids stand in it: when it cannot be read, no such id can be called unknown.
COUNTRIES, SOURCES = "countries", "sources"
_TABLES = tuple(file.removesuffix(".yml") for file in TABLES)
_HOLDERS = {**{table: (table,) for table in _TABLES}, "practice": OF_PRACTICE, "glossary": (TERMS,)}


class Loaded(NamedTuple):
    """book: the whole book, or None when anything in it is wrong. findings: sorted by file and line."""

    book: Book | None
    findings: list[Finding]


def read_book(root: Path, this_year: int | None = None, knowledge: Path | None = None) -> tuple[PartialBook, list[Finding]]:
    """As much of a book as can be read, with everything that is wrong: what the checks go on from.

    this_year: the year that it is read in; None where nobody asks what is still to come. knowledge: another folder of shared knowledge than
    the one that is installed.
    """
    reading = _Reading(Path(root), this_year)
    reading.read(knowledge)
    reading.choose()
    reading.share_figures()
    reading.share_steps()
    book = reading.book()
    return book, sorted([*reading.findings, *_unresolved(book)])


class _Reading:
    """A book while its files are being read."""

    def __init__(self, root: Path, this_year: int | None) -> None:
        self.root, self.this_year = root, this_year
        self.parts: dict[str, Any] = {kind: {} for kind in (*KINDS, *_TABLES)}
        self.trees: dict[tuple[str, str], Node] = {}
        self.broken: set[tuple[str, str]] = set()
        self.findings: list[Finding] = []
        self.left_out: frozenset[tuple[str, str]] = frozenset()
        self.unsaid: Unspoken | None = None

    def read(self, knowledge: Path | None) -> None:
        layer, findings = read_layers(self.root, knowledge)
        self.findings.extend(findings)
        self.broken.update(layer.unread)
        for (kind, id), tree in layer.records.items():
            record = self._checked((kind, id), tree, KINDS[kind], layer)
            if record is None:
                self.broken.add((kind, id))
            else:
                self.parts[kind][id] = record
                self.trees[kind, id] = tree
        there = {name for name, other in layer.unread if name == other} | layer.singles.keys()
        self.broken.update((kind, "*") for name, kinds in _HOLDERS.items() for kind in kinds if name in there or f"{name}.yml" not in MAY_BE_MISSING)
        for name, tree in layer.singles.items():
            record = self._checked((name, name), tree, SINGLES[f"{name}.yml"], layer)
            if name in _TABLES and tree.kind == "map":
                self._learn_table(name, record, tree)
            elif record is not None:
                self.parts[name.replace("-", "_")] = record
                self.trees[name, name] = tree
                self.broken.difference_update((kind, "*") for kind in _HOLDERS.get(name, ()))

    def _checked(self, place: tuple[str, str], tree: Node, hint: Any, layer: Layer) -> Any:
        record, findings = checked(tree, hint)
        self.findings.extend(findings)
        return None if place in layer.faulty else record

    def choose(self) -> None:
        """Only what the practice chose, and what holds without the rest."""
        practice = self.parts.get("practice")
        if practice is None or not (practice.shared_knowledge or practice.grasses or practice.plans or practice.without):
            return
        kept = {place: InBook(tree, self._hint(*place), self._record(*place)) for place, tree in self.trees.items() if place[0] not in _TABLES}
        cited = _cited(kept.values())
        choice = choose(kept, practice, self.trees[PRACTICE, PRACTICE])
        for id in cited - _cited(kept.values()):
            if id in self.parts[SOURCES] and choice.may_cut(self.trees[SOURCES, id]):
                del self.parts[SOURCES][id], self.trees[SOURCES, id]
        self.findings.extend(choice.findings)
        self.left_out, self.unsaid = choice.left_out, choice.said
        for kind, id in choice.left_out:
            del self.parts[kind][id], self.trees[kind, id]
        for (kind, id), each in kept.items():
            self.trees[kind, id] = each.tree
            if kind == id:
                self.parts[kind.replace("-", "_")] = each.record
            else:
                self.parts[kind][id] = each.record

    def _hint(self, kind: str, id: str) -> Any:
        return SINGLES[f"{id}.yml"] if kind == id else KINDS[kind]

    def _record(self, kind: str, id: str) -> Any:
        return self.parts[kind.replace("-", "_")] if kind == id else self.parts[kind][id]

    def share_figures(self) -> None:
        for kind in ("calculators", "holds"):
            for id, user in self.parts[kind].items():
                self.parts[kind][id] = self._with_figures(user, (kind, id))
        if "inspection" in self.parts:
            self.parts["inspection"] = self._with_figures(self.parts["inspection"], ("inspection", "inspection"))

    def _with_figures(self, user: Any, place: tuple[str, str]) -> Any:
        groups = self.parts.get("season_groups")
        whole, unknown = with_figures(user, self.parts["tasks"], groups.rules.by_name if groups else {})
        self.findings.extend(
            Finding(self.trees[place].children["figures"].children[each.name].where, each.what, each.instead) for each in unknown
            if not self._is_broken(user.figures[each.name].partition(".")[0])
        )
        return whole

    def _is_broken(self, home: str) -> bool:
        """True for a task, or the season groups, that could not be read: its figures may well be there."""
        return ("tasks", home) in self.broken or (home == SEASON_RULES and "season_groups" not in self.parts)

    def share_steps(self) -> None:
        shared = self.parts["steps"]
        for id, plan in self.parts["renovations"].items():
            steps = tuple(step.with_shared(shared) for step in plan.steps)
            self.parts["renovations"][id] = plan.model_copy(update={"steps": steps})

    def book(self) -> PartialBook:
        whole: dict[str, Any] = {name: MappingProxyType(part) if isinstance(part, dict) else part for name, part in self.parts.items()}
        observed, findings = read_observed(self.root, [*self.parts["places"], *(id for kind, id in self.broken if kind == "places")])
        self.findings.extend(findings)
        return PartialBook(
            self.root, **whole, trees=self.trees, broken=frozenset(self.broken), left_out=self.left_out, unsaid=self.unsaid, this_year=self.this_year,
            observed=MappingProxyType(observed),
        )

    def _learn_table(self, table: str, record: dict[str, Any] | None, tree: Node) -> None:
        """Which sources or countries there are can be told even when one of them is wrong."""
        self.parts[table] = record or {}
        self.broken.discard((table, "*"))
        for id, node in tree.entries():
            self.trees[table, id] = node
            if record is None:
                self.broken.add((table, id))


def _cited(kept: Iterable[InBook]) -> set[str]:
    return {named.id for each in kept for named in named_by(each.record) if named.reference.kind == SOURCES}


def _unresolved(book: PartialBook) -> Iterator[Finding]:
    for kind, id, record in book.records():
        yield from first_told(_finding(book, book.where(kind, id, *named.path), named) for named in _unknown(book, kind, id, record))


def _unknown(book: PartialBook, kind: str, id: str, record: Any) -> Iterator[Named]:
    for named in named_by(record):
        # What comes from a shared step is told of in its own file.
        if named.id not in named.reference.also and not book.knows(named.reference.kind, named.id) and book.written(kind, id, *named.path):
            yield named


NAMES = {**SINGULAR, "aftercare": "aftercare sheet", "sources": "source", COUNTRIES: "country", "products": "product", "machines": "machine", TERMS: "word"}
_HOMES = {**{table: f"data/{table}.yml" for table in _TABLES}, TERMS: "data/glossary.yml", **{table: f"the {table} of data/practice.yml" for table in OF_PRACTICE}}


CHOSEN_IN = "data/practice.yml"


def _finding(book: PartialBook, where: Where, named: Named) -> Finding:
    kind, also = named.reference.kind, named.reference.also
    home = _HOMES.get(kind, f"data/{kind}")
    known = [*book.of(kind), *(id for of, id in book.broken if of == kind and id != "*")]
    if also:
        otherwise = f"add it to {home}, or write {' or '.join(repr(word) for word in also)}"
    elif known and len(known) <= 12:
        otherwise = f"the ones there are: {', '.join(known)}"
    else:
        home_of_it = home if kind in _HOMES else f"{home}/{shown(named.id)}.yml"
        otherwise = f"add {'it to ' if kind in _HOMES else ''}{home_of_it}, or take it out"
    if (kind, named.id) in book.left_out:
        return Finding(where, f"{NAMES[kind]} '{shown(named.id)}' is left out of this book", f"choose it in {CHOSEN_IN}, or take it out here")
    what = f"{NAMES[kind]} '{shown(named.id)}' is not in {home}"
    if kind == COUNTRIES:
        meant = _country_meant(book, named.id)
        return Finding(where, what, f"did you mean '{meant}'?" if meant else otherwise)
    return Finding(where, what, suggestion(named.id, [*known, *also], otherwise))


def _country_meant(book: PartialBook, said: str) -> str | None:
    """The code of a country that is written in three capitals or by its name. Codes of two letters are too alike to guess by."""
    by_name = {country.name.casefold(): code for code, country in book.countries.items()}
    return by_name.get(said.casefold()) or next((code for code in book.countries if said.upper()[:2] == code), None)
