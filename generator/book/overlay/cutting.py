"""A record's tree with parts of it taken out, so that what is left is still a whole record."""

from collections.abc import Callable, Collection
from typing import Any

from pydantic import TypeAdapter, ValidationError

from generator.book.loading.load import adapter
from generator.book.loading.marked_yaml import Node, ValuePath

# So many rounds of "then this is missing too" end with no record: each round takes at least one level away.
MOST_ROUNDS = 40


class Gone(Exception):
    """Nothing is left of the record."""


def cut(tree: Node, paths: Collection[ValuePath], hint: Any, emptied: Callable[[ValuePath], bool] = lambda path: False) -> tuple[Node, Any]:
    """The tree without what stands at these paths, and the record that it then holds.

    What a record cannot be without takes its surroundings with it: a figure without its number goes as a whole. emptied: whether a list that
    is left with nothing would mean anything at all, so that its surroundings go too. Raises Gone when that reaches the record itself.
    """
    whole = _copied(tree)
    waiting = set(paths)
    for _ in range(MOST_ROUNDS):
        for path in sorted(waiting, key=last_first, reverse=True):
            _take_out(whole, path, emptied)
        try:
            return whole, _validated(whole, adapter(hint))
        except ValidationError as error:
            waiting = {_nearest(whole, each["loc"]) for each in error.errors(include_url=False)}
    raise Gone


def _validated(tree: Node, reader: TypeAdapter[Any]) -> Any:
    return reader.validate_python(tree.plain(), strict=True)


def _copied(node: Node) -> Node:
    children = {key: _copied(child) for key, child in node.children.items()}
    return Node(node.where, node.kind, node.text, node.value, node.one_line, children, dict(node.keys), node.unseen)


def last_first(path: ValuePath) -> tuple[tuple[int, str], ...]:
    """Later items of a list before earlier ones, and what lies deeper before what holds it."""
    return tuple((step, "") if isinstance(step, int) else (-1, step) for step in path)


def _take_out(root: Node, path: ValuePath, emptied: Callable[[ValuePath], bool]) -> None:
    if not path:
        raise Gone
    node = root
    for step in path[:-1]:
        if step not in node.children:
            return
        node = node.children[step]
    if path[-1] not in node.children:
        return
    del node.children[path[-1]]
    node.keys.pop(str(path[-1]), None)
    if node.kind == "list":
        node.children = dict(enumerate(node.children.values()))
        if not node.children and emptied(path[:-1]):
            _take_out(root, path[:-2], emptied)


def _nearest(root: Node, loc: tuple[str | int, ...]) -> ValuePath:
    """What an error of pydantic's takes away: the value that is wrong, or the map that lacks a key."""
    path: ValuePath = ()
    node = root
    for step in loc:
        if step in node.children:
            node, path = node.children[step], (*path, step)
    return path
