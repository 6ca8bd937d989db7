"""A year of visits as plain values, as text, as comma-separated values and as a calendar file."""

from datetime import date
from typing import Any

from generator.book.book import Book
from generator.files.calendar_file import CalendarEntry, calendar_file
from generator.files.csv_file import csv_text
from generator.files.job_text import day
from generator.jobs.planned_year import PlannedVisit, PlannedYear
from generator.jobs.price import CENTS
from generator.jobs.programme import only_where, visit_day
from generator.jobs.programme_works import Routine, Work
from generator.jobs.visit_price import VisitPrice, YearPrice
from generator.words.programme_words import SENTENCES, counted, moved_words

VISIT = "visit"


def visit_id(number: int) -> str:
    """What a visit is called, in a kept lawn and in a calendar. number: 1 for the first from the beginning."""
    return f"{VISIT}-{number}"


def programme_values(book: Book, found: PlannedYear) -> dict[str, Any]:
    """{"grass", ..., "visits", "own", "renovation", "mowing", "routine", "shed", "left_out", "price"}; dates are ISO 8601, amounts in the currency."""
    asked = found.asked
    price = found.price
    return {
        "grass": asked.grass, "place": asked.place, "site": asked.site, "area_m2": asked.area_m2, "from": asked.start.isoformat(), "asked_visits": asked.visits,
        "visits": [_visit(number, each) for number, each in enumerate(found.visits, 1)],
        "own": [{**_work(each, asked.start), "why": SENTENCES[each.limit]} for each in found.programme.own],
        "renovation": {
            "plan": book.grasses[asked.grass].renovation, "date": found.renovation_day.isoformat(), "tasks": list(found.work.renovation),
        } if found.renovation_day else None,
        "mowing": {"cuts": found.cuts, "each": _price(price.cut) if price and price.cut else None} if found.cuts else None,
        "routine": [{"task": each.task, "every_weeks": each.every_weeks, "times": len(each.weeks)} for each in found.work.routine],
        "shed": [_work(each, asked.start) for each in found.work.shed],
        "left_out": [_work(each, asked.start) for each in found.work.works if each not in _in_it(found)],
        "price": {"currency": price.currency, **_sums(price)} if price else None,
    }


def _in_it(found: PlannedYear) -> set[Work]:
    return {*found.programme.own, *(placed.work for each in found.visits for placed in each.placed)}


def _visit(number: int, each: PlannedVisit) -> dict[str, Any]:
    return {
        "id": visit_id(number), "date": each.day.isoformat(), "week": each.week + 1, "season": each.season, "tasks": list(each.tasks),
        "works": [
            {"task": placed.work.task, "due_week": placed.work.week + 1, "moved_weeks": placed.moved_weeks} for placed in each.placed
        ],
        "minutes": None if each.price is None or each.price.minutes is None else round(each.price.minutes, 6), "price": _price(each.price) if each.price else None,
    }


def _work(work: Work, start: date) -> dict[str, Any]:
    return {"task": work.task, "due_week": work.week + 1, "date": visit_day(work.week, start).isoformat()}


def _price(price: VisitPrice) -> dict[str, Any]:
    return {**_sums(price), "lines": [{"name": line.name, "times": line.times, "amount": round(line.amount, 6)} for line in price.lines]}


def _sums(price: VisitPrice | YearPrice) -> dict[str, float]:
    return {"before_tax": price.before_tax / CENTS, "tax": price.tax / CENTS, "total": price.total / CENTS}


