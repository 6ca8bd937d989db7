"""What a practice chose to have in its book, and everything that follows: what names something left out goes too, and no text speaks of it."""

from collections.abc import Callable, Iterator, Mapping
from typing import Any, NamedTuple

from generator.book.loading.marked_yaml import Node, ValuePath
from generator.book.overlay.cutting import Gone, cut, last_first
from generator.book.overlay.inner_references import Inner, inner_references, steps_where_needed
from generator.book.overlay.kept_cautions import CAUTIONS
from generator.book.overlay.knowledge import SHARED_PATH
from generator.book.overlay.mentions import Unspoken, spoken, unsaid
from generator.book.plan_fit import misfit
from generator.book.records.practice import Practice
from generator.book.references import KEY, Named, named_by
from generator.findings import Finding, suggestion

Place = tuple[str, str]
# What a record is called: one that is called after something left out has nothing left to say.
TITLES = {"name", "title", "question"}
# Titles of what others published, and words that were retired, are quoted as they are.
QUOTED = {"sources", "retired", CAUTIONS}
# What is in a book only while a plan of it leads there, if one ever did.
ONLY_USED = {"aftercare", "steps"}
# What has an id and lies inside another file.
INSIDE = {"products": ("practice", "practice"), "machines": ("practice", "practice"), "terms": ("glossary", "glossary")}


class InBook(NamedTuple):
    """One record of a book that is being read."""

    tree: Node
    hint: Any
    record: Any


class ChosenBook(NamedTuple):
    """left_out: kind and id of what was read and is not in the book. findings: what was chosen and is not there. said: what no text may
    speak of. may_cut: whether a value may go that nothing needs any more. unmended: paths of shared
    texts that still speak of what is left out, because their record cannot be without them."""

    left_out: frozenset[Place]
    findings: list[Finding]
    said: Unspoken
    may_cut: Callable[[Node], bool]
    unmended: list[tuple[Place, ValuePath]]


def choose(records: dict[Place, InBook], practice: Practice, practice_tree: Node) -> ChosenBook:
    """Take out of the records what the practice did not choose, and all that hangs on it."""
    chosen = _chosen(records, practice)
    findings = list(_unknown(records, practice, practice_tree))
    if practice.places is not None and practice.shared_knowledge:
        chosen["places"] = set(practice.places)
    cutting = _Cutting(records, practice)
    cutting.leave_out({place for place in records if place[0] in chosen and place[1] not in chosen[place[0]]})
    cutting.leave_out({(kind, id) for kind, ids in practice.without.items() for id in ids})
    cutting.settle()
    return ChosenBook(frozenset(cutting.gone), findings, cutting.unsaid(), cutting.may_cut, cutting.unmended)


def _chosen(records: Mapping[Place, InBook], practice: Practice) -> dict[str, set[str]]:
    """Kind to the ids that are to stay, for what is chosen by name."""
    grasses = {id: kept.record for (kind, id), kept in records.items() if kind == "grasses" and (practice.grasses is None or id in practice.grasses)}
    chosen = {} if practice.grasses is None else {"grasses": set(grasses)}
    if practice.grasses is not None or practice.plans is not None:
        followed = {grass.renovation for grass in grasses.values()}
        chosen["renovations"] = followed | {
            id for (kind, id), kept in records.items() if kind == "renovations" and (practice.plans is None or id in practice.plans)
            and any(misfit(kept.record, grass) is None for grass in grasses.values())
        }
    return chosen


def _unknown(records: Mapping[Place, InBook], practice: Practice, tree: Node) -> Iterator[Finding]:
    lists: list[tuple[tuple[str, ...], str, tuple[str, ...]]] = [(("grasses",), "grasses", practice.grasses or ()), (("plans",), "renovations", practice.plans or ())]
    lists += [(("without", kind), kind, ids) for kind, ids in practice.without.items()]
    for path, kind, ids in ((path, kind, ids) for path, kind, ids in lists if ids):
        node = tree
        for step in path:
            node = node.children[step]
        known = [id for of, id in records if of == kind]
        for at, id in enumerate(ids):
            if id not in known:
                where = node.children[at].text or node.children[at].where
                yield Finding(where, f"'{id}' is not in data/{kind}", suggestion(id, known, f"the ones there are: {', '.join(known[:12])}"))


