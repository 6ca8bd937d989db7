"""A round of lawns as plain values, as text, as comma-separated values and as a calendar file."""

from collections import Counter
from datetime import date
from typing import Any

from generator.book.book import Book
from generator.files.calendar_file import CalendarEntry, calendar_file
from generator.files.csv_file import csv_text
from generator.files.job_calendar import job_entries, job_key
from generator.files.job_text import day, purchase_words, quantity_words
from generator.files.job_values import bought_values, job_values
from generator.jobs.lawn_round import Clash, LawnJob, LawnVisit, Round, WorkDay
from generator.words.reason_text import text

# What a round tells of a step; its sentences are the plan's, and `swardbook plan` has them.
BRIEF = ("date", "until", "day", "id", "task", "title", "who", "level", "planned", "moved_days", "moved_by", "minutes", "quantities", "watering")


def round_values(found: Round) -> dict[str, Any]:
    """{"jobs": [{"client", "grass", ..., the job}], "visits", "shopping", "gear", "clashes", "days"}; dates are ISO 8601."""
    return {
        "jobs": [_brief(each) for each in found.jobs],
        "visits": [
            {
                "client": each.client, **each.lawn, "visit": each.id, "date": each.day.isoformat(), "tasks": list(each.tasks),
                "minutes": None if each.minutes is None else round(each.minutes, 6), "gear": [gear.name for gear in each.gear],
            }
            for each in found.visits
        ],
        "shopping": [bought_values(each) for each in found.shopping],
        "gear": [
            {
                "name": each.name, "machine": each.machine, "from": each.from_where,
                "book_by": each.book_by.isoformat() if each.book_by else None,
                "uses": [{"date": when.isoformat(), "client": client} for when, client in each.uses],
            }
            for each in found.gear
        ],
        "clashes": [{"name": each.name, "from": each.from_where, "date": each.day.isoformat(), "clients": list(each.clients), "better": [
            {"client": client, "date": better.isoformat()} for client, better in each.better
        ]} for each in found.clashes],
        "days": [
            {"date": each.day.isoformat(), "clients": list(each.clients), "minutes": round(each.minutes, 6), "travel_minutes": round(each.travel_minutes, 6)}
            for each in found.days
        ],
    }


def _brief(each: LawnJob) -> dict[str, Any]:
    values = job_values(each.job)
    steps = [
        {**{name: step[name] for name in BRIEF}, "quantities": [{"calculator": q["calculator"], "results": q["results"]} for q in step["quantities"]]}
        for step in values["steps"]
    ]
    return {"client": each.client, **each.lawn, **values, "steps": steps}


def visit_title(book: Book, each: LawnVisit) -> str:
    """The names of its tasks."""
    return ", ".join(book.tasks[task].name for task in each.tasks)


def round_text(book: Book, found: Round) -> str:
    """The round for reading: whose lawn is worked on when, what to buy, what to book, and what clashes."""
    count = len({*(each.client for each in found.jobs), *(each.client for each in found.visits)}) if found.visits else len(found.jobs)
    lines = [f"{count} {'lawn' if count == 1 else 'lawns'}"]
    for each in found.jobs:
        window = each.job.verdict
        stands = "in the window" if window.inside else f"outside: {text(window.why)}"
        lines.append(f"  {day(each.job.request.on)}  {each.client}  {each.lawn['renovation']}, {each.lawn['grass']} at {each.lawn['place']}, {stands}")
    visits = [f"  {day(each.day)}  {each.client}  {visit_title(book, each)}" for each in found.visits]
    lines += ["", "Visits of the year", *visits] if visits else []
    lines += ["", "Days", *(f"  {day(each.day)}  {', '.join(each.clients)}  {each.minutes / 60:.1f} h{_travel(each)}" for each in found.days)]
    lines += ["", "To buy", *(f"  {purchase_words(each)}" for each in found.shopping)]
    lines += ["", "To book", *(f"  {each.name}: {each.from_where} by {day(each.book_by)}" for each in found.gear if each.book_by)]
    for title, own in (("Clashes", False), ("Own machines that go round in a day", True)):
        rows = [f"  {day(each.day)}  {each.name}: {', '.join(each.clients)}{_better(each)}" for each in found.clashes if (each.from_where == "own") == own]
        lines += ["", title, *rows] if rows else []
    return "\n".join(lines)


def _travel(each: WorkDay) -> str:
    return f" and {each.travel_minutes:.0f} min on the way" if each.travel_minutes else ""


def _better(clash: Clash) -> str:
    return "".join(f"; {client} could go to {day(better)}" for client, better in clash.better)


COLUMNS = ("date", "until", "client", "plan", "grass", "place", "site", "area_m2", "step", "task", "title", "who", "quantities", "wait_for")


def round_csv(book: Book, found: Round) -> str:
    """A row a step of every lawn under a row of names (RFC 4180), by date and client."""
    steps = [(step, each) for each in found.jobs for step in each.job.steps]
    rows: list[tuple[object, ...]] = [COLUMNS]
    for step, each in sorted(steps, key=lambda row: (row[0].dated.date, row[1].client)):
        dated, record = step.dated, step.dated.step.step
        rows.append((
            dated.date.isoformat(), dated.until.isoformat() if dated.until else "", each.client, each.lawn["renovation"], each.lawn["grass"],
            each.lawn["place"], each.lawn["site"], each.job.request.area_m2, record.id, record.task or "", record.title, record.who,
            "; ".join(filter(None, map(quantity_words, step.worked))), record.wait_for or "",
        ))
    for visit in found.visits:
        rows.append((
            visit.day.isoformat(), "", visit.client, "", visit.lawn["grass"], visit.lawn["place"], visit.lawn["site"], "", visit.id, " ".join(visit.tasks),
            visit_title(book, visit), "hands", "", "",
        ))
    return csv_text(rows)


def round_calendar(book: Book, found: Round, name: str, domain: str, first_on: date, made: date) -> bytes:
    """One calendar file of every lawn's steps; a title begins with the client's code.

    first_on: the day the round was first planned for, which ids keep; made: the moment the file is made.
    """
    entries: list[CalendarEntry] = []
    seen: Counter[str] = Counter()
    for each in found.jobs:
        key = job_key((each.client, *(each.lawn[name] for name in ("renovation", "grass", "place", "site"))), first_on)
        seen[key] += 1
        # A client with two lawns alike in all of this: the second has a number.
        entries += job_entries(each.job, key if seen[key] == 1 else f"{key}-{seen[key]}", f"{each.client}: ")
    for visit in found.visits:
        # By the id that the page gives it, whatever day it is on: a phone that has it already moves it.
        key = "-".join(("programme", visit.client, *(visit.lawn[name] for name in ("grass", "place", "site")), visit.year.replace("-", "")))
        entries.append(CalendarEntry(f"{key}-{visit.id}", f"{visit.client}: {visit_title(book, visit)}", "", visit.day, visit.day, yearly=False))
    return calendar_file(name, entries, domain, made)
