"""No record is there twice: under the same name, the same scientific name, the same names in a country, or word for word."""

from collections.abc import Hashable, Iterator
from typing import Any

from generator.book.book import OF_PRACTICE, PartialBook
from generator.book.loading.whole_book import NAMES
from generator.book.records import KINDS
from generator.checks.check import Check
from generator.findings import Finding, Where, shown

Path = tuple[str | int, ...]


def _check(book: PartialBook) -> Iterator[Finding]:
    for kind in (*KINDS, "sources"):
        yield from _twins(kind, [(id, record, (kind, id)) for id, record in book.of(kind).items()], book)
    for table in OF_PRACTICE:
        yield from _twins(table, [(id, record, ("practice", "practice", table, id)) for id, record in book.of(table).items()], book)


def _twins(kind: str, records: list[tuple[str, Any, Path]], book: PartialBook) -> Iterator[Finding]:
    """The second of two that are one, with the place of the first; each is told once, by the plainest of what they share."""
    first: dict[Hashable, tuple[str, Where]] = {}
    for id, record, home in records:
        told = False
        for path, what, sign in _signs(kind, record):
            here = book.where(*(str(step) for step in home[:2]), *home[2:], *path)
            twin, there = first.setdefault((what, sign), (id, here))
            if twin != id and not told:
                told = True
                where = f"{there.path}:{there.line}"
                yield Finding(here, f"{_a(kind)} has the same {what} as '{twin}' in {where}", _instead(kind, what, shown(twin)))


def _signs(kind: str, record: Any) -> Iterator[tuple[Path, str, Hashable]]:
    """What two records of a kind never share: its path, what to call it, and the thing itself."""
    if kind == "places":
        yield ("name",), "name and region", (record.name.casefold(), record.region.casefold(), record.country)
        yield ("latitude_deg",), "months at the same spot", (record.latitude_deg, record.longitude_deg, record.normals.mean_maximum_c, record.normals.rain_mm)
    elif kind == "answers":
        yield ("question",), "question", record.question.casefold()
    elif kind == "steps":
        pass  # A shared step may bear a common title, such as the mowing of every plan.
    elif kind == "sources":
        pass  # Two texts may bear one title: the file says what else differs.
    else:
        yield ("name",), "name", record.name.casefold()
    if kind == "grasses":
        yield ("botanical_name",), "scientific name", " ".join(record.botanical_name.casefold().split())
        for country, names in record.names.items():
            if names:
                yield ("names", country), f"names in {country}", frozenset(name.casefold() for name in names)
    yield (), "content", record.model_dump_json(exclude={"name", "question"})


def _a(kind: str) -> str:
    return f"this {NAMES[kind]}"


def _instead(kind: str, what: str, twin: str) -> str:
    if what == "content":
        return f"take one of the two out, and name '{twin}' wherever this one is named"
    return f"give this one what is its own, or take it out if it is '{twin}'"


CHECK = Check("twin-records", "No record is there twice.", (*KINDS, "sources", "practice"), _check)
