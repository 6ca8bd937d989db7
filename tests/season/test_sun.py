"""The sun against FAO-56's table values, an independent library and an almanac."""

from datetime import date, timedelta
from math import radians

import astral
import astral.sun
import pandas
import pyet
import pytest

from generator.season.calendar_days import DAYS
from generator.season.climate.sun import sun
from tests.season.shipped import places

# A year without a leap day, so that day numbers agree.
DATES = pandas.DatetimeIndex([date(2023, 1, 1) + timedelta(days=day) for day in range(DAYS)])
# Our year without a leap day stands for all four of a cycle.
LEAP_CYCLE = (2025, 2026, 2027, 2028)


@pytest.mark.parametrize("latitude", [-54, -37.8, -20, -12.4, 0, 13.7, 33.6, 51.5, 60, 64])
def test_radiation_and_daylight_agree_with_pyet(latitude):
    # pyet's solar constant is FAO-56's 0.0820; both sides write out equation 21.
    theirs = pyet.extraterrestrial_r(DATES, radians(latitude))
    assert sun(latitude).extraterrestrial_radiation_mj == pytest.approx(list(theirs), rel=0.005, abs=0.02)
    assert sun(latitude).daylight_h == pytest.approx(list(pyet.daylight_hours(DATES, radians(latitude))), abs=0.05)


@pytest.mark.parametrize(
    ("latitude", "day", "value"),
    # The middle days of months, as in FAO-56 table 2.6, by equation 21: computed with pyet 1.5.0, not read in the table.
    [
        (50, 196, 40.21), (50, 15, 8.89), (30, 105, 36.84), (0, 74, 37.91), (-20, 288, 38.59), (-40, 15, 43.35), (54, 349, 5.22),
        (40, 166, 41.84), (-40, 196, 13.92), (20, 46, 30.6),
    ],
)
def test_radiation_of_single_days(latitude, day, value):
    assert sun(latitude).extraterrestrial_radiation_mj[day - 1] == pytest.approx(value, abs=0.06)


@pytest.mark.parametrize(
    ("latitude", "day", "value"),
    # As in FAO-56 table 2.7, which prints one decimal: computed with pyet 1.5.0, not read in the table.
    [(50.8, 187, 16.1), (-35, 15, 14.1)],
)
def test_daylight_of_single_days(latitude, day, value):
    assert sun(latitude).daylight_h[day - 1] == pytest.approx(value, abs=0.05)


def test_polar_night_and_midnight_sun_have_an_answer():
    north = sun(75)
    assert min(north.extraterrestrial_radiation_mj) == 0
    assert (min(north.daylight_h), max(north.daylight_h)) == (0, 24)
    assert (min(north.day_length_h), max(north.day_length_h)) == (0, 24)


def almanac_hours(latitude: float, year: int, day: int) -> float:
    """From sunrise to sunset, the sun's upper edge and bent light counted."""
    when = (date(2025, 1, 1) + timedelta(days=day)).replace(year=year)
    observer = astral.Observer(latitude, 0.0, 0.0)
    seconds = (astral.sun.sunset(observer, when) - astral.sun.sunrise(observer, when)).total_seconds()
    return seconds / 3600 % 24


@pytest.mark.parametrize("latitude", [-46.4, -37.7, -12.4, 0, 25.8, 41.0, 53.4])
def test_the_day_from_sunrise_to_sunset_is_the_almanacs_to_two_minutes(latitude):
    # Compared: sunrise to sunset on both sides. A single leap year's dates run up to half a day off the mean of four, which is
    # 2 minutes more at 53 degrees, so the mean of four years is what a calendar without leap day can be held to.
    for day in range(0, DAYS, 3):
        theirs = sum(almanac_hours(latitude, year, day) for year in LEAP_CYCLE) / len(LEAP_CYCLE)
        assert sun(latitude).day_length_h[day] == pytest.approx(theirs, abs=2 / 60), day


def test_faos_day_is_shorter_by_the_bent_light_and_looser_in_its_declination(capsys):
    # FAO-56's day has no air to lift the sun and one sine for its declination: compared like with like (the sun's centre on
    # the horizon, no refraction) it is some minutes out at most, which its radiation can bear: 13 of 760 minutes are 1.7 %.
    worst = {}
    for latitude in (-37.7, 0, 53.4):
        observer = astral.Observer(latitude, 0.0, 0.0)
        for day in range(0, DAYS, 3):
            when = date(2026, 1, 1) + timedelta(days=day)
            rises, sets = (
                astral.sun.time_of_transit(observer, when, 90.0, direction, with_refraction=False)
                for direction in (astral.SunDirection.RISING, astral.SunDirection.SETTING)
            )
            hours = (sets - rises).total_seconds() / 3600 % 24
            apart = abs(sun(latitude).daylight_h[day] - hours) * 60
            worst[latitude] = max(worst.get(latitude, 0.0), apart)
    with capsys.disabled():
        print(" FAO-56 day against the sun's centre, minutes at most:", {k: round(v, 1) for k, v in worst.items()}, end=" ")
    assert worst[0] < 2 and max(worst.values()) < 14


def test_no_shipped_place_has_more_sunshine_than_day():
    for name, place in places().items():
        for month, hours in enumerate(place.normals.sunshine_h_per_day or ()):
            middle = (date(2025, month + 1, 15) - date(2025, 1, 1)).days
            assert hours < sun(place.latitude_deg).day_length_h[middle], (name, month)
