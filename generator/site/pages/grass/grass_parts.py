"""How a grass is told: its parts in the key's words, with drawings, and its place in the key."""

from collections.abc import Mapping
from typing import Any

from generator.book.book import Book
from generator.book.fields.sourced import Statement
from generator.book.records.grass import Grass
from generator.book.records.identification import FEATURES, Feature, HabitWords, Key
from generator.field.grass_key import values_of
from generator.site.page_context import PageContext

# The features whose values have each a drawing in parts/grass-drawing, 'ligule-skin-with-hairs' for one.
DRAWN = ("ligule", "bud", "auricles", "tip", "seedhead")


def drawing(feature: str, value: str, words: str, here: bool = False) -> dict[str, Any]:
    kind = "habit" if feature == "habit" else "part"
    return {"drawing": f"{feature}-{value.replace(' ', '-')}", "kind": kind, "words": words, "here": here}


def words_for(key: Key, feature: str, value: str) -> str:
    habits: Mapping[Any, HabitWords] = key.habits
    features: Mapping[Any, Feature] = key.features
    return habits[value].name if feature == "habit" else features[feature].words[value]


def habit_view(key: Key, grass: Grass, here: PageContext) -> dict[str, Any]:
    """The drawing of how a grass runs, and what that means for renovation."""
    habit = key.habits[grass.habit]
    return {"figure": drawing("habit", grass.habit, habit.name), **here.sourcing.statement(habit)}


def parts_view(key: Key, grass: Grass, here: PageContext) -> dict[str, Any] | None:
    """What to look at on this grass, part by part; None for a grass that does not say."""
    told = grass.identification
    if told is None:
        return None
    rows = []
    for feature in FEATURES:
        values = values_of(grass, feature)
        if feature in key.features and not (feature == "pollen" and values == ("shed",)):
            words = [words_for(key, feature, value) for value in values]
            rows.append({
                "name": key.features[feature].name, "look": key.features[feature].look, "words": " or ".join(words),
                "drawings": [drawing(feature, value, word) for value, word in zip(values, words)] if feature in DRAWN else [],
            })
    return {
        "rows": rows, "width": here.sourcing.figure("Leaf width", told.leaf_width), "note": told.note,
        "marks": here.sourcing.marks(told), "apart": here.sourcing.statement(told.sets_apart),
    }


def look_alikes(book: Book, id: str, here: PageContext) -> list[dict[str, Any]]:
    """What a grass is taken for. A pair is written under one of the two and shown on both."""
    own = [
        _look_alike(each, book.grasses[each.grass].name if each.grass else each.name, here.links.grass(each.grass) if each.grass else "", here)
        for each in book.grasses[id].look_alikes
    ]
    others = [
        _look_alike(each, other.name, here.links.grass(other_id), here)
        for other_id, other in book.grasses.items() for each in other.look_alikes if each.grass == id
    ]
    return own + others


def namesakes(grass: Grass) -> list[str]:
    """Other plants that have its name in theirs: American buffalograss is no buffalo."""
    called = grass.name.casefold()
    return [each.name for each in grass.look_alikes if each.name and called in each.name.partition(" (")[0].casefold()]


def _look_alike(statement: Statement, name: str | None, url: str, here: PageContext) -> dict[str, Any]:
    return {"name": name, "url": url, **here.sourcing.statement(statement)}
