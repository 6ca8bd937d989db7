"""What an inspection changes in a plan: the engine's adjustments, and what has to be said beside the dated job. Twin: inspection in a plan."""

from collections.abc import Iterable, Mapping
from typing import Any

from generator.book.book import Book
from generator.book.records.step import AddedStep
from generator.field.inspection_result import Found, InspectionResult
from generator.field.inspection_words import figure_words, filled
from generator.jobs.plan_steps import Adjusted


def adjusted_by(book: Book, result: InspectionResult, without: Mapping[str, str], chosen: Iterable[str] = ()) -> Adjusted:
    """The plan's adjustments for one lawn. without: steps, by id, that whoever plans the job has crossed off, with the reason.

    chosen: steps done only where needed that whoever plans the job has chosen.
    """
    words = figure_words(book)
    return Adjusted(
        without=without,
        tasks_without={task: _say(why, words) for task, why in result.left_out.items()},
        softer={task: (each.levels, _say(each.why, words)) for task, each in result.softened.items()},
        added=tuple(added_step(book, each, words) for each in result.added),
        chosen=frozenset(chosen) | frozenset(result.chosen), measured=result.measured,
    )


def inspection_values(book: Book, result: InspectionResult) -> dict[str, Any]:
    """{"stops", "softer", "left_out", "chosen", "added", "notes", "unanswered", "troubles"}, each with its reason, for JSON."""
    words = figure_words(book)

    def said(found: tuple[Found, ...]) -> list[dict[str, str]]:
        return [{"question": each.question, "say": filled(each.outcome.say, words), "because": filled(each.outcome.because, words)} for each in found]

    return {
        "stops": said(result.stops),
        "softer": {task: {"levels": each.levels, "why": said(each.why)} for task, each in result.softened.items()},
        "left_out": {task: said(why) for task, why in result.left_out.items()},
        "chosen": {step: said(why) for step, why in result.chosen.items()},
        "added": said(result.added), "notes": said(result.notes), "unanswered": list(result.unanswered),
        "troubles": [{"question": each.question, "sentence": each.sentence} for each in result.troubles],
    }


def _say(found: tuple[Found, ...], words: Mapping[str, str]) -> str:
    return " ".join(dict.fromkeys(filled(each.outcome.say, words) for each in found))


def added_step(book: Book, found: Found, words: Mapping[str, str]) -> AddedStep:
    """A step that an inspection adds; where it goes in a plan, `steps_for` says."""
    added, outcome = found.outcome.add, found.outcome
    assert added is not None, "only what adds a step is asked for one"
    title = added.title or (book.tasks[added.task].name if added.task else filled(outcome.say, words))
    # Jobs and calendars of an earlier edition have it as visit-...: see `event_id`, and parts/job-planner/job-kept.js.
    place = f"{found.question}-{found.position}"
    return AddedStep(
        id=f"found-{place}", event_id=f"visit-{place}", day=added.day, title=title, task=added.task, say=filled(added.say, words),
        why=filled(outcome.because, words), who=added.who, before=added.before, part_of=added.part_of, timed_as=added.timed_as, source=outcome.source,
    )
