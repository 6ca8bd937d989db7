"""Hold or go on a task's page: its hold rules to read, and what a page needs to answer them for a day."""

from typing import Any

from generator.book.book import Book
from generator.book.records.hold import Hold, HoldRule
from generator.field.holds import holds_of, said_reason
from generator.files.hold_answer import ANSWERS
from generator.site.page_context import PageContext
from generator.site.shared import hold_script as script
from generator.site.shared.hold_words import rule_words

SCRIPT = "assets/hold-or-go.js"


def hold_view(book: Book, task: str, here: PageContext) -> dict[str, Any] | None:
    """The hold-or-go component's dict; None for a task that nothing holds."""
    holds = holds_of(task, book.holds)
    if not holds:
        return None
    return {"id": "hold-or-go", "task": task, "holds": [_hold(book, hold, here) for hold in holds.values()]}


def hold_scripts(here: PageContext) -> list[str]:
    """What a page that mounts hold or go loads, in this order."""
    return [here.links.file(script.PATH), here.links.file(SCRIPT)]


def _hold(book: Book, hold: Hold, here: PageContext) -> dict[str, Any]:
    return {
        "name": hold.name, "rules": [_rule(hold, rule, here) for rule in hold.rules],
        "cautions": [{"name": book.cautions[id].name, "url": here.links.caution(id)} for id in hold.cautions],
    }


def _rule(hold: Hold, rule: HoldRule, here: PageContext) -> dict[str, Any]:
    return {
        "answer": rule.answer, "answer_words": ANSWERS[rule.answer].capitalize(), "if": rule_words(hold, rule), "reason": said_reason(rule),
        "change": rule.change, "note": rule.note, "marks": here.sourcing.marks(rule),
    }
