"""A quantity as a person types it, read to SI.

The patterns, limits and sentences stand in `typed_text.py`, for the browser too. Twin: quantity.
"""

import math
import re
from functools import cache

from generator.units.known_units import Unit, UnitError, like, listed_unit, to_si, unit
from generator.units.misspelt import meant_unit
from generator.units.refusals import refusal
from generator.units.typed_text import (
    CLOCK_EXAMPLE,
    EXAMPLES,
    FRACTIONS,
    LARGEST_SI,
    LONGEST_LIST,
    LONGEST_QUANTITY,
    NO_UNIT,
    NUMBER_EXAMPLE,
    QUOTES,
    TIDIES,
    in_place,
    matched,
    pattern,
)
from generator.units.unit_list import AMERICAN

_QUOTES = str.maketrans(QUOTES)
_TWO_MEANINGS = re.compile(
    r"(?<![A-Za-z])(?<!US )(?<!UK )(?<!imp )(?<!imperial )(?<!British )(?<!short )(?<!long )(?<!metric )"
    r"(?:gal(?:lon)?|ton|pint|quart|tablespoon)s?(?! ?\(?(?:US|UK|imp)\b)(?![A-Za-z])",
    re.IGNORECASE,
)
_TIDIES = [(re.compile(found), in_place(instead)) for found, instead in TIDIES]


def _with_plain_numbers(text: str) -> str:
    for found, instead in _TIDIES:
        text = found.sub(instead, text)
    return text


def _tidy(text: str) -> str:
    for character, spelt in FRACTIONS.items():
        text = text.replace(character, spelt)
    return pattern("blanks_and_lines").sub(" ", _with_plain_numbers(text)).strip(" ")


def _decimal(digits: str, american: bool) -> str:
    """'2,5' -> '2.5', '1,200.5' -> '1200.5'; QuantityError where it can be read twice or not.

    american: a US unit follows, where a comma before three digits parts thousands.
    """
    joined, pointed = digits.replace(",", ""), digits.replace(",", ".")
    if pattern("one_point").fullmatch(digits):
        return digits
    if pattern("thousands_or_decimals").fullmatch(digits):
        if american:
            return joined
        raise refusal("ambiguous-number", "comma", text=digits, joined=joined, pointed=pointed)
    if pattern("comma_groups").fullmatch(digits):
        return joined
    if pattern("point_groups").fullmatch(digits):
        return digits.replace(".", "").replace(",", ".")
    if digits.count(",") == 1 and pattern("one_point").fullmatch(pointed):
        return pointed
    raise refusal("not-a-number", text=digits)


def _number(found: re.Match[str], text: str, american: bool) -> float:
    sign, whole, top, bottom, spaced, plain, exponent, _ = found.groups()
    if bottom:
        if int(bottom) == 0:
            raise refusal("division-by-zero", text=text)
        number = float(whole or 0) + float(top) / float(bottom)
    elif spaced:
        number = float(spaced.replace(" ", "").replace(",", "."))
    else:
        number = float(_decimal(plain, american) + (exponent or ""))
    if not math.isfinite(number):
        raise refusal("too-large", text=text)
    return -number if sign == "-" else number


def _split(text: str, wanted: Unit) -> tuple[float, str]:
    """'3 kg/100 m2' -> (3.0, 'kg/100 m2'). wanted: the unit of a bare number.

    '5 100 m2' is refused, being 5100 m2 or five times 100 m2.
    """
    if not text:
        raise refusal("empty")
    if len(text) > LONGEST_QUANTITY:
        raise refusal("too-long")
    found = pattern("quantity").fullmatch(text)
    if not found:
        raise refusal("not-a-number", "not-a-quantity", text=text)
    spelling = found[8]
    if pattern("range").fullmatch(spelling):
        raise refusal("not-a-number", "range", text=text)
    if pattern("clock").fullmatch(spelling):
        example = CLOCK_EXAMPLE if wanted.kind == "a time" else NUMBER_EXAMPLE if wanted.spelling == "1" else f"{NUMBER_EXAMPLE} {wanted}"
        raise refusal("not-a-number", "clock", text=text, example=example)
    number = _number(found, text, _is_american(spelling, wanted))
    if (found[5] or "").endswith(" 100") and _quietly("100 " + spelling):
        raise refusal("ambiguous-number", "hundred", text=text)
    return number, spelling


