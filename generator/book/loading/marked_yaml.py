"""A YAML file as a tree of marked values: what stands where, in plain Python.

Only plain YAML is read: maps, lists, text, numbers, true and false. `no`, `on`, `12:30` and
`2026-10-12` stay the text they look like. What plain YAML does not need (aliases, merge keys,
tags, a second document) is a finding, and its value is `REFUSED`, so that nothing else is said of it.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

import yaml

from generator.book.fields.characters import UNSEEN, said_of
from generator.book.loading.text_slips import CURLY, TO_PLAIN, behind_a_failure, curly_quote, cut_sentence, line_slips
from generator.book.loading.yaml_faults import syntax_finding
from generator.findings import Finding, Where, shown

DEEPEST = 40  # Levels; the records need eight. Far below where Python's own recursion ends.

MERGE = "<<"
MOST_VALUES = 20_000  # In one file; the longest has 4000.
LONGEST_COMMENT = 200  # So much of one is looked at.


class _Refused:
    """Fails every record's reading in silence: the finding is already written."""

    def __repr__(self) -> str:
        return "a value that is not read"


REFUSED = _Refused()

# As YAML counts lines, which the marks go by.
_LINE_BREAK = re.compile("\r\n|[\n\r\x85\u2028\u2029]")
_WHOLE = re.compile(r"[-+]?(0|[1-9][0-9]{0,17})\Z")
_NUMBER = re.compile(r"[-+]?(0|[1-9][0-9]*)?(\.[0-9]*)?([eE][-+]?[0-9]+)?\Z")
_NOT_FINITE = re.compile(r"[-+]?\.?(nan|inf|infinity)\Z", re.IGNORECASE)
# A sign by its number, or by one of YAML's letters for signs that nobody sees; and what those letters mean.
_ESCAPE = re.compile(r"\\(x[0-9a-fA-F]{2}|u[0-9a-fA-F]{4}|U[0-9a-fA-F]{8}|[^xuU])", re.DOTALL)
_SHORT_ESCAPES = {"0": "\0", "a": "\a", "b": "\b", "v": "\v", "f": "\f", "e": "\x1b", "N": "\x85", "L": "\u2028", "P": "\u2029"}
_WORDS = {"": None, "~": None, "null": None, "true": True, "false": False, "True": True, "False": False}


# The way to a value from the top of its file: keys of maps, positions in lists.
ValuePath = tuple[str | int, ...]


@dataclass
class Node:
    """One value of a file.

    where: its first character, its opening quote or its `|`.
    text: for a scalar, the first character of the text inside quotes or block.
    value: plain value of a scalar, REFUSED, or None for maps and lists.
    children: by key (map) or position (list), in file order; keys: where each key stands.
    one_line: True when text stands in the file character for character.
    unseen: of a text with a sign in it that nobody sees, what was said of that.
    """

    where: Where
    kind: str = "scalar"
    text: Where | None = None
    value: Any = None
    one_line: bool = True
    children: dict[str | int, "Node"] = field(default_factory=dict)
    keys: dict[str, Where] = field(default_factory=dict)
    unseen: Finding | None = None

    @property
    def refused(self) -> bool:
        """True where reading already said what is wrong, so that there is nothing to read on."""
        return self.value is REFUSED

    def entries(self) -> Iterator[tuple[str, "Node"]]:
        """Of a map: each key, and what stands under it."""
        return ((str(key), child) for key, child in self.children.items())

    def plain(self) -> Any:
        """The tree as dicts, tuples and scalars, for a record to read."""
        if self.kind == "map":
            return {key: child.plain() for key, child in self.children.items()}
        if self.kind == "list":
            return tuple(child.plain() for child in self.children.values())
        return self.value

    @property
    def first(self) -> Where:
        """Where to point when something is missing in here: the first key, or the value itself."""
        return next(iter(self.keys.values()), self.where)


def read_tree(text: str, path: str) -> tuple[Node | None, list[Finding]]:
    """The tree of a YAML text, or None when it cannot be read at all, and what is wrong."""
    stops, others = line_slips(text, path)
    if stops:
        return None, [*stops, *others]
    root, findings = _Reader(text.translate(TO_PLAIN), path).read()  # Blank for blank: nothing moves.
    return root, [*others, *findings]


