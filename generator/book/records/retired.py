"""Ids that were in the book once, in data/retired.yml: links and codes handed out long ago still name them."""

from collections.abc import Iterable
from typing import Any

from pydantic import Field, create_model

from generator.book.fields.sourced import Record
from generator.book.fields.texts import Identifier, Sentence, Word

ALSO = {"steps": " Steps that only one plan had are among them."}


class RetiredId(Record):
    """One id that is no longer in use, and never will be again."""

    name: Word = Field(description="What it was called.")
    instead: Identifier | None = Field(default=None, description="Id of the same kind that took its place; left out where nothing did.")
    why: Sentence = Field(description="Why it is gone, in words for the client who opens an old link.")


def retired_record(kinds: Iterable[str]) -> type[Record]:
    """The record of the file: for each kind, its retired ids."""
    fields: dict[str, Any] = {
        kind: (dict[Identifier, RetiredId], Field(default={}, description=f"Ids that data/{kind} held once.{ALSO.get(kind, '')}")) for kind in kinds
    }
    record: type[Record] = create_model("Retired", __base__=Record, __doc__="What was in the book once, by kind and id.", **fields)
    return record
