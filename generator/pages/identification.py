"""How a grass is told: its parts in the key's words, with drawings, and its place in the key."""

from typing import Any

from generator.model.book import Book
from generator.model.grass import Grass
from generator.model.identification import FEATURES, Key
from generator.pages.desk import Desk
from generator.turf.key import values_of

# The features whose values have each a drawing in components/grass-drawing, 'ligule-skin-with-hairs' for one.
DRAWN = ("ligule", "bud", "auricles", "tip", "seedhead")


def drawing(feature: str, value: str, words: str, here: bool = False) -> dict[str, Any]:
    kind = "habit" if feature == "habit" else "part"
    return {"drawing": f"{feature}-{value.replace(' ', '-')}", "kind": kind, "words": words, "here": here}


def words_for(key: Key, feature: str, value: str) -> str:
    return key.habits[value].name if feature == "habit" else key.features[feature].words[value]


def habit_view(key: Key, grass: Grass, desk: Desk) -> dict[str, Any]:
    """The drawing of how a grass runs, and what that means for renovation."""
    habit = key.habits[grass.habit]
    return {"figure": drawing("habit", grass.habit, habit.name), **desk.sourcing.statement(habit)}


def parts_view(key: Key, grass: Grass, desk: Desk) -> dict[str, Any] | None:
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
        "rows": rows, "width": desk.sourcing.figure("Leaf width", told.leaf_width), "note": told.note,
        "marks": desk.sourcing.marks(told), "apart": desk.sourcing.statement(told.sets_apart),
    }


def look_alikes(book: Book, id: str, desk: Desk) -> list[dict[str, Any]]:
    """What a grass is taken for. A pair is written under one of the two and shown on both."""
    own = [
        _look_alike(each, book.grasses[each.grass].name if each.grass else each.name, desk.links.grass(each.grass) if each.grass else "", desk)
        for each in book.grasses[id].look_alikes
    ]
    others = [
        _look_alike(each, other.name, desk.links.grass(other_id), desk)
        for other_id, other in book.grasses.items() for each in other.look_alikes if each.grass == id
    ]
    return own + others


def _look_alike(statement, name: str, url: str, desk: Desk) -> dict[str, Any]:
    return {"name": name, "url": url, **desk.sourcing.statement(statement)}
