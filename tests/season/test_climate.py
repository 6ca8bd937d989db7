"""What a climate must be, said in a sentence for each thing that it is not."""

import pytest

from generator.season.calendar_days import monthly_means
from generator.season.climate.climate import Climate, daily_climate
from tests.season.shipped import climates, made_up, rules


def test_a_sound_climate_is_accepted():
    assert made_up(25, 12).mean_c == (18.5,) * 12


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"latitude": 95}, "latitude 95 is not between -90 and 90 degrees"),
        ({"maximum": [20] * 11}, "mean maximum has 11 months where a year has 12"),
        ({"minimum": [10] * 5 + [26] + [10] * 6}, "June: mean minimum 26 °C is above mean maximum 25 °C"),
        ({"rain": [-1] + [50] * 11}, "January: rain -1 mm is negative"),
        ({"frost_days": (0.0,) * 5 + (31.0,) + (0.0,) * 6}, "June: 31 frost days do not fit a month of 30 days"),
        ({"minimum_standard_deviation_c": (0.0,) + (3.0,) * 11}, "January: a standard deviation of 0 is not above 0"),
        ({"frost_days": (3.0,) * 12, "cold_days_at_or_below_2c": (2.0,) + (4.0,) * 11},
         "January: 2 nights at or below 2 °C are fewer than the 3 at or below 0 °C"),
        # Longest day at 35° south: 24 / pi x acos(-tan 35° tan 0.409) = 24 / pi x 1.879 = 14.36 h, and 0.3 h are allowed above it.
        ({"sunshine_h_per_day": (8.0,) * 11 + (15.0,)}, "December: 15 hours of sunshine do not fit a day of 14.7 hours"),
        ({"relative_humidity_3pm_percent": (0.0,) + (50.0,) * 11}, "January: a humidity of 0 % is not above 0 and up to 100"),
        ({"maximum": [77] + [25] * 11}, "January: mean maximum 77 °C was never measured"),
        ({"maximum": [float("nan")] + [25] * 11}, "mean maximum has a month that is not a number"),
        ({"maximum": ["warm"] + [25] * 11}, "mean maximum has a month that is not a number"),
    ],
)
def test_each_fault_is_one_sentence(change, sentence):
    with pytest.raises(ValueError) as problem:
        made_up(**{"maximum": 25, "minimum": 12} | change)
    assert str(problem.value) == sentence


def test_every_fault_is_told_at_once():
    with pytest.raises(ValueError, match="latitude.*;.*June.*;.*June: rain"):
        made_up([20] * 12, [10] * 5 + [22] + [10] * 6, [5] * 5 + [-3] + [5] * 6, latitude=-91)


@pytest.mark.parametrize("site", ["open", "wall", "hollow", "shade", "exposed"])
def test_a_site_moves_every_month_by_its_offset(site):
    climate, place = climates()["canberra"], rules().sites[site]
    days = daily_climate(climate, place, rules().soil)
    expected = [low + place.minimum_offset_k for low in climate.mean_minimum_c]
    assert monthly_means(days.minimum_c) == pytest.approx(expected, abs=0.001)


def test_a_climate_can_be_asked_for_without_optional_records():
    assert isinstance(made_up(25, 12), Climate)
    assert made_up(25, 12).frost_days is None
