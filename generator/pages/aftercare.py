"""Aftercare sheets: what a client does, day by day, after a job."""

import re
from typing import Any

from generator.model.book import Book
from generator.model.aftercare import AftercareDays
from generator.pages.desk import Desk
from generator.pages.embedded import embedded_calculator
from generator.pages.lawn_pieces import calculator_scripts
from generator.pages.page import Page, Section
from generator.pages.problem import sheet_problems
from generator.turf.bindings import Context

SECTIONS = (
    Section("normal", "What is normal"), Section("call", "When to call"), Section("wrong", "Something looks wrong?"), Section("link", "A link for a client"),
)
SHEET_SCRIPT = "assets/aftercare-sheet.js"
MAKER = "aftercare/maker"


def aftercare_page(book: Book, id: str, desk: Desk) -> Page:
    sheet, sourcing, practice = book.aftercare[id], desk.sourcing, book.practice
    path = f"aftercare/{id}"
    address = f"{practice.public_address}{path}.html" if practice.public_address else None
    days = [_days(book, each, desk) for each in sheet.days]
    context = {
        "title": sheet.name, "summary": sheet.summary,
        "sheet": {"id": id, "days": days, "known": _known(book)},
        "normal": sourcing.statements(sheet.normal), "call": sourcing.statements(sheet.call),
        "problems": sheet_problems(book, id, desk),
        "cautions": desk.cautions(sheet.cautions), "tasks": [desk.task_link(each) for each in sheet.tasks],
        "telephone": practice.telephone, "telephone_link": telephone_link(practice.telephone), "email": practice.email, "practice": practice.name,
        "qr": desk.links.file(f"assets/qr/{id}.svg") if address else None,
        "address": address, "maker": desk.links.to(MAKER),
        "scripts": [
            *calculator_scripts(book, (each for stretch in days for each in stretch["calculators"]), desk), desk.links.file(SHEET_SCRIPT),
        ],
    }
    sections = (Section(f"{id}-days", "Day by day"), *SECTIONS)
    return Page(path, sheet.name, "aftercare", context, sheet.summary, sheet.misspellings, sections=sections)


def telephone_link(number: str | None) -> str | None:
    """'02 5550 0134' -> 'tel:0255500134', for a phone to dial."""
    return "tel:" + re.sub(r"[^0-9+]", "", number) if number else None


def _known(book: Book) -> dict[str, list[dict[str, Any]]]:
    """What a client's link may name, by its id."""
    steps = {step.id: step.title for plan in book.renovations.values() for step in plan.steps}
    return {
        "grass": [{"id": id, "text": grass.name, "gone": False} for id, grass in book.grasses.items()],
        "step": [{"id": id, "text": title, "gone": False} for id, title in sorted(steps.items())],
    }


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
    cards.append({"title": "A link for a client", "url": desk.links.to(MAKER), "text": "Day of the job, grass and area in one link, with a code to scan."})
    return Page("aftercare/index", "Aftercare", "index", {"title": "Aftercare", "lead": lead, "groups": [{"title": None, "cards": cards}]}, lead)
