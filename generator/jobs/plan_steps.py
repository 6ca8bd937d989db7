"""A renovation plan for one grass: which steps it keeps, in order.

A step whose task the grass does not take is left out with the grass's own reason; what waited for it then waits for
whatever it waited for. A step that an inspection adds goes in before what it has to come before. Later, dates and delays hang on the
same `after` chains, so nothing here knows a calendar. Twin: plan steps.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Literal

from generator.book.records.grass import LEVELS, Grass, Level, Operation
from generator.book.records.renovation import Renovation
from generator.book.records.step import AddedStep, Step
from generator.jobs.job_sentences import NOT_FOR_GRASS

Stage = Literal["before", "day", "after"]


@dataclass(frozen=True)
class StepFor:
    """A step as one grass takes it.

    stage: before (day below 0), day (day 0) or after. counted: False for what is done only where needed, until it is chosen: it then has
    no part in what is bought, carried away, timed and charged. added: True for one that an inspection adds. operation: how hard and how this grass takes the step's task;
    None when the step has no task or the grass's file says nothing of it. after: ids of kept steps that must come first.
    """

    step: Step
    stage: Stage
    operation: Operation | None
    after: tuple[str, ...]
    counted: bool = True
    added: bool = False


@dataclass(frozen=True)
class LeftOut:
    """A step this grass does not get; the reason is a sentence of its own file wherever that speaks of the task."""

    step: Step
    reason: str
    operation: Operation | None


@dataclass(frozen=True)
class PlanSteps:
    """kept: in order of day, the plan's own order within a day; left_out: in the plan's order.

    not_taken: what this grass must not have and the plan has no step for either, by task: somebody will ask why not.
    """

    kept: tuple[StepFor, ...]
    left_out: tuple[LeftOut, ...]
    not_taken: dict[str, Operation]

    def stage(self, stage: Stage) -> tuple[StepFor, ...]:
        """The kept steps of one stage, in order."""
        return tuple(kept for kept in self.kept if kept.stage == stage)


@dataclass(frozen=True)
class Adjusted:
    """What an inspection, or whoever plans the job, changes for one lawn.

    without: reasons why a step, by its id, is not done here. tasks_without: the same by task. softer: by task, how many levels
    gentler it is done, and why. added: steps that the plan has not; one of a task that the plan does only where needed chooses the plan's
    own step instead, and one of which the plan has the like is said there: see `steps_for`. chosen: steps done only where needed
    that are needed here. measured: what the inspection measured, by question [SI].
    """

    without: Mapping[str, str] = field(default_factory=dict)
    tasks_without: Mapping[str, str] = field(default_factory=dict)
    softer: Mapping[str, tuple[int, str]] = field(default_factory=dict)
    added: tuple[AddedStep, ...] = ()
    chosen: frozenset[str] = frozenset()
    measured: Mapping[str, float] = field(default_factory=dict)


def stage_of(day: int) -> Stage:
    """The stage of a day counted from renovation day [days]: before, day or after."""
    return "before" if day < 0 else "day" if day == 0 else "after"


def steps_for(renovation: Renovation, grass: Grass, adjusted: Adjusted = Adjusted()) -> PlanSteps:
    """The steps of a plan that a grass takes, and those it does not, each with its reason.

    adjusted: what differs on one lawn; a softer grade may take a step out of the plan. What an inspection adds is said in the plan's own
    step, where that is one it is part of or does the same task that day; else it goes in before the first step, that day, of a task that it
    has to come before: it waits for what that step waits for, and that step for it.
    """
    taken = {task: _softened(operation, adjusted.softer.get(task)) for task, operation in grass.operations.items()}
    left_out = []
    own = {step.task: step.id for step in reversed(renovation.steps) if step.only_where and step.task}
    chosen = adjusted.chosen | {own[step.task] for step in adjusted.added if step.task in own}

    def reason_of(step: Step) -> str | None:
        reason = _reason_to_leave_out(step, grass, taken.get(step.task) if step.task else None)
        return reason or adjusted.without.get(step.id) or adjusted.tasks_without.get(step.task or "")

    steps = list(renovation.steps)
    for added in adjusted.added:
        if added.task not in own:
            _put_in(steps, added, lambda step: reason_of(step) is None)
    for step in steps:
        if reason := reason_of(step):
            left_out.append(LeftOut(step, reason, taken.get(step.task) if step.task else None))
    gone = {left.step.id: left.step for left in left_out}
    kept = [
        StepFor(
            step, stage_of(step.day), taken.get(step.task) if step.task else None, _after(step, gone),
            step.only_where is None or step.id in chosen, isinstance(step, AddedStep),
        )
        for step in steps
        if step.id not in gone
    ]
    planned = {step.task for step in steps}
    not_taken = {task: operation for task, operation in taken.items() if operation.level == "none" and task not in planned}
    return PlanSteps(tuple(sorted(kept, key=lambda each: each.step.day)), tuple(left_out), not_taken)


def _put_in(steps: list[Step], added: AddedStep, kept: Callable[[Step], bool]) -> None:
    """Puts what an inspection adds among the plan's steps. A step that is left out keeps its place, so that what stands in for it comes there."""
    for at, step in enumerate(steps):
        like = step.id in added.part_of or (added.task is not None and step.task == added.task and step.day == added.day)
        if like and step.only_where is None and not isinstance(step, AddedStep) and step.who == added.who and kept(step):
            steps[at] = step.model_copy(update={"say": f"{step.say} {added.say}"})
            return
    for at, step in enumerate(steps):
        if step.day == added.day and step.task in added.before:
            steps[at] = step.model_copy(update={"after": (*step.after, added.id)})
            steps.insert(at, added.model_copy(update={"after": step.after, "gaps": step.gaps}))
            return
    steps.append(added)


