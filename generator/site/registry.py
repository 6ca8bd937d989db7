"""Every kind of page, a line each, in the order of the navigation; and from these every page, every file and the tabs of a site.

A kind says in its line which of a book's sites it stands in.
"""

from collections.abc import Collection
from dataclasses import replace
from typing import Any

from generator.book.editions import OWN, Edition
from generator.site.frame.offline import Keeping
from generator.site.making import Making
from generator.site.page import Page
from generator.site.page_kind import ABOUT, DOORS, Files, PageKind, Tab
from generator.site.search.search_index import SearchKind

PAGE_KINDS = (
    PageKind(
        "home", "list", 0.3, names_only=True, kept="first", kept_chosen=("assets/seasons/{grass}--{place}.js",), tab=Tab("Home", "index"), audience="practice",
    ),
    PageKind("client-home", "list", 0.3, names_only=True, for_clients=True, kept="first", tab=Tab("Home", "index", clients=DOORS), audience="clients"),
    PageKind("grass", "grass", 1.6, kept_chosen=("grasses/{grass}.html",), tab=Tab("Grasses", "grasses/index", clients=DOORS)),
    PageKind("key", "which grass is it", 1.1),
    PageKind("guide", "renovation guide", 0.85, glossary=True, kept_chosen=("renovate/{grass}.html",), tab=Tab("Renovate", "renovate/index")),
    PageKind("plan", "plan", 0.9, opened_by="plans"),
    PageKind("inspection", "inspection sheet", 1, kept="at once", opened_by="inspection"),
    PageKind("side-by-side", "side by side", 0.8),
    PageKind("ranked", "grasses in order", 1),
    PageKind(
        "job", "planner", 1.1, kept="at once", kept_chosen=("assets/jobs/*--{grass}.js", "assets/jobs/places/{place}--{grass}.js"),
        tab=Tab("Jobs", "jobs/index"), opened_by="jobs",
    ),
    PageKind("lawns", "your lawns", 1, kept="at once", opened_by="jobs"),
    PageKind("programme", "year of visits", 1.05, opened_by="jobs"),
    PageKind("calendars", "list", 0.4, names_only=True, tab=Tab("Calendars", "calendars/index")),
    PageKind("compare", "place by place", 0.5, names_only=True),
    PageKind("places", "list", 0.4, names_only=True),
    PageKind("place", "place", 1.8, kept_chosen=("places/{place}.html",)),
    PageKind("other-place", "place", 1.2),
    PageKind("calendar", "calendar", 1.15, kept_chosen=("calendars/{place}/{grass}.html", "assets/years/{place}--{grass}.js")),
    PageKind("calculator", "calculator", 0.8, kept="at once", tab=Tab("Calculators", "calculators/index"), opened_by="calculators"),
    PageKind("aftercare", "aftercare", 0.6, for_clients=True, kept="at once", tab=Tab("Aftercare", "aftercare/index", clients=DOORS)),
    PageKind("client-link", "client link", 1, opened_by="links"),
    PageKind("problems", "list", 0.5, names_only=True, tab=Tab("Problems", "problems/index", clients=DOORS)),
    PageKind("problem", "problem", 0.95, glossary=True),
    PageKind("answer", "answer", 0.7, glossary=True, for_clients=True, tab=Tab("Answers", "answers/index", clients=DOORS)),
    PageKind("task", "task", 1.75, glossary=True, tab=Tab("Tasks", "tasks/index")),
    PageKind("caution", "caution", 1.4, kept="first", tab=Tab("Cautions", "cautions/index", clients=DOORS)),
    PageKind("record", "record", 1.1, kept="at once", opened_by="record"),
    PageKind("glossary", "list", 0.3, names_only=True, tab=Tab("Glossary", "glossary", ABOUT)),
    PageKind("names", "list", 0.4, names_only=True, tab=Tab("Names by country", "names", ABOUT)),
    PageKind("sources", "list", 0.3, names_only=True, tab=Tab("Sources", "sources", ABOUT)),
    PageKind("kept", "kept on this device", 0.6, for_clients=True, kept="first"),
    PageKind("retired", "gone", 1),
    PageKind("index", "list", 0.3, names_only=True),
)

FIRST_FOR_CLIENTS = ("index", "aftercare/index", "answers/index", "problems/index", "cautions/index", "grasses/index")
KIND_OF = {kind.name: kind for kind in PAGE_KINDS}


def all_pages(making: Making) -> list[Page]:
    """Every generated page, with the line at its foot that says where it comes from."""
    pages = [page for kind in PAGE_KINDS if kind.stands_in(making.edition) for page in kind.pages(making)]
    return [replace(page, foot=making.here(page.path).sourcing.foot()) for page in pages]


def all_files(making: Making) -> Files:
    """What pages load and lead to: path in the site to content."""
    return {path: content for kind in PAGE_KINDS if kind.stands_in(making.edition) for path, content in kind.files(making).items()}


def keeping(pages: Collection[Page], edition: Edition) -> Keeping:
    """What of these pages a browser keeps of a book that is hosted: those of a kind, and the door that lists them."""
    def kept(when: str) -> tuple[str, ...]:
        doors = {kind.tab.page for kind in PAGE_KINDS if kind.kept == when and kind.tab is not None}
        return tuple(f"{page.path}.html" for page in pages if KIND_OF[page.kind].kept == when or page.path in doors)

    return Keeping(kept("first"), kept("at once"), tuple(each for kind in PAGE_KINDS if kind.stands_in(edition) for each in kind.kept_chosen))


def search_kinds() -> dict[str, SearchKind]:
    """What search makes of each kind of page."""
    return {kind.name: SearchKind(kind.said, kind.weight, kind.names_only) for kind in PAGE_KINDS}


def beside_others(edition: Edition) -> frozenset[str]:
    """Pages that list their neighbours beside them: those under More, to which its tab alone would not lead."""
    tabs = (kind.tab for kind in PAGE_KINDS if edition.for_clients and kind.tab is not None)
    return frozenset(tab.page for tab in tabs if tab.clients == ABOUT)


def navigation(written: list[str], there: Collection[str], edition: Edition = OWN) -> list[dict[str, Any]]:
    """The tabs: front doors only. A full tree would stand in every page and grow with pages squared.

    written: pages written by hand, which stand under About. there: every page of the book, as the path of its Markdown.
    Clients get few tabs, in the order in which they look for things; the rest is under More.
    """
    tabs = [kind.tab for kind in PAGE_KINDS if kind.tab is not None and kind.stands_in(edition)]
    if edition.for_clients:
        tabs.sort(key=lambda tab: FIRST_FOR_CLIENTS.index(tab.page) if tab.page in FIRST_FOR_CLIENTS else len(FIRST_FOR_CLIENTS))

    def links(among: str) -> list[dict[str, str]]:
        there_now = (tab for tab in tabs if f"{tab.page}.md" in there)
        return [{tab.words: f"{tab.page}.md"} for tab in there_now if (tab.clients if edition.for_clients else tab.among) == among]

    return [*links(DOORS), {"More" if edition.for_clients else "About": [*links(ABOUT), *written]}]
