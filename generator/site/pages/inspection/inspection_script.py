"""The static script of the inspection sheet: questions, limits and conditions as the browser needs them. Nothing is compiled there."""

import json
from typing import Any

from generator.book.records.inspection import Inspection, InspectionQuestion, Outcome
from generator.calculators.calculator_sentences import SLACK
from generator.field.inspection_result import SENTENCES, limit_words, limits_si, prepared_inspection
from generator.formula import Formula, to_javascript


def inspection_script(inspection: Inspection) -> str:
    """A classic script that sets `Swardbook.inspectionSheet`; with the sentences of a refusal."""
    ready = prepared_inspection(inspection)
    questions = [_question(each, ready.conditions[each.id]) for each in inspection.questions]
    return "\n".join([
        "window.Swardbook = window.Swardbook || {};",
        "Swardbook.inspectionSheet = {",
        f'"constants": {_text(dict(ready.constants_si))},',
        f'"slack": {_text(SLACK)}, "sentences": {_text(SENTENCES)},',
        '"questions": [\n' + ",\n".join(questions) + "\n]",
        "};\n",
    ])


def _text(value: Any) -> str:
    return json.dumps(value, ensure_ascii=True, separators=(",", ":"))


def _question(question: InspectionQuestion, conditions: tuple[Formula | None, ...]) -> str:
    spec: dict[str, Any] = {"id": question.id, "name": question.name, "ask": question.ask, **({"lasting": 1} if question.lasting else {})}
    if question.unit:
        least, most = limits_si(question)
        too_low, too_high = limit_words(question)
        spec |= {"unit": question.unit, "us": question.us_unit or question.unit}
        spec |= {"least": least, "tooLow": too_low} if least is not None else {}
        spec |= {"most": most, "tooHigh": too_high} if most is not None else {}
    else:
        spec["choices"] = list(question.choices)
    outcomes = ",\n".join(_outcome(each, condition) for each, condition in zip(question.outcomes, conditions, strict=True))
    return f'{_text(spec)[:-1]},"outcomes":[{outcomes}]}}'


def _outcome(outcome: Outcome, condition: Formula | None) -> str:
    spec: dict[str, Any] = {"effect": outcome.effect}
    if outcome.tasks:
        spec["tasks"] = list(outcome.tasks)
    if outcome.steps:
        spec["steps"] = list(outcome.steps)
    if outcome.effect == "soften":
        spec["levels"] = outcome.levels
    if condition is None:
        return _text({**spec, "choice": list(outcome.choice)})
    return f'{_text(spec)[:-1]},"when":{to_javascript(condition)}}}'
