"""What an author is told of figures that cannot be a climate, series by series; and how evaporation was worked out, in words."""

from types import SimpleNamespace

import pytest

from generator.season.climate.climate_faults import ClimateFault, climate_faults
from generator.season.water.need import HARGREAVES, evapotranspiration_method
from generator.season.windows.printed_agreement import Agreement, agreement, day_number
from tests.jobs.test_window_answer import a_window
from tests.season.shipped import made_up

NAMES = ("mean_maximum_c", "mean_minimum_c", "rain_mm", "frost_days", "cold_days_at_or_below_2c", "minimum_standard_deviation_c",
         "sunshine_h_per_day", "relative_humidity_3pm_percent")
SOUND = {"mean_maximum_c": (25.0,) * 12, "mean_minimum_c": (12.0,) * 12, "rain_mm": (60.0,) * 12}


def faults(latitude=-35.0, **series):
    return climate_faults(SimpleNamespace(**{**dict.fromkeys(NAMES), **SOUND, **series}), latitude)


def in_month(month, value, other):
    return tuple(value if each == month else other for each in range(12))


@pytest.mark.parametrize(("name", "month", "value", "other", "what", "instead"), [
    ("mean_maximum_c", 0, 60.5, 25, "January: mean maximum 60.5 °C was never measured", "give it in degrees Celsius"),
    ("mean_minimum_c", 6, -91, 12, "July: mean minimum -91 °C was never measured", "give it in degrees Celsius"),
    ("mean_minimum_c", 6, 25.5, 12, "July: mean minimum 25.5 °C is above mean maximum 25 °C", "check whether the two are swapped"),
    ("rain_mm", 1, -0.5, 60, "February: rain -0.5 mm is negative", "give 0 or more"),
    ("frost_days", 1, 30, 0, "February: 30 frost days do not fit a month of 28 days", "give 0 to 29"),
    ("frost_days", 3, 31, 0, "April: 31 frost days do not fit a month of 30 days", "give 0 to 30"),
    ("frost_days", 0, -1, 0, "January: -1 frost days do not fit a month of 31 days", "give 0 to 31"),
    ("cold_days_at_or_below_2c", 11, 32, 3, "December: 32 cold days do not fit a month of 31 days", "give 0 to 31"),
    ("minimum_standard_deviation_c", 4, 0, 3, "May: a standard deviation of 0 is not above 0", "leave the row out if it is not known"),
    ("sunshine_h_per_day", 4, -1, 6, "May: -1 hours of sunshine do not fit a day of ", "give the mean of a day, and check the sign of the latitude"),
    ("relative_humidity_3pm_percent", 8, 101, 50, "September: a humidity of 101 % is not above 0 and up to 100", "give it in per cent"),
])
def test_a_month_that_cannot_be_is_told_with_what_would_be_right(name, month, value, other, what, instead):
    (fault,) = faults(**{name: in_month(month, value, other)})
    assert (fault.series, fault.month, fault.instead) == (name, month, instead) and fault.what.startswith(what)


def test_nights_of_the_two_thresholds_are_held_together():
    (fault,) = faults(frost_days=(3.0,) * 12, cold_days_at_or_below_2c=in_month(2, 2.0, 4.0))
    assert fault == ClimateFault(
        "cold_days_at_or_below_2c", 2, "March: 2 nights at or below 2 °C are fewer than the 3 at or below 0 °C", "check whether the two are swapped",
    )
    assert faults(frost_days=(3.0,) * 12, cold_days_at_or_below_2c=(3.0,) * 12) == []


@pytest.mark.parametrize("series", [
    {"mean_maximum_c": (60.0,) * 12}, {"mean_minimum_c": (-90.0,) * 12}, {"mean_minimum_c": (25.0,) * 12}, {"rain_mm": (0.0,) * 12},
    {"frost_days": (31.0, 29.0, 31.0, 30.0, 31.0, 30.0, 31.0, 31.0, 30.0, 31.0, 30.0, 31.0)}, {"relative_humidity_3pm_percent": (100.0,) * 12},
    {"sunshine_h_per_day": (0.0,) * 12},
])
def test_what_is_just_possible_is_accepted(series):
    """A leap year's 29 days of February among it."""
    assert faults(**series) == []


@pytest.mark.parametrize(("latitude", "told"), [(90, 0), (-90, 0), (90.5, 1), (-91, 1)])
def test_a_latitude_off_the_globe_is_told(latitude, told):
    found = faults(latitude)
    expected = ClimateFault(None, None, f"latitude {latitude:g} is not between -90 and 90 degrees", "south is negative")
    assert found == [expected] * told


