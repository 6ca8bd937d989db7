"""Conditions that authors write: a yes-or-no name may stand alone in one, as in `renovation_window and not wet`."""

import re
from collections.abc import Callable, Iterable
from functools import lru_cache

from generator.formula import Formula, FormulaError, parse

_ASKED = " > 0)"


@lru_cache(maxsize=64)
def _standing_alone(flags: frozenset[str]) -> re.Pattern[str]:
    return re.compile(rf"\b({'|'.join(sorted(flags))})\b(?! *[<>=!])") if flags else re.compile(r"(?!)")


def parse_condition(text: str, flags: Iterable[str], checked: Callable[[Formula], None]) -> Formula:
    """The formula of a condition in which each of `flags`, 1 for yes and 0 for no, may stand alone.

    checked: raises FormulaError for a formula that does not suit. Raises FormulaError, its offset counted in `text`, for that
    and for what cannot be read.
    """
    alone = _standing_alone(frozenset(flags))
    found = list(alone.finditer(text))
    try:
        formula = parse(alone.sub(rf"(\1{_ASKED}", text))
        checked(formula)
    except FormulaError as error:
        raise FormulaError(_as_written(error.offset, found, len(text)), error.what, error.instead) from error
    return formula


def _as_written(offset: int, flags: list[re.Match[str]], length: int) -> int:
    """An offset in the spelt-out text, counted in the author's."""
    added = 0
    for flag in flags:
        if flag.start() + added >= offset:
            break
        added += min(len(_ASKED) + 1, max(1, offset - flag.end() - added))
    return max(0, min(offset - added, length))
