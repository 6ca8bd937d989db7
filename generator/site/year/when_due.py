"""When each task falls due at the practice's home place, grass by grass: the calendars' own rules, read from the task's side."""

from typing import Any

from generator.season.due_months import due_by_month
from generator.season.season_cache import SeasonCache
from generator.site.page import Links

MONTHS = ("January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December")
NOTE = "Worked out from the climate there and each grass's own temperatures."


def months_due(seasons: SeasonCache) -> dict[str, dict[str, tuple[int, ...]]]:
    """Task id to grass id to the months, January 0, in which a calendar of the home place lists the task."""
    book = seasons.book
    found: dict[str, Any] = {}
    for grass in book.grasses:
        season = seasons.season(grass, book.practice.home_place)
        for month, entries in enumerate(due_by_month(book, book.grasses[grass], season)):
            for task in {entry.task_id for entry in entries}:
                found.setdefault(task, {}).setdefault(grass, []).append(month)
    return {task: {grass: tuple(months) for grass, months in of.items()} for task, of in found.items()}


def when_view(seasons: SeasonCache, task: str, months: dict[str, dict[str, tuple[int, ...]]], links: Links) -> dict[str, Any] | None:
    """Grasses with the same months share a row; None for a task that is never due there."""
    book = seasons.book
    by_months: dict[tuple[int, ...], list[str]] = {}
    for grass, of in months.get(task, {}).items():
        by_months.setdefault(of, []).append(book.grasses[grass].name)
    if not by_months:
        return None
    rows = [{"grasses": ", ".join(names), "text": spans(of)} for of, names in by_months.items()]
    return {"place": book.places[book.practice.home_place].name, "rows": rows, "note": NOTE, "url": links.to("calendars/index")}


def spans(months: tuple[int, ...]) -> str:
    """Months as spans round the year: (0, 1, 11) is 'December to February'."""
    if len(months) == 12:
        return "all year"
    starts = [month for month in months if (month - 1) % 12 not in months]
    spells = []
    for start in starts:
        end = start
        while (end + 1) % 12 in months:
            end = (end + 1) % 12
        spells.append(MONTHS[start] if start == end else f"{MONTHS[start]} to {MONTHS[end]}")
    return ", ".join(spells)
