"""Reasons in words: a code and its numbers become a sentence, with each quantity in both systems."""

import re
from collections.abc import Iterable, Iterator
from functools import cache, lru_cache
from typing import Any

from generator.season.calendar_days import day_words
from generator.season.reasons import Day, NumberSaid, Reason, Several
from generator.words.figures import US_TWIN, converted, range_words, unit_words
from generator.words.sentences import SENTENCES

# Plain words, or a list of words and of [metric, US] pairs: what the part `words` lays out.
Text = str | list[Any]
Pair = list[str]
_PLACE = re.compile(r"\{([a-z_]+)\}")
QUARTERS_FROM_IN = 2
_DEGREES = {"°F": "z.0f", "°F difference": "g"}


def said(reason: Reason | Several) -> Text:
    """A reason as the page lays it out: words, and pairs of metric and US where a quantity reads differently."""
    return joined(_pieces(reason))


def in_one(*texts: Text) -> Text:
    """Several texts as one."""
    return joined(piece for each in texts for piece in ([each] if isinstance(each, str) else each))


def joined(pieces: Iterable[str | Pair]) -> Text:
    """Neighbouring words as one piece, and plain words where there is no pair among them."""
    found: list[str | Pair] = []
    for piece in pieces:
        if isinstance(piece, str) and found and isinstance(found[-1], str):
            found[-1] += piece
        elif piece:
            found.append(piece)
    return found if any(isinstance(piece, list) for piece in found) else "".join(map(str, found))


def text(reason: Reason | Several, us: bool = False) -> str:
    """A reason as one line, for a terminal or a file. us: in US units."""
    return plain(said(reason), us)


def plain(words: Text, us: bool = False) -> str:
    """A page's text as one line, in metric or US units."""
    return words if isinstance(words, str) else "".join(piece if isinstance(piece, str) else piece[us] for piece in words)


def sentence(words: Text) -> Text:
    """With a capital at its head and a stop at its end."""
    if not words:
        return words
    pieces = [words] if isinstance(words, str) else list(words)
    if isinstance(pieces[0], str) and pieces[0]:
        pieces[0] = pieces[0][0].upper() + pieces[0][1:]
    if not (isinstance(pieces[-1], str) and pieces[-1].endswith((".", "!", "?"))):
        pieces = [*pieces[:-1], f"{pieces[-1]}."] if isinstance(pieces[-1], str) else [*pieces, "."]
    return pieces[0] if isinstance(words, str) else pieces


def _pieces(reason: Reason | Several) -> Iterator[str | Pair]:
    if isinstance(reason, Several):
        for index, each in enumerate(reason.reasons):
            if index:
                yield SENTENCES[reason.between]
            yield from _pieces(each)
        return
    for is_place, piece in _parted(reason.code):
        if not is_place:
            yield piece
            continue
        value = reason.values[piece]
        if isinstance(value, NumberSaid):
            yield _number(value)
        elif isinstance(value, Reason | Several):
            yield from _pieces(value)
        else:
            yield day_words(value.number) if isinstance(value, Day) else value


@cache
def _parted(code: str) -> tuple[tuple[bool, str], ...]:
    """A sentence as its words and its places, in order; whether each is a place."""
    return tuple((bool(index % 2), piece) for index, piece in enumerate(_PLACE.split(SENTENCES[code])) if piece)


@lru_cache(maxsize=65536)  # A few thousand numbers stand in all the reasons of a book.
def _number(number: NumberSaid) -> str | Pair:
    metric = _signed(f"{number.value:{number.shown}} {unit_words(number.unit)}".rstrip())
    twin = US_TWIN.get(number.unit)
    if twin is None:
        return metric
    value = converted(number.value, number.unit, twin)
    if twin in _DEGREES:
        return [metric, _signed(f"{value:{_DEGREES[twin]}} {unit_words(twin)}")]
    if twin == "in" and value >= QUARTERS_FROM_IN:
        value = round(value * 4) / 4  # Nobody measures a soil in eighths: 100 mm is 4 in.
    return [metric, range_words(value, value, twin)]


def _signed(words: str) -> str:
    """With a minus sign, as climates are printed."""
    return f"−{words[1:]}" if words.startswith("-") else words
