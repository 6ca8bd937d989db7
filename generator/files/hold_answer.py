"""Hold or go as text for a terminal and as plain values for programs."""

from collections.abc import Iterable, Mapping
from textwrap import fill
from typing import Any

from generator.book.records.hold import Hold
from generator.book.records.source import Source
from generator.field.forecast import FLAGS, NONE, QUESTIONS, RULE_UNITS, SENTENCES, UNKNOWN, DayQuestion, Forecast
from generator.field.holds import AskedHold, HoldAnswer, HoldReason
from generator.units import from_si

WIDTH = 100
ANSWERS = {"go": "go", "care": "go with care", "hold": "hold", "ask": "not known yet"}
SECTIONS = (("hold", "Hold, because"), ("care", "Care, because"))


def not_known(id: str) -> str:
    """The sentence for what nobody has said yet."""
    question = QUESTIONS[id]
    if question.label:
        return f"Not known: {question.asks[:1].lower()}{question.asks[1:]}. The label decides; read it there, and type '{NONE}' if it sets none."
    return f"Not known, so ask for this. {question.asks}."


def presumed(id: str) -> str:
    """The sentence for what nobody has said and was read as 'none'."""
    return SENTENCES["presumed"].format(none=QUESTIONS[id].none)


def hold_values(task: str, found: HoldAnswer, holds: Mapping[str, Hold], forecast: Forecast) -> dict[str, Any]:
    """Everything as JSON takes it; measured answers in the unit of their question."""
    return {
        "task": task, "answer": found.answer, "again": found.again or None, "reasons": [_reason_values(each, holds[each.hold]) for each in found.reasons],
        "not_known": [_asked_values(each) for each in found.not_known], "quiet": list(found.quiet),
        "presumed": [{"question": id, "sentence": presumed(id)} for id in found.presumed],
        "inputs": {id: _given(id, forecast) for id in forecast.answers},
    }


def _reason_values(each: HoldReason, hold: Hold) -> dict[str, Any]:
    rule = each.rule
    return {
        "hold": each.hold, "name": hold.name, "answer": rule.answer, "reason": each.said, "change": rule.change, "when": rule.when,
        "sources": list(rule.sources), "note": rule.note, "cautions": list(hold.cautions),
    }


def _asked_values(each: AskedHold) -> dict[str, Any]:
    question = QUESTIONS[each.question]
    return {
        "question": each.question, "asks": question.asks, "unit": question.unit, "words": list(question.words), "label": question.label,
        "could": each.could, "holds": list(each.holds), "sentence": not_known(each.question),
    }


def _given(id: str, forecast: Forecast) -> Any:
    if id not in forecast.known or id in FLAGS:
        return forecast.answers[id].lower()
    return {"value": float(f"{from_si(forecast.known[id], RULE_UNITS[id]):.12g}"), "unit": QUESTIONS[id].unit}


def hold_text(task_name: str, found: HoldAnswer, holds: Mapping[str, Hold], sources: Mapping[str, Source]) -> str:
    """For reading: the answer first, then why, what would change it, and what is still to be asked."""
    lines = [f"{task_name}: {ANSWERS[found.answer]}", *([f"Ask again {found.again}."] if found.again else [])]
    if not holds:
        lines += ["", "No weather and no state of the ground holds up this task."]
    for answer, title in SECTIONS:
        several = [each for each in found.reasons if each.rule.answer == answer]
        lines += ["", title] if several else []
        for each in several:
            lines += _reason(each, holds[each.hold], sources)
    lines += ["", "Not known yet"] if found.not_known else []
    for asked in found.not_known:
        lines += [_wrapped(f"{_how(asked.question)}  {not_known(asked.question)}", 2)]
    lines += ["", *(_wrapped(f"{_how(id)}  {presumed(id)}", 0) for id in found.presumed)] if found.presumed else []
    quiet = [holds[id].name for id in found.quiet]
    lines += ["", _wrapped(f"No reason to wait: {'; '.join(quiet)}.", 0)] if quiet else []
    cautions = dict.fromkeys(id for each in found.reasons for id in holds[each.hold].cautions)
    lines += ["", _wrapped(f"Read the cautions: {', '.join(cautions)}.", 0)] if cautions else []
    return "\n".join(lines)


def _reason(each: HoldReason, hold: Hold, sources: Mapping[str, Source]) -> list[str]:
    rule = each.rule
    named = ", ".join(sources[id].label if id in sources else id for id in rule.sources)
    return [
        _wrapped(f"{hold.name}. {each.said}", 2), _wrapped(f"What would change it: {rule.change}", 4),
        _wrapped(f"From: {named}.", 4),
    ]


def asked_text(ids: Iterable[str]) -> str:
    """The questions with the way to answer each, one a line."""
    return "\n".join(_wrapped(f"{_how(id)}  {QUESTIONS[id].asks}.", 2) for id in ids)


def _how(id: str) -> str:
    question: DayQuestion = QUESTIONS[id]
    words = "".join(f", or {word}" for word in (NONE, UNKNOWN) if word in question.words)
    return f"{id} [{question.unit + words if question.unit else ', '.join(question.words)}]"


def _wrapped(text: str, indent: int) -> str:
    return fill(text, WIDTH, initial_indent=" " * indent, subsequent_indent=" " * (indent + 2), break_on_hyphens=False)
