"""Where a search looks, and what it makes of a function: places counted by hand, and functions whose meetings are known."""

import math

import pytest

from generator.calculators.root_search import Meeting, meetings, points, side_of, with_extremes

# Sixteen steps a decade over the fifteen decades from a millionth of the unit to a thousand million of them, both ends counted.
AWAY = 15 * 16 + 1


def test_a_range_with_two_ends_is_looked_at_from_both_and_evenly_between():
    found = points(0.0, 10.0, 1.0)
    assert found == sorted(set(found)) and (found[0], found[-1]) == (0, 10)
    # Even steps are 256ths of the range; the first steps from either end are a millionth of the unit.
    assert {10 * step / 256 for step in range(257)} <= set(found)
    assert found[1] == pytest.approx(1e-6) and found[-2] == pytest.approx(10 - 1e-6)
    # Sixteen steps to ten times as far.
    assert found[17] == pytest.approx(1e-5)


def test_an_end_that_does_not_belong_to_the_range_is_left_out():
    assert points(0.0, 10.0, 1.0, low_open=True)[0] == pytest.approx(1e-6)
    assert points(2.0, None, 1.0)[0] == 2 and points(2.0, None, 1.0, low_open=True)[0] == pytest.approx(2 + 1e-6)
    assert len(points(2.0, None, 1.0)) == AWAY + 1 and len(points(2.0, None, 1.0, low_open=True)) == AWAY


def test_an_open_range_goes_a_thousand_million_units_each_way():
    assert points(5.0, None, 0.01)[-1] == pytest.approx(1e7)
    below = points(None, 5.0, 0.01)
    assert below[-1] == 5 and below[0] == pytest.approx(-1e7) and len(below) == AWAY + 1
    both = points(None, None, 1.0, zero=273.15)
    assert both[0] == pytest.approx(-1e9) and both[-1] == pytest.approx(1e9) and 273.15 in both and len(both) == 2 * AWAY + 1
    assert 274.15 in both and 272.15 in both


def test_whole_numbers_are_looked_at_one_by_one_while_they_are_near():
    found = points(1.0, 60.0, 1.0, whole=True)
    assert all(each == int(each) for each in found) and set(range(1, 61)) == set(found)
    assert points(1.0, None, 1.0, whole=True)[:3] == [1, 2, 3]


def test_twelve_digits_decide_on_which_side_a_value_is():
    assert [side_of(value, 2.0) for value in (None, 1.9, 2.0, 2.0 * (1 + 9e-13), 2.0 * (1 + 2e-12), 2.0 * (1 - 2e-12), 2.1)] == [None, -1, 0, 0, 1, -1, 1]
    assert [side_of(value, -2.0) for value in (-2.0, -2.1, -1.9)] == [0, -1, 1] and side_of(0.0, 0.0) == 0


def test_a_peak_and_a_trough_between_two_places_are_found():
    """x (3 - x) is highest at 1.5 and sin x lowest at three halves of pi."""
    assert min(abs(each - 1.5) for each in with_extremes(lambda x: x * (3 - x), [0.0, 1.0, 2.0, 3.0])) < 1e-6
    found = with_extremes(math.sin, [0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0])
    assert min(abs(each - 1.5 * math.pi) for each in found) < 1e-6 and min(abs(each - 0.5 * math.pi) for each in found) < 1e-6
    # A function that only rises has none between, and one without values none at all.
    assert with_extremes(lambda x: x, [0.0, 1.0, 2.0]) == [0, 1, 2] and with_extremes(lambda x: None, [0.0, 1.0]) == [0, 1]


def test_a_function_that_has_no_value_in_places_is_searched_where_it_has():
    """The square root is 2 at 4, and has no value below nought."""
    (met,) = meetings(lambda x: math.sqrt(x) if x >= 0 else None, [-5.0, -1.0, 1.0, 9.0], 2.0)
    assert met.kind == "point" and met.first == pytest.approx(4, rel=1e-9) and (met.before, met.after) == (-1, 1)
    assert meetings(lambda x: x if x < 0 else None, [-1.0, 1.0], 0.5) == []


