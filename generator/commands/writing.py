"""Files that a command was asked for: whole or not there, and one line for why not."""

from pathlib import Path

import click

from generator.commands.exit_codes import ExitCode
from generator.commands.stopping import stoppable
from generator.files.locked import Busy
from generator.files.written_beside import write_beside
from generator.findings import one_line


def write_out(file: Path, content: bytes) -> None:
    """Write a file beside its place and move it in. Ends the command with one line where that cannot be done."""
    with stoppable(lambda: f"{one_line(file)} is as it was."):
        try:
            write_beside(file, content)
        except (OSError, Busy) as error:
            raise unwritten(file, error) from None


def unwritten(file: Path, error: OSError | Busy) -> SystemExit:
    """Says why a file was not written; raise what it returns."""
    if isinstance(error, Busy):
        click.echo(f"{one_line(file)}: another command is writing it; wait until it has ended", err=True)
    else:
        click.echo(f"{one_line(file)}: cannot be written ({error.strerror or error}); name another file", err=True)
    return SystemExit(ExitCode.FINDINGS)
