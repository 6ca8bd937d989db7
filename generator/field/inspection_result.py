"""What an inspection found: answers in, and what they stop, soften, leave out and add. Nothing is taken for granted.

Both sides share the formulas. Twin: inspection.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from generator.book.records.inspection import Inspection, InspectionQuestion, Outcome
from generator.calculators.calculator_sentences import SLACK
from generator.formula import Formula, FormulaProblem, parse
from generator.units import QuantityError, read_quantity, to_si, unit

Answer = str | float
MOST_KEPT = 20
SENTENCES = {
    "no-choice": "{ask}: '{text}' is not one of its choices.",
    "not-asked": "Nothing asks for '{id}'.",
    "too-low": "This cannot be less than {limit}; is that a slip?",
    "too-high": "This cannot be more than {limit}; is that a slip?",
}


@dataclass(frozen=True)
class Found:
    """One outcome that an answer brought about. position: its place among the question's outcomes, from 0."""

    question: str
    position: int
    outcome: Outcome


@dataclass(frozen=True)
class Softened:
    """levels: how many levels gentler than the grass would take; why: every outcome that asks for it, gentlest or not."""

    levels: int
    why: tuple[Found, ...]


@dataclass(frozen=True)
class Trouble:
    """An answer that cannot be one: the question's id, and a sentence for people."""

    question: str
    sentence: str


@dataclass(frozen=True)
class InspectionResult:
    """What an inspection comes to.

    stops, added, notes: in the order of the questions. softened, left_out: by task id; a task that is left out is not softened
    as well. chosen: steps done only where needed, which are needed here. measured: measures by question [SI].
    unanswered: ids of the questions that nobody has looked at yet, or whose answer could not be read. troubles: why not.
    """

    stops: tuple[Found, ...] = ()
    softened: Mapping[str, Softened] = field(default_factory=dict)
    left_out: Mapping[str, tuple[Found, ...]] = field(default_factory=dict)
    chosen: Mapping[str, tuple[Found, ...]] = field(default_factory=dict)
    added: tuple[Found, ...] = ()
    measured: Mapping[str, float] = field(default_factory=dict)
    notes: tuple[Found, ...] = ()
    unanswered: tuple[str, ...] = ()
    troubles: tuple[Trouble, ...] = ()


@dataclass(frozen=True)
class PreparedInspection:
    """An inspection ready to run. conditions: by question id, a formula for each outcome, or None for one that follows from a choice."""

    inspection: Inspection
    constants_si: Mapping[str, float]
    conditions: Mapping[str, tuple[Formula | None, ...]]


_kept: dict[int, PreparedInspection] = {}


def prepared_inspection(inspection: Inspection) -> PreparedInspection:
    """The inspection ready to run; the work is done once for each.

    Raises FormulaError or UnitError for one in which the check of inspections finds something.
    """
    found = _kept.get(id(inspection))
    if found is None or found.inspection is not inspection:
        if len(_kept) >= MOST_KEPT:
            _kept.clear()
        found = _kept[id(inspection)] = PreparedInspection(
            inspection,
            {name: to_si(each.value, unit(each.unit)) for name, each in inspection.constants.items()},
            {
                question.id: tuple(None if outcome.when is None else parse(outcome.when) for outcome in question.outcomes)
                for question in inspection.questions
            },
        )
    return found


