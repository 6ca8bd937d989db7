"""The whole book: every record by its id, references resolved, and the place of every value in its file."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from types import MappingProxyType
from typing import Any, NamedTuple

from generator.findings import Finding, Where, first_told, shown, suggestion
from generator.book.records import KINDS, MAY_BE_MISSING, SINGLE_FILES, SINGULAR
from generator.book.records.aftercare import Aftercare
from generator.book.records.answer import Answer
from generator.book.records.calculator import Calculator
from generator.book.loading.folders import record_files, single_files
from generator.book.records.glossary import Glossary
from generator.book.records.grass import Grass
from generator.book.records.hold import Hold
from generator.book.records.identification import Key
from generator.book.records.inspection import Inspection
from generator.book.loading.load import load_record
from generator.book.records.place import Place
from generator.book.records.practice import Practice, SeasonGroups
from generator.book.records.problem import Expert, Problem
from generator.book.references import KEY, Named, named_by
from generator.book.fields.sourced import Record
from generator.book.records.renovation import Renovation
from generator.book.records.step import SharedStep
from generator.book.records.retired import RetiredId
from generator.book.shared_figures import SEASON_RULES, with_figures
from generator.book.records.services import Services
from generator.book.records.source import Source
from generator.book.records.task import Caution, Task
from generator.book.loading.marked_yaml import Node
from generator.book.records.work_record import WorkRecord

OF_PRACTICE = ("products", "machines")  # Tables of practice.yml whose ids are named elsewhere.
TERMS = "terms"  # The table of glossary.yml.


@dataclass(frozen=True)
class Book:
    """Everything in data/, each kind as a dict by id, in the order of file names.

    root: the folder that holds mkdocs.yml, data/ and content/.
    practice, season_groups: the single files; None only in a book that did not load whole. inspection, record, key,
    glossary, services, retired: None where there is no such file.
    """

    root: Path
    practice: Practice | None = None
    season_groups: SeasonGroups | None = None
    inspection: Inspection | None = None
    record: WorkRecord | None = None
    key: Key | None = None
    glossary: Glossary | None = None
    services: Services | None = None
    retired: Record | None = None
    sources: dict[str, Source] = field(default_factory=dict)
    grasses: dict[str, Grass] = field(default_factory=dict)
    tasks: dict[str, Task] = field(default_factory=dict)
    cautions: dict[str, Caution] = field(default_factory=dict)
    places: dict[str, Place] = field(default_factory=dict)
    calculators: dict[str, Calculator] = field(default_factory=dict)
    holds: dict[str, Hold] = field(default_factory=dict)
    steps: dict[str, SharedStep] = field(default_factory=dict)
    renovations: dict[str, Renovation] = field(default_factory=dict)
    aftercare: dict[str, Aftercare] = field(default_factory=dict)
    problems: dict[str, Problem] = field(default_factory=dict)
    experts: dict[str, Expert] = field(default_factory=dict)
    answers: dict[str, Answer] = field(default_factory=dict)
    trees: dict[tuple[str, str], Node] = field(default_factory=dict, repr=False)
    broken: frozenset[tuple[str, str]] = field(default_factory=frozenset, repr=False)

    def where(self, kind: str, id: str, *path: str | int) -> Where:
        """Where a value stands: where('calculators', 'coring', 'results', 'holes', 'formula').

        For text in quotes it is the text's first character. A path that is not in the file (a default)
        gives its nearest ancestor; a path ending in '[key]' gives the key itself.
        For the single files: where('practice', 'practice', ...), where('season-groups', 'season-groups', ...).
        """
        node, place = self.trees[kind, id], None
        for step in path:
            if step == KEY:
                return place or node.where
            if step not in node.children:
                return node.first
            place = node.keys.get(step)
            node = node.children[step]
        return node.text or node.where

    def written(self, kind: str, id: str, *path: str | int) -> bool:
        """True when the file itself gives this value; False for a default and for what a plan takes from a shared step."""
        node = self.trees[kind, id]
        for step in path:
            if step == KEY:
                break
            if step not in node.children:
                return False
            node = node.children[step]
        return True

    def step_where(self, plan: str, position: int, *path: str | int) -> Where:
        """Where a value of a plan's step stands: in the plan, else in the shared step that it uses."""
        shared = self.renovations[plan].steps[position].use
        if path and shared in self.steps and not self.written("renovations", plan, "steps", position, path[0]):
            return self.where("steps", shared, *path)
        return self.where("renovations", plan, "steps", position, *path)

    def character(self, offset: int, kind: str, id: str, *path: str | int) -> Where:
        """Where the character at `offset` [characters from 0] of a one-line text stands.

        For text over several lines, or with backslashes, it is the text's beginning.
        """
        node: Node | None = self.trees[kind, id]
        for step in path:
            node = node.children.get(step) if node else None
        here = self.where(kind, id, *path)
        return here.moved(offset) if node and node.one_line else here

    def knows(self, kind: str, id: str) -> bool:
        """True for an id that is there, whole or broken: what refers to it may stay silent."""
        return id in self.of(kind) or (kind, id) in self.broken or (kind, "*") in self.broken

    def of(self, kind: str) -> dict[str, Any]:
        """The records of one kind by id: of('grasses'); also 'sources', 'terms', 'products' and 'machines'."""
        if kind in OF_PRACTICE:
            return getattr(self.practice, kind) if self.practice else {}
        if kind == TERMS:
            return self.glossary.terms if self.glossary else {}
        return getattr(self, kind)

    def retired_of(self, kind: str) -> Mapping[str, RetiredId]:
        """Ids of one kind that were in the book once, as old links name them."""
        return getattr(self.retired, kind) if self.retired else {}

    def single(self, name: str) -> Any:
        """What a single file holds: single('season-groups'); None where there is no such file."""
        return getattr(self, name.replace("-", "_"))

    def size(self) -> int:
        """How many records the book holds, each source counted as one."""
        return sum(1 for _ in self.records()) + len(self.sources)

    def records(self) -> Iterator[tuple[str, str, Any]]:
        """Every record as kind, id, record, the single files under their own names."""
        for name in (file.removesuffix(".yml") for file in SINGLE_FILES):
            record = self.single(name)
            if record is not None:
                yield name, name, record
        for kind in KINDS:
            for id, record in self.of(kind).items():
                yield kind, id, record


