"""Normals of a daily record, against sums by hand; and which months are whole enough, by WMO-No. 1203."""

from datetime import date, timedelta

import pytest

from generator.book.daily.daily_record import DailyRecord
from generator.season.normals.completeness import left_out
from generator.season.normals.record_normals import NoNormals, day_number, normals_of
from tests.season.seattle import seattle_days

A_DAY = timedelta(days=1)


def days_of(first: date, last: date) -> list[date]:
    return [first + number * A_DAY for number in range((last - first).days + 1)]


def two_years() -> DailyRecord:
    """2021 and 2022: maxima of 20 and of 22; minima of 2, but 0.0 on the first ten nights of each July, and of -4 and -6 on 31 July; 1 mm a day."""
    days = days_of(date(2021, 1, 1), date(2022, 12, 31))
    lows = {day: 0.0 if day.month == 7 and day.day <= 10 else 2.5 for day in days}
    lows |= {date(2021, 7, 31): -4.0, date(2022, 7, 31): -6.0}
    return DailyRecord({day: 20.0 if day.year == 2021 else 22.0 for day in days}, lows, dict.fromkeys(days, 1.0))


def test_the_figures_of_a_small_record_are_those_of_a_sum_by_hand() -> None:
    n = normals_of(two_years())
    assert n.mean_maximum_c == pytest.approx((21.0,) * 12)
    assert n.rain_mm[0] == 31 and n.rain_mm[1] == 28
    # July: 20 nights of 2.5, ten of 0 and one of -4 or -6: (50 - 4) / 31 and (50 - 6) / 31, and the mean of both.
    assert n.mean_minimum_c[6] == pytest.approx((46 / 31 + 44 / 31) / 2)
    assert n.frost_days[6] == pytest.approx(11) and n.frost_days[5] == 0
    assert n.cold_days[6] == pytest.approx(11)
    assert n.lowest_minimum_c[6] == -6 and (n.first_year, n.last_year) == (2021, 2022)
    assert n.years == (2,) * 12 and n.mean_spread_c is None


@pytest.mark.parametrize(
    ("missing", "why"),
    [([*range(1, 20, 2)], None), ([*range(1, 22, 2)], "days"), ([5, 6, 7, 8], None), ([5, 6, 7, 8, 9], "gap"), ([1, 2, 3, 4, 28, 29, 30, 31], None)],
    ids=["ten days", "eleven days", "four in a row", "five in a row", "four at each end"],
)
def test_a_month_with_eleven_days_missing_or_five_in_a_row_is_left_out(missing: list[int], why: str | None) -> None:
    """World Meteorological Organization 2017, WMO-No. 1203, on the completeness of a month's daily values."""
    march = {date(2021, 3, day): 10.0 for day in range(1, 32) if day not in missing}
    assert [each.why for each in left_out(march, is_sum=False)] == ([why] if why else [])
    # A total needs every day.
    assert [each.why for each in left_out(march, is_sum=True)] == ["sum"]


def test_a_month_that_no_year_has_whole_is_told() -> None:
    record = two_years()
    short = DailyRecord({day: value for day, value in record.maximum_c.items() if day.month != 2}, record.minimum_c, record.rain_mm)
    with pytest.raises(NoNormals) as told:
        normals_of(short)
    assert told.value.reasons == ("no February of any year is whole enough for its maximum",)


def test_the_correlation_of_seattles_nights_is_the_one_found_before() -> None:
    """0.69 by another road, through the departures from a running mean; both of NOAA's record of 2012 to 2015."""
    days = seattle_days()
    n = normals_of(DailyRecord({day: high for day, _, high in days}, {day: low for day, low, _ in days}, {day: 0.0 for day, *_ in days}))
    assert n.night_to_night == pytest.approx(0.69, abs=0.04)
    assert n.years == (4,) * 12


def test_the_last_of_february_in_a_leap_year_is_the_28th() -> None:
    assert day_number(date(2024, 2, 29)) == day_number(date(2023, 2, 28)) == 58
    assert day_number(date(2024, 12, 31)) == 364
