"""A list of lawns to plan together: a CSV or YAML file of the practice's own, outside the book, with clients by code only."""

import csv
import re
from datetime import date
from io import StringIO
from pathlib import Path

from pydantic import Field, ValidationError

from generator.findings import Finding, Where, suggestion
from generator.model.load import load_record, read_text
from generator.model.record import Identifier, Record

CODE = r"[A-Za-z0-9][A-Za-z0-9-]*"
NAMES_NOBODY = "use letters, digits and hyphens only, such as 'TL-014'; a name or an address does not belong here"


class Lawn(Record):
    """One lawn. Everything is text, as a spreadsheet has it; what it means is read with its units."""

    client: str = Field(min_length=1, max_length=24, description="The client's code, never a name.")
    grass: Identifier
    place: Identifier
    area: str = Field(description="With its unit: '240 m2'.")
    site: Identifier = Field(default="open", description="open, wall, hollow, shade or exposed.")
    plan: Identifier | None = Field(default=None, description="The plan; the grass's own where left out.")
    on: str | None = Field(default=None, description="Day of the job, as 2026-10-12; the round's own where left out.")

    @property
    def names_nobody(self) -> bool:
        """False for a client that is more than a code."""
        return re.fullmatch(CODE, self.client) is not None

    @property
    def day(self) -> date | None:
        """The lawn's own day, or None. Raises ValueError for text that is no date."""
        return None if self.on is None else date.fromisoformat(self.on)


def read_lawns(file: Path) -> tuple[list[tuple[Lawn, Where]], list[Finding]]:
    """Every lawn of a file with where it stands, and what is wrong, all of it: CSV by its ending, YAML otherwise."""
    if file.suffix.lower() != ".csv":
        return _read_yaml(file)
    text, findings = read_text(file, file.name)
    return ([], findings) if text is None else _read_csv(text, file.name)


def _read_yaml(file: Path) -> tuple[list[tuple[Lawn, Where]], list[Finding]]:
    lawns, root, findings = load_record(file, file.name, tuple[Lawn, ...])
    if lawns is None:
        return [], findings
    return [(lawn, root.children[number].where) for number, lawn in enumerate(lawns)], findings


def _read_csv(text: str, path: str) -> tuple[list[tuple[Lawn, Where]], list[Finding]]:
    rows = csv.DictReader(StringIO(text), skipinitialspace=True)
    header = [name.strip() for name in rows.fieldnames or ()]
    findings = [
        Finding(Where(path), f"unknown column '{name}'", suggestion(name, Lawn.model_fields, f"the columns are: {', '.join(Lawn.model_fields)}"))
        for name in header if name not in Lawn.model_fields
    ]
    needed = [name for name, field in Lawn.model_fields.items() if field.is_required()]
    findings += [Finding(Where(path), f"the column '{name}' is missing", "add it to the first line") for name in needed if name not in header]
    if findings:
        return [], findings
    lawns = []
    for row in rows:
        where = Where(path, rows.line_num)
        given = {name.strip(): value.strip() for name, value in row.items() if name and isinstance(value, str) and value.strip()}
        if row.get(None):
            findings.append(Finding(where, "this line has more values than there are columns", "put values with a comma in quotes"))
            continue
        try:
            lawns.append((Lawn.model_validate(given), where))
        except ValidationError as error:
            findings += [_wrong(where, each) for each in error.errors(include_url=False)]
    return lawns, findings


def _wrong(where: Where, error: dict) -> Finding:
    name = str(error["loc"][0])
    if error["type"] == "missing":
        return Finding(where, f"'{name}' is empty", "fill it in")
    if name == "client":
        return Finding(where, f"'{error['input'][:24]}...' is too long for a client's code", NAMES_NOBODY)
    return Finding(where, f"'{error['input']}' is not an id", "use small letters, digits and single hyphens")
