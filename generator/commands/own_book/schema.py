"""`swardbook schema`: what an editor needs to complete and check an author's YAML."""

from pathlib import Path

import click

from generator.book.json_schema import schemas
from generator.commands.common import book_option
from generator.commands.exit_codes import ExitCode
from generator.commands.writing import unwritten, write_out
from generator.findings import one_line


@click.command()
@book_option
def schema(root: Path) -> None:
    """Write the JSON Schema of each kind of file into data/schema, for editors."""
    if not (root / "data").is_dir():
        click.echo(f"{one_line(root)}: no data/ here; go to the folder of a book or name it with --book", err=True)
        raise SystemExit(ExitCode.FINDINGS)
    count = write_schemas(root)
    click.echo(f"Wrote {count} schemas into {one_line(root / 'data' / 'schema')}.")


def write_schemas(root: Path) -> int:
    """Every schema into the data/schema of a book; how many there are."""
    folder = root / "data" / "schema"
    try:
        folder.mkdir(exist_ok=True)
    except OSError as error:
        raise unwritten(folder, error) from None
    files = schemas()
    for name, text in files.items():
        write_out(folder / name, text.encode())
    return len(files)
