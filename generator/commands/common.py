"""What the commands share: the folder of the book, the book itself, and a word for what is not in it."""

from collections.abc import Iterable
from pathlib import Path

import click

from generator.checks import check_book
from generator.findings import suggestion
from generator.model.book import Book

book_option = click.option(
    "--book", "root", default=".", type=click.Path(exists=True, file_okay=False, path_type=Path),
    help="The folder that holds mkdocs.yml, data/ and content/. Without it, the current folder.",
)  # fmt: skip


def whole_book(root: Path) -> Book:
    """The book when it is in order; otherwise its problems are told and the command ends."""
    loaded = check_book(root)
    if loaded.book is None:
        for finding in loaded.findings:
            click.echo(finding, err=True)
        raise SystemExit(1)
    return loaded.book


def known(id: str, ids: Iterable[str], kind: str) -> None:
    """Ends the command with the nearest name when there is no such record."""
    ids = list(ids)
    if id not in ids:
        raise click.UsageError(f"no {kind} '{id}'; {suggestion(id, ids, 'there are ' + ', '.join(ids))}")


def typed_values(words: Iterable[str], form: str, example: str) -> dict[str, str]:
    """'area=240 m2' as {'area': '240 m2'}; anything else ends the command. form: as usage says it; example: one that is right."""
    typed: dict[str, str] = {}
    for word in words:
        name, sign, value = word.partition("=")
        if not sign:
            raise click.UsageError(f"'{word}' is not {form}; write it as {example}")
        if name.strip() in typed:
            raise click.UsageError(f"'{name.strip()}' is given twice; give it once")
        typed[name.strip()] = value
    return typed
