"""What clients ask on any day, as rows by days: the table of a sheet, from which its script takes the answers of today."""

from collections.abc import Sequence
from typing import Any

from generator.book.book import Book
from generator.book.records.aftercare import Aftercare, Allowed, AnswerByDays
from generator.book.records.renovation import Renovation
from generator.calculators.bindings import filled_in
from generator.calculators.chosen import Chosen
from generator.site.page_context import PageContext
from generator.words.figures import value_words

QUESTIONS = {
    "walk": "Walking and play", "mower": "Mower", "water": "Water", "height": "Cutting height", "colour": "Is yellow or brown normal?",
    "coming": "What comes next",
}
ALLOWED = {"not-yet": "Not yet.", "with-care": "With care.", "as-usual": "Yes."}
# After the last day of any sheet the lawn is an ordinary one.
AFTERWARDS = {
    "walk": ("as-usual", "Use it as you like."), "mower": ("as-usual", "Mow it as you always did."),
    "water": (None, "As usual for the season, deep and not often."), "height": (None, "Your usual height, a third of the leaf at most."),
    "colour": (None, "Not from this work any more. Call us if it lasts."), "coming": (None, "Nothing more is due from this work."),
}
LAST_DAY = "This sheet ends, and the lawn is looked after as usual."
# Where a plan spreads or sprays something that bears one of these, its label says how long a dog or a child waits.
BY_THE_LABEL, WAIT = frozenset(("re-entry", "chemical-label", "feed-burn")), "re-entry"


def asked_answers(book: Book, id: str, days: Sequence[dict[str, Any]], here: PageContext) -> dict[str, Any]:
    """allowed: the word for each `may`; questions: id, title, rows; label: what a label decides for dogs and children, None where nothing
    is spread; before: what comes before the job.

    days: the sheet's stretches as the page lays them out, with their calculators. A row: first, last (None: from then on), when, may,
    say, amounts (of water: title, calculator, the id of the one on the page, depth).
    """
    sheet = book.aftercare[id]
    plans = [plan for plan in book.renovations.values() if plan.aftercare == id]
    here.sourcing.marks(sheet.asked)
    return {
        "allowed": ALLOWED,
        "questions": [{"id": each, "title": title, "rows": _rows(book, sheet, each, days)} for each, title in QUESTIONS.items()],
        "label": book.cautions[WAIT].summary if WAIT in book.cautions and any(_by_the_label(book, plan) for plan in plans) else None,
        "before": _before(plans),
    }


def _rows(book: Book, sheet: Aftercare, question: str, days: Sequence[dict[str, Any]]) -> list[dict[str, Any]]:
    may, say = AFTERWARDS[question]
    end = sheet.last_day + 1
    last: dict[str, Any] = {"first": end, "last": None, "when": f"From day {end}", "may": may, "say": say, "amounts": []}
    if question == "coming":
        told = [*((each.day, each.say) for each in sheet.asked.coming), (end, LAST_DAY)]
        return [{"first": day, "last": day, "when": f"Day {day}", "may": None, "say": what, "amounts": []} for day, what in told] + [last]
    return [*(_row(book, sheet, question, each, days) for each in sheet.asked.by_days[question]), last]


def _row(book: Book, sheet: Aftercare, question: str, told: AnswerByDays, days: Sequence[dict[str, Any]]) -> dict[str, Any]:
    return {
        "first": told.from_day, "last": told.to_day, "when": day_words(told.from_day, told.to_day),
        "may": told.may if isinstance(told, Allowed) else None, "say": told.say,
        "amounts": _amounts(book, sheet, told, days) if question == "water" else [],
    }


def _amounts(book: Book, sheet: Aftercare, told: AnswerByDays, days: Sequence[dict[str, Any]]) -> list[dict[str, Any]]:
    """How much one watering is, from the calculators of the first of its days: a check holds that all of them have the same."""
    at = next((number for number, each in enumerate(sheet.days) if each.from_day <= told.from_day <= each.to_day), None)
    if at is None:
        return []
    context, amounts = Chosen(practice=book.practice, groups=book.season_groups, steps=book.steps), []
    for quantity, shown in zip(sheet.days[at].quantities, days[at]["calculators"], strict=True):
        depth = filled_in(quantity, context, book.calculators[quantity.calculator]).get("depth")
        if depth is not None and any(result["name"] == "run_time" for result in shown["results"]):
            amounts.append({"title": quantity.title, "calculator": shown["id"], "depth": value_words(depth.value, depth.unit)})
    return amounts


def _by_the_label(book: Book, plan: Renovation) -> bool:
    tasks = [book.tasks[step.task] for step in plan.steps if step.task]
    return any(BY_THE_LABEL & {*task.cautions} for task in tasks) or any(BY_THE_LABEL & {*step.cautions} for step in plan.steps)


def _before(plans: Sequence[Renovation]) -> list[dict[str, Any]]:
    """What the client does before the job, in every plan that the sheet follows alike: day (below 0), when, title, say."""
    todo = [{(step.id, step.day): step for step in plan.steps if step.who == "client" and step.day < 0 and not step.only_where} for plan in plans]
    shared = [step for key, step in todo[0].items() if all(key in other for other in todo)] if todo else []
    return [
        {"day": step.day, "when": "The day before" if step.day == -1 else f"{-step.day} days before", "title": step.title, "say": step.say}
        for step in sorted(shared, key=lambda step: step.day)
    ]


def day_words(first: int, last: int) -> str:
    """'The day itself', 'Day 3', 'Days 1 to 14'."""
    if first == last:
        return "The day itself" if first == 0 else f"Day {first}"
    return f"Days {first} to {last}"
