"""Growing degree days: printed examples, and a count that begins in the depth of winter."""

import pytest

from generator.season.climate.degree_days import degree_days_since, growing_degree_days
from tests.season.shipped import COUCH, FESCUE, season


def celsius(fahrenheit: float) -> float:
    return (fahrenheit - 32) / 1.8


@pytest.mark.parametrize(
    ("maximum_f", "minimum_f", "base_f", "printed_f_days"),
    [
        # Purdue University Turf Science, Use growing degree days to better time your applications, examples.
        (74, 52, 50, 13),
        (58, 40, 50, 0),
        # Midwestern Regional Climate Center, Growing degree days: a mean of 75 °F over a base of 65 °F.
        (80, 70, 65, 10),
    ],
)
def test_printed_examples(maximum_f, minimum_f, base_f, printed_f_days):
    found = growing_degree_days(celsius(maximum_f), celsius(minimum_f), celsius(base_f))
    assert found * 1.8 == pytest.approx(printed_f_days, abs=1e-9)


def test_the_count_begins_on_its_day_and_never_falls_until_it_begins_again():
    # 20 and 10 °C over a base of 10 °C are 5 degree days a day: 5 on the first day, 365 x 5 = 1825 on the last.
    counted = degree_days_since((20.0,) * 365, (10.0,) * 365, 10, 200)
    assert counted[200] == 5 and counted[199] == 1825 and counted[0] == 166 * 5


@pytest.mark.parametrize("grass", [COUCH, FESCUE], ids=lambda grass: grass.id)
@pytest.mark.parametrize("place", ["canberra", "atlanta"])
def test_a_year_is_counted_from_its_coldest_day(grass, place):
    year = season(grass, place)
    coldest = year.climate.coldest_day
    assert max(year.degree_days) == year.degree_days[coldest - 1]
    assert year.degree_days[coldest] <= 15
