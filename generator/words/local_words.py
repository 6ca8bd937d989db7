"""What people of a country say where the texts say otherwise: grasses by the name they have there, the seasons, the order of a date, the units.

The texts are written once, in the practice's own words. A page's script puts the words of the reader's country in their place
(site/assets/local/2-local-words.js), and so does whatever is made for a place of that country. Twin: local words.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from generator.book.book import PartialBook
from generator.book.records.grass import Grass
from generator.season.calendar_days import MONTHS
from generator.words.typed_figures import in_us_units

# '3 September', '12 to 18 Oct', '3 September 2026'. A pattern for both sides: blanks spelt out, groups by number, nothing that looks behind.
DATE = (
    r"\b(?:((?:Mon|Tue(?:s)?|Wed(?:nes)?|Thu(?:rs)?|Fri|Sat(?:ur)?|Sun)(?:day)?)[ \n])?([0-9]{1,2})((?: to | ?[–-] ?)[0-9]{1,2})?[ \n]("
    + "|".join(f"{month}|{month[:3]}\\b" for month in MONTHS) + r")(?:,?[ \n]([0-9]{4}))?(?!\w)"
)
# Before a word that is part of an address or an id, and no word of a sentence.
NO_WORD = "/=#&_-"
# After a capital that begins somebody's name, and no sentence: 'Autumn Reed'.
SOMEBODY = r"^ [A-Z][a-z]"


@dataclass(frozen=True)
class LocalWords:
    """said: a word or name in small letters, to what is said there; one that stays as it is stands for itself, so that no part of it is replaced."""

    said: dict[str, str]
    month_first: bool = False
    us_units: bool = False

    @cached_property
    def pattern(self) -> str:
        """Finds what may be replaced, the longest first; empty where nothing is."""
        forms = sorted(self.said, key=lambda form: (-len(form), form))
        return r"\b(?:" + "|".join(re.escape(form).replace(r"\ ", r"[ \n]").replace(r"\-", "-") for form in forms) + r")(?!\w)" if forms else ""

    def told(self, text: str) -> str:
        """A text of the book as people there say it."""
        if self.us_units:
            text = in_us_units(text)
        if self.pattern:
            text = re.sub(self.pattern, self._word, text, flags=re.IGNORECASE)
        return re.sub(DATE, _month_first, text) if self.month_first else text

    def _word(self, found: re.Match[str]) -> str:
        said = self.said[found[0].replace("\n", " ").casefold()]
        if found.start() and found.string[found.start() - 1] in NO_WORD:
            return found[0]
        if found[0][0].isupper() and re.match(SOMEBODY, found.string[found.end():]):
            return found[0]
        return said[0].upper() + said[1:] if found[0][0].isupper() else said


def local_words(book: PartialBook, country: str) -> LocalWords:
    """country: an id of the book."""
    record = book.countries[country]
    return LocalWords({**_names(book, country), **{word.casefold(): said for word, said in record.words.items()}}, record.month_first, record.us_units)


def _names(book: PartialBook, country: str) -> dict[str, str]:
    """The grasses of the book, as texts call them, to their first name in the country.

    A name that people there know too stays, and so does one that the local name has in it. A name that is nobody's first is one for several
    grasses ('bentgrass') and stays as well. Other plants that have such a name in theirs ('English couch') are no grass of the book.
    """
    called = {id: _called(grass) for id, grass in book.grasses.items()}
    said: dict[str, str] = {}
    for id, grass in book.grasses.items():
        if theirs := grass.names.get(country):
            # 'saltwater couch' is no couch.
            others = [form for other, forms in called.items() if other != id for form in forms]
            names = {name.casefold() for names in grass.names.values() for name in names}
            known = {name.casefold() for name in theirs}
            stays = called[id] and (called[id][0] in known or _in(called[id][0], theirs[0].casefold()))
            for form in (*called[id], *sorted(name for name in names if any(_in(other, name) for other in others) and not any(_in(own, name) for own in called[id]))):
                said[form] = form if form in known or (stays and form in called[id]) else theirs[0]
    strangers = {each.casefold() for each in _strangers(book)} - said.keys()
    kept = {each: each for each in sorted(strangers) if any(_in(form, each) for form in said)}
    return {**said, **kept} if any(form != told for form, told in said.items()) else {}


def _called(grass: Grass) -> tuple[str, ...]:
    """What texts call it, in small letters."""
    name, names = grass.name.casefold(), [tuple(map(str.casefold, each)) for each in grass.names.values()]
    forms = (name, f"{name} grass") if any(name == each[0] for each in names) else ()
    return tuple(form for form in forms if any(form in each for each in names))


def _in(part: str, whole: str) -> bool:
    return re.search(rf"\b{re.escape(part)}\b", whole) is not None


def _strangers(book: PartialBook) -> Iterator[str]:
    """Names of plants that are taken for a grass of the book, and botanical names."""
    lookalikes = [each.name for grass in book.grasses.values() for each in grass.look_alikes if each.name]
    lookalikes += [each.name for each in book.key.strangers] if book.key else []
    for name in lookalikes:
        yield from re.split(r", | or ", name.partition(" (")[0])
    for grass in book.grasses.values():
        yield from re.findall(r"[A-Z][a-z]+ [a-z]+", grass.botanical_name)


def _month_first(found: re.Match[str]) -> str:
    weekday, day, until, month, year = (each or "" for each in found.groups())
    return f"{weekday}{', ' * bool(weekday)}{month} {day}{until}{', ' * bool(year)}{year}"
