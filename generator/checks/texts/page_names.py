"""No record takes the address of a page that every book has."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.book.references import KEY
from generator.checks.check import Check
from generator.findings import Finding, Where

# Kind -> pages that stand in its folder of the site beside those of its records.
TAKEN = {
    "grasses": ("index", "key"), "tasks": ("index",), "cautions": ("index",), "calculators": ("index",), "renovations": ("index",),
    "aftercare": ("index", "maker"), "places": ("index",), "problems": ("index",), "answers": ("index",),
}  # fmt: skip


def _check(book: PartialBook) -> Iterator[Finding]:
    for kind, names in TAKEN.items():
        for name in names:
            what = f"the book has a page of its own called '{name}' there"
            if book.knows(kind, name):
                yield Finding(Where(f"data/{kind}/{name}.yml"), what, f"choose another file name, such as '{name}-2.yml'")
            if name in book.retired_of(kind):
                yield Finding(book.where("retired", "retired", kind, name, KEY), what, "take it out: no record can have had that name")


CHECK = Check("page-names", "No record takes the address of a page that every book has.", (*TAKEN, "retired"), _check)
