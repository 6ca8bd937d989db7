"""No sentence of eight words or more is written in two places: the second copy is the one that goes stale.

A caution, a step, an expert or the practice's own wording stands on many pages, but is written once, in its file. A label is no
sentence: the same quantity has the same name wherever it is asked for. A sentence in Python and again in the script of the same
name is one: tests hold the two together.
"""

from collections import defaultdict
from collections.abc import Iterable

from tests.words.reading_grade import sentences, words
from tests.words.texts import Text, book_texts

LEAST_WORDS = 8


def home(path: str) -> str:
    """What a file is a part of: a view in Python and its script are one."""
    return path.rsplit("/", 1)[-1].rsplit(".", 1)[0].replace("-", "_") if path.endswith((".py", ".js")) else path


def written_twice(texts: Iterable[Text]) -> list[str]:
    """Each long sentence that stands in two files: where, and what it says."""
    homes = defaultdict(dict)
    for text in texts:
        for sentence in sentences(text.text):
            said = words(sentence.lower())
            if len(said) >= LEAST_WORDS and sentence.rstrip("\"')").endswith((".", "!", "?")):
                homes[" ".join(said)].setdefault(home(text.path), f"{text.path}:{text.line_of(sentence)}")
    return [f"{' and '.join(places.values())}: {said!r}; write it once, or say what differs" for said, places in homes.items() if len(places) > 1]


def test_no_long_sentence_of_the_book_is_written_in_two_places():
    found = written_twice(book_texts())
    assert found == [], "\n" + "\n".join(found)


def test_a_sentence_written_twice_is_found_with_both_its_places():
    said = "Leave the clippings where they fall, as they feed the lawn."
    texts = [Text("data/tasks/mow.yml", 7, 7, "text", f"Mow dry grass. {said}"), Text("content/about.md", 9, 9, "markdown", said.upper())]
    [found] = written_twice(texts)
    assert "data/tasks/mow.yml:7" in found and "content/about.md:9" in found


def test_short_sentences_labels_and_one_files_own_may_come_again():
    short, label = "Keep children and pets off it.", "Height of the grass on the day it is cut"
    twice = "Each of these examples was worked out with the same open library."
    texts = [
        *(Text(f"data/tasks/{name}.yml", 1, 1, "text", text) for name in ("mow", "edge") for text in (short, label)),
        Text("data/tasks/mow.yml", 3, 3, "note", twice), Text("data/tasks/mow.yml", 4, 4, "note", twice),
    ]  # fmt: skip
    assert written_twice(texts) == []
