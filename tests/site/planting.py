"""A book with markup in every text that it accepts: each text has a number of its own, so that a hit on a page names its field.

Texts are found by the records' own models, so a new field is planted as soon as it is written. What `check` refuses is taken back and kept
with the reason. The records are written as JSON, which is YAML, one value a line, so that a finding leads to its text.
"""

import json
import re
from collections.abc import Iterator
from copy import deepcopy
from dataclasses import dataclass, field
from pathlib import Path
from types import UnionType
from typing import Annotated, Any, Union, get_args, get_origin

from pydantic import BaseModel, TypeAdapter, ValidationError

from generator.book.fields.sourced import Reference
from generator.book.fields.texts import IDENTIFIER
from generator.book.loading.folders import SINGLES
from generator.book.loading.marked_yaml import Node, read_tree
from generator.book.records import KINDS
from generator.checks import check_book
from generator.findings import Finding

Steps = tuple[str | int, ...]
# Ends an attribute in either kind of quote, then opens an element that runs as soon as it is read.
PLANT = "\"'><img src=x onerror=planted({n})>"
# The same for what takes no spaces, as a web address.
NO_SPACES = "\"'><svg/onload=planted({n})>"
MOST_ROUNDS = 12
# Fields that the book looks up or works with: units, formulas, and the names that formulas use. Their last steps; ids are known by their models.
LOOKED_UP = (
    ".unit", ".us_unit", ".columns.*.also", ".formula", ".binds", ".do_when", ".not_when", ".rules.when", ".warnings.when", ".outcomes.when",
    ".figures.*", ".fill.*", ".given.*", ".inputs.*", ".depth", ".result", ".spoil", ".settles", "answers.table.columns.*", ".inputs.key",
    ".results.key", ".constants.key", ".figures.key", ".given.key", ".weighed.key", ".fill.key", ".rules.key", ".sites.key", ".sites.*.key",
    ".columns.key", ".words.key",
)
# What is put in where a record says nothing: a text, a list of them, a sentence with its source, a list of those, an address.
_SAID = {"text": "A text.", "source": "assumption"}
_FILLERS = ("A text.", ["A text."], {"AU": "A text."}, _SAID, [_SAID], "https://lawns.example/")


@dataclass(frozen=True)
class Text:
    """One text of a record: where it stands, whether it is the key of what stands there, and what its model says of it."""

    steps: Steps
    value: str
    is_key: bool
    marks: tuple[Any, ...]
    field: str

    @property
    def is_prose(self) -> bool:
        """Written to be read, and not to be looked up."""
        is_id = any(isinstance(mark, Reference) or getattr(mark, "pattern", None) == IDENTIFIER for mark in self.marks)
        return not is_id and (self.field == "answers.table.columns.key" or not self.field.endswith(LOOKED_UP))


@dataclass
class Planted:
    """texts: number to the field and what stands in it now. refused: field to why its plant was not taken. looked_up: fields left alone."""

    texts: dict[int, tuple[str, str]] = field(default_factory=dict)
    refused: dict[str, str] = field(default_factory=dict)
    looked_up: set[str] = field(default_factory=set)


def plant(book: Path) -> Planted:
    """Plants every text of the book in that folder, in its files."""
    made = Planted()
    records = {file: _plain(file) for file in sorted((book / "data").rglob("*.yml"))}
    places: dict[tuple[str, Steps], int] = {}
    number = 0
    for file, record in records.items():
        path, hint = file.relative_to(book).as_posix(), _hint(file)
        _fill(hint, record, _kind(file))
        for text in list(texts(hint, record, _kind(file))):
            if not text.is_prose:
                made.looked_up.add(text.field)
                continue
            number += 1
            taken = next((new for new in _plants(text, number) if _is_taken(hint, record, text, new)), None)
            if taken is None:
                made.refused[text.field] = "its model"
            else:
                made.texts[number] = text.field, taken
                places[path, text.steps] = number
    _take_back(book, records, made, places)
    return made


