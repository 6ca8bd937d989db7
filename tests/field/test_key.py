"""The key of grasses: each grass lies at the end of one path, which its own description answers."""

import pytest

from generator.field.grass_key import End, Fork, answer, key_of, ways
from tests.our_book import book


def reached(id: str) -> tuple[str, ...]:
    """Where the answers of one grass lead."""
    key, grass = book().key, book().grasses[id]
    node = key_of(key.questions, book().grasses)
    while isinstance(node, Fork):
        said = answer(key.questions[node.question], grass)
        assert said is not None, f"{id} has no one answer to question {node.question + 1}"
        node = node.yes if said else node.no
    return node.grasses


@pytest.mark.parametrize("id", sorted(book().grasses))
def test_a_grass_is_reached_by_its_own_answers_and_alone(id: str) -> None:
    assert reached(id) == (id,)


def test_each_grass_lies_at_the_end_of_one_path() -> None:
    ends = [grass for way in ways(key_of(book().key.questions, book().grasses)) for grass in way.grasses]
    assert sorted(ends) == sorted(book().grasses)


def test_no_question_is_there_for_nothing_and_none_is_asked_twice_on_a_path() -> None:
    asked = set()
    for way in ways(key_of(book().key.questions, book().grasses)):
        positions = [position for position, _ in way.answers]
        assert len(positions) == len(set(positions)) <= 7
        asked.update(positions)
    assert asked == set(range(len(book().key.questions)))


def test_a_new_grass_falls_into_its_place_by_its_own_words() -> None:
    """One that is like couch in every part stands beside couch; nothing else moves."""
    grasses = {**book().grasses, "new": book().grasses["couch"].model_copy(update={"name": "New"})}
    ends = {way.grasses: way.answers for way in ways(key_of(book().key.questions, grasses))}
    before = {way.grasses: way.answers for way in ways(key_of(book().key.questions, book().grasses))}
    assert ends[("couch", "new")] == before[("couch",)]
    assert {ids: way for ids, way in ends.items() if "new" not in ids} == {ids: way for ids, way in before.items() if ids != ("couch",)}


def test_what_plants_differ_in_is_not_asked_of_them() -> None:
    """Kikuyu with either ligule: the question about the ligule cannot be put while it is in play."""
    told = book().grasses["kikuyu"].identification.model_copy(update={"ligule": ("hairs", "skin")})
    grasses = {**book().grasses, "kikuyu": book().grasses["kikuyu"].model_copy(update={"identification": told})}
    way = next(way for way in ways(key_of(book().key.questions, grasses)) if "kikuyu" in way.grasses)
    assert "ligule" not in {book().key.questions[position].feature for position, _ in way.answers}


def test_a_key_of_no_grass_ends_at_once() -> None:
    assert key_of(book().key.questions, {}) == End(())


# Checked against keys that extension services have published, by the features they part the same grasses with.
PUBLISHED = (
    # The Ohio State University, Turfgrass identification: not a fringe of hairs, folded, boat-shaped tip, short ligule, rhizomes.
    ("kentucky-bluegrass", {"bud": ("folded",), "tip": ("boat",)}),
    # The same: folded, pointed tip, red at the base, bunch type.
    ("perennial-ryegrass", {"bud": ("folded",), "tip": ("pointed",), "runners": ("none",)}),
    # The same: very fine leaves.
    ("fine-fescue", {"bud": ("folded",), "leaf": ("needle",)}),
    # The same: rolled, bunch type, auricle hard to detect or absent.
    ("tall-fescue", {"bud": ("rolled",), "runners": ("none",)}),
    # Colorado State University Turf Program: rolled, ligule a fringe of hairs.
    ("zoysia", {"bud": ("rolled",), "ligule": ("hairs",)}),
    # The same: may appear rolled but is folded, ligule a fringe of hairs.
    ("couch", {"bud": ("folded",), "ligule": ("hairs",)}),
    # UC Statewide IPM: folded, no auricles, fringe of hairs, boat-shaped tip.
    ("buffalo", {"bud": ("folded",), "auricles": ("none",), "ligule": ("hairs",)}),
    # University of Georgia: folded, a short membrane with short hairs across the top, no auricles, a slender spike.
    ("centipede", {"bud": ("folded",), "ligule": ("skin with hairs",), "auricles": ("none",), "seedhead": ("spike",)}),
    # Flora of New Zealand 5: a densely ciliate rim; at first tightly folded.
    ("kikuyu", {"bud": ("folded",), "ligule": ("hairs",), "seedhead": ("hidden",)}),
    # Horticultural Flora of South-eastern Australia: rolled in bud, ligule membranous, a panicle.
    ("bentgrass", {"bud": ("rolled",), "ligule": ("skin",), "seedhead": ("branched",)}),
    # Common Australian garden weeds: ligule 1 mm long and membranous; two or three, rarely four, spikes.
    ("blue-couch", {"ligule": ("skin",), "seedhead": ("few fingers",)}),
)


@pytest.mark.parametrize(("id", "told"), PUBLISHED, ids=[id for id, _ in PUBLISHED])
def test_a_grass_is_described_as_published(id: str, told: dict[str, tuple[str, ...]]) -> None:
    described = book().grasses[id].identification
    assert {feature: getattr(described, feature) for feature in told} == told