def findings_of(inspection: Inspection, answers: Mapping[str, Answer]) -> InspectionResult:
    """What these answers change.

    answers: question id to a choice's id, or to a measure as typed ('60 mm') or in SI units. A question that is missing or
    blank is listed as unanswered and changes nothing; a formula that asks for such a one is silent. An answer to what is not asked
    is told among the troubles. Nothing is raised for what
    a person may type. Of several reasons to soften a task, the one that asks for most holds; they are not added up.
    """
    ready = prepared_inspection(inspection)
    chosen, measured, troubles = _read_all(inspection, answers)
    known = {**ready.constants_si, **measured}
    found = [
        Found(question.id, position, outcome)
        for question in inspection.questions if question.id in chosen or question.name in measured
        for position, outcome in enumerate(question.outcomes)
        if _holds(outcome, ready.conditions[question.id][position], chosen.get(question.id), known)
    ]
    left_out = _by_task(found, "leave-out")
    return InspectionResult(
        stops=_of(found, "stop"),
        softened={
            task: Softened(max(each.outcome.levels for each in why), why)
            for task, why in _by_task(found, "soften").items() if task not in left_out
        },
        left_out=left_out,
        chosen=_by_step(found),
        measured={question.id: measured[question.name] for question in inspection.questions if question.name in measured},
        added=_of(found, "add"),
        notes=_of(found, "note"),
        unanswered=tuple(each.id for each in inspection.questions if each.id not in chosen and each.name not in measured),
        troubles=tuple(troubles),
    )


def _read_all(inspection: Inspection, answers: Mapping[str, Answer]) -> tuple[dict[str, str], dict[str, float], list[Trouble]]:
    chosen: dict[str, str] = {}
    measured: dict[str, float] = {}
    troubles: list[Trouble] = []
    for question in inspection.questions:
        answer = answers.get(question.id)
        if answer is None or (isinstance(answer, str) and not answer.strip()):
            continue
        if question.choices:
            if answer in question.choices:
                chosen[question.id] = str(answer)
            else:
                troubles.append(Trouble(question.id, SENTENCES["no-choice"].format(ask=question.ask, text=answer)))
            continue
        try:
            value = read_quantity(answer, unit(question.unit)) if isinstance(answer, str) else float(answer)
        except QuantityError as error:
            troubles.append(Trouble(question.id, error.sentence))
            continue
        impossible = _impossible(question, value)
        if impossible:
            troubles.append(Trouble(question.id, impossible))
        else:
            measured[question.name] = value
    asked = {question.id for question in inspection.questions}
    troubles += [Trouble(id, SENTENCES["not-asked"].format(id=id)) for id, answer in answers.items() if id not in asked and str(answer).strip()]
    return chosen, measured, troubles


def limits_si(question: InspectionQuestion) -> tuple[float | None, float | None]:
    """Smallest and largest possible answer in SI units; None where there is none."""
    wanted = unit(question.unit)
    least, most = (None if limit is None else to_si(limit, wanted) for limit in (question.at_least, question.at_most))
    return least, most


def limit_words(question: InspectionQuestion) -> tuple[str, str]:
    """What is said of an answer below and above what is possible."""
    shown = "" if question.unit == "1" else f" {question.unit}"
    low, high = (None if limit is None else f"{limit:g}{shown}" for limit in (question.at_least, question.at_most))
    return SENTENCES["too-low"].format(limit=low), SENTENCES["too-high"].format(limit=high)


def _impossible(question: InspectionQuestion, value: float) -> str | None:
    least, most = limits_si(question)
    if least is not None and value < least - SLACK * abs(least):
        return limit_words(question)[0]
    if most is not None and value > most + SLACK * abs(most):
        return limit_words(question)[1]
    return None


def _holds(outcome: Outcome, condition: Formula | None, choice: str | None, known: Mapping[str, float]) -> bool:
    if condition is None:
        return choice in outcome.choice
    try:
        return bool(condition.evaluate(known))
    except FormulaProblem:
        return False  # It asks for a measure that nobody has taken yet, which is listed as such.


def _of(found: list[Found], effect: str) -> tuple[Found, ...]:
    return tuple(each for each in found if each.outcome.effect == effect)


def _by_step(found: list[Found]) -> dict[str, tuple[Found, ...]]:
    steps = dict.fromkeys(step for each in _of(found, "choose") for step in each.outcome.steps)
    return {step: tuple(each for each in _of(found, "choose") if step in each.outcome.steps) for step in steps}


def _by_task(found: list[Found], effect: str) -> dict[str, tuple[Found, ...]]:
    tasks = dict.fromkeys(task for each in _of(found, effect) for task in each.outcome.tasks)
    return {task: tuple(each for each in _of(found, effect) if task in each.outcome.tasks) for task in tasks}
