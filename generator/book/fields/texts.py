"""Kinds of text that a record may hold. Every one is bounded, and only prose may be written over several lines.

What no text may hold anywhere, such as control signs, is refused where files are read (`characters.py`).
"""

import re
from typing import Annotated

from pydantic import AfterValidator, StringConstraints

IDENTIFIER = r"^[a-z0-9]+(-[a-z0-9]+)*$"
WEB_ADDRESS = r"^https?://\S+$"
WEB_FOLDER = r"^https?://\S+/$"
CURRENCY = r"^[A-Z]{3}$"
COUNTRY_CODE = r"^[A-Z]{2}$"
COLOUR = r"^#[0-9a-fA-F]{6}$"
# No way out of the book: each part of the path begins with a letter, a digit or '_'.
BOOK_PICTURE = r"^[A-Za-z0-9_][A-Za-z0-9_.-]*(/[A-Za-z0-9_][A-Za-z0-9_.-]*)*\.(svg|png)$"
TELEPHONE = r"^\+?[0-9]([0-9 -]*[0-9])?$"
NAME = r"^[a-z][a-z0-9_]*$"
ONE_LINE = r"^[^\n\r\t]*$"
MONTH_DAY = r"^((0[1-9]|1[0-2])-(0[1-9]|[12][0-9])|(0[13-9]|1[0-2])-30|(0[13578]|1[02])-31)$"
# Pattern -> what to say of a text that does not fit it, and what would.
PATTERNS = {
    IDENTIFIER: ("is not an id", "use small letters, digits and single hyphens"),
    NAME: ("cannot be used in a formula", "use small letters, digits and underscores: tine_diameter"),
    ONE_LINE: ("is not one line", "write it on one line, without tabs"),
    WEB_ADDRESS: ("is not a web address", "write all of it, from https:// on, without spaces"),
    WEB_FOLDER: ("is not the address of a folder on the web", "write all of it, from https:// to a closing /"),
    CURRENCY: ("is not a currency", "write its three capital letters, such as AUD"),
    COUNTRY_CODE: ("is not a country", "write its two capital letters, such as AU"),
    COLOUR: ("is not a colour", "write '#' and six digits from 0 to f, in quotes, such as \"#24527a\""),
    BOOK_PICTURE: ("is not a picture of the book", "give the path of an SVG or PNG file from the book's folder, such as logo.svg"),
    TELEPHONE: ("is not a telephone number", "write digits and blanks only, in quotes, such as \"13 11 26\""),
    MONTH_DAY: ("is not a month and a day", "write a day that the month has, both with two digits, in quotes, such as \"09-01\""),
}


def _on_one_line(text: str) -> str:
    """Prose written over several lines, as one: nothing that shows it need care how it was broken."""
    return re.sub(r"\s*[\n\r\t]\s*", " ", text)


Identifier = Annotated[str, StringConstraints(pattern=IDENTIFIER, max_length=60)]
# What a formula or a script calls a value by.
Name = Annotated[str, StringConstraints(pattern=NAME, max_length=60)]
# Prose: a sentence or a few.
Sentence = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=1200), AfterValidator(_on_one_line)]
# A name or a few words, and what heads a part of a page.
Word = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=120, pattern=ONE_LINE)]
Title = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=240, pattern=ONE_LINE)]
ShortWord = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=40, pattern=ONE_LINE)]
# Texts that are read by the generator and not by a reader: an id or key of something, a unit, a formula, a value as it is typed.
LongWord = Annotated[str, StringConstraints(max_length=120, pattern=ONE_LINE)]
UnitName = Annotated[str, StringConstraints(max_length=40, pattern=ONE_LINE)]
FormulaText = Annotated[str, StringConstraints(max_length=1200)]
Typed = Annotated[str, StringConstraints(max_length=400, pattern=ONE_LINE)]
MonthDay = Annotated[str, StringConstraints(pattern=MONTH_DAY, max_length=120)]
Colour = Annotated[str, StringConstraints(pattern=COLOUR, max_length=120)]
BookPicture = Annotated[str, StringConstraints(pattern=BOOK_PICTURE, max_length=200)]
Currency = Annotated[str, StringConstraints(pattern=CURRENCY, max_length=120)]
WebFolder = Annotated[str, StringConstraints(pattern=WEB_FOLDER, max_length=200)]
WebAddress = Annotated[str, StringConstraints(pattern=WEB_ADDRESS, max_length=600)]
