"""A window's days against a look at every day of the year, and what is said of them; and what is said where there is none."""

from dataclasses import replace

import pytest

from generator.season.calendar_days import DAYS, day_words
from generator.season.engine_rules import PreEmergentRules
from generator.season.windows.limits import limits
from generator.season.windows.main_windows import recovery_days, runs_of, undecided_edges, windows
from generator.season.windows.other_windows import oversowing, pre_emergent
from generator.words.reason_text import text
from tests.season.shipped import BUFFALO, COUCH, FESCUE, KIKUYU, made_up, rules, season
from tests.season.test_limits_said import week

OPEN_ENDED = "no rule closes it at any time of the year"


@pytest.mark.parametrize(("days", "runs"), [
    ([], []), (range(DAYS), [(0, 364)]), ([5], [(5, 5)]), ([0, 1, 2], [(0, 2)]), ([363, 364], [(363, 364)]), ([364, 0, 1], [(364, 1)]),
    ([3, 4, 200, 201, 364, 0], [(3, 4), (200, 201), (364, 0)]), ([10, 11, 13], [(10, 11), (13, 13)]),
])
def test_stretches_of_days_by_their_ends(days, runs):
    assert runs_of([day in days for day in range(DAYS)]) == runs


def span_of(first, last):
    return [(first + ahead) % DAYS for ahead in range((last - first) % DAYS + 1)]


PLACES = [
    (COUCH, "sydney"), (COUCH, "canberra"), (BUFFALO, "canberra"), (KIKUYU, "cairns"), (COUCH, "armidale"), (FESCUE, "london-heathrow"),
    (FESCUE, "melbourne"), (FESCUE, "brisbane"), (FESCUE, "chicago"), (FESCUE, "miami"),
]


@pytest.mark.parametrize(("grass", "place"), PLACES, ids=[f"{grass.id}-{place}" for grass, place in PLACES])
def test_a_window_is_every_stretch_that_each_rule_allows(grass, place):
    year = season(grass, place)
    days = recovery_days(grass.recovery_weeks, year.view, year.rules)
    found = limits(year.view, year.rules, days)
    allowed = [all(limit.allowed[day] for limit in found) for day in range(DAYS)]
    offered = windows(year.view, year.rules, grass.recovery_weeks)
    long_enough = [run for run in runs_of(allowed) if (run[1] - run[0]) % DAYS + 1 >= year.rules.shortest_weeks * 7]
    assert sorted((window.first, window.last) for window in offered.windows) == sorted(long_enough) and offered.why_none is None
    for window in offered.windows:
        before, after = (window.first - 1) % DAYS, (window.last + 1) % DAYS
        assert window.limited_by == (
            tuple(limit.name for limit in found if limit.opens and not limit.allowed[before]),
            tuple(limit.name for limit in found if limit.closes and not limit.allowed[after]),
        )
        assert window.why_first == tuple(limit.opens(window.first) for limit in found if limit.name in window.limited_by[0])
        assert window.why_last == tuple(limit.closes(window.last) for limit in found if limit.name in window.limited_by[1])
    # The main one stands first: the half of the year that is the group's own, then the longer one.
    merit = [(year.view.is_warming(window.best) == (grass.group == "warm"), window.days) for window in offered.windows]
    assert merit[0] == max(merit) and [window.is_main for window in offered.windows] == [True] + [False] * (len(merit) - 1)


