"""`swardbook build` and `swardbook pack`: the book as a site, and the site as one file."""

from pathlib import Path

import click

from generator.book.editions import AUDIENCES, Audience
from generator.building.failed import BuildFailed
from generator.building.target import Target
from generator.commands.common import book_option
from generator.commands.exit_codes import ExitCode
from generator.commands.stopping import stoppable
from generator.commands.writing import unwritten
from generator.files.locked import Busy
from generator.findings import one_line

for_option = click.option(
    "--for", "audience", type=click.Choice(AUDIENCES), default="practice", show_default=True,
    help="Whose site it is: the practice's own, or the one that clients get, with nothing private in it.",
)  # fmt: skip
# Each has a folder of its own, so that neither ever lies where the other is hosted from.
FOLDERS: dict[Audience, str] = {"practice": "site", "clients": "site-for-clients"}
safe_option = click.option("--safe", is_flag=True, help="For a book from somebody else: refuses anything in it that could run.")


@click.command()
@book_option
@click.option("--to", type=click.Path(path_type=Path), help="Where the site goes; without it, site/ in the book, or site-for-clients/.")
@for_option
@safe_option
def build(root: Path, to: Path | None, audience: Audience, safe: bool) -> None:
    """Build the site to one side, then move it in; a failed build leaves the old one as it was."""
    target = Target(to or root / FOLDERS[audience])
    with stoppable(target.stands):
        _build(root, target, safe, audience)
    click.echo(f"Built {one_line(target.path / 'index.html')}")


@click.command()
@book_option
@click.argument("file", type=click.Path(path_type=Path))
@for_option
@safe_option
def pack(root: Path, file: Path, audience: Audience, safe: bool) -> None:
    """Build the site and put it into FILE, one zip to hand over on a USB stick."""
    from generator.building.packed import must_take_a_pack, pack_site

    target = Target(root / FOLDERS[audience])
    with stoppable(target.stands):
        try:
            must_take_a_pack(file, root, target)
        except BuildFailed as error:
            click.echo(error)
            raise SystemExit(ExitCode.FINDINGS) from None
        _build(root, target, safe, audience)
        try:
            pack_site(target.real, file)
        except (OSError, Busy) as error:
            raise unwritten(file, error) from None
    click.echo(f"Packed {one_line(file)}: unpack it and open {one_line(file.stem)}/index.html")


def _build(root: Path, target: Target, safe: bool, audience: Audience) -> None:
    from generator.building.book_to_site import build_site

    try:
        build_site(root, target, safe, audience)
    except BuildFailed as error:
        click.echo(error)
        click.echo(target.stands(), err=True)
        raise SystemExit(ExitCode.FINDINGS) from None
