"""Questions and hold rules as one classic script, so that a page answers hold or go without a network. Nothing is compiled there.

The page's half is parts/hold-or-go.
"""

import json
from typing import Any

from generator.book.book import Book
from generator.book.fields.sourced import ASSUMPTION
from generator.book.records.hold import Hold, HoldRule
from generator.field.forecast import ANSWERED_BY, DAY_S, MORE_NIGHTS, NIGHTS, NONE, PAIRS, QUESTIONS, SENTENCES, UNKNOWN, DayQuestion, Forecast
from generator.field.holds import AGAIN, condition_of, constants_si
from generator.files.hold_answer import ANSWERS
from generator.formula import Formula, to_javascript
from generator.formula.nodes import Both, Node, Not
from generator.site.shared.hold_words import rule_words
from generator.words.figures import unit_words

PATH = "assets/holds.js"


def hold_script(book: Book) -> str:
    """Sets `Swardbook.holdRules`: {questions, answeredBy, answers, grasses, cautions, none, unknown, daySeconds, nights, pairs, sentences, again, holds}.

    grasses: what a grass itself answers, by the names that rules use. holds: each rule with its condition in words and as parts
    that can be undecided.
    """
    holds = ",\n".join(f"{_text(id)}:{_hold(book, hold)}" for id, hold in book.holds.items())
    named = dict.fromkeys(caution for hold in book.holds.values() for caution in hold.cautions)
    parts = {
        "questions": {id: _question(question) for id, question in QUESTIONS.items()}, "answeredBy": dict(ANSWERED_BY), "answers": ANSWERS,
        "grasses": {
            id: {"name": grass.name, "known": dict(Forecast().of_grass(grass.season_group == "cool", grass.habit == "above ground").known)}
            for id, grass in book.grasses.items()
        },
        "cautions": {id: book.cautions[id].name for id in named}, "none": NONE, "unknown": UNKNOWN, "daySeconds": DAY_S,
        "nights": {"few": NIGHTS, "more": MORE_NIGHTS}, "pairs": PAIRS, "sentences": SENTENCES, "again": AGAIN,
    }
    listed = ",\n".join(f"{name}:{_text(value)}" for name, value in parts.items())
    return f"(window.Swardbook||={{}}).holdRules={{{listed},\nholds:{{\n{holds}}}}};\n"


def _question(question: DayQuestion) -> dict[str, Any]:
    spec = {
        "name": question.name, "asks": question.asks, "unit": question.unit, "us": question.us_unit, "least": question.least,
        "shown": [unit_words(each) for each in (question.unit, question.us_unit or question.unit) if each] or None,
        "none": question.none, "choices": {word: dict(names) for word, names in question.choices.items()} or None,
        "label": question.label or None, "lately": question.lately,
    }  # fmt: skip
    return {key: value for key, value in spec.items() if value is not None}


def _hold(book: Book, hold: Hold) -> str:
    rules = ",\n".join(_rule(book, hold, rule) for rule in hold.rules)
    spec = {"name": hold.name, "tasks": hold.tasks, "cautions": hold.cautions}
    return f"{_text(spec)[:-1]},rules:[\n{rules}]}}"


def _rule(book: Book, hold: Hold, rule: HoldRule) -> str:
    named = [
        {"id": id if id in book.sources else None, "label": book.sources[id].label if id in book.sources else id}
        for id in rule.sources if id in book.sources or id == ASSUMPTION  # the rest has no mark in the text
    ]
    spec = {
        "answer": rule.answer, **({"again": rule.again} if rule.answer == "hold" else {}), "if": rule_words(hold, rule),
        "reason": rule.reason, "change": rule.change, "from": named, "note": rule.note,
    }
    return f"{_text(spec)[:-1]},when:{_part(condition_of(rule).root, constants_si(hold))}}}"


def _part(node: Node, constants: dict[str, float]) -> str:
    """{any, parts} for 'or' (any: true) and 'and' (any: false), {not}, or {names, test} for what is compared."""
    match node:
        case Both(operator, conditions):
            parts = ",".join(_part(each, constants) for each in conditions)
            return f"{{any:{_text(operator == 'or')},parts:[{parts}]}}"
        case Not(condition):
            return f"{{not:{_part(condition, constants)}}}"
    compared = Formula(node, "")
    return f"{{names:{_text([name for name in compared.names if name not in constants])},test:{to_javascript(compared, constants)}}}"


def _text(value: Any) -> str:
    return json.dumps(value, ensure_ascii=True, separators=(",", ":"))