# Single file -> the kinds whose ids stand in it: when it cannot be read, no such id can be called unknown.
_HOLDERS = {"sources": ("sources",), "practice": OF_PRACTICE, "glossary": (TERMS,)}


class Loaded(NamedTuple):
    """book: the whole book, or None when anything in it is wrong. findings: sorted by file and line."""

    book: Book | None
    findings: list[Finding]


def load_book(root: Path) -> Loaded:
    """The book in a folder, or everything that is wrong with its files and references."""
    book, findings = read_book(root)
    return Loaded(None if findings else book, findings)


def read_book(root: Path) -> tuple[Book, list[Finding]]:
    """As much of a book as can be read, with everything that is wrong: what the checks go on from."""
    reading = _Reading(Path(root))
    reading.read_records()
    reading.read_singles()
    reading.share_figures()
    reading.share_steps()
    book = reading.book()
    return book, sorted([*reading.findings, *_unresolved(book)])


class _Reading:
    """A book while its files are being read."""

    def __init__(self, root: Path) -> None:
        self.root = root
        self.parts: dict[str, Any] = {kind: {} for kind in (*KINDS, "sources")}
        self.trees: dict[tuple[str, str], Node] = {}
        self.broken: set[tuple[str, str]] = set()
        self.findings: list[Finding] = []

    def read_records(self) -> None:
        files, findings = record_files(self.root)
        self.findings.extend(findings)
        for kind, id, file, path in files:
            record, tree = self._load(file, path, KINDS[kind])
            if record is None:
                self.broken.add((kind, id))
            else:
                self.parts[kind][id] = record
                self.trees[kind, id] = tree

    def read_singles(self) -> None:
        files, findings = single_files(self.root)
        self.findings.extend(findings)
        there = {name for name, *_ in files}
        self.broken.update(
            (kind, "*") for name, kinds in _HOLDERS.items() for kind in kinds
            if name in there or f"{name}.yml" not in MAY_BE_MISSING
        )
        for name, file, path, hint in files:
            record, tree = self._load(file, path, hint)
            if name == "sources" and tree is not None and tree.kind == "map":
                self._learn_sources(record, tree)
            elif record is not None:
                self.parts[name.replace("-", "_")] = record
                self.trees[name, name] = tree
                self.broken.difference_update((kind, "*") for kind in _HOLDERS.get(name, ()))

    def share_figures(self) -> None:
        for kind in ("calculators", "holds"):
            for id, user in self.parts[kind].items():
                self.parts[kind][id] = self._with_figures(user, (kind, id))
        if "inspection" in self.parts:
            self.parts["inspection"] = self._with_figures(self.parts["inspection"], ("inspection", "inspection"))

    def _with_figures(self, user: Any, place: tuple[str, str]) -> Any:
        groups = self.parts.get("season_groups")
        whole, unknown = with_figures(user, self.parts["tasks"], groups.rules.by_name if groups else {})
        figures = self.trees[place].children.get("figures")
        self.findings.extend(
            Finding(figures.children[each.name].where, each.what, each.instead) for each in unknown
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

    def book(self) -> Book:
        whole = {name: MappingProxyType(part) if isinstance(part, dict) else part for name, part in self.parts.items()}
        return Book(self.root, **whole, trees=self.trees, broken=frozenset(self.broken))

    def _load(self, file: Path, path: str, hint: Any) -> tuple[Any, Node | None]:
        record, tree, findings = load_record(file, path, hint)
        self.findings.extend(findings)
        return record, tree

    def _learn_sources(self, record: dict[str, Source] | None, tree: Node) -> None:
        """Which sources there are can be told even when one of them is wrong."""
        self.parts["sources"] = record or {}
        self.broken.discard(("sources", "*"))
        for id, node in tree.children.items():
            self.trees["sources", id] = node
            if record is None:
                self.broken.add(("sources", id))


def _unresolved(book: Book) -> Iterator[Finding]:
    for kind, id, record in book.records():
        yield from first_told(_finding(book, book.where(kind, id, *named.path), named) for named in _unknown(book, kind, id, record))


def _unknown(book: Book, kind: str, id: str, record: Any) -> Iterator[Named]:
    for named in named_by(record):
        # What comes from a shared step is told of in its own file.
        if named.id not in named.reference.also and not book.knows(named.reference.kind, named.id) and book.written(kind, id, *named.path):
            yield named


_NAMES = {**SINGULAR, "aftercare": "aftercare sheet", "sources": "source", "products": "product", "machines": "machine", TERMS: "word"}
_HOMES = {"sources": "data/sources.yml", TERMS: "data/glossary.yml", **{table: f"the {table} of data/practice.yml" for table in OF_PRACTICE}}


def _finding(book: Book, where: Where, named: Named) -> Finding:
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
    what = f"{_NAMES[kind]} '{shown(named.id)}' is not in {home}"
    return Finding(where, what, suggestion(named.id, [*known, *also], otherwise))
