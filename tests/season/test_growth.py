"""Growth potential: the published curve, its cap, and growth against what the place reaches."""

from math import exp

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.season.growth import growth_potential
from tests.season.shipped import COUCH, FESCUE, KIKUYU, climates, groups, season


def test_the_group_constants_are_the_published_ones():
    # Woods 2014, A number between 0 and 1: 20 and 31 °C, with a variance term of 5.5 and 7 in °C.
    assert (groups().cool.growth_optimum.default, groups().cool.growth_spread.default) == (20, 5.5)
    assert (groups().warm.growth_optimum.default, groups().warm.growth_spread.default) == (31, 7)


@pytest.mark.parametrize(
    ("low_f", "high_f", "best_f", "optimum", "spread", "capped"),
    # Gelernter and Stowell, Predicting turf performance: cool-season turf grows best between 60 and 75 °F, warm-season between
    # 80 and 95 °F, with full growth potential at about 68 and 88 °F; they call 50 to 100 % good.
    [(60, 75, 68, 20, 5.5, False), (80, 95, 88, 31, 7, True)],
)
def test_growth_is_good_over_the_ranges_that_are_printed(low_f, high_f, best_f, optimum, spread, capped):
    low, high, best = ((f - 32) / 1.8 for f in (low_f, high_f, best_f))
    assert growth_potential(best, optimum, spread, capped) == pytest.approx(1, abs=0.005)
    assert min(growth_potential(t, optimum, spread, capped) for t in (low, high)) >= 0.5
    # Well outside them it is not: 15 °F further down.
    assert growth_potential(low - 15 / 1.8, optimum, spread, capped) < 0.5


@pytest.mark.parametrize(
    ("temperature", "expected"),
    # exp(-0.5 ((10 - 20) / 5.5)^2) = exp(-1.6529) = 0.1915, and so on down the cool-season curve.
    [(10, 0.1915), (15, 0.6615), (20, 1.0), (25, 0.6615), (30, 0.1915)],
)
def test_cool_season_curve(temperature, expected):
    assert growth_potential(temperature, 20, 5.5, False) == pytest.approx(expected, abs=0.00005)


def test_warm_season_curve_is_held_at_the_top():
    # exp(-0.5 ((20 - 31) / 7)^2) = exp(-1.2347) = 0.2909; at and above 31 °C it is 1 (Stowell and Gelernter, revised).
    assert growth_potential(20, 31, 7, True) == pytest.approx(0.2909, abs=0.00005)
    assert growth_potential(31, 31, 7, True) == growth_potential(38, 31, 7, True) == 1


@given(st.floats(-30, 50), st.floats(15, 35), st.floats(3, 9))
def test_between_nothing_and_full(temperature, optimum, spread):
    for capped in (False, True):
        found = growth_potential(temperature, optimum, spread, capped)
        assert 0 <= found <= 1
    if temperature < optimum:
        assert found == pytest.approx(exp(-0.5 * ((temperature - optimum) / spread) ** 2), rel=1e-9)


@pytest.mark.parametrize("name", climates())
def test_share_and_swing_reach_one_at_the_best(name):
    for grass in (COUCH, KIKUYU, FESCUE):
        growth = season(grass, name).growth
        assert max(growth.share) == max(growth.swing) == 1
        assert min(growth.share) >= 0
        # Kikuyu in Darwin is at full growth all year: no swing at all.
        assert min(growth.swing) == (0 if growth.least < growth.best else 1)


def test_a_lower_optimum_grows_more_where_it_is_cool():
    assert season(KIKUYU, "auckland").growth.best > 2 * season(COUCH, "auckland").growth.best
