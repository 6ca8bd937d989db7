"""A caution of the shared knowledge is never lost: a book may add to it, and to where it is shown, and take nothing away."""

from collections.abc import Iterator

from generator.book.loading.marked_yaml import Node
from generator.findings import Finding, Where

CAUTIONS = "cautions"
_ADDS = {"add"}
_YOURS = "add yours to it: write 'extends', and 'add' in place of a list"


def no_caution_less(where: Where) -> Finding:
    return Finding(where, "a caution of the shared record would be missing", "keep each of them; yours can be added, as 'cautions: {add: [...]}'")


def caution_findings(kind: str, shared: Node, own: Node, extends: bool) -> Iterator[Finding]:
    """What a book's own file would take away of the shared one of its name. extends: it lies over it, and does not stand in its place."""
    if kind == CAUTIONS:
        if not extends:
            yield Finding(own.first, "this would take the place of a caution of the shared knowledge", _YOURS)
            return
        for key, child in own.entries():
            if key in shared.children and not (child.kind == "map" and shared.children[key].kind == "list" and set(child.children) <= _ADDS):
                yield Finding(own.keys[key], f"'{key}' of a shared caution would be another", _YOURS)
    elif not extends and (lost := sorted(_named(shared) - _named(own))):
        yield Finding(own.first, f"the shared record shows the cautions {', '.join(lost)}, and this one does not", "name each of them under 'cautions' here")


def _named(tree: Node) -> set[str]:
    """Every caution that a record shows, at whatever step of it."""
    found = set()
    for key, child in tree.children.items():
        if key == CAUTIONS and child.kind == "list":
            found |= {each.value for each in child.children.values() if isinstance(each.value, str)}
        else:
            found |= _named(child)
    return found
