"""The computed year: its weeks, its classes, its events and its JSON."""

import json

import pytest

from generator.files.season_json import as_json
from generator.season.calendar_days import DAYS, month_and_day, week_days, week_number
from tests.season.shipped import COUCH, FESCUE, GRASSES, KIKUYU, climates, rules, season


def test_weeks_cover_the_year_once():
    assert [day for week in range(52) for day in week_days(week)] == list(range(DAYS))
    assert (month_and_day(0), month_and_day(364), month_and_day(365)) == ("01-01", "12-31", "01-01")
    assert (week_number(0), week_number(364)) == (1, 52)
    weeks = season(COUCH, "sydney").weeks
    assert (weeks[0].starts, weeks[51].starts) == ("01-01", "12-24")


def test_weekly_water_adds_up_to_the_year():
    year = season(COUCH, "melbourne")
    assert sum(week.rain_mm for week in year.weeks) == pytest.approx(sum(climates()["melbourne"].rain_mm))
    assert sum(week.water_need_mm for week in year.weeks) == pytest.approx(sum(year.water_need_mm))


def test_hemisphere_falls_out_of_the_data():
    assert season(COUCH, "canberra").climate.hottest_day < 60
    assert 170 < season(COUCH, "atlanta").climate.hottest_day < 230


def test_couch_sleeps_where_winter_is_cold_and_only_slows_where_it_is_mild():
    assert season(COUCH, "canberra").dormancy is not None
    assert season(COUCH, "sydney").dormancy is None and "slow" in season(COUCH, "sydney").classes
    assert set(season(KIKUYU, "darwin").classes) == {"peak"}


def test_green_up_comes_before_the_window_and_slow_down_after_it():
    for name in ("canberra", "atlanta", "bloemfontein", "chicago"):
        year = season(COUCH, name)
        (window,) = year.renovation.windows
        assert (window.first - year.green_up_day) % DAYS < 90, name
        assert (year.slow_down_day - window.last) % DAYS < 90, name


def test_soil_at_green_up_has_reached_the_published_temperature():
    # NC State: dormant couch greens at a soil temperature of 14 °C.
    year = season(COUCH, "canberra")
    assert year.climate.soil_c[year.green_up_day] >= 14 > year.climate.soil_c[year.green_up_day - 1]


@pytest.mark.parametrize(("grass", "place", "asleep_c"), [(COUCH, "canberra", 10.0), (COUCH, "chicago", 10.0), (FESCUE, "chicago", 4.4)])
def test_it_sleeps_in_soil_as_cold_as_published_and_in_no_warmer(grass, place, asleep_c):
    """Delaware's turf page: warm-season grass sleeps in soil at 50 °F, and shoots of cool-season grass stop at 40 °F."""
    year = season(grass, place)
    asleep = {day for day, growth in enumerate(year.classes) if growth == "dormant"}
    assert asleep and asleep == {day for day, soil_c in enumerate(year.climate.soil_c) if soil_c <= asleep_c}


@pytest.mark.parametrize("site", rules().sites)
def test_every_site_has_a_year(site):
    year = season(FESCUE, "christchurch", site)
    assert len(year.weeks) == 52 and year.weather.site.id == site


def test_json_has_the_shape_of_the_contract():
    for name in ("canberra", "darwin"):
        for grass in GRASSES:
            found = json.loads(json.dumps(as_json(season(grass, name))))
            assert [week["week"] for week in found["weeks"]] == list(range(1, 53))
            assert {"week", "from", "mean_temperature_c", "growth_potential", "frost_probability",
                    "reference_evapotranspiration_mm", "water_need_mm"} <= found["weeks"][0].keys()
            for kind in ("renovation", "overseeding"):
                assert bool(found["windows"][kind]) != (kind in found["why_none"])
                for window in found["windows"][kind]:
                    assert {"from", "best", "to", "why"} <= window.keys()


def test_whole_degrees_stay_whole_in_json_and_tenths_stay_tenths():
    def temperatures(place):
        return [week["mean_temperature_c"] for week in as_json(season(COUCH, place))["weeks"]]

    assert all(value == round(value) for value in temperatures("auckland"))
    assert any(value != round(value) for value in temperatures("perth"))


def test_the_same_question_is_answered_once():
    assert season(COUCH, "perth") is season(COUCH, "perth")
