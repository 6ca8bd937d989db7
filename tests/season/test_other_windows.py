"""Light renovation, winter ryegrass and pre-emergents: where the trade and the printed temperatures put them."""

from dataclasses import replace

import pytest

from generator.season.calendar_days import DAYS
from generator.season.year import year as compute
from generator.words.reason_text import text
from tests.season.shipped import BUFFALO, COUCH, FESCUE, GRASSES, KIKUYU, climates, made_up, rules, season


@pytest.mark.parametrize("place", climates())
@pytest.mark.parametrize("grass", GRASSES, ids=lambda grass: grass.id)
def test_a_light_job_may_be_done_whenever_the_whole_one_may(place, grass):
    year = season(grass, place)
    light = year.light_renovation.windows
    for window in year.renovation.windows:
        assert any(each.holds(window.first) and each.holds(window.last) for each in light)


def test_a_light_job_may_be_done_later():
    for grass in (COUCH, BUFFALO):
        year = season(grass, "sydney")
        assert (year.light_renovation.windows[0].last - year.renovation.windows[0].last) % DAYS in range(7, 40)


@pytest.mark.parametrize(("place", "months"), [("atlanta", (9, 10)), ("dallas", (9, 10)), ("sydney", (3, 4, 5)), ("perth", (3, 4, 5))])
def test_ryegrass_goes_into_couch_in_autumn_as_its_soil_cools(place, months):
    year = season(COUCH, place)
    (window,) = year.oversowing.windows
    # University of Delaware: best at a falling soil temperature of 74 °F, 23 °C.
    assert year.climate.soil_c[window.first] <= 23
    assert all(int(year.weeks[day // 7 if day < 364 else 51].starts[:2]) in months for day in (window.first, window.best, window.last))


def test_grass_that_is_not_oversown_says_so():
    assert "not oversown" in text(season(BUFFALO, "sydney").oversowing.why_none)
    assert "cool-season" in text(season(FESCUE, "sydney").oversowing.why_none)
    assert "never slows" in text(season(KIKUYU, "darwin").oversowing.why_none) or "never cools" in text(season(KIKUYU, "darwin").oversowing.why_none)


@pytest.mark.parametrize("place", ["atlanta", "chicago", "canberra", "melbourne", "adelaide", "hobart"])
def test_the_pre_emergent_goes_on_while_soil_warms_through_the_printed_temperatures(place):
    year = season(COUCH, place)
    (window,) = year.pre_emergent.windows
    soil = year.climate.soil_c
    # U. Georgia: from 12 to 14 °C; NC State and U. Nebraska: 13 °C.
    assert soil[window.first] >= 12 and soil[window.last] <= 14 < soil[(window.last + 1) % DAYS]
    assert soil[window.best] <= 13 < soil[(window.best + 1) % DAYS] or soil[window.best] == min(soil)
    assert year.view.is_warming(window.first) and year.view.is_warming(window.best)
    assert all(any(c.isdigit() for c in text(why)) for why in (*window.why_first, window.why_best, *window.why_last))


def test_where_soil_is_always_warm_no_week_is_the_week_for_a_pre_emergent():
    assert "never cools to 14 °C" in text(season(COUCH, "darwin").pre_emergent.why_none)
    assert "never warms to 12 °C" in text(season(FESCUE, made_up(9, 5)).pre_emergent.why_none)


def test_a_book_without_the_figures_says_so():
    bare = replace(rules(), pre_emergent=None, oversowing=replace(rules().oversowing, soil_c=None))
    year = compute(climates()["sydney"], COUCH, bare.sites["open"], bare)
    assert "no soil temperature" in text(year.pre_emergent.why_none) and "no soil temperature" in text(year.oversowing.why_none)
