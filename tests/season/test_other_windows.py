"""Light renovation, winter ryegrass and pre-emergents: where the trade and the printed temperatures put them."""

from dataclasses import replace

import pytest

from generator.season.calendar_days import DAYS
from generator.season.year import year as compute
from generator.words.reason_text import text
from tests.season.shipped import BUFFALO, COUCH, FESCUE, GRASSES, KIKUYU, climates, made_up, rules, season
from tests.slices import every


@pytest.mark.parametrize("place", every(5, climates()))
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


@pytest.mark.parametrize(("place", "months"), [("atlanta", (9, 10, 11)), ("dallas", (9, 10, 11)), ("sydney", (3, 4, 5)), ("perth", (3, 4, 5, 6))])
def test_ryegrass_goes_into_couch_in_autumn_as_nights_cool(place, months):
    """University of Delaware: best at a falling soil temperature of 74 °F, 23 °C; the window may open a little before it."""
    year = season(COUCH, place)
    (window,) = year.oversowing.windows
    assert year.climate.soil_c[window.best] <= 24 and not year.view.is_warming(window.best)
    assert all(int(year.weeks[day // 7 if day < 364 else 51].starts[:2]) in months for day in (window.first, window.best, window.last))


def test_grass_that_is_not_oversown_says_so():
    assert "not oversown" in text(season(BUFFALO, "sydney").oversowing.why_none)
    assert "cool-season" in text(season(FESCUE, "sydney").oversowing.why_none)
    assert "no common day" in text(season(KIKUYU, "darwin").oversowing.why_none)


@pytest.mark.parametrize("place", ["atlanta", "chicago", "canberra", "melbourne", "adelaide", "hobart"])
def test_the_pre_emergent_stands_before_the_soil_reaches_the_temperature_at_which_summer_grass_sprouts(place):
    year = season(COUCH, place)
    (window,) = year.pre_emergent.windows
    soil = year.climate.soil_c
    # U. Georgia: 12 to 14 °C; NC State and U. Nebraska: 13 °C.
    assert soil[window.first] < 12.9 and soil[window.last] <= 14 < soil[(window.last + 1) % DAYS]
    assert soil[window.preferred.last] <= 13 < soil[(window.preferred.last + 1) % DAYS]
    assert year.view.is_warming(window.first) and year.view.is_warming(window.best)
    assert all(any(c.isdigit() for c in text(why)) for why in (*window.why_first, window.preferred.why, *window.why_last))


def test_where_winter_soil_hardly_cools_the_pre_emergent_waits_for_it_to_warm_and_is_down_before_spring():
    """Sydney's soil is at 13.7 °C in mid-winter and at 16 °C, where summer grass is up, in the first days of September."""
    (window,) = season(COUCH, "sydney").pre_emergent.windows
    assert window.first - season(COUCH, "sydney").climate.coldest_day > 14
    assert season(COUCH, "sydney").climate.soil_c[window.last] < 16


def test_where_soil_is_always_warm_no_week_is_the_week_for_a_pre_emergent():
    assert "never cools to 14 °C" in text(season(COUCH, "darwin").pre_emergent.why_none)
    assert "never warms to 10 °C" in text(season(FESCUE, made_up(9, 5)).pre_emergent.why_none)


def test_a_book_without_the_figures_says_so():
    bare = replace(rules(), pre_emergent=None)
    year = compute(climates()["sydney"], COUCH, bare.sites["open"], bare)
    assert "no soil temperature" in text(year.pre_emergent.why_none)
