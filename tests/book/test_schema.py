"""The schemas in data/schema are those of the records, and each data file names its own."""

import json
import re
from pathlib import Path

from generator.book.json_schema import schemas
from generator.book.records import KINDS, SINGULAR

DATA = Path(__file__).parents[2] / "data"


def test_committed_schemas_are_the_records_schemas() -> None:
    committed = {file.name: file.read_text(encoding="utf-8") for file in (DATA / "schema").iterdir()}
    assert committed.keys() == schemas().keys()
    for name, text in schemas().items():
        assert committed[name] == text, f"{name} is not the record's: run `swardbook schema`"


def test_each_data_file_names_its_schema_in_its_first_line() -> None:
    files = list(DATA.rglob("*.yml"))
    assert files
    for file in files:
        first = file.read_text(encoding="utf-8").splitlines()[0]
        named = re.fullmatch(r"# yaml-language-server: \$schema=(\S+)", first)
        assert named, f"{file.relative_to(DATA)} does not name its schema"
        kind = SINGULAR.get(file.parent.name, file.stem)
        assert (file.parent / named[1]).resolve() == DATA / "schema" / f"{kind}.schema.json", file


def test_a_schema_describes_its_keys_and_refuses_others() -> None:
    grass = json.loads(schemas()["grass.schema.json"])
    assert grass["else"]["properties"]["habit"]["enum"] == ["above ground", "above and below ground", "below ground", "bunch"]
    assert grass["properties"]["summary"]["description"]
    assert grass["additionalProperties"] is False
    assert set(KINDS) == set(SINGULAR)
