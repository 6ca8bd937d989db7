"""What is said of each event of a year, with the numbers of its own day; and the weather moved by half a degree."""

from dataclasses import replace

import pytest

from generator.season.calendar_days import DAYS, day_words, week_days, week_number
from generator.season.climate.climate_faults import COLDEST_C, HOTTEST_C
from generator.season.events import events
from generator.words.reason_text import text
from tests.season.shipped import BUFFALO, COUCH, FESCUE, made_up, season


def told(grass, place):
    return {name: text(event.why) for name, event in events(season(grass, place)).items()}


def test_a_cold_winter_says_what_set_each_event():
    """Rules of data/season-groups.yml: couch sleeps in soil at 10 °C and greens at 14 °C, nights of 15.6 °C bring it through ryegrass."""
    year, said, found = season(COUCH, "canberra"), told(COUCH, "canberra"), events(season(COUCH, "canberra"))
    soil, nights, growth = year.climate.soil_c, year.climate.minimum_c, year.growth
    assert said["green_up"] == f"the soil has warmed to {soil[found['green_up'].first]:.1f} °C; dormant turf greens up at about 14 °C"
    assert said["spring_transition"] == f"nights never cross 15.6 °C: they run from {min(nights):z.1f} °C to {max(nights):.1f} °C"
    assert said["peak"] == f"growth is at 80% or more of the most this place gives (a growth potential of {growth.best:.2f})"
    slow = found["slow_down"].first
    assert said["slow_down"] == (
        f"in week {week_number(slow)} ({day_words(week_days(week_number(slow) - 1)[0])}) growth falls to {growth.share[slow]:.0%} of the most this place gives "
        f"(growth potential {growth.potential[slow]:.2f}) and can no longer close an opened surface"
    )
    assert said["dormancy"] == f"the soil is at or below 10 °C; its lowest is {min(soil):.1f} °C"
    for id, job, window in (
        ("last_safe_renovation", "renovation", year.renovation.windows[0]),
        ("last_safe_light_renovation", "a light renovation", year.light_renovation.windows[0]),
    ):
        assert said[id] == f"the last day for {job}: {' and '.join(map(text, window.why_last))}" and found[id].first == window.last


@pytest.mark.parametrize(("event", "said"), [
    ("last_frost_even", "after it the chance of any more frost before summer is evens or less"),
    ("last_frost_tenth", "after it the chance of any more frost before summer is one year in 10 or less"),
    ("last_ground_frost_even", "after it the chance of any more ground frost before summer is evens or less"),
    ("last_ground_frost_tenth", "after it the chance of any more ground frost before summer is one year in 10 or less"),
    ("first_frost_even", "by then, after summer, a frost has become likelier than evens"),
    ("first_frost_tenth", "by then, after summer, a frost has become likelier than one year in 10"),
    ("first_ground_frost_even", "by then, after summer, a ground frost has become likelier than evens"),
    ("first_ground_frost_tenth", "by then, after summer, a ground frost has become likelier than one year in 10"),
])
def test_each_frost_says_its_kind_and_its_odds(event, said):
    year, found = season(COUCH, "canberra"), events(season(COUCH, "canberra"))[event]
    frost = year.weather.ground_frost if "ground" in event else year.weather.air_frost
    risk, ask = (0.5 if "even" in event else 0.1), (frost.last_day if "last" in event else frost.first_day)
    assert text(found.why) == said and found.first == found.last == ask(risk, year.climate.hottest_day)


@pytest.mark.parametrize(("event", "said"), [
    ("last_frost_even", "the chance of a frost before summer is never more than evens"),
    ("last_ground_frost_tenth", "the chance of a ground frost before summer is never more than one year in 10"),
    ("first_frost_tenth", "a frost never becomes likelier than one year in 10"),
    ("first_ground_frost_even", "a ground frost never becomes likelier than evens"),
])
def test_where_there_is_no_frost_it_says_so(event, said):
    assert told(COUCH, "darwin")[event] == said


