"""Where a command ends in a sentence when nothing nearer to the trouble said one.

Faults of the machine (a disk that is full, a file that went away) are told here wherever they come up. A fault of this
program is told only where a terminal started it, so that tests still meet it as it is.
"""

import os
import sys
import traceback
from collections.abc import Sequence
from typing import Any, TextIO

import click

from generator.commands.exit_codes import ExitCode
from generator.findings import one_line, short_words
from generator.moment import moment


class Commands(click.Group):
    """The commands of a book. What the machine refuses ends one with a sentence."""

    def main(self, args: Sequence[str] | None = None, *more: Any, **named: Any) -> Any:
        """Start the command that was named; without args, as a terminal does: then whatever happens ends in a sentence."""
        if args is not None:
            return super().main(args, *more, **named)
        try:
            return super().main(None, *more, **named)
        except Exception as error:
            place = traceback.extract_tb(error.__traceback__)[-1]
            about = f"{type(error).__name__} at {os.path.basename(place.filename)}:{place.lineno}, {one_line(error)[:200]}"
            click.echo(f"This is a fault in Swardbook, not in your book; please pass this line on to its keepers: {about}", err=True)
            raise SystemExit(ExitCode.FINDINGS) from None

    def invoke(self, context: click.Context) -> object:
        """Run the command that was named. A reader of our output who went away (head) is no trouble: click ends quietly."""
        try:
            context.obj = moment()  # When a file was made; commands are told it.
        except ValueError as error:
            raise click.UsageError(str(error)) from None
        try:
            return super().invoke(context)
        except BrokenPipeError:
            raise
        except click.UsageError as error:
            error.message = short_words(error.message)  # type: ignore[misc]  # Final for heirs; each kind of it prints what stands there.
            raise
        except OSError as error:
            _let_go(sys.stdout)
            raise click.ClickException(sentence(error)) from None
        except MemoryError:
            raise click.ClickException("this takes more memory than there is; ask for less at a time") from None


def sentence(error: OSError) -> str:
    """What the machine refused, in one line: the file, where it names one, and its reason."""
    reason = error.strerror or one_line(error)
    return f"{one_line(error.filename)}: {reason}" if error.filename is not None else f"{reason}: what was asked for could not be written or read"


def _let_go(stream: TextIO) -> None:
    """Drop what a stream cannot get rid of, or Python tries again on its way out and complains of it."""
    try:
        stream.flush()
    except OSError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())
