"""References from one record to another: which ids a record names, and where."""

from collections.abc import Hashable, Iterator
from dataclasses import dataclass
from functools import cache
from types import UnionType
from typing import Annotated, Any, Union, get_args, get_origin

from pydantic import BaseModel

from generator.book.fields.sourced import Reference

KEY = "[key]"  # Last step of a path that means the key itself, not what stands under it.


@dataclass(frozen=True)
class Named:
    """An id that a record names: of what, and under which path of the record."""

    reference: Reference
    id: str
    path: tuple[str | int, ...]


def named_by(record: BaseModel) -> Iterator[Named]:
    """Every id that a record names, in the order of its fields."""
    for name, field in type(record).model_fields.items():
        value = getattr(record, name)
        reference = next((m for m in field.metadata if isinstance(m, Reference)), None)
        if reference and isinstance(value, str):
            yield Named(reference, value, (name,))
        elif isinstance(field.annotation, Hashable) and _may_name(field.annotation):
            yield from _named(field.annotation, value, (name,))


def _named(hint: Any, value: Any, path: tuple[str | int, ...]) -> Iterator[Named]:
    if isinstance(value, BaseModel):
        for found in named_by(value):
            yield Named(found.reference, found.id, path + found.path)
        return
    origin, arguments = get_origin(hint), get_args(hint)
    if origin is Annotated:
        reference = next((m for m in arguments[1:] if isinstance(m, Reference)), None)
        if reference and isinstance(value, str):
            yield Named(reference, value, path)
        else:
            yield from _named(arguments[0], value, path)
    elif origin in (Union, UnionType):
        for member in arguments:
            yield from _named(member, value, path)
    elif origin is tuple and isinstance(value, tuple):
        for position, item in enumerate(value):
            yield from _named(arguments[0], item, (*path, position))
    elif origin is dict and isinstance(value, dict):
        for key, item in value.items():
            yield from _named(arguments[0], key, (*path, key, KEY))
            yield from _named(arguments[1], item, (*path, key))


@cache
def _may_name(hint: Any) -> bool:
    """False for hints without records or references: most fields, so that loading stays quick."""
    if isinstance(hint, type) and issubclass(hint, BaseModel):
        return True
    if get_origin(hint) is Annotated and any(isinstance(m, Reference) for m in get_args(hint)[1:]):
        return True
    return any(_may_name(member) for member in get_args(hint) if _is_hint(member))


def _is_hint(member: Any) -> bool:
    return isinstance(member, type) or get_origin(member) is not None
