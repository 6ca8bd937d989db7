"""The visits of lawns' years that a round takes in, from a lawns.json."""

from collections.abc import Iterable
from datetime import date
from pathlib import Path

from generator.book.book import Book
from generator.book.lists.for_a_job import Refused, given_area_m2, given_day, given_travel_minutes
from generator.book.lists.lawn_file import KeptLawn, KeptVisit, read_lawn_file
from generator.findings import Finding, Where, shown, suggestion
from generator.jobs.lawn_round import LawnVisit
from generator.jobs.visit_price import visit_gear, visit_minutes


def visits_between(book: Book, file: Path, first: date, last: date) -> tuple[list[LawnVisit], list[Finding]]:
    """What is still to be done from `first` to `last` of every lawn's year, and what is wrong there; nothing for a list that is no lawns.json.

    A visit that is a job of its own is among the jobs.
    """
    visits: list[LawnVisit] = []
    findings: list[Finding] = []
    kept = read_lawn_file(file)[0] if file.suffix.lower() == ".json" else []
    for each in kept:
        year = each.lawn.programme
        for id, visit in year.visits.items() if year else ():
            if visit.done or visit.skipped or visit.plan:
                continue
            day, wrong = _day(visit, each.where)
            if day is not None and first <= day <= last:
                wrong += _wrong(book, each.lawn, visit, each.where)
                visits += [] if wrong else [_visit(book, each.lawn, id, visit, day)]
            findings += wrong
    return visits, findings


def _day(visit: KeptVisit, where: Where) -> tuple[date | None, list[Finding]]:
    try:
        return given_day(visit.put or visit.on), []
    except Refused as refused:
        return None, [Finding(where, refused.what, refused.instead)]


def _wrong(book: Book, lawn: KeptLawn, visit: KeptVisit, where: Where) -> list[Finding]:
    named: Iterable[tuple[str, str, Iterable[str]]] = (("grass", lawn.grass, book.grasses), *(("task", task, book.tasks) for task in visit.tasks))
    found = [Finding(where, f"no {kind} '{shown(id)}'", suggestion(id, known, f"see data/{kind}s")) for kind, id, known in named if id not in known]
    for read, text, what in ((given_area_m2, lawn.area or "", "area"), (given_travel_minutes, lawn.travel or "0 min", "travel")):
        try:
            read(text)
        except Refused as refused:
            found.append(Finding(where, f"{what}: {refused.what}", refused.instead))
    return found


def _visit(book: Book, lawn: KeptLawn, id: str, visit: KeptVisit, day: date) -> LawnVisit:
    return LawnVisit(
        lawn.code, {"grass": lawn.grass, "place": lawn.place, "site": lawn.site}, id, lawn.programme.start if lawn.programme else "", day, tuple(visit.tasks),
        visit_minutes(book, lawn.grass, visit.tasks, given_area_m2(lawn.area or "")), visit_gear(book, visit.tasks), lawn.town or "",
        given_travel_minutes(lawn.travel) if lawn.travel else 0,
    )
