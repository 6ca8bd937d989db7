"""The small charts: a path is the numbers of its series, and a scale stands where its numbers say."""

import pytest

from generator.season.calendar_days import week_days
from generator.site.year.charts import CHARTS, chart_views, nice_step, path, series_of
from tests.our_book import seasons

FLAT = [10] * 52


def test_a_line_goes_through_the_middle_of_each_week_and_meets_itself_at_new_year():
    """Up is less in a drawing, so 30 stands at -30. Between the last week (31) and the first (30) lies 30, rounded down."""
    points = path("line", [[30, *[20] * 50, 31]]).removeprefix("M").split("L")
    assert points[:3] == ["0 -30", "0.5 -30", "1.5 -20"]
    assert points[-2:] == ["51.5 -31", "52 -30"]
    assert len(points) == 54


def test_an_area_stands_on_nothing_and_bars_too():
    assert path("area", [FLAT]).startswith("M0 0L0 -10L0.5 -10") and path("area", [FLAT]).endswith("L52 -10L52 0Z")
    assert path("bars", [FLAT]).startswith("M0.5 0V-10M1.5 0V-10")


def test_a_band_goes_out_above_and_back_below():
    drawn = path("band", [FLAT, [5] * 52])
    assert drawn.startswith("M0 -10") and "52 -10L52 -5L51.5 -5" in drawn and drawn.endswith("L0 -5Z")


@pytest.mark.parametrize(("span", "step"), [(40, 10), (41, 20), (90, 25), (100, 25), (0.9, 0.25), (1.1, 0.5), (7, 2), (0, 1)])
def test_steps_are_round_and_four_at_most(span, step):
    """The smallest of 1, 2, 2.5 and 5 times a power of ten in no more than four steps: 40/10 is four, 41/10 more; 90/20 is more, 90/25 not."""
    assert nice_step(span) == pytest.approx(step)


def test_both_scales_say_the_same_of_one_height():
    """32 °F is 0 °C and 50 °F is 10 °C, whatever a label rounds."""
    view = temperature("canberra")
    low, high = view["low"] / 10, view["high"] / 10
    for tick in view["us_scale"]:
        fahrenheit = float(tick["label"].split()[0].replace("−", "-"))
        assert high - tick["at"] * (high - low) == pytest.approx((fahrenheit - 32) / 1.8, abs=0.01)
    for tick in view["scale"]:
        assert high - tick["at"] * (high - low) == pytest.approx(float(tick["label"].split()[0].replace("−", "-")), abs=0.01)


def test_every_label_has_its_unit():
    season = seasons().season("couch", "canberra")
    for view in chart_views({"open": series_of(season)}, "open", {chart.id: "" for chart in CHARTS}):
        unit = next(chart.unit for chart in CHARTS if f"chart-{chart.id}" == view["id"])
        assert all(tick["label"].endswith(unit) for tick in view["scale"])
        assert len(view["scale"]) >= 2


def test_one_scale_holds_the_years_of_every_site():
    for place in seasons().calendar_places:
        for chart in views("couch", place):
            for site in seasons().sites:
                series = series_of(seasons().season("couch", place, site))
                names = {name for shape in chart["shapes"] for name in shape["series"].split()}
                assert all(chart["low"] <= value <= chart["high"] for name in names for value in series[name])


def test_the_last_week_of_eight_days_is_drawn_as_one_of_seven():
    season = seasons().season("couch", "sydney")
    assert len(week_days(51)) == 8
    assert series_of(season)["rain"][51] == pytest.approx(10 * season.weeks[51].rain_mm * 7 / 8, abs=0.5)


def views(grass: str, place: str) -> list[dict]:
    years = {site: series_of(seasons().season(grass, place, site)) for site in seasons().sites}
    return chart_views(years, "open", {chart.id: "" for chart in CHARTS})


def temperature(place: str) -> dict:
    return next(view for view in views("couch", place) if view["id"] == "chart-temperature")
