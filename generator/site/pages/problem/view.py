"""Problems: what is seen, what to find out, the likely causes, what to do, and who to send for."""

from collections.abc import Iterable, Iterator
from typing import Any

from generator.book.book import Book
from generator.book.records.problem import Cause, Problem, ProblemAnswer, Question
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext, all_names
from generator.site.shared.prose import Prose

INDEX = "problems/index"
SECTIONS = (
    Section("see", "What you see"), Section("ask", "What to find out"), Section("causes", "Likely causes"),
    Section("send-for", "When to send for someone"), Section("more", "More"), Section("names", "Also called"),
)


def problem_page(book: Book, id: str, here: PageContext) -> Page:
    problem, prose = book.problems[id], Prose(here)
    context = {
        "title": problem.name, "summary": problem.summary, "looks": prose.sentences(problem.looks),
        "facts": [
            {"label": "How soon", **prose.sentence(problem.how_soon, problem.how_soon.text)}, {"label": "Where", **prose.sentence(problem.where, problem.where.text)},
        ],
        "grasses": [_link(book.grasses[each].name, here.links.grass(each)) for each in problem.grasses],
        "asked": {"questions": [_question(book, problem, each, here) for each in problem.questions]},
        "causes": [_cause(book, each, cause, prose, here) for each, cause in problem.causes.items()],
        "send_for": [
            {"name": book.experts[each.expert].name, "url": here.links.to(INDEX, f"expert-{each.expert}"), "when": each.when,
             "marks": here.sourcing.marks(each)}
            for each in problem.send_for
        ],
        "similar": problem_links(book, problem.similar, here),
        "aftercare": [_link(book.aftercare[each].name, here.links.aftercare(each)) for each in problem.aftercare],
        "answers": [_link(answer.question, here.links.answer(each)) for each, answer in book.answers.items() if id in answer.see.problems],
        "finder": here.links.to(INDEX), "names": here.names(problem.names), "quoted": prose.quoted(),
    }
    return Page(
        f"problems/{id}", problem.name, "problem", context, problem.summary, problem.misspellings, sections=SECTIONS,
        names=all_names(book, problem.names),
    )


def _question(book: Book, problem: Problem, question: Question, here: PageContext) -> dict[str, Any]:
    return {"ask": question.ask, "how": question.how, "answers": [
        {"answer": each.answer, "leads": _leads(book, problem, each, here)} for each in question.answers
    ]}


def _leads(book: Book, problem: Problem, answer: ProblemAnswer, here: PageContext) -> list[dict[str, str]]:
    """The causes on this page that an answer points to, then the other page."""
    causes = [_link(problem.causes[each].name, f"#cause-{each}") for each in answer.causes]
    return causes + problem_links(book, filter(None, [answer.problem]), here)


def _cause(book: Book, id: str, cause: Cause, prose: Prose, here: PageContext) -> dict[str, Any]:
    """The cause component's dict."""
    more = (
        ("Mind", [_link(each["name"], each["url"]) for each in here.cautions(cause.cautions)]),
        ("How it is done", [here.task_link(each) for each in cause.cured_by]),
        ("Work it out", [_link(book.calculators[each].name, here.links.calculator(each)) for each in cause.calculators]),
        ("Plan it", [_link(book.renovations[each].name, here.links.to(f"plans/{each}")) for each in cause.plans]),
        ("More", problem_links(book, cause.problems, here)),
    )
    return {
        "id": f"cause-{id}", "name": cause.name, "tells": prose.sentences(cause.tells),
        "do": prose.sentences(cause.do), "leave": prose.sentences(cause.leave),
        "more": [{"label": label, "links": links} for label, links in more if links],
    }


def _link(name: str, url: str) -> dict[str, str]:
    return {"name": name, "url": url}


def problem_links(book: Book, ids: Iterable[str], here: PageContext) -> list[dict[str, str]]:
    return [_link(book.problems[each].name, here.links.problem(each)) for each in ids]


def task_problems(book: Book, task: str, here: PageContext) -> list[dict[str, Any]]:
    """What a task brings on and what it cures, as two lists; a list with nothing in it is left out."""
    lists = (
        ("When it goes wrong", [id for id, problem in book.problems.items() if task in problem.caused_by]),
        ("What it puts right", [id for id, problem in book.problems.items() if task in problem.cured_by]),
    )
    return [{"title": title, "links": problem_links(book, ids, here)} for title, ids in lists if ids]


def grass_problems(book: Book, grass: str, here: PageContext) -> list[dict[str, str]]:
    """Problems best known on this grass."""
    return problem_links(book, (id for id, problem in book.problems.items() if grass in problem.grasses), here)


def sheet_problems(book: Book, sheet: str, here: PageContext) -> list[dict[str, str]]:
    """Problems that an aftercare sheet leads to when something looks wrong."""
    return problem_links(book, (id for id, problem in book.problems.items() if sheet in problem.aftercare), here)


def pages(making: Making) -> Iterator[Page]:
    yield from (problem_page(making.book, id, making.here(f"problems/{id}")) for id in making.book.problems)
