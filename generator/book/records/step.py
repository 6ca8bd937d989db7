"""A step of a plan, and the shared steps that several plans use: one file each in data/steps."""

from collections.abc import Mapping
from typing import Annotated, Any, Literal

from pydantic import ConfigDict, Field, model_validator

from generator.book.fields.numbers import OfKind
from generator.book.fields.sourced import CalculatorId, CautionId, MachineId, ProductId, Record, RecordProblem, Reference, Sourced, SourceId, TaskId
from generator.book.fields.texts import Identifier, LongWord, Sentence, Title, Typed, Word
from generator.book.records.grass import Habit, Level

StepId = Annotated[Identifier, Reference("steps")]


class Purchase(Record):
    """What a step's quantity adds to the shopping list."""

    result: LongWord = Field(description="The calculator's result that has to be bought: product, mass, seed.")
    product: ProductId | None = Field(
        default=None, description="Which product of practice.yml; left out, its feed for a feed, else its first product for the step's task.",
    )
    task: TaskId | None = Field(default=None, description="The task it is bought for, where that is not the step's own: topdress, for the sand that fills holes.")


class Quantity(Record):
    """A calculator shown at a step, with inputs filled in from the grass or the practice."""

    calculator: CalculatorId
    fill: dict[LongWord, Typed] = Field(
        default={},
        description="Input name to a value with its unit ('5 mm'), or to kind.field: 'grass.seed_rate', "
        "'practice.feed.nitrogen_percent', 'renovation.feed-on-the-day'. 'a or b' takes the first that this grass has.",
    )
    title: Title | None = Field(default=None, description="What it is worked out for, where a calculator stands twice in one place.")
    machine: MachineId | None = Field(default=None, description="The machine of practice.yml whose figures fill in what is bound to `practice.machine`.")
    buy: Purchase | None = Field(default=None, description="The result that goes on the shopping list.")
    spoil: LongWord | None = Field(default=None, description="The result, a volume, that has to be carried away.")
    answers: tuple[LongWord, ...] = Field(default=(), description="The results shown at the step, where those are not the calculator's main ones.")
    settings: tuple[LongWord, ...] = Field(
        default=(), description="Inputs and results that the machine is set to, or the height it is cut to: shown at the step and on the job's sheets."
    )
    measured: bool = Field(
        default=False, description="True where it starts from what is measured on the lawn or the gear that day, so that a plan has no answer to give."
    )


class Gear(Record):
    name: Word
    machine: MachineId | None = Field(
        default=None, description="The machine of practice.yml it is; that says whose it is and how early to book it."
    )
    from_where: Literal["own", "hire", "borrow", "buy"] = "own"
    book_days_ahead: Annotated[int, OfKind("days ahead")] = 0
    check: Sentence | None = Field(default=None, description="What to look at before the day.")


class Watering(Record):
    """How a step waters: so much each time, so often."""

    depth: Typed = Field(description="A length or a field, as in `fill`: '4 mm', 'renovation.water-after-sand'.")
    times_a_day: Annotated[int, OfKind("times a day")] = 1
    every_days: Annotated[int, OfKind("days between")] = Field(default=1, description="2 for every second day.")


class Lasting(Sourced):
    """How long what a step did holds. Where the day of the job moves further from it than that, the step is done again."""

    days: Annotated[int, OfKind("days that it lasts")]


