"""The book's own plans, held to what the trade does. Expected values are common practice, as the trade states it; where
one has a source, it stands beside the check."""

from pathlib import Path

import pytest

from generator.model.book import read_book
from generator.turf.bindings import Context, bound_value
from generator.turf.plan import steps_for

BOOK, _ = read_book(Path(__file__).parents[2])
GRASSES = sorted(BOOK.grasses)


def steps_of(grass):
    return steps_for(BOOK.renovations[BOOK.grasses[grass].renovation], BOOK.grasses[grass])


def test_a_full_renovation_s_day_goes_in_the_order_of_the_trade():
    trade = (
        "mark", "cut-down", "scarify", "scarify-across", "clear-up", "cut-again", "core", "cores", "feed-on-the-day", "topdress",
        "level", "wetting-agent", "water-in",
    )  # fmt: skip
    day = [kept.step.id for kept in steps_of("kikuyu").stage("day")]
    assert [step for step in day if step in trade] == list(trade)


def test_feed_may_come_before_or_after_sand():
    for plan in BOOK.renovations.values():
        steps = {step.id: step for step in plan.steps}
        if "feed-on-the-day" in steps:
            assert "topdress" not in steps["feed-on-the-day"].after
            assert "feed-on-the-day" not in steps["topdress"].after


@pytest.mark.parametrize("grass", GRASSES)
def test_what_runs_above_ground_only_is_never_cut_to_soil_nor_crossed(grass):
    if BOOK.grasses[grass].habit == "above ground":
        kept = {each.step.id for each in steps_of(grass).kept}
        assert not kept & {"cut-down", "scarify-across"}


@pytest.mark.parametrize("grass", GRASSES)
def test_a_cool_season_grass_is_sown_in_the_overseeding_window(grass):
    if BOOK.grasses[grass].season_group == "cool":
        assert BOOK.renovations[BOOK.grasses[grass].renovation].window == "overseeding"
        assert "sow" in {each.step.id for each in steps_of(grass).kept}


@pytest.mark.parametrize("plan", sorted(BOOK.renovations))
def test_recovery_is_looked_at_after_one_two_and_four_weeks(plan):
    checks = [step.day for step in BOOK.renovations[plan].steps if step.id.startswith("check-day-")]
    assert checks == [7, 14, 28]


@pytest.mark.parametrize("plan", sorted(BOOK.renovations))
def test_the_later_feed_falls_28_to_35_days_on(plan):
    later = next(step for step in BOOK.renovations[plan].steps if step.id == "later-feed")
    assert (later.day, later.until_day) == (28, 35)


@pytest.mark.parametrize("plan", ["warm-below-ground", "cool-autumn"])
def test_three_dressings_make_the_full_rate_of_the_granule(plan):
    renovation, couch = BOOK.renovations[plan], BOOK.grasses["couch"]
    parts = ("feed-week-before", "feed-on-the-day", "feed-later")
    dressings = [bound_value(f"renovation.{part}", Context(couch, BOOK.practice, renovation)) for part in parts]
    assert {dressing.unit for dressing in dressings} == {"g/m2"}
    # 3 kg/100 m2 is 30 g/m2 of granule; 21 % of it is 6.3 g/m2 of nitrogen.
    assert sum(dressing.value for dressing in dressings) == pytest.approx(6.3)


@pytest.mark.parametrize("plan", sorted(BOOK.renovations))
def test_no_dressing_passes_the_published_ceiling(plan):
    # University of California, UC Guide to Healthy Lawns: no more than 1 lb/1000 ft2 of nitrogen at once, 4.9 g/m2.
    for name, figure in BOOK.renovations[plan].figures.items():
        if name.startswith("feed-"):
            assert figure.highest <= 4.9


@pytest.mark.parametrize("plan", sorted(BOOK.renovations))
def test_spraying_out_leaves_two_to_four_weeks_to_die(plan):
    for step in BOOK.renovations[plan].steps:
        if step.task == "spray-out":
            assert step.day <= -28
            assert {"chemical-label", "spray-drift", "re-entry", "licensing"} <= set(step.cautions)


@pytest.mark.parametrize("plan", sorted(BOOK.renovations))
def test_ground_is_broken_only_after_services_are_marked(plan):
    steps = {step.id: step for step in BOOK.renovations[plan].steps}
    assert "mark" in steps["core"].after
    assert "service-plans" in steps["mark"].after
    assert "buried-services" in steps["core"].cautions


@pytest.mark.parametrize("plan", sorted(BOOK.renovations))
def test_sprayed_spoil_and_declared_weeds_go_their_own_way(plan):
    spoil = next(step for step in BOOK.renovations[plan].steps if step.id == "spoil")
    assert "label" in spoil.say and "declared" in spoil.say
