"""Slips of the hand that YAML reads as something else, or calls something else: each is named for what it is, where it stands.

Marks that a merge leaves, hard blanks, tabs in an indent, curly quotes in place of straight ones, and ` #`, which begins a comment
in the middle of a sentence.
"""

import re
from collections.abc import Iterator
from itertools import islice

from generator.findings import MOST_TOLD, Finding, Where, shown

_MERGE = re.compile(r"^(<{7}|={7}|>{7}|\|{7})(?= |\r?$)", re.MULTILINE)
_MERGE_IN_PROSE = re.compile(r"^(<{7}|>{7})(?= )", re.MULTILINE)  # In Markdown a line of equals signs makes a heading.
_TAB_IN_INDENT = re.compile(r"^ *(\t)", re.MULTILINE)
# Blanks that look like a plain one and are none, to YAML and to whoever searches: their numbers, and what they are called.
HARD_BLANKS = dict.fromkeys(range(0x2000, 0x200B), "a space of another width") | {
    0xA0: "a hard space", 0x1680: "a wide space", 0x202F: "a narrow hard space", 0x205F: "a thin space", 0x3000: "a wide space",
}  # fmt: skip
_HARD_BLANK = re.compile("[" + "".join(map(chr, HARD_BLANKS)) + "]")
TO_PLAIN = dict.fromkeys(HARD_BLANKS, " ")
CURLY = "“”„‟‘’‚‛"
_CURLY_VALUE = re.compile(rf"^ *(?:- +)*(?:[\w.-]+: +)?(?:- +)*([{CURLY}])")
# After the value: a blank, '#', and what the comment says.
_COMMENT = re.compile(r"(?P<blanks>[ \t]+)#(?P<says>[^\n\r]*)")
_CUT_LINE = re.compile(r"^ *(?:- +)*(?:[\w.-]+: +)?(?P<text>[^\s'\"#\[\]{}|>&*!%@`][^\n]*?)(?P<rest>[ \t]+#[^\n]*)$")
_ENDED = (".", "!", "?", ":", ";", "…")
_SENTENCE_WORDS = 4


def line_slips(text: str, path: str) -> tuple[list[Finding], list[Finding]]:
    """What is wrong with lines as they stand: what keeps the file from being read, and what does not."""
    stops = [
        Finding(_place(text, mark.start(), path), f"'{mark[1]}' is a mark that an unfinished merge left here",
                "keep one of the two versions, and take the marks out") for mark in _first(_MERGE, text)
    ]  # fmt: skip
    stops += [Finding(_place(text, tab.start(1), path), "there is a tab in the indent", "indent with two spaces") for tab in _first(_TAB_IN_INDENT, text)]
    others = [
        Finding(_place(text, blank.start(), path), f"{HARD_BLANKS[ord(blank[0])]} (U+{ord(blank[0]):04X}) is here", "write a plain space in its place")
        for blank in _first(_HARD_BLANK, text)
    ]
    return sorted(stops), others


def _first(pattern: re.Pattern[str], text: str) -> Iterator[re.Match[str]]:
    """As many as are told of one file, and one more."""
    return islice(pattern.finditer(text), MOST_TOLD + 1)


def merge_marks(text: str, path: str) -> list[Finding]:
    """Marks of an unfinished merge in a page written by hand."""
    return line_slips(text, path)[0] if _MERGE_IN_PROSE.search(text) else []


def curly_quote(where: Where, sign: str) -> Finding:
    """A value or a key that begins with a curly quote, which is a letter like any other to YAML."""
    return Finding(where, f"a curly quote ({sign}) begins this, and YAML knows straight ones only",
                   "write ' or \" in its place; a text that shows curly quotes goes whole into straight ones")


def cut_sentence(where: Where, text: str, rest: str) -> Finding | None:
    """What ` #` after a value cuts off a sentence; None for an honest comment. where: the place just after the value. rest: of its line."""
    comment = _COMMENT.match(rest)
    if comment is None or not re.search(r"[^\W\d_]", text):
        return None
    says = comment["says"]
    if " " not in text.strip() and not says[:1].isdigit():
        return None  # A word or a number, with a remark.
    goes_on = len(text.split()) >= _SENTENCE_WORDS and not text.endswith(_ENDED) and len(comment["blanks"]) == 1
    if says[:1].isalnum() or (goes_on and (says.strip()[:1].islower() or says.strip()[:1].isdigit())):
        return Finding(where.moved(len(comment["blanks"])), f"'#' after a blank begins a comment, and cuts the text off after '{shown(text.split()[-1])}'",
                       "put the whole text in quotes; a comment goes on a line of its own")
    return None


def behind_a_failure(lines: list[str], told: Finding) -> list[Finding]:
    """Slips that make the YAML reader give up, found in the lines: all curly quotes, else a cut in the line that it names or the one before."""
    path = told.where.path
    curly = [curly_quote(Where(path, number, begun.start(1) + 1), begun[1]) for number, line in enumerate(lines, 1) if (begun := _CURLY_VALUE.match(line))]
    if curly:
        return curly
    for number in _and_before(lines, told.where.line):
        line = _CUT_LINE.match(lines[number - 1])
        if line and (cut := cut_sentence(Where(path, number, line.end("text") + 1), line["text"], line["rest"])):
            return [cut]
    return []


def _and_before(lines: list[str], number: int) -> Iterator[int]:
    """A line, and the last one with text before it. Lines count from 1."""
    yield min(number, len(lines))
    yield from [each for each in range(number - 1, 0, -1) if lines[each - 1].strip()][:1]


def _place(text: str, index: int, path: str) -> Where:
    return Where(path, text.count("\n", 0, index) + 1, index - text.rfind("\n", 0, index))
