"""With a year measured so far, its opening is told better than by the usual year; `held_years.py` prints the tables."""

from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.season.observed.departures import REACH_DAYS
from tests.our_book import book, seasons
from tests.season.held_years import HeldYear, errors, invented_year, seattle_years, table, told, turns

INVENTED = tuple(invented_year("raleigh", "couch", 2001, seed) for seed in range(5))


@pytest.mark.parametrize("years", [seattle_years("couch"), seattle_years("tall-fescue"), INVENTED], ids=["Seattle, couch", "Seattle, fescue", "made up"])
def test_the_error_of_an_opening_falls_against_the_usual_year(years: tuple[HeldYear, ...]) -> None:
    rows = table(years)
    # Never worse than the usual year by more than a day, at any first of a month; and at the end it is known.
    assert all(off <= usual + 1 for _, _, off, usual in rows), rows
    assert rows[-1][2] == 0 and rows[-1][3] > 0, rows
    whole = [(off, usual) for year in years for off, usual in errors(year).values()]
    assert sum(off for off, _ in whole) < 0.75 * sum(usual for _, usual in whole)


@settings(max_examples=8, deadline=None)
@given(st.integers(0, 10_000))
def test_what_was_measured_stays_as_it_was_whatever_comes_later(seed: int) -> None:
    held = invented_year("canberra", "couch", 2001, seed)
    start, end = turns(held)
    early = start + timedelta(days=80)
    rules = seasons()
    from generator.season.observed.measured_weather import measured_weather

    then, now = (measured_weather(held.climate, rules.rules.sites["open"], rules.rules, held.record.until(day)) for day in (early, end))
    for back in range(REACH_DAYS + 1, 60):
        day = (early - timedelta(days=back)).timetuple().tm_yday - 1
        assert then.days.mean_c[day] == pytest.approx(now.days.mean_c[day], abs=1e-9)


def test_a_record_that_stops_before_the_turn_of_the_year_changes_no_spring() -> None:
    held = INVENTED[0]
    found = told(held, date(2000, 11, 15))
    assert found is not None and found[0] == found[1]
    assert book().grasses[held.grass].season_group == "warm"
