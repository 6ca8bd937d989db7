"""Events of the year: in their order, with their numbers, or why there is none."""

import pytest

from generator.season.calendar_days import DAYS
from generator.season.events import events
from generator.words.days import event_days
from generator.words.reason_text import text
from tests.season.shipped import BUFFALO, COUCH, FESCUE, GRASSES, climates, season
from tests.slices import every


@pytest.mark.parametrize("place", every(5, climates()))
@pytest.mark.parametrize("grass", GRASSES, ids=lambda grass: grass.id)
def test_every_event_has_its_days_or_none_and_a_reason(place, grass):
    found = events(season(grass, place))
    for name, event in found.items():
        assert (event.first is None) == (event.last is None), name
        assert len(text(event.why)) > 15 and not text(event.why).endswith("."), name
        assert (event_days(event) == "none") == (event.first is None)


def test_a_cold_winter_has_every_event_in_its_order():
    found = events(season(COUCH, "canberra"))
    coldest = season(COUCH, "canberra").climate.coldest_day
    after_winter = [
        (found[name].first - coldest) % DAYS
        for name in ("green_up", "last_frost_tenth", "peak", "last_safe_renovation", "slow_down", "dormancy")
    ]
    assert after_winter[0] < after_winter[2] and after_winter[1] < after_winter[2]
    assert after_winter[2:] == sorted(after_winter[2:])


def test_frost_at_evens_lies_deeper_in_winter_than_at_one_in_ten():
    year = season(COUCH, "canberra")
    found, hottest = events(year), year.climate.hottest_day
    assert (hottest - found["last_frost_even"].first) % DAYS > (hottest - found["last_frost_tenth"].first) % DAYS
    assert (found["first_frost_even"].first - hottest) % DAYS > (found["first_frost_tenth"].first - hottest) % DAYS


@pytest.mark.parametrize("grass", [BUFFALO, COUCH], ids=["buffalo", "couch"])
def test_ground_frost_lasts_longer_and_comes_sooner_than_frost_in_the_screen(grass):
    """Grass freezes while the screen still reads up to about 2 °C, so ground frost is told beside air frost."""
    year = season(grass, "canberra")
    found, hottest = events(year), year.climate.hottest_day
    assert "ground frost" in text(found["last_ground_frost_tenth"].why) and "ground" not in text(found["last_frost_tenth"].why)
    for risk in ("even", "tenth"):
        assert (hottest - found[f"last_ground_frost_{risk}"].first) % DAYS < (hottest - found[f"last_frost_{risk}"].first) % DAYS
        assert (found[f"first_ground_frost_{risk}"].first - hottest) % DAYS < (found[f"first_frost_{risk}"].first - hottest) % DAYS


def test_the_tropics_have_no_winter_to_tell_of():
    found = events(season(COUCH, "darwin"))
    for name in ("green_up", "dormancy", "slow_down", "last_frost_even", "first_frost_tenth"):
        assert found[name].first is None, name
    assert "never falls" in text(found["dormancy"].why)


def test_the_last_safe_day_is_the_end_of_the_window_and_leaves_the_weeks_the_grass_needs():
    year = season(COUCH, "sydney")
    found = events(year)
    for name, window, weeks in (
        ("last_safe_renovation", year.renovation.windows[0], 4), ("last_safe_light_renovation", year.light_renovation.windows[0], 2),
    ):
        assert found[name].first == window.last
        # Late summer there gives nearly whole days of recovery: the weeks of full growth, and not half as long again.
        assert weeks * 7 < (found["slow_down"].first - window.last) % DAYS < weeks * 7 * 1.5


def test_spring_transition_is_when_nights_reach_the_printed_sixty_fahrenheit():
    # University of Arizona 1997: nights of 60 °F, 15.6 °C, seven running.
    year = season(COUCH, "dallas")
    day = events(year)["spring_transition"].first
    assert year.climate.minimum_c[day] >= 15.6 > year.climate.minimum_c[day - 1]
    # "Spring transition (April 1997)" is the title; north Texas is there in May.
    assert 105 <= day <= 150
    assert events(season(FESCUE, "dallas"))["spring_transition"].first is None
