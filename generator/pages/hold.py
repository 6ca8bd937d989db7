"""Hold or go on a task's page: its hold rules to read, and what a page needs to answer them for a day."""

from typing import Any

from generator.model.book import Book
from generator.model.hold import Hold, HoldRule
from generator.outputs.hold_answer import ANSWERS
from generator.pages import hold_script as script
from generator.pages.desk import Desk
from generator.pages.hold_words import rule_words
from generator.turf.holds import holds_of

SCRIPT = "assets/hold-or-go.js"


def hold_view(book: Book, task: str, desk: Desk) -> dict[str, Any] | None:
    """The hold-or-go component's dict; None for a task that nothing holds."""
    holds = holds_of(task, book.holds)
    if not holds:
        return None
    return {"id": "hold-or-go", "task": task, "holds": [_hold(book, hold, desk) for hold in holds.values()]}


def hold_scripts(desk: Desk) -> list[str]:
    """What a page that mounts hold or go loads, in this order."""
    return [desk.links.file(script.PATH), desk.links.file(SCRIPT)]


def _hold(book: Book, hold: Hold, desk: Desk) -> dict[str, Any]:
    return {
        "name": hold.name, "rules": [_rule(hold, rule, desk) for rule in hold.rules],
        "cautions": [{"name": book.cautions[id].name, "url": desk.links.caution(id)} for id in hold.cautions],
    }


def _rule(hold: Hold, rule: HoldRule, desk: Desk) -> dict[str, Any]:
    return {
        "answer": rule.answer, "answer_words": ANSWERS[rule.answer].capitalize(), "if": rule_words(hold, rule), "reason": rule.reason,
        "change": rule.change, "note": rule.note, "marks": desk.sourcing.marks(rule),
    }
