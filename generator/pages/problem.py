"""Problems: what is seen, what to find out, the likely causes, what to do, and who to send for."""

from collections.abc import Iterable
from typing import Any, get_args

from generator.model.book import Book
from generator.model.problem import Answer, Cause, Colour, Problem, Question, Shape, When, Where
from generator.pages.desk import COUNTRY_NAMES, Desk, all_names
from generator.pages.page import Page, Section
from generator.pages.prose import Prose
from generator.pages.services import lines_everywhere

INDEX = "problems/index"
SCRIPT = "assets/problem-list.js"
SHAPE_WORDS = {
    "all over": "The whole lawn, or most of it", "stripes": "Stripes, strips and lines", "round patches": "Round patches",
    "rings": "Rings and arcs", "irregular patches": "Patches of no clear shape", "small spots": "Spots no wider than a hand",
    "single plants": "Plants that do not belong", "on the leaf": "Marks on the leaf itself", "the ground itself": "The ground itself",
}
SECTIONS = (
    Section("see", "What you see"), Section("ask", "What to find out"), Section("causes", "Likely causes"),
    Section("send-for", "When to send for someone"), Section("more", "More"), Section("names", "Also called"),
)


def problem_page(book: Book, id: str, desk: Desk) -> Page:
    problem, prose = book.problems[id], Prose(book, desk)
    context = {
        "title": problem.name, "summary": problem.summary, "looks": prose.sentences(problem.looks),
        "facts": [
            {"label": "How soon", **prose.sentence(problem.how_soon, problem.how_soon.text)}, {"label": "Where", **prose.sentence(problem.where, problem.where.text)},
        ],
        "grasses": [_link(book.grasses[each].name, desk.links.grass(each)) for each in problem.grasses],
        "asked": {"questions": [_question(book, problem, each, desk) for each in problem.questions]},
        "causes": [_cause(book, each, cause, prose, desk) for each, cause in problem.causes.items()],
        "send_for": [
            {"name": book.experts[each.expert].name, "url": desk.links.to(INDEX, f"expert-{each.expert}"), "when": each.when,
             "marks": desk.sourcing.marks(each)}
            for each in problem.send_for
        ],
        "similar": problem_links(book, problem.similar, desk),
        "aftercare": [_link(book.aftercare[each].name, desk.links.aftercare(each)) for each in problem.aftercare],
        "answers": [_link(answer.question, desk.links.answer(each)) for each, answer in book.answers.items() if id in answer.see.problems],
        "finder": desk.links.to(INDEX), "names": desk.names(problem.names), "quoted": prose.quoted(),
    }
    return Page(
        f"problems/{id}", problem.name, "problem", context, problem.summary, problem.misspellings, sections=SECTIONS,
        names=all_names(problem.names),
    )


def _question(book: Book, problem: Problem, question: Question, desk: Desk) -> dict[str, Any]:
    return {"ask": question.ask, "how": question.how, "answers": [
        {"answer": each.answer, "leads": _leads(book, problem, each, desk)} for each in question.answers
    ]}


def _leads(book: Book, problem: Problem, answer: Answer, desk: Desk) -> list[dict[str, str]]:
    """The causes on this page that an answer points to, then the other page."""
    causes = [_link(problem.causes[each].name, f"#cause-{each}") for each in answer.causes]
    return causes + problem_links(book, filter(None, [answer.problem]), desk)


def _cause(book: Book, id: str, cause: Cause, prose: Prose, desk: Desk) -> dict[str, Any]:
    """The cause component's dict."""
    more = (
        ("Mind", [_link(each["name"], each["url"]) for each in desk.cautions(cause.cautions)]),
        ("How it is done", [desk.task_link(each) for each in cause.cured_by]),
        ("Work it out", [_link(book.calculators[each].name, desk.links.calculator(each)) for each in cause.calculators]),
        ("Plan it", [_link(book.renovations[each].name, desk.links.to(f"plans/{each}")) for each in cause.plans]),
        ("More", problem_links(book, cause.problems, desk)),
    )
    return {
        "id": f"cause-{id}", "name": cause.name, "tells": prose.sentences(cause.tells),
        "do": prose.sentences(cause.do), "leave": prose.sentences(cause.leave),
        "more": [{"label": label, "links": links} for label, links in more if links],
    }


