"""How much a job takes, what is bought and what is carried away: sums by hand, with products made up here and the book's own calculators."""

import pytest

from generator.book.records.practice import Product
from generator.calculators.calculate import Amount
from generator.calculators.chosen import Chosen
from generator.jobs.amounts import LAWN, Purchased, Spoil, Stock, line_key, pack_si, product_of, shopping, spoil, spoil_holds, takes_the_lawn, worked
from generator.units import unit
from tests.jobs.made_up import CALCULATORS, a_practice, a_step
from tests.jobs.test_plan import a_grass

PRODUCTS = {
    "granule": {"name": "Granule", "nitrogen_percent": 20, "pack_mass_kg": 20, "price": 25.5},
    "sand": {"name": "Sand", "pack_volume_l": 500, "price": 40, "for_tasks": ["topdress"]},
    "gypsum": {"name": "Gypsum", "for_tasks": ["gypsum"]},
    "fescue-seed": {"name": "Fescue seed", "pack_mass_kg": 10, "for_tasks": ["overseed"], "for_grasses": ["tall-fescue"]},
}
PRACTICE = a_practice(products=PRODUCTS)
STOCK = Stock(PRACTICE, "couch", "Couch")


def feeding(id="feed", task="feed", fill=None, **more):
    """At 3 g of nitrogen to the square metre from 20 %: 15 g of product, so 3000 m2 take 45 kg."""
    filled = {"nitrogen_rate": "3 g/m2", "nitrogen_percent": "20 %", **(fill or {})}
    return a_step(id, task, quantities=[{"calculator": "feed-for-nitrogen", "fill": filled, "buy": {"result": "product"}, **more}])


def sanding(id="topdress", task="topdress", **more):
    """5 mm on so many square metres; of 100 m2 that is half a cubic metre."""
    return a_step(id, task, quantities=[{"calculator": "topdressing-sand", "fill": {"depth": "5 mm"}, "buy": {"result": "volume"}, **more}])


def all_worked(*steps, area_m2):
    return [(step, worked(step, Chosen(practice=PRACTICE, grass=a_grass()), CALCULATORS, area_m2)) for step in steps]


def bought(*steps, area_m2):
    return shopping(all_worked(*steps, area_m2=area_m2), STOCK)


def test_forty_five_kilograms_in_bags_of_twenty_are_three_bags():
    (line,) = bought(feeding(), area_m2=3000)
    assert line.amount.value() == pytest.approx(45) and str(line.amount.unit) == "kg"
    assert (line.name, line.product, line.packs, line.price_each, line.cost, line.steps, line.pack_si, line.note) == (
        "Granule", "granule", 3, 25.5, 76.5, ("feed",), 20, None,
    )


def test_four_full_packs_stay_four_and_a_little_more_is_five():
    # 4 bags of 20 kg are 80 kg, at 15 g/m2 the feed of 5333.3 m2.
    assert bought(feeding(), area_m2=80 / 0.015)[0].packs == 4
    assert bought(feeding(), area_m2=80.01 / 0.015)[0].packs == 5


def test_a_product_of_several_steps_is_added_up_before_it_is_packed():
    """Twice 12 kg are 24 kg: two bags, where each apart would be one and one."""
    (line,) = bought(feeding(), feeding("feed-later"), area_m2=1600 / 2)
    assert line.amount.value() == pytest.approx(24) and line.packs == 2 and line.steps == ("feed", "feed-later")
    sand, feed = bought(sanding(), feeding(), area_m2=100)
    assert (sand.product, feed.product) == ("sand", "granule")


def test_sand_is_sold_by_volume():
    """5 mm on 240 m2 are 1.2 m3: three packs of half a cubic metre."""
    (line,) = bought(sanding(), area_m2=240)
    assert (line.amount.si, line.packs, line.pack_si, line.cost) == (pytest.approx(1.2), 3, pytest.approx(0.5), 120)


