"""The folders that a book is made of: its own, and the shared knowledge that it may lie over."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path
from typing import Any

from generator.book.loading.folders import SINGLES, record_files, single_files
from generator.book.loading.load import load_tree
from generator.book.loading.marked_yaml import Node
from generator.book.overlay.extending import EXTENDS, laid_over
from generator.book.overlay.kept_cautions import caution_findings
from generator.book.overlay.knowledge import KNOWLEDGE, SHARED_PATH, knowledge_folder
from generator.findings import Finding, Where, shown, suggestion

PRACTICE = "practice"


@dataclass
class Layer:
    """Trees of what lies in data/. records: by kind and id. singles: by name. unread: the files, of either, that are there and are not YAML;
    faulty: those that hold something which was refused. shared, own: what it is laid together from, if it is."""

    records: dict[tuple[str, str], Node] = field(default_factory=dict)
    singles: dict[str, Node] = field(default_factory=dict)
    unread: set[tuple[str, str]] = field(default_factory=set)
    faulty: set[tuple[str, str]] = field(default_factory=set)
    shared: "Layer | None" = None
    own: "Layer | None" = None

    def take(self, kind: str, id: str, tree: Node | None, faulty: bool) -> None:
        place = (kind, id)
        if tree is None:
            self.unread.add(place)
        elif kind == id:
            self.singles[id] = tree
        else:
            self.records[place] = tree
        if faulty:
            self.faulty.add(place)


def read_layers(root: Path, knowledge: Path | None = None) -> tuple[Layer, list[Finding]]:
    """What a book's own folder holds, laid over the shared knowledge where its practice.yml asks for that; and what is wrong on the way.

    knowledge: the folder of the shared knowledge, if not the one that is installed.
    """
    files, findings = record_files(root)
    own = Layer()
    _read(own, [(kind, id, file, path) for kind, id, file, path in files], findings)
    singles, missing = single_files(root)
    _read(own, [(name, name, file, path) for name, file, path in singles], findings)
    over = _asked_for(root, own, knowledge or knowledge_folder(), findings)
    findings += missing if over is None else single_files(root, over=True)[1]
    if over is None:
        findings += [_nothing_below(tree) for tree in own.records.values() if EXTENDS in tree.children]
        return own, findings
    shared, wrong = _shared(over, _stamp(over))
    findings += wrong
    return _together(own, shared, findings), findings


def _read(layer: Layer, files: Iterable[tuple[str, str, Path, str]], findings: list[Finding]) -> None:
    for kind, id, file, path in files:
        tree, wrong = load_tree(file, path)
        findings += wrong
        layer.take(kind, id, tree, bool(wrong))


def _asked_for(root: Path, own: Layer, folder: Path, findings: list[Finding]) -> Path | None:
    """The folder of the shared knowledge, if the practice asks for it."""
    tree = own.singles.get(PRACTICE)
    asked = tree.children.get(KNOWLEDGE) if tree is not None and tree.kind == "map" else None
    if asked is None or asked.value is not True:
        return None
    if folder.resolve() == root.resolve():
        findings.append(Finding(asked.where, "this folder is the shared knowledge itself", f"take '{KNOWLEDGE}' out"))
        return None
    return folder


def _stamp(folder: Path) -> tuple[tuple[str, int], ...]:
    """When each file below data/ was written: whoever works on the shared knowledge itself sees what is saved."""
    return tuple(sorted((str(file), file.stat().st_mtime_ns) for file in (folder / "data").rglob("*.yml")))


@lru_cache(maxsize=1)
def _shared(folder: Path, stamp: tuple[tuple[str, int], ...]) -> tuple[Layer, tuple[Finding, ...]]:
    """The layer of the shared knowledge, read once a process: a command that begins a book reads it three times. Nobody changes its trees."""
    layer, findings = Layer(), list[Finding]()
    files, wrong = record_files(folder)
    singles, _ = single_files(folder, over=True)
    files = [(kind, id, file, SHARED_PATH + path) for kind, id, file, path in files]
    files += [(name, name, file, SHARED_PATH + path) for name, file, path in singles if name != PRACTICE]
    findings += [Finding(Where(SHARED_PATH + each.where.path), each.what, each.instead) for each in wrong]
    _read(layer, files, findings)
    return layer, tuple(findings)


def _together(own: Layer, shared: Layer, findings: list[Finding]) -> Layer:
    """Own records in place of shared ones, or over them where they say `extends`; single files always lie over the shared one of their name."""
    both = Layer(unread={*own.unread, *(place for place in shared.unread if place not in own.records)}, faulty={*own.faulty}, shared=shared, own=own)
    for place in sorted({*own.records, *shared.records}, key=lambda place: (place[0], f"{place[1]}.yml")):
        if place in own.unread:
            continue
        tree = own.records.get(place)
        if tree is None:
            both.records[place] = shared.records[place]
        elif EXTENDS not in tree.children:
            both.records[place] = tree
        else:
            both.take(*place, *_extended(place, tree, shared, findings))
        if tree is not None and place in shared.records:
            findings += caution_findings(place[0], shared.records[place], tree, EXTENDS in tree.children)
    for name in SINGLES:
        name = name.removesuffix(".yml")
        tree, base = own.singles.get(name), shared.singles.get(name)
        if (name, name) in own.unread:
            continue
        if tree is not None and base is not None and tree.kind == base.kind == "map":
            tree, wrong = laid_over(base, tree)
            findings += wrong
            both.take(name, name, tree, bool(wrong) or (name, name) in own.faulty)
        elif tree is not None or base is not None:
            both.take(name, name, tree or base, (name, name) in own.faulty)
    return both


def _extended(place: tuple[str, str], tree: Node, shared: Layer, findings: list[Finding]) -> tuple[Node | None, bool]:
    kind, _ = place
    named = tree.children[EXTENDS]
    id: Any = named.value
    base = shared.records.get((kind, id)) if isinstance(id, str) else None
    if base is None:
        known = [other for of, other in shared.records if of == kind]
        findings.append(Finding(named.text or named.where, f"'{shown(id if named.kind == 'scalar' else named.kind)}' is not in the shared {kind}",
                                suggestion(str(id), known, "name a record of the shared knowledge, or write a whole record and leave 'extends' out")))
        return None, True
    rest = Node(tree.where, "map", children={key: child for key, child in tree.children.items() if key != EXTENDS},
                keys={key: where for key, where in tree.keys.items() if key != EXTENDS})
    whole, wrong = laid_over(base, rest)
    findings += wrong
    return whole, bool(wrong)


def _nothing_below(tree: Node) -> Finding:
    return Finding(tree.keys[EXTENDS], "'extends' changes a record of the shared knowledge, and this book does not lie over it",
                   f"write '{KNOWLEDGE}: true' into data/{PRACTICE}.yml, or write the whole record")
