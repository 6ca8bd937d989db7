"""Figures as words, in metric and US units: values in, text out."""

from fractions import Fraction
from functools import lru_cache

from generator.book.fields.sourced import Claim
from generator.units import from_si, to_si, unit

# What a reader in the United States expects instead. A unit that is missing here reads the same everywhere.
US_TWIN = {
    "mm": "in", "cm": "in", "m": "ft", "m2": "ft2", "100 m2": "1000 ft2", "ha": "acre",
    "g/m2": "lb/1000 ft2", "kg/100 m2": "lb/1000 ft2", "kg/m2": "lb/1000 ft2", "kg/ha": "lb/acre",
    "L/ha": "US gal/acre", "L/100 m2": "US gal/1000 ft2", "mL/100 m2": "fl oz/1000 ft2",
    "°C": "°F", "°C difference": "°F difference", "K": "°F difference",
    "mm/h": "in/h", "mm/day": "in/day", "mm/week": "in/week", "kg": "lb", "t": "short ton", "L": "US gal", "m3": "yd3",
    "L/min": "US gal/min", "L/m2": "US gal/1000 ft2",
    "kg/m3": "lb/ft3", "km/h": "mph",
}
SHOWN = {
    "m2": "m²", "ft2": "ft²", "m3": "m³", "yd3": "yd³", "ft3": "ft³", "1": "", "g/m2": "g/m²", "kg/m2": "kg/m²",
    "L/m2": "L/m²", "kg/100 m2": "kg/100 m²", "lb/1000 ft2": "lb/1000 ft²", "L/100 m2": "L/100 m²", "mL/100 m2": "mL/100 m²",
    "fl oz/1000 ft2": "fl oz/1000 ft²", "US gal/1000 ft2": "US gal/1000 ft²", "100 m2": "× 100 m²",
    "1000 ft2": "× 1000 ft²", "kg/m3": "kg/m³", "lb/ft3": "lb/ft³", "K": "°C", "°C difference": "°C",
    "°F difference": "°F",
}
COUNTED = {"week": "weeks", "day": "days"}
EIGHTHS = {1: "⅛", 2: "¼", 3: "⅜", 4: "½", 5: "⅝", 6: "¾", 7: "⅞"}


def claim_words(claim: Claim) -> dict[str, str | None]:
    """A claim as {'metric': '25 to 38 mm', 'us': '1 to 1½ in'}; us is None where both read alike."""
    low, high = claim.lowest, claim.highest
    before = ""
    if claim.use is None and low == high:
        before = "up to " if claim.low is None else "from " if claim.high is None else ""
    twin = US_TWIN.get(claim.unit)
    metric = before + range_words(low, high, claim.unit)
    if twin is None:
        return {"metric": metric, "us": None}
    return {"metric": metric, "us": before + range_words(converted(low, claim.unit, twin), converted(high, claim.unit, twin), twin)}


def default_words(claim: Claim) -> dict[str, str | None]:
    """The one number the book calculates with, in both systems."""
    twin = US_TWIN.get(claim.unit)
    value = claim.default
    us = None if twin is None else range_words(*[converted(value, claim.unit, twin)] * 2, twin)
    return {"metric": range_words(value, value, claim.unit), "us": us}


def value_words(value: float, spelling: str) -> dict[str, str | None]:
    """A value [in the unit of that spelling] in both systems; us is None where both read alike."""
    twin = US_TWIN.get(spelling)
    us = None if twin is None else range_words(*[converted(value, spelling, twin)] * 2, twin)
    return {"metric": range_words(value, value, spelling), "us": us}


def converted(value: float, from_unit: str, to_unit: str) -> float:
    """A value [in the first unit] in the second [in that unit]. Raises UnitError for a spelling that is none."""
    return from_si(to_si(value, unit(from_unit)), unit(to_unit))


@lru_cache(maxsize=65536)  # A year of a lawn says the same few thousand amounts again and again.
def range_words(low: float, high: float, spelling: str) -> str:
    """'25 to 38 mm', '4 weeks', '1¼ in': no more digits than a person can measure out [both in the unit of that spelling]."""
    number = _inches if spelling == "in" else _plain
    first, last = number(low), number(high)
    amount = first if first == last else f"{first} to {last}"
    shown = unit_words(spelling, plural=last != "1")
    return f"{amount}{'' if shown == '%' else ' '}{shown}".strip()


def unit_words(spelling: str, plural: bool = True) -> str:
    """A unit as it is printed: 'm²' for 'm2', 'weeks' for 'week'."""
    if spelling in COUNTED:
        return COUNTED[spelling] if plural else spelling
    return SHOWN.get(spelling, spelling)


def _plain(value: float) -> str:
    """Two significant digits below 10, whole numbers above: 0.31, 4.5, 39, 240."""
    size = abs(value)
    digits = 0 if size >= 20 else 1 if size >= 2 else 2
    text = f"{round(value, digits):,.{digits}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text in ("-0", "") else text.replace("-", "−").replace(",", " ")


def _inches(value: float) -> str:
    """To the nearest eighth, as a ruler reads; finer below a quarter inch as a decimal."""
    if value < 0.2:
        return f"{value:.2f}".rstrip("0").rstrip(".")
    whole, eighth = divmod(round(Fraction(value) * 8), 8)
    return f"{whole or ''}{EIGHTHS.get(eighth, '')}" or "0"
