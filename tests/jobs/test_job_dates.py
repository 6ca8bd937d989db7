"""Dates of a job, against Python's own calendar and by hand. That a late step moves only what depends on it is common practice."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as some

from generator.book.records.step import Step
from generator.jobs.dates import dated_steps, day_of_year
from generator.jobs.plan_steps import StepFor, stage_of

MONDAY = date(2026, 10, 12)


def step(id, day, after=(), until=None, gaps=None):
    record = Step(
        id=id, day=day, until_day=until, after=tuple(after), gaps=gaps or {}, title=id, say="Do it.", source="common practice",
    )
    return StepFor(record, stage_of(day), None, tuple(after))


PLAN = (
    step("spray", -28), step("dead", -7, ["spray"]), step("cut", -7, ["dead"]), step("mark", 0), step("core", 0, ["mark", "cut"]),
    step("sand", 0, ["core"]), step("water", 1, ["sand"], until=7), step("mow", 10, ["sand"]), step("feed", 28, ["mow"], until=35),
)


def dates(on=MONDAY, takes=None, done=None):
    settling = {} if takes is None else {"spray": takes}
    return {each.id: each for each in dated_steps(PLAN, on, settling, done or {})}


def days_from(on, found):
    return {id: (each.date - on).days for id, each in found.items()}


def test_a_plan_that_nothing_moves_falls_on_its_days():
    assert days_from(MONDAY, dates()) == {"spray": -28, "dead": -7, "cut": -7, "mark": 0, "core": 0, "sand": 0, "water": 1, "mow": 10, "feed": 28}


def test_a_late_step_moves_only_what_depends_on_it():
    """The corer comes two days late: sand waits for it, and growth is counted from the sand; the marking stays."""
    found = dates(done={"core": MONDAY + timedelta(2)})
    assert days_from(MONDAY, found) == {
        "spray": -28, "dead": -7, "cut": -7, "mark": 0, "core": 2, "sand": 2, "water": 3, "mow": 12, "feed": 30,
    }
    assert (found["sand"].moved_by, found["feed"].moved_by, found["mark"].moved_by) == ("core", "mow", None)
    assert found["water"].until == MONDAY + timedelta(9) and found["feed"].until == MONDAY + timedelta(37)


def test_time_to_spare_is_used_up_first():
    """The light cut may be three days late without moving the day, a week ahead of which it was planned."""
    assert days_from(MONDAY, dates(done={"cut": MONDAY - timedelta(4)}))["core"] == 0


def test_what_has_to_settle_is_done_early_enough():
    """Thirty days to die, and looked at a week before the day: sprayed 37 days before it."""
    found = dates(takes=(30,) * 365)
    assert (MONDAY - found["spray"].date).days == 37 and found["spray"].settles_days == 30
    assert days_from(MONDAY, found)["dead"] == -7


def test_what_settles_sooner_than_planned_stays_where_it_is():
    assert days_from(MONDAY, dates(takes=(14,) * 365))["spray"] == -28


def test_sprayed_late_moves_the_day_itself():
    """Sprayed ten days before, three weeks to die: looked at 11 days after the day, and everything behind it follows."""
    found = days_from(MONDAY, dates(takes=(21,) * 365, done={"spray": MONDAY - timedelta(10)}))
    assert (found["dead"], found["cut"], found["core"], found["mow"]) == (11, 11, 11, 21)
    assert found["mark"] == 0


def test_days_that_must_pass_may_be_set():
    plan = (step("seed", 0), step("mow", 21, ["seed"], gaps={"seed": 14}))
    found = dated_steps(plan, MONDAY, {}, {"seed": MONDAY + timedelta(5)})
    assert [(each.date - MONDAY).days for each in found] == [5, 21]


def test_steps_stand_in_order_of_date():
    found = dated_steps(PLAN, MONDAY, {}, {"mark": MONDAY + timedelta(3)})
    assert [each.date for each in found] == sorted(each.date for each in found)


@pytest.mark.parametrize(("day", "number"), [((2026, 1, 1), 0), ((2028, 2, 29), 58), ((2028, 3, 1), 59), ((2026, 12, 31), 364)])
def test_leap_days_fold_into_the_engine_s_year(day, number):
    assert day_of_year(date(*day)) == number


@given(some.dates(date(1930, 1, 1), date(2129, 12, 31)))
def test_two_centuries_of_days(on):
    """A step of day n falls n days after day 0 by Python's calendar, over leap days and the turn of any year."""
    assert all(each.date.toordinal() - on.toordinal() == each.step.step.day for each in dated_steps(PLAN, on, {}, {}))
    folded = on.replace(year=2027, day=min(on.day, 28 if on.month == 2 else 31))
    assert day_of_year(on) == folded.timetuple().tm_yday - 1
