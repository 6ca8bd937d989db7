"""What must hold of any climate: half a year away on the other side of the equator, and a little warmer."""

from dataclasses import fields, replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.files.season_json import as_json
from generator.season.calendar_days import DAYS, monthly_means
from generator.season.climate.climate import OPEN, Climate, daily_climate
from generator.season.climate.frost import frost
from tests.season.shipped import COUCH, KIKUYU, climates, forget_years, made_up, rules, season
from tests.slices import every


def half_a_year_away(climate: Climate) -> Climate:
    figures = {field.name: getattr(climate, field.name) for field in fields(Climate)}
    turned = {name: values[6:] + values[:6] for name, values in figures.items() if isinstance(values, tuple)}
    assert {"mean_maximum_c", "mean_minimum_c", "rain_mm"} <= turned.keys()
    return replace(climate, latitude_deg=-climate.latitude_deg, **turned)


def apart(day: int | None, other: int | None) -> int:
    """Days between a date here and the date half a year on there; both None is no difference."""
    if day is None or other is None:
        return 0 if day is other else DAYS
    gap = (day - other - 182) % DAYS
    return min(gap, DAYS - gap)


def made_of(middle: float, swing: float, daily_range: float, coldest: int) -> Climate:
    """A climate with one cold and one warm end, in any month."""
    from math import cos, pi

    mean = [middle - swing * cos(2 * pi * (month - coldest) / 12) for month in range(12)]
    return made_up([value + daily_range / 2 for value in mean], [value - daily_range / 2 for value in mean], latitude=40)


ANY_CLIMATE = st.builds(
    made_of, st.floats(5, 26), st.floats(3, 14), st.floats(6, 16), st.integers(0, 11),
)


def temperature_dates(climate: Climate, grass=COUCH) -> dict[str, int | None]:
    year = season(grass, climate)
    return {
        "warmest day": year.climate.hottest_day,
        "coldest day": year.climate.coldest_day,
        "green-up": year.green_up_day,
        **{
            f"{which} frost at {risk:.0%}, {'2' if ground else '0'} °C": ask(risk, ground)
            for which, ask in (("last", year.weather.last_frost_day), ("first", year.weather.first_frost_day))
            for risk in (0.5, 0.1) for ground in (False, True)
        },
        "dormant from": year.dormancy and year.dormancy[0],
        "dormant to": year.dormancy and year.dormancy[1],
    }


@pytest.mark.parametrize("name", every(5, climates()))
def test_dates_of_temperature_are_the_same_half_a_year_away(name):
    # Half a year is 181 days from January and 184 from July, so the months themselves move by up to three days; a warmest day
    # may also hop along a flat top. The Earth's distance from the Sun does not come into temperature.
    here, there = temperature_dates(climates()[name]), temperature_dates(half_a_year_away(climates()[name]))
    for what, day in here.items():
        if "frost at 50%" in what and None in (day, there[what]) and hardly_decided(name, ground="2 °C" in what):
            continue
        assert apart(there[what], day) <= 3, (what, day, there[what])


def hardly_decided(name, ground):
    """Whether about every other year has a frost: then a hair decides whether there is a date at even odds."""
    year = season(KIKUYU, climates()[name])
    return abs(year.weather.frost(ground).chance_of_any(year.climate.hottest_day, DAYS // 2) - 0.5) < 0.1


@settings(max_examples=30, deadline=None)
@given(climate=ANY_CLIMATE)
def test_growth_is_the_same_half_a_year_away(climate):
    here, there = season(KIKUYU, climate).growth.potential, season(KIKUYU, half_a_year_away(climate)).growth.potential
    turned = monthly_means(there)[6:] + monthly_means(there)[:6]
    assert monthly_means(here) == pytest.approx(turned, abs=0.01)


@settings(max_examples=30, deadline=None)
@given(climate=ANY_CLIMATE, warmer=st.floats(0.1, 8))
def test_a_hotter_place_is_never_dormant_for_longer(climate, warmer):
    hot = replace(climate, **{
        name: tuple(value + warmer for value in getattr(climate, name)) for name in ("mean_maximum_c", "mean_minimum_c")
    })
    cool_days, hot_days = (season(COUCH, each).classes.count("dormant") for each in (climate, hot))
    assert hot_days <= cool_days


@settings(max_examples=30, deadline=None)
@given(climate=ANY_CLIMATE, warmer=st.floats(0.1, 8))
def test_a_hotter_place_has_no_more_frost_on_any_night(climate, warmer):
    # The spread comes from the yearly range, which warming by the same everywhere leaves alone.
    hot = replace(climate, **{
        name: tuple(value + warmer for value in getattr(climate, name)) for name in ("mean_maximum_c", "mean_minimum_c")
    })
    cold, mild = (frost(each, OPEN, rules().soil, rules().frost).chance for each in (climate, hot))
    assert all(one >= other - 1e-12 for one, other in zip(cold, mild))


@settings(max_examples=50, deadline=None)
@given(climate=ANY_CLIMATE)
def test_the_days_of_each_month_have_its_normals(climate):
    days = daily_climate(climate, OPEN, rules().soil)
    for daily, normals in ((days.maximum_c, climate.mean_maximum_c), (days.minimum_c, climate.mean_minimum_c), (days.mean_c, climate.mean_c)):
        assert monthly_means(daily) == pytest.approx(normals, abs=0.05)


@pytest.mark.parametrize("name", every(5, climates()))
def test_the_days_of_each_month_have_the_shipped_normals(name):
    climate = climates()[name]
    days = daily_climate(climate, OPEN, rules().soil)
    for daily, normals in ((days.maximum_c, climate.mean_maximum_c), (days.minimum_c, climate.mean_minimum_c), (days.mean_c, climate.mean_c)):
        assert monthly_means(daily) == pytest.approx(normals, abs=0.05)


def test_the_order_of_places_changes_nothing():
    names = ["canberra", "oxford", "darwin", "seattle"]

    def computed(order):
        forget_years()
        return {(name, grass.id): as_json(season(grass, name)) for name in order for grass in (COUCH, KIKUYU)}

    assert computed(names) == computed(names[::-1])
