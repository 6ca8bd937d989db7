"""The book's own plans, held to what the trade does. Expected values are common practice, as the trade states it; where
one has a source, it stands beside the check."""


import pytest

from generator.calculators.bindings import bound_value
from generator.calculators.chosen import Chosen
from generator.jobs.plan_steps import steps_for
from generator.jobs.plans_for_grass import plans_for, why_not
from tests.our_book import book

BOOK = book()
GRASSES = sorted(BOOK.grasses)
PLANS = sorted(BOOK.renovations)
NEW_LAWNS = [plan for plan in PLANS if plan.startswith("new-lawn-")]
RECOVERIES = ["drought-recovery", "winter-recovery"]
SEEDED = [plan for plan in PLANS if any(step.id == "sow" for step in BOOK.renovations[plan].steps)]


def steps_of(grass):
    return steps_for(BOOK.renovations[BOOK.grasses[grass].renovation], BOOK.grasses[grass])


def steps(plan):
    """Steps of a plan by id, whatever the grass."""
    return {step.id: step for step in BOOK.renovations[plan].steps}


def followers(plan):
    return [grass for grass in GRASSES if why_not(BOOK, BOOK.renovations[plan], BOOK.grasses[grass]) is None]


def waits_for(plan, id):
    """Ids of every step that comes before this one, by whatever way."""
    by_id, found, open_ones = steps(plan), set(), [id]
    while open_ones:
        for earlier in by_id[open_ones.pop()].after:
            if earlier not in found:
                found.add(earlier)
                open_ones.append(earlier)
    return found


def test_a_full_renovation_s_day_goes_in_the_order_of_the_trade():
    trade = (
        "mark", "cut-down", "scarify", "scarify-across", "clear-up", "cut-again", "core", "cores", "feed-on-the-day", "topdress",
        "level", "wetting-agent", "water-in",
    )  # fmt: skip
    day = [kept.step.id for kept in steps_of("kikuyu").stage("day")]
    assert [step for step in day if step in trade] == list(trade)


def test_feed_may_come_before_or_after_sand():
    for plan in PLANS:
        feed, sand = steps(plan).get("feed-on-the-day"), steps(plan).get("topdress")
        if feed and sand:
            assert "topdress" not in feed.after
            assert "feed-on-the-day" not in sand.after


@pytest.mark.parametrize("plan", PLANS)
def test_what_runs_above_ground_only_is_never_cut_to_soil_nor_crossed(plan):
    renovation = BOOK.renovations[plan]
    for grass in followers(plan):
        if BOOK.grasses[grass].habit == "above ground":
            kept = steps_for(renovation, BOOK.grasses[grass]).kept
            assert not {each.step.id for each in kept} & {"cut-down", "scarify-across"}
            # One direction only: at most one pass with blades or knives.
            assert len([each for each in kept if each.step.task in ("scarify", "vertical-mow")]) <= 1
            assert all(each.operation.level == "light" for each in kept if each.step.task == "cut-down")


@pytest.mark.parametrize("grass", GRASSES)
def test_a_cool_season_grass_is_sown_in_the_window_that_its_page_calls_renovation(grass):
    if BOOK.grasses[grass].season_group == "cool":
        assert BOOK.renovations[BOOK.grasses[grass].renovation].window == "renovation"
        assert "sow" in {each.step.id for each in steps_of(grass).kept}


@pytest.mark.parametrize("plan", PLANS)
def test_each_plan_is_for_some_grass_and_says_when_to_choose_it(plan):
    renovation = BOOK.renovations[plan]
    assert followers(plan)
    assert renovation.why and len(renovation.choose_when) >= 2 and renovation.misspellings
    for grass in followers(plan):
        assert steps_for(renovation, BOOK.grasses[grass]).stage("day")


@pytest.mark.parametrize("grass", GRASSES)
def test_a_grass_may_follow_the_plan_its_own_file_names(grass):
    assert grass in followers(BOOK.grasses[grass].renovation)


