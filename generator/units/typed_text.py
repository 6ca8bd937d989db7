"""What both sides know of a quantity as a person types it: its signs, its patterns, its limits, and the sentences of a refusal.

The browser gets all of it as `Swardbook.contract.reading`. A pattern is written once for Python and JavaScript: blanks are spelt
out, groups have numbers, nothing looks behind, `[\\s\\S]` stands for any sign, and `$1` in what takes a match's place for its group.
"""

import re
from functools import cache
from typing import Any

LONGEST_QUANTITY = 80
LONGEST_LIST = 4000
# More than anything on earth: its surface is 5e14 m2.
LARGEST_SI = 1e15
EXAMPLES = 3  # Units that a refusal names beside the wanted one.
NO_UNIT = "a number alone"  # What it names where a plain number is wanted.
CLOCK_EXAMPLE = "1 h 30 min"
NUMBER_EXAMPLE = "2.5"

QUOTES = {"’": "'", "′": "'", "”": '"', "″": '"', "“": '"'}
SIGNS = QUOTES | {"²": "2", "³": "3", "^": "", "·": "", "º": "°", "℃": "°C", "℉": "°F", "⁄": "/", "∕": "/"}
FRACTIONS = {"½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅓": " 1/3", "⅔": " 2/3", "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8"}

_BLANK = r" \t\r\f\v\u00a0\u2000-\u200b\u202f\u205f\u3000\ufeff"
PATTERNS = {
    "blanks": f"[{_BLANK}]+",
    "blanks_and_lines": rf"[{_BLANK}\n]+",
    # Sign, whole, top and bottom of a fraction, digits in groups, plain digits, exponent, and what follows.
    "quantity": (
        r"([+-]?) *(?:(?:([0-9]+)(?: |-))?([0-9]+)/([0-9]+)"
        r"|([0-9]{1,3}(?: [0-9]{3})+(?:[.,][0-9]+)?)(?![0-9.,])"
        r"|([0-9.,]*[0-9][0-9.,]*)([eE][+-]?[0-9]+(?![0-9A-Za-z]))?) *([\s\S]*)"
    ),
    # Feet and inches, pounds and ounces, minutes and seconds: '5 ft 6 in', "5' 6 1/2\"", '2 lb 8 oz', '1 min 30 s'.
    "two_steps": (
        r"((?:ft|feet|foot|lbs?|pounds|h|hrs?|hours?|mins?|minutes?)(?= )|(?:h|hrs?)(?=[0-9])|(?:ft|lbs?|mins?)(?=[0-9]+(?:in|oz|s)(?![A-Za-z/]))|')"
        r" ?(?:and )?([0-9][\s\S]*)"
    ),
    "hours": "h|hrs?|hours?",
    "minutes": "m?",  # '1h30', '1 h 30m'.
    "sides": " *(?:[xX×*]|by) *",
    "range": r"(?:(?:[^0-9]{1,15} )?to ?|or |-|±|\.\.+|…) ?[0-9][\s\S]*",  # What follows the first number of '10-12 mm', '10 mm to 12 mm'.
    "clock": r":[0-9]{1,2}(?::[0-9]{2})?(?: ?[aApP]\.?[mM]\.?)?|[aApP]\.?[mM]\.?",  # And of '7:30', '7 am'.
    "side": r"[-+.,]?[0-9][\s\S]*",  # Of a piece of lawn: '30' of '30 ft x 12 ft', and nothing of 'approx 5'.
    "spaced_thousands": "[1-9][0-9]?(?: [0-9]{3})+",
    "hemisphere": r"([\s\S]*(?:[0-9°]|deg|degrees)) ?([NS])",  # '33.9 S', '40° N'.
    "corner": r"\(([^(),;]*),([^(),;]*)\)",  # '(12, 8)'.
    "one_point": r"[0-9]+\.?[0-9]*|\.[0-9]+",
    "thousands_or_decimals": "[1-9][0-9]{0,2},[0-9]{3}",
    "comma_groups": r"[0-9]{1,3}(?:,[0-9]{3}){2,}|[0-9]{1,3}(?:,[0-9]{3})+\.[0-9]*",
    "point_groups": r"[0-9]{1,3}(?:\.[0-9]{3}){2,}|[0-9]{1,3}(?:\.[0-9]{3})+,[0-9]*",
    "readings_and_unit": r"([-+0-9.,;/ \n]*)([\s\S]*)",
    "more_than_a_unit": r"[,;\nxX×*]|by",  # '30 x 12 ft' is one piece, with its own unit.
    "tight_comma": "[0-9],[0-9]",
    "loose_comma": r"[0-9][ \n]+[-+.0-9]|,[ \n]|[ \n],",
    "between_with_semicolons": r"[;\n]|,[ \n]|[ \n],",
    "between": r"[,\n]",
    "count_and_word": r"([0-9]*)([\s\S]*)",
    # A name of which somebody may make a slip: a shorter word is a sign, and so is one behind 'sq' or 'UK' ('squaremm', no slip of 'squarem').
    "spelt_out": "(?!(?:sq|square|cu|cubic|us|uk|imp)[a-z]{1,3}$)[a-z]{4,}",
    "one_part": "[^0-9/][^/]*",
    "bare": f"[{_BLANK}\n0-9.,;/+{''.join(FRACTIONS)}−–-]+",  # A number, or several, and no unit.
}
# What is set right before a number is read, in this order: dashes, 1'500, and a point in the middle of the line.
TIDIES = (
    ("[−–‐‑‒—―]", "-"),
    ("([1-9][0-9]{0,2}|['’′][0-9]{3})['’′](?=[0-9]{3}(?![0-9]))", "$1"),
    ("([0-9])[·∙](?=[0-9])", "$1."),
)
# What does not matter in a unit's spelling: 'per', blanks, '1,000', 'sq. ft.', 'seeds/lb', 'kg N/ha'. In this order.
SQUEEZES = (
    (r"(^|[^A-Za-z])[Pp][Ee][Rr](?![A-Za-z])", "$1/"),
    (rf"[{_BLANK}\n\x1c-\x1f\u0085\u1680\u2028\u2029]+", ""),
    ("([0-9]),(?=[0-9]{3})", "$1"),
    (r"\.(?![0-9])", ""),
    (  # 'gal (US)', 'pints UK'.
        r"(^|/[0-9]*)([Gg]al(?:lon)?s?|[Pp]ints?|[Qq]uarts?|[Tt]ons?|[Ff]loz|[Ff]luidoz|[Ff]luidounces?)\(?([Uu][Ss]|[Uu][Kk]|[Ii]mp)\)?(?=/|$)",
        "$1$3$2",
    ),
    ("^(?:seeds?|holes?|slits?)(?=/)", ""),
    ("^(lbs?|oz|kg|g)(?:of)?(?:N|P|K|P2O5|K2O|S|Fe)(?=/)", "$1"),
)

