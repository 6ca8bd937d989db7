"""`swardbook plan`: a dated job."""

import json
from collections.abc import Iterable
from dataclasses import replace
from datetime import date, datetime
from pathlib import Path

import click

from generator.book.book import Book
from generator.book.lists.for_a_job import given_area_m2, given_day, given_people, given_rain_mm
from generator.book.records.practice import OPEN_SITE
from generator.commands.common import book_option, known, present, typed, whole_book
from generator.commands.of_lawn import Given, given_by
from generator.commands.shell_words import ids
from generator.commands.writing import write_out
from generator.field.inspection_plan import adjusted_by, inspection_values
from generator.field.inspection_result import InspectionResult, findings_of
from generator.files.calendar_file import calendar_domain
from generator.files.job_calendar import job_calendar, job_key
from generator.files.job_text import job_csv, job_text
from generator.files.job_values import job_values
from generator.findings import one_line, shown
from generator.jobs.job import Request
from generator.jobs.plan_steps import Adjusted
from generator.jobs.plans_for_grass import NOT_NEEDED, AskedJob, job_of, plans_for, why_not
from generator.season.season_cache import SeasonCache


@click.command()
@book_option
@click.argument("renovation", required=False, shell_complete=ids("renovations"))
@click.option("--grass", shell_complete=ids("grasses"), help="The grass, by its id.")
@click.option("--place", shell_complete=ids("places"), help="The place, by its id.")
@click.option("--area", help="Area of the lawn, with its unit: '240 m2'.")
@click.option("--on", "on", help="Day of the job, such as 2026-10-12.")
@click.option("--site", help=f"Where the lawn is: open, wall, hollow, shade or exposed; {OPEN_SITE} if it is not said.")
@click.option("--crew", metavar="PEOPLE", help="How many people go to it; the practice's own number if it is not said.")
@click.option("--lawn", metavar="CODE", help="A lawn of the file of --lawns, with its latest job: what is not said here is taken from it.")
@click.option("--lawns", type=click.Path(exists=True, dir_okay=False, path_type=Path), help="A lawns.json, as the page of lawns saves it.")
@click.option("--done", multiple=True, metavar="STEP=DATE", help="A step that was done, or is put off, with its date; may be repeated.")
@click.option("--without", multiple=True, metavar="STEP", help="A step that this lawn does not need; may be repeated.")
@click.option("--with", "chosen", multiple=True, metavar="STEP", help="A step done only where needed, which this lawn needs; may be repeated.")
@click.option("--inspection", "answers", multiple=True, metavar="QUESTION=ANSWER", help="What the inspection sheet found, such as thatch-depth='30 mm'; may be repeated.")
@click.option("--visit", "answers_before", multiple=True, hidden=True, help="What --inspection was called before.")
@click.option("--rain", multiple=True, metavar="DATE=DEPTH", help="Rain forecast for a day, such as 2026-10-13='8 mm'; may be repeated.")
@click.option("--us", is_flag=True, help="Tell the reason of the window in US units.")
@click.option("--json", "as_data", is_flag=True, help="Print JSON, for other programs.")
@click.option("--ics", type=click.Path(dir_okay=False, path_type=Path), help="Write the job as a calendar file.")
@click.option("--first-on", help="The day the job was first planned for, if it has moved, so that a calendar can move its events.")
@click.option("--csv", "table", type=click.Path(dir_okay=False, path_type=Path), help="Write the job as comma-separated values.")
@click.pass_obj
def plan(
    now: datetime, root: Path, renovation: str | None, grass: str | None, place: str | None, area: str | None, on: str | None, site: str | None,
    crew: str | None, lawn: str | None, lawns: Path | None, done: tuple[str, ...], without: tuple[str, ...], chosen: tuple[str, ...], answers: tuple[str, ...],
    answers_before: tuple[str, ...], rain: tuple[str, ...], us: bool, as_data: bool, ics: Path | None, first_on: str | None, table: Path | None,
) -> None:
    """Put dates to the plan RENOVATION: when each step falls, what to buy, what to book."""
    book = whole_book(root)
    seasons = SeasonCache(book)
    said = Given(
        renovation, grass, place, area, on, site, pairs(done, "--done", "core=2026-10-14"), without, chosen,
        pairs(answers + answers_before, "--inspection", "thatch-depth='30 mm'"), pairs(rain, "--rain", "2026-10-13='8 mm'"), crew,
    )
    if (lawn is None) != (lawns is None):
        raise click.UsageError("--lawn and --lawns go together: a code, and the file it stands in")
    if lawn is not None and lawns is not None:
        said = said.over(given_by(lawns, lawn, renovation))
        if said.renovation is None and said.grass in book.grasses:
            said = replace(said, renovation=book.grasses[said.grass].renovation)
    asked, inspection = asked_job(book, said)
    fitting(book, seasons, asked, (present_step(book, each) for each in said.chosen))
    first = read_day(first_on, "--first-on") if first_on is not None else asked.request.on
    job = job_of(book, seasons, asked)
    plan_name, grass_name = book.renovations[asked.renovation].name, book.grasses[asked.grass].name
    if ics:
        domain = calendar_domain(book.practice.calendar_name)
        key = job_key((asked.renovation, asked.grass, asked.place, asked.site), first)
        write_out(ics, job_calendar(job, f"{plan_name}: {grass_name}", key, domain, now))
    if table:
        write_out(table, job_csv(job).encode())
    if as_data:
        asked_for = {"renovation": asked.renovation, "grass": asked.grass, "place": asked.place, "site": asked.site}
        seen = {"inspection": inspection_values(book, inspection)} if inspection else {}
        click.echo(json.dumps({**asked_for, **job_values(job), **seen}, ensure_ascii=False))
    elif not (ics or table):
        for stop in inspection_values(book, inspection)["stops"] if inspection else ():
            click.echo(f"Stop: {stop['say']} {stop['because']}\n")
        click.echo(job_text(job, plan_name, grass_name, book.places[asked.place].name, us))