def test_where_there_is_no_day_to_hold_it_against_any_sunshine_of_a_day_will_do():
    for hours, series in ((24.0, [None]), (25.0, [None] + ["sunshine_h_per_day"] * 12)):
        assert [fault.series for fault in faults(95, sunshine_h_per_day=(hours,) * 12)] == series


def test_the_longest_day_of_the_month_is_held_against_its_sunshine():
    """At 35° south the 21st of December has 14.4 hours, and June's shortest are 9.6: with 0.3 for the air, 14.7 and about 10."""
    assert faults(sunshine_h_per_day=in_month(11, 14.6, 8.0)) == []
    (december,) = faults(sunshine_h_per_day=in_month(11, 14.8, 8.0))
    assert december.what == "December: 14.8 hours of sunshine do not fit a day of 14.7 hours"
    (june,) = faults(sunshine_h_per_day=in_month(5, 10.5, 8.0))
    assert june.month == 5 and june.what.startswith("June: 10.5 hours of sunshine do not fit a day of ")


def test_a_series_that_is_no_year_of_numbers_is_told_before_its_months_are_looked_at():
    found = faults(rain_mm=(60.0,) * 11, mean_minimum_c=(99.0,) * 12)
    assert found == [ClimateFault("rain_mm", None, "rain has 11 months where a year has 12", "give one figure a month")]
    found = faults(frost_days=in_month(7, float("inf"), 0.0), latitude=95)
    assert found == [
        ClimateFault(None, None, "latitude 95 is not between -90 and 90 degrees", "south is negative"),
        ClimateFault("frost_days", 7, "frost days has a month that is not a number", "write a number"),
    ]


def test_every_month_that_is_wrong_has_its_own_fault():
    assert [(fault.month, fault.series) for fault in faults(rain_mm=(-1.0, *(60.0,) * 10, -2.0))] == [(0, "rain_mm"), (11, "rain_mm")]


SUNNY = {"sunshine_h_per_day": (6.0,) * 12}
HUMID = {"relative_humidity_3pm_percent": (50.0,) * 12}


@pytest.mark.parametrize(("known", "assumed"), [
    ({**SUNNY, **HUMID, "elevation_m": 20.0}, ("humidity at 15:00 taken for the day's lowest, at the maximum temperature",)),
    ({**SUNNY, "elevation_m": 0.0}, ("air as damp as at dawn: its dew point taken at the minimum",)),
    ({**SUNNY, **HUMID}, (
        "humidity at 15:00 taken for the day's lowest, at the maximum temperature", "sea level, where the height of the station is not known",
    )),
])
def test_evaporation_says_what_stands_in_for_what_was_not_measured(known, assumed):
    found = evapotranspiration_method(made_up(25, 12, **known))
    assert (found.id, found.words) == ("penman-monteith", "FAO-56 Penman-Monteith")
    expected = ["the sun's radiation from the hours of sunshine", assumed[0], "wind of 2 m/s, where none is given", *assumed[1:]]
    assert list(found.assumed) == expected


def test_without_sunshine_the_range_of_temperature_stands_in():
    assert evapotranspiration_method(made_up(25, 12, **HUMID)) is HARGREAVES
    assert (HARGREAVES.id, HARGREAVES.words) == ("hargreaves-samani", "Hargreaves and Samani, from the day's maximum and minimum")


def test_a_printed_date_is_a_day_of_the_year():
    assert [day_number(each) for each in ("01-01", "03-01", "12-31")] == [0, 59, 364]


@pytest.mark.parametrize(("printed", "windows", "found"), [
    # Weeks 1 to 4 are 1 to 28 January; a week counts with four of its days.
    (("01-01", "01-28"), [("01-01", "01-28")], (4, 1, 1)), (("01-01", "01-28"), [("01-08", "02-04")], (3, 0.75, 0.75)),
    (("01-01", "01-28"), [("01-01", "01-11")], (2, 0.5, 1)), (("01-01", "01-28"), [("01-01", "01-10")], (1, 0.25, 1)),
    (("01-01", "01-28"), [("06-01", "07-31")], (0, 0, 0)),
    # Over New Year: 18 December to 14 January are weeks 51, 52, 1 and 2 (week 51 begins on the 17th).
    (("12-18", "01-14"), [("01-01", "01-14")], (2, 0.5, 1)),
    # Of two windows the one that shares more is meant.
    (("01-01", "01-28"), [("06-01", "07-31"), ("01-01", "01-14")], (2, 0.5, 1)),
])
def test_two_calendars_agree_by_the_weeks_they_share(printed, windows, found):
    assert agreement(*printed, [a_window(*map(day_number, each)) for each in windows]) == Agreement(*found)


def test_a_window_that_holds_most_of_the_printed_weeks_is_close():
    assert [Agreement(7, share, 1).is_close for share in (0.7, 0.69, 1)] == [True, False, True]
    assert agreement("01-01", "01-28", []) is None
