"""The work record: one entry as a form, who asks for what, and what the browser needs to keep and add up entries."""

import json
from collections.abc import Iterator
from typing import Any

from generator.book.book import Book
from generator.book.records.work_record import Column, WorkRecord
from generator.files.nitrogen_text import yearly_range
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext
from generator.site.pages.calculator.calculator_script import calculator_files
from generator.site.shared.lawn_pieces import CALCULATOR_SCRIPT
from generator.words.figures import unit_words

PATH = "record"
SPEC, SCRIPT = "assets/record.js", "assets/work-record.js"
SECTIONS = (
    Section("work-record-title", "Write down what was done"), Section("work-record-kept", "What is kept"),
    Section("work-record-nitrogen", "Nitrogen by lawn and year"), Section("asked", "Who asks for what"),
)
WORDS = ("spray record", "spray diary", "spray log", "feed record", "fertiliser record", "application record", "record keeping", "nitrogen total")


def record_page(book: Book, record: WorkRecord, here: PageContext) -> Page:
    context = {
        "title": record.title, "summary": record.summary, "law": record.law,
        "form": {"id": "work-record", "columns": [_column(book, id, column) for id, column in record.columns.items()]},
        "lists": [
            {
                "authority": f"{book.countries[each.country].name}: {each.authority}", "whom": each.whom, "within": each.written_within, "kept": each.kept,
                "columns": [column.label for column in record.columns.values() if id in column.asked_by],
                "note": each.note, "marks": here.sourcing.marks(each),
            }
            for id, each in record.lists.items()
        ],
        "tasks": [here.task_link(id) for id in record.tasks],
        "scripts": [
            here.links.file(each) for each in (SPEC, CALCULATOR_SCRIPT, f"assets/calculators/{record.nitrogen_by}.js", SCRIPT)
        ],
    }
    return Page(PATH, record.title, "record", context, record.summary, WORDS, sections=SECTIONS)


def record_card(book: Book, here: PageContext, task: str | None = None) -> dict[str, str] | None:
    """A card that leads to the record; None in a book without one, or from a task that it does not name."""
    if book.record is None or (task is not None and task not in book.record.tasks):
        return None
    return {"title": book.record.title, "url": here.links.to(PATH), "text": book.record.summary}


def _column(book: Book, id: str, column: Column) -> dict[str, Any]:
    choices = column.choices
    if column.kind == "grass":
        choices = {grass: each.name for grass, each in book.grasses.items()}
    unit = {"metric": unit_words(column.unit), "us": unit_words(column.us_unit or column.unit)} if column.unit else None
    return {
        "id": id, "label": column.label, "kind": column.kind, "unit": unit, "help": column.help, "needed": column.needed,
        "choices": [{"id": each, "words": words} for each, words in choices.items()],
        "work": column.work[0] if len(column.work) == 1 else "",
    }


def record_script(book: Book, record: WorkRecord) -> str:
    """A classic script that sets `Swardbook.workRecord`: the columns, the calculator, and each grass's yearly nitrogen [kg/m2]."""
    spec = {
        "calculator": record.nitrogen_by,
        "columns": [_spec(id, column) for id, column in record.columns.items()],
        "grasses": {id: yearly_range(grass) for id, grass in book.grasses.items()},
    }
    return f"window.Swardbook = window.Swardbook || {{}};\nSwardbook.workRecord = {json.dumps(spec, ensure_ascii=True, separators=(',', ':'))};\n"


def _spec(id: str, column: Column) -> dict[str, Any]:
    spec: dict[str, Any] = {"id": id, "label": column.label, "kind": column.kind, "needed": column.needed}
    if column.unit:
        spec |= {"unit": column.unit, "us": column.us_unit or column.unit, "also": list(column.also)}
    if column.choices:
        spec["choices"] = list(column.choices)
    return spec


def pages(making: Making) -> Iterator[Page]:
    if (record := making.book.record) is not None:
        yield record_page(making.book, record, making.here(PATH))


def files(making: Making) -> dict[str, str]:
    if (record := making.book.record) is None:
        return {}
    return {SPEC: record_script(making.book, record), **calculator_files({record.nitrogen_by: making.book.calculators[record.nitrogen_by]})}
