"""A list of lawns to plan together: a CSV or YAML file of the practice's own, outside the book, with clients by code only."""

import re
from pathlib import Path

from pydantic import Field, ValidationError
from pydantic_core import ErrorDetails

from generator.book.fields.sourced import Record
from generator.book.fields.texts import Identifier
from generator.book.lists.csv_reading import COMMA, Cell, header_findings, list_name, read_table, too_many, unreadable
from generator.book.lists.lawn_code import NAMES_NOBODY
from generator.book.lists.lawn_file import read_lawn_file
from generator.book.loading.load import load_record
from generator.findings import Finding, Where, shown

CODE = r"[A-Za-z0-9][A-Za-z0-9-]*"


class Lawn(Record):
    """One lawn. Everything is text, as a spreadsheet has it; what it means is read with its units."""

    client: str = Field(min_length=1, max_length=24, description="The client's code, never a name.")
    grass: Identifier
    place: Identifier
    area: str = Field(description="With its unit: '240 m2'.")
    site: Identifier = Field(default="open", description="open, wall, hollow, shade or exposed.")
    plan: Identifier | None = Field(default=None, description="The plan; the grass's own where left out.")
    on: str | None = Field(default=None, description="Day of the job, such as 2026-10-12; the round's own where left out.")
    town: str | None = Field(default=None, max_length=60, description="Part of town; a day goes through one part before the next.")
    travel: str | None = Field(default=None, description="To get there from the lawn before it, with its unit: '15 min'.")

    @property
    def names_nobody(self) -> bool:
        """False for a client that is more than a code."""
        return re.fullmatch(CODE, self.client) is not None


NEEDED = [name for name, field in Lawn.model_fields.items() if field.is_required()]
# What a person can drive round in a season; each lawn is a job that is worked out (our limit).
MOST_LAWNS = 2000

Lawns = list[tuple[Lawn, Where]]


def read_lawns(file: Path, separator: str | None = None) -> tuple[Lawns, list[Finding]]:
    """Every lawn of a file with where it stands, and what is wrong, all of it.

    A table where a separator is given or the file's name ends in .csv, the lawns that a reader keeps where it ends in .json, YAML otherwise.
    """
    if separator is not None or file.suffix.lower() == ".csv":
        lawns, findings = _read_table(file, separator or COMMA)
    else:
        lawns, findings = _read_kept(file) if file.suffix.lower() == ".json" else _read_yaml(file)
    name = Where(list_name(file))
    if not lawns and not findings and file.suffix.lower() != ".json":
        return [], [Finding(name, "the list has no lawns", "write a line for each, with its client's code, grass, place and area")]
    if len(lawns) > MOST_LAWNS:
        return [], [Finding(name, f"the list has {len(lawns)} lawns", f"split it into lists of at most {MOST_LAWNS}"), *findings]
    return lawns, findings


def _read_yaml(file: Path) -> tuple[Lawns, list[Finding]]:
    if wrong := unreadable(file):
        return [], [wrong]
    lawns, root, findings = load_record(file, list_name(file), tuple[Lawn, ...])
    if lawns is None or root is None:
        return [], findings
    return [(lawn, root.children[number].where) for number, lawn in enumerate(lawns)], findings


def _read_kept(file: Path) -> tuple[Lawns, list[Finding]]:
    """Each lawn with the plan and the day of its latest job; one that has a year of visits and no job has only those in a round."""
    found, findings = read_lawn_file(file)
    lawns: Lawns = []
    for each in found:
        job = each.jobs[0] if each.jobs else None
        if job is None and each.lawn.programme:
            continue
        area = job.typed or f"{job.area!r} m2" if job else each.lawn.area
        if area is None:
            findings.append(Finding(each.where, f"lawn '{each.lawn.code}' has no area", "measure it, and write the area on the page of lawns"))
            continue
        lawn = Lawn(
            client=each.lawn.code, grass=each.lawn.grass, place=each.lawn.place, area=area, site=each.lawn.site,
            plan=job.plan if job else None, on=job.on if job else None, town=each.lawn.town, travel=each.lawn.travel,
        )
        lawns.append((lawn, each.where))
    return lawns, findings


def _read_table(file: Path, separator: str) -> tuple[Lawns, list[Finding]]:
    rows, findings = read_table(file, separator)
    findings = findings or header_findings(rows, Lawn.model_fields, NEEDED, separator)
    if findings:
        return [], findings
    names, lawns = [cell.value for cell in rows[0]], []
    for row in rows[1:]:
        if wrong := too_many(row, names):
            findings.append(wrong)
            continue
        given = {name: cell for name, cell in zip(names, row, strict=False) if cell.value}
        try:
            lawns.append((Lawn.model_validate({name: cell.value for name, cell in given.items()}), row[0].where))
        except ValidationError as error:
            findings += [_wrong(given, row[0].where, each) for each in error.errors(include_url=False)]
    return lawns, findings


def _wrong(given: dict[str, Cell], row: Where, error: ErrorDetails) -> Finding:
    name = str(error["loc"][0])
    if name not in given:
        return Finding(row, f"'{name}' is empty", "fill it in")
    cell = given[name]
    if name == "client":
        return Finding(cell.where, f"'{shown(cell.value)}' is too long for a client's code", NAMES_NOBODY)
    return Finding(cell.where, f"'{shown(cell.value)}' is not an id", "use small letters, digits and single hyphens")
