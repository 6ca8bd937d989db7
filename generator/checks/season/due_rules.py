"""Each rule of when a task falls due is a condition over the quantities of a week."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.checks.check import Check
from generator.findings import Finding
from generator.formula import FormulaError
from generator.season.task_schedule import parse_rule

RULES = ("do_when", "not_when")


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, task in book.tasks.items():
        for position, due in enumerate(task.due):
            for rule in RULES:
                text = getattr(due, rule)
                if text is None:
                    continue
                try:
                    parse_rule(text)
                except FormulaError as error:
                    where = book.character(error.offset, "tasks", id, "due", position, rule)
                    yield Finding(where, error.what, error.instead)


CHECK = Check("due-rules", "Each rule of when a task falls due can be read.", ("tasks",), _check)
