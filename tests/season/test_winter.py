"""Which grasses live through the winters of a place, and what a book says of those that do not."""

import re

import pytest

from generator.season.climate.coldest_night import coldest_night_c, zone_middle_c
from generator.season.inputs import climate_of
from generator.season.winter import killed_by_winter, risked_in_winter
from generator.words.reason_text import text
from tests.our_book import book
from tests.our_book import seasons as our_seasons

# USDA, Miscellaneous Publication 1475 (1990), key of the map: the coldest and the mildest mean of a half zone [°C].
ZONES = {
    "3b": (-37.2, -34.5), "4a": (-34.4, -31.7), "5a": (-28.8, -26.2), "5b": (-26.1, -23.4), "6a": (-23.3, -20.6), "6b": (-20.5, -17.8), "7a": (-17.7, -15.0),
    "7b": (-14.9, -12.3), "8a": (-12.2, -9.5), "8b": (-9.4, -6.7), "9a": (-6.6, -3.9), "9b": (-3.8, -1.2), "10a": (-1.1, 1.6), "10b": (1.7, 4.4),
}
SEASONS = our_seasons()


@pytest.mark.parametrize(("zone", "ends"), ZONES.items())
def test_the_middle_of_a_zone_lies_between_its_published_ends(zone: str, ends: tuple[float, float]) -> None:
    assert zone_middle_c(zone) == pytest.approx(sum(ends) / 2, abs=0.1)


def test_half_of_ten_years_were_colder_than_the_coldest_night_of_a_usual_one() -> None:
    """So the coldest of some ten years lies below it, by a few degrees at most.

    Source: lowest minimum of each month, Bureau of Meteorology daily observations 2007 to 2017, in the files of the places.
    """
    below = []
    for place in book().places.values():
        lowest, normals = place.normals.lowest_minimum_c, place.normals
        if place.country == "AU" and lowest is not None and normals.last_year - normals.first_year < 12:
            found = coldest_night_c(climate_of(place), SEASONS.rules.soil, SEASONS.rules.frost)
            below.append(found - min(lowest))
    assert len(below) > 25
    assert 0 < sorted(below)[len(below) // 2] < 2 and max(map(abs, below)) < 3.5


@pytest.mark.parametrize(("grass", "place", "lives"), [
    # Public bodies of these states and countries print calendars of the one, and nobody of the other.
    ("buffalo", "chicago", False), ("kikuyu", "chicago", False), ("bahia", "chicago", False), ("couch", "chicago", False), ("zoysia", "chicago", True),
    ("couch", "manhattan-ks", True), ("couch", "atlanta", True), ("buffalo", "manhattan-ks", False), ("buffalo", "dallas", True), ("buffalo", "dalton", False),
    ("centipede", "raleigh", True), ("centipede", "urbana", False), ("bahia", "gainesville-fl", True), ("kikuyu", "canberra", True),
    ("kikuyu", "armidale", True), ("kikuyu", "sydney", True), ("buffalo", "perth", True), ("tall-fescue", "minneapolis", True),
])  # fmt: skip
def test_a_grass_that_winter_kills_has_no_window_and_says_so(grass: str, place: str, lives: bool) -> None:
    season = SEASONS.season(grass, place)
    assert (killed_by_winter(season.weather, season.grass) is None) == lives
    for found in season.windows.values():
        if not lives:
            assert found.why_none and text(found.why_none).startswith("winter kills it here: the coldest night of a usual year is about −")
    if lives:
        assert season.renovation.windows


def test_damage_that_a_grass_outlives_is_said_of_its_windows() -> None:
    """Couch at Kansas City begins to be killed below −12 °C and lasts to −23 °C; at Perth no winter harms it."""
    kansas, perth = SEASONS.season("couch", "kansas-city"), SEASONS.season("couch", "perth")
    assert "A usual winter may kill some of it here" in text(kansas.renovation.windows[0].why)
    assert risked_in_winter(perth.weather, perth.grass) is None and "kill" not in text(perth.renovation.windows[0].why)


def test_a_hollow_is_colder_by_its_own_offset() -> None:
    open_ground, hollow = (SEASONS.season("buffalo", "canberra", site) for site in ("open", "hollow"))
    offset = SEASONS.rules.sites["hollow"].minimum_offset_k
    assert offset < 0 and hollow.weather.coldest_night_c == pytest.approx(open_ground.weather.coldest_night_c + offset)


def test_the_night_it_names_is_below_what_the_grass_lives_through() -> None:
    numbers = [float(each.replace("−", "-")) for each in re.findall(r"−?\d+(?= °C)", text(SEASONS.season("buffalo", "chicago").renovation.why_none))]
    assert numbers[0] < numbers[1]
