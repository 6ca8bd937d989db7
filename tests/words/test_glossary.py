"""The glossary is plain, tells each thing once, and leads on from every word that a task or a grass hangs on."""

from collections import defaultdict
from statistics import median

from tests.our_book import book
from tests.words.reading_grade import grade, sentences, words
from tests.words.texts import plain

BOOK = book()
TERMS = BOOK.glossary.terms
LEAST_TERMS = 120
HIGHEST_MEDIAN_GRADE = 8


def test_there_are_words_enough_to_look_up():
    assert len(TERMS) >= LEAST_TERMS


def test_its_words_are_explained_in_plainer_ones():
    assert median(grade(plain(term.means)) for term in TERMS.values()) <= HIGHEST_MEDIAN_GRADE


def test_a_meaning_is_one_to_three_sentences():
    assert {id: term.means for id, term in TERMS.items() if len(sentences(plain(term.means))) > 3} == {}


def test_no_two_words_share_a_name_or_a_meaning():
    named, meant = defaultdict(set), defaultdict(set)
    for id, term in TERMS.items():
        named[term.name.casefold()].add(id)
        for sentence in sentences(plain(term.means)):
            meant[" ".join(words(sentence.lower()))].add(id)
    assert {name: ids for name, ids in {**named, **meant}.items() if len(ids) > 1} == {}


def test_a_name_elsewhere_is_another_word_than_the_books_own():
    """A list of names that repeats the heading tells a reader nothing."""
    same = {id: term.names for id, term in TERMS.items() if any(term.name.casefold() == name.casefold() for names in term.names.values() for name in names)}
    assert same == {}
