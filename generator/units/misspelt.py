"""Which unit somebody meant who made one slip of the pen in its name: never one of another size or kind.

A slip is one sign too many, too few or wrong, or two that changed places, in a word that is spelt out. Numbers and short signs have
to be right, for '1000 m2' is no slip of '100 m2', nor 'mg' one of 'kg'. Twin: misspelt unit.
"""

from functools import cache

from generator.units.known_units import Unit, is_word, listed_unit, slip_words, squeezed
from generator.units.typed_text import LONGEST_QUANTITY, matched


def one_slip(one: str, other: str) -> bool:
    """Whether one slip makes one word of the other."""
    shorter = min(len(one), len(other))
    before = next((place for place in range(shorter) if one[place] != other[place]), shorter)
    after = next((place for place in range(shorter - before) if one[-1 - place] != other[-1 - place]), shorter - before)
    left, right = one[before : len(one) - after], other[before : len(other) - after]
    return max(len(left), len(right)) <= 1 or (len(left) == 2 and left == right[::-1])


@cache
def _mended(part: str) -> str:
    """One part of a unit with its slip put right; as it is where there is none, or where two words may be meant."""
    count, word = matched("count_and_word", part)
    if is_word(word) or len(word) > LONGEST_QUANTITY:
        return part
    meant = {right for name, right in slip_words().items() if abs(len(name) - len(word)) <= 1 and one_slip(word.lower(), name)}
    return count + meant.pop() if len(meant) == 1 else part


def meant_unit(spelling: str, american: bool) -> Unit | None:
    """'lires/hectre' -> L/ha; None where no slip makes a unit of it. Raises UnitError where a word that means two things is meant."""
    text = squeezed(spelling)
    mended = "/".join(map(_mended, text.split("/")))
    return None if mended == text else listed_unit(mended, american)
