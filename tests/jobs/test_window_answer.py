"""Where a day stands to a plan's window, and what is said of it. Windows here are made up, but for those read off the growth of a grass."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from generator.book.records.practice import Outside
from generator.jobs.job import what_then
from generator.jobs.window_answer import Stretch, frost_ahead, next_day, verdict
from generator.season.calendar_days import DAYS
from generator.season.reasons import because
from generator.season.windows.main_windows import Window, Windows
from generator.season.windows.preferred import Preferred
from generator.words.reason_text import text
from tests.season.shipped import BUFFALO, COUCH, FESCUE, made_up, season

NEW_YEAR = date(2027, 1, 1)


def a_window(first, last, best=None, **more):
    best = first if best is None else best
    return Window(
        first, last, Preferred(best, best, because("nothing-grows")), (because("too-slow-all-year"), because("never-turns")),
        (because("wet-all-year"),), ((), ()), is_main=True, **more,
    )


def stands(day, *windows, why_none=None, year=None):
    year = replace(year or season(COUCH, "sydney"), windows={"renovation": Windows(windows, why_none)})
    return verdict(year, "renovation", NEW_YEAR + timedelta(day))


# From 10 February, day number 40, to 1 March, day number 59.
FEBRUARY = a_window(40, 59, 50)


@pytest.mark.parametrize(("day", "days", "said"), [
    (39, 1, "1 day before the window opens on 10 February: growth is too slow all year and the temperature never turns."),
    (30, 10, "10 days before the window opens on 10 February: growth is too slow all year and the temperature never turns."),
    (60, 1, "1 day after the window closed on 1 March: it is too wet all year."),
    (90, 31, "31 days after the window closed on 1 March: it is too wet all year."),
])
def test_outside_a_window_it_says_by_how_much_and_why(day, days, said):
    found = stands(day, FEBRUARY)
    assert (found.kind, found.inside, found.side, found.days_outside) == ("renovation", False, "before" if "before" in said else "after", days)
    assert text(found.why) == said and (found.stretch.first, found.stretch.best, found.stretch.last, found.stretch.days) == (40, 50, 59, 20)


@pytest.mark.parametrize("day", [40, 50, 59])
def test_inside_a_window_it_says_all_three_dates(day):
    found = stands(day, FEBRUARY)
    assert (found.inside, found.side, found.days_outside, found.kind, found.stretch.first) == (True, None, 0, "renovation", 40)
    assert text(found.why) == (
        "From 10 February: growth is too slow all year and the temperature never turns. Best from 20 February to 20 February: "
        "nothing grows here. Until 1 March: it is too wet all year."
    )


def test_a_window_over_new_year_holds_both_its_ends():
    over = a_window(350, 14)
    assert [stands(day, over).inside for day in (349, 350, 364, 0, 14, 15)] == [False, True, True, True, True, False]
    assert stands(0, over).stretch.days == 30
    assert text(stands(20, over).why).startswith("6 days after the window closed on 15 January")
    assert text(stands(345, over).why).startswith("5 days before the window opens on 17 December")


def test_of_two_windows_the_nearer_one_counts():
    april = a_window(100, 120)
    found = [stands(day, FEBRUARY, april) for day in (70, 95, 110, 20)]
    assert [(each.side, each.days_outside, each.stretch.first) for each in found] == [("after", 11, 40), ("before", 5, 100), (None, 0, 100), ("before", 20, 40)]
    assert [stands(day, april, FEBRUARY).stretch.first for day in (70, 95, 110)] == [40, 100, 100]


def test_where_there_is_no_window_it_says_so_on_any_day():
    for day in (0, 200):
        found = stands(day, why_none=because("wet-all-year"))
        assert (found.kind, found.inside, found.side, found.days_outside, found.stretch) == ("renovation", False, None, 0, None)
        assert text(found.why) == "No window here: it is too wet all year."


def test_a_leap_day_counts_as_the_day_before():
    year = season(COUCH, "canberra")
    assert verdict(year, "renovation", date(2028, 2, 29)) == verdict(year, "renovation", date(2028, 2, 28))


def growing(grass, place, day):
    return verdict(season(grass, place), "growing", NEW_YEAR + timedelta(day))


def test_a_plan_for_any_time_of_growth_goes_by_the_classes_of_growth():
    """Common practice: turf roots while it grows. Canberra's couch is dormant in winter; 15 July, day number 195, is its depth."""
    year = season(COUCH, "canberra")
    strong = [name in ("growing", "peak") for name in year.classes]
    summer, winter = growing(COUCH, "canberra", 15), growing(COUCH, "canberra", 195)
    assert text(summer.why) == "The grass grows strongly enough to root and to close." and summer.inside and summer.stretch.best is None
    opens = next(ahead for ahead in range(DAYS) if strong[195 + ahead])
    closed = next(back for back in range(DAYS) if strong[195 - back])
    assert (winter.side, winter.days_outside) == (("before", opens) if opens <= closed else ("after", closed))
    assert [strong[day] for day in (winter.stretch.first - 1, winter.stretch.first, winter.stretch.last, winter.stretch.last + 1)] == [False, True, True, False]
    late, early = (growing(COUCH, "canberra", day) for day in (winter.stretch.last + 2, winter.stretch.first - 3))
    assert text(late.why).startswith("2 days after the window closed on ") and text(late.why).endswith(": growth becomes too slow to root and to close.")
    assert text(early.why).startswith("3 days before the window opens on ")
    assert text(early.why).endswith(": growth becomes strong enough to root and to close.")