def _is_american(spelling: str, wanted: Unit) -> bool:
    found = _quietly(spelling, wanted.system == "us") if spelling else wanted
    return found is not None and found.system == "us"


def _quietly(spelling: str, american: bool = False) -> Unit | None:
    try:
        return listed_unit(spelling, american)
    except UnitError:
        return None


def _known_unit(spelling: str, wanted: Unit) -> Unit:
    """The unit; a refusal says what to write instead, or which one is meant if it is of the wanted kind, or gives examples."""
    american = wanted.system == "us"
    try:
        found = listed_unit(spelling, american)
        near = None if found else meant_unit(spelling, american)
    except UnitError as error:
        code = "unknown-unit" if error.code == "unit-not-taken" else error.code
        raise refusal(code, error.code, text=spelling, instead=error.instead) from error
    if found:
        return found
    if near and _fits(near, wanted):
        raise refusal("unknown-unit", "misspelt-unit", text=spelling, near=near.spelling)
    raise refusal("unknown-unit", text=spelling, examples=_examples(wanted))


def _fits(found: Unit, wanted: Unit) -> bool:
    """Whether a value in `found` units can stand for one in `wanted`.

    Shares, angles and counts are all plain numbers inside, so their kind decides.
    """
    if found.dimension != wanted.dimension:
        return False
    if not found.dimension.is_number or found.spelling == wanted.spelling:
        return True
    if wanted.kind == "a plain number":
        return found.kind != "an angle"
    return found.kind == wanted.kind and found.kind != "a count"


@cache
def _examples(wanted: Unit) -> str:
    if wanted.spelling == "1":
        return NO_UNIT
    alike = (known for known in like(wanted.dimension) if known.kind == wanted.kind)
    usual = [known.spelling for known in alike if _fits(known, wanted)][:EXAMPLES]
    return ", ".join(dict.fromkeys([wanted.spelling, *usual]))


def _in_si(number: float, found: Unit, wanted: Unit, text: str) -> float:
    if not _fits(found, wanted):
        raise refusal("wrong-dimension", text=text, kind=found.kind, wanted=wanted.kind, examples=_examples(wanted))
    value = to_si(number, found)
    if not abs(value) < LARGEST_SI:
        raise refusal("too-large", text=text)
    return value


def _rectangle(text: str, wanted: Unit) -> float | None:
    """'30 ft x 12 ft' where an area is wanted -> m2; None when it is not written so."""
    sides = pattern("sides").split(text)
    if wanted.dimension != unit("m2").dimension or len(sides) != 2:
        return None
    first, second = (pattern("side").fullmatch(side) for side in sides)
    if not first or not (second or (not sides[1] and pattern("bare").fullmatch(sides[0]))):
        return None
    side_unit = unit("ft" if wanted.system == "us" else "m")
    width, spelling = _split(sides[1], side_unit)
    width_unit = _known_unit(spelling, side_unit) if spelling else side_unit
    width_m = _in_si(width, width_unit, side_unit, sides[1])
    return read_quantity(sides[0], width_unit) * width_m


def american_words(text: str) -> str:
    """'40 gal/acre' -> '40 US gal/acre': what somebody in US units means by a word that can mean two things."""
    return _TWO_MEANINGS.sub(lambda found: AMERICAN[found[0].lower()], text)


