"""Aftercare sheets: what a client does, day by day, after a job."""

from typing import Any

from generator.model.book import Book
from generator.model.aftercare import AftercareDays
from generator.pages.desk import Desk
from generator.pages.embedded import embedded_calculator
from generator.pages.lawn_pieces import calculator_scripts
from generator.pages.page import Page, Section
from generator.turf.bindings import Context

SECTIONS = (
    Section("days", "Day by day"), Section("normal", "What is normal"), Section("call", "When to call"),
    Section("link", "A link for a client"),
)


def aftercare_page(book: Book, id: str, desk: Desk) -> Page:
    sheet, sourcing, practice = book.aftercare[id], desk.sourcing, book.practice
    path = f"aftercare/{id}"
    address = f"{practice.public_address}{path}.html" if practice.public_address else None
    days = [_days(book, each, desk) for each in sheet.days]
    context = {
        "title": sheet.name, "summary": sheet.summary,
        "sheet": {
            "id": id, "job": sheet.job, "days": days, "address": address,
            "grasses": [{"id": grass_id, "name": grass.name} for grass_id, grass in book.grasses.items()],
        },
        "normal": sourcing.statements(sheet.normal), "call": sourcing.statements(sheet.call),
        "cautions": desk.cautions(sheet.cautions), "tasks": [desk.task_link(each) for each in sheet.tasks],
        "telephone": practice.telephone, "email": practice.email, "practice": practice.name,
        "qr": desk.links.file(f"assets/qr/{id}.svg") if address else None,
        "address": address, "scripts": calculator_scripts(book, (each for stretch in days for each in stretch["calculators"]), desk),
    }
    return Page(path, sheet.name, "aftercare", context, sheet.summary, sheet.misspellings, boost=1.2, sections=SECTIONS)


def _quantities(book: Book, days: AftercareDays, desk: Desk) -> list[dict[str, Any]]:
    """The calculators of a stretch of days, filled in from the sheet and the plan's steps."""
    context = Context(practice=book.practice, groups=book.season_groups, steps=book.steps, told_by="this sheet")
    return [
        embedded_calculator(book, quantity, context, desk, f"day-{days.from_day}-{number}") for number, quantity in enumerate(days.quantities)
    ]


def _days(book: Book, days: AftercareDays, desk: Desk) -> dict[str, Any]:
    return {
        "from_day": days.from_day, "to_day": days.to_day, "title": days.title, "when": day_words(days.from_day, days.to_day),
        "do": list(days.do), "leave": list(days.leave), "why": days.why, "marks": desk.sourcing.marks(days),
        "calculators": _quantities(book, days, desk),
    }


def day_words(first: int, last: int) -> str:
    """'The day itself', 'Day 3', 'Days 1 to 14'."""
    if first == last:
        return "The day itself" if first == 0 else f"Day {first}"
    return f"Days {first} to {last}"


def aftercare_index(book: Book, desk: Desk) -> Page:
    lead = "What a client does after the job, day by day, in plain words. Each sheet has an address of its own to send on."
    cards = [{"title": sheet.name, "url": desk.links.aftercare(id), "text": sheet.summary} for id, sheet in book.aftercare.items()]
    return Page("aftercare/index", "Aftercare", "index", {"title": "Aftercare", "lead": lead, "groups": [{"title": None, "cards": cards}]}, lead, boost=0.5)
