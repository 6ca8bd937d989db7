"""What each quantity that a rule may name is in a week, and which weeks a rule falls due in, counted by hand."""

from dataclasses import replace
from itertools import pairwise

import pytest

from generator.book.records.task import Due
from generator.season.calendar_days import DAYS
from generator.season.task_schedule import RULE_QUANTITIES, DueWeek, due_weeks, weekly_quantities
from tests.season.shipped import BUFFALO, COUCH, FESCUE, season

WEEKS = 52
YEAR = season(COUCH, "canberra")
QUANTITIES = weekly_quantities(YEAR)

READ_OFF = {
    "mean_temperature": "mean_temperature_c", "maximum_temperature": "maximum_temperature_c", "minimum_temperature": "minimum_temperature_c",
    "soil_temperature": "soil_temperature_c", "growth_potential": "growth_potential", "growth_share": "growth_share",
    "frost_probability": "frost_probability", "ground_frost_probability": "ground_frost_probability", "daylight": "daylight_h", "rain": "rain_mm",
    "reference_evapotranspiration": "reference_evapotranspiration_mm", "water_need": "water_need_mm",
}


@pytest.mark.parametrize(("name", "of_week"), READ_OFF.items(), ids=list(READ_OFF))
def test_what_is_read_off_a_week_is_that_week_s_own(name, of_week):
    assert [values[name] for values in QUANTITIES] == [getattr(week, of_week) for week in YEAR.weeks]
    assert len({values[name] for values in QUANTITIES}) > 5


@pytest.mark.parametrize("kind", ["renovation", "overseeding", "light_renovation", "oversowing", "pre_emergent"])
def test_a_window_is_told_by_the_weeks_whose_middle_is_in_it(kind):
    """The fourth day of a week, the fifth of the last one's eight."""
    for year in (YEAR, season(FESCUE, "london-heathrow")):
        inside = [any(window.holds(7 * week + (4 if week == 51 else 3)) for window in year.windows[kind].windows) for week in range(WEEKS)]
        assert [values[f"{kind}_window"] for values in weekly_quantities(year)] == inside
    assert RULE_QUANTITIES[f"{kind}_window"].is_flag and RULE_QUANTITIES[f"{kind}_window"].unit == "yes or no"


def test_what_is_so_or_not_is_one_or_nought():
    wet = weekly_quantities(season(COUCH, "darwin"))
    assert [values["wet"] for values in wet] == [week.wet for week in season(COUCH, "darwin").weeks] and {values["wet"] for values in wet} == {0, 1}
    assert [values["dormant"] for values in QUANTITIES] == [week.growth_class == "dormant" for week in YEAR.weeks]
    told = [[each[0][name] for name in ("warm_season", "cool_season", "oversown")] for each in (
        QUANTITIES, weekly_quantities(season(BUFFALO, "canberra")), weekly_quantities(season(replace(FESCUE, oversown=True), "canberra")),
    )]
    assert told == [[1, 0, 1], [1, 0, 0], [0, 1, 0]]
    assert {name for name, quantity in RULE_QUANTITIES.items() if quantity.is_flag} == {
        "renovation_window", "overseeding_window", "light_renovation_window", "oversowing_window", "pre_emergent_window", "wet", "dormant",
        "warm_season", "cool_season", "oversown",
    }


