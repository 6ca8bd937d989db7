"""JSON Schemas from the records, so that an editor completes and checks an author's YAML."""

import json
from typing import Any

from pydantic import TypeAdapter

from generator.model import KINDS, SINGULAR
from generator.model.folders import SINGLES

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def schemas() -> dict[str, str]:
    """File name in data/schema -> the schema's text, for every kind of record and every single file."""
    hints = {SINGULAR[kind]: record for kind, record in KINDS.items()}
    hints |= {name.removesuffix(".yml"): hint for name, hint in SINGLES.items()}
    return {f"{name}.schema.json": _text(hint) for name, hint in hints.items()}


def _text(hint: Any) -> str:
    schema = {"$schema": DIALECT} | TypeAdapter(hint).json_schema()
    return json.dumps(schema, indent=1, ensure_ascii=False) + "\n"
