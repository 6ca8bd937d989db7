"""The sentences of a feed plan and of a watering, with numbers that a pencil gives; soils, rules and amounts are made up here."""

from dataclasses import replace

import pytest

from generator.calculators.watering import LONGEST_GAP_DAYS, Sprinkler, days_between, watering
from generator.season.calendar_days import DAYS
from generator.season.engine_rules import FeedRules, SoilWater
from generator.season.needs import feed_plan, mowing_intervals, nitrogen_by_week
from generator.words.reason_text import text
from tests.our_book import book
from tests.season.shipped import COUCH, FESCUE, made_up, season

LOAM = SoilWater("loam", "Loam", 0.15, 8.0, 120.0, 3.0, 3, False, None)
SAND = SoilWater("sand", "Deep sand", 0.08, 30.0, 125.0, 3.0, 3, True, None)
RULES = FeedRules(5.0, 3.0, 0.3, 2.5, 6.0, 0.6)


def plan(yearly=10.0, soil=LOAM, rules=RULES, percent=20.0, slow=50.0, grass=COUCH, place="sydney"):
    year = season(grass, place)
    return feed_plan(replace(year, grass=replace(grass, nitrogen_g_per_m2=(yearly / 2, yearly, yearly * 2))), soil, rules, percent, slow)


@pytest.mark.parametrize(("asked", "feeds", "said"), [
    ({}, 2, "10 g/m² of nitrogen in a year, in 2 feeds of 5.0 g/m²: the ceiling for one dressing is 5.0 g/m²"),
    ({"yearly": 4.5}, 1, "4.5 g/m² of nitrogen in a year, in one feed: the ceiling for one dressing is 5.0 g/m²"),
    # Half a hair over two full feeds stays two; a real part more is a third.
    ({"yearly": 10.1}, 3, "10.1 g/m² of nitrogen in a year, in 3 feeds of 3.4 g/m²: the ceiling for one dressing is 5.0 g/m²"),
    ({"slow": 29.0}, 4, "10 g/m² of nitrogen in a year, in 4 feeds of 2.5 g/m²: the ceiling for one dressing of a feed with little slow release is 3.0 g/m²"),
    ({"slow": None}, 4, "10 g/m² of nitrogen in a year, in 4 feeds of 2.5 g/m²: the ceiling for one dressing of a feed with little slow release is 3.0 g/m²"),
    # As much as is asked for is enough of it.
    ({"slow": 30.0}, 2, "10 g/m² of nitrogen in a year, in 2 feeds of 5.0 g/m²: the ceiling for one dressing is 5.0 g/m²"),
    ({"soil": SAND}, 4, "10 g/m² of nitrogen in a year, in 4 feeds of 2.5 g/m²: the dressing advised on deep sand is 2.5 g/m²"),
    # Where the ceiling is lower than the dressing advised, the ceiling counts.
    ({"soil": SAND, "rules": replace(RULES, ceiling=2.0)}, 5, "10 g/m² of nitrogen in a year, in 5 feeds of 2.0 g/m²: the ceiling for one dressing is 2.0 g/m²"),
    ({"soil": SAND, "rules": replace(RULES, ceiling=None)}, 4, "10 g/m² of nitrogen in a year, in 4 feeds of 2.5 g/m²: the dressing advised on deep sand is 2.5 g/m²"),
    ({"slow": 0.0, "rules": replace(RULES, soluble_ceiling=None)}, 2, "10 g/m² of nitrogen in a year, in 2 feeds of 5.0 g/m²: the ceiling for one dressing is 5.0 g/m²"),
    ({"slow": 0.0, "rules": replace(RULES, slow_release_share=None)}, 2, "10 g/m² of nitrogen in a year, in 2 feeds of 5.0 g/m²: the ceiling for one dressing is 5.0 g/m²"),
    ({"soil": SAND, "rules": replace(RULES, light_dressing=None)}, 2, "10 g/m² of nitrogen in a year, in 2 feeds of 5.0 g/m²: the ceiling for one dressing is 5.0 g/m²"),
])
def test_a_feed_plan_says_how_much_in_how_many_feeds_and_what_sets_it(asked, feeds, said):
    found = plan(**asked)
    yearly = asked.get("yearly", 10)
    assert len(found.feeds) == feeds and text(found.why) == said
    # At 20 % a gram of nitrogen to the square metre is 5 g of product, half a kilogram to 100 m2.
    assert all(feed.nitrogen_g_per_m2 == pytest.approx(yearly / feeds) for feed in found.feeds)
    assert all(feed.product_kg_per_100_m2 == pytest.approx(yearly / feeds * 0.5) for feed in found.feeds)