def week_of(day):
    return min(day // 7, WEEKS - 1)


WINDOW = YEAR.renovation.windows[0]
COUNTED = {
    "weeks_to_window_start": (WINDOW.first, 1), "weeks_since_window_start": (WINDOW.first, -1), "weeks_to_best": (WINDOW.best, 1),
    "weeks_since_best": (WINDOW.best, -1), "weeks_to_last_frost": (YEAR.weather.last_frost_day(0.1), 1),
    "weeks_to_first_frost": (YEAR.weather.first_frost_day(0.1), 1), "weeks_since_green_up": (YEAR.green_up_day, -1),
}


@pytest.mark.parametrize("name", COUNTED)
def test_weeks_to_a_day_and_since_it_are_counted_round_the_year(name):
    day, way = COUNTED[name]
    found = [values[name] for values in QUANTITIES]
    assert sorted(found) == list(range(WEEKS)) and found[week_of(day)] == 0
    # A week on, there is one fewer to go, or one more behind.
    assert all((after - before) % WEEKS == (-way) % WEEKS for before, after in pairwise(found))


def test_grass_that_runs_above_ground_counts_to_ground_frost():
    year = season(BUFFALO, "canberra")
    found = weekly_quantities(year)
    for name, day in (("weeks_to_last_frost", year.weather.last_frost_day(0.1, True)), ("weeks_to_first_frost", year.weather.first_frost_day(0.1, True))):
        assert found[week_of(day)][name] == 0
    assert year.weather.last_frost_day(0.1, True) != year.weather.last_frost_day(0.1)


def test_a_day_that_never_comes_is_minus_one_for_every_rule():
    darwin = weekly_quantities(season(FESCUE, "darwin"))
    for name in ("weeks_to_window_start", "weeks_since_window_start", "weeks_to_best", "weeks_since_best", "weeks_to_last_frost",
                 "weeks_to_first_frost", "weeks_since_green_up", "weeks_since_transition"):
        assert {values[name] for values in darwin} == {-1}, name
    nights = season(COUCH, "dallas")
    assert weekly_quantities(nights)[week_of(nights.transition_day)]["weeks_since_transition"] == 0


def test_weeks_to_slow_down_are_whole_weeks_from_the_first_day_of_the_week():
    slack = [day for day in range(DAYS) if YEAR.slack[day]]
    expected = [min((day - 7 * week) % DAYS for day in slack) // 7 for week in range(WEEKS)]
    assert [values["weeks_to_slow_down"] for values in QUANTITIES] == expected and 0 in expected and max(expected) > 10
    assert {values["weeks_to_slow_down"] for values in weekly_quantities(season(COUCH, "darwin"))} == {52}


def test_temperature_change_looks_at_the_next_week_and_over_new_year():
    means = [week.mean_temperature_c for week in YEAR.weeks]
    assert [values["temperature_change"] for values in QUANTITIES] == [pytest.approx(after - here) for here, after in zip(means, means[1:] + means[:1], strict=True)]


def test_growth_change_looks_at_the_next_week_and_over_new_year():
    shares = [week.growth_share for week in YEAR.weeks]
    assert [values["growth_change"] for values in QUANTITIES] == [pytest.approx(after - here) for here, after in zip(shares, shares[1:] + shares[:1], strict=True)]


def test_degree_days_are_those_of_the_last_day_of_the_week():
    assert [values["degree_days"] for values in QUANTITIES] == [YEAR.degree_days[364 if week == 51 else 7 * week + 6] for week in range(WEEKS)]


def test_mowing_intervals_are_a_year_where_nothing_grows_and_minus_one_without_the_rule():
    intervals = [values["mowing_interval"] for values in weekly_quantities(season(COUCH, "chicago"))]
    assert intervals[2] == 365 and max(intervals) == 365 and min(intervals) < 10
    assert {values["mowing_interval"] for values in weekly_quantities(replace(YEAR, largest_share_removed=None))} == {-1}


def test_nitrogen_of_the_weeks_is_the_year_s():
    assert sum(values["nitrogen_need"] for values in QUANTITIES) == pytest.approx(15)


def weeks(*held, every=1, opening=None, at_most=None, not_in=()):
    """Weeks, 1 to 52, in which a rule falls due that holds in `held`; opening: the week in which the main window opens."""
    values = tuple(
        {"wet": float(week in held), "dormant": float(week in not_in), "weeks_since_window_start": -1.0 if opening is None else (week - opening) % WEEKS}
        for week in range(1, WEEKS + 1)
    )
    rule = Due(do_when="wet", not_when="dormant" if not_in else None, every_weeks=every, at_most=at_most, say="Do.", because="So.", source="ours")
    return [found.week for found in due_weeks(rule, values)]


@pytest.mark.parametrize(("asked", "due"), [
    (((3, 4, 5), {}), [3, 4, 5]), (((), {}), []),
    # From the beginning of a stretch, whichever side of New Year it lies on.
    (((3, 4, 5, 6), {"every": 2}), [3, 5]), (((51, 52, 1, 2), {"every": 2}), [1, 51]), (((1, 2, 3), {"every": 2}), [1, 3]),
    # The stretch with the opening of the main window goes first, else the next one after it.
    (((3, 4, 20, 21), {"at_most": 1}), [3]), (((3, 4, 20, 21), {"at_most": 1, "opening": 21}), [20]),
    (((3, 4, 20, 21), {"at_most": 1, "opening": 10}), [20]), (((3, 4, 20, 21), {"at_most": 1, "opening": 30}), [3]),
    (((3, 4, 20, 21), {"at_most": 3, "opening": 21}), [3, 20, 21]),
    # Two stretches nearer than the interval: the main one keeps its week, and the other waits.
    (((3, 4, 8, 9), {"every": 6, "opening": 8}), [8]), (((3, 4, 8, 9), {"every": 5, "opening": 8}), [3, 8]),
    (((3, 4, 8, 9), {"every": 5}), [3, 8]), (((3, 4, 8, 9), {"every": 6}), [3, 9]),
    # Due all year, every five weeks are ten times, the last no nearer than five weeks to the first.
    ((tuple(range(1, 53)), {"every": 5}), [1, 6, 11, 16, 21, 26, 31, 36, 41, 46]), ((tuple(range(1, 53)), {"every": 26}), [1, 27]),
    ((tuple(range(1, 53)), {"every": 27}), [1]), ((tuple(range(1, 53)), {"every": 13, "opening": 5}), [5, 18, 31, 44]),
    (((3, 4, 5), {"not_in": (4,)}), [3, 5]), (((3, 4, 5), {"not_in": (3, 4, 5)}), []),
])
def test_the_weeks_in_which_a_rule_falls_due(asked, due):
    held, more = asked
    assert weeks(*held, **more) == due


def test_a_week_tells_what_its_rule_and_its_refusal_read():
    rule = Due(do_when="rain > 5", not_when="soil_temperature < 5", say="Do.", because="So.", source="ours")
    values = tuple({"rain": float(week), "soil_temperature": 20.0, "daylight": 9.0, "weeks_since_window_start": -1.0} for week in range(WEEKS))
    assert due_weeks(rule, values)[0] == DueWeek(7, {"rain": 6, "soil_temperature": 20})
    for group, found in (("warm", 46), ("cool", 0)):
        of_group = tuple({**each, "warm_season": 1.0, "cool_season": 0.0} for each in values)
        assert len(due_weeks(rule.model_copy(update={"season_group": group}), of_group)) == found
