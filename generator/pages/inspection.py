"""The inspection sheet: what to look at before any plan, what each answer changes, and what follows until the day."""

from collections.abc import Iterable, Mapping
from typing import Any

from generator.model.book import Book
from generator.model.inspection import Outcome, Question
from generator.model.record import Sourced
from generator.pages.desk import COUNTRY_NAMES, Desk
from generator.pages.guide import day_label
from generator.pages.page import Page, Section
from generator.pages.quantity import US_TWIN, claim_words, unit_words, value_words
from generator.turf.inspection_words import estimate_pieces, filled

PATH = "inspection"
SPEC, SCRIPT = "assets/inspection.js", "assets/inspection-sheet.js"
SECTIONS = (
    Section("look", "What to look at"), Section("changes", "What changes"), Section("before", "Before the day"),
    Section("photographs", "Photographs"), Section("estimate", "Estimate and acceptance"),
)
EFFECT_WORDS = {"stop": "Stop", "soften": "Gentler", "leave-out": "Leave out", "add": "Add a step", "note": "Note"}


def inspection_page(book: Book, desk: Desk) -> Page:
    inspection = book.inspection
    context = {
        "title": inspection.title, "summary": inspection.summary, "practice": book.practice.name,
        "sheet": sheet_view(book, desk), "estimate": _estimate(book, desk),
        "plans": desk.links.to("renovate/index"), "scripts": [desk.links.file(SPEC), desk.links.file(SCRIPT)],
    }
    words = ("site inspection", "site visit", "visit sheet", "before you quote", "checklist", "estimate", "quote", "acceptance")
    return Page(PATH, inspection.title, "inspection", context, inspection.summary, words, sections=SECTIONS)


def figure_words(book: Book) -> dict[str, str]:
    """What a {name} in the sheet's texts stands for: '13 mm (½ in)'. A task's figure keeps its range."""
    inspection = book.inspection
    words = {name: value_words(constant.value, constant.unit) for name, constant in inspection.constants.items()}
    for name, place in inspection.figures.items():
        task, _, figure = place.partition(".")
        words[name] = claim_words(book.tasks[task].figures[figure])
    return {name: _both(each) for name, each in words.items()}


def _both(words: Mapping[str, str | None]) -> str:
    return f"{words['metric']} ({words['us']})" if words["us"] and words["us"] != words["metric"] else str(words["metric"])


def sheet_view(book: Book, desk: Desk) -> dict[str, Any]:
    """The inspection-sheet component's dict."""
    inspection, words = book.inspection, figure_words(book)
    return {
        "id": "inspection", "practice": book.practice.name,
        "questions": [_question(book, number, each, words, desk) for number, each in enumerate(inspection.questions, start=1)],
        "before": [
            {"do": each.do, "when": day_label(-each.days_before), "because": each.because}
            for each in inspection.before_the_day
        ],
        "photos": [{"what": each.what, "when": each.when} for each in inspection.photos],
        "before_marks": _marks_once(inspection.before_the_day, desk), "photo_marks": _marks_once(inspection.photos, desk),
    }


def _marks_once(listed: Iterable[Sourced], desk: Desk) -> dict[str, Any]:
    """Where a list comes from, each source once: the same mark at every line would bury the lines."""
    found = dict.fromkeys((source, each.from_memory) for each in listed for source in each.sources)
    return {"marks": [mark for source, recalled in found for mark in desk.sourcing.marks_of([source], recalled)["marks"]]}


def _question(book: Book, number: int, question: Question, words: Mapping[str, str], desk: Desk) -> dict[str, Any]:
    us = question.us_unit or US_TWIN.get(question.unit, question.unit) if question.unit else None
    return {
        "id": question.id, "number": number, "ask": question.ask, "how": question.how,
        "unit": {"metric": unit_words(question.unit), "us": unit_words(us)} if question.unit else None,
        "choices": [{"id": id, "words": text} for id, text in question.choices.items()],
        "outcomes": [_outcome(book, question, position, each, words, desk) for position, each in enumerate(question.outcomes)],
        "cautions": [{"name": book.cautions[id].name, "url": desk.links.caution(id)} for id in question.cautions],
    }


def _outcome(book: Book, question: Question, position: int, outcome: Outcome, words: Mapping[str, str], desk: Desk) -> dict[str, Any]:
    follows = outcome.words if outcome.when else ", or ".join(question.choices[each] for each in outcome.choice)
    return {
        "key": f"{question.id}:{position}", "effect": outcome.effect, "effect_words": EFFECT_WORDS[outcome.effect],
        "if": filled(follows, words), "tasks": [desk.task_link(task) for task in outcome.tasks],
        "levels": f"{outcome.levels} levels" if outcome.levels > 1 else None,
        "step": _step(outcome, words, desk), "say": filled(outcome.say, words), "because": filled(outcome.because, words),
        "note": outcome.note, "marks": desk.sourcing.marks(outcome),
    }


def _step(outcome: Outcome, words: Mapping[str, str], desk: Desk) -> dict[str, Any] | None:
    if outcome.add is None:
        return None
    task = desk.task_link(outcome.add.task) if outcome.add.task else None
    return {"when": day_label(outcome.add.day), "say": filled(outcome.add.say, words), "task": task}


def _estimate(book: Book, desk: Desk) -> dict[str, Any] | None:
    estimate, practice = book.inspection.estimate, book.practice
    if estimate is None:
        return None
    country = book.places[practice.home_place].country
    whole, missing = estimate_pieces(book.inspection, practice, country)
    return {
        "pieces": [{"title": piece.title, "text": text} for piece, text in whole],
        "missing": [piece.title for piece in missing], "marks": desk.sourcing.marks(estimate), "invented": practice.invented,
        "law": [{"country": COUNTRY_NAMES[code], "text": text} for code, text in estimate.law.items() if code != country],
    }
