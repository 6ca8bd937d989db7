"""Figures that a calculator, a hold or the inspection sheet takes from elsewhere, so that the number stands in one file."""

from collections.abc import Mapping
from typing import NamedTuple, TypeVar

from generator.book.fields.sourced import Figure
from generator.book.records.calculator import Calculator, Constant
from generator.book.records.hold import Hold
from generator.book.records.inspection import Inspection
from generator.book.records.task import Task
from generator.findings import suggestion

User = TypeVar("User", Calculator, Hold, Inspection)
SEASON_RULES = "season-groups"  # The home of a figure that is a rule of the season and no task's.


class Unknown(NamedTuple):
    """A figure that no task has: the user's name for it, what is wrong, and what would be right."""

    name: str
    what: str
    instead: str


def with_figures(user: User, tasks: Mapping[str, Task], rules: Mapping[str, Figure] = {}) -> tuple[User, list[Unknown]]:
    """The user with each figure it names among its constants, source and all; and those that are nowhere.

    rules: of season-groups.yml, which are named season-groups.rule.
    """
    constants, unknown = dict(user.constants), []
    for name, place in user.figures.items():
        home, _, figure_id = place.partition(".")
        task = tasks.get(home)
        figure = rules.get(figure_id) if home == SEASON_RULES else task.figures.get(figure_id) if task else None
        if figure is None:
            known = [f"{id}.{each}" for id, task in tasks.items() for each in task.figures] + [f"{SEASON_RULES}.{each}" for each in rules]
            unknown.append(Unknown(name, f"no task has the figure '{place}'", suggestion(place, known, "write task.figure, such as 'feed.shade-share'")))
            continue
        meaning = f"{task.name if task else 'The season'}: {figure_id.replace('-', ' ').replace('_', ' ')}."
        constants[name] = Constant(
            value=figure.default, unit=figure.unit, meaning=meaning, source=figure.source, note=figure.note,
        )
    return user.model_copy(update={"constants": constants}), unknown