def steps(x):
    """1 below 2, 2 from 2 to 5, 3 above."""
    return 1.0 if x < 2 else 2.0 if x <= 5 else 3.0


def test_a_stretch_is_told_by_its_ends_and_what_lies_beyond_them():
    (met,) = meetings(steps, [0.0, 3.0, 4.0, 7.0], 2.0)
    assert (met.first, met.last) == (pytest.approx(2), pytest.approx(5)) and steps(met.first) == steps(met.last) == 2
    assert (met.before, met.after, met.kind) == (-1, 1, "stretch")
    (met,) = meetings(steps, [3.0, 4.0, 7.0], 2.0)
    assert (met.first, met.before, met.after) == (3, 0, 1) and met.last == pytest.approx(5)
    (met,) = meetings(steps, [0.0, 3.0, 4.0], 2.0)
    assert (met.last, met.before, met.after) == (4, -1, 0)
    assert meetings(steps, [3.0], 2.0) == [Meeting(3, 3, 0, 0, "point")]
    # Between two places that both miss it.
    (met,) = meetings(steps, [0.0, 7.0], 2.0)
    assert (met.first, met.last, met.kind) == (pytest.approx(2), pytest.approx(5), "stretch")


def test_a_leap_is_told_by_its_two_sides():
    (met,) = meetings(steps, [0.0, 3.0, 7.0], 2.5)
    assert met.kind == "leap" and steps(met.first) == 2 and steps(met.last) == 3 and met.last - met.first < 1e-12
    assert (met.before, met.after, met.first) == (-1, 1, pytest.approx(5))
    (met,) = meetings(lambda x: -steps(x), [0.0, 3.0, 7.0], -2.5)
    assert (met.before, met.after) == (1, -1)


def test_whole_numbers_meet_at_whole_numbers():
    assert meetings(steps, [0.0, 3.0, 9.0], 2.0, whole=True) == [Meeting(2, 5, -1, 1, "stretch")]
    assert meetings(lambda x: 3 * x, [0.0, 9.0], 10.0, whole=True) == [Meeting(3, 4, -1, 1, "leap")]
    assert meetings(lambda x: 3 * x, [0.0, 9.0], 12.0, whole=True) == [Meeting(4, 4, -1, 1, "point")]


def test_every_meeting_is_found_in_order():
    """(x - 1)(x - 4)(x - 8) is nought three times."""
    found = meetings(lambda x: (x - 1) * (x - 4) * (x - 8), [0.0, 2.0, 5.0, 9.0], 0.0)
    assert [met.first for met in found] == [pytest.approx(1), pytest.approx(4), pytest.approx(8)]
    assert [(met.before, met.after) for met in found] == [(-1, 1), (1, -1), (-1, 1)]


def test_a_steep_but_continuous_rise_is_a_point_and_a_pole_is_nothing():
    """tanh of a million x passes from -1 to 1 about nought without a leap; 1 / (x - 1/3) passes through infinity."""
    (met,) = meetings(lambda x: math.tanh(1e6 * (x - 1 / 3)) + 2, [0.0, 1.0], 2.0)
    assert met.kind == "point" and met.first == pytest.approx(1 / 3)
    assert meetings(lambda x: None if x == 1 / 3 else 1 / (x - 1 / 3), [0.0, 1.0], 5e-3) == []


def test_a_leap_that_is_small_beside_the_values_about_it_is_no_leap():
    """From 1 to a half at nought, beside values of 3e12 to the left: a rounding there, and a leap where the values are as small as it is."""
    def falls(steep):
        return lambda x: 1 - steep * x if x < 0 else 0.5

    (met,) = meetings(falls(1e12), [-3.0, 2.0], 0.75)
    assert met.kind == "point" and met.first == pytest.approx(0, abs=1e-12)
    (met,) = meetings(falls(1.0), [-3.0, 2.0], 0.75)
    assert met.kind == "leap"
    # It is the values on both sides that count.
    (met,) = meetings(lambda x: -falls(1e12)(-x), [-2.0, 3.0], -0.75)
    assert met.kind == "point"
