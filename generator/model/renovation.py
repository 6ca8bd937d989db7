"""A renovation plan: one file in data/renovations; and aftercare sheets: data/aftercare."""

from typing import Literal

from pydantic import Field

from generator.model.grass import Habit, Level, SeasonGroup
from generator.model.record import (
    AftercareId, CalculatorId, CautionId, Figure, Identifier, Record, Sentence, Sourced, Statement, TaskId, Word,
    statements,
)

Stage = Literal["before", "day", "after"]


class Quantity(Record):
    """A calculator shown at a step, with inputs filled in from the grass or the practice."""

    calculator: CalculatorId
    fill: dict[str, str] = Field(
        default={},
        description="Input name to a value with its unit ('5 mm'), or to kind.field: 'grass.seed_rate', "
        "'practice.feed.nitrogen_percent', 'renovation.feed-on-the-day'. 'a or b' takes the first that this grass has.",
    )


class Gear(Record):
    name: Word
    from_where: Literal["own", "hire", "borrow", "buy"] = "own"
    book_days_ahead: int = Field(default=0, ge=0, le=120)
    check: Sentence | None = Field(default=None, description="What to look at before the day.")


class Step(Sourced):
    id: Identifier
    day: int = Field(ge=-120, le=120, description="Days from renovation day; 0 is the day.")
    until_day: int | None = Field(default=None, le=180, description="Last day, for a step that runs on.")
    title: Sentence
    task: TaskId | None = Field(default=None, description="The task it is; its page says how.")
    say: Sentence = Field(description="What to do, in one or two plain sentences.")
    why: Sentence | None = None
    after: tuple[Identifier, ...] = Field(default=(), description="Steps that must come first.")
    only_levels: tuple[Level, ...] = Field(
        default=(), description="Only for grasses that take the task at one of these levels; otherwise left out, with the reason."
    )
    only_habits: tuple[Habit, ...] = Field(default=(), description="Only for grasses that grow this way.")
    quantities: tuple[Quantity, ...] = ()
    gear: tuple[Gear, ...] = ()
    wait_for: Sentence | None = Field(default=None, description="What must be so before it starts.")
    cautions: tuple[CautionId, ...] = Field(default=(), description="Shown here, where they bite.")


class Renovation(Record):
    name: Word
    season_group: SeasonGroup | None = None
    summary: Sentence
    window: Literal["renovation", "overseeding"] = Field(description="Which computed window it belongs in.")
    why: tuple[Statement, ...] = statements("Why it is done.")
    figures: dict[Identifier, Figure] = Field(
        default={}, description="Amounts of this plan, by a short name; a step fills them in as renovation.<name>."
    )
    steps: tuple[Step, ...] = Field(min_length=1)
    aftercare: AftercareId | None = Field(default=None, description="The client's sheet that follows it.")


class AftercareDays(Sourced):
    """What a client does from one day to another after the job."""

    from_day: int = Field(ge=0, le=180)
    to_day: int = Field(ge=0, le=180)
    title: Sentence
    do: tuple[Sentence, ...] = Field(min_length=1)
    leave: tuple[Sentence, ...] = Field(default=(), description="What not to do yet.")
    why: Sentence | None = None


class Aftercare(Record):
    name: Word
    job: Word = Field(description="The job it follows, as a client would say it.")
    misspellings: tuple[Word, ...] = Field(default=(), description="Words people search for it by.")
    summary: Sentence = Field(description="The one thing to remember, first.")
    days: tuple[AftercareDays, ...] = Field(min_length=1)
    normal: tuple[Statement, ...] = statements("What looks alarming but is normal.")
    call: tuple[Statement, ...] = statements("When to call.")
    cautions: tuple[CautionId, ...] = ()
    tasks: tuple[TaskId, ...] = Field(default=(), description="Tasks it belongs to.")
