"""Task pages and caution pages."""

from typing import Any

from generator.model.book import Book
from generator.model.task import Task
from generator.pages.calculator import bindings, calculator_view
from generator.pages.desk import COUNTRY_NAMES, Desk, all_names
from generator.pages.hold import hold_scripts, hold_view
from generator.pages.lawn_pieces import calculator_scripts
from generator.pages.page import Page, Section
from generator.pages.problem import task_problems
from generator.pages.record import record_card
from generator.pages.see import asked_about
from generator.pages.services import called, lines_everywhere
from generator.turf.bindings import Context, filled

TASK_PARTS = (
    ("purpose", "What it is for"), ("timing", "When"), ("steps", "How it is done"), ("machine", "What to use, and how to set it"),
    ("check", "How to see it was done right"), ("mistakes", "What usually goes wrong"), ("order", "What goes before and after"),
    ("weather", "When to hold off"), ("recovery", "How long it takes to look right"),
)
LEVEL_ORDER = {"hard": 0, "moderate": 1, "light": 2, "none": 3}


def task_page(book: Book, id: str, desk: Desk, when: dict[str, Any] | None = None) -> Page:
    """when: the months in which it falls due, by grass; None for a task that no rule makes due."""
    task, sourcing = book.tasks[id], desk.sourcing
    parts = [
        {"id": part, "title": title, "statements": sourcing.statements(getattr(task, part))}
        for part, title in TASK_PARTS if getattr(task, part)
    ]
    at_a_step = {caution for step in task.steps for caution in step.cautions}
    figures = [sourcing.figure(_words(name), figure) for name, figure in task.figures.items()]
    embedded = _embedded(book, task)
    calculator = _calculator(book, task, embedded, desk) if embedded else None
    hold = hold_view(book, id, desk)
    context = {
        "title": task.name, "summary": task.summary, "parts": parts, "figures": {"rows": figures},
        "names": desk.names(task.names), "gear": list(task.gear),
        "cautions": desk.cautions(tuple(each for each in task.cautions if each not in at_a_step)),
        "steps": [{**sourcing.statement(step), "cautions": desk.cautions(step.cautions)} for step in task.steps], "when": when,
        "calculators": [
            {"title": book.calculators[each].name, "url": desk.links.calculator(each), "text": book.calculators[each].summary}
            for each in task.calculators if each != embedded
        ],
        "calculator": calculator, "hold": hold,
        "scripts": [*calculator_scripts(book, [calculator] if calculator else [], desk), *(hold_scripts(desk) if hold else [])],
        "levels": _levels(book, id, desk), "problems": task_problems(book, id, desk), "record": record_card(book, desk, id),
        "asked": asked_about(book, "tasks", id, desk),
    }
    sections = [*(Section(part["id"], part["title"]) for part in parts), *([Section("hold", "Hold or go today")] if hold else [])]
    return Page(
        f"tasks/{id}", task.name, "task", context, task.summary, task.misspellings, sections=tuple(sections), names=all_names(task.names),
    )


def _embedded(book: Book, task: Task) -> str | None:
    """The task's first calculator; none where a label decides, so that no rate stands on a page about pesticides."""
    by_label = any(asked.label_only and asked.printed_on == "label" for id in task.calculators for asked in book.calculators[id].inputs.values())
    return task.calculators[0] if task.calculators and not by_label else None


def _calculator(book: Book, task: Task, id: str, desk: Desk) -> dict[str, Any]:
    """The task's first calculator, started with the task's and the practice's own figures, to be opened where it is needed."""
    context = Context(practice=book.practice, groups=book.season_groups, steps=book.steps, task=task, told_by="this task")
    return calculator_view(book, id, desk, filled=filled({**bindings(book.calculators[id]), **task.fill}, context), place="task")


def _levels(book: Book, task_id: str, desk: Desk) -> list[dict[str, Any]]:
    """How hard each grass takes this task, hardest first."""
    rows = [
        {
            "grass": grass.name, "url": desk.links.guide(id), "level": operation.level, "how": operation.how,
            "marks": desk.sourcing.marks(operation),
        }
        for id, grass in book.grasses.items() if (operation := grass.operations.get(task_id))
    ]
    return sorted(rows, key=lambda row: (LEVEL_ORDER[row["level"]], row["grass"]))


def task_index(book: Book, desk: Desk) -> Page:
    cards = [{"title": task.name, "url": desk.links.task(id), "text": task.summary} for id, task in book.tasks.items()]
    context = {
        "title": "Tasks", "lead": "Each job on the lawn: what it is for, when, how, and how hard to go on each grass.",
        "groups": [{"title": None, "cards": cards}],
    }
    return Page("tasks/index", "Tasks", "index", context, context["lead"])


def caution_page(book: Book, id: str, desk: Desk) -> Page:
    caution, sourcing = book.cautions[id], desk.sourcing
    context = {
        "title": caution.name, "caution": desk.caution(id),
        "hazard": sourcing.statements(caution.hazard), "at_risk": sourcing.statements(caution.at_risk),
        "what_to_do": sourcing.statements(caution.what_to_do), "defer_to_all": caution.defer_to_all,
        "defer_to": [
            {"country_name": COUNTRY_NAMES[code], "text": caution.defer_to[code]} for code in COUNTRY_NAMES if code in caution.defer_to
        ],
        "lines": lines_everywhere(book, sourcing, caution=id),
        "tasks": [desk.task_link(task_id) for task_id, task in book.tasks.items() if id in task.cautions],
    }
    return Page(f"cautions/{id}", caution.name, "caution", context, caution.summary, (*caution.misspellings, *called(book, id)))


def caution_index(book: Book, desk: Desk) -> Page:
    groups = [
        {"title": title, "cards": [
            {"title": caution.name, "url": desk.links.caution(id), "text": caution.summary}
            for id, caution in book.cautions.items() if caution.weight == weight
        ]}
        for weight, title in (("danger", "Can kill or maim"), ("care", "Take care"), ("note", "Worth knowing"))
    ]
    lead = "The usual cautions, shown again at the step where they matter. The label, the machine's manual, local codes and licensed people decide."
    context = {"title": "Cautions", "lead": lead, "groups": [group for group in groups if group["cards"]]}
    return Page("cautions/index", "Cautions", "index", context, lead)


def _words(identifier: str) -> str:
    return identifier.replace("-", " ").capitalize()
