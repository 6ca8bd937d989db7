"""The key of grasses reaches each grass, and asks about what grasses say of themselves."""

from collections.abc import Iterator
from typing import get_args

from generator.book.book import PartialBook
from generator.book.records.grass import Habit, SeasonGroup
from generator.book.records.identification import FEATURES, Key
from generator.checks.check import Check
from generator.field.grass_key import values_of
from generator.findings import Finding, suggestion

HERE = ("key", "key")
OF_EVERY_GRASS = {"habit": get_args(Habit), "season_group": get_args(SeasonGroup)}


def _check(book: PartialBook) -> Iterator[Finding]:
    yield from _pairs(book)
    if book.key is not None:
        yield from _values(book, book.key)
        yield from _grasses(book, book.key)


def _pairs(book: PartialBook) -> Iterator[Finding]:
    """Each pair of grasses that look alike is written once."""
    seen: dict[frozenset[str], str] = {}
    for id, grass in book.grasses.items():
        for position, other in enumerate(grass.look_alikes):
            if other.grass is None:
                continue
            where = book.where("grasses", id, "look_alikes", position, "grass")
            pair = frozenset((id, other.grass))
            if len(pair) == 1:
                yield Finding(where, f"{grass.name} is named as its own look-alike", "name the other grass, or take it out")
            elif pair in seen:
                yield Finding(where, f"this pair is already in data/grasses/{seen[pair]}.yml", "take one of the two out: it is shown on both pages")
            seen.setdefault(pair, id)


def _values(book: PartialBook, key: Key) -> Iterator[Finding]:
    for position, question in enumerate(key.questions):
        allowed = FEATURES.get(question.feature) or OF_EVERY_GRASS[question.feature]
        for index, value in enumerate(question.yes):
            if value not in allowed:
                where = book.where(*HERE, "questions", position, "yes", index)
                yield Finding(where, f"'{value}' is not a value of {question.feature}", suggestion(value, allowed, f"the values are: {', '.join(allowed)}"))
        if question.feature in FEATURES and question.feature not in key.features:
            where = book.where(*HERE, "questions", position, "feature")
            yield Finding(where, f"the key asks about '{question.feature}' but does not say how to look at it", "add it under 'features' of data/key.yml")
    for name, feature in key.features.items():
        for value in feature.words:
            if value not in FEATURES[name]:
                where = book.where(*HERE, "features", name, "words", value, "[key]")
                yield Finding(where, f"'{value}' is not a value of {name}", suggestion(value, FEATURES[name], f"the values are: {', '.join(FEATURES[name])}"))


def _grasses(book: PartialBook, key: Key) -> Iterator[Finding]:
    wordless: set[tuple[str, str]] = set()
    for id, grass in book.grasses.items():
        if grass.identification is None:
            where = book.where("grasses", id, "name")
            what = f"the key cannot reach {grass.name}: it does not say how to tell it"
            yield Finding(where, what, f"add 'identification' with {', '.join(FEATURES)}, leaf_width and sets_apart")
        if grass.habit not in key.habits:
            wordless.add(("habits", grass.habit))
        for name, feature in key.features.items():
            wordless.update((name, value) for value in values_of(grass, name) if value not in feature.words)
    for part, value in sorted(wordless):
        place = ("habits",) if part == "habits" else ("features", part, "words")
        yield Finding(book.where(*HERE, *place), f"the key has no words for '{value}', which a grass has", f"add '{value}' here")


CHECK = Check("key-of-grasses", "The key of grasses reaches each grass and asks only what grasses say of themselves.", ("grasses", "key"), _check)