def _softened(operation: Operation, softer: tuple[int, str] | None) -> Operation:
    """An operation so many levels gentler; where nothing is left of it, the reason takes the place of how it is done."""
    if softer is None or operation.level == "none":
        return operation
    down, reason = softer
    level = LEVELS[max(0, LEVELS.index(operation.level) - down)]
    return operation.model_copy(update={"level": level, "how": reason if level == "none" else f"{operation.how} {reason}"})


def not_for_habit(step: Step, grass: Grass) -> str | None:
    """Why a step is not for grass that grows as this one does; None where it is."""
    if step.only_habits and grass.habit not in step.only_habits:
        return NOT_FOR_GRASS["step-habit"].format(wanted=" or ".join(step.only_habits), grass=grass.name, found=grass.habit)
    return None


def _reason_to_leave_out(step: Step, grass: Grass, operation: Operation | None) -> str | None:
    habit = not_for_habit(step, grass)
    if habit or operation is None:
        return habit
    if operation.level != "none" and step.only_levels and all(_harder(operation.level, level) for level in step.only_levels):
        # The step is for gentler treatment: how this grass takes its own would be no reason.
        return NOT_FOR_GRASS["step-level"].format(levels=" or ".join(step.only_levels), grass=grass.name, level=operation.level)
    unwanted = operation.level == "none" or (step.only_levels and operation.level not in step.only_levels)
    return operation.how if unwanted else None


def _harder(level: Level, than: Level) -> bool:
    return LEVELS.index(level) > LEVELS.index(than)


def _after(step: Step, gone: dict[str, Step], seen: frozenset[str] = frozenset()) -> tuple[str, ...]:
    """What a step waits for once the steps left out are skipped; a circle in the plan ends rather than runs on."""
    waits: dict[str, None] = {}
    for earlier in step.after:
        if earlier in seen:
            continue
        if earlier in gone:
            waits |= dict.fromkeys(_after(gone[earlier], gone, seen | {earlier}))
        else:
            waits[earlier] = None
    return tuple(waits)
