"""JSON Schemas from the records, so that an editor completes and checks an author's YAML."""

import json
from functools import cache
from typing import Any

from pydantic import TypeAdapter

from generator.book.fields.numbers import BESIDE_UNIT, FIGURE, QUANTITY, REFERS, SIGNED, WHY
from generator.book.lists.lawn_file import LawnFile
from generator.book.loading.folders import SINGLES
from generator.book.overlay.extending import EXTENDS
from generator.book.records import KINDS, SINGULAR
from generator.units import Unit, bounds_of, units

# What readers keep outside the book, and the command line reads: a schema of the site, not of the data folder.
EXTENDS_MEANS = "Id of a shared record of this kind: this file says only what differs. An empty value takes a key out; a list can be given as add, without, change."
LAWN_FILE_SCHEMA = "lawns.schema.json"
DIALECT = "https://json-schema.org/draft/2020-12/schema"


@cache
def schemas() -> dict[str, str]:
    """File name in data/schema -> the schema's text, for every kind of record and every single file."""
    texts = {SINGULAR[kind]: _text(record, may_extend=True) for kind, record in KINDS.items()}
    texts |= {name.removesuffix(".yml"): _text(hint) for name, hint in SINGLES.items()}
    return {QUANTITY: _bounds_text(), **{f"{name}.schema.json": text for name, text in texts.items()}}


def data_of(schema: str) -> str:
    """'grass.schema.json' -> 'grasses': the kind or the single file whose records a schema describes."""
    name = schema.removesuffix(".schema.json")
    return {singular: kind for kind, singular in SINGULAR.items()}.get(name, name)


def lawn_file_schema() -> str:
    return _text(LawnFile)


def _bounds_text() -> str:
    """For each unit, a line, what the numbers that stand beside it may be. The records' schemas refer to it, so that it is written once."""
    about = "What numbers beside a unit may be: a figure of the trade, and what may also be less than nothing."
    head = json.dumps({"$schema": DIALECT, "title": "Quantity", "description": about})
    parts = []
    for name, signed in ((FIGURE, False), (SIGNED, True)):
        lines = ",\n".join(json.dumps(_of_unit(known, signed), ensure_ascii=False) for known in units().values())
        parts.append(f'"{name}": {{"allOf": [\n{lines}\n]}}')
    return head[:-1] + ',\n"$defs": {\n' + ",\n".join(parts) + "\n}}\n"


def _of_unit(known: Unit, signed: bool) -> dict[str, Any]:
    sized = bounds_of(known, signed)
    limits = {"minimum": sized.lowest, "maximum": sized.highest}
    number = {**limits, "items": limits}
    return {
        "if": {"properties": {"unit": {"const": known.spelling}}, "required": ["unit"]},
        "then": {"patternProperties": {f"^({'|'.join(BESIDE_UNIT)})$": number}},
    }


def _text(hint: Any, may_extend: bool = False) -> str:
    schema = {"$schema": DIALECT} | TypeAdapter(hint).json_schema()
    _say_why(schema)
    if may_extend:
        _let_extend(schema)
    text = json.dumps(schema, indent=1, ensure_ascii=False) + "\n"
    for part in (FIGURE, SIGNED):
        text = text.replace(f'"{REFERS}": "{part}"', f'"$ref": "{QUANTITY}#/$defs/{part}"')
    return text


def _let_extend(schema: dict[str, Any]) -> None:
    """A record that lies over a shared one says only what differs, whatever is written under its keys; any other is whole."""
    whole = {key: schema.pop(key) for key in ("properties", "required") if key in schema}
    named = {key: {"description": field["description"]} if "description" in field else {} for key, field in whole["properties"].items()}
    schema["properties"] = {EXTENDS: {"type": "string", "description": EXTENDS_MEANS}, **named}
    schema |= {"if": {"required": [EXTENDS]}, "else": whole}


def _say_why(schema: Any) -> list[str]:
    """Puts the limits and their reason into the description of each key, where an editor shows them; returns what its key is still to say."""
    if isinstance(schema, list):
        return [why for member in schema for why in _say_why(member)]
    if not isinstance(schema, dict):
        return []
    for key in ("properties", "$defs"):
        for member in schema.get(key, {}).values():
            whys = _say_why(member)
            if whys and key == "properties":
                member["description"] = " ".join([*([member["description"]] if "description" in member else []), *dict.fromkeys(whys)])
    own = [schema.pop(WHY)] if WHY in schema else []
    return own + [why for key, member in schema.items() if key not in ("properties", "$defs") for why in _say_why(member)]
