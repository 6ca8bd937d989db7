"""What the commands share: the folder of the book, the book itself, and a word for what is not in it."""

from collections.abc import Callable, Iterable
from pathlib import Path
from typing import TypeVar

import click

from generator.book.book import Book
from generator.book.lists.csv_reading import SPELLED
from generator.book.lists.for_a_job import Refused
from generator.book.loading.whole_book import Loaded
from generator.checks import check_and_warn, check_book
from generator.commands.exit_codes import ExitCode
from generator.findings import Finding, one_line, shown, suggestion
from generator.moment import this_year

Value = TypeVar("Value")

book_option = click.option(
    "--book", "root", default=".", type=click.Path(exists=True, file_okay=False, path_type=Path),
    help="The folder that holds mkdocs.yml, data/ and content/. Without it, the current folder.",
)  # fmt: skip

separator_option = click.option(
    "--separator", metavar="SIGN", callback=lambda context, option, said: None if said is None else read_separator(said),
    help="What separates the values in a line, if not a comma: ';', '|' or tab.",
)  # fmt: skip


def read_separator(said: str) -> str:
    """';' as it is, 'tab' as the sign itself; anything else ends the command."""
    for sign, spelled in SPELLED.items():
        if said in (sign, spelled):
            return sign
    raise click.UsageError(f"--separator '{shown(said)}' does not separate values; use one of {' '.join(SPELLED.values())}")


def checked_now(root: Path) -> tuple[Loaded, list[Finding]]:
    """The book in a folder, as far as it is in order, checked in this year; and what is unusual in it."""
    return check_and_warn(root, this_year())


def whole_book(root: Path) -> Book:
    """The book when it is in order; otherwise its problems are told and the command ends."""
    loaded = check_book(root, this_year())
    if loaded.book is None:
        for finding in loaded.findings:
            click.echo(finding, err=True)
        raise SystemExit(ExitCode.FINDINGS)
    return loaded.book


# More ids than this are no answer that anybody reads.
MOST_LISTED, SUCH_AS = 80, 5


def known(id: str, ids: Iterable[str], kind: str) -> None:
    """Ends the command with the nearest name when there is no such record."""
    ids = list(ids)
    if id not in ids:
        there = f"there are {', '.join(ids)}" if len(ids) <= MOST_LISTED else f"there are {len(ids)}, such as {', '.join(ids[:SUCH_AS])}"
        raise click.UsageError(f"no {kind} '{shown(id)}'; {suggestion(id, ids, there)}")


def present(book: Book, kind: str, id: str) -> str:
    """What an id is now: itself, or what took its place where it is retired, which is told beside the answer."""
    gone = book.retired_of(kind).get(id)
    if gone is None or gone.instead is None:
        return id
    click.echo(f"'{shown(id)}' is '{gone.instead}' now. {gone.why}", err=True)
    return gone.instead


def typed_values(words: Iterable[str], form: str, example: str) -> dict[str, str]:
    """'area=240 m2' as {'area': '240 m2'}; anything else ends the command. form: as usage says it; example: one that is right."""
    given: dict[str, str] = {}
    for word in words:
        name, sign, value = word.partition("=")
        if not (sign and name.strip()):
            raise click.UsageError(f"'{shown(word)}' is not {form}; write it as {example}")
        if name.strip() in given:
            raise click.UsageError(f"'{shown(name.strip())}' is given twice; give it once")
        given[name.strip()] = value
    return given


def typed(read: Callable[[str], Value], text: str, option: str) -> Value:
    """What a person typed for an option, read; what is refused ends the command."""
    try:
        return read(text)
    except Refused as refused:
        raise click.UsageError(one_line(f"{option}: {refused}")) from None
