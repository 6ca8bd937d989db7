"""The validated book as JSON, with a schema for each kind, for anyone who wants the data and not the pages."""

import json
from typing import Any

from generator.book.attribution import attribution, place_attribution
from generator.book.book import Book
from generator.book.editions import OWN, Edition
from generator.book.json_schema import LAWN_FILE_SCHEMA, data_of, lawn_file_schema, schemas
from generator.book.loading.folders import TABLES
from generator.book.records import KINDS, SINGLE_FILES

MARKER = "book/book.json"


def json_files(book: Book, seasons: dict[tuple[str, str], dict[str, Any]], edition: Edition = OWN) -> dict[str, str]:
    """Path in the site to JSON text. book: as this edition is told it; seasons: (grass id, place id) to the computed year."""
    kinds = [kind for kind in KINDS if edition.publishes(kind)]
    files = {f"book/schema/{name}": text for name, text in schemas().items() if edition.publishes(data_of(name))}
    if edition.has("jobs"):
        files[f"book/schema/{LAWN_FILE_SCHEMA}"] = lawn_file_schema()
    for kind in kinds:
        records = {id: record.model_dump(mode="json", exclude_none=True) for id, record in book.of(kind).items()}
        files[f"book/{kind}.json"] = _text({"attribution": attribution(book, book.places), "records": records} if kind == "places" else {"records": records})
    for table in (file.removesuffix(".yml") for file in TABLES):
        files[f"book/{table}.json"] = _text({"records": {id: each.model_dump(mode="json", exclude_none=True) for id, each in book.of(table).items()}})
    for file_name in SINGLE_FILES:
        name = file_name.removesuffix(".yml")
        record = book.single(name)
        if record is not None and edition.publishes(name):
            files[f"book/{name}.json"] = _text(record.model_dump(mode="json", exclude_none=True))
    for (grass, place), season in seasons.items():
        notes = place_attribution(book, place)
        files[f"book/seasons/{place}/{grass}.json"] = _text({"grass": grass, "place": place, "attribution": notes, **season})
    files[MARKER] = _text({
        "practice": book.practice.name, "invented": book.practice.invented, "public_address": book.practice.public_address,
        "kinds": {kind: len(book.of(kind)) for kind in kinds}, "seasons": len(seasons), "attribution": attribution(book, book.places),
    })
    return files


def _text(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
