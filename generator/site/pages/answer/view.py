"""Answers for clients: a question as it comes by e-mail, the short answer first, and an address to paste into the reply."""

from collections.abc import Iterator
from typing import Any

from generator.book.book import Book
from generator.book.fields.sourced import Claim
from generator.book.records.answer import Answer, GrassTable
from generator.calculators.filled_value import Missing
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext
from generator.site.pages.ranked.view import NEEDS
from generator.site.pages.ranked.view import PATH as RANKED
from generator.site.shared.prose import Prose, spelt
from generator.site.shared.public_lines import telephone_link
from generator.site.shared.see_links import see_links
from generator.words.quoted_figures import grass_field

SECTIONS = (
    Section("changes", "What changes it"), Section("table", "By grass"), Section("call", "When to call"),
    Section("more", "More on this"), Section("send", "Send this answer"),
)


def answer_page(book: Book, id: str, here: PageContext) -> Page:
    answer, prose, practice = book.answers[id], Prose(here), book.practice
    short = prose.plain(answer.short.text)
    context = {
        "title": answer.question, "short": prose.sentence(answer.short, answer.short.text),
        "say": prose.sentences(answer.say), "in_order": answer.in_order,
        "changes": [{"what": each.what, **prose.sentence(each, each.text)} for each in answer.changes],
        "table": _table(book, answer.table, here) if answer.table else None,
        "cautions": here.cautions(answer.cautions), "call": prose.sentences(answer.call),
        "practice": practice.name, "telephone": practice.telephone, "telephone_link": telephone_link(practice.telephone),
        "email": practice.email, "more": see_links(book, answer.see, here), "index": here.links.to("answers/index"),
        "quoted": prose.quoted(), "send": _send(book, id, answer, short),
    }
    return Page(f"answers/{id}", answer.question, "answer", context, short, answer.asked_as, sections=SECTIONS)


def _send(book: Book, id: str, answer: Answer, short: str) -> dict[str, Any] | None:
    """What is pasted into a reply, on the book's public address; None for a book without one."""
    public = book.practice.public_address
    if public is None:
        return None
    address = f"{public}answers/{id}.html"
    return {
        "address": {"id": "answer-address", "label": "Address of this page", "text": address, "rows": 2, "button": "Copy the address"},
        "message": {
            "id": "answer-message", "label": "Short answer with the address", "text": f"{answer.question}\n{short}\nMore: {address}",
            "rows": 9, "button": "Copy the answer",
        },
    }


def _table(book: Book, table: GrassTable, here: PageContext) -> dict[str, Any]:
    """A row for each grass that has any of the fields asked for."""
    rows = []
    for id, grass in book.grasses.items():
        if table.season_group in (None, grass.season_group):
            cells = [_cell(expression, grass, here) for expression in table.columns.values()]
            if any(cell["quantity"] or cell["text"] for cell in cells):
                rows.append({"name": grass.name, "url": here.links.grass(id), "cells": cells})
    ranked = [
        {"name": f"All grasses in order: {need.title[0].lower()}{need.title[1:]}", "url": here.links.to(RANKED, need.field)}
        for need in NEEDS if len(book.grasses) > 1 and f"grass.tolerance.{need.field}.level" in table.columns.values()
    ]
    return {"title": table.title, "headings": list(table.columns), "rows": rows, "ranked": ranked}


def _cell(expression: str, grass: Any, here: PageContext) -> dict[str, Any]:
    try:
        value = grass_field(expression, grass)
    except Missing:
        return {"quantity": None, "text": "", "marks": {"marks": []}}
    if isinstance(value, Claim):
        return {"quantity": spelt(value), "text": "", "marks": here.sourcing.marks(value)}
    return {"quantity": None, "text": value, "marks": {"marks": []}}


def answer_index(book: Book, here: PageContext) -> Page:
    prose = Prose(here)
    groups: list[dict[str, Any]] = [
        {"title": topic[0].upper() + topic[1:], "cards": [
            {"title": answer.question, "url": here.links.answer(id), "text": prose.plain(answer.short.text)}
            for id, answer in book.answers.items() if answer.topic == topic
        ]}
        for topic in book.topics_of("answers")
    ]
    lead = here.edition.either(
        practice="What clients ask by e-mail, each with the short answer first. Every answer has a lasting address to paste into a reply.",
        clients="What people ask us about their lawns, each with the short answer first.",
    )
    groups = [group for group in groups if group["cards"]]
    title = here.edition.either(practice="Answers for clients", clients="Answers")
    context = {"title": title, "lead": lead, "groups": groups}
    sections = tuple(Section(group["title"].lower().replace(" ", "-"), group["title"]) for group in groups)
    return Page("answers/index", title, "index", context, lead, ("questions", "client questions", "FAQ"), sections)


def pages(making: Making) -> Iterator[Page]:
    book = making.book
    yield answer_index(book, making.here("answers/index"))
    yield from (answer_page(book, id, making.here(f"answers/{id}")) for id in book.answers)
