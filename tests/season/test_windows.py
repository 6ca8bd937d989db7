"""Windows: what the trade expects, what public bodies print, and what must hold of any climate."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.season.calendar_days import DAYS, MONTH_STARTS, day_words, month_and_day
from generator.season.growth import Growth
from generator.season.reasons import because
from generator.season.windows.limits import clear_ahead
from generator.season.windows.warm_limits import days_to_close
from generator.words.reason_text import text
from tests.season.shipped import BUFFALO, COUCH, FESCUE, GRASSES, KIKUYU, apart, climates, made_up, season


def day_of(text: str) -> int:
    month, day = map(int, text.split("-"))
    return MONTH_STARTS[month - 1] + day - 1


def days_of(first: str, last: str) -> set[int]:
    """Day numbers from one date to another, over New Year when the second is earlier."""
    start = day_of(first)
    return {(start + k) % DAYS for k in range((day_of(last) - start) % DAYS + 1)}


def window_days(window) -> set[int]:
    return {(window.first + k) % DAYS for k in range(window.days)}


@pytest.mark.parametrize(
    ("grass", "place", "opens", "closes"),
    # Common practice, no source: the stretch within which each edge should fall.
    [
        (COUCH, "sydney", ("08-20", "10-15"), ("01-25", "03-15")),
        (COUCH, "canberra", ("10-20", "11-30"), ("01-10", "02-15")),
        (COUCH, "perth", ("09-01", "10-31"), ("02-01", "03-31")),
        (COUCH, "brisbane", ("08-10", "09-30"), ("02-15", "04-10")),
        (COUCH, "melbourne", ("08-25", "11-10"), ("01-10", "03-05")),
        (COUCH, "atlanta", ("04-01", "05-20"), ("07-10", "09-05")),
    ],
)
def test_warm_season_windows_are_where_the_trade_has_them(grass, place, opens, closes):
    (window,) = season(grass, place).renovation.windows
    assert window.first in days_of(*opens), month_and_day(window.first)
    assert window.last in days_of(*closes), month_and_day(window.last)


@pytest.mark.parametrize(
    ("grass", "place", "kind", "first", "last", "source"),
    [
        # Both ways: what is printed and what we compute share most of the shorter stretch.
        (FESCUE, "chicago", "overseeding", "08-15", "09-15", "University of Illinois Extension 2012: mid-August to mid-September"),
        (FESCUE, "london-heathrow", "renovation", "09-01", "09-30", "RHS, autumn lawn care: September"),
        (KIKUYU, "perth", "renovation", "09-01", "04-30", "Botanic Gardens and Parks Authority, WA: September to April"),
        (COUCH, "perth", "renovation", "09-01", "04-30", "Botanic Gardens and Parks Authority, WA: September to April"),
        (COUCH, "darwin", "renovation", "05-01", "07-31", "City of Darwin, new lawns: May to the end of July"),
    ],
)
def test_windows_overlap_what_public_bodies_print(grass, place, kind, first, last, source):
    printed = days_of(first, last)
    ours = window_days(season(grass, place).windows[kind].windows[0])
    shared = len(printed & ours) / min(len(printed), len(ours))
    assert shared >= 0.7, f"{source}: {shared:.0%} in common"


@pytest.mark.parametrize("grass", [COUCH, KIKUYU, BUFFALO], ids=lambda grass: grass.id)
def test_the_wet_season_not_frost_limits_the_tropics(grass):
    year = season(grass, "darwin")
    (window,) = year.renovation.windows
    assert window.limited_by == (("wet season",), ("wet season",))
    # The wet season of the Top End runs from November or December to March.
    assert not window_days(window) & days_of("12-01", "03-15")
    assert "wet season" in text(window.why) and "frost" not in text(window.why)


@pytest.mark.parametrize("place", ["melbourne", "london-heathrow", "chicago", "canberra", "christchurch", "auckland"])
def test_cool_season_renovation_is_first_of_all_an_autumn_job(place):
    year = season(FESCUE, place)
    main = year.renovation.windows[0]
    assert main.is_main and not year.view.is_warming(main.best)
    for second in year.renovation.windows[1:]:
        assert year.view.is_warming(second.best) and "Second best" in text(second.why)


def test_cool_season_grass_in_the_tropics_has_none_and_says_why():
    year = season(FESCUE, "darwin")
    for found in (year.renovation, year.overseeding, year.light_renovation):
        assert found.windows == ()
        assert text(found.why_none).startswith("the daily mean does not stay at or below 24 °C")


def test_little_growth_is_said():
    (window,) = season(COUCH, "london-heathrow").renovation.windows
    assert "There is little growth here, at best 0.26" in text(window.why)
    assert window.days < season(COUCH, "atlanta").renovation.windows[0].days


def test_couch_in_northern_england_is_not_offered_what_it_cannot_close():
    """At its best it grows there at a seventh of what it can do: four weeks of full growth would take more than sixteen."""
    found = season(COUCH, "sheffield").renovation
    assert found.windows == () and "takes more than 16 weeks" in text(found.why_none)


def test_recovery_is_counted_in_growth_not_in_weeks():
    """By hand: where every day gives half of a whole day of recovery, four weeks take eight; where every day gives a whole one, four."""
    year = season(COUCH, "cairns")
    for potential, weeks in ((0.25, 8), (0.5, 4), (1.0, 4)):
        steady = replace(year.view, growth=Growth((potential,) * DAYS))
        assert set(days_to_close(steady, year.rules, 4, 16)) == {weeks * 7}
    assert set(days_to_close(replace(year.view, growth=Growth((0.1,) * DAYS)), year.rules, 4, 16)) == {None}


def test_no_growing_season_at_all_is_a_reason():
    # exp(-0.5 ((9 - 31) / 7)^2) = exp(-4.94) = 0.007
    found = season(COUCH, made_up(13, 5)).renovation
    assert found.windows == () and "never passes 0.01" in text(found.why_none)


def test_warm_season_lawns_are_not_overseeded_and_it_says_so():
    assert "thickens by its own runners" in text(season(COUCH, "sydney").overseeding.why_none)


def test_every_edge_has_a_reason_with_a_number():
    for name in tuple(climates())[::4]:
        for grass in GRASSES:
            for found in season(grass, name).windows.values():
                for window in found.windows:
                    for sentence in map(text, (*window.why_first, window.preferred.why, *window.why_last)):
                        assert any(c.isdigit() for c in sentence) or "middle" in sentence, (name, grass.id, sentence)


def test_a_hollow_opens_later_than_a_wall_where_frost_rules():
    opens = {site: season(COUCH, "canberra", site).renovation.windows[0].first for site in ("wall", "open", "hollow")}
    assert opens["wall"] < opens["open"] < opens["hollow"]


def test_whole_degrees_are_not_given_decimals():
    whole = text(season(KIKUYU, "auckland").renovation.windows[0].why)
    assert "." not in whole.split("the mean, ")[1].split("°C")[0]
    tenths = text(season(KIKUYU, "perth").renovation.windows[0].why)
    assert "." in tenths.split("the mean, ")[1].split("°C")[0]


def test_whole_degrees_leave_an_edge_undecided_as_long_as_half_a_degree_would_move_it():
    # A printed degree stands for half a degree either way: so far, and no further, the edge is open.
    year = season(KIKUYU, "auckland")
    window, mean = year.renovation.windows[0], year.climate.mean_c
    earliest, latest = window.undecided_first
    assert mean[window.first] - mean[earliest] < 0.5 <= mean[window.first] - mean[earliest - 1]
    assert mean[latest] - mean[window.first] < 0.5 <= mean[latest + 1] - mean[window.first]
    # October warms by 1 to 2 °C in 30 days there, so half a degree is at least a week and at most a month.
    assert 7 <= apart(latest, window.first) <= 30 and 7 <= apart(window.first, earliest) <= 30
    assert f"undecided between {day_words(earliest)} and {day_words(latest)}" in text(window.why)
    assert any("whole degrees" in text(note) for note in window.notes)
    assert season(KIKUYU, "perth").renovation.windows[0].undecided_first is None
    assert "undecided" not in text(season(KIKUYU, "perth").renovation.windows[0].why)


def test_the_last_day_is_in_doubt_as_the_weather_is_when_the_lawn_has_closed():
    """The last day hangs on the weather at the end of recovery, and so does its doubt: half a printed degree then, not on the day."""
    year = season(KIKUYU, "auckland")
    window, mean = year.renovation.windows[0], year.climate.mean_c
    earliest, latest = window.undecided_last
    days = round(year.grass.recovery_weeks * 7)
    assert days >= 14
    closed = [(day + days) % DAYS for day in (earliest - 1, earliest, window.last, latest, latest + 1)]
    before, first, edge, last, after = (mean[day] for day in closed)
    assert abs(first - edge) < 0.5 and abs(last - edge) < 0.5
    assert (before - edge >= 0.5 or earliest == window.best) and edge - after >= 0.5


def test_where_half_a_degree_would_give_a_window_that_is_said():
    # San Diego's soil is about 14 °C at its coldest, printed in whole degrees; a pre-emergent wants it at or below 14 °C.
    found = season(COUCH, "san-diego").pre_emergent
    assert found.windows == () and found.undecided and "half a degree cooler would give a window" in text(found.why_none)
    # Darwin's, at 25 °C, is another matter, and its figures are in tenths.
    assert not season(COUCH, "darwin").pre_emergent.undecided
    # No half degree makes a warm-season lawn one that is sown over.
    assert not season(COUCH, "san-diego").overseeding.undecided


def test_an_edge_set_by_rain_is_decided_even_in_whole_degrees():
    # Five wet months, hot all year: only rain sets the edges.
    climate = made_up(32, 24, [400, 400, 400, 20, 20, 20, 20, 20, 20, 20, 400, 400], -12, temperature_step_c=1)
    window = season(COUCH, climate).renovation.windows[0]
    assert window.limited_by == (("wet season",), ("wet season",))
    assert window.undecided_first is None and window.undecided_last is None


monthly = st.lists(st.floats(-12, 28), min_size=12, max_size=12)


@settings(max_examples=40, deadline=None)
@given(monthly, st.floats(2, 18), st.lists(st.floats(0, 400), min_size=12, max_size=12), st.floats(-66, 66))
def test_any_climate_gets_windows_or_a_reason(minima, span, rain, latitude):
    climate = made_up([low + span for low in minima], minima, rain, latitude)
    for grass in GRASSES:
        for kind, found in season(grass, climate).windows.items():
            assert bool(found.windows) != bool(found.why_none)
            seen = set()
            for window in found.windows:
                assert window.holds(window.best) and (window.days >= 14 or kind == "pre_emergent")
                assert not seen & window_days(window)
                seen |= window_days(window)


def test_looking_ahead_sees_over_new_year():
    bad = [False] * DAYS
    bad[3] = True
    clear = clear_ahead(bad, 10)
    assert not clear[360] and not clear[3] and clear[4] and clear[357]


@pytest.mark.parametrize(("temperature", "words"), [(-0.04, "0.0 °C"), (-0.06, "−0.1 °C"), (21.25, "21.2 °C")])
def test_a_temperature_just_below_nought_is_not_minus_nought(temperature, words):
    """21.25 prints as 21.2: halves go to the even digit, as Python rounds a binary half."""
    assert text(because("soil-never-warms", mark="10 °C", highest=season(COUCH, "canberra").view.degrees(temperature))).endswith(f"is {words}")
