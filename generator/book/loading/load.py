"""One YAML file into one record, or into findings: never a traceback."""

import re
from functools import cache
from itertools import islice
from pathlib import Path
from typing import Any

from pydantic import TypeAdapter, ValidationError

from generator.book.fields.characters import CONTROL, UNSEEN, said_of
from generator.book.loading.marked_yaml import Node, read_tree
from generator.book.loading.record_faults import record_findings
from generator.findings import MOST_TOLD, Finding, Where, first_told

LARGEST_FILE_BYTES = 1_000_000  # A generous record has 30 kB.


def load_record(file: Path, path: str, hint: Any) -> tuple[Any, Node | None, list[Finding]]:
    """The record in a file, its marked tree, and what is wrong with it.

    file: where it lies on the disk; path: how findings name it, from the book's folder.
    hint: the record's class, or dict[...] of records.
    The record is None when there is any finding; the tree is None when the file is not YAML.
    """
    root, findings = load_tree(file, path)
    if root is None:
        return None, None, findings
    record, wrong = checked(root, hint)
    findings.extend(wrong)
    return (None if findings else record), root, findings


def load_tree(file: Path, path: str) -> tuple[Node | None, list[Finding]]:
    """The marked tree of a file, None where it is not YAML, and what is wrong with it. What holds a value that was refused is still a tree."""
    text, findings = read_text(file, path, UNSEEN)
    if text is None:
        return None, findings
    root, findings = read_tree(text, path)
    findings = list(first_told(findings))
    if root is None and not findings:
        findings = [Finding(Where(path), "the file is empty", "write the record's keys, or delete the file")]
    return root, findings


def checked(root: Node, hint: Any) -> tuple[Any, list[Finding]]:
    """The record that a tree holds, or None and what is wrong with it; nothing is said of what reading refused."""
    if root.refused:
        return None, []
    try:
        return adapter(hint).validate_python(root.plain(), strict=True), []
    except ValidationError as error:
        return None, record_findings(error.errors(include_url=False), root, hint)


def read_text(file: Path, path: str, unfit: re.Pattern[str] = CONTROL) -> tuple[str | None, list[Finding]]:
    """The text of a file, or None and why it cannot be read. unfit: the signs that it may not hold."""
    try:
        if file.stat().st_size > LARGEST_FILE_BYTES:
            return None, [Finding(Where(path), f"the file is larger than {LARGEST_FILE_BYTES // 1000} kB",
                                  "keep one record to a file; pictures and tables of readings go elsewhere")]
        raw = file.read_bytes()
    except OSError as error:
        return None, [Finding(Where(path), f"the file cannot be read ({error.strerror})", "check its permissions")]
    if raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        return None, [Finding(Where(path), "the file is saved as UTF-16", "save it as UTF-8")]
    try:
        text = raw.decode("utf-8").removeprefix("\ufeff")  # Some editors write that mark; it does no harm.
    except UnicodeDecodeError as error:
        where = _place(raw[: error.start].decode("utf-8").removeprefix("\ufeff"), path)
        byte = f"{raw[error.start]:#04x}"
        return None, [Finding(where, f"the byte {byte} is not UTF-8 text", "save the file as UTF-8")]
    bad = [Finding(_place(text[: sign.start()], path), *said_of(sign[0])) for sign in islice(unfit.finditer(text), MOST_TOLD + 1)]
    return (None, list(first_told(bad))) if bad else (text, [])


def _place(before: str, path: str) -> Where:
    """The place just after `before`."""
    return Where(path, before.count("\n") + 1, len(before) - before.rfind("\n"))


@cache
def adapter(hint: Any) -> TypeAdapter[Any]:
    return TypeAdapter(hint)
