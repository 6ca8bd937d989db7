"""The glossary (glossary.yml): a word of the trade, what it is called elsewhere, and what it means in plain words."""

from collections.abc import Iterator

from pydantic import Field

from generator.book.fields.see import See
from generator.book.fields.sourced import CountryId, Record, Sourced, heard
from generator.book.fields.texts import Identifier, Sentence, UnitName, Word


class Term(Sourced):
    """One word. source: where its meaning comes from."""

    name: Word = Field(description="The word this book uses.")
    names: dict[CountryId, tuple[Word, ...]] = Field(
        default={}, description="What it is called in a country where that is another word, usual one first. Search finds them all."
    )
    misspellings: tuple[Word, ...] = heard()
    means: Sentence = Field(
        description="One or two plain sentences. A figure is never typed: {task.scarify.thatch-trigger} puts in a figure of the book."
    )
    unit: UnitName | None = Field(default=None, description="The metric unit it is counted in, as g/m2; the US one is worked out from it.")
    plain_word: bool = Field(
        default=False, description="True for a word of everyday use, such as clay or feed: texts that use it do not lead here."
    )
    see: See = Field(default=See(), description="Pages that say more.")


class Glossary(Record):
    """One file, data/glossary.yml; a book without one has no glossary."""

    terms: dict[Identifier, Term] = Field(min_length=1, description="By id, which is the word's address in the page: glossary.html#thatch.")

    def texts(self) -> Iterator[tuple[tuple[str | int, ...], str]]:
        """Every text that may quote a figure, with its path."""
        for id, term in self.terms.items():
            yield ("terms", id, "means"), term.means


class Topics(Record):
    """Headings under which the lists of answers and of calculators stand, in order."""

    answers: tuple[Word, ...] = Field(default=(), description="Of the list of answers.")
    calculators: tuple[Word, ...] = Field(default=(), description="Of the list of calculators.")
