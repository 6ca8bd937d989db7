"""Whether a grass may follow a renovation plan."""

from operator import attrgetter
from typing import NamedTuple

from generator.book.records.grass import Grass
from generator.book.records.renovation import Renovation


class Misfit(NamedTuple):
    """Why it may not. code: of the sentence; id: of the task or figure that it is about; found: what the grass has."""

    code: str
    id: str = ""
    found: str = ""


def misfit(plan: Renovation, grass: Grass) -> Misfit | None:
    """The first reason why this grass may not follow this plan; None where it may."""
    if plan.season_group and plan.season_group != grass.season_group:
        return Misfit("plan-group", plan.season_group, grass.season_group)
    if plan.habits and grass.habit not in plan.habits:
        return Misfit("plan-habit", " or ".join(plan.habits), grass.habit)
    for task, levels in plan.needs.items():
        operation = grass.operations.get(task)
        if operation is not None and operation.level not in levels:
            return Misfit("plan-task", task, operation.how)
    for field in plan.takes:
        if attrgetter(field)(grass) is None:
            return Misfit("plan-figure", field)
    return None