def programme_text(book: Book, found: PlannedYear) -> str:
    """The year for reading: each visit with its day, its works and its price, and what is in no visit, with why."""
    asked, price = found.asked, found.price
    grass = book.grasses[asked.grass]
    lines = [f"{grass.name} at {book.places[asked.place].name}, {asked.area_m2:g} m2: {counted(len(found.visits), 'visit')} from {day(asked.start)}"]
    season = ""
    for each in found.visits:
        lines += ["", each.season] if each.season != season else []
        season = each.season
        money = f"  {each.price.total / CENTS:.2f} {price.currency}" if price and each.price else ""
        lines.append(f"  {day(each.day)}  {', '.join(book.tasks[task].name for task in each.tasks)}{_minutes(each)}{money}")
        lines += [f"    {book.tasks[one.work.task].name}: {moved_words(one.moved_weeks)}" for one in each.placed if one.moved_weeks]
    if price:
        lines += ["", f"In the year: {price.total / CENTS:.2f} {price.currency}, of which {price.tax / CENTS:.2f} is {book.practice.tax_name or 'tax'}"]
    if found.cuts:
        each_cut = f", {price.cut.total / CENTS:.2f} each" if price and price.cut else ""
        lines.append(f"{SENTENCES['cuts'].format(times=counted(found.cuts, 'time'))}{each_cut}")
    lines += _beside(book, found)
    return "\n".join(lines)


def _minutes(each: PlannedVisit) -> str:
    return "" if each.price is None or each.price.minutes is None else f"  {each.price.minutes:.0f} min"


def _beside(book: Book, found: PlannedYear) -> list[str]:
    """What is in no visit, and why."""
    asked, start = found.asked, found.asked.start
    in_it = _in_it(found)
    left = list(dict.fromkeys(each.task for each in found.work.works if each not in in_it))
    parts = {
        "Needs a visit of its own": [
            SENTENCES["own"].format(day=day(visit_day(each.week, start)), task=book.tasks[each.task].name, why=SENTENCES[each.limit]) for each in found.programme.own
        ],
        "A job of its own": [
            SENTENCES["renovation"].format(plan=book.renovations[book.grasses[asked.grass].renovation].name, day=day(found.renovation_day))
        ] if found.renovation_day else [],
        "Not in it": [
            SENTENCES["only_where"].format(task=book.tasks[task].name, where=where) if (where := only_where(book, task)) else f"{book.tasks[task].name}: left out."
            for task in left
        ],
        "Comes round between the visits": [routine_words(book, each) for each in found.work.routine],
        "In the shed": [SENTENCES["shed"].format(task=book.tasks[each.task].name, day=day(visit_day(each.week, start))) for each in found.work.shed],
    }
    return [line for title, rows in parts.items() if rows for line in ("", title, *(f"  {row}" for row in rows))]


def routine_words(book: Book, each: Routine) -> str:
    """How often something comes round, and how many times in the year."""
    times = counted(len(each.weeks), "time")
    return SENTENCES["weekly" if each.every_weeks == 1 else "routine"].format(task=book.tasks[each.task].name, weeks=counted(each.every_weeks, "week"), times=times)


COLUMNS = ("date", "visit", "season", "task", "due_week", "moved_weeks", "minutes_of_visit", "total_of_visit", "currency")


def programme_csv(found: PlannedYear) -> str:
    """A row a work of every visit under a row of names (RFC 4180)."""
    rows: list[tuple[object, ...]] = [COLUMNS]
    for number, each in enumerate(found.visits, 1):
        minutes = "" if each.price is None or each.price.minutes is None else round(each.price.minutes, 1)
        for placed in each.placed:
            rows.append((
                each.day.isoformat(), visit_id(number), each.season, placed.work.task, placed.work.week + 1, placed.moved_weeks, minutes,
                each.price.total / CENTS if each.price else "", found.price.currency if found.price else "",
            ))
    return csv_text(rows)


def programme_calendar(book: Book, found: PlannedYear, key: str, name: str, domain: str, made: date) -> bytes:
    """One event a visit, and one for the renovation. key: what their ids begin with; name: as the calendar is called."""
    entries = [
        CalendarEntry(
            f"{key}-{visit_id(number)}", ", ".join(book.tasks[task].name for task in each.tasks),
            "\n".join(f"{book.tasks[one.work.task].name}: {book.tasks[one.work.task].due[one.work.rule].say}" for one in each.placed), each.day, each.day, yearly=False,
        )
        for number, each in enumerate(found.visits, 1)
    ]
    if found.renovation_day:
        plan = book.renovations[book.grasses[found.asked.grass].renovation]
        entries.append(CalendarEntry(f"{key}-renovation", plan.name, plan.summary, found.renovation_day, found.renovation_day, yearly=False))
    return calendar_file(name, entries, domain, made)
