"""A site as one zip: the files that its build made, in one order, with one date, so that the same site is the same bytes."""

import os
import zipfile
from pathlib import Path

from generator.building.failed import BuildFailed
from generator.building.kept import read_list
from generator.building.target import Target
from generator.files.written_beside import beside
from generator.findings import one_line

OLDEST_DATE = (1980, 1, 1, 0, 0, 0)  # The first that a zip can hold: of a packed site, no file has a date of its own.
READABLE_FILE = 0o100644 << 16
UNIX = 3


def must_take_a_pack(file: Path, root: Path, target: Target) -> None:
    """Raises BuildFailed where no zip may be written. root: the folder of the book; target: its site."""
    real = Path(os.path.realpath(file))
    for folder, name in ((Path(os.path.realpath(root)), "book"), (target.real, "site")):
        if real.is_relative_to(folder):
            raise BuildFailed(f"{one_line(file)}: is inside the {name}, which would be packed with it or overwritten; write it elsewhere, such as ../book.zip")
    if file.suffix.lower() != ".zip":
        raise BuildFailed(f"{one_line(file)}: does not end in .zip; name it, such as ../book.zip")
    if file.exists() and not file.is_file():
        raise BuildFailed(f"{one_line(file)}: is not a file; name another")
    if not real.parent.is_dir():
        raise BuildFailed(f"{one_line(file)}: there is no folder {one_line(real.parent)}; make it, or name another")


def pack_site(site: Path, file: Path) -> None:
    """Write the zip beside its place and move it in. What a person put into the site is not packed.

    Raises OSError, and Busy while another command writes the same file.
    """
    with beside(file) as stream, zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as archive:
        for path in sorted(read_list(site) or ()):
            entry = zipfile.ZipInfo(f"{file.stem}/{path}", OLDEST_DATE)
            entry.compress_type, entry.create_system, entry.external_attr = zipfile.ZIP_DEFLATED, UNIX, READABLE_FILE
            archive.writestr(entry, (site / path).read_bytes())
