"""Answers, problems and the glossary take every figure from its record: a placeholder names one, and no text types a number with a unit."""

import re
from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.book.overlay.knowledge import SHARED_PATH
from generator.calculators.filled_value import BindError, Missing
from generator.checks.check import Check
from generator.checks.season.no_months import month_named
from generator.findings import Finding, Where
from generator.units import UnitError, unit
from generator.words.quoted_figures import Placeholder, grass_field, pieces, quote

# From two up: "a week" and "one day" are plain speech, not figures.
_NUMBER_WORDS = (
    "two three four five six seven eight nine ten eleven twelve fifteen twenty thirty forty fifty sixty seventy eighty ninety hundred dozen"
)
_NUMBER = rf"(?:\d+(?:[.,]\d+)?|(?:{'|'.join(_NUMBER_WORDS.split())}))"
_UNITS = (
    "mm|cm|m|km|m2|m²|ft2|ft²|in|inch|inches|ft|foot|feet|yards?|millimet(?:re|er)s?|centimet(?:re|er)s?|met(?:re|er)s?|"
    "mL|ml|L|lit(?:re|er)s?|gal|gallons?|g|kg|grams?|kilos?|kilograms?|lb|lbs|pounds?|t|tonnes?|"
    "°C|°F|degrees|%|per cent|percent|min|minutes?|h|hours?|days?|weeks?|fortnights?|months?|years?|mph|km/h|kPa|psi"
)
_FIGURE = re.compile(rf"(?<![\w.])({_NUMBER}(?:\s*(?:to|or|and|-|–)\s*{_NUMBER})?[\s-]*(?:{_UNITS}))(?![\w/])", re.IGNORECASE)
# A problem may say how long in words: "two or three weeks" is how long a look takes, not a setting. What is measured is in digits.
_DIGITS = re.compile(_FIGURE.pattern.replace(_NUMBER, r"\d+(?:[.,]\d+)?"), re.IGNORECASE)
PUT_IN = "put it in from its record, such as {task.water.one-watering-on-sand}"


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, answer in book.answers.items():
        for path, text in answer.texts():
            yield from _of_text(book, text, "answers", id, *path)
        yield from _of_table(book, id)
    for id, problem in book.problems.items():
        for path, text in problem.texts():
            yield from _of_text(book, text, "problems", id, *path, figure=_DIGITS)
    if book.glossary is not None:
        for path, text in book.glossary.texts():
            yield from _of_text(book, text, "glossary", "glossary", *path)
        yield from _of_units(book)


def _of_text(book: PartialBook, text: str, kind: str, id: str, *path: str | int, figure: re.Pattern[str] = _FIGURE) -> Iterator[Finding]:
    at, own = 0, _is_own(book, book.where(kind, id, *path))
    for piece in pieces(text):
        if isinstance(piece, Placeholder):
            yield from _of_placeholder(book, piece, kind, id, *path)
            at = text.index("}", piece.offset) + 1
            continue
        for found in figure.finditer(piece) if not own else ():
            yield Finding(book.character(at + found.start(), kind, id, *path), f"'{found[1]}' is typed here", PUT_IN)
        at += len(piece)
    if not own and (month := month_named(text)):
        yield Finding(
            book.character(max(text.find(month), 0), kind, id, *path), f"the text names {month}, which is another season elsewhere",
            "say the season: late spring, early autumn",
        )


def _is_own(book: PartialBook, where: Where) -> bool:
    """Whether an owner wrote it over the shared knowledge: what they type is their own figure, for their own place."""
    return book.practice is not None and book.practice.shared_knowledge and not where.path.startswith(SHARED_PATH)


def _of_placeholder(book: PartialBook, placeholder: Placeholder, kind: str, id: str, *path: str | int) -> Iterator[Finding]:
    try:
        quote(placeholder.expression, book)  # type: ignore[arg-type]  # Its protocol says that the fields may be set.
    except BindError as error:
        if not _broken(book, placeholder.expression):
            yield Finding(book.character(placeholder.offset, kind, id, *path), error.what, error.instead)


# First word of a placeholder -> the kind of record it names; what could not be read has its own finding.
_NAMED = {"task": "tasks", "grass": "grasses", "step": "steps", "plan": "renovations", "hold": "holds", "calculator": "calculators", "problem": "problems"}


def _broken(book: PartialBook, expression: str) -> bool:
    kind, _, rest = expression.partition(".")
    if kind in _NAMED:
        id = rest.partition(".")[0]
        return book.knows(_NAMED[kind], id) and id not in book.of(_NAMED[kind])
    return (book.practice is None) if kind == "practice" else kind in ("group", "season") and book.season_groups is None


def _of_table(book: PartialBook, id: str) -> Iterator[Finding]:
    table = book.answers[id].table
    for heading, expression in table.columns.items() if table else ():
        fault: BindError | None = None
        for grass in book.grasses.values():
            try:
                grass_field(expression, grass)
            except Missing:
                continue  # Another grass may well have it.
            except BindError as error:
                fault = error
        if fault is not None:
            yield Finding(book.where("answers", id, "table", "columns", heading), fault.what, fault.instead)


def _of_units(book: PartialBook) -> Iterator[Finding]:
    for id, term in book.glossary.terms.items() if book.glossary else ():
        if term.unit is not None:
            try:
                unit(term.unit)
            except UnitError as error:
                yield Finding(book.where("glossary", "glossary", "terms", id, "unit"), error.what, error.instead)


CHECK = Check("quotes", "Answers, problems and the glossary take every figure from its record, and name no month.", ("answers", "problems", "glossary"), _check)
