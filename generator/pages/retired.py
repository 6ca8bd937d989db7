"""Pages that are gone: who comes by an old link or code is told so, and led on to what took their place."""

from collections.abc import Iterator
from dataclasses import dataclass

from generator.model.book import Book
from generator.pages.desk import Desk
from generator.pages.link_ids import present_name
from generator.pages.page import Page
from generator.pages.services import telephone_link


@dataclass(frozen=True)
class Folder:
    """A folder of the site whose pages bear the ids of a kind. called: a page of it; title: with the record's name put in."""

    kind: str
    path: str
    called: str
    title: str = "{name}"
    listed: bool = True  # on an index page of its own


FOLDERS = (
    Folder("grasses", "grasses", "grass"), Folder("grasses", "renovate", "guide", "How to renovate {name}"), Folder("tasks", "tasks", "task"),
    Folder("cautions", "cautions", "caution"), Folder("places", "places", "place", listed=False), Folder("calculators", "calculators", "calculator"),
    Folder("renovations", "plans", "plan"), Folder("aftercare", "aftercare", "sheet"), Folder("problems", "problems", "problem"),
    Folder("answers", "answers", "answer"),
)  # fmt: skip
SCRIPT = "assets/retired.js"


def retired_addresses(book: Book) -> Iterator[tuple[Folder, str]]:
    """Each page that is gone, as its folder and its id."""
    return ((folder, id) for folder in FOLDERS for id in book.retired_of(folder.kind))


def retired_page(book: Book, folder: Folder, id: str, desk: Desk) -> Page:
    gone = book.retired_of(folder.kind)[id]
    title = f"{folder.title.format(name=gone.name)}: no longer in this book"
    lead = f"This {folder.called} has gone from the book. {gone.why}"
    there_now = folder.title.format(name=present_name(book, folder.kind, gone))
    now = {"url": desk.links.to(f"{folder.path}/{gone.instead}"), "title": there_now} if gone.instead else None
    practice = book.practice
    context = {
        "title": title, "script": desk.links.file(SCRIPT),
        "gone": {"called": folder.called, "lead": lead, "now": now, "all": desk.links.to(f"{folder.path}/index") if folder.listed else None},
        "practice": practice.name, "telephone": practice.telephone, "telephone_link": telephone_link(practice.telephone),
    }
    return Page(f"{folder.path}/{id}", title, "retired", context, lead, in_search=False)
