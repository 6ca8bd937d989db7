"""What a reason names is the figure of the day it speaks of."""

import pytest

from generator.season.calendar_days import DAYS
from generator.season.windows.limits import heat_limit, wet_limit
from generator.words.reason_text import text
from tests.our_book import seasons


@pytest.mark.parametrize(("place", "advised"), [("sheffield", False), ("dublin", False), ("chicago", True), ("sydney", True)])
def test_a_pre_emergent_has_no_window_where_nobody_advises_it(place: str, advised: bool) -> None:
    found = seasons().season("tall-fescue", place).pre_emergent
    assert bool(found.windows) == advised
    if found.why_none:
        assert text(found.why_none).startswith("No public body there advises it")


def test_a_day_is_classed_by_its_share_of_the_best() -> None:
    """Dormant by soil; else at its best, growing or slow by the shares that the rules give."""
    season = seasons().season("couch", "sydney")
    for day in range(DAYS):
        share = season.growth.share[day]
        expected = "peak" if share >= season.rules.peak_share else "growing" if share >= season.rules.start_share else "slow"
        assert season.classes[day] == ("dormant" if season.climate.soil_c[day] <= season.rules.dormant_soil_c else expected)
    assert {"growing", "peak"} <= set(season.classes)


def test_the_wet_season_s_end_names_that_week_s_rain_and_what_evaporates() -> None:
    season = seasons().season("couch", "cairns")
    limit = wet_limit(season.view, season.rules, (28,) * DAYS)
    assert limit.opens is not None
    for day in (100, 150):
        values = limit.opens(day).values
        assert values["rain"].value == pytest.approx(7 * season.climate.rain_mm[day])
        assert values["evaporates"].value == pytest.approx(7 * season.weather.reference_evapotranspiration_mm[day])


def test_a_year_too_hot_names_the_limit() -> None:
    season = seasons().season("tall-fescue", "darwin")
    limit = heat_limit(season.view, season.rules, 42)
    assert not any(limit.allowed) and f"at or below {season.rules.heat_limit_c:g} °C for 6 weeks" in text(limit.never)


def test_the_end_of_summer_names_that_day_s_mean() -> None:
    """Of the places whose ryegrass waits for summer to be behind, each names its own mean."""
    named = []
    for place in ("sydney", "canberra", "perth", "phoenix", "atlanta", "brisbane", "adelaide"):
        season = seasons().season("couch", place)
        for window in season.oversowing.windows[:1]:
            named += [(text(each), season.view.degrees(season.climate.mean_c[window.first])) for each in window.why_first if each.code == "summer-behind"]
    assert named
    for said, mean in named:
        assert f"{mean.value:{mean.shown}} °C" in said
