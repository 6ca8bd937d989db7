"""A first look at a formula's text: length, characters, brackets, signs of another language."""

import re

from generator.formula.nodes import FormulaError

LONGEST = 400
DEEPEST = 60
ALLOWED = "use numbers, names, + - * / **, comparisons, and/or/not, 'a if c else b' and functions"

_STRANGER = re.compile(r"[^A-Za-z0-9_+\-*/().,<>=! ]")
_INSTEAD_OF = {
    "×": "write '*'",
    "·": "write '*'",
    "÷": "write '/'",
    "−": "write a plain '-'",
    "–": "write a plain '-'",
    "^": "write '**' for a power",
    "²": "write '**2'",
    "³": "write '**3'",
    "≤": "write '<='",
    "≥": "write '>='",
    "≠": "write '!='",
    "%": "give the value a unit of % instead: 46 % is 0.46 in a formula",
    "\n": "write the formula on one line",
    "\r": "write the formula on one line",
    "&": "write 'and'",
    "|": "write 'or'",
}


def screen(text: str) -> None:
    """FormulaError for text that cannot be a formula, whatever its grammar."""
    if not text.strip():
        raise FormulaError(0, "the formula is empty", "write an expression such as area * rate")
    if len(text) > LONGEST:
        what = f"the formula has {len(text)} characters"
        raise FormulaError(LONGEST, what, f"keep it under {LONGEST}, naming a step on the way")
    stranger = _STRANGER.search(text)
    if stranger:
        character = stranger.group()
        instead = _INSTEAD_OF.get(character, ALLOWED)
        shown = character if character.isprintable() else f"U+{ord(character):04X}"
        raise FormulaError(stranger.start(), f"'{shown}' has no place in a formula", instead)
    single = re.search(r"(?<![<>=!])=(?!=)", text)
    if single:
        what = "'=' does not compare"
        raise FormulaError(single.start(), what, "write '==' to compare, or leave the name out")
    _screen_brackets(text)
    if "//" in text:
        raise FormulaError(text.index("//"), "'//' is not a division here", "use floor(a / b)")


def _screen_brackets(text: str) -> None:
    opened: list[int] = []
    for offset, character in enumerate(text):
        if character == "(":
            opened.append(offset)
        elif character == ")" and not opened:
            raise FormulaError(offset, "')' closes nothing", "take it out, or open it before")
        elif character == ")":
            opened.pop()
        if len(opened) > DEEPEST:
            what = f"brackets are nested more than {DEEPEST} deep"
            raise FormulaError(offset, what, "split the formula in two")
    if opened:
        raise FormulaError(opened[-1], "'(' is never closed", "close it with ')'")


def unreadable(text: str, offset: int) -> FormulaError:
    """The error for text that stops being arithmetic at `offset`."""
    offset = min(offset, len(text))
    rest = text[offset:].strip()
    if not rest:
        return FormulaError(offset, "the formula breaks off", "finish it, or close its brackets")
    what = f"the formula cannot be read at '{rest[:20]}'"
    return FormulaError(offset, what, "look for a missing sign, name or bracket")
