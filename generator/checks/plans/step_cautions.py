"""What bites at a step of a task is among the cautions of the task."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.checks.check import Check
from generator.findings import Finding


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, task in book.tasks.items():
        for position, step in enumerate(task.steps):
            for index, caution in enumerate(step.cautions):
                if caution not in task.cautions:
                    where = book.where("tasks", id, "steps", position, "cautions", index)
                    yield Finding(where, f"'{caution}' is not among the cautions of this task", "add it to 'cautions' of the task too: job sheets read them there")


CHECK = Check("step-cautions", "What bites at a step of a task is among the task's cautions.", ("tasks",), _check)
