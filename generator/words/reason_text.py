"""Reasons in words: a code and its numbers become a sentence, with each quantity in both systems: as people say it, or exactly."""

import re
from collections.abc import Iterable, Iterator
from functools import cache, lru_cache
from typing import Any

from generator.season.calendar_days import day_words
from generator.season.reasons import Day, NumberSaid, Reason, Several
from generator.words.figures import US_TWIN, converted, range_words, unit_words
from generator.words.rough_words import rough_share, rough_week
from generator.words.sentences import SENTENCES, Told

# Plain words, or a list of words and of [metric, US] pairs: what the part `words` lays out.
Text = str | list[Any]
Pair = list[str]
_PLACE = re.compile(r"\{([a-z_]+(?:\.when|\.about)?)\}")
QUARTERS_FROM_IN = 2
_DEGREES = {"°F": "z.0f", "°F difference": "g"}


def said(reason: Reason | Several, exactly: bool = False) -> Text:
    """A reason as the page lays it out: words, and pairs of metric and US where a quantity reads differently.

    exactly: with the numbers of weeks, shares and growth that decided, in place of what a person calls them.
    """
    return joined(_pieces(reason, exactly))


def said_exactly(reason: Reason | Several) -> Text:
    """A reason with every number that decided; empty where people are told just that anyway."""
    exact = said(reason, exactly=True)
    return "" if exact == said(reason) else exact


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


def text(reason: Reason | Several, us: bool = False, exactly: bool = True) -> str:
    """A reason as one line, for a terminal or a file. us: in US units. exactly: as in `said`."""
    return plain(said(reason, exactly), us)


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


def _pieces(reason: Reason | Several, exactly: bool) -> Iterator[str | Pair]:
    if isinstance(reason, Several):
        for index, each in enumerate(reason.reasons):
            if index:
                yield template(reason.between, exactly)
            yield from _pieces(each, exactly)
        return
    for is_place, piece in _parted(reason.code, exactly):
        if not is_place:
            yield piece
            continue
        name, _, way = piece.partition(".")
        value = reason.values[name]
        if isinstance(value, NumberSaid):
            yield _WAYS[way](value.value, exactly) if way else _number(value)
        elif isinstance(value, Reason | Several):
            yield from _pieces(value, exactly)
        else:
            yield day_words(value.number) if isinstance(value, Day) else value


_WAYS = {"when": rough_week, "about": rough_share}


def template(code: str, exactly: bool) -> str:
    """The sentence of a code, with its places still open."""
    sentence = SENTENCES[code]
    return sentence[exactly] if isinstance(sentence, Told) else sentence


@cache
def _parted(code: str, exactly: bool) -> tuple[tuple[bool, str], ...]:
    """A sentence as its words and its places, in order; whether each is a place."""
    return tuple((bool(index % 2), piece) for index, piece in enumerate(_PLACE.split(template(code, exactly))) if piece)


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