@pytest.mark.parametrize(("grass", "place"), PLACES, ids=[f"{grass.id}-{place}" for grass, place in PLACES])
def test_the_best_date_is_the_one_that_a_look_at_each_day_finds(grass, place):
    """A week clear of the closing edge. Warm-season grass with a winter: strong and rising; else near the strongest mean growth of the weeks ahead."""
    year = season(grass, place)
    days = recovery_days(grass.recovery_weeks, year.view, year.rules)
    potential = year.growth.potential
    for window in windows(year.view, year.rules, grass.recovery_weeks).windows:
        safe = span_of(window.first, window.last)[:-7]
        seasonal = min(potential) / max(potential) < year.rules.no_slack_share
        if grass.group == "warm" and seasonal:
            best = next(day for day in safe if year.growth.swing[day] >= year.rules.best_share and year.climate.warming[day])
            assert (window.best, text(window.why_best)) == (best, (
                f"growth has come {year.growth.swing[best]:.0%} of the way to its yearly best and is rising, in week {week(best)}, "
                "with the rest of the growing season ahead"
            ))
            continue
        ahead = {day: sum(potential[(day + each) % DAYS] for each in range(days)) / days for day in safe}
        good = [day for day in safe if ahead[day] >= year.rules.near_best * max(ahead.values()) - 1e-12]
        if not seasonal:
            assert window.best == good[len(good) // 2]
            assert text(window.why_best) == "growth hardly changes through the window, so its middle is best, furthest from both edges"
            continue
        strongest = max(safe, key=lambda day: ahead[day])
        best = good[0] if year.climate.warming[strongest] else good[-1]
        how = "early, with time in hand, while" if year.climate.warming[strongest] else "as cool as it gets while"
        assert (window.best, text(window.why_best)) == (best, (
            f"{how} the {days / 7:.0f} weeks of recovery still give {ahead[best] / max(ahead.values()):.0%} of the strongest growth "
            f"(a mean growth potential of {ahead[best]:.2f})"
        ))


def test_where_nothing_closes_it_the_window_is_the_whole_year():
    (window,) = windows(season(COUCH, made_up(30, 20, rain=10)).view, rules().windows["warm"], 4).windows
    assert (window.first, window.last, window.days, window.limited_by) == (0, 364, 365, ((), ()))
    assert text(window.why).startswith(f"From 1 January: {OPEN_ENDED}. Best about ") and f" Until 31 December: {OPEN_ENDED}." in text(window.why)


def test_what_else_is_said_of_a_window():
    second_best = "Second best: seed sown now meets weeds and then summer."
    main, other = season(FESCUE, "melbourne").renovation.windows
    assert second_best not in text(main.why) and text(other.why).endswith(second_best) and main.notes == ()
    year = season(COUCH, "hobart")
    assert text(year.renovation.windows[0].why).endswith(
        f" There is little growth here: at best {year.growth.best:.2f} of what the grass can do, so allow {year.rules.little_growth_stretch:g} "
        "times the usual recovery."
    )
    whole = "Temperatures here were printed in whole degrees, so a date that half a degree would shift is undecided; go by the lawn and the soil."
    assert [whole in text(season(COUCH, place).renovation.windows[0].why) for place in ("auckland", "sydney")] == [True, False]
    window = season(COUCH, "auckland").renovation.windows[0]
    earliest, latest = map(day_words, window.undecided_first)
    assert text(window.why).startswith(f"From {day_words(window.first)}, undecided between {earliest} and {latest}: growth is rising")


def test_little_growth_takes_longer_to_close():
    year = season(COUCH, "hobart")
    stretch = year.rules.little_growth_stretch
    assert year.growth.best < year.rules.little_growth and stretch > 1
    assert recovery_days(4, year.view, year.rules) == round(28 * stretch)
    assert recovery_days(4, season(COUCH, "sydney").view, year.rules) == 28
    # As much as the rule names is not little.
    assert recovery_days(4, year.view, replace(year.rules, little_growth=year.growth.best)) == 28


def test_no_growing_season_says_how_little_grows():
    year = season(COUCH, made_up(9, 5))
    least = year.rules.least_growth
    assert text(year.renovation.why_none) == (
        f"this place gives the grass no real growing season: its growth potential never passes {year.growth.best:.2f} (a window needs {least:g})"
    )
    at_least = replace(year.rules, least_growth=year.growth.best)
    assert windows(year.view, at_least, 4).why_none is None or "no real growing season" not in text(windows(year.view, at_least, 4).why_none)


def test_a_rule_that_forbids_the_whole_year_is_told():
    year = season(FESCUE, "darwin")
    mean, top = year.climate.mean_c, year.rules.heat_limit_c
    assert text(year.renovation.why_none) == (
        f"the daily mean does not stay at or below {top:g} °C for 5 weeks; it runs from {min(mean):.1f} °C to {max(mean):.1f} °C through the year"
    )


def test_a_window_too_short_to_plan_on_is_told_with_both_its_ends():
    year = season(COUCH, "sydney")
    (window,) = year.renovation.windows
    asked = replace(year.rules, shortest_weeks=30)
    found = windows(year.view, asked, 4)
    opens, closes = (" and ".join(map(text, why)) for why in (window.why_first, window.why_last))
    assert found.windows == () and text(found.why_none) == (
        f"the weather leaves only {window.days} days, from {day_words(window.first)} to {day_words(window.last)}, and a window shorter than 30 weeks "
        f"is not worth planning on: {opens}, but {closes}"
    )
    # Exactly as long as the rule asks is long enough, and a week more is not.
    assert windows(year.view, replace(year.rules, shortest_weeks=window.days / 7), 4).windows
    assert not windows(year.view, replace(year.rules, shortest_weeks=window.days / 7 + 1), 4).windows
    # Of two that are too short the longer one is told.
    longer = max(season(FESCUE, "melbourne").renovation.windows, key=lambda each: each.days)
    of_two = windows(season(FESCUE, "melbourne").view, replace(season(FESCUE, "melbourne").rules, shortest_weeks=30), 5)
    assert f"only {longer.days} days, from {day_words(longer.first)} to" in text(of_two.why_none)


def test_rules_that_leave_no_common_day_are_told_with_their_weeks():
    """Warm enough for winter ryegrass at one end of the year, cool enough at another: KIKUYU on the Gold Coast."""
    found = season(KIKUYU, "gold-coast").oversowing
    said = text(found.why_none)
    assert said.startswith("the rules leave no common day: turf slowing allows weeks ") and ", soil cooled allows weeks " in said
    year = season(KIKUYU, "gold-coast")
    slow = runs_of([share < year.rules.peak_share for share in year.growth.share])
    told = " and ".join(f"weeks {week(first)} to {week(last)}" for first, last in slow)
    assert f"turf slowing allows {told}, " in said


def test_half_a_printed_degree_leaves_an_edge_undecided():
    """Every day whose mean lies within half a degree of that at the edge, a month at most, and never past the best date."""
    year = season(COUCH, "auckland")
    (window,) = year.renovation.windows
    mean = year.climate.mean_c

    def near(day):
        back = next(each for each in range(31) if each == 30 or abs(mean[(day - each - 1) % DAYS] - mean[day % DAYS]) >= 0.5)
        ahead = next(each for each in range(31) if each == 30 or abs(mean[(day + each + 1) % DAYS] - mean[day % DAYS]) >= 0.5)
        return back, ahead

    days = recovery_days(4, year.view, year.rules)
    before, after = near(window.first)
    assert window.undecided_first == (window.first - before, min(window.first + after, window.best))
    before, after = near(window.last + days)
    assert window.undecided_last == (window.last - before, window.last + after)
    # Printed in tenths, or set by rain or by nothing, an edge stands as it is.
    assert undecided_edges(season(COUCH, "sydney").view, window, days) == (None, None)
    for names in (("wet season",), ("warming",), ("wet season", "cooling"), ()):
        assert undecided_edges(year.view, replace(window, limited_by=(names, names)), days) == (None, None)
    both = undecided_edges(year.view, replace(window, limited_by=(("wet season", "heat"), ("frost",))), days)
    assert None not in both


RYEGRASS = rules().oversowing


def test_winter_ryegrass_goes_in_while_the_turf_slows_and_the_soil_cools():
    year = season(COUCH, "atlanta")
    (window,) = oversowing(year.view, True, year.rules, RYEGRASS).windows
    soil, share = year.climate.soil_c, year.growth.share
    assert soil[window.first] <= RYEGRASS.soil_c and share[window.first] < year.rules.peak_share and not year.climate.warming[window.first]
    assert window.best == window.first and {"turf slowing", "soil cooled"} & set(window.limited_by[0])
    there = year.view.degrees(soil[window.first])
    assert text(window.why_best) == (
        f"as early as the rules allow, in week {week(window.first)}, while the soil at {there.value:{there.shown}} °C still sprouts seed fast"
    )
    assert text(window.notes[0]) == "Soil temperature is estimated from the air; a thermometer at 100 mm decides."


@pytest.mark.parametrize(("change", "said"), [
    ({"soil_c": -20.0}, "the soil never cools to -20 °C; its lowest is "), ({"soil_c": None}, "the book's tasks give no soil temperature for it"),
])
def test_why_no_ryegrass_is_sown(change, said):
    year = season(COUCH, "atlanta")
    assert text(oversowing(year.view, True, year.rules, replace(RYEGRASS, **change)).why_none).startswith(said)


def test_turf_that_takes_no_ryegrass_says_why():
    year = season(COUCH, "atlanta")
    assert text(oversowing(year.view, False, year.rules, RYEGRASS).why_none) == "this grass is not oversown for winter; its page says why"
    cool = season(FESCUE, "atlanta")
    said = "a cool-season lawn stays green in winter anyway; thickening it is called overseeding"
    assert [text(oversowing(cool.view, oversown, cool.rules, RYEGRASS).why_none) for oversown in (True, False)] == [said, said]
    never = replace(year.rules, peak_share=0.0)
    assert text(oversowing(year.view, True, never, RYEGRASS).why_none) == "the turf never slows below 0% of its best, so seedlings would get no light"


PRINTED = PreEmergentRules(12.0, 13.0, 14.0)


@pytest.mark.parametrize("place", ["canberra", "melbourne", "chicago", "atlanta"])
def test_a_pre_emergent_goes_on_between_the_printed_temperatures_while_the_soil_warms(place):
    year = season(COUCH, place)
    (window,) = pre_emergent(year.view, PRINTED).windows
    soil, warming = year.climate.soil_c, year.climate.warming
    assert [day for day in range(DAYS) if warming[day] and 12 <= soil[day] <= 14] == sorted(span_of(window.first, window.last))
    by_then = [day for day in span_of(window.first, window.last) if soil[day] <= 13]
    assert window.best == (by_then[-1] if by_then else window.first)
    shown = {day: year.view.degrees(soil[day]) for day in (window.first, window.best)}
    here, best = (f"{shown[day].value:{shown[day].shown}} °C" for day in (window.first, window.best))
    assert f"the soil has warmed to {here}; the earliest advice is 12 °C" in [text(why) for why in window.why_first]
    assert text(window.why_best) == f"by then it should be in place: the soil reaches {best}, and most advice says 13 °C"
    assert [text(why) for why in window.why_last] == [f"in week {week(window.last + 1)} the soil passes 14 °C, and summer grass sprouts"]


def test_soil_that_never_warms_or_never_cools_says_its_own_extreme():
    cold, warm = season(FESCUE, made_up(9, 5)), season(COUCH, "darwin")
    assert text(pre_emergent(cold.view, PRINTED).why_none) == f"the soil never warms to 12 °C; its highest is {max(cold.climate.soil_c):.1f} °C"
    assert text(pre_emergent(warm.view, PRINTED).why_none) == (
        f"the soil never cools to 14 °C, its lowest is {min(warm.climate.soil_c):.1f} °C, so summer grass may sprout at any time"
    )
    assert text(pre_emergent(warm.view, None).why_none) == "the book's tasks give no soil temperature for it"


def test_where_half_a_degree_would_give_a_window_it_is_said_which_way():
    """San Diego's soil never quite cools to 14 °C in whole degrees; half a degree cooler it would."""
    year = season(COUCH, "san-diego")
    why = text(year.pre_emergent.why_none)
    moved = replace(year.view, weather=year.weather.moved(-0.5))
    (window,) = pre_emergent(moved, rules().pre_emergent).windows
    assert year.pre_emergent.undecided and why.endswith(
        "; undecided, because temperatures here were printed in whole degrees, and half a degree cooler would give a window from "
        f"{day_words(window.first)} to {day_words(window.last)}"
    )
    warmer = season(KIKUYU, "atlanta").oversowing
    assert warmer.undecided and "half a degree warmer would give a window from" in text(warmer.why_none)
    # In tenths nothing is left open, and what no temperature would change is not asked.
    assert not season(COUCH, "brisbane").pre_emergent.undecided and not season(COUCH, "auckland").overseeding.undecided
