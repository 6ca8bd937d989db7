"""The key as a page: following the links from the first question, with a grass in the hand, ends at its name."""

from datetime import date

import pytest

from generator.field.grass_key import answer
from generator.site.page_context import PageContext
from generator.site.pages.grass.view import grass_page
from generator.site.pages.key.view import NONE, key_page
from tests.our_book import seasons


def view() -> dict:
    return key_page(seasons().book, seasons().book.key, PageContext(seasons().book, "grasses/key", date(2027, 2, 10))).context


@pytest.mark.parametrize("id", sorted(seasons().book.grasses))
def test_links_lead_from_the_first_question_to_each_grass(id: str) -> None:
    book, context = seasons().book, view()
    questions = {each["id"]: each for each in context["key"]["questions"]}
    asked = {question.ask: question for question in book.key.questions}
    here, steps = "q1", 0
    while here in questions:
        said = answer(asked[questions[here]["ask"]], book.grasses[id])
        here, steps = questions[here]["if_yes" if said else "if_no"]["to"], steps + 1
        assert steps <= len(questions)
    end = next(each for each in context["key"]["ends"] if each["id"] == here)
    assert [grass["name"] for grass in end["grasses"]] == [book.grasses[id].name]
    assert end["grasses"][0]["apart"] == book.grasses[id].identification.sets_apart.text


def test_every_link_of_the_key_has_its_target_once() -> None:
    key = view()["key"]
    ids = [each["id"] for each in (*key["questions"], *key["ends"])]
    targets = {each[answer]["to"] for each in key["questions"] for answer in ("if_yes", "if_no")}
    assert len(ids) == len(set(ids))
    assert targets == set(ids) - {"q1"}
    assert key["none"] == NONE


def test_a_pair_that_look_alike_is_told_apart_on_both_pages() -> None:
    book = seasons().book
    pages = {
        id: grass_page(book, id, PageContext(book, f"grasses/{id}", date(2027, 2, 10)), {}, []).context["look_alikes"] for id in ("couch", "blue-couch")
    }
    one = next(each for each in pages["couch"] if each["name"] == book.grasses["blue-couch"].name)
    other = next(each for each in pages["blue-couch"] if each["name"] == book.grasses["couch"].name)
    assert one["text"] == other["text"]


@pytest.mark.parametrize("id", sorted(seasons().book.grasses))
def test_every_grass_has_the_same_depth(id: str) -> None:
    book = seasons().book
    context = grass_page(book, id, PageContext(book, f"grasses/{id}", date(2027, 2, 10)), {}, []).context
    assert context["runs"]["text"] and context["parts"]["apart"]["text"] and context["water"] and context["recognise"]
    assert context["look_alikes"], "a look-alike"
    assert len(context["names"]["rows"]) == 5
    assert {each["where"].partition(",")[0] for each in context["weed_status"]} == {"Australia", "New Zealand", "South Africa", "United States", "Britain"}
    assert {each["name"] for each in context["tolerances"]} >= {"Frost", "Shade", "Drought", "Salt", "Wear"}
    assert {"Ligule", "Young leaf", "Ears at the collar", "Leaf tip", "Leaf", "Runners", "Seed head"} <= {row["name"] for row in context["parts"]["rows"]}
