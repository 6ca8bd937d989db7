"""The first page of the site for clients: whom to ring, the sheets for after the work, and where the rest is."""

from collections.abc import Iterator
from typing import Any

from generator.site.making import Making
from generator.site.page import Page
from generator.site.page_context import PageContext
from generator.site.shared.public_lines import telephone_link
from generator.site.shared.see_links import GLOSSARY

# What a client looks for beside a sheet, in the order in which it is asked: a page, its title, and a sentence.
DOORS = (
    ("answers/index", "A question", "What people ask us about their lawns, each with the short answer first."),
    ("problems/index", "Something looks wrong", "From what you see to the cause, and what to do."),
    ("cautions/index", "What can hurt somebody", "Before you mow, spray, dig or let children and dogs back on."),
    ("grasses/index", "Your grass", "What it can take, and what never to do to it."),
    ("calendars/index", "The year of your lawn", "When it grows and rests, and when it can take work."),
    ("renovate/index", "How a lawn is renovated", "What we do to it, in which order, and why."),
    ("tasks/index", "Each job on the lawn", "Mowing, watering, feeding and the rest: what it is for, and how."),
    (GLOSSARY, "Words of the trade", "What we mean by thatch, scarify or topdress."),
)


def client_home_page(making: Making, here: PageContext) -> Page:
    book, practice = making.book, making.book.practice
    title = f"{practice.name}: looking after your lawn"
    sheets = [{"title": sheet.name, "url": here.links.aftercare(id), "text": sheet.summary} for id, sheet in book.aftercare.items()]
    context: dict[str, Any] = {
        "title": "Looking after your lawn", "about": practice.about, "practice": practice.name, "telephone": practice.telephone,
        "telephone_link": telephone_link(practice.telephone), "email": practice.email, "sheets": sheets,
        "doors": [{"title": words, "url": here.links.to(path), "text": text} for path, words, text in DOORS],
    }
    return Page("index", title, "client-home", context, practice.about)


def pages(making: Making) -> Iterator[Page]:
    yield client_home_page(making, making.here("index"))
