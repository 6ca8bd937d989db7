"""The book keeps to its style, and each way of departing from it is found, at its line, with what to write instead."""

import pytest

from tests.words.house_style import findings, style
from tests.words.texts import Text, book_texts, guide_texts, plain


def test_the_book_keeps_to_its_style():
    found = findings((*book_texts(), *guide_texts()))
    assert found == [], "\n" + "\n".join(map(str, found))


def test_all_the_book_is_read():
    folders = {"/".join(text.path.split("/")[:2]) for text in book_texts()}
    assert {"data/answers", "data/grasses", "content/about.md", "generator/site", "generator/season"} <= folders
    assert {text.path for text in guide_texts()} >= {"README.md", "DEVELOPERS.md"}


@pytest.mark.parametrize(
    ("wrong", "instead"),
    [
        ("Water it in order to settle the sand.", "to"),
        ("Utilise the coarse brush.", "use"),
        ("The color of the leaf turns pale.", "colour"),
        ("Spread the fertilizer by hand.", "fertiliser"),
        ("Rake the the sand level.", "as it says"),
        ("We recieve the turf at the gate.", "receive"),
        ("It is a win-win situation for the lawn.", "as it says"),
        ("Spread Anyfeed™ over the seed.", "the kind of product"),
        ("Where winters are cold it is 'Almanac' that lives.", "one hardy kind"),
        ("The price hangs on the area.", "depend on"),
        ("Couch bears frost.", "copes with"),
        ("The ring goes on growing.", "keeps"),
        ("Your rights as a buyer stand besides.", "on top of that"),
        ("Driving there comes on top.", "extra"),
        ("The germination stands on the label.", "is on the label"),
        ("The least you charge is for a small lawn.", "minimum charge"),
        ("The amount is an assumption of ours.", "our own"),
        ("Fine fescue bears shade.", "copes with"),
        ("Told not to stand much traffic.", "said not to"),
        ("Rake it lightly, for it asks little else.", "because"),
        ("Wait for a calmer hour. Else use a drop spreader.", "otherwise"),
        ("Plant three to a hand's breadth.", "width"),
        ("Couch browns off and the others sleep.", "dormant"),
    ],
)
def test_each_departure_is_found_where_it_stands(wrong, instead):
    right = Text("data/right.yml", 3, 3, "text", "Keep off the grass for a week.")
    found = findings([right, Text("DEVELOPERS.md", 1, 1, "text", wrong)])
    assert any(str(each).startswith("DEVELOPERS.md:1: ") and instead in each.instead for each in found), found
    assert not any(each.path == right.path for each in found)


def test_a_finding_names_its_line_in_a_folded_text():
    text = next(text for text in guide_texts() if text.path == "README.md" and text.last_line > text.line + 2)
    last_word = text.text.split()[-1]
    assert text.line < text.line_of(last_word) <= text.last_line


def test_every_check_that_is_off_says_why():
    assert all(len(str(reason).split()) > 3 for reason in style()["turned_off"].values())
    assert not set(style()["turned_off"]) & set(style()["checks"])


def test_every_exception_is_still_needed():
    said = " ".join(plain(text.text) for text in (*book_texts(), *guide_texts())).lower()
    excepted = [*style()["allowed"], *style()["spelled_right"], *style()["british_too"]]
    assert [words for words in excepted if words not in said] == []
