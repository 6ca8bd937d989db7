"""The work record (record.yml): which columns it has, and which public lists ask for them."""

from typing import Literal

from pydantic import Field, model_validator

from generator.book.fields.sourced import CalculatorId, CountryId, Record, RecordProblem, Sourced, TaskId
from generator.book.fields.texts import Identifier, Name, Sentence, UnitName, Word

ColumnKind = Literal["date", "time", "text", "number", "choice", "grass"]
Work = Literal["spray", "feed"]
# The columns that the yearly sum is made of: they are read, not only kept.
COUNTED = {"work": "choice", "date": "date", "lawn": "text", "grass": "grass", "area": "number", "amount": "number", "nitrogen_percent": "number"}


class PublishedList(Sourced):
    """One public list of what such a record must hold. A help, not the law: law changes, and permits and labels add to it."""

    country: CountryId
    authority: Word = Field(description="Whose list it is: New South Wales, federal, Maryland.")
    whom: Sentence = Field(description="Who it binds and to what, in a sentence.")
    written_within: Word | None = Field(default=None, description="How soon the record is made: '48 hours'.")
    kept: Word | None = Field(default=None, description="How long it is kept: '3 years'.")


class Column(Record):
    """One column of the record. Its id heads the column of the CSV file and never changes."""

    label: Word = Field(description="In plain words, as the form asks for it.")
    kind: ColumnKind = Field(description="date, time, text, number (with its unit beside it), choice, or grass.")
    unit: UnitName | None = Field(default=None, description="For a number: its metric unit, as the form starts with it.")
    us_unit: UnitName | None = Field(default=None, description="US unit, when it differs.")
    also: tuple[UnitName, ...] = Field(default=(), description="Other units it is given in, one of each further kind: L beside kg.")
    choices: dict[Identifier, Word] = Field(default={}, description="For a choice: an id to its words.")
    work: tuple[Work, ...] = Field(default=(), description="The work that has this column; all of it where left out.")
    needed: bool = Field(default=False, description="True when no entry goes without it.")
    help: Sentence | None = Field(default=None, description="Shown beside the field.")
    asked_by: tuple[Identifier, ...] = Field(default=(), description="The lists that ask for it, by their ids above.")

    @model_validator(mode="after")
    def _fits_its_kind(self) -> "Column":
        if (self.kind == "number") != (self.unit is not None):
            raise RecordProblem("a number has a unit, and nothing else has one", "give 'unit' for kind 'number' only", "kind")
        if (self.kind == "choice") != bool(self.choices):
            raise RecordProblem("a choice has choices, and nothing else has them", "give 'choices' for kind 'choice' only", "kind")
        return self


class WorkRecord(Record):
    """One file, data/record.yml; a book without one has no work record."""

    title: Word
    summary: Sentence
    law: Sentence = Field(description="Defers to the law of the place, in the words that stand on the page.")
    tasks: dict[TaskId, Work] = Field(default={}, description="Tasks whose pages and steps lead to the record, with the kind of work that each is.")
    nitrogen_by: CalculatorId = Field(
        description="The calculator that turns a feed into nitrogen to the area: inputs product, area and nitrogen_percent, result nitrogen_rate.",
    )
    lists: dict[Identifier, PublishedList] = Field(min_length=1)
    columns: dict[Name, Column] = Field(min_length=1, description="In the order of the form and of the CSV file; ids with _ between words.")

    @model_validator(mode="after")
    def _holds_together(self) -> "WorkRecord":
        for id, kind in COUNTED.items():
            if id not in self.columns or self.columns[id].kind != kind:
                raise RecordProblem(f"the yearly sum needs a column '{id}' of kind {kind}", "add it, or give it that kind", "columns")
        for id, column in self.columns.items():
            for each in column.asked_by:
                if each not in self.lists:
                    raise RecordProblem(f"column '{id}' is asked for by '{each}', which is not among the lists", f"the lists are: {', '.join(self.lists)}", "columns")
        if set(self.columns["work"].choices) != {"spray", "feed"}:
            raise RecordProblem("the work is a spray or a feed", "give the choices 'spray' and 'feed'", "columns")
        return self
