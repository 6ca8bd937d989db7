"""A tree laid over another: what is written there takes the place of what is here, and all else stays."""

from generator.book.loading.marked_yaml import Node, ValuePath
from generator.book.overlay.kept_cautions import CAUTIONS, no_caution_less
from generator.findings import Finding, shown, suggestion

# What a map in place of a list may say.
ADD, WITHOUT, CHANGE = "add", "without", "change"
OF_A_LIST = (ADD, WITHOUT, CHANGE)
SOURCE, ID = "source", "id"
# The key by which a record of a book lies over a shared one.
EXTENDS = "extends"


def laid_over(base: Node, over: Node) -> tuple[Node, list[Finding]]:
    """The two maps as one, each value with its own place in its own file; and what is wrong with how they lie.

    A map is gone through key by key; an empty value takes a key out; a text, a number or a list takes the place of what was there. In place
    of a list a map may say `add` (items to append), `without` (items, or ids of items) and `change` (by id, what differs of an item).
    """
    findings: list[Finding] = []
    return _map(base, over, (), findings), findings


def _map(base: Node, over: Node, path: ValuePath, findings: list[Finding]) -> Node:
    made = Node(over.where, "map", children=dict(base.children), keys=dict(base.keys))
    _figure_keeps_its_source(base, over, findings)
    for key, child in over.entries():
        under = base.children.get(key)
        if child.kind == "scalar" and child.value is None and under is not None:
            if key == CAUTIONS:
                findings.append(no_caution_less(over.keys[key]))
            made.children.pop(key, None)
            made.keys.pop(key, None)
            continue
        made.children[key] = _value(under, child, (*path, key), findings)
        made.keys[key] = over.keys[key]
    return made


def _value(base: Node | None, over: Node, path: ValuePath, findings: list[Finding]) -> Node:
    if base is None or base.refused or over.refused:
        return over
    if base.kind == "map" and over.kind == "map":
        return _map(base, over, path, findings)
    if base.kind == "list" and over.kind == "map":
        return _list(base, over, path, findings)
    if base.kind == "list" and path[-1] == CAUTIONS and {_plain(each) for each in base.children.values()} - {_plain(each) for each in over.children.values()}:
        findings.append(no_caution_less(over.where))
    return over


def _list(base: Node, over: Node, path: ValuePath, findings: list[Finding]) -> Node:
    items = list(base.children.values())
    for key, _ in over.entries():
        if key not in OF_A_LIST:
            instead = suggestion(key, OF_A_LIST, f"write {', '.join(OF_A_LIST)}, or the whole list")
            findings.append(Finding(over.keys[key], f"'{shown(key)}' does nothing to a list", instead))
    changes = over.children.get(CHANGE)
    for id, change in changes.entries() if changes is not None and changes.kind == "map" else ():
        at = next((at for at, item in enumerate(items) if _id(item) == id), None)
        if at is None:
            assert changes is not None
            known = [name for item in items if (name := _id(item))]
            instead = suggestion(id, known, "its items have no ids; write the whole list")
            findings.append(Finding(changes.keys[id], f"no item of this list has the id '{shown(id)}'", instead))
        else:
            items[at] = _value(items[at], change, (*path, id), findings)
    taken = over.children.get(WITHOUT)
    if taken is not None and path[-1] == CAUTIONS:
        findings.append(no_caution_less(over.keys[WITHOUT]))
    for each in taken.children.values() if taken is not None else ():
        left = [item for item in items if _id(item) != each.value and _plain(item) != _plain(each)]
        if len(left) == len(items):
            findings.append(Finding(each.text or each.where, f"'{shown(each.plain())}' is not in this list", "look at the shared record, or leave it out here"))
        items = left
    added = over.children.get(ADD)
    items += added.children.values() if added is not None and added.kind == "list" else ()
    for key in (ADD, WITHOUT):
        if key in over.children and over.children[key].kind != "list":
            findings.append(Finding(over.children[key].where, f"'{key}' must be a list", "write '[...]', or a line with '- ' for each"))
    if changes is not None and changes.kind != "map":
        findings.append(Finding(changes.where, f"'{CHANGE}' must be a map", "write the id of an item, and under it what differs"))
    return Node(over.where, "list", children=dict(enumerate(items)))


def _figure_keeps_its_source(base: Node, over: Node, findings: list[Finding]) -> None:
    """A number of one's own beside somebody else's name would be a lie."""
    if SOURCE not in base.children or SOURCE in over.children:
        return
    changed = next((key for key, child in over.entries() if key not in ("note", "because") and _differs(base.children.get(key), child)), None)
    if changed:
        findings.append(Finding(over.keys[changed], f"'{shown(changed)}' is changed, and its source would still be '{shown(base.children[SOURCE].plain())}'",
                                "write a 'source' beside it: 'ours', 'common practice', or the id of yours"))


def _differs(base: Node | None, over: Node) -> bool:
    return base is None or (over.kind != "map" and _plain(base) != _plain(over))


def _id(item: Node) -> str | None:
    named = item.children.get(ID)
    return named.value if named is not None and isinstance(named.value, str) else None


def _plain(node: Node) -> str:
    return repr(node.plain())
