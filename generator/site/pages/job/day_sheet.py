"""The sheet for the day: what the hands on the lawn do, line by line and by the clock, and what wet weather holds. Twin: job on its page."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from generator.book.book import Book
from generator.book.lists.for_a_job import MOST_PEOPLE
from generator.field.wet_holds import wet_holds
from generator.jobs.job import Job, JobStep
from generator.jobs.job_sentences import LONGEST_DAY_MINUTES, SENTENCES
from generator.site.pages.job import job_words as words
from generator.site.pages.job.job_scripts import main_results

# When work starts, until the reader says otherwise.
WORK_START = "07:30"


@dataclass(frozen=True)
class DayLine:
    """A line of the sheet. start and end: minutes since midnight, the same where it has no time or is done only if needed."""

    number: int
    step: JobStep
    start: float
    end: float


def day_sheet(book: Book, job: Job) -> dict[str, Any]:
    """The sheet for the day of the job, one step after the other from the usual start."""
    lines = list(_lines(job))
    begin, end = clock_minutes(WORK_START), lines[-1].end if lines else clock_minutes(WORK_START)
    untimed = [_title(each) for each in lines if each.step.counted and each.step.minutes is None]
    return {
        "day": words.day(job.request.on), "end": words.clock(end), "sum": words.spent(end - begin), "people": job.people, "most_people": MOST_PEOPLE,
        "long": SENTENCES["long_day"] if end - begin > LONGEST_DAY_MINUTES else "",
        "crew": SENTENCES["crew"].format(people=words.people(job.people)), "untimed": SENTENCES["untimed"].format(list="; ".join(untimed)) if untimed else "",
        "wet": wet_words(lines, wet_holds(book.holds)),
        "rows": [
            {"at": _at(each), "title": f"{each.number}. {_title(each)}", "detail": _detail(book, each.step), "minutes": words.day_time(each.step)}
            for each in lines
        ],
    }


def clock_minutes(clock: str) -> int:
    """Minutes since midnight of '07:30'."""
    return int(clock[:2]) * words.MINUTES_AN_HOUR + int(clock[3:])


def _lines(job: Job) -> Iterator[DayLine]:
    at, number = float(clock_minutes(WORK_START)), 0
    for each in job.steps:
        if each.dated.date == job.request.on and each.dated.step.step.who == "hands":
            number += 1
            end = at + ((each.minutes or 0.0) if each.counted else 0.0)
            yield DayLine(number, each, at, end)
            at = end


def _title(line: DayLine) -> str:
    return line.step.dated.step.step.title or line.step.id


def _at(line: DayLine) -> str:
    if line.end == line.start:
        return words.clock(line.start)
    return SENTENCES["from_to"].format(start=words.clock(line.start), end=words.clock(line.end))


def _detail(book: Book, each: JobStep) -> list[Any]:
    """The words component's text: how much of everything, how often over it, and what the machine is set to."""
    parts: list[Any] = []
    for worked in each.worked:
        calculator = book.calculators[worked.quantity.calculator]
        for found in words.answers(worked, main_results(calculator)) if not words.ask(worked) else ():
            parts += [f"{'; ' if parts else ''}{calculator.results[found['name']].label} ", [found["metric"], found["us"]]]
    step = each.dated.step.step
    said = {name for quantity in step.quantities for name in quantity.settings}
    over = [SENTENCES["over_times"].format(times=each.passes)] if each.passes > 1 and step.passes not in said else []
    return [*parts, *([". "] if parts else []), *over, *words.settings(book, each)]


def wet_words(lines: list[DayLine], wet: Mapping[str, list[str]]) -> str:
    """Until when one may still decide, and what wet weather holds; nothing where it holds none of the day's steps. wet: by task, see `wet_holds`."""
    counted = [each for each in lines if each.step.counted]
    held = {each.number: wet.get(each.step.dated.step.step.task or "", ()) for each in counted}
    waiting = [each for each in counted if held[each.number]]
    if not waiting:
        return ""
    first, last = waiting[0], waiting[-1]
    lists = ((kind, [each.number for each in waiting if kind in held[each.number]]) for kind in ("leaf", "soil", "rain"))
    said = [SENTENCES[f"wet_{kind}"].format(list=words.listed(numbers)) for kind, numbers in lists if numbers]
    after = [SENTENCES["wet_after"].format(number=last.number, time=words.clock(last.end))] if counted[-1] is not last else []
    return " ".join([SENTENCES["wet"].format(time=words.clock(first.start), number=first.number), *said, *after])
