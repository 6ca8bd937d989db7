"""A table that somebody saved as comma-separated values (RFC 4180), read with the place of every value.

Lists of lawns and kept work records come from spreadsheets and other people's programs, so nothing in here may take them at their word.
"""

import re
import stat
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from pathlib import Path

from generator.book.lists.shielding import unshielded
from generator.book.loading.load import LARGEST_FILE_BYTES, read_text
from generator.findings import Finding, Where, one_line, shown, suggestion

COMMA = ","
SEPARATORS = {COMMA: "commas", ";": "semicolons", "\t": "tabs", "|": "upright bars"}
# How an option says them: a tab is hard to type.
SPELLED = {COMMA: COMMA, ";": ";", "\t": "tab", "|": "|"}
_LINE_END = re.compile(r"\r\n|\r|\n")
# Bytes that are looked at to tell text of two bytes a sign from text of one.
_BEGINNING = 64


@dataclass(frozen=True)
class Cell:
    """A value, where its first character stands, and whether the quote that it opens with is closed."""

    text: str
    where: Where
    closed: bool = True

    @property
    def value(self) -> str:
        """What was meant: without the shield of a spreadsheet and the blanks around it."""
        return unshielded(self.text).strip()


def list_name(file: Path) -> str:
    """How findings name a list: it lies outside the book, so its own name is enough."""
    return one_line(file.name)


def unreadable(file: Path) -> Finding | None:
    """Why a list cannot be read at all, before it is opened; None when it can be tried."""
    where = Where(list_name(file))
    try:
        state = file.stat()
        if not stat.S_ISREG(state.st_mode):  # A pipe that nobody writes into would be waited for without end.
            return Finding(where, "this is not a file", "save the list as a file and name that")
        if state.st_size > LARGEST_FILE_BYTES:
            return Finding(where, f"the list is larger than {LARGEST_FILE_BYTES // 1000} kB", "split it into several lists")
        with file.open("rb") as opened:
            beginning = opened.read(_BEGINNING)
    except OSError as error:
        return Finding(where, f"the list cannot be read ({error.strerror})", "check its name and its permissions")
    if not beginning.startswith((b"\xff\xfe", b"\xfe\xff")) and max(beginning[::2].count(0), beginning[1::2].count(0)) * 3 > len(beginning):
        return Finding(where, "the list is saved as UTF-16", "save it as UTF-8")
    return None


def read_table(file: Path, separator: str = COMMA) -> tuple[list[list[Cell]], list[Finding]]:
    """The rows of a file that are not blank, the header first; none when the findings say why it cannot be read."""
    if wrong := unreadable(file):
        return [], [wrong]
    text, findings = read_text(file, list_name(file))
    if text is None:
        return [], findings
    rows = [row for row in cells(text, list_name(file), separator) if any(cell.text.strip() for cell in row)]
    return rows, [] if rows else [Finding(Where(list_name(file)), "the file is empty", "write the names of the columns, and a line for each entry")]


def cells(text: str, path: str, separator: str = COMMA) -> Iterator[list[Cell]]:
    """The rows of a CSV text (RFC 4180), each value with the line and column of its first character.

    A line ends with LF, CR LF or, as old programs have it, CR. Blanks before an opening quote are passed over.
    """
    ends = re.compile(f"[{re.escape(separator)}\r\n]")
    row: list[Cell] = []
    at, line, start = 0, 1, 0
    while at < len(text):
        where = Where(path, line, at - start + 1)
        value, end, closed = _cell(text, at, ends)
        for line_end in _LINE_END.finditer(text, at, end):
            line, start = line + 1, line_end.end()
        row.append(Cell(value, where, closed))
        at = end
        if text[at : at + 1] == separator:
            at += 1
            if at < len(text):
                continue
            row.append(Cell("", Where(path, line, at - start + 1)))
        yield row
        row = []
        if at < len(text):
            at += 2 if text.startswith("\r\n", at) else 1
            line, start = line + 1, at


def _cell(text: str, at: int, ends: re.Pattern[str]) -> tuple[str, int, bool]:
    """The value that begins here, where it ends, and whether its quote is closed; one that never is takes the rest of the file."""
    quote = at
    while text[quote : quote + 1] == " ":
        quote += 1
    if text[quote : quote + 1] != '"':
        end = _end(text, at, ends)
        return text[at:end], end, True
    pieces, at = [], quote + 1
    while (close := text.find('"', at)) >= 0:
        pieces.append(text[at:close])
        if text[close + 1 : close + 2] != '"':
            end = _end(text, close + 1, ends)
            return "".join(pieces) + text[close + 1 : end], end, True
        pieces.append('"')
        at = close + 2
    return "".join(pieces) + text[at:], len(text), False


def _end(text: str, at: int, ends: re.Pattern[str]) -> int:
    found = ends.search(text, at)
    return found.start() if found else len(text)


def header_findings(rows: list[list[Cell]], columns: Collection[str], needed: Collection[str], separator: str) -> list[Finding]:
    """What is wrong with the names of the columns. rows: of the table, the header first; columns: names there may be."""
    header = rows[0]
    names = [cell.value for cell in header]
    other = _other_separator(header, columns, separator)
    if other:
        return [other]
    if len(header) > 2 * len(columns):
        return [Finding(header[len(columns)].where, f"the first line has {len(header)} values", f"the columns are: {', '.join(columns)}")]
    findings, seen = [], set()
    for cell, name in zip(header, names, strict=True):
        if name not in columns:
            findings.append(Finding(cell.where, f"unknown column '{shown(name)}'", suggestion(name, columns, f"the columns are: {', '.join(columns)}")))
        elif name in seen:
            findings.append(Finding(cell.where, f"the column '{name}' is here twice", "keep one of them"))
        seen.add(name)
    return findings + [Finding(header[0].where, f"the column '{name}' is missing", "add it to the first line") for name in needed if name not in seen]


def _other_separator(header: list[Cell], columns: Collection[str], separator: str) -> Finding | None:
    """The finding for a table whose values are parted by another sign than was said."""
    first = header[0]
    if first.value in columns:
        return None
    for sign, words in SEPARATORS.items():
        if sign != separator and any(name.strip(' "') in columns for name in first.text.split(sign)) and sign in first.text:
            instead = "leave --separator out" if sign == COMMA else f"use commas, or --separator '{SPELLED[sign]}'"
            return Finding(first.where.moved(first.text.index(sign)), f"this list is separated by {words}", instead)
    return None


def too_many(row: list[Cell], names: list[str]) -> Finding | None:
    """The finding for a line with more values than there are columns, or with a quote that swallows what follows it."""
    for cell in row:
        if not cell.closed:
            return Finding(cell.where, "the quote that opens here is never closed", "close it; a quote inside a value is written twice")
    if len(row) > len(names):
        return Finding(row[len(names)].where, "this line has more values than there are columns", "put values with a comma in quotes")
    return None
