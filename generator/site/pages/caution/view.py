"""Caution pages: the danger, who is at risk, what to do, and whom to defer to."""

from collections.abc import Iterator

from generator.book.book import Book
from generator.site.making import Making
from generator.site.page import Page
from generator.site.page_context import PageContext
from generator.site.shared.public_lines import called, lines_everywhere


def pages(making: Making) -> Iterator[Page]:
    book = making.book
    yield caution_index(book, making.here("cautions/index"))
    yield from (caution_page(book, id, making.here(f"cautions/{id}")) for id in book.cautions)


def caution_page(book: Book, id: str, here: PageContext) -> Page:
    caution, sourcing = book.cautions[id], here.sourcing
    context = {
        "title": caution.name, "caution": here.caution(id),
        "hazard": sourcing.statements(caution.hazard), "at_risk": sourcing.statements(caution.at_risk),
        "what_to_do": sourcing.statements(caution.what_to_do), "defer_to_all": caution.defer_to_all,
        "defer_to": [
            {"country_name": country.name, "text": caution.defer_to[code]} for code, country in book.countries.items() if code in caution.defer_to
        ],
        "lines": lines_everywhere(book, sourcing, caution=id),
        "tasks": [here.task_link(task_id) for task_id, task in book.tasks.items() if id in task.cautions],
    }
    return Page(f"cautions/{id}", caution.name, "caution", context, caution.summary, (*caution.misspellings, *called(book, id)))


def caution_index(book: Book, here: PageContext) -> Page:
    groups = [
        {"title": title, "cards": [
            {"title": caution.name, "url": here.links.caution(id), "text": caution.summary}
            for id, caution in book.cautions.items() if caution.weight == weight
        ]}
        for weight, title in (("danger", "Can kill or maim"), ("care", "Take care"), ("note", "Worth knowing"))
    ]
    lead = "The usual cautions, shown again at the step where they matter. The label, the machine's manual, local codes and licensed people decide."
    context = {"title": "Cautions", "lead": lead, "groups": [group for group in groups if group["cards"]]}
    return Page("cautions/index", "Cautions", "index", context, lead)
