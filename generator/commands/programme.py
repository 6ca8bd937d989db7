"""`swardbook programme`: a year of visits to one lawn."""

import json
from datetime import date, datetime
from pathlib import Path

import click

from generator.book.book import Book
from generator.book.lists.for_a_job import given_area_m2, given_people
from generator.book.lists.lawn_file import KeptLawn
from generator.book.records.practice import OPEN_SITE
from generator.commands.common import book_option, known, typed, whole_book
from generator.commands.of_lawn import kept_lawn
from generator.commands.plan import read_day
from generator.commands.shell_words import ids
from generator.commands.writing import write_out
from generator.files.calendar_file import calendar_domain
from generator.files.job_calendar import job_key
from generator.files.programme_values import programme_calendar, programme_csv, programme_text, programme_values
from generator.jobs.planned_year import AskedYear, planned_year
from generator.jobs.programme import MOST_VISITS, USUAL_VISITS
from generator.season.season_cache import SeasonCache


@click.command()
@book_option
@click.argument("grass", required=False, shell_complete=ids("grasses"))
@click.argument("place", required=False, shell_complete=ids("places"))
@click.option("--visits", type=click.IntRange(1, MOST_VISITS), help=f"At most how many visits a year; {USUAL_VISITS} if it is not said.")
@click.option("--area", help="Area of the lawn, with its unit: '240 m2'.")
@click.option("--from", "start", help="The day on which the year begins, such as 2026-12-01; today if it is not said.")
@click.option("--site", help=f"Where the lawn is: open, wall, hollow, shade or exposed; {OPEN_SITE} if it is not said.")
@click.option("--with", "chosen", multiple=True, metavar="TASK", help="A task done only where needed, which this lawn needs; may be repeated.")
@click.option("--without", multiple=True, metavar="TASK", help="A task that this lawn does without; may be repeated.")
@click.option("--mowing", is_flag=True, help="With the cuts between the visits, as often as the grass grows.")
@click.option("--crew", metavar="PEOPLE", help="How many people go; the practice's own number if it is not said.")
@click.option("--lawn", metavar="CODE", help="A lawn of the file of --lawns: what is not said here is taken from it and its programme.")
@click.option("--lawns", type=click.Path(exists=True, dir_okay=False, path_type=Path), help="A lawns.json, as the page of lawns saves it.")
@click.option("--json", "as_data", is_flag=True, help="Print JSON, for other programs.")
@click.option("--ics", type=click.Path(dir_okay=False, path_type=Path), help="Write the visits as a calendar file.")
@click.option("--csv", "table", type=click.Path(dir_okay=False, path_type=Path), help="Write the visits as comma-separated values.")
@click.pass_obj
def programme(
    now: datetime, root: Path, grass: str | None, place: str | None, visits: int | None, area: str | None, start: str | None, site: str | None,
    chosen: tuple[str, ...], without: tuple[str, ...], mowing: bool, crew: str | None, lawn: str | None, lawns: Path | None,
    as_data: bool, ics: Path | None, table: Path | None,
) -> None:
    """Group what falls due for GRASS at PLACE in a year into visits: days, time and price."""
    book = whole_book(root)
    seasons = SeasonCache(book)
    if (lawn is None) != (lawns is None):
        raise click.UsageError("--lawn and --lawns go together: a code, and the file it stands in")
    kept = kept_lawn(lawns, lawn) if lawn is not None and lawns is not None else None
    asked = AskedYear(
        _needed(grass or (kept.grass if kept else None), "GRASS"), _needed(place or (kept.place if kept else None), "PLACE"),
        typed(given_area_m2, _needed(area or (kept.area if kept else None), "--area"), "--area"),
        visits or (kept.programme.wanted if kept and kept.programme else USUAL_VISITS),
        _start(start, kept, now.date()), site or (kept.site if kept else OPEN_SITE), *_tasks(book, kept, chosen, without),
        mowing or bool(kept and kept.programme and kept.programme.cuts), typed(given_people, crew, "--crew") if crew else None,
    )
    known(asked.grass, book.grasses, "grass")
    known(asked.place, book.places, "place")
    known(asked.site, seasons.sites, "site")
    for task in (*chosen, *without):
        known(task, (id for id, each in book.tasks.items() if each.due), "task that falls due")
    found = planned_year(seasons, asked)
    name = f"{book.grasses[asked.grass].name} at {book.places[asked.place].name}"
    if ics:
        key = job_key(("programme", *([lawn] if lawn else ()), asked.grass, asked.place, asked.site), asked.start)
        write_out(ics, programme_calendar(book, found, key, f"{lawn}: {name}" if lawn else name, calendar_domain(book.practice.calendar_name), now))
    if table:
        write_out(table, programme_csv(found).encode())
    if as_data:
        click.echo(json.dumps(programme_values(book, found), ensure_ascii=False))
    elif not (ics or table):
        click.echo(programme_text(book, found))


def _needed(value: str | None, option: str) -> str:
    if value is None:
        raise click.UsageError(f"Missing '{option}': say it, or name a lawn that is kept with --lawn and --lawns.")
    return value


def _start(said: str | None, kept: KeptLawn | None, today: date) -> date:
    if said is not None:
        return read_day(said, "--from")
    return read_day(kept.programme.start, "--from") if kept and kept.programme else today


def _tasks(book: Book, kept: KeptLawn | None, chosen: tuple[str, ...], without: tuple[str, ...]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """What is chosen and what is left out: what was typed, over what the lawn's programme holds."""
    if kept is None or kept.programme is None:
        return chosen, without
    there = kept.programme.tasks
    left = tuple(id for id, task in book.tasks.items() if task.due and id not in there and id not in chosen)
    return (*chosen, *(id for id in there if id not in without)), (*without, *left)
