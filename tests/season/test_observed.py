"""This year's weather: measured so far, the usual after it; by arithmetic that can be done by hand."""

from datetime import date, timedelta

import pytest

from generator.book.daily.daily_record import DailyRecord
from generator.season.climate.climate import Soil, daily_climate
from generator.season.normals.record_normals import day_number
from generator.season.observed.departures import REACH_DAYS, circle_about, departures, in_the_soil
from generator.season.observed.measured_weather import measured_weather
from generator.season.observed.moves import moves
from generator.season.observed.so_far import since, so_far
from generator.words.reason_text import text
from tests.our_book import seasons
from tests.season.shipped import made_up

A_DAY = timedelta(days=1)
# A place of the north, with winters that send turf dormant.
HIGHS = (6, 8, 12, 17, 22, 26, 29, 28, 24, 18, 12, 7)
LOWS = (-3, -2, 1, 6, 11, 15, 18, 17, 13, 7, 2, -2)
CLIMATE = made_up(HIGHS, LOWS)


def usual():
    cache = seasons()
    return daily_climate(CLIMATE, cache.rules.sites["open"], cache.rules.soil)


def record(first: date, last: date, warmer_k: float, rain_mm: float = 2.0) -> DailyRecord:
    """Days that are so much warmer than the usual ones, each of them."""
    days = [first + number * A_DAY for number in range((last - first).days + 1)]
    curve = usual()
    return DailyRecord(
        {day: curve.maximum_c[day_number(day)] + warmer_k for day in days}, {day: curve.minimum_c[day_number(day)] + warmer_k for day in days},
        dict.fromkeys(days, rain_mm),
    )


def test_days_that_are_all_two_degrees_warmer_make_a_year_two_degrees_warmer_so_far_and_the_usual_one_later() -> None:
    until = date(2025, 4, 20)
    circle, curve = circle_about(until, usual()), usual()
    off = departures(circle, record(date(2024, 11, 1), until, 2.0).mean_c, curve.mean_c)
    assert off[day_number(until) - REACH_DAYS] == pytest.approx(2.0)
    # On the last day half of what is looked at lies ahead, and that day itself behind: a little more than half.
    assert 1.0 < off[day_number(until)] < 1.1
    assert off[day_number(until) + REACH_DAYS + 1] == 0 and off[300] == 0


def test_the_winter_before_last_is_no_part_of_this_year() -> None:
    until = date(2025, 4, 20)
    circle = circle_about(until, usual())
    # The coldest day of this place is in January; what was measured in November counts for nothing.
    off = departures(circle, record(date(2024, 6, 1), until, 2.0).mean_c, usual().mean_c)
    assert off[day_number(date(2025, 11, 20))] == 0
    assert circle.measured_days < 120


def test_soil_at_the_surface_is_as_the_air_and_deeper_soil_feels_less_of_a_short_spell() -> None:
    circle = circle_about(date(2025, 4, 20), usual())
    spell = tuple(3.0 if 80 <= day < 84 else 0.0 for day in range(365))
    deep, shallow = (in_the_soil(circle, spell, Soil(depth, 5e-7)) for depth in (0.3, 0.001))
    assert shallow[82] == pytest.approx(3.0, abs=0.05)
    assert max(deep) < 2.2 and max(deep) == max(deep[83:86])
    # What went in comes out again: nothing is lost but the tail that lies beyond the memory.
    assert sum(in_the_soil(circle, tuple(1.0 for _ in range(365)), Soil(0.1, 5e-7))[80:82]) == pytest.approx(2.0, abs=0.1)


