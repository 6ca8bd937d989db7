"""What a job buys, from products made up here. That seed is of the lawn's own grass is common practice."""

import pytest

from generator.book.records.practice import Practice, Product
from generator.book.records.step import Purchase, Step
from generator.jobs.amounts import Stock, no_product, product_of

OTHERS = {"feed": Product(name="Feed", for_tasks=("feed",)), "any-seed": Product(name="Any seed", for_tasks=("overseed",))}
FESCUE = {"fescue-seed": Product(name="Fescue seed", for_tasks=("overseed",), for_grasses=("tall-fescue",))}
SEED = Purchase(result="seed")


BUY = Purchase(result="seed")


def step(task):
    return Step(id="sow", day=0, task=task, title="Sow", say="Sow it.", source="common practice")


def stock(products, grass):
    practice = Practice(
        name="Example Lawns", invented=True, about="Made up.", home_place="town", home_grass="couch", feed="feed", products=products,
    )
    return Stock(practice, grass, grass.replace("-", " ").capitalize())


@pytest.mark.parametrize(("products", "grass", "product"), [
    (OTHERS | FESCUE, "tall-fescue", "fescue-seed"),
    (OTHERS | FESCUE, "bentgrass", "any-seed"),
    (FESCUE | OTHERS, "tall-fescue", "fescue-seed"),
    (FESCUE, "bentgrass", None),
])
def test_the_seed_that_names_the_grass_comes_first_and_another_grass_s_never(products, grass, product):
    assert product_of(SEED, step("overseed"), stock(products, grass)) == product


def test_a_product_that_the_plan_names_is_bought_for_any_grass():
    """Winter ryegrass goes into a couch lawn."""
    assert product_of(Purchase(result="seed", product="fescue-seed"), step("overseed"), stock(FESCUE, "couch")) == "fescue-seed"


def test_a_feed_is_the_practice_s_own():
    assert product_of(Purchase(result="product"), step("feed"), stock(OTHERS, "couch")) == "feed"


def test_what_is_not_there_is_said_with_the_grass_where_it_is_for_want_of_its_seed():
    assert "Bentgrass" in no_product(BUY, step("overseed"), stock(FESCUE, "bentgrass"))
    assert "no price" in no_product(BUY, step("lime"), stock(FESCUE, "bentgrass"))