class _Reader:
    def __init__(self, text: str, path: str) -> None:
        self.path = path
        self.source = text
        self.lines = _LINE_BREAK.split(text)
        self.findings: list[Finding] = []
        self.anchors: set[str] = set()
        self.values = 0

    def read(self) -> tuple[Node | None, list[Finding]]:
        root = None
        try:
            events = yaml.parse(self.source, Loader=yaml.CSafeLoader)
            for event in events:
                if isinstance(event, yaml.DocumentStartEvent):
                    if root is not None:
                        self._say(self._at(event), "a second document begins here",
                                  "keep one record to a file and take the line '---' out")
                        return None, self.findings  # Whatever it took away from the first would only look missing.
                    root = self._node(next(events), events, 1)
        except yaml.YAMLError as error:
            told = syntax_finding(error, self.lines, self.path)
            self.findings += behind_a_failure(self.lines, told) or [told]
            return None, sorted(set(self.findings))
        except _TooMuch as much:
            self._say(much.where, much.what, much.instead)
            return None, self.findings
        return root, self.findings

    def _node(self, event: yaml.Event, events: Iterator[yaml.Event], depth: int) -> Node:
        where = self._at(event)
        self.values += 1
        if depth > DEEPEST:
            raise _TooMuch(where, f"lists and maps are nested more than {DEEPEST} deep here", "keep to the depth of the record's own keys")
        if self.values > MOST_VALUES:
            raise _TooMuch(where, f"the file holds more than {MOST_VALUES} keys and values", "keep one record to a file, and one thing to a record")
        if isinstance(event, yaml.AliasEvent):
            if event.anchor not in self.anchors:  # Else told at its anchor: one cause, one finding.
                self._say(where, f"'*{shown(event.anchor)}' is a YAML alias, and aliases are not read",
                          "write the value out in full, or put text that begins with '*' in quotes")
            return Node(where, value=REFUSED)
        assert isinstance(event, yaml.ScalarEvent | yaml.CollectionStartEvent), "nothing else begins a value"
        plain = self._is_plain(event, where)
        if isinstance(event, yaml.ScalarEvent):
            node = self._scalar(event, where)
        elif isinstance(event, yaml.SequenceStartEvent):
            node = self._list(where, events, depth)
        else:
            node = self._map(where, events, depth)
        return node if plain else Node(where, value=REFUSED)

    def _is_plain(self, event: yaml.ScalarEvent | yaml.CollectionStartEvent, where: Where) -> bool:
        if event.tag is not None:
            name = event.tag.replace("tag:yaml.org,2002:", "!!")
            self._say(where, f"the YAML tag '{shown(name)}' is not read", "write the plain value without it")
            return False
        if event.anchor is not None:
            name = shown(event.anchor)
            self.anchors.add(event.anchor)
            self._say(where, f"'&{name}' names a value for YAML aliases, and aliases are not read",
                      f"take it out, and write the value in full wherever '*{name}' stands")
        return True

    def _list(self, where: Where, events: Iterator[yaml.Event], depth: int) -> Node:
        node = Node(where, "list")
        for event in events:
            if isinstance(event, yaml.SequenceEndEvent):
                break
            node.children[len(node.children)] = self._node(event, events, depth + 1)
        return node

    def _map(self, where: Where, events: Iterator[yaml.Event], depth: int) -> Node:
        node = Node(where, "map")
        for event in events:
            if isinstance(event, yaml.MappingEndEvent):
                break
            key_node = self._node(event, events, depth + 1)
            key = self._key(event, key_node, node)
            child = self._node(next(events), events, depth + 1)
            if key == MERGE:  # What it would have brought is missing: say nothing more of this map.
                node = Node(where, value=REFUSED)
            elif key is not None:
                node.children[key] = child
                node.keys[key] = key_node.where
        return node

    def _key(self, event: yaml.Event, key_node: Node, parent: Node) -> str | None:
        """The key's text, or None (with a finding) for what cannot be a key."""
        if key_node.value is REFUSED and not isinstance(event, yaml.ScalarEvent):
            return None
        if not isinstance(event, yaml.ScalarEvent):
            self._say(key_node.where, "there is a list or a map where a key belongs", "write a word, then ':'")
            return None
        key = UNSEEN.sub("", event.value).strip("" if event.style else CURLY)
        if key == MERGE:
            self._say(key_node.where, "'<<' is a YAML merge key, and merge keys are not read",
                      "write the keys out in full")
            return MERGE
        if key == "":
            self._say(key_node.where, "a key is empty", "write the key's name before ':'")
            return None
        if key in parent.keys:
            self._say(key_node.where, f"the key '{shown(key)}' is here twice, first in line {parent.keys[key].line}",
                      "keep one of them")
            return None
        return key

    def _scalar(self, event: yaml.ScalarEvent, where: Where) -> Node:
        node = Node(where, text=self._text_start(event, where), value=event.value)
        begin, end = _marks(event)
        written = self.source[begin.index : end.index]
        node.one_line = begin.line == end.line and not (event.style == '"' and "\\" in written)
        if event.style == '"' and UNSEEN.search(event.value):
            node.value, node.unseen = REFUSED, self._unseen(event, written)
            self.findings.append(node.unseen)
            return node
        if not event.style and event.tag is None:
            node.value = self._meaning(event.value, where)
            self._look_for_slips(event, node, end)
        return node

    def _look_for_slips(self, event: yaml.ScalarEvent, node: Node, end: Any) -> None:
        """A text without quotes that begins with a curly one, or that ` #` cuts off."""
        if event.value[:1] and event.value[0] in CURLY:
            self.findings.append(curly_quote(node.where, event.value[0]))
            node.value = REFUSED
        rest = _LINE_BREAK.split(self.source[end.index : end.index + LONGEST_COMMENT], maxsplit=1)[0]
        if cut := cut_sentence(Where(self.path, end.line + 1, end.column + 1), event.value, rest):
            self.findings.append(cut)

    def _unseen(self, event: yaml.ScalarEvent, written: str) -> Finding:
        """A sign that nobody sees can stand in a text by its number only: the file itself was looked through before."""
        escape, sign = next(each for each in _escapes(written) if UNSEEN.match(each[1]))
        before = written[: escape.start()]
        begin, _ = _marks(event)
        line = begin.line + before.count("\n")
        column = escape.start() - before.rfind("\n") if "\n" in before else begin.column + escape.start() + 1
        return Finding(Where(self.path, line + 1, column), said_of(sign)[0], f"take '{escape[0]}' out")

    def _meaning(self, text: str, where: Where) -> Any:
        if text in _WORDS:
            return _WORDS[text]
        if _WHOLE.match(text):
            return int(text)
        if _NUMBER.match(text) and text.strip("+-.")[:1].isdigit():
            number = float(text)
            if number - number == 0:
                return number
            self._say(where, f"the number {shown(text)} is too large to calculate with", "write a finite number")
            return REFUSED
        if _NOT_FINITE.match(text) and "." in text:
            self._say(where, f"'{text}' is not a number one can calculate with",
                      "write a finite number, or leave the key out")
            return REFUSED
        return text

    def _text_start(self, event: yaml.ScalarEvent, where: Where) -> Where:
        if event.style in ("'", '"'):
            return where.moved(1)
        if event.style in ("|", ">"):
            for number in range(where.line, len(self.lines)):
                line = self.lines[number]
                if line.strip():
                    return Where(self.path, number + 1, len(line) - len(line.lstrip()) + 1)
        return where

    def _at(self, event: yaml.Event) -> Where:
        begin, _ = _marks(event)
        return Where(self.path, begin.line + 1, begin.column + 1)

    def _say(self, where: Where, what: str, instead: str) -> None:
        self.findings.append(Finding(where, what, instead))


def _marks(event: yaml.Event) -> tuple[Any, Any]:
    """Where an event begins and ends, each with index, line and column: of another class by the reader in C than by the one in Python."""
    return event.start_mark, event.end_mark


def _escapes(written: str) -> Iterator[tuple[re.Match[str], str]]:
    """Each sign that a text in double quotes names, with the sign itself."""
    for escape in _ESCAPE.finditer(written):
        yield escape, chr(int(escape[1][1:], 16)) if len(escape[1]) > 1 else _SHORT_ESCAPES.get(escape[1], escape[1])


class _TooMuch(Exception):
    """Reading stops here: the rest would only take long."""

    def __init__(self, where: Where, what: str, instead: str) -> None:
        self.where, self.what, self.instead = where, what, instead
