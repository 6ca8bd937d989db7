"""A renovation plan: one file in data/renovations."""

from typing import Literal

from pydantic import Field

from generator.book.fields.sourced import AftercareId, Figure, Record, Statement, TaskId, heard, statements
from generator.book.fields.texts import Identifier, Sentence, Word
from generator.book.records.grass import Habit, Level, SeasonGroup
from generator.book.records.step import Gear, Purchase, Quantity, SharedStep, Step, Watering

__all__ = ["Gear", "PlanWindow", "Purchase", "Quantity", "Renovation", "SharedStep", "Step", "Watering"]

Stage = Literal["before", "day", "after"]
PlanWindow = Literal["renovation", "light_renovation", "overseeding", "oversowing", "growing"]


class Renovation(Record):
    name: Word
    misspellings: tuple[Word, ...] = heard()
    season_group: SeasonGroup | None = Field(default=None, description="Only for this group; both when left out.")
    habits: tuple[Habit, ...] = Field(default=(), description="Only for grasses that grow this way; all when left out.")
    needs: dict[TaskId, tuple[Level, ...]] = Field(
        default={}, description="Only for grasses that take these tasks at one of these levels."
    )
    takes: tuple[Literal["seed_rate", "overseed_rate", "establishment.from_seed", "establishment.from_runners"], ...] = Field(
        default=(), description="Only for grasses whose file gives these: a seed rate for what is sown, runners for what is planted."
    )
    summary: Sentence
    window: PlanWindow = Field(
        description="Which computed window its day belongs in; growing is any time the grass is neither slow nor asleep."
    )
    why: tuple[Statement, ...] = statements("Why it is done.")
    choose_when: tuple[Statement, ...] = statements("When this plan and not a harder or a gentler one.")
    figures: dict[Identifier, Figure] = Field(
        default={}, description="Amounts of this plan, by a short name; a step fills them in as renovation.<name>."
    )
    steps: tuple[Step, ...] = Field(min_length=1, max_length=120)
    aftercare: AftercareId | None = Field(default=None, description="The client's sheet that follows it.")
