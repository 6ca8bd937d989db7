"""The practice's colour can be read wherever it stands, and its pictures draw and do nothing else."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.book.contrast import TEXT_AA
from generator.book.palette import falls_short
from generator.book.picture import UnfitPicture, read_picture
from generator.checks.check import Check
from generator.findings import Finding

FILE = "practice"
PICTURES = ("logo", "favicon")


def _check(book: PartialBook) -> Iterator[Finding]:
    practice = book.practice
    if practice is None:
        return
    if practice.colour is None:
        if book.written(FILE, FILE, "colour"):  # YAML takes what follows a '#' for a remark.
            yield Finding(book.where(FILE, FILE, "colour"), "`colour` is empty: YAML reads no further than '#'", "write it in quotes, such as \"#24527a\"")
    elif short := falls_short(practice.colour):
        least, nearest = short
        told = f"{int(least * 100) / 100} to 1"  # Cut, not rounded: 4.498 must not be told as what it falls short of.
        yield Finding(book.where(FILE, FILE, "colour"), f"links in '{practice.colour}' would stand at {told} against the page, "
                      f"and text needs {TEXT_AA:g} to 1 to be read (WCAG 2, level AA)", f"the nearest shade that reaches it is \"{nearest}\"")
    for key in PICTURES:
        path = getattr(practice, key)
        try:
            if path is not None:
                read_picture(book.root, path)
        except UnfitPicture as unfit:
            yield Finding(book.where(FILE, FILE, key), unfit.what, unfit.instead)


CHECK = Check("looks-fit", "The practice's colour can be read, and its pictures only draw.", (FILE,), _check)
