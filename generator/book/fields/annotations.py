"""Reading a record's type hints: what stands under a key, and what is said of it."""

from collections.abc import Iterator
from types import UnionType
from typing import Annotated, Any, Union, get_args, get_origin

from pydantic import BaseModel


def alternatives(hint: Any) -> Iterator[Any]:
    """The types a hint allows, without None and without annotations."""
    origin = get_origin(hint)
    if origin is Annotated:
        yield from alternatives(get_args(hint)[0])
    elif origin in (Union, UnionType):
        for member in get_args(hint):
            yield from alternatives(member)
    elif hint is not type(None):
        yield hint


def record_of(hint: Any) -> type[BaseModel] | None:
    """The record a hint allows, if it allows one."""
    return next((t for t in alternatives(hint) if isinstance(t, type) and issubclass(t, BaseModel)), None)


def inside(hint: Any, step: str | int) -> Any:
    """The hint of what stands under a key or a position; None when nothing may."""
    for kind in alternatives(hint):
        if get_origin(kind) is tuple and isinstance(step, int):
            return get_args(kind)[0]
        if get_origin(kind) is dict and isinstance(step, str):
            return get_args(kind)[1]
    record = record_of(hint)
    field = record.model_fields.get(str(step)) if record else None
    return field.annotation if field else None
