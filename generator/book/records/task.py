"""A task: one file in data/tasks."""

from typing import Annotated, Literal

from pydantic import Field, model_validator

from generator.book.fields.numbers import OfKind
from generator.book.fields.sourced import CalculatorId, CautionId, CountryId, Figure, Record, RecordProblem, Sourced, Statement, TaskId, heard, statements
from generator.book.fields.texts import FormulaText, Identifier, LongWord, Sentence, Typed, Word
from generator.book.records.grass import SeasonGroup
from generator.book.records.step import StepId

# A rule that comes round at least so often is a rhythm, not an event.
RHYTHM_WEEKS = 4
WEEKS_OF_A_YEAR = 52


class Due(Sourced):
    """When a calendar lists this task: a condition over the season's quantities, never a month."""

    do_when: FormulaText = Field(description="Formula: true in a week when the task falls due.")
    not_when: FormulaText | None = Field(
        default=None, description="Formula: true in a week when the task does not fall due, whatever `do_when` says."
    )
    season_group: SeasonGroup | None = Field(default=None, description="Only for this group; both when left out.")
    every_weeks: Annotated[int, OfKind("weeks between")] = Field(default=1, description="At most once in so many weeks.")
    at_most: Annotated[int, OfKind("times a year")] | None = Field(
        default=None, description="At most so many times a year; the weeks about the main renovation window go first."
    )
    say: Sentence = Field(description="What the calendar says, short enough for a printed month.")
    because: Sentence = Field(description="The reason shown beside it.")

    @model_validator(mode="after")
    def _fits_a_year(self) -> "Due":
        if self.at_most is not None and (self.at_most - 1) * self.every_weeks >= WEEKS_OF_A_YEAR:
            what = f"{self.at_most} times, every {self.every_weeks} weeks, take more than a year"
            raise RecordProblem(what, f"give {WEEKS_OF_A_YEAR // self.every_weeks} or fewer, or fewer weeks between", "at_most")
        return self

    @property
    def is_rhythm(self) -> bool:
        """True for what comes round again and again, such as mowing; False for what is done once or a few times a year."""
        return self.at_most is None and self.every_weeks <= RHYTHM_WEEKS


class TaskStep(Statement):
    """One step of a task, with the cautions that bite at it."""

    cautions: tuple[CautionId, ...] = Field(default=(), description="Those of the task's cautions that bite at this step: shown at it.")


class NotAdvised(Statement):
    """Why a task is not done in some countries."""

    countries: tuple[CountryId, ...] = Field(min_length=1)


class Task(Record):
    name: Word = Field(description="A verb or the trade's word: Scarify.")
    names: dict[CountryId, tuple[Word, ...]] = Field(default={}, description="What it is called by country.")
    misspellings: tuple[Word, ...] = heard()
    summary: Sentence = Field(description="What it is and when, in two sentences: the answer first.")
    purpose: tuple[Statement, ...] = statements("What it is for.")
    timing: tuple[Statement, ...] = statements("When, in terms of growth, soil and weather; no month names.")
    not_advised: tuple[NotAdvised, ...] = Field(default=(), description="Where it is not done on lawns, and why: it has no window there.")
    steps: tuple[TaskStep, ...] = Field(min_length=1, description="How it is done, in order, with what bites at each step.")
    figures: dict[Identifier, Figure] = Field(default={}, description="Rates, depths and limits, by a short name.")
    machine: tuple[Statement, ...] = statements("What with, and how to set it.")
    check: tuple[Statement, ...] = statements("How to see that it was done right.")
    mistakes: tuple[Statement, ...] = statements("What usually goes wrong.")
    recovery: tuple[Statement, ...] = statements("How long until it looks right again.")
    weather: tuple[Statement, ...] = statements("When to hold off.")
    order: tuple[Statement, ...] = statements("What goes before and after.")
    gear: tuple[Word, ...] = Field(default=(), description="Machines and tools, plain names.")
    calculators: tuple[CalculatorId, ...] = Field(default=(), description="Calculators that belong to it.")
    fill: dict[LongWord, Typed] = Field(
        default={}, description="Input of its first calculator to what fills it in on this page: a value, or a field such as 'task.one-watering-on-sand'."
    )
    cautions: tuple[CautionId, ...] = Field(
        default=(), description="Cautions that bite during it. One that no step names is shown before the first step."
    )
    due: tuple[Due, ...] = Field(default=(), max_length=60, description="When calendars list it.")
    on_a_visit: StepId | None = Field(
        default=None, description="The shared step by which a visit of a year's programme does it: its amounts, its gear. The task alone where left out."
    )
    not_on_one_visit: tuple[TaskId, ...] = Field(
        default=(), description="Tasks that want some weeks between them and this one: a programme moves neither to where the other may be."
    )
    in_the_shed: bool = Field(default=False, description="True for what is done to the machines and not on the lawn: no visit is made for it.")
    operation: bool = Field(
        default=False, description="True when each grass carries a level (none to hard) for it."
    )


Weight = Literal["note", "care", "danger"]


class Caution(Record):
    """A caution: one file in data/cautions. It says the usual and defers to those who decide."""

    name: Word = Field(description="Short and plain: Buried pipes and cables.")
    misspellings: tuple[Word, ...] = heard()
    weight: Weight = Field(description="note, care or danger: danger is for what can kill or maim.")
    summary: Sentence = Field(description="One sentence to show at the step where it bites.")
    hazard: tuple[Statement, ...] = Field(min_length=1, description="What can happen.")
    at_risk: tuple[Statement, ...] = statements("Who can be hurt.")
    what_to_do: tuple[Statement, ...] = Field(min_length=1, description="The usual precautions.")
    defer_to: dict[CountryId, Sentence] = Field(default={}, description="Who to ask, by country.")
    defer_to_all: Sentence = Field(description="Who to defer to anywhere: label, manual, code, licensed person.")
