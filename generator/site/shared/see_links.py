"""Pages that say more: the links of an answer or a word of the glossary."""

from collections.abc import Callable

from generator.book.book import Book
from generator.book.fields.see import See
from generator.site.page_context import PageContext

GLOSSARY = "glossary"


def asked_about(book: Book, kind: str, id: str, here: PageContext) -> list[dict[str, str]]:
    """Answers for clients that lead to a record: asked_about(book, 'tasks', 'core', here). name and url of each."""
    return [
        {"name": answer.question, "url": here.links.answer(answer_id)}
        for answer_id, answer in book.answers.items() if id in getattr(answer.see, kind)
    ]


def explained_on(see: See) -> frozenset[str]:
    """Paths of the pages that explain a word of the glossary themselves: the task it is a part of, the problem it is the name of."""
    folders = (("tasks", see.tasks), ("problems", see.problems), ("answers", see.answers))
    return frozenset(f"{folder}/{id}" for folder, ids in folders for id in ids)


def see_links(book: Book, see: See, here: PageContext) -> list[dict[str, str]]:
    """name, url and kind in a word, in the order of the record's fields."""
    links = here.links
    named: dict[str, tuple[str, Callable[[str], str], Callable[[str], str]]] = {
        "answers": ("answer", lambda id: book.answers[id].question, links.answer),
        "problems": ("problem", lambda id: book.problems[id].name, links.problem),
        "aftercare": ("aftercare", lambda id: book.aftercare[id].name, links.aftercare),
        "grasses": ("grass", lambda id: book.grasses[id].name, links.grass),
        "tasks": ("task", lambda id: book.tasks[id].name, links.task),
        "plans": ("plan", lambda id: book.renovations[id].name, lambda id: links.to(f"plans/{id}")),
        "calculators": ("calculator", lambda id: book.calculators[id].name, links.calculator),
        "cautions": ("caution", lambda id: book.cautions[id].name, links.caution),
        "terms": ("glossary", lambda id: book.of("terms")[id].name, lambda id: links.to(GLOSSARY, id)),
    }
    return [
        {"kind": word, "name": name(id), "url": url(id)}
        for field, (word, name, url) in named.items() for id in getattr(see, field)
    ]