@pytest.mark.parametrize("plan", PLANS)
def test_recovery_is_looked_at_after_one_two_and_four_weeks(plan):
    checks = [step for step in BOOK.renovations[plan].steps if step.id.startswith("check-day-")]
    assert [step.day for step in checks] == [7, 14, 28]
    last = f"{checks[-1].title} {checks[-1].say}".lower()
    assert "fail" in last or "dead" in last, "when to call it failed"
    assert any("fed" in step.say.lower() or "feed" in step.say.lower() for step in checks), "when to feed again"


@pytest.mark.parametrize("plan", PLANS)
def test_the_later_feed_falls_28_to_35_days_on(plan):
    later = steps(plan).get("later-feed")
    assert later is None or (later.day, later.until_day) == (28, 35)


@pytest.mark.parametrize("plan", ["warm-below-ground", "cool-autumn"])
def test_three_dressings_make_the_full_rate_of_the_granule(plan):
    renovation, couch = BOOK.renovations[plan], BOOK.grasses["couch"]
    parts = ("feed-week-before", "feed-on-the-day", "feed-later")
    dressings = [bound_value(f"renovation.{part}", Chosen(couch, BOOK.practice, renovation)) for part in parts]
    assert {dressing.unit for dressing in dressings} == {"g/m2"}
    # 3 kg/100 m2 is 30 g/m2 of granule; 21 % of it is 6.3 g/m2 of nitrogen.
    assert sum(dressing.value for dressing in dressings) == pytest.approx(6.3)


@pytest.mark.parametrize("plan", PLANS)
def test_no_dressing_passes_the_published_ceiling(plan):
    # University of California, UC Guide to Healthy Lawns: no more than 1 lb/1000 ft2 of nitrogen at once, 4.9 g/m2.
    for name, figure in BOOK.renovations[plan].figures.items():
        if name.startswith("feed-"):
            assert figure.highest <= 4.9


@pytest.mark.parametrize("plan", PLANS)
def test_spraying_out_leaves_two_to_four_weeks_to_die(plan):
    for step in BOOK.renovations[plan].steps:
        if step.task == "spray-out":
            assert step.settles == "spray-out.weeks-to-die"
            assert {"chemical-label", "spray-drift", "re-entry", "licensing"} <= set(step.cautions)
            # Whoever says that it is dead waits the time it takes, four weeks in the plan and never a gap of its own.
            dead = next(each for each in BOOK.renovations[plan].steps if step.id in each.after and step.id not in each.gaps)
            assert dead.task == "scout" and dead.day - step.day >= 21
    figure = BOOK.tasks["spray-out"].figures["weeks-to-die"]
    assert (figure.lowest, figure.highest, figure.unit) == (2, 4, "week")


@pytest.mark.parametrize("plan", PLANS)
def test_ground_is_broken_only_after_services_are_marked(plan):
    for id, step in steps(plan).items():
        if step.task in ("core", "solid-tine", "lift-turf") or id == "loosen":
            assert {"mark", "service-plans"} <= waits_for(plan, id)
            assert "buried-services" in step.cautions


@pytest.mark.parametrize("plan", sorted(set(PLANS) - {"solid-tine-only"}))
def test_sprayed_spoil_and_declared_weeds_go_their_own_way(plan):
    # Spiking takes nothing out, so there is nothing to carry.
    spoil = steps(plan)["spoil"]
    assert "label" in spoil.say and ("declared" in spoil.say or "authority" in spoil.say)


@pytest.mark.parametrize("plan", PLANS)
def test_what_hollow_tines_and_blades_bring_up_is_reckoned(plan):
    carried = {quantity.calculator for step in steps(plan).values() for quantity in step.quantities if quantity.spoil}
    tasks = {step.task for step in steps(plan).values()}
    assert "core" not in tasks or "core-removal" in carried
    assert not tasks & {"scarify", "vertical-mow"} or "scarifying-passes" in carried


