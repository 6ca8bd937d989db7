"""A dated job as an iCalendar file, an event a step."""

from datetime import date

from generator.outputs.calendar_file import Entry, calendar_file
from generator.turf.job import Job
from generator.turf.job_dates import DatedStep


def job_calendar(job: Job, name: str, key: str, domain: str, made_on: date) -> bytes:
    """The file's bytes. name: as the calendar is called; key: what makes the job's ids its own, as 'plan-grass-place'."""
    return calendar_file(name, job_entries(job, key), domain, made_on)


def job_entries(job: Job, key: str, before: str = "") -> list[Entry]:
    """An entry a step. before: what a title begins with, where several jobs share a calendar."""
    return [_entry(each.dated, key, job.request.on, before) for each in job.steps]


def _entry(dated: DatedStep, key: str, on: date, before: str) -> Entry:
    step = dated.step.step
    text = "\n".join(part for part in (step.say, step.wait_for and f"Wait for: {step.wait_for}") if part)
    return Entry(f"{key}-{on:%Y%m%d}-{step.id}", f"{before}{step.title}", text, dated.date, dated.until or dated.date, yearly=False)
