"""Walking a record: every record inside it, with its path; what a figure must measure, and what a number means."""

from collections.abc import Iterator
from functools import cache
from types import UnionType
from typing import Annotated, Any, Union, get_args, get_origin

from pydantic import BaseModel

from generator.book.fields.numbers import OfKind
from generator.book.fields.plausible import Plausible
from generator.book.fields.sourced import Claim, Measured

Path = tuple[str | int, ...]


def parts(value: Any, path: Path = ()) -> Iterator[tuple[Path, BaseModel]]:
    """Every record inside `value`, itself first, each with its path, in the order of the fields."""
    if isinstance(value, BaseModel):
        yield path, value
        for name in type(value).model_fields:
            yield from parts(getattr(value, name), (*path, name))
    elif isinstance(value, tuple):
        for position, item in enumerate(value):
            yield from parts(item, (*path, position))
    elif isinstance(value, dict):
        for key, item in value.items():
            yield from parts(item, (*path, key))


def measured(record: BaseModel | type[BaseModel], name: str) -> Measured | None:
    """Which kind of quantity a field must hold, and how much of it; None when any will do."""
    field = (record if isinstance(record, type) else type(record)).model_fields[name]
    marks = [*field.metadata, *_marks(field.annotation)]
    return next((mark for mark in marks if isinstance(mark, Measured)), None)


def _marks(hint: Any) -> Iterator[Any]:
    for member in get_args(hint):
        if get_origin(member) is Annotated:
            yield from get_args(member)[1:]


def meant(record: BaseModel) -> Iterator[tuple[Path, float | Claim, Plausible]]:
    """Every number and figure of a record that its field says the meaning of, with its path and what it may be."""
    for path, part in parts(record):
        for name, marks, hint in _fields_with_meaning(type(part)):
            yield from _meant(marks, hint, getattr(part, name), (*path, name))


@cache
def _fields_with_meaning(record: type[BaseModel]) -> tuple[tuple[str, tuple[Any, ...], Any], ...]:
    fields = ((name, tuple(field.metadata), field.annotation) for name, field in record.model_fields.items())
    return tuple((name, marks, hint) for name, marks, hint in fields if _says(marks) or _has_meaning(hint))


def _says(marks: tuple[Any, ...]) -> OfKind | Measured | None:
    return next((mark for mark in marks if isinstance(mark, OfKind | Measured)), None)


def _has_meaning(hint: Any) -> bool:
    return (get_origin(hint) is Annotated and _says(get_args(hint)[1:]) is not None) or any(_has_meaning(member) for member in get_args(hint))


def _meant(marks: tuple[Any, ...], hint: Any, value: Any, path: Path) -> Iterator[tuple[Path, float | Claim, Plausible]]:
    origin, arguments = get_origin(hint), get_args(hint)
    if origin is Annotated:
        yield from _meant((*marks, *arguments[1:]), arguments[0], value, path)
    elif origin in (Union, UnionType):
        for member in arguments:
            yield from _meant(marks, member, value, path)
    elif origin is tuple and isinstance(value, tuple):
        for position, item in enumerate(value):
            yield from _meant((), arguments[0], item, (*path, position))
    elif origin is dict and isinstance(value, dict):
        for key, item in value.items():
            yield from _meant((), arguments[1], item, (*path, key))
    elif isinstance(value, int | float | Claim) and hint is not type(None) and (says := _says(marks)):
        yield path, value, says.row