# What is wrong, and what would be right where something can be named.
REFUSALS = {
    "empty": ("Nothing is typed here", "give a number, with its unit"),
    "no-readings": ("Nothing is typed here", "give readings such as 12, 14, 15"),
    "too-long": ("That is too long for one quantity", ""),
    "list-too-long": ("That is too long a list of readings", ""),
    "not-a-quantity": ("'{text}' is not a quantity", "write one such as 2.5"),
    "not-a-number": ("'{text}' is not a number", "write one such as 2.5"),
    "comma": ("'{text}' could mean {joined} or {pointed}", "write it without the comma"),
    "comma-in-list": ("A comma here could separate two readings or be part of a number", "leave it out, or separate readings with ';'"),
    "range": ("'{text}' is a range", "give one number of it"),
    "clock": ("'{text}' is a time of day", "give a number with its unit, such as {example}"),
    "hundred": ("'{text}' can be read two ways", "write the number without spaces"),
    "division-by-zero": ("'{text}' divides by zero", ""),
    "too-large": ("'{text}' is too large a number", ""),
    "nothing-to-show": ("There is no number to show", ""),
    "no-second-unit": ("'{text}' needs a unit after its second number", ""),
    "two-alike": ("'{text}' names two amounts", "give one of them"),
    "unknown-unit": ("Unknown unit '{text}'", "use {examples}"),
    "misspelt-unit": ("Unknown unit '{text}'", "perhaps '{near}' is meant"),
    "ambiguous-unit": ("'{text}' can mean two things", "{instead}"),
    "unit-not-taken": ("Unknown unit '{text}'", "{instead}"),
    "wrong-dimension": ("'{text}' is {kind}, but {wanted} is wanted", "use {examples}"),
}
SENTENCES = {code: f"{what}; {instead}." if instead else f"{what}." for code, (what, instead) in REFUSALS.items()}


@cache
def pattern(name: str) -> re.Pattern[str]:
    return re.compile(PATTERNS[name])


def matched(name: str, text: str) -> tuple[str, ...]:
    """The groups of a pattern that every text matches, an empty one for a group that is not there."""
    found = pattern(name).fullmatch(text)
    assert found is not None, f"every text matches '{name}'"
    return found.groups("")


def in_place(text: str) -> str:
    """What takes a match's place, as Python wants it: '$1/' -> '\\1/'."""
    return text.replace("$", "\\")


def reading_table() -> dict[str, Any]:
    """All of the above for the browser, JSON-able."""
    return {
        "longest": LONGEST_QUANTITY, "longest_list": LONGEST_LIST, "largest": LARGEST_SI, "examples": EXAMPLES, "no_unit": NO_UNIT, "clock_example": CLOCK_EXAMPLE,
        "number_example": NUMBER_EXAMPLE,
        "quotes": QUOTES, "signs": SIGNS, "fractions": FRACTIONS, "patterns": PATTERNS, "tidies": TIDIES, "squeezes": SQUEEZES, "sentences": SENTENCES,
    }