def test_a_measured_frost_is_certain_and_a_mild_night_is_none() -> None:
    cache, until = seasons(), date(2025, 4, 20)
    days = record(date(2025, 1, 1), until, 0.0)
    lows = {**days.minimum_c, date(2025, 4, 10): -0.5, date(2025, 4, 11): 0.1}
    here = measured_weather(CLIMATE, cache.rules.sites["open"], cache.rules, DailyRecord(days.maximum_c, lows, days.rain_mm))
    tenth, eleventh = day_number(date(2025, 4, 10)), day_number(date(2025, 4, 11))
    assert here.air_frost.chance[tenth] == pytest.approx(1) and here.air_frost.chance[eleventh] == 0
    assert here.air_frost.chance_of_any(tenth - 5, 10) == pytest.approx(1)
    assert here.air_frost.chance_of_any(eleventh, 5) == 0
    # In a hollow the same night is colder by its offset.
    hollow = measured_weather(CLIMATE, cache.rules.sites["hollow"], cache.rules, DailyRecord(days.maximum_c, lows, days.rain_mm))
    assert hollow.air_frost.chance[eleventh] == pytest.approx(1)


def this_year(days: DailyRecord):
    from generator.season.inputs import grass_season_of
    from generator.season.observed import this_year as module

    book, cache = seasons().book, seasons()
    return module.this_year(CLIMATE, grass_season_of("couch", book.grasses["couch"], book.season_groups), cache.rules.sites["open"], cache.rules, days)


def test_a_warm_spring_opens_the_window_earlier_and_says_so() -> None:
    this = this_year(record(date(2025, 1, 1), date(2025, 5, 31), 3.0))
    found, before = this.season.windows["renovation"].windows[0], this.usual.windows["renovation"].windows[0]
    assert found.first < before.first - 7
    said = text(found.why)
    assert "Measured to 31 May, usual weather after that." in said
    assert f"It opens {before.first - found.first} days earlier than in a usual year." in said
    moved = moves(this)["renovation opens"]
    assert (moved.later, moved.is_past) == (found.first - before.first, True)
    assert moves(this)["green_up"].later < -7


def test_days_as_usual_move_nothing_that_warmth_sets() -> None:
    this = this_year(record(date(2025, 1, 1), date(2025, 5, 31), 0.0))
    assert this.season.climate.soil_c == pytest.approx(this.usual.climate.soil_c)
    assert this.season.green_up_day == this.usual.green_up_day
    (now,), (before,) = (each.windows["renovation"].windows for each in (this.season, this.usual))
    # A spring in which no night froze is free of frost a little before the day from which one year in ten still has one.
    assert now.last == before.last and before.first - 10 < now.first <= before.first


def test_what_the_days_brought_is_told_beside_the_same_days_of_a_usual_year() -> None:
    days = record(date(2025, 1, 1), date(2025, 3, 31), 2.0, rain_mm=1.5)
    this = this_year(days)
    found = so_far(this, days)
    counted = (this.until - since(this)).days + 1
    assert found["mean_temperature"].measured == pytest.approx(found["mean_temperature"].usual + 2.0)
    assert found["rain"].measured == pytest.approx(1.5 * counted) and found["rain"].days == counted


def test_bands_are_as_wide_as_years_differ_and_close_as_the_season_goes_on() -> None:
    from dataclasses import replace

    from generator.season.inputs import grass_season_of
    from generator.season.observed import this_year as module

    book, cache = seasons().book, seasons()
    climate = replace(CLIMATE, mean_spread_between_years_c=(1.5,) * 12)
    grass = grass_season_of("couch", book.grasses["couch"], book.season_groups)
    widths = []
    for until in (date(2025, 2, 15), date(2025, 4, 15)):
        this = module.this_year(climate, grass, cache.rules.sites["open"], cache.rules, record(date(2025, 1, 1), until, 0.0))
        band = moves(this)["green_up"]
        assert band.earliest is not None and band.latest is not None and band.earliest < band.day < band.latest
        widths.append(band.latest - band.earliest)
    assert widths[0] >= widths[1] > 0


def test_a_record_without_a_whole_day_is_refused() -> None:
    cache = seasons()
    with pytest.raises(ValueError, match="both a maximum and a minimum"):
        measured_weather(CLIMATE, cache.rules.sites["open"], cache.rules, DailyRecord({date(2025, 1, 1): 3.0}, {}, {}))
