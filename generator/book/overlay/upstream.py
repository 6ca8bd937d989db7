"""What a new version of the shared knowledge changes, and which of a book's own files it touches.

A book keeps, in one file beside its mkdocs.yml, a digest of each field of the shared records as they were when its owner last looked.
"""

import hashlib
import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from generator.book.loading.layers import Layer, read_layers
from generator.book.loading.load import read_text
from generator.book.loading.marked_yaml import Node
from generator.book.overlay.extending import EXTENDS
from generator.findings import Where, shown

STATE_FILE = "shared-knowledge.json"
VERSION = 1
DIGEST_SIGNS = 10  # Of sixteen kinds each: two fields that differ have the same once in a million million.

# A record as kind/id, to its fields, to their digests. A field of a map is named by both keys.
Digests = dict[str, dict[str, str]]


@dataclass(frozen=True, order=True)
class SharedChange:
    """One record that is not as it was. what: new, gone or changed. fields: of one that changed. mine: where the book's own file is that lies over
    it or stands in its place; both: fields that this one says as well."""

    what: str
    record: str
    fields: tuple[str, ...] = ()
    mine: Where | None = None
    both: tuple[str, ...] = ()


def state_text(root: Path, knowledge: Path | None = None) -> str:
    """What is kept of the shared knowledge as it now is."""
    layer, _ = read_layers(root, knowledge)
    return json.dumps({"version": VERSION, "records": _digests(layer)}, indent=0, sort_keys=True) + "\n"


def changes_since(root: Path, knowledge: Path | None = None) -> list[SharedChange] | None:
    """What is not as it was when the owner last looked; None where that is not known, or the book lies over nothing."""
    layer, _ = read_layers(root, knowledge)
    kept = _kept(root / STATE_FILE)
    if layer.shared is None or kept is None:
        return None
    return sorted(_changes(kept, _digests(layer), layer))


def _changes(before: Digests, now: Digests, layer: Layer) -> Iterator[SharedChange]:
    for record in before.keys() | now.keys():
        old, new = before.get(record), now.get(record)
        if old == new:
            continue
        own = _own(layer, record)
        mine = None if own is None else own.first
        if new is None or old is None:
            yield SharedChange("new" if old is None else "gone", record, mine=mine)
            continue
        fields = tuple(sorted(field for field in old.keys() | new.keys() if old.get(field) != new.get(field)))
        said = set() if own is None else set(_fields(own)) | ({*fields} if EXTENDS not in own.children and "/" in record else set())
        both = tuple(field for field in fields if any(_meets(field, each) for each in said))
        yield SharedChange("changed", record, fields, mine, both)


def _meets(one: str, other: str) -> bool:
    return one == other or one.startswith(f"{other}.") or other.startswith(f"{one}.")


def _own(layer: Layer, record: str) -> Node | None:
    assert layer.own is not None
    kind, _, id = record.rpartition("/")
    return layer.own.records.get((kind, id)) if kind else layer.own.singles.get(id)


def _digests(layer: Layer) -> Digests:
    shared = layer.shared or Layer()
    named = {f"{kind}/{id}": tree for (kind, id), tree in shared.records.items()} | shared.singles
    return {record: {field: _digest(node) for field, node in _fields(tree).items()} for record, tree in named.items()}


def _fields(tree: Node) -> dict[str, Node]:
    """Each value of a record, one key deep, or two where a map stands under it."""
    fields: dict[str, Node] = {}
    for key, child in tree.entries():
        if child.kind == "map":
            fields |= {f"{key}.{under}": node for under, node in child.entries()}
        else:
            fields[key] = child
    return fields


def _digest(node: Node) -> str:
    return hashlib.sha256(repr(node.plain()).encode()).hexdigest()[:DIGEST_SIGNS]


def _kept(file: Path) -> Digests | None:
    text, _ = read_text(file, file.name) if file.is_file() else (None, [])
    try:
        kept = json.loads(text or "null")
    except ValueError:
        return None
    records = kept.get("records") if isinstance(kept, Mapping) and kept.get("version") == VERSION else None
    if not isinstance(records, Mapping) or not all(isinstance(fields, Mapping) for fields in records.values()):
        return None
    return {str(record): {str(field): str(digest) for field, digest in fields.items()} for record, fields in records.items()}


def told(change: SharedChange) -> str:
    """One line of what to look at."""
    record = shown(change.record)
    if change.what == "changed":
        fields = ", ".join(shown(field) for field in change.fields[:6]) + (f" and {len(change.fields) - 6} more" if len(change.fields) > 6 else "")
        if change.mine is None:
            return f"{record}: {fields} changed"
        if change.both:
            return f"{change.mine}: {', '.join(change.both)} of the shared {record} changed, and this file says it too; yours stays, see whether it should"
        return f"{change.mine}: {fields} of the shared {record} changed; this file says nothing of it, and the book takes it"
    if change.mine is None:
        return f"{record}: is {'new' if change.what == 'new' else 'no longer there'}"
    if change.what == "new":
        return f"{change.mine}: there is a shared {record} now; this file stands in its place"
    return f"{change.mine}: the shared {record} is gone; a file that extends it has to become a whole record"
