"""The year of a grass at a place to take away: a calendar file of windows and jobs, and the weeks for a spreadsheet."""

from collections.abc import Iterator
from datetime import date

from generator.book.attribution import place_attribution
from generator.book.records.task import Due
from generator.files.calendar_file import CalendarEntry, calendar_domain, calendar_file
from generator.files.csv_file import weeks_csv
from generator.season.calendar_days import WEEKS, day_words, month_and_day, week_days
from generator.season.season_cache import SeasonCache
from generator.season.task_schedule import due_weeks, weekly_quantities
from generator.season.windows.main_windows import Window
from generator.site.year.year_words import WINDOW_LABELS
from generator.words.local_words import local_words
from generator.words.reason_text import plain, said, sentence, text


def calendar_path(grass: str, place: str) -> str:
    return f"calendars/{place}/{grass}.ics"


def weeks_path(grass: str, place: str) -> str:
    return f"calendars/{place}/{grass}.csv"


def year_files(seasons: SeasonCache, today: date) -> dict[str, str | bytes]:
    """Path in the site to content, two files beside each calendar page. today: the calendar's first year, and when it was made."""
    files: dict[str, str | bytes] = {}
    for place in seasons.calendar_places:
        thanks = "; ".join(place_attribution(seasons.book, place))
        for grass in seasons.book.grasses:
            files[calendar_path(grass, place)] = year_calendar(seasons, grass, place, today)
            files[weeks_path(grass, place)] = weeks_csv(seasons.season(grass, place), thanks)
    return files


def year_calendar(seasons: SeasonCache, grass: str, place: str, today: date) -> bytes:
    """The windows and the jobs of a year in the open, each coming round every year, in the words of the place's country."""
    book = seasons.book
    local = local_words(book, book.places[place].country)
    address = book.practice.public_address
    page = f"{address}calendars/{place}/{grass}.html" if address else None
    name_there = local.told(book.grasses[grass].name)
    title = f"{name_there} at {book.places[place].name}"
    closing = "\n".join([f"{title}, open ground, in a usual year.", *place_attribution(book, place)])
    entries = [
        CalendarEntry(f"{place}--{grass}--{id}", f"{local.told(name)} ({name_there})", f"{local.told(text)}\n{closing}", *_dates(first, last, today.year), page)
        for id, name, text, first, last in (*_windows(seasons, grass, place), *_jobs(seasons, grass, place))
    ]
    return calendar_file(title, entries, calendar_domain(book.practice.calendar_name), today)


Stretch = tuple[str, str, str, int, int]


def _windows(seasons: SeasonCache, grass: str, place: str) -> Iterator[Stretch]:
    """Id, name, text, first and last day number of each window and of its best weeks."""
    windows, us = seasons.season(grass, place).windows, seasons.book.countries[seasons.book.places[place].country].us_units
    for kind, label in WINDOW_LABELS.items():
        for number, window in enumerate(windows[kind].windows, 1):
            id = f"{kind.replace('_', '-')}-{number}"
            yield id, f"{label}: window", text(window.why, us, exactly=False), window.first, window.last
            yield f"{id}-best", f"{label}: the best weeks", _best(window, us), window.preferred.first, window.preferred.last


def _best(window: Window, us: bool) -> str:
    return f"{plain(sentence(said(window.preferred.why)), us)} The window closes on {day_words(window.last)}."


def _jobs(seasons: SeasonCache, grass: str, place: str) -> Iterator[Stretch]:
    """What falls due: each time of its own, and of what comes round every few weeks the day on which that begins."""
    book = seasons.book
    quantities = weekly_quantities(seasons.season(grass, place))
    for task_id, task in book.tasks.items():
        operation = book.grasses[grass].operations.get(task_id)
        if operation and operation.level == "none":
            continue
        for rule, due in enumerate(task.due, 1):
            weeks = [each.week - 1 for each in due_weeks(due, quantities)]
            text = f"{due.say} {due.because}"
            for number, (first, last) in enumerate(_rhythms(weeks, due) if due.is_rhythm else [(week, week) for week in weeks], 1):
                name = task.name
                if due.is_rhythm and first != last:
                    often = "every week" if due.every_weeks == 1 else f"every {due.every_weeks} weeks"
                    name = f"{task.name}: {often} until {day_words(week_days(last)[0])}"
                day = week_days(first)[0]
                yield f"{task_id}-{rule}-{number}", name, text, day, day


def _rhythms(weeks: list[int], due: Due) -> list[tuple[int, int]]:
    """First and last week of each run of weeks that are one interval apart; a run over New Year is one."""
    there = set(weeks)
    firsts = [week for week in weeks if (week - due.every_weeks) % WEEKS not in there] or weeks[:1]
    runs = []
    for first in firsts:
        last = first
        while (last + due.every_weeks) % WEEKS in there and (last + due.every_weeks) % WEEKS != first:
            last = (last + due.every_weeks) % WEEKS
        runs.append((first, last))
    return runs


def _dates(first: int, last: int, year: int) -> tuple[date, date]:
    """Dates of a stretch that begins this year; one that crosses New Year began last year, so that a running one shows."""
    if last < first:
        return _on(first, year - 1), _on(last, year)
    return _on(first, year), _on(last, year)


def _on(day: int, year: int) -> date:
    return date.fromisoformat(f"{year}-{month_and_day(day)}")
