"""What of the shared knowledge a practice has in its book."""

from typing import Literal

from pydantic import Field

from generator.book.fields.looks import Looks
from generator.book.fields.texts import Identifier

# What may be left out one by one; grasses, places and plans are chosen.
Kind = Literal["tasks", "calculators", "problems", "answers"]


class OverShared(Looks):
    """The part of practice.yml that chooses. What is left out takes along whatever names it, and nothing shared speaks of it."""

    shared_knowledge: bool = Field(
        default=False, description="True for a book over the shared knowledge: what is not in its own data/ and content/ is taken from there."
    )
    grasses: tuple[Identifier, ...] | None = Field(
        default=None, min_length=1, description="The grasses that are in the book; every one when left out. What is shared speaks of no other.",
    )
    plans: tuple[Identifier, ...] | None = Field(
        default=None, min_length=1,
        description="Renovation plans that are in the book beside the one that each grass follows; every one that a grass of it may follow when left out.",
    )
    without: dict[Kind, tuple[Identifier, ...]] = Field(
        default={}, description="Shared records that the book is to be without, by the folder they lie in. No caution can be left out.",
    )
