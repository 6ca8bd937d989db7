"""Which grass for what: every grass in order of what it takes of shade, wear, drought, salt, frost and heat, from its own record."""

import re
from collections.abc import Iterator
from math import fsum
from typing import Any, NamedTuple, get_args

from generator.book.book import Book
from generator.book.records.grass import Degree, Grass, Tolerance
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext
from generator.site.pages.grass.view import GROUP_WORDS

PATH = "which-grass"
RANK: dict[str, int] = {degree: rank for rank, degree in enumerate(get_args(Degree))}
# The level's bars are those of how hard a job is done: one, two, three.
BARS = {"low": "light", "medium": "moderate", "high": "hard"}
MENDS = {"bunch": "Grows in tufts, so you have to sow a hole."}
MENDS_BY_RUNNERS = "Runs, so it closes its own holes."


class Need(NamedTuple):
    """field: of a grass's tolerances. takes: 'take the most shade'. words: what people type who look for it."""

    field: str
    title: str
    takes: str
    words: tuple[str, ...]


NEEDS = (
    Need("shade", "Shade", "shade", ("best grass for shade", "which grass for shade", "grass for shady lawn", "shade tolerance of grasses")),
    Need("wear", "Hard wear, children and dogs", "wear", (
        "best grass for hard wear", "which grass for dogs", "toughest grass", "hardest wearing grass", "wear tolerance",
    )),
    Need("drought", "Drought and little water", "drought", ("which grass needs least water", "most drought tolerant grass", "drought tolerance")),
    Need("salt", "Salt, sea wind and salty water", "salt", ("salt tolerant grass", "best grass for the coast", "grass for bore water", "salt tolerance")),
    Need("frost", "Frost and cold", "frost", ("best grass for frost", "grass for cold winters", "frost tolerant grass", "cold tolerance")),
    Need("heat", "Heat", "heat", ("best grass for hot summers", "heat tolerant grass", "heat tolerance")),
)


def ranked_page(book: Book, here: PageContext) -> Page:
    title = "Which grass for what"
    lead = "Every grass in the book in order of how much it takes: shade, wear, drought, salt, frost, heat. Start from what your lawn gets most of."
    needs = [need for need in (_need(each, book, here) for each in NEEDS) if need["rows"]]
    context = {
        "title": title, "lead": lead, "needs": needs,
        "compare_url": here.links.to("side-by-side"), "key_url": here.links.to("grasses/key") if book.key else None,
    }
    words = ("best lawn grass", "grasses ranked", *(word for need in NEEDS for word in need.words))
    sections = tuple(Section(need["id"], need["title"]) for need in needs)
    return Page(PATH, title, "ranked", context, lead, words, sections)


def _need(need: Need, book: Book, here: PageContext) -> dict[str, Any]:
    found = [(id, grass, tolerance) for id, grass in book.grasses.items() if (tolerance := getattr(grass.tolerance, need.field))]
    found.sort(key=lambda each: (*_place(each[2]), each[1].name.casefold()))
    return {
        "id": need.field, "title": need.title, "said": _said(need, [(grass, tolerance) for _, grass, tolerance in found]),
        "rows": [_row(need, id, grass, tolerance, here) for id, grass, tolerance in found],
        "answers": [
            {"name": answer.question, "url": here.links.answer(id)} for id, answer in book.answers.items()
            if answer.table and f"grass.tolerance.{need.field}.level" in answer.table.columns.values()
        ],
    }


def _place(tolerance: Tolerance) -> tuple[float, float]:
    """The most tolerant first; among equals, the one that other sources think most of."""
    others = [RANK[other.level] for other in tolerance.others]
    own = RANK[tolerance.level]
    return -own, -(fsum(others) / len(others) if others else own)


def _said(need: Need, found: list[tuple[Grass, Tolerance]]) -> str:
    """'Buffalo and Fine fescue take the most shade. Couch takes the least.'"""
    most, least = ([grass.name for grass, tolerance in found if tolerance.level == level] for level in ("high", "low"))
    if not most:
        return f"None takes much {need.takes}."
    said = [f"{_list(names)} {'take' if len(names) > 1 else 'takes'} the {end}" for names, end in ((most, f"most {need.takes}"), (least, "least")) if names]
    return f"{'. '.join(said)}."


def _list(names: list[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


def _row(need: Need, id: str, grass: Grass, tolerance: Tolerance, here: PageContext) -> dict[str, Any]:
    return {
        "name": grass.name, "url": here.links.grass(id), "group": GROUP_WORDS[grass.season_group].removesuffix(" grass"), "elsewhere": _elsewhere(here.book, grass),
        "level": tolerance.level, "bars": BARS[tolerance.level], "note": tolerance.note, "marks": here.sourcing.marks(tolerance),
        "mends": MENDS.get(grass.habit, MENDS_BY_RUNNERS) if need.field == "wear" else None,
        "others": [{"level": other.level, "note": other.note, "marks": here.sourcing.marks(other)} for other in tolerance.others],
    }


def _elsewhere(book: Book, grass: Grass) -> str:
    """The usual name of each country where it is another one: 'kweek, bermudagrass'."""
    found = {_bare(grass.name): ""}
    for code in book.countries:
        for name in grass.names.get(code, ())[:1]:
            found.setdefault(_bare(name), name)
    return ", ".join(filter(None, found.values()))


def _bare(name: str) -> str:
    """Alike for names that differ only by a word 'grass', a capital, a point or a hyphen."""
    return re.sub(r"[\s.-]", "", name.casefold()).removesuffix("grass")


def pages(making: Making) -> Iterator[Page]:
    if len(making.book.grasses) > 1:
        yield ranked_page(making.book, making.here(PATH))
