"""Pages that list what the book knows: names by country, sources, the gallery of components."""

from collections import defaultdict
from typing import Any

from generator.model.book import Book
from generator.model.record import Sourced
from generator.pages.desk import COUNTRY_NAMES, Desk
from generator.pages.page import Page


def names_page(book: Book, desk: Desk) -> Page:
    """Glossary of names by country: grasses, then tasks."""
    groups = [
        {"id": "grasses", "title": "Grasses", "rows": [
            _name_row(grass.name, desk.links.grass(id), grass.names, grass.botanical_name) for id, grass in book.grasses.items()
        ]},
        {"id": "tasks", "title": "Tasks", "rows": [
            _name_row(task.name, desk.links.task(id), task.names, None) for id, task in book.tasks.items() if task.names
        ]},
    ]
    lead = "The same grass and the same job go by other names in other countries. Find yours here; search finds all of them."
    context = {"title": "Names by country", "lead": lead, "countries": list(COUNTRY_NAMES.values()), "groups": groups}
    return Page("names", "Names by country", "names", context, lead)


def _name_row(name: str, url: str, names: dict[str, tuple[str, ...]], botanical: str | None) -> dict[str, Any]:
    return {
        "name": name, "url": url, "botanical_name": botanical,
        "by_country": [{"country_name": COUNTRY_NAMES[code], "names": ", ".join(names.get(code, ())) or "–"} for code in COUNTRY_NAMES],
    }


def sources_page(book: Book, desk: Desk) -> Page:
    used = _uses(book)
    rows = [
        {
            "id": id, "label": source.label, "title": source.title, "organisation": source.organisation, "year": source.year,
            "where": source.where, "address": source.address, "read": source.read, "note": source.note,
            "attribution": source.attribution, "licence": source.licence,
            "used_by": [{"name": name, "url": desk.links.to(path)} for path, name in sorted(used[id])],
        }
        for id, source in book.sources.items()
    ]
    counts = {"published": len(rows), "read": sum(row["read"] for row in rows)}
    lead = "Every figure in this book names a source below, or says that it is common practice or an assumption."
    context = {"title": "Sources", "lead": lead, "rows": rows, "counts": counts}
    return Page("sources", "Sources", "sources", context, lead)


def _uses(book: Book) -> dict[str, set[tuple[str, str]]]:
    """Which pages take something from each source: id to (path, name)."""
    used: dict[str, set[tuple[str, str]]] = defaultdict(set)
    shelves = (
        ("grasses", book.grasses), ("tasks", book.tasks), ("cautions", book.cautions), ("aftercare", book.aftercare),
        ("calculators", book.calculators), ("problems", book.problems),
    )
    for folder, records in shelves:
        for id, record in records.items():
            for sourced in every_sourced(record):
                for source in sourced.sources:
                    used[source].add((f"{folder}/{id}", record.name))
    for hold in book.holds.values():
        for source in {source for sourced in every_sourced(hold) for source in sourced.sources}:
            used[source].update((f"tasks/{task}", book.tasks[task].name) for task in hold.tasks)
    for id, place in book.places.items():
        for source in filter(None, (place.normals.source, place.normals.rain_source)):
            used[source].add((f"places/{id}", place.name))
    return used


def every_sourced(value: Any):
    """Each sourced record inside a record, at any depth."""
    if isinstance(value, Sourced):
        yield value
    if isinstance(value, dict):
        for each in value.values():
            yield from every_sourced(each)
    elif isinstance(value, tuple | list):
        for each in value:
            yield from every_sourced(each)
    elif hasattr(type(value), "model_fields"):
        for name in type(value).model_fields:
            yield from every_sourced(getattr(value, name))


