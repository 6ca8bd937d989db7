"""What each rule of a window allows and says: days by looking at every one of them, numbers from the day or the week that is told of."""

import random
from dataclasses import replace

import pytest

from generator.season.calendar_days import DAYS
from generator.season.windows.limits import clear_ahead, frost_days_watched, frost_limit, growth_limits, heat_limit, high_summer_limit, limits, next_bad, wet_limit
from generator.words.reason_text import text
from tests.season.shipped import BUFFALO, COUCH, FESCUE, made_up, season

FOUR_WEEKS = 28


def clear(bad, days):
    return tuple(not any(bad[(day + ahead) % DAYS] for ahead in range(days + 1)) for day in range(DAYS))


def week(day):
    """1 to 52; the last has eight days."""
    return min(day % DAYS // 7, 51) + 1


def first_after(bad, day):
    return next((day + ahead) % DAYS for ahead in range(1, DAYS + 1) if bad[(day + ahead) % DAYS])


@pytest.mark.parametrize("days", [0, 1, 28, 200, 364, 365, 500])
def test_clear_days_ahead_are_those_that_a_look_at_each_day_finds(days):
    draw = random.Random(days)
    for _ in range(20):
        edges = sorted(draw.randrange(DAYS) for _ in range(draw.choice((2, 4, 6))))
        bad = [sum(day >= edge for edge in edges) % 2 == 1 for day in range(DAYS)]
        for each in (bad, [not flag for flag in bad]):
            assert clear_ahead(each, days) == clear(each, days)
    assert clear_ahead([False] * DAYS, days) == (True,) * DAYS and clear_ahead([True] * DAYS, days) == (False,) * DAYS
    assert clear_ahead([day == 40 for day in range(DAYS)], 0) == tuple(day != 40 for day in range(DAYS))


def test_the_next_bad_day_is_looked_for_round_the_year():
    bad = [day in (10, 200) for day in range(DAYS)]
    assert [next_bad(bad, day) for day in (0, 10, 11, 200, 201, 364)] == [10, 10, 200, 200, 10, 10]
    assert next_bad([False] * DAYS, 77) == 77


def test_growth_says_how_far_it_has_come_and_when_it_falls_back():
    """Couch in Canberra, by the thresholds of data/season-groups.yml: it starts at a fifth of its swing, and has to be done by a half."""
    year = season(COUCH, "canberra")
    growing, recovery = growth_limits(year.view, year.rules, FOUR_WEEKS)
    growth = year.growth
    assert text(growing.opens(280)) == (
        f"growth is rising and in week 41 reaches {growth.swing[280]:.0%} of the way from the year's low to its best "
        f"(growth potential {growth.potential[280]:.2f}, best {growth.best:.2f}), at a mean of {year.climate.mean_c[280]:.1f} °C"
    )
    slow = first_after(year.slack, 40)
    assert text(recovery.closes(40)) == (
        f"it needs 4 weeks of growing weather before growth falls back below 50% of the way from the year's low to its best in week {week(slow)} "
        f"(growth potential {growth.potential[slow]:.2f}, best {growth.best:.2f})"
    )
    assert text(growing.never) == "growth is too slow all year"
    assert text(recovery.never) == "growing weather never lasts the 4 weeks it needs to close over"
    assert (growing.name, growing.closes, recovery.name, recovery.opens) == ("growing", None, "recovery", None)
    assert growing.allowed == tuple(not flag for flag in year.slack) and recovery.allowed == clear(year.slack, FOUR_WEEKS)
    # The day before a slow one is followed by it.
    assert f"in week {week(slow)} " in text(recovery.closes(slow - 1))


def test_cool_season_grass_is_told_against_the_best_of_its_place():
    year = season(FESCUE, "chicago")
    growing, recovery = growth_limits(year.view, year.rules, 35)
    share, mean = year.growth.share[110], year.view.degrees(year.climate.mean_c[110])
    assert text(growing.opens(110)) == (
        f"growth is rising and in week 16 reaches {share:.0%} of the most this place gives "
        f"(growth potential {year.growth.potential[110]:.2f}, best {year.growth.best:.2f}), at a mean of {mean.value:{mean.shown}} °C"
    )
    assert "it needs 5 weeks of growing weather before growth falls back below 20% of the most this place gives in week " in text(recovery.closes(260))


# Twelve months between 13 and 21 °C: winter never slows a cool-season grass here, so its depth stands in.
MILD = made_up([25, 25, 24, 22, 20, 18, 17, 18, 20, 22, 23, 24], [17, 17, 16, 14, 12, 10, 9, 10, 12, 14, 15, 16])


def test_where_winter_never_slows_it_the_depth_of_winter_stands_in():
    year = season(FESCUE, MILD)
    mean, turn = year.climate.mean_c, year.rules.turn_k
    assert year.slack == tuple(value <= min(mean) + turn for value in mean)
    growing, recovery = growth_limits(year.view, year.rules, 35)
    assert text(growing.opens(240)) == f"deep winter is past: the mean has risen {turn:g} °C from its lowest"
    slow = first_after(year.slack, 60)
    assert text(recovery.closes(60)) == f"it needs 5 weeks of growing weather before the depth of winter in week {week(slow)}"


@pytest.mark.parametrize(("grass", "kind", "risk"), [(COUCH, "frost", "frost_risk"), (BUFFALO, "ground-frost", "frost_risk_surface_running")])
def test_frost_says_its_kind_its_chance_and_its_weeks(grass, kind, risk):
    year = season(grass, "canberra")
    top, days = getattr(year.rules, risk), frost_days_watched(year.rules, 49)
    limit = frost_limit(year.view, year.rules, 49)
    frost = year.weather.ground_frost if grass.surface_running else year.weather.air_frost
    chances = [frost.chance_of_any(day, days) for day in range(DAYS)]
    assert limit.name == "frost" and limit.allowed == tuple(chance <= top for chance in chances) and len(set(limit.allowed)) == 2
    weeks = f"{days / 7:.0f} weeks"
    assert text(limit.opens(300)) == (
        f"from week 43 the chance of a {kind} night in the {weeks} that follow is {chances[300]:.0%}, no longer above {top:.0%}"
    )
    assert text(limit.closes(60)) == f"begun later, a {kind} night in the {weeks} that follow becomes likelier than {top:.0%}"
    assert text(limit.never) == (
        f"no {weeks} of the year keep the chance of a {kind} night at or below {top:.0%}; the safest still carry {min(chances):.0%}"
    )


def test_frost_is_watched_while_the_grass_is_thin_and_no_longer_than_the_rule_says():
    rules = replace(season(COUCH, "canberra").rules, frost_weeks=4)
    assert [frost_days_watched(rules, days) for days in (10, 28, 60)] == [10, 28, 28]
    assert frost_limit(season(FESCUE, "canberra").view, season(FESCUE, "canberra").rules, 35) is None


def test_heat_says_where_the_mean_stands_and_when_it_passes():
    year = season(FESCUE, "dallas")
    mean, top = year.climate.mean_c, year.rules.heat_limit_c
    hot = [value > top for value in mean]
    limit = heat_limit(year.view, year.rules, 35)
    assert limit.name == "heat" and limit.allowed == clear(hot, 35) and len(set(limit.allowed)) == 2
    degrees = [year.view.degrees(value) for value in (mean[270], min(mean), max(mean))]
    there, lowest, highest = (f"{each.value:{each.shown}} °C" for each in degrees)
    assert text(limit.opens(270)) == f"not in the heat: the daily mean is down to {there}, no longer above {top:g} °C"
    assert text(limit.closes(60)) == f"it must have recovered before the daily mean passes {top:g} °C in week {week(first_after(hot, 60))}"
    assert text(limit.never) == (
        f"the daily mean does not stay at or below {top:g} °C for 5 weeks; it runs from {lowest} to {highest} through the year"
    )
    # A day at the limit itself is not too hot.
    even = season(FESCUE, made_up(top + 5, top - 5))
    assert heat_limit(even.view, replace(even.rules, heat_limit_c=max(even.climate.mean_c)), 35).allowed == (True,) * DAYS


def test_the_height_of_summer_is_for_cool_season_grass_alone():
    year = season(FESCUE, "canberra")
    mean, turn = year.climate.mean_c, year.rules.turn_k
    summer = [value > max(mean) - turn for value in mean]
    limit = high_summer_limit(year.view, year.rules, 35)
    assert limit.name == "high summer" and limit.allowed == clear(summer, 35)
    assert text(limit.opens(60)) == (
        f"the height of summer is past: the mean has come down {turn:g} °C from its highest, {max(mean):.1f} °C in week {week(year.climate.hottest_day)}"
    )
    assert text(limit.closes(250)) == f"it must have recovered before the height of summer begins in week {week(first_after(summer, 250))}"
    assert text(limit.never) == "the temperature hardly changes through the year, so no season is cooler than the rest"
    assert high_summer_limit(season(COUCH, "canberra").view, season(COUCH, "canberra").rules, 28) is None


def test_a_wet_season_says_its_rain_and_what_evaporates():
    year = season(COUCH, "darwin")
    rain, evaporates, rules = year.climate.rain_mm, year.weather.reference_evapotranspiration_mm, year.rules
    wet = [fell > rules.wet_rain_mm_per_day and fell > rules.wet_ratio * rose for fell, rose in zip(rain, evaporates, strict=True)]
    limit = wet_limit(year.view, rules, FOUR_WEEKS)
    assert limit.name == "wet season" and limit.allowed == clear(wet, FOUR_WEEKS) and list(year.wet) == wet and len(set(wet)) == 2
    assert text(limit.opens(110)) == f"the wet season is past: rain is down to {7 * rain[110]:.0f} mm a week, against {7 * evaporates[110]:.0f} mm that evaporates"
    assert text(limit.closes(250)) == (
        f"it needs 4 weeks to close before the wet season begins in week {week(first_after(wet, 250))} "
        f"(over {7 * rules.wet_rain_mm_per_day:.0f} mm of rain a week and {rules.wet_ratio:g} times what evaporates)"
    )
    assert text(limit.never) == "it is too wet all year"


def test_rain_alone_makes_no_wet_season():
    """It has to pass both: so much a day, and so many times what evaporates."""
    year = season(COUCH, "darwin")
    assert not any(season(COUCH, made_up(33, 24, rain=0)).wet)
    for rules in (replace(year.rules, wet_rain_mm_per_day=1000.0), replace(year.rules, wet_ratio=1000.0)):
        assert wet_limit(year.view, rules, FOUR_WEEKS).allowed == (True,) * DAYS


@pytest.mark.parametrize(("grass", "names", "rules"), [
    (COUCH, ["growing", "recovery", "frost", "heat", "wet season"], (frost_limit, heat_limit, wet_limit)),
    (FESCUE, ["growing", "recovery", "heat", "high summer", "wet season"], (heat_limit, high_summer_limit, wet_limit)),
])
def test_the_rules_that_apply_to_a_group(grass, names, rules):
    year = season(grass, "canberra")
    found = limits(year.view, year.rules, FOUR_WEEKS)
    assert [limit.name for limit in found] == names
    assert [limit.allowed for limit in found[2:]] == [rule(year.view, year.rules, FOUR_WEEKS).allowed for rule in rules]
    assert [limit.allowed for limit in found[:2]] == [limit.allowed for limit in growth_limits(year.view, year.rules, FOUR_WEEKS)]


def test_a_warm_place_has_no_slack_season_and_a_swing_has_two_ends():
    """Where growth never falls below the share that the rule names, nothing slows; else the two halves of the year have thresholds of their own."""
    assert season(COUCH, "darwin").slack == (False,) * DAYS
    year = season(COUCH, "canberra")
    rules = year.rules
    expected = tuple(
        year.growth.swing[day] < (rules.start_share if year.climate.warming[day] else rules.slow_share) for day in range(DAYS)
    )
    assert year.slack == expected and rules.start_share != rules.slow_share
    cool = season(FESCUE, "chicago")
    cold = tuple(
        cool.climate.mean_c[day] < 20 and cool.growth.share[day] < (cool.rules.start_share if cool.climate.warming[day] else cool.rules.slow_share)
        for day in range(DAYS)
    )
    assert cool.slack == cold and any(cold)
    # Hotter than its optimum all year: the heat has its own rule, and nothing is too cold.
    assert season(FESCUE, made_up(32, 24)).slack == (False,) * DAYS
