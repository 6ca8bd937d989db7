"""What of a practice a reader sees on every page: the title of its book, its colour, its logo."""

from typing import Literal

from pydantic import Field

from generator.book.fields.sourced import Record
from generator.book.fields.texts import BookPicture, Colour, Sentence, ShortWord, Title, Word

# Letters of a name that a telephone shows under a sign before it cuts: an assumption, for each counts otherwise.
SHORT_NAME = 12


class Looks(Record):
    """The head of practice.yml. What is left out is made from the practice's name, or is the book's own."""

    name: Word = Field(description="The practice, as its pages, messages and papers call it.")
    book_title: Title | None = Field(
        default=None,
        description="What the book is called; the practice's name and 'practice book' when left out. `site_name` in mkdocs.yml says the same.",
    )
    short_name: ShortWord | None = Field(
        default=None, description="What stands under its sign on a telephone; the first words of the name when left out."
    )
    description: Sentence | None = Field(
        default=None, description="What the book is, in a sentence, for search engines and link previews; `about` when left out."
    )
    colour: Colour | None = Field(
        default=None, description="The practice's colour, in quotes: \"#24527a\". Links, buttons and edges take it; the book's own green when left out."
    )
    logo: BookPicture | None = Field(
        default=None, description="An SVG or PNG file, by its path from the book's folder: logo.svg. It stands in the header and on what clients get on paper."
    )
    favicon: BookPicture | None = Field(default=None, description="What a browser's tab shows, a square SVG or PNG; the logo when left out.")
    units: Literal["metric", "us"] | None = Field(
        default=None, description="The units in which pages open, until a reader chooses; those of the home place's country when left out."
    )

    @property
    def title(self) -> str:
        return self.book_title or f"{self.name} practice book"

    @property
    def under_its_sign(self) -> str:
        """As many whole words of the name as fit below a sign, at least one."""
        if self.short_name:
            return self.short_name
        first, *others = self.name.split()
        for word in others:
            if len(f"{first} {word}") > SHORT_NAME:
                break
            first = f"{first} {word}"
        return first
