"""Figures that a calculator takes from a task, so that the number stands in one file."""

from collections.abc import Mapping
from typing import NamedTuple

from generator.findings import suggestion
from generator.model.calculator import Calculator, Constant
from generator.model.task import Task


class Unknown(NamedTuple):
    """A figure that no task has: the calculator's name for it, what is wrong, and what would be right."""

    name: str
    what: str
    instead: str


def with_figures(calculator: Calculator, tasks: Mapping[str, Task]) -> tuple[Calculator, list[Unknown]]:
    """The calculator with each figure it names among its constants, source and all; and those that no task has."""
    constants, unknown = dict(calculator.constants), []
    for name, place in calculator.figures.items():
        task_id, _, figure_id = place.partition(".")
        task = tasks.get(task_id)
        figure = task.figures.get(figure_id) if task else None
        if figure is None:
            known = [f"{id}.{each}" for id, task in tasks.items() for each in task.figures]
            unknown.append(Unknown(name, f"no task has the figure '{place}'", suggestion(place, known, "write task.figure, as 'feed.shade-share'")))
            continue
        meaning = f"{task.name}: {figure_id.replace('-', ' ')}."
        constants[name] = Constant(
            value=figure.default, unit=figure.unit, meaning=meaning, source=figure.source, from_memory=figure.from_memory,
            note=figure.note,
        )
    return calculator.model_copy(update={"constants": constants}), unknown