@pytest.mark.parametrize(("asked", "said"), [
    ({"rules": replace(RULES, ceiling=None)}, "the book's tasks give no ceiling for one dressing"),
    ({"yearly": 0.0}, "there is no nitrogen to give"), ({"percent": 0.0}, "the product holds no nitrogen"),
    ({"yearly": 0.0, "percent": 0.0}, "the product holds no nitrogen"),
    ({"grass": FESCUE, "place": "darwin"}, "growth is too slow, too hot or too wet all year"),
])
def test_why_there_is_no_feed(asked, said):
    found = plan(**asked)
    assert found.feeds == () and text(found.why) == said


def test_the_last_feed_leaves_the_weeks_that_the_rule_asks_before_growth_slows():
    """Six weeks are 42 days free of the slack season; couch in Canberra slows down once a year."""
    year = season(COUCH, "canberra")
    for weeks in (6.0, 10.0):
        found = plan(30.0, rules=replace(RULES, last_feed_weeks=weeks), place="canberra")
        left = [next(ahead for ahead in range(DAYS) if year.slack[(feed.day + ahead) % DAYS]) for feed in found.feeds]
        assert min(left) > weeks * 7, left


def test_the_first_feed_goes_on_with_the_first_fit_day_and_each_after_its_part_of_the_growth():
    """Of three feeds the second waits for a third of the growth of all days that are fit, the third for two thirds."""
    year = season(COUCH, "canberra")
    found = plan(15.0, place="canberra")
    coldest = year.climate.coldest_day
    order = [(coldest + ahead) % DAYS for ahead in range(DAYS)]
    fit = [
        day for day in order
        if not any(year.slack[(day + ahead) % DAYS] for ahead in range(43)) and not year.wet[day] and year.climate.mean_c[day] <= year.rules.heat_limit_c
    ]
    growth = [year.growth.potential[day] for day in fit]
    wanted = [next(day for index, day in enumerate(fit) if sum(growth[:index]) >= sum(growth) * part / 3 - 1e-9) for part in range(3)]
    assert [feed.day for feed in found.feeds] == sorted(wanted) and wanted[0] == fit[0]


def test_a_cool_season_lawn_gets_its_autumn_share_while_the_year_cools():
    """Three fifths of what is given to days that are fit: of ten feeds about six, where both halves have room."""
    year = season(FESCUE, "melbourne")
    for share, least, most in ((0.6, 5, 7), (0.8, 7, 9), (0.2, 1, 3)):
        found = plan(50.0, rules=replace(RULES, cool_autumn_share=share), grass=FESCUE, place="melbourne")
        assert len(found.feeds) == 10
        assert least <= sum(not year.view.is_warming(feed.day) for feed in found.feeds) <= most, share


def test_nitrogen_of_a_week_goes_with_its_growth():
    """The same weather all year: a week has seven days of 365, the last eight."""
    weeks = nitrogen_by_week(season(replace(COUCH, nitrogen_g_per_m2=(1, 36.5, 50)), made_up(30, 20)))
    assert weeks[0] == pytest.approx(0.7) and weeks[51] == pytest.approx(0.8) and len(weeks) == 52


