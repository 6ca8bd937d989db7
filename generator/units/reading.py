"""A quantity as a person types it, read to SI; and an SI value printed back.

`assets/quantity.js` is the browser's twin of this file. Both are held to
`tests/formula/vectors/quantities.yml`; change them together.
"""

import json
import math
import re
from decimal import ROUND_HALF_UP, Decimal

from generator.units.known_units import QUOTES, Unit, UnitError, from_si, like, to_si, unit, unit_table
from generator.units.unit_list import AMERICAN

LONGEST_QUANTITY = 80
LONGEST_LIST = 4000

_FRACTIONS = {"½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅓": " 1/3", "⅔": " 2/3", "⅛": " 1/8",
              "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8"}  # fmt: skip
# Spelt out, because Python and browsers differ in what a regular expression calls a space.
_BLANK = r" \t\r\f\v\u00a0\u2000-\u200b\u202f\u205f\u3000\ufeff"
_QUANTITY = re.compile(
    r"(?P<sign>[+-]?) *(?:"
    r"(?:(?P<whole>[0-9]+)(?: |-))?(?P<top>[0-9]+)/(?P<bottom>[0-9]+)"
    r"|(?P<spaced>[0-9]{1,3}(?: [0-9]{3})+(?:[.,][0-9]+)?)(?![0-9.,])"
    r"|(?P<plain>[0-9.,]*[0-9][0-9.,]*)(?P<exponent>[eE][+-]?[0-9]+(?![0-9A-Za-z]))?"
    r") *(?P<unit>.*)",
    re.DOTALL,
)
# Feet and inches, pounds and ounces, minutes and seconds: '5 ft 6 in', "5' 6 1/2\"", '2 lb 8 oz', '1 min 30 s'.
_TWO_STEPS = re.compile(
    r"((?:ft|feet|foot|lbs?|pounds|h|hrs?|hours?|mins?|minutes?)(?= )|') ?([0-9].*)", re.DOTALL
)
_TWO_MEANINGS = re.compile(
    r"(?<![A-Za-z])(?<!US )(?<!UK )(?<!imp )(?<!imperial )(?<!short )(?:gal(?:lon)?|ton|pint|quart)s?(?![A-Za-z])", re.IGNORECASE
)
_HEMISPHERE = re.compile(r"(.*(?:[0-9°]|deg|degrees)) ?([NS])")  # '33.9 S', '40° N'.
_PAIR = re.compile(r"\(([^(),;]*),([^(),;]*)\)")  # A corner, '(12, 8)'.
_ONE_POINT = re.compile(r"[0-9]+\.?[0-9]*|\.[0-9]+")
_THOUSANDS_OR_DECIMALS = re.compile(r"[1-9][0-9]{0,2},[0-9]{3}")
_COMMA_GROUPS = re.compile(r"[0-9]{1,3}(?:,[0-9]{3}){2,}|[0-9]{1,3}(?:,[0-9]{3})+\.[0-9]*")
_POINT_GROUPS = re.compile(r"[0-9]{1,3}(?:\.[0-9]{3}){2,}|[0-9]{1,3}(?:\.[0-9]{3})+,[0-9]*")

# So large that the same size in a smaller unit may be no number any more.
LARGEST_SI = 1e290


class QuantityError(ValueError):
    """What somebody typed is no such quantity: a code for programs, a sentence for people."""

    def __init__(self, code: str, sentence: str) -> None:
        super().__init__(sentence)
        self.code = code
        self.sentence = sentence


def _tidy(text: str) -> str:
    for character, spelt in _FRACTIONS.items():
        text = text.replace(character, spelt)
    return re.sub(f"[{_BLANK}\n]+", " ", re.sub("[−–]", "-", text)).strip(" ")


