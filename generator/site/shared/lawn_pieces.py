"""The lawn that a reader adds up from pieces: which calculators give a piece, and which take the sum."""

import re
from collections.abc import Iterable
from typing import Any

from generator.book.book import Book
from generator.book.records.calculator import Calculator, Input
from generator.calculators.bindings import parts_of
from generator.site.page_context import PageContext
from generator.units import unit

# How an expression names what the inspection measured.
MEASURED = "inspection."
LAWN_SCRIPT = "assets/lawn-pieces.js"
CALCULATOR_SCRIPT = "assets/calculator.js"
HOW_TO_BUILD_UP = (
    "A lawn of several pieces is added up as you measure: on the page of each shape, add the piece to the lawn or take it away."
    " The sum is kept on your device, and any calculator that asks for an area takes it."
)


def gives_a_piece(calculator: Calculator) -> bool:
    """A shape: it stands on the shelf of areas and answers with one."""
    return calculator.topic == "area" and "area" in calculator.results


def first_shape(book: Book) -> str | None:
    """Where measuring a lawn begins."""
    return next((id for id, each in book.calculators.items() if gives_a_piece(each)), None)


def takes_an_area(calculator: Calculator) -> bool:
    asked = calculator.inputs.get("area")
    return asked is not None and of_the_lawn("area", asked) == "area"


def of_the_lawn(name: str, asked: Input) -> str:
    """What a kept lawn gives for an input: 'area', or the question of the inspection that measures it; empty for neither."""
    if name == "area" and not asked.many and unit(asked.unit).dimension == unit("m2").dimension:
        return name
    measured = (part for part in parts_of(asked.binds or "") if part.startswith(MEASURED))
    return next(measured, "").removeprefix(MEASURED)


def lawn_pieces_view(book: Book, id: str, here: PageContext) -> dict[str, Any] | None:
    """The lawn-pieces component's dict for the page of a calculator; None where it gives no piece."""
    if not gives_a_piece(book.calculators[id]):
        return None
    takers = {each: calculator for each, calculator in book.calculators.items() if takes_an_area(calculator)}
    targets = [
        {"title": topic[0].upper() + topic[1:], "calculators": [
            {"title": calculator.name, "url": here.links.calculator(each)} for each, calculator in takers.items() if calculator.topic == topic
        ]}
        for topic in book.topics_of("calculators")
    ]
    return {
        "id": "lawn-so-far", "calculator": id, "piece": piece_name(book.calculators[id]),
        "shapes": [
            {"title": calculator.name, "url": here.links.calculator(each)}
            for each, calculator in book.calculators.items() if gives_a_piece(calculator)
        ],
        "targets": [group for group in targets if group["calculators"]],
    }


def piece_name(calculator: Calculator) -> str:
    """'Area of a triangle by its sides' -> 'Triangle by its sides'."""
    name = re.sub(r"^Area of (an? )?", "", calculator.name)
    return name[0].upper() + name[1:]


def calculator_scripts(book: Book, views: Iterable[dict[str, Any]], here: PageContext) -> list[str]:
    """Addresses of the scripts that a page with these calculators loads: what all share, their own, and the lawn's where one has an area."""
    views = list(views)
    scripts = {view["script"] for view in views} | ({here.links.file(CALCULATOR_SCRIPT)} if views else set())
    shown = [book.calculators[view["calculator"]] for view in views]
    if any(gives_a_piece(each) or takes_an_area(each) for each in shown):
        scripts.add(here.links.file(LAWN_SCRIPT))
    return sorted(scripts)
