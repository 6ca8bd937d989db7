"""Walking a record: every record inside it, with its path; and what a figure must measure."""

from collections.abc import Iterator
from typing import Annotated, Any, get_args, get_origin

from pydantic import BaseModel

from generator.book.fields.sourced import Measured

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
