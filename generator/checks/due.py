"""Each rule of when a task falls due is a condition over the quantities of a week."""

from collections.abc import Iterator

from generator.checks.check import Check
from generator.findings import Finding
from generator.formula import FormulaError
from generator.model.book import Book
from generator.turf.schedule import parse_rule


def _check(book: Book) -> Iterator[Finding]:
    for id, task in book.tasks.items():
        for position, due in enumerate(task.due):
            try:
                parse_rule(due.do_when)
            except FormulaError as error:
                where = book.character(error.offset, "tasks", id, "due", position, "do_when")
                yield Finding(where, error.what, error.instead)


CHECK = Check("due", "Each rule of when a task falls due can be read.", ("tasks",), _check)
