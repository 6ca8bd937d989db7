"""A calculator inside another page: a guide's step, an aftercare sheet, filled in from what that page knows."""

from typing import Any

from generator.book.book import Book
from generator.book.records.step import Quantity
from generator.calculators.bindings import filled_in
from generator.calculators.chosen import Chosen
from generator.site.page_context import PageContext
from generator.site.pages.calculator.view import calculator_view


def embedded_calculator(book: Book, quantity: Quantity, context: Chosen, here: PageContext, place: str) -> dict[str, Any]:
    """The calculator component's dict with its main answer beside it; what nothing gives stays at the usual start.

    place: makes its ids unique on the page. What the page itself fills in comes first; an input it leaves alone is filled from
    what the input is bound to.
    """
    found = filled_in(quantity, context, book.calculators[quantity.calculator])
    view = calculator_view(book, quantity.calculator, here, filled=found, place=place)
    title = f"{quantity.title}: {view['title'][0].lower()}{view['title'][1:]}" if quantity.title else view["title"]
    return {**view, "title": title, "answer": _answer(view)}


def _answer(view: dict[str, Any]) -> dict[str, Any] | None:
    """The main result as filled in, to stand beside the closed calculator; None where the label has to speak first."""
    main = next((result for result in view["results"] if result["main"] and result["metric"]), None)
    area = next((field for field in view["fields"] if field["name"] == "area"), None)
    if main is None:
        return None
    return {
        "label": main["label"], "quantity": {"metric": main["metric"], "us": main["us"] or None},
        "area": f"{area['value']} {area['unit_words']}" if area else None,
    }
