"""What is kept of a hosted book on a reader's device: the page that keeps all of it, and that stands in for a page that is not kept."""

from collections.abc import Iterator
from typing import Any

from generator.site.making import Making
from generator.site.page import Page
from generator.site.page_context import PageContext
from generator.site.shared.public_lines import telephone_link

TITLE = "Kept on this device"
LEAD = "What you can read of this book without a signal, and how to keep all of it."
FOLDER = "A book in a folder on a disk needs no keeping: all of it is there, with a signal or without."
# Pages that lead on, by what a reader calls them; the device says which of them it has.
DOORS = (
    ("index.html", "The first page"), ("cautions/index.html", "Cautions"), ("aftercare/index.html", "Aftercare"),
    ("calculators/index.html", "Calculators"), ("jobs/index.html", "Plan a job"), ("inspection.html", "Inspection sheet"),
    ("lawns.html", "Your lawns"), ("record.html", "Work record"),
    ("renovate/{grass}.html", "How to renovate {grass}"), ("calendars/{place}/{grass}.html", "The year of {grass} at {place}"),
    ("grasses/{grass}.html", "About {grass}"), ("places/{place}.html", "About {place}"),
)
LINES = (
    "After one visit, the pages that matter most on a lawn open without a signal. So does every page that you opened.",
    "Choose your grass and place once, with a signal, and their pages are kept as well.",
    "With a signal, each page asks first whether there is a new edition. So a corrected caution is the one you read.",
    "A browser may clear what it keeps when the device is short of room. Print the sheets that you cannot do without.",
)


def kept_page(making: Making, here: PageContext) -> Page:
    book, practice = making.book, making.book.practice
    names = {**{id: grass.name for id, grass in book.grasses.items()}, **{id: place.name for id, place in book.offered_places.items()}}
    keep = {
        "first": here.links.to("index"), "folder": FOLDER, "names": names,
        "doors": [{"words": words, "page": page} for page, words in DOORS],
    }
    context: dict[str, Any] = {
        "title": TITLE, "lead": LEAD, "keep": keep, "lines": LINES, "practice": practice.name, "telephone": practice.telephone,
        "telephone_link": telephone_link(practice.telephone),
    }
    words = (
        "offline", "no signal", "no reception", "works offline", "use without internet", "keep the whole book", "download the book", "install on phone",
        "save for later",
    )  # fmt: skip
    return Page("kept", TITLE, "kept", context, LEAD, words)


def pages(making: Making) -> Iterator[Page]:
    yield kept_page(making, making.here("kept"))
