"""The inspection sheet: what to look at before any plan, what each answer changes, and what follows until the day."""

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from generator.book.book import Book
from generator.book.fields.sourced import Sourced
from generator.book.records.inspection import Inspection, InspectionQuestion, Outcome
from generator.field.inspection_words import estimate_pieces, figure_words, filled
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext
from generator.site.pages.guide.view import day_label
from generator.site.pages.inspection.inspection_script import inspection_script
from generator.site.pages.retired.view import moved_page
from generator.words.figures import US_TWIN, unit_words

PATH = "inspection"
SPEC, SCRIPT = "assets/inspection.js", "assets/inspection-sheet.js"
SECTIONS = (
    Section("look", "What to look at"), Section("changes", "What changes"), Section("before", "Before the day"),
    Section("photographs", "Photographs"), Section("estimate", "Estimate and acceptance"),
)
EFFECT_WORDS = {"stop": "Stop", "soften": "Gentler", "leave-out": "Leave out", "choose": "Do it", "add": "Add a step", "note": "Note"}


def inspection_page(book: Book, inspection: Inspection, here: PageContext) -> Page:
    context = {
        "title": inspection.title, "summary": inspection.summary, "practice": book.practice.name,
        "sheet": sheet_view(book, inspection, here), "estimate": _estimate(book, inspection, here),
        "plans": here.links.to("renovate/index"), "scripts": [here.links.file(SPEC), here.links.file(SCRIPT)],
    }
    words = ("site inspection", "site visit", "visit sheet", "before you quote", "checklist", "estimate", "quote", "acceptance")
    return Page(PATH, inspection.title, "inspection", context, inspection.summary, words, sections=SECTIONS)


def sheet_view(book: Book, inspection: Inspection, here: PageContext) -> dict[str, Any]:
    """The inspection-sheet component's dict."""
    words = figure_words(book)
    return {
        "id": "inspection", "practice": book.practice.name,
        "questions": [_question(book, number, each, words, here) for number, each in enumerate(inspection.questions, start=1)],
        "before": [
            {"do": each.do, "when": day_label(-each.days_before), "because": each.because}
            for each in inspection.before_the_day
        ],
        "photos": [{"what": each.what, "when": each.when} for each in inspection.photos],
        "before_marks": _marks_once(inspection.before_the_day, here), "photo_marks": _marks_once(inspection.photos, here),
    }


def _marks_once(listed: Iterable[Sourced], here: PageContext) -> dict[str, Any]:
    """Where a list comes from, each source once: the same mark at every line would bury the lines."""
    return here.sourcing.marks_of(dict.fromkeys(source for each in listed for source in each.sources))


def _question(book: Book, number: int, question: InspectionQuestion, words: Mapping[str, str], here: PageContext) -> dict[str, Any]:
    return {
        **asked_in(question), "number": number, "how": question.how,
        "outcomes": [_outcome(book, question, position, each, words, here) for position, each in enumerate(question.outcomes)],
        "cautions": [{"name": book.cautions[id].name, "url": here.links.caution(id)} for id in question.cautions],
    }


def asked_in(question: InspectionQuestion) -> dict[str, Any]:
    """What is asked, and how it is answered: a measure in `unit`, or one of `choices`."""
    us = question.us_unit or US_TWIN.get(question.unit, question.unit) if question.unit else None
    return {
        "id": question.id, "ask": question.ask,
        "unit": {"metric": unit_words(question.unit), "us": unit_words(us)} if question.unit and us else None,
        "choices": [{"id": id, "words": text} for id, text in question.choices.items()],
    }


def _outcome(book: Book, question: InspectionQuestion, position: int, outcome: Outcome, words: Mapping[str, str], here: PageContext) -> dict[str, Any]:
    follows = outcome.words if outcome.when else ", or ".join(question.choices[each] for each in outcome.choice)
    return {
        "key": f"{question.id}:{position}", "effect": outcome.effect, "effect_words": EFFECT_WORDS[outcome.effect],
        "if": filled(follows or "", words), "tasks": [here.task_link(task) for task in outcome.tasks],
        "levels": f"{outcome.levels} levels" if outcome.levels > 1 else None,
        "step": _step(outcome, words, here), "say": filled(outcome.say, words), "because": filled(outcome.because, words),
        "note": outcome.note, "marks": here.sourcing.marks(outcome),
    }


def _step(outcome: Outcome, words: Mapping[str, str], here: PageContext) -> dict[str, Any] | None:
    if outcome.add is None:
        return None
    task = here.task_link(outcome.add.task) if outcome.add.task else None
    return {"when": day_label(outcome.add.day), "say": filled(outcome.add.say, words), "task": task}


def _estimate(book: Book, inspection: Inspection, here: PageContext) -> dict[str, Any] | None:
    estimate, practice = inspection.estimate, book.practice
    if estimate is None:
        return None
    country = book.places[practice.home_place].country
    whole, missing = estimate_pieces(inspection, practice, country)
    return {
        "pieces": [{"title": piece.title, "text": text} for piece, text in whole],
        "missing": [piece.title for piece in missing], "marks": here.sourcing.marks(estimate), "invented": practice.invented,
        "law": [{"country": book.countries[code].name, "text": text} for code, text in estimate.law.items() if code != country],
    }


def pages(making: Making) -> Iterator[Page]:
    if (inspection := making.book.inspection) is not None:
        sheet = inspection_page(making.book, inspection, making.here(PATH))
        yield from (sheet, moved_page("visit", sheet, making.here("visit")))


def files(making: Making) -> dict[str, str]:
    return {SPEC: inspection_script(making.book.inspection)} if making.book.inspection is not None else {}
