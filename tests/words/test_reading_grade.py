"""The measure itself, against syllables counted in a dictionary and sums done by hand."""

import pytest

from tests.words.reading_grade import grade, sentences, syllables, words

# Syllables as any dictionary parts them: wa-ter, ev-er-y, ta-ble, sprin-kler.
DICTIONARY = {
    "grass": 1, "leave": 1, "leaves": 1, "stripe": 1, "mowed": 1, "pushed": 1, "water": 2, "watered": 2, "table": 2,
    "needed": 2, "fortnight": 2, "sprinkler": 2, "patches": 2, "edges": 2, "shower": 2, "renovation": 4, "fertiliser": 4,
    "irrigation": 4, "summer": 2, "sand": 1, "restrictions": 3,
}  # fmt: skip


@pytest.mark.parametrize(("word", "count"), DICTIONARY.items())
def test_syllables_agree_with_a_dictionary(word, count):
    assert syllables(word) == count


def test_sentences_part_at_their_ends_and_not_at_a_decimal_point():
    assert sentences("Keep off. Water 2.5 mm a day! Why? It dries.") == ["Keep off.", "Water 2.5 mm a day!", "Why?", "It dries."]


def test_a_hyphened_word_is_two_and_an_apostrophe_parts_none():
    assert words("Top-dress the dog's lawn") == ["Top", "dress", "the", "dog's", "lawn"]


def test_grade_follows_the_published_formula():
    # 6 words, 1 sentence, 7 syllables: 0.39 x 6 + 11.8 x 7/6 - 15.59 = 2.34 + 13.7667 - 15.59 = 0.5167
    assert grade("Keep the lawn damp all summer.") == pytest.approx(0.5167, abs=0.0001)


def test_nothing_has_no_grade():
    assert grade("") == 0