def present_step(book: Book, id: str) -> str:
    return present(book, "steps", id)


def asked_job(book: Book, said: Given) -> tuple[AskedJob, InspectionResult | None]:
    """The job that was typed, and what its inspection came to; anything that cannot be read ends the command."""
    inspection = inspected(book, dict(said.answers)) if said.answers else None
    without, chosen = (tuple(present_step(book, step) for step in each) for each in (said.without, said.chosen))
    crossed_off = dict.fromkeys(without, NOT_NEEDED)
    renovation, grass, place = said.asked("renovation"), said.asked("grass"), said.asked("place")
    request = Request(
        typed(given_area_m2, said.asked("area"), "--area"), read_day(said.asked("on"), "--on"),
        done={present_step(book, step): read_day(day, f"--done {shown(step)}") for step, day in said.done.items()},
        rain_mm={read_day(day, "--rain"): typed(given_rain_mm, depth, f"--rain {day}") for day, depth in said.rain.items()},
        adjusted=adjusted_by(book, inspection, crossed_off, chosen) if inspection else Adjusted(without=crossed_off, chosen=frozenset(chosen)),
        people=typed(given_people, said.people, "--crew") if said.people else None,
    )
    return AskedJob(renovation, grass, place, request, said.site or OPEN_SITE), inspection


def fitting(book: Book, seasons: SeasonCache, asked: AskedJob, chosen: Iterable[str] = ()) -> None:
    """Ends the command where something is not in the book, or the grass may not follow the plan. chosen: steps done only where needed."""
    known(asked.renovation, book.renovations, "plan")
    known(asked.grass, book.grasses, "grass")
    known(asked.place, book.places, "place")
    known(asked.site, seasons.sites, "site")
    record, grass = book.renovations[asked.renovation], book.grasses[asked.grass]
    reason = why_not(book, record, grass)
    if reason:
        raise click.UsageError(f"{reason.rstrip('.')}; its plans are {', '.join(plans_for(book, grass))}")
    for step in (*asked.request.done, *asked.request.adjusted.without):
        known(step, (each.id for each in record.steps), "step")
    for step in chosen:
        known(step, (each.id for each in record.steps if each.only_where), "step that is done only where needed")


def inspected(book: Book, answers: dict[str, str]) -> InspectionResult:
    """What the inspection's answers come to; a question or an answer that there is not ends the command."""
    if book.inspection is None:
        raise click.UsageError("this book has no data/inspection.yml, so it has no inspection to answer")
    for question in answers:
        known(question, (each.id for each in book.inspection.questions), "question")
    result = findings_of(book.inspection, answers)
    if result.troubles:
        raise click.UsageError("; ".join(one_line(f"--inspection {each.question}: {each.sentence}") for each in result.troubles))
    return result


def pairs(words: Iterable[str], option: str, example: str) -> dict[str, str]:
    """'core=2026-10-14' as {'core': '2026-10-14'}; anything else ends the command. example: one that is right."""
    found: dict[str, str] = {}
    for word in words:
        name, sign, value = (part.strip() for part in word.partition("="))
        if not (name and sign):
            wrong = "has nothing before its '='" if sign else "has no '='"
            raise click.UsageError(f"{option} '{shown(word)}' {wrong}; write it as {option} {example}")
        if name in found:
            raise click.UsageError(f"{option} '{shown(name)}' is given twice; give it once")
        found[name] = value
    return found


def read_day(text: str, option: str) -> date:
    """A day of a job; anything else ends the command."""
    return typed(given_day, text, option)
