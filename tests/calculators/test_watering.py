"""Water on four soils."""

from dataclasses import replace
from math import inf

import pytest

from generator.calculators.watering import Sprinkler, days_between, spell, sprinkler_of, usable_water, watering
from generator.season.engine_rules import SoilWater
from generator.words.reason_text import text
from tests.our_book import book
from tests.season.shipped import COUCH, FESCUE, KIKUYU, rules, season

SOILS = rules().soils


def sprinkler(rate=15.0, uniformity=0.7) -> Sprinkler:
    calculator = book().calculators["irrigation-run-time"]
    return Sprinkler(rate, uniformity, calculator)


def test_usable_water_is_the_equation_of_fao_56():
    # FAO-56 equations 82 and 83: 1000 (0.32 - 0.15) 0.2 = 34 mm of available water; half of it is 17 mm.
    soil = SoilWater("x", "X", 0.32 - 0.15, 10, 200, 3, 3, False, None)
    assert usable_water(soil, 1) == pytest.approx(34) and usable_water(soil, 0.5) == pytest.approx(17)


def test_sand_holds_the_ten_millimetres_that_perth_waters():
    # Turf Growers Association of Western Australia: 10 mm a watering on Perth's sand. Our root depth is set to give it.
    assert watering(season(KIKUYU, "perth"), SOILS["sand"], None).depth_mm == pytest.approx(10, abs=0.5)


def test_soils_are_watered_in_their_order():
    year = season(COUCH, "perth")
    depth = {id: watering(year, soil, None).depth_mm for id, soil in SOILS.items()}
    assert depth["water-repellent"] < depth["sand"] < depth["loam"] < depth["clay"]
    gaps = {id: days_between(year, mm)[2] for id, mm in depth.items()}
    assert gaps["water-repellent"] < gaps["sand"] <= gaps["loam"] <= gaps["clay"]
    assert SOILS["water-repellent"].first and "wetting agent" in SOILS["water-repellent"].first


def test_clay_takes_it_in_spells_and_loam_nearly_at_once():
    year = season(COUCH, "perth")
    clay, sand = (watering(year, SOILS[id], sprinkler()) for id in ("clay", "sand"))
    assert sand.spells == 1 and sand.rest_min is None
    # 15 mm/h on soil that takes 1.9: the 3 mm that may stand are full after 3 / 13.1 h, 13.7 min, and sink in 3 / 1.9 h.
    assert clay.spells == 3 and clay.spell_min == pytest.approx(60 * 3 / 13.1) and clay.rest_min == pytest.approx(60 * 3 / 1.9)
    # Three such spells give 3 x 13.7 min x 15 mm/h x 70 %.
    assert clay.depth_mm == pytest.approx(3 * 3 / 13.1 * 15 * 0.7)
    assert "takes in only 1.9 mm an hour" in text(clay.why)


def test_run_time_is_depth_over_rate_over_uniformity():
    # 10.2 mm at 15 mm/h and 70 %: 58.3 min.
    found = watering(season(COUCH, "perth"), SOILS["sand"], sprinkler())
    assert found.run_time_min == pytest.approx(found.depth_mm / 15 / 0.7 * 60)


def test_a_gentle_sprinkler_never_outruns_the_soil():
    assert spell(SOILS["clay"], 1.5) == (inf, 0.0)


def test_rain_that_is_enough_needs_no_watering():
    assert set(days_between(season(FESCUE, "london-heathrow"), 10)[:8]) == {None}
    summer = days_between(season(FESCUE, "perth"), 10)[:6]
    assert all(gap is not None and 1 <= gap <= 5 for gap in summer)


def test_need_is_met_by_the_waterings():
    year = season(COUCH, "perth")
    for week, gap in zip(year.weeks[:-1], days_between(year, 10)):
        if gap is not None and gap > 1:
            # Rounded down to whole days, so never too little.
            assert 7 / gap * 10 >= week.water_need_mm * (1 - 1e-9)


def test_the_sprinkler_is_the_one_the_calculator_starts_with():
    calculator = sprinkler().calculator
    found = sprinkler_of({"irrigation-run-time": calculator})
    assert (found.rate_mm_per_h, found.uniformity) == (pytest.approx(15), pytest.approx(0.7))
    assert sprinkler_of({}) is None
    # A sprinkler twice as fast runs half as long.
    year = season(COUCH, "perth")
    fast = watering(year, SOILS["sand"], replace(found, rate_mm_per_h=30.0))
    assert fast.run_time_min == pytest.approx(watering(year, SOILS["sand"], found).run_time_min / 2)