def test_what_the_practice_has_no_product_for_is_bought_under_the_step_s_name_and_says_why():
    lime, seed = bought(feeding("lime", "lime"), feeding("sow", "overseed"), area_m2=100)
    assert (lime.name, lime.product, lime.packs, lime.price_each, lime.cost, lime.pack_si) == ("Lime", None, None, None, None, None)
    assert lime.note == "The practice's file has no product for this, so it has no price."
    assert seed.note == "No product for Couch in the practice's file, so it has no price." and seed.name == "Sow"
    assert lime.amount.value() == pytest.approx(1.5)
    assert line_key(lime_buy := feeding("lime", "lime").quantities[0].buy, feeding("lime", "lime"), STOCK, "a mass") == "lime a mass"
    assert line_key(lime_buy, feeding(), STOCK, "a mass") == "granule"


def test_two_things_without_a_product_are_two_lines_and_one_of_them_twice_is_one():
    found = bought(feeding("lime", "lime"), feeding("sulphur", "sulphur"), feeding("lime-later", "lime"), area_m2=100)
    assert [(line.name, line.steps) for line in found] == [("Lime", ("lime", "lime-later")), ("Sulphur", ("sulphur",))]


def test_a_product_without_a_pack_is_bought_by_weight_alone():
    (line,) = bought(feeding("gypsum", "gypsum"), area_m2=100)
    assert (line.product, line.packs, line.price_each, line.cost, line.note) == ("gypsum", None, None, None, None)


def test_nothing_is_bought_for_what_has_no_answer_or_is_not_for_sale():
    no_answer = a_step("spray", "spray-out", quantities=[{"calculator": "tank-mix", "buy": {"result": "product"}}])
    for_show = a_step("look", quantities=[{"calculator": "topdressing-sand"}])
    assert bought(no_answer, for_show, area_m2=100) == ()
    assert [line.product for line in bought(no_answer, for_show, sanding(), area_m2=100)] == ["sand"]


def test_what_a_pack_holds_counts_only_in_its_own_kind():
    kilograms, cubic_metres = unit("kg"), unit("m3")
    bag, bulk = Product(name="Bag", pack_mass_kg=25), Product(name="Bulk", pack_volume_l=1000)
    assert [pack_si(product, wanted) for product in (bag, bulk) for wanted in (kilograms, cubic_metres)] == [25, None, None, pytest.approx(1)]
    # One that says both is counted in what is bought.
    either = Product(name="Either", pack_mass_kg=20, pack_volume_l=40)
    assert [pack_si(either, wanted) for wanted in (kilograms, cubic_metres, unit("m2"))] == [20, pytest.approx(0.04), None]


def test_a_line_without_a_pack_or_a_price_has_no_cost():
    kilograms = unit("kg")
    amount = Amount(45.0, kilograms, kilograms)
    assert [Purchased("Feed", "feed", amount, packs, price, ()).cost for packs, price in ((3, 2.5), (None, 2.5), (3, None))] == [7.5, None, None]


def test_the_lawn_is_the_area_unless_the_plan_says_another():
    (whole,) = worked(sanding(), Chosen(practice=PRACTICE), CALCULATORS, 240)
    assert whole.filled["area"] == LAWN == "this lawn" and whole.filled["depth"] == "set by this plan"
    part = a_step("patch", quantities=[{"calculator": "topdressing-sand", "fill": {"area": "10 m2", "depth": "5 mm"}}])
    (some,) = worked(part, Chosen(practice=PRACTICE), CALCULATORS, 240)
    assert some.results["volume"].value() == pytest.approx(0.05) and some.filled["area"] == "set by this plan"
    assert [takes_the_lawn(step.quantities[0], CALCULATORS["topdressing-sand"]) for step in (sanding(), part)] == [True, False]
    no_area = a_step("count", quantities=[{"calculator": "machine-hours"}]).quantities[0]
    assert not takes_the_lawn(no_area, CALCULATORS["spoil-loads"])


def test_what_is_bound_is_filled_in_and_a_plan_s_own_word_comes_first():
    """The calculator of a feed takes the nitrogen of the practice's feed, 20 %; a plan may say 10 %, which takes twice as much."""
    own, plan_s = (feeding(fill=fill) for fill in ({"nitrogen_percent": "practice.feed.nitrogen_percent"}, {"nitrogen_percent": "10 %"}))
    assert [bought(step, area_m2=100)[0].amount.value() for step in (own, plan_s)] == [pytest.approx(1.5), pytest.approx(3)]
    bound = a_step("feed", "feed", quantities=[{"calculator": "feed-for-nitrogen", "fill": {"nitrogen_rate": "3 g/m2"}}])
    (found,) = worked(bound, Chosen(practice=PRACTICE), CALCULATORS, 100)
    assert found.filled["nitrogen_percent"] == "from Granule, nitrogen" and found.results["product"].value() == pytest.approx(1.5)


