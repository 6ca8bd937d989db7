"""What is wrong with it? Every problem by the shape it makes, and who to send for."""

from collections.abc import Iterator
from typing import Any, get_args

from generator.book.book import Book
from generator.book.records.problem import Colour, Problem, Shape, When, Where
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext
from generator.site.pages.problem.view import INDEX
from generator.site.shared.prose import Prose
from generator.site.shared.public_lines import lines_everywhere

SCRIPT = "assets/problem-list.js"
SHAPE_WORDS = {
    "all over": "The whole lawn, or most of it", "stripes": "Stripes, strips and lines", "round patches": "Round patches",
    "rings": "Rings and arcs", "irregular patches": "Patches of no clear shape", "small spots": "Spots no wider than a hand",
    "single plants": "Plants that do not belong", "on the leaf": "Marks on the leaf itself", "the ground itself": "The ground itself",
}


def pages(making: Making) -> Iterator[Page]:
    if making.book.problems:
        yield problem_index(making.book, making.here(INDEX))


def problem_index(book: Book, here: PageContext) -> Page:
    """Every problem once, under the shape it has; and who the experts are, by country."""
    lead = "Start with what you see: the shape it makes on the lawn, then its colour, where it is, and when it came. Each page says how to tell its causes apart."
    context: dict[str, Any] = {
        "title": "What is wrong with it?", "lead": lead, "finder": finder_view(book, here), "experts": [
            {
                "id": f"expert-{id}", "name": expert.name, "summary": expert.summary, "marks": here.sourcing.marks(expert),
                "by_country": [_by_country(country.name, expert.by_country[code]) for code, country in book.countries.items() if code in expert.by_country],
                "lines": lines_everywhere(book, here.sourcing, expert=id),
            }
            for id, expert in book.experts.items()
        ],
        "scripts": [here.links.file(SCRIPT)],
    }
    words = ("problem finder", "lawn problems", "what is wrong with my lawn", "diagnose", "troubleshooting", "lawn is dying")
    sections = (*(Section(group["id"], group["title"]) for group in context["finder"]["groups"]), Section("experts", "Who to send for"))
    return Page(INDEX, "Problems", "problems", context, lead, words, sections=sections)


def _by_country(name: str, text: str) -> dict[str, str]:
    return {"country_name": name, "text": text}


def finder_view(book: Book, here: PageContext) -> dict[str, Any]:
    """The problem-list component's dict."""
    groups = [
        {"id": shape.replace(" ", "-"), "title": title, "rows": [
            _row(book, id, problem, here) for id, problem in book.problems.items() if problem.signs.shape[0] == shape
        ]}
        for shape, title in SHAPE_WORDS.items()
    ]
    kinds = (("shape", "Shape", Shape), ("colour", "Colour", Colour), ("where", "Where", Where), ("when", "When", When))
    return {
        "id": "problem-list",
        "filters": [{"id": id, "label": label, "choices": list(get_args(choices))} for id, label, choices in kinds],
        "groups": [group for group in groups if group["rows"]],
    }


def _row(book: Book, id: str, problem: Problem, here: PageContext) -> dict[str, Any]:
    signs = problem.signs
    return {
        "name": problem.name, "url": here.links.problem(id), "text": Prose(here).plain(problem.looks[0].text),
        "signs": {"shape": list(signs.shape), "colour": list(signs.colour), "where": list(signs.where), "when": list(signs.when)},
    }