def texts(hint: Any, value: Any, name: str, steps: Steps = (), marks: tuple[Any, ...] = ()) -> Iterator[Text]:
    """Every text in a plain value, by what its model says may stand there. Keys come after what stands under them."""
    hint, marks = _member(hint, value, marks)
    origin = get_origin(hint)
    if isinstance(value, str) and hint is str:
        yield Text(steps, value, False, marks, name)
    elif origin is tuple and isinstance(value, list):
        for at, item in enumerate(value):
            yield from texts(get_args(hint)[0], item, name, (*steps, at))
    elif origin is dict and isinstance(value, dict):
        for key, item in value.items():
            yield from texts(get_args(hint)[1], item, f"{name}.*", (*steps, key))
            bare, key_marks = _member(get_args(hint)[0], key, ())
            if bare is str:
                yield Text((*steps, key), key, True, key_marks, f"{name}.key")
    elif _is_record(hint) and isinstance(value, dict):
        for each, about in hint.model_fields.items():
            if each in value:
                yield from texts(about.annotation, value[each], f"{name}.{each}", (*steps, each), tuple(about.metadata))


def fields(hint: Any, name: str, marks: tuple[Any, ...] = (), inside: tuple[Any, ...] = ()) -> Iterator[str]:
    """The name of every text that a model allows, prose or not; a record inside itself is entered once."""
    origin = get_origin(hint)
    if origin is Annotated:
        yield from fields(get_args(hint)[0], name, (*marks, *get_args(hint)[1:]), inside)
    elif origin in (Union, UnionType):
        for each in get_args(hint):
            yield from fields(each, name, marks, inside)
    elif origin is tuple:
        yield from fields(get_args(hint)[0], name, (), inside)
    elif origin is dict:
        yield from fields(get_args(hint)[0], f"{name}.key", (), inside)
        yield from fields(get_args(hint)[1], f"{name}.*", (), inside)
    elif _is_record(hint) and hint not in inside:
        for each, about in hint.model_fields.items():
            yield from fields(about.annotation, f"{name}.{each}", tuple(about.metadata), (*inside, hint))
    elif hint is str:
        yield name


def all_fields() -> set[str]:
    """Every text field of every kind of record."""
    return {name for kind, hint in (KINDS | {file.removesuffix(".yml"): hint for file, hint in SINGLES.items()}).items() for name in fields(hint, kind)}


def _fill(hint: Any, value: Any, path: str) -> None:
    """Puts a text in where a record may say something and does not: a note, another name, a sentence. All else is left out as it is."""
    hint, _ = _member(hint, value, ())
    origin = get_origin(hint)
    if origin is tuple and isinstance(value, list):
        for item in value:
            _fill(get_args(hint)[0], item, path)
    elif origin is dict and isinstance(value, dict):
        for item in value.values():
            _fill(get_args(hint)[1], item, f"{path}.*")
    elif _is_record(hint) and isinstance(value, dict) and not isinstance(value.get("use"), str):  # What uses a shared step would overwrite its texts.
        for name, about in hint.model_fields.items():
            if name in value:
                _fill(about.annotation, value[name], f"{path}.{name}")
                continue
            for filler in _FILLERS:
                new = deepcopy(filler)
                found = list(texts(about.annotation, new, f"{path}.{name}", (), tuple(about.metadata)))
                if any(each.is_prose for each in found) and _is_sound(hint, {**value, name: new}):
                    value[name] = new
                    _fill(about.annotation, new, f"{path}.{name}")
                    break


def _is_sound(hint: Any, record: Any) -> bool:
    try:
        TypeAdapter(hint).validate_python(_tuples(record))
    except ValidationError:
        return False
    return True


def _is_record(hint: Any) -> bool:
    return isinstance(hint, type) and issubclass(hint, BaseModel)


def _member(hint: Any, value: Any, marks: tuple[Any, ...]) -> tuple[Any, tuple[Any, ...]]:
    """Of the types a hint allows, the one that this value is, with what is said of it."""
    origin = get_origin(hint)
    if origin is Annotated:
        return _member(get_args(hint)[0], value, (*marks, *get_args(hint)[1:]))
    if origin in (Union, UnionType):
        found = (_member(each, value, marks) for each in get_args(hint))
        return next((each for each in found if _fits(each[0], value)), (None, ()))
    return hint, marks


