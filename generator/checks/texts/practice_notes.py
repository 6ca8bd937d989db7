"""What a practice leaves open that costs its readers something: told beside the mistakes, and no reason to refuse a book."""

from collections.abc import Iterator
from urllib.parse import urlsplit

from generator.book.book import PartialBook
from generator.book.picture import UnfitPicture, read_picture
from generator.checks.check import Check
from generator.findings import Finding

FILE = "practice"
# A drawing this much wider or higher than square cannot be made out in a browser's tab: an assumption.
OBLONG = 1.6


def _check(book: PartialBook) -> Iterator[Finding]:
    practice = book.practice
    if practice is None or practice.invented:
        return
    if practice.public_address is None:
        yield Finding(book.where(FILE, FILE), "note: no `public_address`, so pages have no canonical address, there is no sitemap.xml, and clients get no link or code",
                      "give it once the book is hosted")
    elif practice.calendar_name is None:
        host = urlsplit(practice.public_address).hostname
        yield Finding(book.where(FILE, FILE, "public_address"), "note: no `calendar_name`, so the events of your calendar files have ids like any book without one",
                      f"write 'calendar_name: {host}', which ended the ids of calendars that were made before there was this key, and never change it")
    if practice.logo is not None and practice.favicon is None:
        try:
            wide = read_picture(book.root, practice.logo).wide
        except UnfitPicture:
            return  # Told among the mistakes.
        if not 1 / OBLONG <= wide <= OBLONG:
            yield Finding(book.where(FILE, FILE, "logo"), "note: the logo is far from square, and stands very small in a browser's tab and under the sign on a telephone",
                          "give a square one as `favicon`")


CHECK = Check("practice-notes", "What a practice leaves open is told.", (FILE,), _check)
