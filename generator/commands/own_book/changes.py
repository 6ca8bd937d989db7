"""`swardbook changes`: what a new version of the shared knowledge means for a book that lies over it."""

from pathlib import Path

import click

from generator.book.overlay.upstream import STATE_FILE, changes_since, state_text, told
from generator.commands.common import book_option
from generator.commands.exit_codes import ExitCode
from generator.commands.writing import write_out
from generator.findings import one_line


@click.command()
@book_option
@click.option("--accept", is_flag=True, help="Take the shared knowledge as it is now for looked at.")
def changes(root: Path, accept: bool) -> None:
    """Say what a new version of the shared knowledge changes, and which of your own files it touches. Nothing of yours is changed."""
    found = changes_since(root)
    if found is None and not accept:
        click.echo(f"{one_line(root / STATE_FILE)}: not known what the shared knowledge was; 'swardbook changes --accept' takes it as it is now", err=True)
        raise SystemExit(ExitCode.FINDINGS)
    mine = [change for change in found or () if change.mine is not None]
    others = [change for change in found or () if change.mine is None]
    for change in (*mine, *others):
        click.echo(told(change))
    if not found:
        click.echo("The shared knowledge is as it was.")
    if accept:
        write_out(root / STATE_FILE, state_text(root).encode())
        click.echo(f"Wrote {one_line(root / STATE_FILE)}.")
    elif mine:
        click.echo(f"{len(mine)} of your files to look at; then 'swardbook changes --accept'.", err=True)
        raise SystemExit(ExitCode.FINDINGS)
