"""A hold: one file in data/holds. Its rules say when a day's weather, ground or label stops a task, and what would change that."""

from typing import Literal

from pydantic import Field

from generator.book.fields.sourced import CautionId, OnlyTaskId, Record, Sourced
from generator.book.fields.texts import FormulaText, LongWord, Name, Sentence, Word
from generator.book.records.calculator import Constant


class HoldRule(Sourced):
    """One condition under which a task waits, or goes ahead with care."""

    when: FormulaText = Field(
        description="One line, true or false: leaf_wet, or rain_to_come >= heavy_rain. Over what the reader answers and the constants here."
    )
    answer: Literal["hold", "care"] = Field(description="hold: wait. care: go ahead, and mind the reason.")
    again: Literal["later today", "tomorrow", "in a week"] = Field(
        default="tomorrow", description="For hold: how soon the same question may have another answer.",
    )
    reason: Sentence = Field(description="Why, said to whoever is at the lawn. {frost_seen} puts in how long ago frost was seen: two nights ago.")
    change: Sentence = Field(description="What would change the answer: what to wait for, or to do first.")


class Hold(Record):
    name: Word = Field(description="The subject, short and plain: Dew on the leaf.")
    tasks: tuple[OnlyTaskId, ...] = Field(default=(), description="Tasks it is asked for.")
    cautions: tuple[CautionId, ...] = Field(default=(), description="Cautions to read when it holds.")
    figures: dict[Name, LongWord] = Field(
        default={}, max_length=60, description="Figures that rules use: a name to task.figure, as feed.heavy-rain, or to season-groups.rule."
    )
    constants: dict[Name, Constant] = Field(default={}, max_length=60, description="Numbers of its own, each with its unit and source.")
    rules: tuple[HoldRule, ...] = Field(min_length=1, max_length=60, description="Each is asked; one that holds outweighs all that ask for care.")