@pytest.mark.parametrize("plan", PLANS)
def test_gear_is_washed_and_the_hire_goes_back_after_it_was_used(plan):
    washed = {id for id, step in steps(plan).items() if step.use == "clean-gear"}
    assert "clean-gear" in washed
    for id, step in steps(plan).items():
        if any(gear.from_where == "hire" for gear in step.gear):
            assert any(id in waits_for(plan, wash) for wash in washed), id


@pytest.mark.parametrize("plan", PLANS)
def test_a_day_that_starts_late_moves_all_that_follows(plan):
    """One step starts the day; everything on it and after it hangs on that step."""
    day = [step for step in BOOK.renovations[plan].steps if step.day == 0]
    first = [step.id for step in day if not any(other.id in waits_for(plan, step.id) for other in day)]
    assert len(first) == 1
    later = [step.id for step in BOOK.renovations[plan].steps if step.day >= 0 and step.id not in first]
    assert [id for id in later if first[0] not in waits_for(plan, id)] == []


@pytest.mark.parametrize("plan", PLANS)
def test_water_and_keeping_off_are_the_client_s_and_say_how_much(plan):
    for step in BOOK.renovations[plan].steps:
        if step.who == "client" and step.task == "water":
            assert step.watering is not None, step.id
        if step.day > 0 and step.task == "water" and step.watering:
            assert step.who == "client" or plan == "pre-season-tidy"
        if step.id == "keep-off":
            assert step.who == "client"
        if step.id in ("book-gear", "service-plans", "soil-report", "order-seed", "order-turf", "order-runners"):
            assert step.who == "office"


@pytest.mark.parametrize("plan", SEEDED)
def test_seed_is_watered_two_or_three_times_a_day_for_a_fortnight(plan):
    # University of Minnesota, Watering a roadside lawn: lightly, two or three times a day; later about 8 mm every second day.
    sprouting, rooting = steps(plan)["water-sprouting"], steps(plan)["water-rooting"]
    assert sprouting.watering.times_a_day in (2, 3) and sprouting.watering.every_days == 1
    assert sprouting.day == 1 and sprouting.until_day >= 14 and rooting.day == sprouting.until_day + 1
    assert (rooting.watering.depth, rooting.watering.every_days) == ("8 mm", 2)


def test_nothing_that_only_a_label_may_give_is_bought():
    for plan in PLANS:
        for step in steps(plan).values():
            for quantity in step.quantities:
                if any(asked.label_only for asked in BOOK.calculators[quantity.calculator].inputs.values()):
                    assert quantity.buy is None and not any("label" in name for name in quantity.fill)


def test_rolls_are_watered_the_day_they_are_laid_and_each_day_of_a_fortnight():
    rolls = steps("new-lawn-rolls")
    assert rolls["lay"].day == rolls["water-in"].day == 0 and rolls["water-in"].watering
    first = rolls["water-first-week"]
    assert first.day == 1 and first.until_day >= 13 and first.watering.every_days == 1
    # University of California, UC Guide to Healthy Lawns: rolls root in two to three weeks; mown when no corner lifts.
    assert rolls["first-mow"].day >= 14 and "corner" in rolls["first-mow"].wait_for


def test_turf_is_not_cut_before_the_bed_is_ready_for_it():
    assert {"firm", "grade", "loosen", "check-bare", "order-turf"} <= waits_for("new-lawn-rolls", "lay")


@pytest.mark.parametrize("plan", ["new-lawn-seed", "new-lawn-seed-warm"])
def test_nothing_heavy_goes_on_seed_before_its_third_mowing(plan):
    seed = steps(plan)
    assert "first-mow" in waits_for(plan, "third-mow") and "third-mow" in waits_for(plan, "open-lawn")
    assert seed["keep-off"].until_day >= seed["third-mow"].day
    between = [step for step in seed.values() if 0 < step.day <= seed["third-mow"].day]
    machines = {gear.machine for step in between for gear in step.gear}
    assert machines <= {None, "mower", "spreader"}


