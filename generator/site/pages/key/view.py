"""The key of grasses as a page: numbered questions, where each answer leads, and where the key ends."""

from collections.abc import Iterator
from typing import Any

from generator.book.book import Book
from generator.book.records.identification import FEATURES, Key, KeyQuestion
from generator.field.grass_key import End, Fork, key_of, values_of
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext
from generator.site.pages.grass.grass_parts import DRAWN, drawing, words_for

SCRIPT = "assets/grass-key.js"
PATH = "grasses/key"
NONE = "none"
# How an end is reached: number of the question, its answer, the feature that it asks about.
Way = tuple[tuple[int, str, str], ...]

def key_page(book: Book, key: Key, here: PageContext) -> Page:
    tree = key_of(key.questions, book.grasses)
    numbers: dict[int, int] = {}
    _number(tree, numbers)
    questions: list[dict[str, Any]] = []
    ends: list[dict[str, Any]] = []
    _lay_out(book, key, tree, numbers, (), questions, ends, here)
    context = {
        "title": key.title, "lead": key.summary, "none_of_ours": key.none_of_ours,
        "key": {"label": key.title, "none": NONE, "questions": questions, "ends": ends},
        "looks": [{"name": each.name, "look": each.look} for each in key.features.values()],
        "habits": [
            {"figure": drawing("habit", habit, words.name), **here.sourcing.statement(words)} for habit, words in key.habits.items()
        ],
        "strangers": [{"name": each.name, **here.sourcing.statement(each)} for each in key.strangers],
        "scripts": [here.links.file(SCRIPT)],
    }
    sections = (Section("key", "The key"), Section("habits", "Where it runs"), Section("look", "How to look"), Section(NONE, "None of these"))
    words = ("identify grass", "grass identification", "what grass is this", "key", "ligule", "runners", "tell grasses apart")
    return Page(PATH, key.title, "key", context, key.summary, words, sections=sections)


def _number(node: Fork | End, numbers: dict[int, int]) -> None:
    """Numbers of the forks from 1, in the order in which they are read: what follows yes before what follows no."""
    if isinstance(node, Fork):
        numbers[id(node)] = len(numbers) + 1
        _number(node.yes, numbers)
        _number(node.no, numbers)


def _lay_out(
    book: Book, key: Key, node: Fork | End, numbers: dict[int, int], way: Way, questions: list[dict[str, Any]], ends: list[dict[str, Any]], here: PageContext
) -> None:
    if isinstance(node, End):
        ends.append(_end(book, key, node, way, here))
        return
    number, question = numbers[id(node)], key.questions[node.question]
    questions.append({
        "id": f"q{number}", "number": number, "ask": question.ask, "hint": question.hint or "",
        "drawings": _drawings(key, question), "if_yes": _leads_to(book, node.yes, numbers), "if_no": _leads_to(book, node.no, numbers),
    })
    for answer, branch in (("yes", node.yes), ("no", node.no)):
        _lay_out(book, key, branch, numbers, (*way, (number, answer, question.feature)), questions, ends, here)


def _leads_to(book: Book, node: Fork | End, numbers: dict[int, int]) -> dict[str, str]:
    if isinstance(node, Fork):
        return {"to": f"q{numbers[id(node)]}", "text": f"go to {numbers[id(node)]}"}
    return {"to": _end_id(node), "text": " or ".join(book.grasses[grass].name for grass in node.grasses)}


def _end_id(node: End) -> str:
    return f"end-{node.grasses[0]}" if node.grasses else "end"


def _end(book: Book, key: Key, node: End, way: Way, here: PageContext) -> dict[str, Any]:
    asked = {feature for _, _, feature in way}
    return {
        "id": _end_id(node), "how": ", ".join(f"{number} {answer}" for number, answer, _ in way),
        "grasses": [
            {
                "name": book.grasses[grass].name, "url": here.links.grass(grass),
                "apart": identification.sets_apart.text,
                "marks": here.sourcing.marks(identification.sets_apart),
                "also": _also(key, book, grass, asked),
            }
            for grass in node.grasses if (identification := book.grasses[grass].identification)
        ],
    }


def _also(key: Key, book: Book, grass: str, asked: set[str]) -> list[str]:
    """What else to see on a grass at the end of its path: the features that the path did not ask about."""
    rest = []
    for feature in FEATURES:
        values = values_of(book.grasses[grass], feature)
        if feature in key.features and feature not in asked and not (feature == "pollen" and values == ("shed",)):
            words = " or ".join(words_for(key, feature, value) for value in values)
            rest.append(f"{key.features[feature].name.lower()} {words}")
    return rest


def _drawings(key: Key, question: KeyQuestion) -> list[dict[str, Any]]:
    """The drawings of what a question asks about; those that mean yes stand first and are marked."""
    feature: Any = question.feature
    values: list[str]
    if feature == "habit":
        values = list(key.habits)
    elif feature in DRAWN:
        values = list(key.features[feature].words)
    else:
        return []
    values.sort(key=lambda value: value not in question.yes)
    return [drawing(feature, value, f"{'Yes' if value in question.yes else 'No'}: {words_for(key, feature, value)}", value in question.yes) for value in values]


def pages(making: Making) -> Iterator[Page]:
    if (key := making.book.key) is not None:
        yield key_page(making.book, key, making.here(PATH))
