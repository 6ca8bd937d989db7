"""Answers for clients are plain, rest on what was read, and keep the addresses that were handed out."""

from collections import defaultdict
from pathlib import Path
from statistics import median

import pytest

from tests.our_book import book
from tests.words.reading_grade import grade, sentences
from tests.words.texts import plain

BOOK = book()
HANDED_OUT = (Path(__file__).parent / "answer-addresses.txt").read_text(encoding="utf-8").split()
HIGHEST_MEDIAN_GRADE, HIGHEST_GRADE = 8, 9


def texts(id: str) -> list[str]:
    return [plain(text) for _, text in BOOK.answers[id].texts()]


def test_a_client_of_eight_years_schooling_can_read_the_answers():
    grades = {id: grade(" ".join(texts(id))) for id in BOOK.answers}
    assert median(grades.values()) <= HIGHEST_MEDIAN_GRADE
    assert {id: number for id, number in grades.items() if number > HIGHEST_GRADE} == {}


@pytest.mark.parametrize("id", BOOK.answers)
def test_the_short_answer_is_one_to_three_sentences(id):
    assert 1 <= len(sentences(plain(BOOK.answers[id].short.text))) <= 3


def test_no_two_answers_are_found_by_the_same_words():
    asked = defaultdict(list)
    for id, answer in BOOK.answers.items():
        for wording in (answer.question, *answer.asked_as):
            asked[wording.lower().strip(" ?")].append(id)
    assert {wording: ids for wording, ids in asked.items() if len(ids) > 1} == {}


def test_an_address_that_was_handed_out_stays():
    """Clients keep the e-mail. Add a line for each new answer; never take one out."""
    assert sorted(set(HANDED_OUT)) == HANDED_OUT
    assert set(HANDED_OUT) <= {*BOOK.answers, *BOOK.retired_of("answers")}, "an answer that clients hold the address of is gone"
    assert set(BOOK.answers) <= set(HANDED_OUT), "list each new answer here, so that its address stays"
