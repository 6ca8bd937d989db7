"""The whole book: every record by its id, references resolved, and the place of every value in its file."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from generator.book.daily.daily_record import DailyRecord
from generator.book.fields.sourced import Record
from generator.book.loading.marked_yaml import Node
from generator.book.overlay.mentions import Unspoken
from generator.book.records import KINDS, SINGLE_FILES
from generator.book.records.aftercare import Aftercare
from generator.book.records.answer import Answer
from generator.book.records.calculator import Calculator
from generator.book.records.glossary import Glossary, Topics
from generator.book.records.grass import Grass
from generator.book.records.hold import Hold
from generator.book.records.identification import Key
from generator.book.records.inspection import Inspection
from generator.book.records.place import Country, Place
from generator.book.records.practice import Practice, SeasonGroups
from generator.book.records.problem import Expert, Problem
from generator.book.records.renovation import Renovation
from generator.book.records.retired import RetiredId
from generator.book.records.services import Services
from generator.book.records.source import Source
from generator.book.records.step import SharedStep
from generator.book.records.task import Caution, Task
from generator.book.records.work_record import WorkRecord
from generator.book.references import KEY
from generator.findings import Where

OF_PRACTICE = ("products", "machines")  # Tables of practice.yml whose ids are named elsewhere.
TERMS = "terms"  # The table of glossary.yml.


@dataclass(frozen=True)
class PartialBook:
    """As much of data/ as could be read, each kind as a dict by id, in the order of file names: what the checks go on from.

    root: the folder that holds mkdocs.yml, data/ and content/.
    practice, season_groups: None where the file could not be read. inspection, record, key, glossary, topics, services,
    retired: None where there is no such file as well.
    observed: what was measured at a place of late, by the place's id.
    broken: kind and id of what could not be read; '*' for every id of a kind. left_out: kind and id of what could be read, and is not in the
    book because the practice did not choose it; unsaid: what no shared text of it speaks of therefore. this_year: in which it was read; None
    where nobody asks.
    """

    root: Path
    practice: Practice | None = None
    season_groups: SeasonGroups | None = None
    inspection: Inspection | None = None
    record: WorkRecord | None = None
    key: Key | None = None
    glossary: Glossary | None = None
    topics: Topics | None = None
    services: Services | None = None
    retired: Record | None = None
    sources: dict[str, Source] = field(default_factory=dict)
    countries: dict[str, Country] = field(default_factory=dict)
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
    left_out: frozenset[tuple[str, str]] = field(default_factory=frozenset, repr=False)
    unsaid: Unspoken | None = field(default=None, repr=False)
    this_year: int | None = None
    observed: Mapping[str, DailyRecord] = field(default_factory=dict, repr=False)

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
            place = node.keys.get(str(step))
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
        """The records of one kind by id: of('grasses'); also 'sources', 'countries', 'terms', 'products' and 'machines'."""
        if kind in OF_PRACTICE:
            return getattr(self.practice, kind) if self.practice else {}
        if kind == TERMS:
            return self.glossary.terms if self.glossary else {}
        records: dict[str, Any] = getattr(self, kind)
        return records

    def topics_of(self, kind: str) -> list[str]:
        """Headings of the list of 'answers' or 'calculators', in order; what a record is under is one where topics.yml names none."""
        listed = getattr(self.topics, kind) if self.topics else ()
        return list(dict.fromkeys([*listed, *(record.topic for record in self.of(kind).values())]))

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

    def whole(self) -> "Book":
        """The same book for those who work with it. Only for one without findings."""
        return Book(**vars(self))


@dataclass(frozen=True)
class Book(PartialBook):
    """Everything in data/, in order: every file that a book must have is there, and every reference leads somewhere."""

    practice: Practice
    season_groups: SeasonGroups

    @property
    def offered_places(self) -> dict[str, Place]:
        """The places that the practice offers, which have all that the site has of a place. A command knows every place of the book."""
        wanted = self.practice.places
        return {id: place for id, place in self.places.items() if wanted is None or id in wanted}

    @property
    def other_places(self) -> dict[str, Place]:
        """The places that it does not offer: one light page each."""
        offered = self.offered_places
        return {id: place for id, place in self.places.items() if id not in offered}
