"""Grasses side by side: every figure, tolerance and level of every grass in one table, from which a reader picks a few."""

from collections.abc import Iterator
from typing import Any

from generator.book.book import Book
from generator.site.making import Making
from generator.site.page import Page
from generator.site.page_context import PageContext
from generator.site.pages.grass.view import FIGURES, GROUP_WORDS, TOLERANCES
from generator.words.figures import claim_words

PATH, SCRIPT = "side-by-side", "assets/side-by-side.js"
NONE: dict[str, Any] = {"quantity": None, "text": "–", "marks": {"marks": []}}
# Cells carry signs, told once below the table: a mark in each would bury the figures.
SIGNS = {"assumption": ("a", "an assumption of this book")}
# What the reader can look at beside each other without losing track; a phone shows two.
MOST = 4


def side_by_side_page(book: Book, here: PageContext) -> Page:
    title = "Grasses side by side"
    lead = "Choose two to four grasses and compare their figures, what they tolerate, and how hard to go with each job."
    grasses = [{"id": id, "name": grass.name, "url": here.links.grass(id)} for id, grass in book.grasses.items()]
    groups = [
        {"title": "What it is", "rows": _facts(book)},
        {"title": "Figures", "rows": [_row(label, book, lambda grass, name=name: _figure(getattr(grass, name), here)) for name, label in FIGURES]},
        {"title": "What it tolerates", "rows": [
            _row(name.capitalize(), book, lambda grass, name=name: _level(getattr(grass.tolerance, name), here)) for name in TOLERANCES
        ]},
        {"title": "How hard to go with each job", "rows": [
            {**_row(task.name, book, lambda grass, id=id: _level(grass.operations.get(id), here)), "url": here.links.task(id)}
            for id, task in book.tasks.items() if task.operation
        ]},
    ]
    groups = [group for group in groups if group["rows"]]
    view = {
        "id": "side-by-side", "grasses": grasses, **_with_signs(groups), "first": _first(book), "most": min(MOST, len(grasses)),
    }
    context = {"title": title, "lead": lead, "compare": view, "script": here.links.file(SCRIPT)}
    return Page(PATH, title, "side-by-side", context, lead, ("compare grasses", "which grass is better", "difference between grasses"))


def _with_signs(groups: list[dict[str, Any]]) -> dict[str, Any]:
    """groups with short signs for the marks of each cell, and what the signs stand for: sources by number, in the order of their first use."""
    numbers: dict[tuple[str, str], int] = {}
    used: dict[str, str] = {}

    def signs(marks: list[dict[str, Any]]) -> list[str]:
        found = []
        for mark in marks:
            if mark["kind"] in SIGNS:
                sign, used[sign] = SIGNS[mark["kind"]][0], SIGNS[mark["kind"]][1]
            else:
                sign = str(numbers.setdefault((mark["label"], mark["url"]), len(numbers) + 1))
            found.append(sign)
        return found

    groups = [
        {**group, "rows": [
            {**row, "cells": [
                {"grass": cell["grass"], "quantity": cell["quantity"], "text": cell["text"], "signs": signs(cell["marks"]["marks"])} for cell in row["cells"]
            ]}
            for row in group["rows"]
        ]}
        for group in groups
    ]
    return {
        "groups": groups, "signs": [{"sign": sign, "means": means} for sign, means in used.items()],
        "sources": [{"number": number, "label": label, "url": url} for (label, url), number in numbers.items()],
    }


def _first(book: Book) -> list[str]:
    """What stands there at first: the practice's own grass, and the next one of another habit."""
    home = book.practice.home_grass
    other = next((id for id, grass in book.grasses.items() if grass.habit != book.grasses[home].habit), None)
    return [home, *([other] if other else [])]


def _facts(book: Book) -> list[dict[str, Any]]:
    return [
        _row("Season", book, lambda grass: _text(GROUP_WORDS[grass.season_group].removesuffix(" grass"))),
        _row("Runs", book, lambda grass: _text(grass.habit)),
        _row("From seed", book, lambda grass: _text("yes" if grass.seed_rate or grass.establishment.from_seed else "no")),
    ]


def _row(label: str, book: Book, cell: Any) -> dict[str, Any]:
    return {"label": label, "url": None, "cells": [{"grass": id, **cell(grass)} for id, grass in book.grasses.items()]}


def _text(text: str) -> dict[str, Any]:
    return {"quantity": None, "text": text, "marks": {"marks": []}}


def _figure(figure: Any, here: PageContext) -> dict[str, Any]:
    return {"quantity": claim_words(figure), "text": "", "marks": here.sourcing.marks(figure)} if figure is not None else NONE


def _level(sourced: Any, here: PageContext) -> dict[str, Any]:
    return {"quantity": None, "text": sourced.level, "marks": here.sourcing.marks(sourced)} if sourced is not None else NONE


def pages(making: Making) -> Iterator[Page]:
    if len(making.book.grasses) > 1:
        yield side_by_side_page(making.book, making.here(PATH))
