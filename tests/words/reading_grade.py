"""How many years of school a text asks for, and the sentences in it.

Source of the grade: Kincaid, Fishburne, Rogers and Chissom 1975, Derivation of new readability formulas for Navy enlisted
personnel, Research Branch Report 8-75: grade = 0.39 words/sentence + 11.8 syllables/word - 15.59.
"""

import re

_SENTENCE_END = re.compile(r"(?<=[.!?])[\"')]*\s+")
_WORD = re.compile(r"[A-Za-z]+(?:'[A-Za-z]+)?|\d+(?:[.,]\d+)*")
_VOWELS = re.compile(r"[aeiouy]+")


def sentences(text: str) -> list[str]:
    """The sentences of a text, each without blanks around it."""
    return [part.strip() for part in _SENTENCE_END.split(" ".join(text.split())) if part.strip()]


def words(text: str) -> list[str]:
    """Its words and numbers; parts of a hyphened word count singly."""
    return _WORD.findall(text)


def syllables(word: str) -> int:
    """Syllables by the usual rule of thumb: groups of vowels, less a silent end; a number counts one a digit."""
    if word[0].isdigit():
        return sum(character.isdigit() for character in word)
    letters = word.lower().split("'")[0]
    count = len(_VOWELS.findall(letters))
    silent_e = re.search(r"[^aeiouy]es?$", letters) and not re.search(r"[^aeiouy]les?$|(?:[sxz]|ch|sh|c|g)es$", letters)
    silent_ed = re.search(r"[^aeiouytd]ed$", letters)
    if count > 1 and (silent_e or silent_ed):
        count -= 1
    return max(count, 1)


def grade(text: str) -> float:
    """The school grade of a text; of nothing, 0."""
    found = words(text)
    if not found:
        return 0.0
    return 0.39 * len(found) / len(sentences(text)) + 11.8 * sum(map(syllables, found)) / len(found) - 15.59
