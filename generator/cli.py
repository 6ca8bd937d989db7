"""The `swardbook` command: one screen a command; the thinking lives in the rooms it calls."""

import sys
from pathlib import Path

import click

from generator.checks import check_book
from generator.model.schema import write_schemas

book_option = click.option(
    "--book", "root", default=".", type=click.Path(exists=True, file_okay=False, path_type=Path),
    help="The folder that holds mkdocs.yml, data/ and content/. Without it, the current folder.",
)  # fmt: skip


@click.group(context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="swardbook")
def main() -> None:
    """A practice book for turf: checks it, builds it, and answers from it."""
    for stream in (sys.stdout, sys.stderr):  # A terminal without '°' gets an escape, never a traceback.
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="backslashreplace")


@main.command()
@book_option
def check(root: Path) -> None:
    """Check every file of the book; each problem is one line."""
    book, findings = check_book(root)
    for finding in findings:
        click.echo(finding)
    if book is None:
        click.echo("1 problem" if len(findings) == 1 else f"{len(findings)} problems", err=True)
        raise SystemExit(1)
    click.echo(f"The book is in order: {book.size()} records read, and every check passed.")


@main.command()
@book_option
def schema(root: Path) -> None:
    """Write the JSON Schema of each kind of file into data/schema, for editors."""
    files = write_schemas(root / "data" / "schema")
    click.echo(f"Wrote {len(files)} schemas into {root / 'data' / 'schema'}.")