class _Cutting:
    """Taking out, round after round, until nothing is named that is not there."""

    def __init__(self, records: dict[Place, InBook], practice: Practice) -> None:
        self.records, self.practice = records, practice
        self.layered = practice.shared_knowledge
        self.gone: set[Place] = set()
        self.grasses = {id: kept.record for (kind, id), kept in records.items() if kind == "grasses"}
        self.inside = {kind: self._inside(kind) for kind in INSIDE}
        self.unmended: list[tuple[Place, ValuePath]] = []
        key = records.get(("key", "key"))
        self.strangers = [stranger.name for stranger in key.record.strangers] if key else []
        self.needed_steps: set[str] = set()
        self.used = self._used()

    def leave_out(self, places: set[Place]) -> None:
        for place in places & self.records.keys():
            if place[0] not in (CAUTIONS, "countries"):
                del self.records[place]
                self.gone.add(place)

    def settle(self) -> None:
        changed = True
        while changed:
            while self._round():
                pass
            said, self.unmended = self.unsaid(), []
            changed = sum(1 for place in list(self.records) if place[0] not in QUOTED and self._without_words(place, said)) > 0

    def _round(self) -> bool:
        """Whether anything was taken out."""
        used = self._used()
        self.leave_out(idle := {place for place in self.records if place[0] in ONLY_USED and place in self.used and place not in used})
        of = {kind: {id: kept.record for (each, id), kept in self.records.items() if each == kind} for kind in ("renovations", "steps")}
        self.needed_steps = steps_where_needed(of["renovations"].values(), of["steps"])
        return sum(1 for place in list(self.records) if self._without_references(place)) + len(idle) > 0

    def _used(self) -> set[Place]:
        """What a plan names of what is there for plans alone."""
        return {
            (named.reference.kind, named.id) for (kind, _), kept in self.records.items() if kind == "renovations"
            for named in named_by(kept.record) if named.reference.kind in ONLY_USED
        }

    def may_cut(self, node: Node) -> bool:
        """Only what is shared is cut; of a book that stands alone, everything. What an owner wrote that names something left out is told."""
        return not self.layered or node.where.path.startswith(SHARED_PATH)

    def _absent(self, named: Named) -> bool:
        kind, id = named.reference.kind, named.id
        if kind in INSIDE:
            return id not in self._inside(kind) and (self.layered or id in self.inside[kind])
        return id not in named.reference.also and (kind, id) in self.gone

    def _absent_inside(self, inner: Inner, record: Any) -> bool:
        if inner.of == "cause":
            return inner.id not in record.causes
        if inner.of == "step":
            return inner.id not in self.needed_steps
        if inner.of in INSIDE:
            return inner.id not in self._inside(inner.of) and (self.layered or inner.id in self.inside[inner.of])
        return (inner.of, inner.id) in self.gone

    def _inside(self, kind: str) -> set[str]:
        """Ids of what stands in a file of many."""
        holder = self.records.get(INSIDE[kind])
        return set(getattr(holder.record, kind)) if holder else set()

    def _without_references(self, place: Place) -> bool:
        kept = self.records.get(place)
        if kept is None:
            return False
        named = [(each.path[:-1] if each.path[-1] == KEY else each.path, each.reference.narrows) for each in named_by(kept.record) if self._absent(each)]
        named += [(each.path, each.narrows) for each in inner_references(place[0], kept.record, kept.tree) if self._absent_inside(each, kept.record)]
        paths = {path for path, _ in named if (node := _at(kept.tree, path)) is not None and self.may_cut(node)}
        narrow = {path[:-1] for path, narrows in named if narrows and path in paths}
        if not paths:
            return False
        self._put(place, kept, paths, narrow)
        return True

    def _put(self, place: Place, kept: InBook, paths: set[ValuePath], narrow: set[ValuePath] = frozenset()) -> None:  # type: ignore[assignment]
        try:
            tree, record = cut(kept.tree, paths, kept.hint, narrow.__contains__)
            self.records[place] = InBook(tree, kept.hint, record)
        except Gone:
            del self.records[place]
            self.gone.add(place)

    def unsaid(self) -> Unspoken:
        left = {id for kind, id in self.gone if kind == "grasses"}
        absent: dict[str, set[str]] = {}
        for kind, id in self.gone:
            absent.setdefault(kind, set()).add(id)
        if self.layered:
            absent["practice"] = {field for field in Practice.model_fields if getattr(self.practice, field) is None}
        return unsaid([self.grasses[id] for id in left], [grass for id, grass in self.grasses.items() if id not in left], self.strangers, absent)

    def _without_words(self, place: Place, said: Unspoken) -> bool:
        """Whether anything was taken out."""
        kept = self.records[place]
        found = [(path, node) for path, node in spoken(kept.tree, said) if self.may_cut(node)]
        if not found:
            return False
        named = {each.path for each in named_by(kept.record)}
        shorter = {path: said.without(node.value) if node.kind == "scalar" else "" for path, node in found if path not in named}
        tree, empty = _with_texts(kept.tree, shorter), {path for path, text in shorter.items() if not text}
        if any(len(path) == 1 and path[0] in TITLES for path in empty):
            del self.records[place]
            self.gone.add(place)
            return True
        try:
            whole, record = cut(tree, empty, kept.hint)
        except Gone:
            whole, record = self._one_by_one(place, kept, shorter)
        self.records[place] = InBook(whole, kept.hint, record)
        return bool(record != kept.record)

    def _one_by_one(self, place: Place, kept: InBook, shorter: dict[ValuePath, str]) -> tuple[Node, Any]:
        """The texts that can go; those that the record cannot be without stay whole."""
        tree, record = kept.tree, kept.record
        for path, text in sorted(shorter.items(), key=lambda each: last_first(each[0]), reverse=True):
            try:
                tree, record = cut(_with_texts(tree, {path: text}), set() if text else {path}, kept.hint)
            except Gone:
                self.unmended.append((place, path))
        return tree, record


def _at(tree: Node, path: ValuePath) -> Node | None:
    """What stands at a path; None for a default, which is not written."""
    node = tree
    for step in path:
        if step not in node.children:
            return None
        node = node.children[step]
    return node


def _with_texts(tree: Node, texts: Mapping[ValuePath, str], path: ValuePath = ()) -> Node:
    """The tree with other texts at these paths, where one is left."""
    if tree.kind == "scalar":
        text = texts.get(path)
        return tree if not text else Node(tree.where, tree.kind, tree.text, text, False)
    children = {key: _with_texts(child, texts, (*path, key)) for key, child in tree.children.items()}
    return Node(tree.where, tree.kind, tree.text, tree.value, tree.one_line, children, dict(tree.keys), tree.unseen)