def test_the_days_between_cuts_are_the_height_that_may_go_over_what_grows():
    """25 mm kept and a third removed: cut at 37.5 mm. 12.5 mm at 4 mm a day of full growth are 3.125 days."""
    at_its_best = season(COUCH, made_up(36, 26))
    assert mowing_intervals(at_its_best, 1 / 3) == (pytest.approx(3.125),) * 52
    assert set(mowing_intervals(season(COUCH, made_up(-20, -30)), 1 / 3)) == {None}


def test_a_watering_says_what_the_soil_holds():
    """15 % of 120 mm are 18 mm, of which half may be used: 9 mm."""
    year = season(COUCH, "perth")
    found = watering(year, LOAM, None)
    assert text(found.why) == "loam holds 9 mm that the grass may use: 15.0% of the 120 mm that roots reach, 50% of it"
    assert (found.depth_mm, found.run_time_min, found.spells, found.spell_min, found.rest_min) == (pytest.approx(9), None, 1, None, None)


def sprinkled(soil, rate, uniformity=1.0):
    return watering(season(COUCH, "perth"), soil, Sprinkler(rate, uniformity, book().calculators["irrigation-run-time"]))


def test_a_watering_that_the_soil_takes_in_is_one_run():
    """9 mm at 8 mm/h are 67.5 minutes, and the soil takes in 8 mm/h; at half the evenness it runs twice as long."""
    found = sprinkled(LOAM, 8.0)
    assert (found.run_time_min, found.spells, found.spell_min, found.rest_min) == (pytest.approx(67.5), 1, pytest.approx(67.5), None)
    assert sprinkled(LOAM, 8.0, 0.5).run_time_min == pytest.approx(135)
    assert text(found.why) == "loam holds 9 mm that the grass may use: 15.0% of the 120 mm that roots reach, 50% of it"


def test_a_watering_that_runs_off_is_parted():
    """At 20 mm/h 9 mm take 27 minutes; 3 mm may stand, full after 3 / 12 h or 15 minutes: two spells of 13.5, with 3 / 8 h or 22.5 between."""
    found = sprinkled(LOAM, 20.0)
    assert (found.depth_mm, found.run_time_min, found.spells, found.spell_min, found.rest_min) == tuple(map(pytest.approx, (9, 27, 2, 13.5, 22.5)))
    # Where it is exactly so many spells it is not one more.
    assert sprinkled(replace(LOAM, root_depth_mm=200 / 3), 20.0).spells == 1 and sprinkled(replace(LOAM, root_depth_mm=67), 20.0).spells == 2


def test_what_no_morning_takes_in_is_cut_down_to_what_it_does():
    """At 38 mm/h 3 mm stand full after 3 / 30 h, 6 minutes; two such spells are 12 minutes, 7.6 mm of the 9 mm."""
    found = sprinkled(replace(LOAM, spells_a_morning=2), 38.0)
    assert (found.depth_mm, found.run_time_min, found.spells, found.spell_min) == tuple(map(pytest.approx, (7.6, 12, 2, 6)))
    assert text(found.why) == (
        "loam holds 9 mm that the grass may use: 15.0% of the 120 mm that roots reach, 50% of it; it takes in only 8 mm an hour, "
        "so one morning gives 8 mm"
    )


def test_days_between_waterings_are_the_depth_over_the_day_s_need():
    """Rounded down to whole days, never less than one; rain is enough where that is more than four weeks."""
    usual = season(COUCH, "perth")
    evaporates = (2.0 / usual.grass.crop_coefficient,) * DAYS
    year = replace(usual, weather=replace(usual.weather, reference_evapotranspiration_mm=evaporates, effective_rain_mm=(0.0,) * DAYS))
    assert LONGEST_GAP_DAYS == 28
    for depth_mm, gap in ((7, 3), (1, 1), (2, 1), (8, 4), (56, 28), (57, None)):
        assert set(days_between(year, depth_mm)) == {gap}, depth_mm
    assert set(days_between(season(COUCH, made_up(30, 20, rain=900)), 10)) == {None}
