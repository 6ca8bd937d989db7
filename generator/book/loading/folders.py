"""Which files a book is made of, and what lies in data/ that should not."""

import os
import re
from pathlib import Path
from typing import Any

from generator.book.fields.texts import IDENTIFIER, Identifier
from generator.book.loading.disk import entries, finding_of, unfit
from generator.book.records import KINDS, MAY_BE_MISSING, SINGLE_FILES
from generator.book.records.place import Country, CountryCode
from generator.book.records.source import Source
from generator.book.renamed import FILES
from generator.findings import Finding, Where, shown, suggestion

SETTINGS = "mkdocs.yml"
SCHEMA_FOLDER = "schema"
# Files that hold a table of records, each under its id.
TABLES: dict[str, Any] = {"sources.yml": dict[Identifier, Source], "countries.yml": dict[CountryCode, Country]}
SINGLES: dict[str, Any] = {**SINGLE_FILES, **TABLES}

# Windows keeps these for devices, whatever their ending: a book must be copied there too.
_RESERVED = re.compile(r"con|prn|aux|nul|com[0-9]|lpt[0-9]")


def record_files(root: Path) -> tuple[list[tuple[str, str, Path, str]], list[Finding]]:
    """The files that hold one record each, as kind, id, file and path from the book, by file name."""
    data = root / "data"
    files: list[tuple[str, str, Path, str]] = []
    findings: list[Finding] = []
    if not data.is_dir():
        return files, findings
    if wrong := finding_of(data, root, "data"):
        return files, [wrong]
    for entry in entries(data):
        path = f"data/{shown(entry.name)}"
        if wrong := finding_of(entry, data, path):
            findings.append(wrong)
        elif entry.is_dir():
            if entry.name in KINDS:
                for file in entries(entry):
                    _sort_in(entry.name, file, f"{path}/{shown(file.name)}", files, findings)
            elif entry.name in SINGLES:
                findings.append(Finding(Where(path), f"'{entry.name}' is a folder", "write a file of this name"))
            elif entry.name != SCHEMA_FOLDER:
                findings.append(Finding(Where(path), f"unknown folder '{shown(entry.name)}' in data/",
                                        suggestion(entry.name, KINDS, f"the folders are: {', '.join(KINDS)}")))
        elif entry.name not in SINGLES:
            findings.append(Finding(Where(path), f"unknown file '{shown(entry.name)}' in data/", _right_name(entry)))
    return files, findings


def single_files(root: Path, over: bool = False) -> tuple[list[tuple[str, Path, str]], list[Finding]]:
    """The files a book has once, as name, file and path; and which are missing.

    over: the book lies over the shared knowledge, so that only what is its own has to be there.
    """
    data = root / "data"
    if not data.is_dir():
        return [], [Finding(Where("data"), "the folder data/ is missing", "name the folder that holds it with --book")]
    findings = []
    settings = root / SETTINGS
    if os.path.lexists(settings) and (wrong := finding_of(settings, root, SETTINGS)):
        findings.append(wrong)
    elif not settings.is_file():
        findings.append(Finding(Where("mkdocs.yml"), "the file mkdocs.yml is missing",
                                "copy one from another book; it names the site and its theme"))
    if unfit(data, root):  # Told among the records.
        return [], findings
    files = []
    for name in SINGLES:
        path = f"data/{name}"
        if os.path.lexists(data / name):
            if unfit(data / name, data) is None and (data / name).is_file():
                files.append((name.removesuffix(".yml"), data / name, path))
        elif name not in MAY_BE_MISSING and not over:
            findings.append(Finding(Where(path), f"the file {path} is missing", "copy one from another book and change it"))
    return files, findings


def _sort_in(kind: str, file: Path, path: str, files: list[tuple[str, str, Path, str]], findings: list[Finding]) -> None:
    name = shown(file.name)
    if wrong := finding_of(file, file.parent.parent, path):
        findings.append(wrong)
        return
    if file.is_dir():
        findings.append(Finding(Where(path), f"a folder '{name}' is inside data/{kind}", f"move its files up into data/{kind}"))
        return
    if file.suffix != ".yml":
        findings.append(Finding(Where(path), f"'{name}' is not a .yml file", _right_ending(file, kind)))
        return
    if not re.fullmatch(IDENTIFIER, file.stem) or len(file.stem) > 60:
        word = re.sub(r"[^a-z0-9]+", "-", file.stem.lower()).strip("-")[:60].strip("-") or "a-name"
        findings.append(Finding(Where(path), f"the file name '{name}' is not an id",
                                f"use small letters, digits and single hyphens, such as '{word}.yml'"))
        return
    if _RESERVED.fullmatch(file.stem):
        findings.append(Finding(Where(path), f"Windows keeps the name '{file.stem}' for itself", "choose another file name"))
        return
    files.append((kind, file.stem, file, path))


def _right_ending(file: Path, kind: str) -> str:
    if file.suffix.lower() in (".yaml", ".yml"):
        return f"rename it to '{shown(file.stem)}.yml'"
    return f"move it out of data/{kind}"


def _right_name(entry: Path) -> str:
    if entry.suffix.lower() in (".yaml", ".yml") and f"{entry.stem}.yml" in SINGLES:
        return f"rename it to '{entry.stem}.yml'"
    if entry.name in FILES:
        return f"rename it to '{FILES[entry.name]}', as it is called now"
    return suggestion(entry.name, SINGLES, f"the files are: {', '.join(SINGLES)}; a record goes into its kind's folder")