def _decimal(digits: str, american: bool) -> str:
    """'2,5' -> '2.5', '1,200.5' -> '1200.5'; QuantityError where it can be read twice or not.

    american: a US unit follows, where a comma before three digits parts thousands.
    """
    if _ONE_POINT.fullmatch(digits):
        return digits
    if american and _THOUSANDS_OR_DECIMALS.fullmatch(digits):
        return digits.replace(",", "")
    if _THOUSANDS_OR_DECIMALS.fullmatch(digits):
        joined, pointed = digits.replace(",", ""), digits.replace(",", ".")
        sentence = f"'{digits}' could mean {joined} or {pointed}; write it without the comma."
        raise QuantityError("ambiguous-number", sentence)
    if _COMMA_GROUPS.fullmatch(digits):
        return digits.replace(",", "")
    if _POINT_GROUPS.fullmatch(digits):
        return digits.replace(".", "").replace(",", ".")
    if digits.count(",") == 1 and _ONE_POINT.fullmatch(digits.replace(",", ".")):
        return digits.replace(",", ".")
    raise QuantityError("not-a-number", f"'{digits}' is not a number; write one such as 2.5.")


def _number(found: re.Match, text: str, american: bool) -> float:
    if found["bottom"]:
        if int(found["bottom"]) == 0:
            raise QuantityError("division-by-zero", f"'{text}' divides by zero.")
        number = float(found["whole"] or 0) + float(found["top"]) / float(found["bottom"])
    elif found["spaced"]:
        number = float(found["spaced"].replace(" ", "").replace(",", "."))
    else:
        number = float(_decimal(found["plain"], american) + (found["exponent"] or ""))
    if not math.isfinite(number):
        raise QuantityError("too-large", f"'{text}' is too large a number.")
    return -number if found["sign"] == "-" else number


def _split(text: str, wanted: Unit) -> tuple[float, str]:
    """'3 kg/100 m2' -> (3.0, 'kg/100 m2'). wanted: the unit of a bare number."""
    if not text:
        raise QuantityError("empty", "Nothing is typed here; give a number, with its unit.")
    if len(text) > LONGEST_QUANTITY:
        raise QuantityError("too-long", "That is too long for one quantity.")
    found = _QUANTITY.fullmatch(text)
    if not found:
        raise QuantityError("not-a-number", f"'{text}' is not a quantity; write one such as 2.5.")
    return _number(found, text, _is_american(found["unit"], wanted)), _unit_text(found, text)


def _is_american(spelling: str, wanted: Unit) -> bool:
    try:
        return (unit(spelling, wanted.system == "us") if spelling else wanted).system == "us"
    except UnitError:
        return False


def _unit_text(found: re.Match, text: str) -> str:
    """The unit as typed; '5 100 m2' is refused, being 5100 m2 or five times 100 m2."""
    spelling = found["unit"]
    if (found["spaced"] or "").endswith(" 100") and _is_unit("100 " + spelling):
        sentence = f"'{text}' can be read two ways; write the number without spaces."
        raise QuantityError("ambiguous-number", sentence)
    return spelling


def _is_unit(spelling: str) -> bool:
    try:
        unit(spelling)
    except UnitError:
        return False
    return True


def _known_unit(spelling: str, wanted: Unit) -> Unit:
    try:
        return unit(spelling, wanted.system == "us")
    except UnitError as error:
        sentence = f"{error.what[:1].upper()}{error.what[1:]}; {error.instead.rstrip('?')}."
        raise QuantityError(error.code, sentence) from error


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


def _in_si(number: float, found: Unit, wanted: Unit, text: str) -> float:
    if not _fits(found, wanted):
        alike = (known for known in like(wanted.dimension) if known.kind == wanted.kind)
        usual = [known.spelling for known in alike if _fits(known, wanted)][:3]
        examples = ", ".join(dict.fromkeys([wanted.spelling, *usual]))
        sentence = f"'{text}' is {found.kind}, but {wanted.kind} is wanted; use {examples}."
        raise QuantityError("wrong-dimension", sentence)
    value = to_si(number, found)
    if not abs(value) < LARGEST_SI:
        raise QuantityError("too-large", f"'{text}' is too large a number.")
    return value


