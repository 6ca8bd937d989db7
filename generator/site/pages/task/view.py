"""Task pages: what a job on the lawn is for, when, how, and how hard on each grass."""

from collections.abc import Iterator
from typing import Any

from generator.book.book import Book
from generator.book.records.task import NotAdvised, Task
from generator.calculators.bindings import bindings, filled
from generator.calculators.chosen import Chosen
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext, all_names
from generator.site.pages.calculator.view import calculator_view
from generator.site.pages.problem.view import task_problems
from generator.site.pages.record.view import record_card
from generator.site.shared.hold_script import PATH, hold_script
from generator.site.shared.hold_view import hold_scripts, hold_view
from generator.site.shared.lawn_pieces import calculator_scripts
from generator.site.shared.see_links import asked_about
from generator.site.year.when_due import months_due, when_view

TASK_PARTS = (
    ("purpose", "What it is for"), ("timing", "When"), ("steps", "How it is done"), ("machine", "What to use, and how to set it"),
    ("check", "How to see it was done right"), ("mistakes", "What usually goes wrong"), ("order", "What goes before and after"),
    ("weather", "When to hold off"), ("recovery", "How long it takes to look right"),
)
LEVEL_ORDER = {"hard": 0, "moderate": 1, "light": 2, "none": 3}


def task_page(book: Book, id: str, here: PageContext, when: dict[str, Any] | None = None) -> Page:
    """when: the months in which it falls due, by grass; None for a task that no rule makes due."""
    task, sourcing = book.tasks[id], here.sourcing
    parts: list[dict[str, Any]] = [
        {"id": part, "title": title, "statements": sourcing.statements(getattr(task, part))}
        for part, title in TASK_PARTS if getattr(task, part)
    ]
    if task.not_advised:
        parts.append({"id": "not-advised", "title": "Where it is not done", "statements": [_not_advised(book, each, here) for each in task.not_advised]})
    at_a_step = {caution for step in task.steps for caution in step.cautions}
    figures = [sourcing.figure(_words(name), figure) for name, figure in task.figures.items()]
    embedded = _embedded(book, task)
    calculator = _calculator(book, task, embedded, here) if embedded else None
    hold = hold_view(book, id, here)
    context = {
        "title": task.name, "summary": task.summary, "parts": parts, "figures": {"rows": figures},
        "names": here.names(task.names), "gear": list(task.gear),
        "cautions": here.cautions(tuple(each for each in task.cautions if each not in at_a_step)),
        "steps": [{**sourcing.statement(step), "cautions": here.cautions(step.cautions)} for step in task.steps], "when": when,
        "calculators": [
            {"title": book.calculators[each].name, "url": here.links.calculator(each), "text": book.calculators[each].summary}
            for each in task.calculators if each != embedded
        ],
        "calculator": calculator, "hold": hold,
        "scripts": [*calculator_scripts(book, [calculator] if calculator else [], here), *(hold_scripts(here) if hold else [])],
        "levels": _levels(book, id, here), "problems": task_problems(book, id, here), "record": record_card(book, here, id),
        "asked": asked_about(book, "tasks", id, here),
    }
    sections = [*(Section(part["id"], part["title"]) for part in parts), *([Section("hold", "Hold or go today")] if hold else [])]
    return Page(
        f"tasks/{id}", task.name, "task", context, task.summary, task.misspellings, sections=tuple(sections), names=all_names(book, task.names),
    )


def _not_advised(book: Book, each: NotAdvised, here: PageContext) -> dict[str, Any]:
    said = here.sourcing.statement(each)
    return {**said, "text": f"{', '.join(book.countries[id].name for id in each.countries)}: {each.text}"}


def _embedded(book: Book, task: Task) -> str | None:
    """The task's first calculator; none where a label decides, so that no rate stands on a page about pesticides."""
    by_label = any(asked.label_only and asked.printed_on == "label" for id in task.calculators for asked in book.calculators[id].inputs.values())
    return task.calculators[0] if task.calculators and not by_label else None


def _calculator(book: Book, task: Task, id: str, here: PageContext) -> dict[str, Any]:
    """The task's first calculator, started with the task's and the practice's own figures, to be opened where it is needed."""
    context = Chosen(practice=book.practice, groups=book.season_groups, steps=book.steps, task=task, told_by="this task")
    return calculator_view(book, id, here, filled=filled({**bindings(book.calculators[id]), **task.fill}, context), place="task")


def _levels(book: Book, task_id: str, here: PageContext) -> list[dict[str, Any]]:
    """How hard each grass takes this task, hardest first."""
    rows = [
        {
            "grass": grass.name, "url": here.links.guide(id), "level": operation.level, "how": operation.how,
            "marks": here.sourcing.marks(operation),
        }
        for id, grass in book.grasses.items() if (operation := grass.operations.get(task_id))
    ]
    return sorted(rows, key=lambda row: (LEVEL_ORDER[row["level"]], row["grass"]))


def task_index(book: Book, here: PageContext) -> Page:
    cards = [{"title": task.name, "url": here.links.task(id), "text": task.summary} for id, task in book.tasks.items()]
    lead = "Each job on the lawn: what it is for, when, how, and how hard to go on each grass."
    context = {
        "title": "Tasks", "lead": lead,
        "groups": [{"title": None, "cards": cards}],
    }
    return Page("tasks/index", "Tasks", "index", context, lead)


def _words(identifier: str) -> str:
    return identifier.replace("-", " ").capitalize()


def pages(making: Making) -> Iterator[Page]:
    book = making.book
    yield task_index(book, making.here("tasks/index"))
    months = months_due(making.seasons)
    for id in book.tasks:
        here = making.here(f"tasks/{id}")
        yield task_page(book, id, here, when_view(making.seasons, id, months, here.links))


def files(making: Making) -> dict[str, str]:
    return {PATH: hold_script(making.book)} if making.book.holds else {}
