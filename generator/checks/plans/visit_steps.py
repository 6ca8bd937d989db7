"""The step by which a visit of a year's programme does a task is a step of that task."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.checks.check import Check
from generator.findings import Finding, suggestion


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, task in book.tasks.items():
        step = book.steps.get(task.on_a_visit) if task.on_a_visit else None
        if step is not None and step.task != id:
            fitting = [name for name, each in book.steps.items() if each.task == id]
            does = f"does '{step.task}'" if step.task else "does no task"
            yield Finding(book.where("tasks", id, "on_a_visit"), f"'{task.on_a_visit}' {does}, not '{id}'",
                          suggestion(task.on_a_visit or "", fitting, "name a step of this task, or write one in data/steps"))


CHECK = Check("visit-steps", "The step by which a visit does a task is a step of that task.", ("tasks", "steps"), _check)