def _link(name: str, url: str) -> dict[str, str]:
    return {"name": name, "url": url}


def problem_links(book: Book, ids: Iterable[str], desk: Desk) -> list[dict[str, str]]:
    return [_link(book.problems[each].name, desk.links.problem(each)) for each in ids]


def task_problems(book: Book, task: str, desk: Desk) -> list[dict[str, Any]]:
    """What a task brings on and what it cures, as two lists; a list with nothing in it is left out."""
    lists = (
        ("When it goes wrong", [id for id, problem in book.problems.items() if task in problem.caused_by]),
        ("What it puts right", [id for id, problem in book.problems.items() if task in problem.cured_by]),
    )
    return [{"title": title, "links": problem_links(book, ids, desk)} for title, ids in lists if ids]


def grass_problems(book: Book, grass: str, desk: Desk) -> list[dict[str, str]]:
    """Problems best known on this grass."""
    return problem_links(book, (id for id, problem in book.problems.items() if grass in problem.grasses), desk)


def sheet_problems(book: Book, sheet: str, desk: Desk) -> list[dict[str, str]]:
    """Problems that an aftercare sheet leads to when something looks wrong."""
    return problem_links(book, (id for id, problem in book.problems.items() if sheet in problem.aftercare), desk)


def problem_index(book: Book, desk: Desk) -> Page:
    """Every problem once, under the shape it has; and who the experts are, by country."""
    lead = "Start with what you see: the shape it makes on the lawn, then its colour, where it is, and when it came. Each page says how to tell its causes apart."
    context = {
        "title": "What is wrong with it?", "lead": lead, "finder": finder_view(book, desk), "experts": [
            {
                "id": f"expert-{id}", "name": expert.name, "summary": expert.summary, "marks": desk.sourcing.marks(expert),
                "by_country": [_by_country(COUNTRY_NAMES[code], expert.by_country[code]) for code in COUNTRY_NAMES if code in expert.by_country],
                "lines": lines_everywhere(book, desk.sourcing, expert=id),
            }
            for id, expert in book.experts.items()
        ],
        "scripts": [desk.links.file(SCRIPT)],
    }
    words = ("problem finder", "lawn problems", "what is wrong with my lawn", "diagnose", "troubleshooting", "lawn is dying")
    sections = (*(Section(group["id"], group["title"]) for group in context["finder"]["groups"]), Section("experts", "Who to send for"))
    return Page(INDEX, "Problems", "problems", context, lead, words, sections=sections)


def _by_country(name: str, text: str) -> dict[str, str]:
    return {"country_name": name, "text": text}


def finder_view(book: Book, desk: Desk) -> dict[str, Any]:
    """The problem-list component's dict."""
    groups = [
        {"id": shape.replace(" ", "-"), "title": title, "rows": [
            _row(book, id, problem, desk) for id, problem in book.problems.items() if problem.signs.shape[0] == shape
        ]}
        for shape, title in SHAPE_WORDS.items()
    ]
    kinds = (("shape", "Shape", Shape), ("colour", "Colour", Colour), ("where", "Where", Where), ("when", "When", When))
    return {
        "id": "problem-list",
        "filters": [{"id": id, "label": label, "choices": list(get_args(choices))} for id, label, choices in kinds],
        "groups": [group for group in groups if group["rows"]],
    }


def _row(book: Book, id: str, problem: Problem, desk: Desk) -> dict[str, Any]:
    signs = problem.signs
    return {
        "name": problem.name, "url": desk.links.problem(id), "text": Prose(book, desk).plain(problem.looks[0].text),
        "signs": {"shape": list(signs.shape), "colour": list(signs.colour), "where": list(signs.where), "when": list(signs.when)},
    }
