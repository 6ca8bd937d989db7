"""The inspection sheet: its formulas can be read and their units agree, its choices are there, its texts ask for values there are."""

import re
from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.book.loading.marked_yaml import ValuePath
from generator.book.records.inspection import Inspection, InspectionQuestion, Outcome
from generator.checks.check import Check
from generator.field.inspection_words import FROM_PRACTICE, TO_FILL_IN
from generator.findings import Finding, nearest, suggestion
from generator.formula import FormulaError, check, parse
from generator.formula.nodes import CONSTANTS, FUNCTIONS
from generator.units import Unit, UnitError, unit

HERE = ("inspection", "inspection")
_NAME = re.compile(r"[a-z][a-z0-9_]*")
_PLACEHOLDER = re.compile(r"\{([^{}]*)\}")


def _check(book: PartialBook) -> Iterator[Finding]:
    if book.inspection is not None:
        names = list(_name_findings(book, book.inspection))
        units, unit_findings = _units(book, book.inspection)
        yield from (*names, *unit_findings, *_outcome_findings(book, book.inspection, units), *_text_findings(book, book.inspection))


def _name_findings(book: PartialBook, inspection: Inspection) -> Iterator[Finding]:
    seen: dict[str, str] = {}
    for group in ("constants", "figures"):
        for name in getattr(inspection, group):
            if not book.written(*HERE, group, name):
                continue  # A figure is among the constants once it has its value; it is told of where it is written.
            where = book.where(*HERE, group, name, "[key]")
            if not _NAME.fullmatch(name):
                yield Finding(where, f"'{name}' cannot be used in a formula", "use small letters, digits and underscores: thatch_trigger")
            elif name in FUNCTIONS or name in CONSTANTS:
                yield Finding(where, f"'{name}' is a word of the formula language", "choose another name")
            elif name in seen:
                yield Finding(where, f"'{name}' is already in {seen[name]}", "give each value a name of its own")
            seen.setdefault(name, group)
    for position, question in enumerate(inspection.questions):
        where = book.where(*HERE, "questions", position, "id")
        if question.name in seen:
            what = "is asked twice" if seen[question.name] == "questions" else f"already stands in {seen[question.name]}"
            yield Finding(where, f"'{question.id}' {what}", "give each question an id of its own")
        elif question.name in FUNCTIONS or question.name in CONSTANTS:
            yield Finding(where, f"'{question.id}' is a word of the formula language", "choose another id")
        elif not _NAME.fullmatch(question.name):
            yield Finding(where, f"'{question.id}' cannot be used in a formula", "begin it with a letter")
        seen.setdefault(question.name, "questions")


def _units(book: PartialBook, inspection: Inspection) -> tuple[dict[str, Unit | None], list[Finding]]:
    """What formulas may name, with its unit; None for one that is told of already."""
    known: dict[str, Unit | None] = dict.fromkeys(inspection.figures)
    findings: list[Finding] = []

    def read(spelling: str, *path: str | int) -> Unit | None:
        try:
            return unit(spelling)
        except UnitError as error:
            if book.written(*HERE, *path):  # A figure's unit is told of in its task.
                findings.append(Finding(book.where(*HERE, *path), error.what, error.instead))
            return None

    for name, constant in inspection.constants.items():
        known[name] = read(constant.unit, "constants", name, "unit")
    for position, question in enumerate(inspection.questions):
        if question.unit is None:
            continue
        known[question.name] = metric = read(question.unit, "questions", position, "unit")
        us = read(question.us_unit, "questions", position, "us_unit") if question.us_unit else None
        if metric and us and metric.dimension != us.dimension:
            where = book.where(*HERE, "questions", position, "us_unit")
            findings.append(Finding(where, f"'{us}' is {us.kind}, but '{metric}' is {metric.kind}", "give a US unit of the same kind"))
    return known, findings


def _outcome_findings(book: PartialBook, inspection: Inspection, units: dict[str, Unit | None]) -> Iterator[Finding]:
    for number, question in enumerate(inspection.questions):
        for position, outcome in enumerate(question.outcomes):
            path = ("questions", number, "outcomes", position)
            yield from _formula_findings(book, outcome, units, path)
            yield from _choice_findings(book, question, outcome, path)
            yield from _task_findings(book, outcome, path)
            yield from _step_findings(book, outcome, path)
            yield from _added_findings(book, outcome, path)


