"""A file of somebody else's as lines of text, or why it is none; and a line as its values."""

import csv
import stat
from dataclasses import dataclass
from pathlib import Path

from generator.book.lists.csv_reading import SEPARATORS, cells
from generator.findings import Finding, Where

LARGEST_BYTES = 64_000_000  # Fifty years of days have one to six.
MOST_LINES = 400_000  # A file of one reading a line, of a hundred years and a dozen elements.
BLANKS = " "  # What parts the values of a file that is laid out by blanks.
_BEGINNING = 4096


def daily_lines(file: Path, name: str) -> tuple[list[str], list[Finding]]:
    """The lines of a file without their ends; none when the findings say why. name: how findings call it."""
    where = Where(name)
    try:
        state = file.stat()
        if not stat.S_ISREG(state.st_mode):  # A pipe that nobody writes into would be waited for without end.
            return [], [Finding(where, "this is not a file", "save the record as a file and name that")]
        if state.st_size > LARGEST_BYTES:
            return [], [Finding(where, f"the file is larger than {LARGEST_BYTES // 1_000_000} MB", "take the days of one station only")]
        raw = file.read_bytes()
    except OSError as error:
        return [], [Finding(where, f"the file cannot be read ({error.strerror})", "check its name and its permissions")]
    if raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        text = raw.decode("utf-16", errors="replace")
    elif b"\0" in raw[:_BEGINNING]:
        return [], [Finding(where, "this is no text", "save the days as CSV; a spreadsheet or a zip has to be opened first")]
    else:
        try:
            text = raw.decode("utf-8").removeprefix("\ufeff")
        except UnicodeDecodeError:
            text = raw.decode("latin-1")  # Older files of several services; only the sign of a degree lies outside ASCII.
    lines = text.splitlines()
    if not any(line.strip() for line in lines):
        return [], [Finding(where, "the file is empty", "it needs a line for each day, with its maximum, minimum and rain")]
    if len(lines) > MOST_LINES:
        return [], [Finding(where, f"the file has more than {MOST_LINES} lines", "take the days of one station only")]
    return lines, []


def values_of(line: str, separator: str) -> list[str]:
    """The values of a line, without the blanks around them."""
    if separator == BLANKS:
        return line.split()
    if '"' in line:
        line = line.strip()
        try:
            return [value.strip() for value in next(csv.reader([line], delimiter=separator, skipinitialspace=True), [])]
        except csv.Error:
            pass
    return [value.strip() for value in line.split(separator)]


def separators_of(line: str) -> list[str]:
    """What may part the values of a line, likeliest first."""
    found = sorted((sign for sign in SEPARATORS if sign in line), key=line.count, reverse=True)
    return [*found, BLANKS]


@dataclass(frozen=True)
class LineAt:
    """A line of a file, for a finding in it: its number counts from 1."""

    path: str
    number: int
    text: str
    separator: str

    def where(self, value: int = 0) -> Where:
        """Where the value of that number, from 0, begins."""
        if self.separator == BLANKS:
            at = 0
            for each in self.text.split()[:value]:
                at = self.text.index(each, at) + len(each)
            return Where(self.path, self.number, at + len(self.text[at:]) - len(self.text[at:].lstrip()) + 1)
        row = next(cells(self.text, self.path, self.separator), [])
        column = row[value].where.column if value < len(row) else 1
        return Where(self.path, self.number, column)