@pytest.mark.parametrize("plan", NEW_LAWNS)
def test_a_new_lawn_starts_with_the_soil_and_a_clean_bed(plan):
    assert {"site-look", "soil-report", "check-bare", "grade", "firm", "starter-feed"} <= set(steps(plan))
    assert steps(plan)["clear-old-growth"].settles == "spray-out.weeks-to-die"
    assert not {step.task for step in steps(plan).values()} & {"core", "scarify", "cut-down", "vertical-mow"}


@pytest.mark.parametrize("plan", RECOVERIES)
def test_a_weak_lawn_is_neither_scarified_nor_cut_low_nor_cored(plan):
    assert not {step.task for step in steps(plan).values()} & {"scarify", "vertical-mow", "cut-down", "core"}
    assert "count-living" in waits_for(plan, "rake-out")
    feeds = [step for step in steps(plan).values() if step.task == "feed"]
    assert [feed.id for feed in feeds] == ["feed-once"] and feeds[0].day >= 14


def test_bunches_are_sown_and_runners_are_planted():
    """Common practice: what grows in bunches, and bluegrass, which creeps only below ground, is mended with seed."""
    for plan in RECOVERIES:
        for grass in followers(plan):
            kept = {each.step.id for each in steps_for(BOOK.renovations[plan], BOOK.grasses[grass]).kept}
            sown = BOOK.grasses[grass].habit in ("bunch", "below ground")
            assert ("sow-gaps" in kept) == sown and ("plant-bare-spots" in kept) != sown


def test_ryegrass_for_winter_has_its_own_window_and_cuts_no_runners():
    plan = BOOK.renovations["oversow-winter"]
    assert plan.window == "oversowing" and plan.season_group == "warm"
    # University of Arizona: zoysia and buffalo are unsuited to it; ryegrass goes into couch and its like.
    assert followers("oversow-winter") == ["couch", "hybrid-couch", "kikuyu"]
    assert not {step.task for step in plan.steps} & {"scarify", "vertical-mow", "cut-down", "core"}
    assert "agree-spring" in waits_for("oversow-winter", "sow")
    rate, task = plan.figures["seed-rate-for-winter"], BOOK.tasks["overseed"].figures["winter-oversowing-rate"]
    assert (rate.lowest, rate.highest) == (task.lowest, task.highest)


def test_the_lawn_is_fed_only_once_the_ryegrass_is_dead():
    assert {"check-day-28", "spray-out"} <= waits_for("spring-transition", "feed-once")
    assert "check-warmth" in waits_for("spring-transition", "spray-out")
    assert not [step for step in steps("spring-transition").values() if step.task == "feed" and step.id != "feed-once"]


def test_the_lighter_plans_are_lighter():
    hard = {"cut-down", "scarify"}
    assert hard <= {step.task for step in steps("warm-below-ground").values()}
    for plan in ("light-renovation", "core-only", "solid-tine-only", "top-dress-and-level", "pre-season-tidy"):
        assert not hard & {step.task for step in steps(plan).values()}
    assert not {"core", "topdress", "scarify"} & {step.task for step in steps("overseed").values()}
    assert {"core", "topdress", "scarify"} <= {step.task for step in steps("cool-autumn").values()}
    assert BOOK.renovations["light-renovation"].window == "light_renovation"


def test_spiking_takes_nothing_out():
    assert not [quantity for step in steps("solid-tine-only").values() for quantity in step.quantities if quantity.spoil]


def test_a_grass_that_is_not_sown_gets_no_plan_for_seed():
    """Common practice: buffalo, kikuyu and hybrid couch are laid or planted in lawns; bahia is sown and not planted."""
    for grass in ("buffalo", "kikuyu", "hybrid-couch"):
        assert not {"new-lawn-seed", "new-lawn-seed-warm"} & set(plans_for(BOOK, BOOK.grasses[grass])), grass
    assert "new-lawn-sprigs" not in plans_for(BOOK, BOOK.grasses["bahia"])
    assert "has none for Buffalo" in why_not(BOOK, BOOK.renovations["new-lawn-seed-warm"], BOOK.grasses["buffalo"])