def test_the_tropics_say_why_nothing_happens():
    year, said = season(COUCH, "darwin"), told(COUCH, "darwin")
    soil, nights = year.climate.soil_c, year.climate.minimum_c
    assert said["green_up"] == f"the soil never falls below 14 °C (its lowest is {min(soil):.1f} °C), so the lawn stays green"
    assert said["spring_transition"] == f"nights never cross 15.6 °C: they run from {min(nights):z.1f} °C to {max(nights):.1f} °C"
    assert said["slow_down"] == f"growth never falls far: its lowest is {year.growth.least:.2f}, its best {year.growth.best:.2f}"
    assert said["dormancy"] == f"the soil never falls to 10 °C; its lowest is {min(soil):.1f} °C"


def test_nights_that_warm_say_how_far():
    year = season(COUCH, "dallas")
    day = events(year)["spring_transition"].first
    night = year.view.degrees(year.climate.minimum_c[day])
    assert text(events(year)["spring_transition"].why) == (
        f"nights have warmed to {night.value:{night.shown}} °C: from 15.6 °C warm-season turf takes over from winter ryegrass"
    )


def test_cool_season_grass_and_cold_places_have_their_own_words():
    cool = told(FESCUE, "canberra")
    assert cool["green_up"] == "cool-season grass stays green through winter"
    assert cool["spring_transition"] == "only warm-season turf that was sown with ryegrass changes over in spring"
    # The same weather all year, at 7 °C: the soil never warms to 14 °C, and the grass never wakes.
    cold = events(season(COUCH, made_up(9, 5)))
    assert text(cold["green_up"].why) == "the soil never warms to 14 °C" and cold["green_up"].first is None
    assert (cold["dormancy"].last - cold["dormancy"].first) % DAYS == DAYS - 1
    assert text(cold["peak"].why) == "nothing grows here" and cold["peak"].first is None


def test_growing_weather_that_never_lasts_leaves_no_safe_day():
    """A grass that needs a year and a half of it."""
    year = season(replace(COUCH, recovery_weeks=60), "canberra")
    found = events(year)["last_safe_renovation"]
    assert found.first is None and text(found.why).startswith("it needs 60 weeks of full growth to close")


def test_a_year_says_its_stretches_by_their_ends():
    year = season(BUFFALO, "canberra")
    found = events(year)
    for name, growth_class in (("peak", "peak"), ("dormancy", "dormant")):
        first, last = found[name].first, found[name].last
        span = range((last - first) % DAYS + 1)
        assert all(year.classes[(first + ahead) % DAYS] == growth_class for ahead in span)
        assert year.classes[first - 1] != growth_class != year.classes[(last + 1) % DAYS]


@pytest.mark.parametrize("shift_k", [0.5, -0.5])
def test_weather_that_is_moved_moves_its_temperatures_alone(shift_k):
    weather = season(COUCH, "canberra").weather
    moved = weather.moved(shift_k)
    for name in ("mean_maximum_c", "mean_minimum_c"):
        assert getattr(moved.normals, name) == tuple(map(pytest.approx, (value + shift_k for value in getattr(weather.normals, name))))
    assert moved.days.mean_c == tuple(map(pytest.approx, (value + shift_k for value in weather.days.mean_c)))
    assert moved.days.soil_c == tuple(map(pytest.approx, (value + shift_k for value in weather.days.soil_c)))
    assert (moved.air_frost, moved.ground_frost, moved.reference_evapotranspiration_mm, moved.effective_rain_mm, moved.site, moved.soil) == (
        weather.air_frost, weather.ground_frost, weather.reference_evapotranspiration_mm, weather.effective_rain_mm, weather.site, weather.soil,
    )
    assert moved.normals.rain_mm == weather.normals.rain_mm and moved.days.rain_mm == weather.days.rain_mm


def test_weather_is_not_moved_beyond_what_can_be():
    """The hottest and the coldest months that a climate may have stay there: 60 °C and -90 °C."""
    assert (HOTTEST_C, COLDEST_C) == (60, -90)
    hot = season(COUCH, made_up(HOTTEST_C, HOTTEST_C - 20)).weather.moved(0.5).normals
    assert set(hot.mean_maximum_c) == {HOTTEST_C} and set(hot.mean_minimum_c) == {HOTTEST_C - 19.5}
    cold = season(COUCH, made_up(COLDEST_C + 20, COLDEST_C)).weather.moved(-0.5).normals
    assert set(cold.mean_minimum_c) == {COLDEST_C} and set(cold.mean_maximum_c) == {COLDEST_C + 19.5}
