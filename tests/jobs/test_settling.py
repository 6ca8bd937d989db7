"""How long a sprayed grass takes to die. Common practice: two to four weeks, longer when cool."""


from generator.jobs.job import settling_days
from tests.our_book import book, seasons

BOOK = book()
ALMANAC = seasons()


def days_to_die(place):
    return settling_days("spray-out.weeks-to-die", BOOK.tasks, ALMANAC.season("couch", place), ALMANAC.rules.oversowing.ryegrass)


def test_it_stays_between_two_and_four_weeks_everywhere():
    for place in ("sydney", "canberra", "darwin", "atlanta"):
        assert set(days_to_die(place)) <= set(range(14, 29))


def test_it_takes_longer_when_cool_and_heat_does_not_lengthen_it():
    """Canberra's July is its coldest month and January its hottest (Bureau of Meteorology normals, station 070351)."""
    july, october, january = (days_to_die("canberra")[day] for day in (195, 287, 15))
    assert july > october > january == 14


def test_the_cool_place_waits_longer_on_the_same_day():
    assert days_to_die("canberra")[257] > days_to_die("sydney")[257]
