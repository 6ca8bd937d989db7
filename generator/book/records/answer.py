"""An answer to a question that clients ask by e-mail: one file in data/answers, one page to send on."""

from collections.abc import Iterator

from pydantic import Field, model_validator

from generator.book.fields.see import See
from generator.book.fields.sourced import CautionId, Record, RecordProblem, Sourced, Statement, heard
from generator.book.fields.texts import Sentence, Title, Typed, Word
from generator.book.records.grass import SeasonGroup

FEWEST_SENTENCES, MOST_SENTENCES = 3, 8
QUOTED = "A figure is never typed: {task.water.one-watering-on-sand} puts in a figure of the book, in the reader's units."


class Change(Sourced):
    """Something that makes the answer another one here."""

    what: Word = Field(description="What it depends on, in a word or two: In winter. On sand. In shade.")
    text: Sentence = Field(description="What is different then. " + QUOTED)


class GrassTable(Record):
    """A table worked out from the book: a row for each grass."""

    title: Word
    season_group: SeasonGroup | None = Field(default=None, description="Only grasses of this group; all when left out.")
    columns: dict[Word, Typed] = Field(
        min_length=1, description="Heading to a field of every grass: grass.mowing_height, or grass.tolerance.shade.level."
    )


class Answer(Record):
    question: Title = Field(description="The question as a client types it, with its question mark.")
    asked_as: tuple[Word, ...] = heard("Other wordings people ask it in. Search hears them; nothing shows them.")
    topic: Word = Field(description="Under which heading the list of answers shows it: one of `answers` in topics.yml.")
    short: Statement = Field(description="The answer in one to three sentences, to be read first and alone. " + QUOTED)
    say: tuple[Statement, ...] = Field(
        min_length=FEWEST_SENTENCES, max_length=MOST_SENTENCES, description="What to know or do, a plain sentence or two each. " + QUOTED
    )
    in_order: bool = Field(default=False, description="True when they are steps, to be done one after the other.")
    changes: tuple[Change, ...] = Field(default=(), description="What makes it another answer: season, grass, place.")
    table: GrassTable | None = None
    call: tuple[Statement, ...] = Field(min_length=1, description="When to call the practice, or somebody else.")
    cautions: tuple[CautionId, ...] = Field(default=(), description="Cautions that bite.")
    see: See = Field(default=See(), description="Pages that say more.")

    @model_validator(mode="after")
    def _asks(self) -> "Answer":
        if not self.question.endswith("?"):
            raise RecordProblem("the question has no question mark", "write it as a client asks it", "question")
        return self

    def texts(self) -> Iterator[tuple[tuple[str | int, ...], str]]:
        """Every text that may quote a figure, with its path."""
        yield ("short", "text"), self.short.text
        for field in ("say", "changes", "call"):
            for position, each in enumerate(getattr(self, field)):
                yield (field, position, "text"), each.text
