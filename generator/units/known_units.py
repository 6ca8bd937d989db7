"""The one pint registry, and what it knows of each unit on the allow-list.

Twin: quantity.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Any

import pint

from generator.findings import suggestion
from generator.units.dimension import Dimension
from generator.units.typed_text import SIGNS, SQUEEZES, in_place, matched, pattern
from generator.units.unit_list import AMBIGUOUS, AMERICAN, AS_TYPED, ATOMS, COUNTS, KINDS, NOT_TAKEN, WORDS

_SIGNS = str.maketrans(SIGNS)
_SQUEEZES = [(re.compile(pattern), in_place(instead)) for pattern, instead in SQUEEZES]
_NOT_TAKEN = {word: instead for words, instead in NOT_TAKEN.items() for word in words}


class UnitError(ValueError):
    """A unit that is not on the allow-list: what is wrong, and what would be right.

    code: 'unknown-unit', 'ambiguous-unit', or 'unit-not-taken' for one that people know and the list has not.
    """

    def __init__(self, code: str, what: str, instead: str) -> None:
        super().__init__(f"{what}; {instead}")
        self.code = code
        self.what = what
        self.instead = instead


@dataclass(frozen=True)
class Unit:
    """One unit of the trade.

    spelling: as the book prints it, 'kg/100 m2'.
    kind: the trade's name for such a quantity, 'a mass per area'.
    system: 'metric', 'us' or 'both'.
    SI value = value * factor + offset; the offset [K] is zero but for temperatures.
    """

    spelling: str
    kind: str
    system: str
    dimension: Dimension
    factor: float
    offset: float = 0.0

    def __str__(self) -> str:
        return self.spelling


@cache
def _registry() -> pint.UnitRegistry[Any]:
    # Fractions keep factors exact until the last step: 1 L is 0.001 m3, not 0.0010000000000000002.
    return pint.UnitRegistry(non_int_type=Fraction)


def squeezed(spelling: str) -> str:
    """The spelling without what does not matter: spaces, superscripts, 'per', '1,000', 'sq. ft.', 'seeds/lb', 'kg N/ha'."""
    text = spelling.translate(_SIGNS)
    for found, instead in _SQUEEZES:
        text = found.sub(instead, text)
    return text


def _aliases() -> dict[str, str]:
    """Squeezed ways to type one atom -> its spelling."""
    known: dict[str, str] = {}
    for spelling, record in (ATOMS | COUNTS).items():
        for way in (spelling, *record.aliases):
            known[squeezed(way)] = spelling
    return known | {word: spelling for spelling, words in WORDS.items() for word in words}


def _kinds() -> dict[str, tuple[str, str]]:
    """Every spelling on the allow-list -> its kind and system."""
    listed = {
        spelling: (kind, system)
        for kind, columns in KINDS.items()
        for system, column in zip(("metric", "us", "both"), columns, strict=True)
        for spelling in column.split(", ")
        if spelling
    }
    return listed | dict.fromkeys(COUNTS, ("a count", "both"))


def _parts(spelling: str) -> list[tuple[int, str]]:
    """'kg/100 m2' -> [(1, 'kg'), (100, 'm2')]; '/m2' -> [(1, '1'), (1, 'm2')]."""
    found = []
    for part in [spelling] if spelling in ATOMS else (spelling or "1").split("/"):
        count, atom = re.findall(r"^(?:(\d+) )?(.*)$", part)[0]
        found.append((int(count or 1), atom or "1"))
    return found


def _pint_expression(spelling: str) -> str:
    (count, atom), *below = _parts(spelling)
    top = f"{count} * ({ATOMS[atom].pint})" if count > 1 else ATOMS[atom].pint
    return "".join([top, *(f" / ({n} * {ATOMS[atom].pint})" for n, atom in below)])


def _dimension(powers: Mapping[str, Any]) -> Dimension:
    given: dict[str, Any] = {base.strip("[]"): Fraction(power) for base, power in powers.items()}
    return Dimension(**given)


def _made(spelling: str, kind: str, system: str) -> Unit:
    if spelling in COUNTS:
        return Unit(spelling, kind, system, Dimension(), 1.0)
    registry = _registry()
    expression = _pint_expression(spelling)
    if expression in ("degC", "degF"):
        zero, one = (
            registry.Quantity(Fraction(n), expression).to_base_units().magnitude for n in (0, 1)
        )
        kelvin = Dimension(temperature=Fraction(1), absolute=True)
        return Unit(spelling, kind, system, kelvin, float(one - zero), float(zero))
    base: Any = registry.Quantity(registry.parse_expression(expression)).to_base_units()
    dimension = _dimension(base.dimensionality)
    return Unit(spelling, kind, system, dimension, float(base.magnitude))


@cache
def units() -> dict[str, Unit]:
    """Every unit of the allow-list by its spelling."""
    return {spelling: _made(spelling, *kind) for spelling, kind in _kinds().items()}


@cache
def _lookup() -> tuple[dict[str, str], dict[str, str], dict[str, Unit]]:
    """Atom aliases as typed, the same in lower case, and units by their squeezed spelling."""
    exact = _aliases()
    relaxed = {way.lower(): spelling for way, spelling in exact.items()}
    whole = {squeezed(spelling): known for spelling, known in units().items()}
    return exact, relaxed, whole


@cache
def unit(spelling: str, american: bool = False) -> Unit:
    """The unit an author or reader means by `spelling` ('kg/100m²', 'lbs per 1000 sq ft').

    american: somebody working in US units typed it, so a gallon is the US gallon and a ton 2000 lb.
    Raises UnitError for a unit that is not on the allow-list or means two things.
    """
    found = listed_unit(spelling, american)
    if found is None:
        instead = suggestion(spelling, spellings(), "use one such as kg/100 m2, L/ha, mm or m2")
        raise UnitError("unknown-unit", f"unknown unit '{spelling}'", instead)
    return found


def spellings() -> list[str]:
    """Every way to write a unit, or a part of one, that a hint may name."""
    return [*units(), *_lookup()[0]]


def known_unit(spelling: str) -> Unit | None:
    """The unit, or None for one that is not on the list or means two things: quick where nobody is told of it."""
    try:
        return listed_unit(spelling, american=False)
    except UnitError:
        return None


@cache
def listed_unit(spelling: str, american: bool) -> Unit | None:
    """The unit of the allow-list; None for one that is not on it. Raises UnitError for one that means two things."""
    exact, relaxed, whole = _lookup()
    text = squeezed(spelling)
    if text in whole:
        return whole[text]
    for part in text.split("/"):
        word = matched("count_and_word", part)[1]
        if word in AS_TYPED:
            raise UnitError("ambiguous-unit", f"'{spelling}' can mean two things", AS_TYPED[word])
    if known := _of_one_word(text):
        return known
    parts = []
    for part in text.split("/"):
        count, atom = matched("count_and_word", part)
        if atom.lower() in AMERICAN and american:
            atom = AMERICAN[atom.lower()]
        elif atom.lower() in AMBIGUOUS:
            what = f"'{spelling}' can mean two things"
            raise UnitError("ambiguous-unit", what, AMBIGUOUS[atom.lower()])
        elif atom.lower() in _NOT_TAKEN:
            raise UnitError("unit-not-taken", f"unknown unit '{spelling}'", _NOT_TAKEN[atom.lower()])
        parts.append(count + squeezed(exact.get(atom) or relaxed.get(atom.lower(), atom)))
    return whole.get("/".join(parts)) or _of_one_word("/".join(parts))


def _of_one_word(text: str) -> Unit | None:
    """'gpm', 'lb/in2': a way to type a whole unit."""
    exact, relaxed, whole = _lookup()
    known = exact.get(text) or relaxed.get(text.lower())
    return whole.get(squeezed(known)) if known else None


def is_word(word: str) -> bool:
    """Whether a word, squeezed, is a part of a unit, or is refused with what to write instead."""
    return any(word.lower() in known for known in (_lookup()[1], AMBIGUOUS, _NOT_TAKEN))


@cache
def slip_words() -> dict[str, str]:
    """Names of which somebody may make a slip, squeezed and in lower case -> the part of a unit that each is; for those that are
    refused, one word of all for which the same is to be written."""
    refused = AMBIGUOUS | _NOT_TAKEN
    words = {way.lower(): squeezed(spelling) for way, spelling in _aliases().items()}
    words |= {word: next(other for other in refused if refused[other] == instead) for word, instead in refused.items()}
    return {word: part for word, part in words.items() if pattern("spelt_out").fullmatch(word) and pattern("one_part").fullmatch(part)}


def like(wanted: Dimension) -> list[Unit]:
    """The units of the allow-list that measure such a quantity, the usual ones first."""
    return [known for known in units().values() if known.dimension == wanted]


def kind_of(wanted: Dimension) -> str:
    """The trade's name for a dimension: 'a volume', or its base units when it has none."""
    if wanted.is_number:
        return "a plain number"
    found = dict.fromkeys(known.kind for known in like(wanted))
    return " or ".join(found) or f"a quantity in {wanted.key}"


def to_si(value: float, given: Unit) -> float:
    """The SI value of `value` in `given` units."""
    return value * given.factor + given.offset


def from_si(value: float, wanted: Unit) -> float:
    """The value in `wanted` units of an SI value."""
    return (value - wanted.offset) / wanted.factor


def unit_table() -> dict[str, Any]:
    """The allow-list for the browser, JSON-able.

    {"units": {spelling: [squeezed, factor, offset, dimension key, kind, system]},
     "atoms": {typed: squeezed spelling}, "ambiguous": {typed: what to write}, "as_typed": the same for words in those very capitals,
     "not_taken": the same for units that are not on the list, "american": {typed: what it is among US units}}
    """
    return {
        "units": {
            known.spelling: [
                squeezed(known.spelling), known.factor, known.offset,
                known.dimension.key, known.kind, known.system,
            ]
            for known in units().values()
        },
        "atoms": {way: squeezed(spelling) for way, spelling in _aliases().items()},
        "ambiguous": AMBIGUOUS,
        "as_typed": AS_TYPED,
        "not_taken": _NOT_TAKEN,
        "american": AMERICAN,
    }  # fmt: skip
