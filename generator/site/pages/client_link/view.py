"""A link for a client: the page that makes one, with its code and a message to paste."""

from collections.abc import Iterator

from generator.book.book import Book
from generator.book.records.step import Step
from generator.site.making import Making
from generator.site.page import Page
from generator.site.page_context import PageContext
from generator.site.pages.aftercare.view import MAKER
from generator.site.shared.link_ids import retired_ids

SCRIPTS = ("assets/vendor/uqr.js", "assets/client-link.js")
# In the client's words; the script puts the day and the link in.
MESSAGE = "Here is what to do after your {job} on {{day}}, day by day:\n{{link}}\nOpen it on any day: it shows that day first. No app is needed."


def client_link_page(book: Book, here: PageContext) -> Page:
    """Where the practice makes a client's link. Particulars in its own fragment, as in a client's link with `sheet`, fill it in."""
    practice = book.practice
    title = "A link for a client"
    lead = "Choose the job and its day. The link opens the client's sheet at what to do that day. Nothing is stored or sent: everything is in the link."
    context = {
        "title": title, "lead": lead, "scripts": [here.links.file(each) for each in SCRIPTS],
        "maker": {
            "id": "client-link", "address": f"{practice.public_address}aftercare/" if practice.public_address else None,
            "here": here.links.file("aftercare/"), "signature": signature(book),
            "grasses": [{"id": id, "name": grass.name} for id, grass in book.grasses.items()],
            "sheets": [
                {"id": id, "name": sheet.name, "message": MESSAGE.format(job=sheet.job), "steps": _steps(book, id)}
                for id, sheet in book.aftercare.items()
            ],
            "retired": {"sheet": retired_ids(book, "aftercare"), "grass": retired_ids(book, "grasses"), "step": retired_ids(book, "steps")},
        },
    }
    return Page(MAKER, title, "client-link", context, lead, ("client link", "QR code", "aftercare link", "message to a client"))


def signature(book: Book) -> str:
    """What a message to a client ends with."""
    practice = book.practice
    return f"If anything looks wrong, call {practice.name}, {practice.telephone}." if practice.telephone else f"{practice.name}."


def _steps(book: Book, sheet: str) -> list[dict[str, str]]:
    """What is done to the lawn on the day, in every plan that this sheet follows, each once."""
    steps: dict[str, str] = {}
    # The fullest plan sets the order; the others have little that is not in it.
    for plan in sorted(book.renovations.values(), key=lambda plan: -len(plan.steps)):
        if plan.aftercare == sheet:
            steps |= {step.id: step.title or "" for step in plan.steps if _is_work_of_the_day(step) and step.id not in steps}
    return [{"id": id, "title": title} for id, title in steps.items()]


def _is_work_of_the_day(step: Step) -> bool:
    return step.day == 0 and step.who == "hands" and step.task is not None


def pages(making: Making) -> Iterator[Page]:
    if making.book.aftercare:
        yield client_link_page(making.book, making.here(MAKER))
