"""The practice's work by hand has the name of a step, so that no step goes without its time for a slip of the pen."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.checks.check import Check
from generator.findings import Finding, Where, nearest, suggestion

NAMES_WORK = frozenset({"renovations", "steps", "inspection"})


def _check(book: PartialBook) -> Iterator[Finding]:
    if book.practice is None or any(kind in NAMES_WORK for kind, _ in book.broken):
        return
    timed, steps = list(_timed_as(book)), _steps(book)
    names = steps | {name for _, name in timed}
    for name in book.practice.hand_work:
        if name not in names:
            yield Finding(book.where("practice", "practice", "hand_work", name, "[key]"), f"no step is called '{name}', so this time is never used",
                          suggestion(name, sorted(names), "write the id of a step of a plan or of data/steps"))
    for where, name in timed:
        # A practice need not time everything: a name that is none of its own is told only where it is nearly one.
        near = nearest(name, book.practice.hand_work)
        if name not in book.practice.hand_work and name not in steps and near:
            yield Finding(where, f"the practice's hand_work has no '{name}'", f"did you mean '{near}'?")


def _steps(book: PartialBook) -> set[str]:
    plans = {name for plan in book.renovations.values() for step in plan.steps for name in (step.id, step.use) if name}
    return plans | set(book.steps)


def _timed_as(book: PartialBook) -> Iterator[tuple[Where, str]]:
    """Where a step names the work whose time it takes, and that name."""
    for id, plan in book.renovations.items():
        for position, step in enumerate(plan.steps):
            if step.timed_as:
                yield book.step_where(id, position, "timed_as"), step.timed_as
    questions = book.inspection.questions if book.inspection else ()
    for number, question in enumerate(questions):
        for at, outcome in enumerate(question.outcomes):
            if outcome.add and outcome.add.timed_as:
                yield book.where("inspection", "inspection", "questions", number, "outcomes", at, "add", "timed_as"), outcome.add.timed_as


CHECK = Check("hand-work", "The practice's work by hand has the name of a step.", ("practice", "renovations", "steps", "inspection"), _check)
