"""An aftercare sheet: one file in data/aftercare."""

from typing import Annotated, Literal

from pydantic import Field

from generator.book.fields.numbers import OfKind
from generator.book.fields.sourced import CautionId, Record, Sourced, Statement, TaskId, heard, statements
from generator.book.fields.texts import Sentence, Title, Word
from generator.book.records.step import Quantity


class AftercareDays(Sourced):
    """What a client does from one day to another after the job."""

    from_day: Annotated[int, OfKind("day of aftercare")]
    to_day: Annotated[int, OfKind("day of aftercare")]
    title: Title
    do: tuple[Sentence, ...] = Field(min_length=1)
    leave: tuple[Sentence, ...] = Field(default=(), description="What not to do yet.")
    why: Sentence | None = None
    quantities: tuple[Quantity, ...] = Field(default=(), description="Calculators shown with these days: litres, or how long to run the sprinklers.")


class AnswerByDays(Record):
    """What a client is told from one day to another, in one short line."""

    from_day: Annotated[int, OfKind("day of aftercare")]
    to_day: Annotated[int, OfKind("day of aftercare")]
    say: Word


class Allowed(AnswerByDays):
    """The same, of what a client may do or may not."""

    may: Literal["not-yet", "with-care", "as-usual"]


class Coming(Record):
    """What comes on a day: the next one is told until its day is there."""

    day: Annotated[int, OfKind("day of aftercare")]
    say: Word


class Asked(Sourced):
    """What clients ask on any day, in the order in which they are told it. Each but the last is answered for every day of the sheet, without a gap."""

    walk: tuple[Allowed, ...] = Field(min_length=1, description="May children, the dog, furniture go on it?")
    mower: tuple[Allowed, ...] = Field(min_length=1, description="May the mower go on it?")
    water: tuple[AnswerByDays, ...] = Field(
        min_length=1, description="How to water. How much is taken from the calculators of the days below, so parted where they tell another amount."
    )
    height: tuple[AnswerByDays, ...] = Field(min_length=1, description="How high to cut, and when first.")
    colour: tuple[AnswerByDays, ...] = Field(min_length=1, description="Is yellow or brown normal now?")
    coming: tuple[Coming, ...] = Field(min_length=1, description="What comes next, by its day. The end of the sheet is told by itself.")

    @property
    def by_days(self) -> dict[str, tuple[AnswerByDays, ...]]:
        """Those that are answered from day to day, by their key."""
        return {"walk": self.walk, "mower": self.mower, "water": self.water, "height": self.height, "colour": self.colour}


class Aftercare(Record):
    name: Word
    job: Word = Field(description="The job it follows, as a client would say it.")
    misspellings: tuple[Word, ...] = heard()
    summary: Sentence = Field(description="The one thing to remember, first.")
    asked: Asked
    days: tuple[AftercareDays, ...] = Field(min_length=1)
    normal: tuple[Statement, ...] = statements("What looks alarming but is normal.")
    call: tuple[Statement, ...] = statements("When to call.")
    cautions: tuple[CautionId, ...] = ()
    tasks: tuple[TaskId, ...] = Field(default=(), description="Tasks it belongs to.")

    @property
    def last_day(self) -> int:
        """The last day that it tells of, counted from the job."""
        return max(each.to_day for each in self.days)
