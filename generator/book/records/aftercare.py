"""An aftercare sheet: one file in data/aftercare."""

from typing import Annotated

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


class Aftercare(Record):
    name: Word
    job: Word = Field(description="The job it follows, as a client would say it.")
    misspellings: tuple[Word, ...] = heard()
    summary: Sentence = Field(description="The one thing to remember, first.")
    days: tuple[AftercareDays, ...] = Field(min_length=1)
    normal: tuple[Statement, ...] = statements("What looks alarming but is normal.")
    call: tuple[Statement, ...] = statements("When to call.")
    cautions: tuple[CautionId, ...] = ()
    tasks: tuple[TaskId, ...] = Field(default=(), description="Tasks it belongs to.")
