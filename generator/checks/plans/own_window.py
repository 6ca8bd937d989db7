"""The plan that a grass follows has a window of the year: its page, its guide and the front page say when it opens."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.checks.check import Check
from generator.findings import Finding

ANY_TIME = "growing"


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, grass in book.grasses.items():
        plan = book.renovations.get(grass.renovation)
        if plan is not None and plan.window == ANY_TIME:
            yield Finding(book.where("grasses", id, "renovation"), f"'{grass.renovation}' is for any growing weather, so it has no window of its own",
                          "name the plan of its renovation, or give that one a window")


CHECK = Check("own-window", "The plan that a grass follows has a window of the year.", ("grasses", "renovations"), _check)