def test_where_it_grows_all_year_or_never_a_plan_for_growth_says_so():
    always = growing(COUCH, "darwin", 195)
    assert text(always.why) == "The grass grows strongly enough all year." and always.inside and always.stretch.days == DAYS
    assert text(growing(COUCH, made_up(9, 5), 15).why) == "No window here: the grass never grows strongly here."


def test_frost_of_the_four_weeks_ahead_is_of_the_ground_for_grass_that_runs_above_it():
    """Four weeks are 28 nights: Canberra's frost of the screen, or of the ground for buffalo, by `season.climate.frost`."""
    for grass in (COUCH, BUFFALO):
        year = season(grass, "canberra")
        frost = year.weather.ground_frost if grass.surface_running else year.weather.air_frost
        found = verdict(year, "renovation", NEW_YEAR + timedelta(270)).frost_chance
        assert found == pytest.approx(frost.chance_of_any(270, 28)) and 0 < found < 1
        assert frost_ahead(frost)[270] == found and len(frost_ahead(frost)) == DAYS
    # Where there is no window a frost is told all the same.
    year = season(FESCUE, "canberra")
    none = replace(year, windows={"renovation": Windows((), because("wet-all-year"))})
    assert verdict(none, "renovation", NEW_YEAR + timedelta(270)).frost_chance == verdict(year, "renovation", NEW_YEAR + timedelta(270)).frost_chance > 0


def statement(words):
    return {"text": words, "source": "common practice"}


def test_what_to_do_about_the_day_hangs_on_its_side_of_the_window():
    advice = Outside.model_validate({"early": [statement("Wait.")], "late": [statement("Leave it.")], "gone_wrong": [statement("Cover it.")]})
    told = [[each.text for each in what_then(stands(day, FEBRUARY), advice)] for day in (30, 50, 70)]
    assert told == [["Wait.", "Cover it."], ["Cover it."], ["Leave it.", "Cover it."]]
    assert what_then(stands(30, FEBRUARY), None) == ()


@pytest.mark.parametrize(("ready", "wanted"), [
    ("2027-01-01", "2027-02-20"),  # the window is to come: its best day
    ("2027-02-12", "2027-02-20"),  # open, and the best day is ahead
    ("2027-02-25", "2027-02-25"),  # open, and the best day is past
    ("2027-03-02", "2028-02-20"),  # closed: next year's
])
def test_the_next_day_for_a_job_is_the_best_that_is_left(ready, wanted):
    """The window from 10 February to 1 March, best about the 20th."""
    why = because("wet-all-year")
    assert next_day([Stretch(40, 50, 59, why, why, why)], date.fromisoformat(ready)) == date.fromisoformat(wanted)


def test_the_next_day_counts_a_29_february_and_stands_where_there_is_no_window():
    why, ready = because("wet-all-year"), date(2028, 2, 20)
    assert next_day([Stretch(59, None, 90, why, why, why)], ready) == date(2028, 3, 1)
    assert next_day([], ready) == ready
