"""`swardbook round`: many lawns, one round."""

import json
from dataclasses import replace
from datetime import date, datetime, timedelta
from pathlib import Path

import click

from generator.book.book import Book
from generator.book.lists.for_a_job import Refused, given_area_m2, given_day, given_travel_minutes
from generator.book.lists.lawn_code import NAMES_NOBODY
from generator.book.lists.lawns import Lawn, read_lawns
from generator.commands.common import book_option, separator_option, whole_book
from generator.commands.exit_codes import ExitCode
from generator.commands.plan import read_day
from generator.commands.round_visits import visits_between
from generator.commands.writing import write_out
from generator.files.calendar_file import calendar_domain
from generator.files.round_values import round_calendar, round_csv, round_text, round_values
from generator.findings import Finding, Where, shown, suggestion
from generator.jobs.better_day import with_better_days
from generator.jobs.job import Job, Request
from generator.jobs.lawn_round import LawnJob, round_of
from generator.jobs.plans_for_grass import AskedJob, job_of, plans_for, why_not
from generator.season.season_cache import SeasonCache

# A round is planned by the week.
DAYS_TAKEN_IN = 6


@click.command()
@book_option
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@separator_option
@click.option("--on", "on", required=True, help="Day of the jobs, such as 2026-10-12; a lawn may have its own.")
@click.option("--until", "until", help="Last day of the visits of lawns' years that are taken in from a lawns.json; six days after --on if it is not said.")
@click.option("--json", "as_data", is_flag=True, help="Print JSON, for other programs.")
@click.option("--ics", type=click.Path(dir_okay=False, path_type=Path), help="Write every lawn's steps as one calendar file.")
@click.option("--first-on", help="The day the round was first planned for, if it has moved, so that a calendar can move its events.")
@click.option("--csv", "table", type=click.Path(dir_okay=False, path_type=Path), help="Write every lawn's steps as comma-separated values.")
@click.pass_obj
def round_command(
    now: datetime, root: Path, file: Path, separator: str | None, on: str, until: str | None, as_data: bool, ics: Path | None, first_on: str | None, table: Path | None,
) -> None:
    """Plan a round of the lawns in FILE (CSV or YAML): schedules, one shopping list, one gear list, clashes.

    Columns: client (a code), grass, place, area, and site, plan, on, town and travel where they differ. A lawns.json is read as well, with the
    visits of its lawns' years that fall in the days asked for.
    """
    book = whole_book(root)
    seasons = SeasonCache(book)
    day = read_day(on, "--on")
    first = read_day(first_on, "--first-on") if first_on is not None else day
    lawns, findings = read_lawns(file, separator)
    jobs: list[AskedJob] = []
    for lawn, where in lawns:
        wrong, asked = _asked(book, seasons, lawn, where, day)
        findings += wrong
        jobs += [asked] if asked else []
    last = read_day(until, "--until") if until is not None else day + timedelta(DAYS_TAKEN_IN)
    visits, wrong_visits = visits_between(book, file, day, last)
    findings += wrong_visits
    if findings:
        for finding in sorted(findings):
            click.echo(finding, err=True)
        raise SystemExit(ExitCode.FINDINGS)
    found = with_better_days(
        round_of((_lawn_job(lawn, asked, job_of(book, seasons, asked)) for (lawn, _), asked in zip(lawns, jobs, strict=True)), visits),
        lambda each, other_day: job_of(book, seasons, _on(each, other_day)),
        now.date(),
    )
    if ics:
        write_out(ics, round_calendar(book, found, f"Round of {day.isoformat()}", calendar_domain(book.practice.calendar_name), first, now))
    if table:
        write_out(table, round_csv(book, found).encode())
    if as_data:
        click.echo(json.dumps(round_values(found), ensure_ascii=False))
    elif not (ics or table):
        click.echo(round_text(book, found))


def _on(each: LawnJob, day: date) -> AskedJob:
    """The same job on another day."""
    lawn = each.lawn
    return AskedJob(lawn["renovation"], lawn["grass"], lawn["place"], replace(each.job.request, on=day), lawn["site"])


def _lawn_job(lawn: Lawn, asked: AskedJob, job: Job) -> LawnJob:
    ids = {"renovation": asked.renovation, "grass": asked.grass, "place": asked.place, "site": asked.site}
    return LawnJob(lawn.client, ids, job, lawn.town or "", given_travel_minutes(lawn.travel) if lawn.travel else 0)


def _asked(book: Book, seasons: SeasonCache, lawn: Lawn, where: Where, day: date) -> tuple[list[Finding], AskedJob | None]:
    """What one lawn asks for, or everything that is wrong with its line."""
    plan = lawn.plan or (book.grasses[lawn.grass].renovation if lawn.grass in book.grasses else None)
    named = (("grass", lawn.grass, book.grasses), ("place", lawn.place, book.places), ("site", lawn.site, seasons.sites))
    unknown = [
        Finding(where, f"no {kind} '{shown(id)}'", suggestion(id, known, f"see data/{kind}s or 'swardbook season --help'"))
        for kind, id, known in (*named, *([("plan", plan, book.renovations)] if plan else ())) if id not in known
    ]
    findings = list(unknown)
    if not lawn.names_nobody:
        findings.append(Finding(where, f"'{shown(lawn.client)}' is not a client's code", NAMES_NOBODY))
    if plan and not unknown and (reason := why_not(book, book.renovations[plan], book.grasses[lawn.grass])):
        findings.append(Finding(where, reason.rstrip("."), f"its plans are {', '.join(plans_for(book, book.grasses[lawn.grass]))}"))
    area: float | None = None
    on: date | None = None
    try:
        area = given_area_m2(lawn.area)
    except Refused as refused:
        findings.append(Finding(where, f"area: {refused.what}", refused.instead))
    try:
        on = day if lawn.on is None else given_day(lawn.on)
    except Refused as refused:
        findings.append(Finding(where, refused.what, refused.instead))
    try:
        given_travel_minutes(lawn.travel or "0 min")
    except Refused as refused:
        findings.append(Finding(where, f"travel: {refused.what}", refused.instead))
    if findings or plan is None or area is None or on is None:
        return findings, None
    return [], AskedJob(plan, lawn.grass, lawn.place, Request(area, on), lawn.site)
