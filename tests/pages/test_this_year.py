"""The year page of a place with a record of this year: its line over the usual one, and until when it is measured."""

from dataclasses import replace
from datetime import date, timedelta
from types import MappingProxyType
from typing import Any

import pytest

from generator.book.daily.daily_record import DailyRecord
from generator.season.climate.climate import daily_climate
from generator.season.inputs import climate_of
from generator.season.normals.record_normals import day_number
from generator.season.season_cache import SeasonCache
from generator.site.making import Making
from generator.site.pages.calendar.view import calendar_page
from generator.site.year.charts import broken_path
from generator.site.year.this_year_view import this_year_view
from tests.our_book import book, seasons

UNTIL = date(2026, 10, 31)


def measured(warmer_k: float, spread: tuple[float, ...] | None = None) -> SeasonCache:
    """Our book with days of 2026 at Canberra, each so much warmer than usual."""
    curve = daily_climate(climate_of(book().places["canberra"]), seasons().rules.sites["open"], seasons().rules.soil)
    days = [date(2026, 1, 1) + number * timedelta(days=1) for number in range((UNTIL - date(2026, 1, 1)).days + 1)]
    highs = {day: curve.maximum_c[day_number(day)] + warmer_k for day in days}
    lows = {day: curve.minimum_c[day_number(day)] + warmer_k for day in days}
    place = book().places["canberra"]
    normals = place.normals.model_copy(update={"mean_spread_between_years_c": spread})
    places = {**book().places, "canberra": place.model_copy(update={"normals": normals})}
    record = DailyRecord(highs, lows, dict.fromkeys(days, 2.0))
    return SeasonCache(replace(book(), places=places, observed=MappingProxyType({"canberra": record})))


def page(cache: SeasonCache) -> Any:
    return calendar_page(cache, "couch", "canberra", Making(cache, date(2026, 11, 20)).here("calendars/canberra/couch"))


def test_the_page_says_until_when_it_is_measured_and_draws_this_year_over_the_usual_one() -> None:
    found = page(measured(3.0))
    assert found.sections[0].title == "This year"
    view = found.context["this_year_view"]
    assert view["measured"].startswith("to 31 October 2026 at Canberra; usual weather after that.")
    assert any(each["name"] == "Green-up" and "earlier than usual" in each["text"] for each in view["moves"])
    temperature = view["charts"][0]
    assert [shape["label"] for shape in temperature["shapes"]] == ["usual year", "this year, measured to 31 October 2026"]
    usual, line = (shape["path"] for shape in temperature["shapes"])
    # A line of 52 weeks, and one that ends with October: 43 whole weeks, and four days of the next.
    assert usual.count("L") == 51 and line.count("L") == 42
    # The first week of January: three degrees above the usual, in tenths.
    first, first_usual = (-int(path.removeprefix("M0.5 ").split("L")[0]) for path in (line, usual))
    assert first - first_usual == pytest.approx(30, abs=2)


def test_where_years_are_known_to_differ_dates_ahead_have_an_earliest_and_a_latest_day() -> None:
    view = this_year_view(measured(0.0, (1.5,) * 12), "couch", "canberra", date(2026, 11, 20))
    assert view is not None and view["note"] == ""
    assert [shape["kind"] for shape in view["charts"][0]["shapes"]] == ["band", "line", "line"]
    assert any("In two years of three" in each["text"] for each in view["moves"])


def test_a_place_without_days_of_late_has_the_usual_page() -> None:
    assert page(seasons()).context["this_year_view"] is None and page(seasons()).sections[0].title == "The year"
    assert this_year_view(measured(3.0), "couch", "canberra", date(2027, 6, 20)) is None
    assert this_year_view(measured(3.0), "couch", "sydney", date(2026, 11, 20)) is None


def test_a_line_stops_where_nothing_was_read() -> None:
    assert broken_path("line", [[1, 2, None, 4]]) == "M0.5 -1L1.5 -2M3.5 -4"
    assert broken_path("band", [[None, 5, 6], [None, 1, 2]]) == "M1.5 -5L2.5 -6L2.5 -2L1.5 -1Z"