def _formula_findings(book: PartialBook, outcome: Outcome, units: dict[str, Unit | None], path: ValuePath) -> Iterator[Finding]:
    if outcome.when is None:
        return
    try:
        formula = parse(outcome.when)
        if not any(name in units and units[name] is None for name in formula.names):  # One cause, one finding.
            check(formula, {name: each for name, each in units.items() if each is not None}, None)
    except FormulaError as error:
        yield Finding(book.character(error.offset, *HERE, *path, "when"), error.what, error.instead)


def _choice_findings(book: PartialBook, question: InspectionQuestion, outcome: Outcome, path: ValuePath) -> Iterator[Finding]:
    for place, choice in enumerate(outcome.choice):
        where = book.where(*HERE, *path, "choice", place)
        if not question.choices:
            yield Finding(where, f"'{question.id}' is measured, not chosen", "write 'when', a formula, and its 'words'")
        elif choice not in question.choices:
            listed = f"its choices are {', '.join(question.choices)}"
            yield Finding(where, f"'{question.id}' has no choice '{choice}'", suggestion(choice, question.choices, listed))


def _task_findings(book: PartialBook, outcome: Outcome, path: ValuePath) -> Iterator[Finding]:
    if outcome.effect != "soften":
        return
    for place, task in enumerate(outcome.tasks):
        if task in book.tasks and not book.tasks[task].operation:
            yield Finding(
                book.where(*HERE, *path, "tasks", place), f"no grass has a level for '{task}', so it cannot be softened",
                "leave it out, or write 'effect: note'",
            )


def _step_findings(book: PartialBook, outcome: Outcome, path: ValuePath) -> Iterator[Finding]:
    on_need = {step.id for plan in book.renovations.values() for step in plan.steps if step.only_where}
    for place, step in enumerate(outcome.steps):
        if step not in on_need:
            listed = f"those steps are {', '.join(sorted(on_need))}" if on_need else "no plan has one: it is a step with 'only_where'"
            yield Finding(book.where(*HERE, *path, "steps", place), f"no plan does '{step}' only where needed", suggestion(step, on_need, listed))


def _added_findings(book: PartialBook, outcome: Outcome, path: ValuePath) -> Iterator[Finding]:
    """A plan need not have the step that an added one is a part of; a name that no plan has is told where it is nearly one."""
    steps = {step.id for plan in book.renovations.values() for step in plan.steps}
    for place, step in enumerate(outcome.add.part_of if outcome.add else ()):
        if step not in steps and (near := nearest(step, sorted(steps))):
            yield Finding(book.where(*HERE, *path, "add", "part_of", place), f"no plan has a step '{step}'", f"did you mean '{near}'?")


def _text_findings(book: PartialBook, inspection: Inspection) -> Iterator[Finding]:
    figures = [*inspection.figures, *(name for name in inspection.constants if name not in inspection.figures)]
    for number, question in enumerate(inspection.questions):
        for position, outcome in enumerate(question.outcomes):
            path = ("questions", number, "outcomes", position)
            texts = [("words", outcome.words), ("say", outcome.say), ("because", outcome.because)]
            for name, text in texts:
                yield from _placeholders(book, text, figures, *path, name)
            if outcome.add:
                yield from _placeholders(book, outcome.add.say, figures, *path, "add", "say")
    if inspection.estimate:
        for position, piece in enumerate(inspection.estimate.pieces):
            yield from _placeholders(book, piece.text, [*FROM_PRACTICE, *TO_FILL_IN], "estimate", "pieces", position, "text")


def _placeholders(book: PartialBook, text: str | None, known: list[str], *path: str | int) -> Iterator[Finding]:
    for found in _PLACEHOLDER.finditer(text or ""):
        if found[1] not in known:
            listed = f"it may name {', '.join(known)}" if known else "name a figure of this file"
            yield Finding(book.character(found.start(), *HERE, *path), f"nothing is called '{found[1]}'", suggestion(found[1], known, listed))


CHECK = Check("inspection-sheet", "The inspection sheet's formulas and choices hold together, and its texts name values there are.", ("inspection",), _check)
