"""Daily curves keep what was measured, and run smoothly from year to year."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.season.calendar_days import DAYS, MONTH_LENGTHS, monthly_means
from generator.season.climate.daily_curve import daily_curve, non_negative_daily, soil_curve
from tests.season.shipped import climates

twelve = st.lists(st.floats(-40, 50), min_size=12, max_size=12)


@given(twelve)
def test_each_month_averages_to_its_own_figure(monthly):
    assert monthly_means(daily_curve(monthly)) == pytest.approx(monthly, abs=1e-6)


@pytest.mark.parametrize("name", climates())
def test_shipped_places_keep_their_normals(name):
    # A twentieth of a degree is the promise; the method does far better.
    climate = climates()[name]
    for monthly in (climate.mean_maximum_c, climate.mean_minimum_c):
        assert monthly_means(daily_curve(monthly)) == pytest.approx(monthly, abs=0.001)


@pytest.mark.parametrize("name", climates())
def test_no_jump_anywhere_in_the_year_nor_at_new_year(name):
    curve = daily_curve(climates()[name].mean_c)
    steps = [curve[(day + 1) % DAYS] - curve[day] for day in range(DAYS)]
    # Means of neighbouring months differ by at most 8 degrees in these places: about 0.3 a day.
    assert max(map(abs, steps)) < 0.4
    assert max(abs(steps[(day + 1) % DAYS] - steps[day]) for day in range(DAYS)) < 0.03


def test_a_year_without_seasons_is_flat():
    assert daily_curve([18.0] * 12) == pytest.approx([18.0] * DAYS)


def test_a_pure_wave_comes_back_as_itself():
    # Its monthly means are taken from the wave by arithmetic, so the curve must give the wave again, within what twelve
    # figures can tell.
    from math import cos, pi

    wave = [15 + 8 * cos(2 * pi * (day + 0.5 - 20) / DAYS) for day in range(DAYS)]
    assert daily_curve(monthly_means(wave)) == pytest.approx(wave, abs=0.02)


@given(st.lists(st.one_of(st.just(0.0), st.floats(0.001, 20)), min_size=12, max_size=12))
def test_rain_is_never_negative_and_keeps_its_totals(monthly):
    curve = non_negative_daily(monthly)
    assert min(curve) >= 0
    assert monthly_means(curve) == pytest.approx(monthly, abs=1e-6)


def test_soil_lags_and_damps_as_conduction_says():
    # Damping depth for 5e-7 m2/s and a year of 31 536 000 s: sqrt(2 * 5e-7 / (2 pi / 31 536 000)) = 2.24 m.
    # At 0.1 m: amplitude exp(-0.0446) = 0.956 of the air's, 0.0446 / (2 pi) * 365 = 2.6 days late.
    from math import cos, pi

    air = [15 + 10 * cos(2 * pi * (day + 0.5 - 20) / DAYS) for day in range(DAYS)]
    soil = soil_curve(monthly_means(air), 0.1, 5e-7)
    assert max(soil) == pytest.approx(15 + 9.56, abs=0.03)
    assert soil.index(max(soil)) - air.index(max(air)) in (2, 3)


def test_the_year_is_365_days_in_twelve_months():
    assert sum(MONTH_LENGTHS) == DAYS == 365
