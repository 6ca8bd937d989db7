"""Pages that are gone: who comes by an old link or code is told so, and led on to what took their place."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from generator.book.book import Book
from generator.site.making import Making
from generator.site.page import Page
from generator.site.page_context import PageContext
from generator.site.shared.link_ids import present_name
from generator.site.shared.public_lines import telephone_link


@dataclass(frozen=True)
class Folder:
    """A folder of the site whose pages bear the ids of a kind. called: a page of it; title: with the record's name put in."""

    kind: str
    path: str
    called: str
    title: str = "{name}"


FOLDERS = (
    Folder("grasses", "grasses", "grass"), Folder("grasses", "renovate", "guide", "How to renovate {name}"), Folder("tasks", "tasks", "task"),
    Folder("cautions", "cautions", "caution"), Folder("places", "places", "place"), Folder("calculators", "calculators", "calculator"),
    Folder("renovations", "plans", "plan"), Folder("aftercare", "aftercare", "sheet"), Folder("problems", "problems", "problem"),
    Folder("answers", "answers", "answer"),
)  # fmt: skip
SCRIPT = "assets/retired.js"
# A page that is called otherwise now: what stood at its old address, and where it stands.
MOVED = {"visit": ("Visit sheet", "inspection")}


def retired_addresses(book: Book) -> Iterator[tuple[Folder, str]]:
    """Each page that is gone, as its folder and its id."""
    return ((folder, id) for folder in FOLDERS for id in book.retired_of(folder.kind))


def moved_page(path: str, now: Page, here: PageContext) -> Page:
    """What stands at the old address of a page. now: the page."""
    was, to = MOVED[path]
    title, lead = f"{was}: at another address now", f"What was the {was.lower()} is the {now.title.lower()} now. It asks the same."
    return _way_on(path, title, lead, {"called": "page", "now": {"url": here.links.to(to), "title": now.title}, "all": None}, here)


def retired_page(book: Book, folder: Folder, id: str, here: PageContext) -> Page:
    gone = book.retired_of(folder.kind)[id]
    title = f"{folder.title.format(name=gone.name)}: no longer in this book"
    lead = f"This {folder.called} is no longer in the book. {gone.why}"
    there_now = folder.title.format(name=present_name(book, folder.kind, gone))
    now = {"url": here.links.to(f"{folder.path}/{gone.instead}"), "title": there_now} if gone.instead else None
    gone_now = {"called": folder.called, "now": now, "all": here.links.to(f"{folder.path}/index")}
    return _way_on(f"{folder.path}/{id}", title, lead, gone_now, here)


def _way_on(path: str, title: str, lead: str, gone: dict[str, Any], here: PageContext) -> Page:
    practice = here.book.practice
    context = {
        "title": title, "script": here.links.file(SCRIPT), "gone": {**gone, "lead": lead},
        "practice": practice.name, "telephone": practice.telephone, "telephone_link": telephone_link(practice.telephone),
    }
    return Page(path, title, "retired", context, lead, in_search=False)


def pages(making: Making) -> Iterator[Page]:
    book = making.book
    yield from (
        retired_page(book, folder, id, making.here(f"{folder.path}/{id}"))
        for folder, id in retired_addresses(book) if making.edition.publishes(folder.path)
    )