def test_a_label_s_rate_is_asked_for_and_what_is_measured_has_no_answer():
    (spray,) = worked(a_step("spray", quantities=[{"calculator": "tank-mix"}]), Chosen(practice=PRACTICE), CALCULATORS, 100)
    (sand,) = worked(sanding(), Chosen(practice=PRACTICE), CALCULATORS, 100)
    assert spray.needs_label and not sand.needs_label
    (measured,) = worked(sanding(measured=True), Chosen(practice=PRACTICE), CALCULATORS, 100)
    assert sand.results and measured.results == {} and measured.run.results


def test_a_warning_of_the_answer_is_said_and_a_remark_on_an_input_is_not():
    """Seven loads are a lot of trips, says the calculator of loads; that an input is seldom so large is for whoever typed it."""
    def said(volume, **more):
        step = a_step("tip", quantities=[{"calculator": "spoil-loads", "fill": {"volume": volume}, **more}])
        (found,) = worked(step, Chosen(), CALCULATORS, 100)
        return found.said

    assert said("8 m3") == ["That is a lot of trips. A hired skip or bin may cost less."]
    assert said("1 m3") == [] and said("8 m3", measured=True) == []
    assert len(said("200 m3")) == 1  # Over the usual 100 m3, which is a remark on the input.


def test_seed_for_the_lawn_s_own_grass_only():
    step = a_step("sow", "overseed", quantities=[{"calculator": "seeding", "buy": {"result": "seed"}}])
    buy = step.quantities[0].buy
    assert product_of(buy, step, STOCK) is None and product_of(buy, step, Stock(PRACTICE, "tall-fescue", "Tall fescue")) == "fescue-seed"


HOLDS = {"spoil_bag_l": 60, "trailer_volume_m3": 1.2}


def a_heap(*results, measured=False):
    """At so many square metres, what topdressing would be: its volume stands in for what is carried away."""
    quantities = [{"calculator": "topdressing-sand", "fill": {"depth": "15 mm"}, "spoil": result, "measured": measured} for result in results]
    return a_step("rake", quantities=quantities)


@pytest.mark.parametrize(("practice", "volume", "bags", "loads"), [
    # 15 mm on 100 m2 are 1.5 m3: 1500 L in bags of 60 L are 25, and in a trailer of 1.2 m3 more than one load.
    (HOLDS, 1.5, 25, 2), ({"spoil_bag_l": 60}, 1.5, 25, None), ({"trailer_volume_m3": 1.2}, 1.5, None, 2), ({}, 1.5, None, None),
])
def test_what_is_carried_away_comes_in_the_bags_and_loads_that_the_practice_has(practice, volume, bags, loads):
    found = spoil(all_worked(a_heap("volume"), area_m2=100), a_practice(**practice), CALCULATORS)
    assert found == Spoil(pytest.approx(volume), bags, loads)


def test_spoil_is_added_up_over_all_steps():
    """Twice 1.5 m3 are 3 m3: 50 bags and two and a half loads, so three."""
    assert spoil(all_worked(a_heap("volume"), a_heap("volume"), area_m2=100), a_practice(**HOLDS), CALCULATORS) == Spoil(pytest.approx(3), 50, 3)
    nothing = spoil(all_worked(sanding(), area_m2=100), a_practice(**HOLDS), CALCULATORS)
    assert nothing == Spoil(0, 0, 0)
    without = {id: each for id, each in CALCULATORS.items() if id != "spoil-loads"}
    assert spoil(all_worked(a_heap("volume"), area_m2=100), a_practice(**HOLDS), without) == Spoil(pytest.approx(1.5), None, None)


def test_what_a_bag_and_a_trailer_hold_is_said_in_cubic_metres():
    assert spoil_holds(a_practice(**HOLDS)) == {"bag_volume": pytest.approx(0.06), "trailer_volume": 1.2}
    assert spoil_holds(a_practice()) == {}
