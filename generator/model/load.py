"""One YAML file into one record, or into findings: never a traceback."""

import re
from functools import cache
from pathlib import Path
from typing import Any

from pydantic import TypeAdapter, ValidationError

from generator.findings import Finding, Where
from generator.model.sentences import record_findings
from generator.model.tree import Node, read_tree

LARGEST_FILE_BYTES = 1_000_000  # A generous record has 30 kB.

# What YAML may not hold, save for line breaks and tabs.
_CONTROL = re.compile(r"[^\t\n\r\x20-\x7e\x85\xa0-\ud7ff\ue000-\ufefe\uff00-\ufffd\U00010000-\U0010ffff]")


def load_record(file: Path, path: str, hint: Any) -> tuple[Any, Node | None, list[Finding]]:
    """The record in a file, its marked tree, and what is wrong with it.

    file: where it lies on the disk; path: how findings name it, from the book's folder.
    hint: the record's class, or dict[...] of records.
    The record is None when there is any finding; the tree is None when the file is not YAML.
    """
    text, findings = read_text(file, path)
    if text is None:
        return None, None, findings
    root, findings = read_tree(text, path)
    if root is None:
        if not findings:
            findings = [Finding(Where(path), "the file is empty", "write the record's keys, or delete the file")]
        return None, None, findings
    try:
        record = _adapter(hint).validate_python(root.plain(), strict=True)
    except ValidationError as error:
        findings.extend(record_findings(error.errors(include_url=False), root, hint))
        return None, root, findings
    return (None if findings else record), root, findings


def read_text(file: Path, path: str) -> tuple[str | None, list[Finding]]:
    """The text of a file, or None and the one reason why it cannot be read."""
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
    if bad := _CONTROL.search(text):
        where = _place(text[: bad.start()], path)
        return None, [Finding(where, f"an invisible control character (U+{ord(bad[0]):04X}) stands here", "delete it")]
    return text, []


def _place(before: str, path: str) -> Where:
    """The place just after `before`."""
    return Where(path, before.count("\n") + 1, len(before) - before.rfind("\n"))


@cache
def _adapter(hint: Any) -> TypeAdapter:
    return TypeAdapter(hint)
