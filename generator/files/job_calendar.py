"""A dated job as an iCalendar file, an event a step. Twin: calendar key."""

from collections.abc import Iterable
from datetime import date

from generator.files.calendar_file import CalendarEntry, calendar_file
from generator.jobs.dates import DatedStep
from generator.jobs.job import Job


def job_calendar(job: Job, name: str, key: str, domain: str, made: date) -> bytes:
    """The file's bytes. name: as the calendar is called; key: see `job_key`; made: the moment it is made."""
    return calendar_file(name, job_entries(job, key), domain, made)


def job_key(named: Iterable[str], first_on: date) -> str:
    """What the ids of a job's events begin with: what names it, and the day it was first planned for.

    A job that has moved keeps that day, and its events move; next year's job on the same lawn has ids of its own.
    """
    return "-".join((*named, f"{first_on:%Y%m%d}"))


def job_entries(job: Job, key: str, before: str = "") -> list[CalendarEntry]:
    """An entry a step. before: what a title begins with, where several jobs share a calendar."""
    return [_entry(each.dated, key, before) for each in job.steps]


def _entry(dated: DatedStep, key: str, before: str) -> CalendarEntry:
    step = dated.step.step
    text = "\n".join(part for part in (step.say, step.wait_for and f"Wait for: {step.wait_for}") if part)
    return CalendarEntry(f"{key}-{step.event_id or step.id}", f"{before}{step.title}", text, dated.date, dated.until or dated.date, yearly=False)