class StepBody(Record):
    """What a step is, without its day: shared by plans. Every field may be left to the shared step that is used."""

    title: Title | None = None
    task: TaskId | None = Field(default=None, description="The task it is; its page says how.")
    say: Sentence | None = Field(default=None, description="What to do, in one or two plain sentences.")
    why: Sentence | None = None
    who: Literal["hands", "client", "office"] = Field(default="hands", description="Who does it; the sheet for the day lists what is for the hands on the lawn.")
    event_id: Identifier | None = Field(
        default=None, description="What its events in calendars are called by, where its own id was another once: calendars that hold them go on.",
    )
    only_levels: tuple[Level, ...] = Field(
        default=(), description="Only for grasses that take the task at one of these levels; otherwise left out, with the reason."
    )
    only_habits: tuple[Habit, ...] = Field(default=(), description="Only for grasses that grow this way.")
    quantities: tuple[Quantity, ...] = ()
    passes: LongWord | None = Field(
        default=None, description="The result of its calculators that says how often the machine goes over the lawn; once where left out. Time and price follow it."
    )
    gear: tuple[Gear, ...] = ()
    watering: Watering | None = Field(default=None, description="For a step that waters: how much and how often.")
    only_where: Sentence | None = Field(
        default=None, description="Where it is not done on every lawn: what must be so, as 'Winter grass or ryegrass has got in.'"
    )
    wait_for: Sentence | None = Field(default=None, description="What must be so before it starts.")
    timed_as: Identifier | None = Field(
        default=None, description="What its time stands under in the practice's `hand_work`; its own id, or the shared step's, where left out."
    )
    settles: LongWord | None = Field(
        default=None,
        description="A figure of a task, as spray-out.weeks-to-die: what waits for this step waits its short end while growth is strong, its long end when it is cold.",
    )
    lasts: Lasting | None = Field(
        default=None, description="How long what is done before the day holds: done longer before it, the step is done again. Left out: it holds.",
    )
    books_gear: bool = Field(default=False, description="True for the step that books what is hired or borrowed: once it is done, no booking is overdue.")
    cautions: tuple[CautionId, ...] = Field(default=(), description="Shown here, where they bite.")
    source: SourceId | Annotated[tuple[SourceId, ...], Field(min_length=1)] | None = Field(
        default=None, description="A source id from sources.yml (or a list of them), 'common practice', 'assumption', or 'ours'."
    )
    note: Sentence | None = Field(default=None, description="What it holds for, or a limit to it.")

    @property
    def sources(self) -> tuple[str, ...]:
        return (self.source,) if isinstance(self.source, str) else self.source or ()


REQUIRED = ("title", "say", "source")


def _told_in_full(step: StepBody, what: str) -> None:
    missing = [name for name in REQUIRED if getattr(step, name) is None]
    if missing:
        raise RecordProblem(f"{what} has no {' and no '.join(missing)}", "write it")


class SharedStep(StepBody):
    """A step that several plans use: one file in data/steps."""

    # An editor is told what is needed here; in a plan the same fields may be left to the step that is used.
    model_config = ConfigDict(json_schema_extra={"required": list(REQUIRED)})

    @model_validator(mode="after")
    def _is_whole(self) -> "SharedStep":
        _told_in_full(self, "this step")
        return self


class Step(StepBody):
    """A step in its plan: a shared step by `use`, with what differs here, or one told in full."""

    id: Identifier = Field(description="What later steps call it; the shared step's id where left out.")
    use: StepId | None = Field(default=None, description="The shared step it is; what is here takes the place of what is there.")
    day: Annotated[int, OfKind("day of a plan")] = Field(description="Days from renovation day; 0 is the day.")
    until_day: Annotated[int, OfKind("last day of a plan")] | None = Field(default=None, description="Last day, for a step that runs on.")
    after: tuple[Identifier, ...] = Field(default=(), description="Steps that must come first.")
    gaps: dict[Identifier, Annotated[int, OfKind("days waited")]] = Field(
        default={},
        description="Days that must pass since one of these steps. Left out: the plan's own days after the day, none before it.",
    )

    @model_validator(mode="before")
    @classmethod
    def _takes_its_id(cls, data: Any) -> Any:
        if isinstance(data, Mapping) and "use" in data and "id" not in data:
            return {**data, "id": data["use"]}
        return data

    @model_validator(mode="after")
    def _is_whole_or_used(self) -> "Step":
        if self.use is None:
            _told_in_full(self, f"step '{self.id}'")
        return self

    def with_shared(self, steps: Mapping[str, SharedStep]) -> "Step":
        """This step with what it leaves to the shared step that it uses; itself where there is none such."""
        shared = steps.get(self.use) if self.use else None
        if shared is None:
            return self
        own = self.model_fields_set
        return self.model_copy(update={name: getattr(shared, name) for name in StepBody.model_fields if name not in own})


class AddedStep(Step):
    """A step that an inspection adds, and where it goes in a plan that it does not know."""

    before: tuple[TaskId, ...] = Field(default=(), description="On its day it comes before the first step of these tasks; after all others where the plan has none.")
    part_of: tuple[Identifier, ...] = Field(default=(), description="Steps that it is a part of: where a plan has one of them, it says so there.")