def _rectangle(text: str, wanted: Unit) -> float | None:
    """'30 ft x 12 ft' where an area is wanted -> m2; None when it is not written so."""
    sides = re.split(r" *(?:[xX×*]|by) *", text)
    if wanted.dimension != unit("m2").dimension or len(sides) != 2:
        return None
    side_unit = unit("ft" if wanted.system == "us" else "m")
    width, width_unit = _split(sides[1], side_unit)
    width_unit = _known_unit(width_unit, wanted) if width_unit else side_unit
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
    hemisphere = _HEMISPHERE.fullmatch(text) if default_unit.kind == "an angle" else None
    if hemisphere:
        return read_quantity(hemisphere[1], default_unit) * (-1 if hemisphere[2] == "S" else 1)
    area = _rectangle(text, default_unit)
    if area is not None:
        return area
    number, spelling = _split(text, default_unit)
    steps = _TWO_STEPS.fullmatch(spelling.translate(QUOTES))
    if steps:
        smaller, smaller_unit = _split(steps[2], default_unit)
        if not smaller_unit:
            raise QuantityError("unknown-unit", f"'{text}' needs a unit after its second number.")
        rest = _in_si(smaller, _known_unit(smaller_unit, default_unit), default_unit, text)
        larger = _in_si(number, unit(steps[1]), default_unit, text)
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
        raise QuantityError("too-long", "That is too long a list of readings.")
    text = _PAIR.sub(r"\1; \2;", re.sub(f"[{_BLANK}]+", " ", re.sub("[−–]", "-", text))).strip(" \n")
    if not text:
        raise QuantityError("empty", "Nothing is typed here; give readings such as 12, 14, 15.")
    head, tail = re.fullmatch(r"([-+0-9.,;/ \n]*)(.*)", text, re.DOTALL).groups()
    one_unit = tail and not re.search(r"[,;\nxX×*]|by", tail)  # '30 x 12 ft' is one piece, with its own unit.
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
        raise QuantityError("not-a-number", f"'{reading}' is not a number; write one such as 2.5.")
    return _in_si(number, unit_of_all, unit_of_all, reading)


def _separated(text: str, spaces_separate: bool) -> list[str]:
    tight = re.search(r"[0-9],[0-9]", text)
    loose = re.search(r"[0-9][ \n]+[-+.0-9]|,[ \n]|[ \n],", text)
    text = text.strip(" \n")
    thousands = _COMMA_GROUPS.fullmatch(text) or _THOUSANDS_OR_DECIMALS.fullmatch(text)
    if ";" in text:
        between = r"[;\n]|,[ \n]|[ \n],"
    elif (tight and loose) or thousands:
        sentence = "A comma here could separate two readings or be part of a number; leave it out, or separate readings with ';'."
        raise QuantityError("ambiguous-number", sentence)
    else:
        between = r"[,\n]"
    if spaces_separate:
        between += "| "
    readings = [piece.strip(" ") for piece in re.split(between, text) if piece.strip(" ,")]
    if not readings:
        raise QuantityError("empty", "Nothing is typed here; give readings such as 12, 14, 15.")
    return readings


def show(si: float, wanted: Unit, significant_figures: int = 3, with_unit: bool = True) -> str:
    """An SI value printed in a unit: show(0.0125, unit('mm')) -> '12.5 mm'.

    Rounds half away from zero; trailing zeros after the point are left out. `read_quantity`
    reads the text back. Raises QuantityError for a value that is not finite.
    """
    value = from_si(si, wanted)
    if not math.isfinite(value):
        raise QuantityError("too-large", "There is no number to show.")
    figures = _figures(value, significant_figures)
    if not with_unit or wanted.spelling == "1":
        return figures
    return f"{figures} {wanted.spelling}"


def _figures(value: float, significant_figures: int) -> str:
    exact = abs(Decimal(value))
    if not exact:
        return "0"
    step = Decimal(1).scaleb(exact.adjusted() - significant_figures + 1)
    text = f"{exact.quantize(step, ROUND_HALF_UP):f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return f"-{text}" if value < 0 else text


def units_script() -> str:
    """The script that hands the allow-list to the browser: `Swardbook.units = {...};`."""
    table = json.dumps({**unit_table(), "largest": LARGEST_SI}, ensure_ascii=True, separators=(",", ":"))
    return f"window.Swardbook = window.Swardbook || {{}};\nSwardbook.units = {table};\n"


__all__ = ["QuantityError", "american_words", "read_list", "read_quantity", "show", "units_script"]