def _fits(hint: Any, value: Any) -> bool:
    if isinstance(value, str):
        return hint is str
    if isinstance(value, list):
        return get_origin(hint) is tuple
    return isinstance(value, dict) and (get_origin(hint) is dict or _is_record(hint))


def _kind(file: Path) -> str:
    return file.parent.name if file.parent.name in KINDS else file.stem


def _hint(file: Path) -> Any:
    return KINDS.get(file.parent.name) or SINGLES[file.name]


def _plain(file: Path) -> Any:
    tree, findings = read_tree(file.read_text(encoding="utf-8"), file.name)
    assert tree is not None and not findings
    return json.loads(json.dumps(tree.plain()))


def _plants(text: Text, number: int) -> tuple[str, ...]:
    """Behind what stood there, or in its place where that would be too long; an address and a question end as they did."""
    ending = text.value[-1] if text.value.endswith(("/", "?")) else ""
    spaced, tight = PLANT.format(n=number), NO_SPACES.format(n=number)
    return text.value + spaced + ending.strip("/"), text.value + tight + ending, spaced, tight


def _is_taken(hint: Any, record: Any, text: Text, new: str) -> bool:
    """Puts the new text in; out again when the record's model refuses it."""
    _put(record, text, new)
    if _is_sound(hint, record):
        return True
    _put(record, Text((*text.steps[:-1], new), new, True, (), "") if text.is_key else text, text.value)
    return False


def _put(record: Any, text: Text, new: str) -> None:
    *way, last = text.steps
    for step in way:
        record = record[step]
    if text.is_key:
        items = [(new if key == last else key, item) for key, item in record.items()]
        record.clear()
        record.update(items)
    else:
        record[last] = new


def _tuples(value: Any) -> Any:
    """Lists as the reader of books hands them over."""
    if isinstance(value, dict):
        return {key: _tuples(item) for key, item in value.items()}
    return tuple(_tuples(item) for item in value) if isinstance(value, list) else value


def _take_back(book: Path, records: dict[Path, Any], made: Planted, places: dict[tuple[str, Steps], int]) -> None:
    """Takes out what `check` refuses, until it has nothing to say."""
    originals = {file: _plain(file) for file in records}
    for _ in range(MOST_ROUNDS):
        for file, record in records.items():
            file.write_text(json.dumps(record, indent=1, ensure_ascii=False), encoding="utf-8")
        _name_the_site(book, records[book / "data/practice.yml"])
        findings = check_book(book).findings
        if not findings:
            return
        for finding in findings:
            file = book / finding.where.path
            steps = _steps_at(file, finding)
            number = places.pop((finding.where.path, steps), None)
            assert number is not None, f"no plant stands where this was found: {finding}"
            made.refused[made.texts.pop(number)[0]] = f"{finding.what}; {finding.instead}"
            _restore(records[file], originals[file], steps)
    raise AssertionError(f"still not in order: {findings}")


def _name_the_site(book: Path, practice: Any) -> None:
    """mkdocs.yml calls the site as the practice calls its book."""
    settings, title = book / "mkdocs.yml", practice.get("book_title") or f"{practice['name']} practice book"
    named = re.sub(r"^site_name: .*$", lambda _: f"site_name: {json.dumps(title)}", settings.read_text(encoding="utf-8"), flags=re.MULTILINE)
    settings.write_text(named, encoding="utf-8")


def _restore(record: Any, original: Any, steps: Steps) -> None:
    """What stood there before; nothing where nothing stood."""
    *way, last = steps
    for step in way:
        record, original = record[step], original.get(step, {}) if isinstance(original, dict) else original[step]
    if isinstance(original, dict) and last not in original:
        del record[last]
    else:
        record[last] = original[last]


def _steps_at(file: Path, finding: Finding) -> Steps:
    tree, _ = read_tree(file.read_text(encoding="utf-8"), finding.where.path)
    assert tree is not None
    return next((steps for steps, node in _nodes(tree) if node.kind == "scalar" and node.where.line == finding.where.line), ())


def _nodes(node: Node, steps: Steps = ()) -> Iterator[tuple[Steps, Node]]:
    yield steps, node
    for step, child in node.children.items():
        yield from _nodes(child, (*steps, step))
