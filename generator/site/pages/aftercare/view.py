"""Aftercare sheets: what a client does, day by day, after a job."""

from collections.abc import Iterator, Sequence
from typing import Any

from generator.book.book import Book
from generator.book.records.aftercare import AftercareDays
from generator.calculators.chosen import Chosen
from generator.files.calendar_file import calendar_domain
from generator.files.qr import qr_files
from generator.site.frame.brand import letterhead_view
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext
from generator.site.pages.aftercare.asked_answers import asked_answers, day_words
from generator.site.pages.calculator.calculator_script import calculator_files
from generator.site.pages.problem.view import sheet_problems
from generator.site.shared.embedded import embedded_calculator
from generator.site.shared.lawn_pieces import calculator_scripts
from generator.site.shared.link_ids import known_ids, step_titles
from generator.site.shared.public_lines import telephone_link
from generator.words.figures import claim_words

SECTIONS = (
    Section("normal", "What is normal"), Section("call", "When to call"), Section("wrong", "Something looks wrong?"), Section("link", "A link for a client"),
)
HELP = {"normal": "What is normal", "wrong": "What it may be", "call": "When to call"}
SHEET_SCRIPT = "assets/aftercare-sheet.js"
MAKER = "aftercare/maker"


def aftercare_page(book: Book, id: str, here: PageContext) -> Page:
    sheet, sourcing, practice = book.aftercare[id], here.sourcing, book.practice
    path = f"aftercare/{id}"
    address = f"{practice.public_address}{path}.html" if practice.public_address else None
    days, problems = [_days(book, each, here) for each in sheet.days], sheet_problems(book, id, here)
    context = {
        "title": sheet.name, "letterhead": letterhead_view(book, here.links),
        "sheet": {
            "id": id, "name": sheet.name, "summary": sheet.summary, "days": days, "known": _known(book, id), "practice": practice.name,
            "asked": asked_answers(book, id, days, here),
            "address": address, "domain": calendar_domain(practice.calendar_name),
            "help": _help({"normal": sheet.normal, "wrong": problems, "call": sheet.call}, practice.telephone),
        },
        "normal": sourcing.statements(sheet.normal), "call": sourcing.statements(sheet.call),
        "problems": problems,
        "cautions": here.cautions(sheet.cautions), "tasks": [here.task_link(each) for each in sheet.tasks],
        "telephone": practice.telephone, "telephone_link": telephone_link(practice.telephone), "email": practice.email, "practice": practice.name,
        "qr": here.links.file(f"assets/qr/{id}.svg") if address else None,
        "address": address, "maker": here.links.to(MAKER),
        "scripts": [
            *calculator_scripts(book, (each for stretch in days for each in stretch["calculators"]), here), here.links.file(SHEET_SCRIPT),
        ],
    }
    sections = (Section(f"{id}-asked", "What you may do, and when"), Section(f"{id}-days", "Day by day"), *SECTIONS)
    return Page(path, sheet.name, "aftercare", context, sheet.summary, sheet.misspellings, sections=sections)


def _help(parts: dict[str, Sequence[Any]], telephone: str | None) -> dict[str, Any]:
    """Where a worried client looks: first on the page, in those of its parts that it has, then to the telephone."""
    places = [{"id": part, "title": HELP[part]} for part, said in parts.items() if said]
    return {"places": places, "telephone": telephone, "telephone_link": telephone_link(telephone)}


def _known(book: Book, sheet: str) -> dict[str, list[dict[str, Any]]]:
    """What a client's link may name, by its id; a grass with the height it is kept at, unless another is sown over it and mown in its place."""
    sown_over = any(plan.window == "oversowing" for plan in book.renovations.values() if plan.aftercare == sheet)

    def height(each: dict[str, Any]) -> dict[str, str | None] | None:
        grass = None if sown_over else book.grasses.get(each.get("instead") or each["id"])
        return claim_words(grass.mowing_height) if grass else None

    grasses = known_ids(book, "grasses", {id: grass.name for id, grass in book.grasses.items()})
    steps = known_ids(book, "steps", step_titles(book))
    return {"grass": [{**each, "height": height(each)} for each in grasses], "step": [{**each, "height": None} for each in steps]}


def _quantities(book: Book, days: AftercareDays, here: PageContext) -> list[dict[str, Any]]:
    """The calculators of a stretch of days, filled in from the sheet and the plan's steps."""
    context = Chosen(practice=book.practice, groups=book.season_groups, steps=book.steps, told_by="this sheet")
    return [
        embedded_calculator(book, quantity, context, here, f"day-{days.from_day}-{number}") for number, quantity in enumerate(days.quantities)
    ]


def _days(book: Book, days: AftercareDays, here: PageContext) -> dict[str, Any]:
    return {
        "from_day": days.from_day, "to_day": days.to_day, "title": days.title, "when": day_words(days.from_day, days.to_day),
        "do": list(days.do), "leave": list(days.leave), "why": days.why, "marks": here.sourcing.marks(days),
        "calculators": _quantities(book, days, here),
    }


def aftercare_index(book: Book, here: PageContext) -> Page:
    lead = here.edition.either(
        practice="What a client does after the job, day by day, in plain words. Each sheet has its own address to send on.",
        clients="What to do after work on your lawn, day by day. If we sent you a link, open that: it knows the day.",
    )
    cards = [{"title": sheet.name, "url": here.links.aftercare(id), "text": sheet.summary} for id, sheet in book.aftercare.items()]
    cards.append({"title": "A link for a client", "url": here.links.to(MAKER), "text": "Day of the job, grass and area in one link, with a code to scan."})
    return Page("aftercare/index", "Aftercare", "index", {"title": "Aftercare", "lead": lead, "groups": [{"title": None, "cards": cards}]}, lead)


def pages(making: Making) -> Iterator[Page]:
    book = making.book
    yield aftercare_index(book, making.here("aftercare/index"))
    yield from (aftercare_page(book, id, making.here(f"aftercare/{id}")) for id in book.aftercare)


def files(making: Making) -> dict[str, str | bytes]:
    """The codes, and the scripts of the calculators in the sheets: a site for clients has these and perhaps no others."""
    book = making.book
    shown = {quantity.calculator for sheet in book.aftercare.values() for days in sheet.days for quantity in days.quantities}
    return {**qr_files(book), **calculator_files({id: book.calculators[id] for id in sorted(shown)})}