def read_quantity(text: str, default_unit: Unit) -> float:
    """The SI value of what was typed: '240 m2', '240', '1 1/2 in', '2,5 kg', '30 ft x 12 ft'.

    default_unit: the unit of a bare number; what was typed must be of its dimension. Where it is a US unit, 'gal' is
    the US gallon; where a US unit is typed, '5,000' is five thousand.
    Raises QuantityError, whose code is one of: empty, too-long, not-a-number,
    ambiguous-number, division-by-zero, too-large, unknown-unit, ambiguous-unit,
    wrong-dimension.
    """
    text = _tidy(text)
    hemisphere = pattern("hemisphere").fullmatch(text) if default_unit.kind == "an angle" else None
    if hemisphere:
        return read_quantity(hemisphere[1], default_unit) * (-1 if hemisphere[2] == "S" else 1)
    area = _rectangle(text, default_unit)
    if area is not None:
        return area
    number, spelling = _split(text, default_unit)
    steps = pattern("two_steps").fullmatch(spelling.translate(_QUOTES))
    if steps:
        larger_unit, (smaller, spelling) = unit(steps[1]), _split(steps[2], default_unit)
        if pattern("hours").fullmatch(steps[1]) and pattern("minutes").fullmatch(spelling):
            spelling = "min"
        if not spelling:
            raise refusal("unknown-unit", "no-second-unit", text=text)
        smaller_unit = _known_unit(spelling, default_unit)
        rest, larger = _in_si(smaller, smaller_unit, default_unit, text), _in_si(number, larger_unit, default_unit, text)
        if smaller_unit.factor >= larger_unit.factor:
            raise refusal("not-a-number", "two-alike", text=text)
        return larger - rest if number < 0 else larger + rest
    found = _known_unit(spelling, default_unit) if spelling else default_unit
    return _in_si(number, found, default_unit, text)


def read_list(text: str, default_unit: Unit) -> list[float]:
    """SI values of several readings: '12, 14; 15 13', '12 14 15 mL', '12 mL, 14 mL'.

    Blanks, semicolons, line ends and commas separate. A comma inside digits is a
    decimal comma when the readings are separated by semicolons, a separator when nothing
    else separates, and refused otherwise, as in '5,000', which may be one reading or two. Raises QuantityError as read_quantity does.
    """
    if len(text) > LONGEST_LIST:
        raise refusal("too-long", "list-too-long")
    text = pattern("corner").sub(in_place("$1; $2;"), pattern("blanks").sub(" ", _with_plain_numbers(text))).strip(" \n")
    if not text:
        raise refusal("empty", "no-readings")
    head, tail = matched("readings_and_unit", text)
    one_unit = tail and not pattern("more_than_a_unit").search(tail)
    trailing, body = (tail, head) if one_unit else ("", text)
    readings = _separated(body, spaces_separate=body == head)
    unit_of_all = _known_unit(_tidy(trailing), default_unit) if trailing else default_unit
    _in_si(0.0, unit_of_all, default_unit, text[:LONGEST_QUANTITY])
    if trailing:
        return [_bare(reading, unit_of_all) for reading in readings]
    return [read_quantity(reading, default_unit) for reading in readings]


def _bare(reading: str, unit_of_all: Unit) -> float:
    """A reading that the unit at the end of the list belongs to."""
    number, spelling = _split(reading, unit_of_all)
    if spelling:
        raise refusal("not-a-number", text=reading)
    return _in_si(number, unit_of_all, unit_of_all, reading)


def _separated(text: str, spaces_separate: bool) -> list[str]:
    tight, loose = pattern("tight_comma").search(text), pattern("loose_comma").search(text)
    text = text.strip(" \n")
    between = "between_with_semicolons" if ";" in text else "between"
    groups = pattern("comma_groups").fullmatch(text) or pattern("thousands_or_decimals").fullmatch(text)
    if ";" not in text and ((tight and loose) or groups):
        raise refusal("ambiguous-number", "comma-in-list")
    pieces = pattern(between).split(text)
    if spaces_separate and pattern("spaced_thousands").fullmatch(text):
        raise refusal("ambiguous-number", "hundred", text=text)
    if spaces_separate:
        pieces = [part for piece in pieces for part in piece.split(" ")]
    readings = [piece.strip(" ") for piece in pieces if piece.strip(" ,")]
    if not readings:
        raise refusal("empty", "no-readings")
    return readings


__all__ = ["american_words", "read_list", "read_quantity"]
