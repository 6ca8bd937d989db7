"""What a job costs: sums by hand, from a practice made up here."""

from datetime import date, timedelta

import pytest

from generator.calculators.calculate import Amount
from generator.jobs.amounts import Purchased
from generator.jobs.price import CostLine, Done, cost, in_cents
from generator.units import unit
from tests.jobs.made_up import CALCULATORS, a_practice, a_step, some_tasks


@pytest.mark.parametrize(("amount", "told"), [
    (1.005, 1.01),  # A computer holds it as 1.00499999999999989.
    (1.255, 1.26), (2.674, 2.67), (2.675, 2.68), (2.6749, 2.67), (190, 190), (0, 0),
])
def test_half_a_cent_counts_upwards(amount, told):
    assert in_cents(amount) == told


PRICES = {
    "core": {"price_per_100_m2": 75, "minimum_price": 190}, "mow": {"price_per_100_m2": 18}, "edge": {"minimum_price": 30},
    "look": {"setup_minutes": 10, "charged_in_jobs": False}, "blow": {"setup_minutes": 5},
}
TASKS = some_tasks("core", "mow", "edge", "look", "blow", "water")
STEPS = (
    a_step("core", "core"), a_step("mow", "mow", 7), a_step("mow-again", "mow", 14), a_step("edge", "edge"), a_step("edge-again", "edge", 9),
    a_step("look", "look", 3), a_step("look-again", "look", 9), a_step("blow", "blow"), a_step("water", "water"), a_step("talk"),
    a_step("client-mows", "mow", 20, who="client"),
)


def bought(packs, price):
    kilograms = unit("kg")
    return Purchased("Granule", "granule", Amount(45.0, kilograms, kilograms), packs, price, ("feed",))


def done(step, passes=1, added=False):
    return Done(step, date(2027, 1, 1) + timedelta(step.day), passes, added)


def costs(bought_things=(), spoil_m3=0.0, steps=STEPS, calculators=CALCULATORS, area_m2=250.0, **practice):
    return cost([done(each) for each in steps], bought_things, spoil_m3, a_practice(operations=PRICES, **practice), TASKS, calculators, area_m2)


def test_each_task_has_its_line():
    """Of 250 m2: 75 for each hundred would be 187.50, so the minimum of 190 counts; 18 for each hundred is 45, twice 90; 30 twice is 60."""
    found = costs([bought(3, 25.5), bought(None, 25.5), bought(3, None)], 1.5, spoil_price_per_m3=60)
    assert found.lines == (
        CostLine("work", "Core", 1, 190), CostLine("work", "Mow", 2, 90), CostLine("work", "Edge", 2, 60), CostLine("product", "Granule", 3, 76.5),
        CostLine("spoil", "Spoil carried away", 1, 90),
    )
    # What the client does costs nothing; what is looked at is in the price, and said so.
    assert found.included == (("Look", 2),)
    assert (found.before_tax, found.tax, found.total, found.deposit, found.currency) == (pytest.approx(506.5), 0, pytest.approx(506.5), None, "AUD")


def test_passes_of_one_day_have_one_least_price_and_days_have_each_their_own():
    """75 for each 100 m2 are 75 a pass on 100 m2: three passes are 225, one is 190, the least for a day."""
    three, two_days = (
        cost(steps, (), 0.0, a_practice(operations=PRICES), TASKS, CALCULATORS, 100.0).lines
        for steps in ([done(a_step("core", "core"), 3)], [done(a_step("core", "core", day)) for day in (0, 7)])
    )
    assert three == (CostLine("work", "Core", 3, 225),) and two_days == (CostLine("work", "Core", 2, 380),)


def test_what_an_inspection_adds_is_charged_once_with_its_task_of_that_day():
    """30 a day for edging: with the plan's own that day it stays 30, two added on another day are 30 more. 75 for 100 m2 are one pass, not two."""
    plan_s, more, again = a_step("edge", "edge"), a_step("found-a", "edge"), a_step("found-b", "edge", 3)
    work = [done(more, added=True), done(plan_s), done(again, added=True), done(a_step("found-c", "edge", 3), added=True)]
    assert cost(work, (), 0.0, a_practice(operations=PRICES), TASKS, CALCULATORS, 250.0).lines == (CostLine("work", "Edge", 2, 60),)
    cored = [done(a_step("core", "core"), 2), done(a_step("found-d", "core"), added=True)]
    assert cost(cored, (), 0.0, a_practice(operations=PRICES), TASKS, CALCULATORS, 400.0).lines == (CostLine("work", "Core", 2, 600),)


def test_tax_on_top_a_deposit_and_another_currency():
    """190 + 90 + 60 are 340; a tenth on top is 34, and a fifth of 374 is 74.80."""
    found = costs(tax_percent=10, deposit_percent=20, currency="NZD")
    assert (found.before_tax, found.tax, found.total, found.deposit) == tuple(map(pytest.approx, (340, 34, 374, 74.8)))
    assert found.currency == "NZD"


def test_tax_inside_the_prices():
    """A tenth on top is an eleventh of the whole: 340 / 11 is 30.91 to the cent."""
    found = costs(tax_percent=10, prices_include_tax=True)
    assert (found.before_tax, found.tax, found.total) == tuple(map(pytest.approx, (309.09, 30.91, 340)))


def test_no_trip_costs_less_than_the_minimum_charge():
    assert costs(steps=STEPS[3:4], minimum_charge=95).total == pytest.approx(95)
    assert costs(steps=STEPS[3:4], minimum_charge=20).total == pytest.approx(30)


def test_spoil_has_a_line_only_where_there_is_some_and_it_has_a_price():
    kinds = [{line.kind for line in costs(**more).lines} for more in ({"spoil_m3": 1.5}, {"spoil_price_per_m3": 60})]
    assert kinds == [{"work"}, {"work"}]
    # An eighth of a cubic metre at 10.04 is 1.255, told as 1.26.
    assert costs(spoil_m3=0.125, spoil_price_per_m3=10.04).lines[-1].amount == 1.26


def test_without_prices_or_their_calculators_there_is_no_price():
    assert costs(steps=STEPS[5:]) is None
    for missing in ("estimate", "operation-price"):
        assert costs(calculators={id: each for id, each in CALCULATORS.items() if id != missing}) is None
