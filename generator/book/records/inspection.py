"""The inspection before any plan (inspection.yml): what is looked at, what each answer changes, and what follows until the day."""

from typing import Annotated, Literal

from pydantic import Field, model_validator

from generator.book.fields.numbers import SIGNED, InUnit, OfKind, by_unit
from generator.book.fields.sourced import CautionId, CountryId, Record, RecordProblem, Sourced, TaskId, sensible
from generator.book.fields.texts import FormulaText, Identifier, LongWord, Name, Sentence, Title, UnitName, Word
from generator.book.records.calculator import Constant

Effect = Literal["stop", "soften", "leave-out", "choose", "add", "note"]


class Added(Record):
    """A step that the plan gets."""

    title: Title | None = Field(default=None, description="What is done, as a plan's step says it: Put on a wetting agent. The task's name where left out.")
    task: TaskId | None = Field(default=None, description="The task it is; its page says how.")
    who: Literal["hands", "client", "office"] = Field(default="hands", description="Who does it, as in a plan.")
    before: tuple[TaskId, ...] = Field(default=(), description="On its day it comes before the first step of these tasks; after all others where left out.")
    part_of: tuple[Identifier, ...] = Field(
        default=(), description="Steps of plans that it is a part of: in a plan that has one, it is said there, and there is no second step."
    )
    timed_as: Identifier | None = Field(default=None, description="What its time stands under in the practice's `hand_work`, for work without a task.")
    day: Annotated[int, OfKind("day of a plan")] = Field(description="Days from renovation day; 0 is the day.")
    say: Sentence = Field(description="What to do, in one or two plain sentences; {name} puts in a figure.")


class Outcome(Sourced):
    """What one answer changes, and why."""

    when: FormulaText | None = Field(
        default=None, description="Formula over measured answers (the question's id with _ for -) and figures: thatch_depth < thatch_trigger.",
    )
    words: Word | None = Field(default=None, description="The same in words, for `when`: 'Under {thatch_trigger}'.")
    choice: tuple[Identifier, ...] = Field(default=(), description="Or the choices that bring it about.")
    effect: Effect = Field(
        description="stop: no job until it is settled. soften, leave-out: named tasks. choose: steps that a plan does only where needed. "
        "add: a step. note: a remark."
    )
    tasks: tuple[TaskId, ...] = Field(default=(), description="What is softened or left out.")
    steps: tuple[Identifier, ...] = Field(default=(), description="For choose: the steps of plans, which then count in the job's price and lists.")
    levels: Annotated[int, OfKind("levels")] = Field(default=1, description="For soften: how many levels gentler, from hard over moderate and light to none.")
    add: Added | None = Field(default=None, description="For add: the step.")
    say: Sentence = Field(description="What changes, in a sentence; {name} puts in a figure.")
    because: Sentence = Field(description="The reason shown beside it.")

    @model_validator(mode="after")
    def _fits_together(self) -> "Outcome":
        if (self.when is None) == (not self.choice):
            raise RecordProblem("an outcome follows from one thing", "give either 'when', a formula, or 'choice'")
        if self.when is not None and self.words is None:
            raise RecordProblem("this formula is not told in words", "write them under 'words', for whoever fills the sheet in by hand")
        if self.words is not None and self.when is None:
            raise RecordProblem("'words' belongs to a formula", "a choice has words of its own", "words")
        if self.effect in ("soften", "leave-out") and not self.tasks:
            raise RecordProblem(f"'{self.effect}' names no task", "list them under 'tasks'", "effect")
        if (self.effect == "choose") != bool(self.steps):
            raise RecordProblem("'steps' and the effect do not go together", "write 'effect: choose', and the steps under 'steps'", "effect")
        if (self.effect == "add") != (self.add is not None):
            raise RecordProblem("'add' and the effect do not go together", "write 'effect: add', and the step under 'add'", "effect")
        return self


