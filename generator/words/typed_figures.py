"""Figures that a sentence holds as it was typed ('blades 25 mm apart'), in the units of a reader in the United States.

What the book reckons with stands in its records and is told in pairs (figures.py). What a text only tells by the way is typed in metric
units, and put into the other ones where it is shown. Twin: typed figures.
"""

import re
from typing import Any

from generator.words.figures import EIGHTHS, SHOWN, US_TWIN, converted, range_words

# A reader's 'K' may be potassium, and 'a rate per 100 m2' is said of an area.
_IN_NO_TEXT = ("°C difference", "K", "100 m2")
# Spelling in a text -> the unit meant; the longest spellings are looked for first.
SPELT = {
    **{SHOWN.get(unit, unit): unit for unit in US_TWIN if unit not in _IN_NO_TEXT}, **{unit: unit for unit in US_TWIN if unit not in _IN_NO_TEXT},
    "millimetres": "mm", "millimetre": "mm", "centimetres": "cm", "metres": "m", "metre": "m", "square metres": "m2", "square metre": "m2", "hectares": "ha",
    "hectare": "ha", "litres": "L", "litre": "L", "kilograms": "kg", "tonnes": "t", "tonne": "t", "cubic metres": "m3", "degrees C": "°C", "mL": "mL", "g": "g",
    "grams": "g", "m/s": "m/s", "km": "km", "kilometres": "km",
}  # fmt: skip
TWIN = {**US_TWIN, "mL": "fl oz", "g": "oz", "m/s": "mph", "km": "mi"}
_NUMBER = r"[−-]?[0-9]+(?:,[0-9]{3})*(?:\.[0-9]+)?"
_UNITS = "|".join(re.escape(each) for each in sorted(SPELT, key=lambda each: (-len(each), each)))
_US = r"(?:°F|in\b|inch|ft|foot|feet|yard|lb|pound|oz|ounce|US |fl |gal|acre|mph|mi\b|square feet|square inch)"
# 1 what stands before, 2 and 4 the numbers, 3 what joins them, 5 the unit, 6 the same in US units, if it was typed too.
FIGURE = (
    rf"(\bby )?({_NUMBER})(?:( to | and | or | by | x | × |–)({_NUMBER}))?[ -]({_UNITS})(?![\w²³/]| day)(?: \(([^()]*{_US}[^()]*)\))?"
)
# The other way round: '88 °F (31 °C)'.
BOTH = rf"((?:[0-9½¼¾⅛⅜⅝⅞] ?){_US}[^()]*) \((?:{_NUMBER}(?: to | and |–))?{_NUMBER} (?:{_UNITS})\)"


def table() -> dict[str, Any]:
    """What the scripts need to say the same. JSON-able."""
    assert set(SPELT.values()) <= set(TWIN), "each unit has another to go with it"
    return {"figure": FIGURE, "both": BOTH, "spelt": SPELT, "twin": TWIN, "shown": SHOWN, "eighths": EIGHTHS}


def in_us_units(text: str) -> str:
    """A text with its typed figures in US units; one that was typed in both keeps the US one."""
    return re.sub(FIGURE, _figure, re.sub(BOTH, r"\1", text))


def _figure(found: re.Match[str]) -> str:
    by, first, joined, last, spelling, us = found.groups()
    if found.string[:found.start()].endswith("/"):  # 'kg/100 m2' is a unit.
        return found[0]
    if us:
        return f"{by or ''}{us}"
    metric = SPELT[spelling]
    # 'colder by 2 °C' is a difference, and no reading of a thermometer.
    from_unit = "°C difference" if by and metric == "°C" else metric
    twin = TWIN[from_unit]
    numbers = [converted(float(each.replace(",", "").replace("−", "-")), from_unit, twin) for each in (first, last) if each]
    if len(numbers) == 2 and joined != " to ":
        return f"{by or ''}{range_words(numbers[0], numbers[0], twin).partition(' ')[0]}{joined}{range_words(numbers[1], numbers[1], twin)}"
    return f"{by or ''}{range_words(numbers[0], numbers[-1], twin)}"
