"""`swardbook season`: the computed year of a grass at a place, usual, or measured so far."""

import json
from datetime import datetime
from pathlib import Path

import click

from generator.book.daily.daily_reading import AskedOfDays, read_days, told_reads
from generator.book.daily.daily_record import DailyRecord
from generator.book.records.practice import OPEN_SITE
from generator.commands.common import book_option, known, whole_book
from generator.commands.exit_codes import ExitCode
from generator.commands.season_notes import print_seen, read_notes
from generator.commands.shell_words import ids
from generator.files.season_json import as_json
from generator.files.season_text import season_text
from generator.files.this_year_text import this_year_text, this_year_values
from generator.findings import one_line
from generator.season.season_cache import SeasonCache


@click.command()
@book_option
@click.argument("grass", shell_complete=ids("grasses"))
@click.argument("place", shell_complete=ids("places"))
@click.option("--site", default=OPEN_SITE, show_default=True, help="Where the lawn is: open, wall, hollow, shade or exposed.")
@click.option("--observed", type=click.Path(exists=True, dir_okay=False, path_type=Path), multiple=True, metavar="FILE",
              help="This year's days: measured so far, usual weather after. Without it, observed/PLACE.csv of the book, if it is there.")
@click.option("--usual", is_flag=True, help="The usual year, whatever was measured.")
@click.option("--us", is_flag=True, help="Tell the reasons in US units.")
@click.option("--soil", metavar="TEMPERATURE", help="What your soil thermometer says, such as '14 °C': moves the usual windows by it.")
@click.option("--soil-depth", metavar="DEPTH", help="How deep it was read, such as '100 mm', which it is if it is not said.")
@click.option("--soil-on", metavar="DATE", help="The day of the reading; today if it is not said.")
@click.option("--green-up", metavar="DATE", help="The day on which the grass was seen to green up.")
@click.option("--last-frost", metavar="DATE", help="The day of the last frost seen.")
@click.option("--json", "as_data", is_flag=True, help="Print JSON, for other programs.")
@click.pass_obj
def season(
    now: datetime, root: Path, grass: str, place: str, site: str, observed: tuple[Path, ...], usual: bool, us: bool, soil: str | None, soil_depth: str | None,
    soil_on: str | None, green_up: str | None, last_frost: str | None, as_data: bool,
) -> None:
    """Print the computed year of GRASS at PLACE: growth, frost, water and windows."""
    book = whole_book(root)
    seasons = SeasonCache(book)
    known(grass, book.grasses, "grass")
    known(place, book.places, "place")
    known(site, seasons.sites, "site")
    if usual and observed:
        raise click.UsageError("--usual leaves out what --observed gives; take one")
    of_what = {"grass": grass, "place": place, "site": site}
    notes = read_notes(now.date(), soil, soil_depth, soil_on, green_up, last_frost)
    if notes is not None:
        if observed:
            raise click.UsageError("days that were measured say more than notes: take --observed, or what you saw")
        print_seen(seasons, of_what, notes, soil or "", now.date(), us, as_data)
        return
    record = _record(observed) if observed else None if usual else book.observed.get(place)
    if record is None:
        year = seasons.season(grass, place, site)
        said = json.dumps({**of_what, **as_json(year)}, ensure_ascii=False) if as_data else season_text(year, book.grasses[grass].name, book.places[place].name, site, us)
        click.echo(said)
        return
    this = seasons.this_year(grass, place, record, site)
    if as_data:
        click.echo(json.dumps({**of_what, **as_json(this.season), "observed": this_year_values(this, record)}, ensure_ascii=False))
    else:
        click.echo(season_text(this.season, book.grasses[grass].name, book.places[place].name, site, us, this_year_text(this, record)))


def _record(files: tuple[Path, ...]) -> DailyRecord:
    """The days of the files; what is wrong with them ends the command. What was guessed of them goes to the error stream."""
    record, reads, findings = read_days(files, AskedOfDays())
    for line in told_reads(reads):
        click.echo(line, err=True)
    for finding in findings:
        click.echo(finding, err=True)
    if not findings and record.last_warmth is None:
        click.echo(f"{', '.join(one_line(file.name) for file in files)}: no day has both a maximum and a minimum; add the other file with --observed", err=True)
    if findings or record.last_warmth is None:
        raise SystemExit(ExitCode.FINDINGS)
    return record