class InspectionQuestion(Record):
    """One thing to find out on the lawn."""

    model_config = by_unit(SIGNED)

    id: Identifier
    ask: Sentence = Field(description="The question, plainly and short: it is on the printed sheet.")
    how: Sentence = Field(description="How to find out with a knife, a screwdriver, a tape, a bucket.")
    unit: UnitName | None = Field(default=None, description="For a measured answer: its metric unit; 1 for a plain number.")
    us_unit: UnitName | None = Field(default=None, description="US unit, when it differs.")
    at_least: InUnit | None = Field(default=None, description="Smallest possible answer, in `unit`.")
    at_most: InUnit | None = Field(default=None, description="Largest possible answer, in `unit`.")
    choices: dict[Identifier, Word] = Field(default={}, description="Or the answers to choose from: an id to its words.")
    lasting: bool = Field(default=False, description="The answer stays the same from one inspection to the next, so it is kept with the lawn.")
    cautions: tuple[CautionId, ...] = Field(default=(), description="Cautions that bite while finding out, or because of the answer.")
    outcomes: tuple[Outcome, ...] = Field(default=(), max_length=60, description="What answers change; one that changes nothing needs no outcome.")

    @property
    def name(self) -> str:
        """What formulas call a measured answer."""
        return self.id.replace("-", "_")

    @model_validator(mode="after")
    def _is_answered_in_one_way(self) -> "InspectionQuestion":
        if (self.unit is None) == (not self.choices):
            raise RecordProblem("a question is answered in one way", "give either 'unit', for a measure, or 'choices'")
        if self.unit is not None:
            sensible(self.unit, signed=True, at_least=self.at_least, at_most=self.at_most)
        if self.at_least is not None and self.at_most is not None and self.at_least > self.at_most:
            raise RecordProblem(f"at_most {self.at_most:g} is below at_least {self.at_least:g}", "swap them", "at_most")
        return self


class Preparation(Sourced):
    """What the client does before the day."""

    do: Sentence = Field(description="One thing, short enough for a list to tick.")
    days_before: Annotated[int, OfKind("days ahead")] = Field(description="By how many days before the day; 0 is the morning itself.")
    because: Sentence | None = None


class Photograph(Sourced):
    what: Sentence = Field(description="What is in the picture, and from where.")
    when: Literal["before", "after", "before and after"] = "before and after"


class EstimatePiece(Record):
    """A paragraph of the estimate. One that names something the practice does not give is left out."""

    id: Identifier
    title: Word
    text: Sentence = Field(
        description="Plain words with {practice}, {telephone}, {email}, {currency}, {minimum_charge}, {tax}, {deposit_percent}, {valid_days} "
        "and {law}; {client}, {date}, {area}, {job} and {total} stay to be filled in."
    )


class Estimate(Sourced):
    """Estimate and acceptance in the practice's words; consumer law is deferred to, never restated."""

    pieces: tuple[EstimatePiece, ...] = Field(min_length=1)
    unforeseen: tuple[Word, ...] = Field(default=(), max_length=20, description="What work most often finds that nobody could see: what a variation is written for.")
    law: dict[CountryId, Sentence] = Field(default={}, description="By country: whose consumer law is beside the estimate, and who to ask.")
    law_elsewhere: Sentence = Field(description="The same where no country is given.")


class Inspection(Record):
    """One file, data/inspection.yml; a book without one has no inspection sheet."""

    title: Word
    summary: Sentence
    figures: dict[Name, LongWord] = Field(default={}, max_length=100, description="Figures of tasks that formulas use: a name to task.figure, as scarify.thatch-trigger.")
    constants: dict[Name, Constant] = Field(default={}, max_length=100, description="Figures that no task has, each with its source.")
    questions: tuple[InspectionQuestion, ...] = Field(min_length=1, max_length=100)
    before_the_day: tuple[Preparation, ...] = ()
    photos: tuple[Photograph, ...] = ()
    estimate: Estimate | None = None

    def question(self, id: str) -> InspectionQuestion:
        return next(each for each in self.questions if each.id == id)
