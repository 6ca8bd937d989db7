"""`swardbook record`: what a kept work record adds up to."""

import json
from pathlib import Path

import click

from generator.book.lists.csv_reading import COMMA
from generator.book.lists.kept_record import read_kept
from generator.commands.common import book_option, separator_option, whole_book
from generator.commands.exit_codes import ExitCode
from generator.field.nitrogen_record import nitrogen_by_lawn
from generator.files.nitrogen_text import nitrogen_text, nitrogen_values


@click.command()
@book_option
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@separator_option
@click.option("--json", "as_data", is_flag=True, help="Print JSON, for other programs.")
def record(root: Path, file: Path, separator: str | None, as_data: bool) -> None:
    """Add up the nitrogen that each lawn had in each year, from FILE, a CSV that the page 'Work record' exported."""
    book = whole_book(root)
    if book.record is None:
        raise click.UsageError("this book has no work record; data/record.yml says what it holds")
    entries, findings = read_kept(file, book.record, book.grasses, separator or COMMA)
    if findings:
        for finding in sorted(findings):
            click.echo(finding, err=True)
        raise SystemExit(ExitCode.FINDINGS)
    years = nitrogen_by_lawn(book.calculators[book.record.nitrogen_by], [entry.values for entry in entries])
    values = nitrogen_values(years, book.grasses, [entry.where.line for entry in entries])
    click.echo(json.dumps(values, ensure_ascii=False) if as_data else nitrogen_text(values))
