"""`swardbook new`: a commented record to go on from, of any kind, that passes the check as it is."""

import re
from pathlib import Path

import click

from generator.book.fields.texts import IDENTIFIER
from generator.book.loading.whole_book import read_book
from generator.book.overlay.knowledge import knowledge_folder
from generator.book.records import KINDS, SINGULAR
from generator.checks.texts.page_names import TAKEN
from generator.commands.common import book_option, known
from generator.commands.exit_codes import ExitCode
from generator.commands.own_book.new_values import NewBook, extending_text, new_text
from generator.commands.own_book.place_asked import identifier
from generator.commands.shell_words import ids_of, kinds_to_write
from generator.commands.writing import write_out
from generator.findings import one_line, shown, suggestion
from generator.moment import this_year

# A record by the word that an author says, where the schema has another.
SAID = {"renovations": "plan", "aftercare": "sheet"}
KIND_OF = {SAID.get(kind, SINGULAR[kind]): kind for kind in KINDS}
# As the records take it: `book/fields/texts.py`.
LONGEST_ID = 60
# What practice.yml may choose from: what is not named there is not in the book.
CHOSEN = {"grasses": "grasses", "places": "places", "renovations": "plans"}


@click.command()
@book_option
@click.argument("kind", required=False, metavar="KIND", shell_complete=kinds_to_write(KIND_OF))
@click.argument("name", required=False)
@click.option("--like", metavar="ID", help="Over a record of the shared knowledge: the file says only what differs.", shell_complete=ids_of("kind", KIND_OF))
@click.option("--list", "listed", is_flag=True, help="List the kinds, or the records that there are of KIND.")
def new(root: Path, kind: str | None, name: str | None, like: str | None, listed: bool) -> None:
    """Write a commented record of KIND, data/.../NAME.yml, that passes the check as it is. Then change what it says.

    KIND is grass, place, task, caution, calculator, hold, step, plan, sheet, problem, expert or answer. NAME is the id: sweet-smother-grass.
    """
    if kind is not None:
        known(kind, KIND_OF, "kind")
    if listed and kind is None:
        click.echo("\n".join(f"{said}  data/{folder}" for said, folder in KIND_OF.items()))
        return
    if kind is None or (name is None and not listed):
        raise click.UsageError("say what to write and what it is called, such as: swardbook new grass sweet-smother-grass; --list shows the kinds")
    folder = KIND_OF[kind]
    book, findings = read_book(root, this_year())
    if listed:
        click.echo("\n".join(book.of(folder)))
        return
    assert name is not None
    into = NewBook.of(book)
    if into is None:
        for finding in findings:
            click.echo(finding, err=True)
        raise SystemExit(ExitCode.FINDINGS)
    file = root / "data" / folder / f"{name}.yml"
    _free(kind, folder, name, file, into)
    if like is None:
        text = new_text(kind, name, into)
    else:
        text = extending_text(folder, name, _shared_file(into, folder, like))
    file.parent.mkdir(exist_ok=True)
    write_out(file, text.encode())
    click.echo(f"Wrote {one_line(file)}.")
    for line in _next(root, folder, name, into):
        click.echo(line)


def _free(kind: str, folder: str, name: str, file: Path, into: NewBook) -> None:
    """Ends the command where nothing may be called by the name: no id, an id that was retired, a page of every book, or a record that is there."""
    if not re.fullmatch(IDENTIFIER, name) or len(name) > LONGEST_ID:
        raise click.UsageError(f"'{shown(name)}' is no id: lower case, with hyphens between words; write swardbook new {kind} {identifier(name)}")
    retired = into.book.retired_of(folder).get(name)
    if retired is not None:
        instead = f", and '{retired.instead}' took its place" if retired.instead else ""
        raise click.UsageError(f"'{name}' was the id of {retired.name}{instead}; old links still mean that one: choose another name")
    if name in TAKEN.get(folder, ()):
        raise click.UsageError(f"the book has a page of its own called '{name}' there; choose another name, such as {name}-2")
    if file.exists():
        raise click.UsageError(f"{one_line(file)} is there already; choose another name, or change that file")


def _shared_file(into: NewBook, folder: str, like: str) -> Path:
    """The file that the new one lies over; ends the command where there is none."""
    if not into.practice.shared_knowledge:
        raise click.UsageError("--like changes a record of the shared knowledge, and this book does not lie over it: data/practice.yml has no 'shared_knowledge: true'")
    file = knowledge_folder() / "data" / folder / f"{like}.yml"
    if not file.is_file():
        ids = sorted(each.stem for each in file.parent.glob("*.yml"))
        there = f"swardbook new {SAID.get(folder, SINGULAR[folder])} --list shows them"
        raise click.UsageError(f"'{shown(like)}' is not in the shared {folder}; {suggestion(like, ids, there)}")
    return file


def _next(root: Path, folder: str, name: str, into: NewBook) -> list[str]:
    """What an author does now."""
    key = CHOSEN.get(folder)
    chosen = getattr(into.practice, key) if key else None
    told = [f"data/practice.yml chooses its {key}: add {name} there, or it is not in the book."] if chosen is not None and name not in chosen else []
    if folder == "places":
        told.append(f"Its months are those of {into.place.name}: write its own, or let 'swardbook place {name} --replace' make them.")
    where = "" if root == Path(".") else f" --book {one_line(root)}"
    return [*told, f"Next: write what is yours, then swardbook check{where}"]
