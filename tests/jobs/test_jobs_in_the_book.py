"""What the book's own plans ask for: priced work, packs to buy, the client's sheet and the next inspection. Facts of the trade are
common practice, as the trade states them."""

from itertools import pairwise

import pytest

from generator.jobs.amounts import Stock, pack_si, product_of
from generator.jobs.plan_steps import steps_for
from generator.jobs.plans_for_grass import why_not
from generator.units import unit
from tests.our_book import book

BOOK = book()
PLANS = sorted(BOOK.renovations)
NEW_LAWNS = [plan for plan in PLANS if plan.startswith("new-lawn-")]
STEPS = {plan: {step.id: step for step in BOOK.renovations[plan].steps} for plan in PLANS}
FOLLOWERS = {
    plan: [grass for grass in sorted(BOOK.grasses) if why_not(BOOK, BOOK.renovations[plan], BOOK.grasses[grass]) is None]
    for plan in PLANS
}


@pytest.mark.parametrize("plan", NEW_LAWNS)
def test_a_new_lawn_is_priced_from_the_old_turf_to_the_last_piece(plan):
    new = STEPS[plan]
    last = {"new-lawn-rolls": "lay", "new-lawn-sprigs": "plant"}.get(plan, "sow")
    for id in ("lift-turf", "loosen", "grade", "firm", last):
        assert BOOK.practice.operations[new[id].task].price_per_100_m2, id
        assert new[id].who == "hands"
    assert [quantity.spoil for quantity in new["lift-turf"].quantities] == ["loose_volume"]
    # Common practice: old turf is lifted once what was sprayed is dead, and before the soil is loosened.
    assert "check-bare" in new["lift-turf"].after and "clear-old-growth" in new["check-bare"].after and "lift-turf" in new["loosen"].after


@pytest.mark.parametrize("plan", PLANS)
def test_whatever_is_bought_comes_in_packs_with_a_price(plan):
    for grass in FOLLOWERS[plan]:
        stock = Stock(BOOK.practice, grass, BOOK.grasses[grass].name)
        for step in (each.step for each in steps_for(BOOK.renovations[plan], BOOK.grasses[grass]).kept):
            for buy, calculator in ((each.buy, each.calculator) for each in step.quantities if each.buy):
                product = BOOK.practice.products[product_of(buy, step, stock)]
                assert pack_si(product, unit(BOOK.calculators[calculator].results[buy.result].unit)) and product.price, (grass, step.id)


@pytest.mark.parametrize("plan", PLANS)
def test_grass_of_small_appetite_gets_no_full_last_dressing(plan):
    """Common practice: the last part of a full feed is for grass that can use it; others get half, and only with room in their year."""
    for grass in FOLLOWERS[plan]:
        small = BOOK.grasses[grass].operations["feed"].level == "light"
        last = [each.step.id for each in steps_for(BOOK.renovations[plan], BOOK.grasses[grass]).kept
                if each.step.id in ("later-feed", "feed-when-mown", "later-feed-small")]
        assert not last or (last == ["later-feed-small"]) == small, grass


@pytest.mark.parametrize("plan", PLANS)
def test_the_client_has_a_sheet_for_what_was_done_and_a_date_for_the_next(plan):
    renovation = BOOK.renovations[plan]
    assert renovation.aftercare in BOOK.aftercare or plan == "pre-season-tidy"  # Nothing there has to mend.
    last = renovation.steps[-1]
    assert last.use == "next-date" and last.who == "office" and last.day >= 29
    if renovation.aftercare:
        days = BOOK.aftercare[renovation.aftercare].days
        assert days[0].from_day == 0 and days[-1].to_day >= 35
        assert all(later.from_day == earlier.to_day + 1 for earlier, later in pairwise(days))
