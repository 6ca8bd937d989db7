"""season-groups.yml holds every rule the season engine reads."""

from collections.abc import Iterator
from difflib import get_close_matches
from typing import Any

from generator.checks.check import Check
from generator.findings import Finding
from generator.model.book import Book
from generator.model.record import ASSUMPTION, Figure
from generator.turf.inputs import engine_rules_of, grass_season_of
from generator.units import UnitError

_STAND_IN = Figure(use=1, unit="1", source=ASSUMPTION)


class _Asked(dict[str, Any]):
    """A dict that remembers what was asked of it, and answers what it lacks with a stand-in."""

    def __init__(self, known: dict[str, Any]) -> None:
        super().__init__(known)
        self.asked: list[str] = []

    def __getitem__(self, name: str) -> Any:
        self.asked.append(name)
        return super().get(name, _STAND_IN)


def _check(book: Book) -> Iterator[Finding]:
    groups = book.season_groups
    if groups is None:
        return
    rules = _Asked(groups.rules)
    sites = {name: _Asked(offsets) for name, offsets in groups.sites.items()}
    asking = groups.model_copy(update={"rules": rules, "sites": sites})
    try:
        engine_rules_of(asking)
        for id, grass in book.grasses.items():
            grass_season_of(id, grass, asking)
    except UnitError:
        return  # A unit that is none has its finding already, and the rest cannot be asked.
    yield from _compared(book, rules, "rules")
    for name, offsets in sites.items():
        yield from _compared(book, offsets, "sites", name)


def _compared(book: Book, read: _Asked, *place: str) -> Iterator[Finding]:
    missing = [name for name in dict.fromkeys(read.asked) if name not in read]
    for name in read:
        if name not in read.asked:
            near = get_close_matches(name, missing, n=1, cutoff=0.7)
            if near:  # One cause, one finding: it is misspelt, so the right one is not missing as well.
                missing.remove(near[0])
                yield Finding(book.where("season-groups", "season-groups", *place, name, "[key]"),
                              f"the season engine reads no '{name}'", f"did you mean '{near[0]}'?")
    for name in missing:
        yield Finding(book.where("season-groups", "season-groups", *place, "[key]"),
                      f"the season engine needs '{name}' under '{place[-1]}'", "add it, with its unit and source")


CHECK = Check(
    "season-rules", "season-groups.yml holds what the season engine reads.", ("season-groups",), _check
)
