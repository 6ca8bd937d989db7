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


def test_days_later_or_earlier_than_planned_are_told():
    found = dates(done={"core": MONDAY + timedelta(2), "cut": MONDAY - timedelta(9)})
    assert {id: found[id].moved_days for id in ("core", "cut", "mow", "mark")} == {"core": 2, "cut": -2, "mow": 2, "mark": 0}
    assert found["core"].moved_by is None and found["core"].planned == MONDAY and found["mow"].planned == MONDAY + timedelta(10)
    assert found["mark"].until is None and found["mark"].settles_days is None


def test_what_was_done_by_hand_waits_for_nothing():
    """The sand is down already, whatever became of the coring."""
    found = dates(done={"core": MONDAY + timedelta(5), "sand": MONDAY + timedelta(1)})
    assert days_from(MONDAY, found)["sand"] == 1 and found["sand"].moved_by is None


def test_of_two_that_are_late_the_later_one_moves_what_waits():
    plan = (step("mark", 0), step("cut", 0), step("core", 0, ["mark", "cut"]))
    found = {each.id: each for each in dated_steps(plan, MONDAY, {}, {"mark": MONDAY + timedelta(2), "cut": MONDAY + timedelta(6)})}
    assert (days_from(MONDAY, found)["core"], found["core"].moved_by) == (6, "cut")
    found = {each.id: each for each in dated_steps(plan, MONDAY, {}, {"mark": MONDAY + timedelta(6), "cut": MONDAY + timedelta(2)})}
    assert (days_from(MONDAY, found)["core"], found["core"].moved_by) == (6, "mark")


def test_a_gap_of_its_own_counts_before_what_settles_and_before_the_plan_s_days():
    """Sown 14 days after the spray whatever it takes to die; without a gap of its own, when it has died."""
    plan = (step("spray", 0), step("sow", 20, ["spray"], gaps={"spray": 14}), step("mow", 20, ["spray"]))
    found = dated_steps(plan, MONDAY, {"spray": (30,) * 365}, {"spray": MONDAY + timedelta(10)})
    assert days_from(MONDAY, {each.id: each for each in found}) == {"spray": 10, "sow": 24, "mow": 40}


def test_how_long_it_settles_is_read_off_the_day_it_is_done():
    """Thirty days in winter, twelve from day number 244 (1 September) on: sprayed on 31 August it takes thirty."""
    takes = (30,) * 243 + (12,) * 122
    plan = (step("spray", 0), step("sow", 1, ["spray"]))
    for on, days in ((date(2026, 8, 31), 30), (date(2026, 9, 2), 12)):
        spray, sow = dated_steps(plan, on, {"spray": takes}, {"spray": on})
        assert (spray.settles_days, (sow.date - on).days, sow.moved_by) == (days, days, "spray")


def test_a_step_is_dated_for_the_first_that_waits_for_it_and_not_for_one_with_its_own_gap():
    plan = (step("spray", -10), step("sow", 5, ["spray"]), step("check", -5, ["spray"]), step("soon", -9, ["spray"], gaps={"spray": 1}))
    found = {each.id: each for each in dated_steps(plan, MONDAY, {"spray": (20,) * 365}, {})}
    assert days_from(MONDAY, found) == {"spray": -25, "check": -5, "soon": -9, "sow": 5}
    alone = dated_steps((step("spray", -10), step("soon", -9, ["spray"], gaps={"spray": 1})), MONDAY, {"spray": (20,) * 365}, {})
    assert (alone[0].date - MONDAY).days == -10


def test_what_never_settles_within_a_year_stays_on_its_day():
    """Looked for up to a year back, ours: a step that takes 400 days is left where the plan has it."""
    spray, check = dated_steps((step("spray", -10), step("check", -5, ["spray"])), MONDAY, {"spray": (400,) * 365}, {})
    assert (spray.date - MONDAY).days == -10 and (check.date - MONDAY).days == 390


def test_what_settles_by_the_very_day_is_early_enough():
    spray, _ = dated_steps((step("spray", -10), step("check", -5, ["spray"])), MONDAY, {"spray": (5,) * 365}, {})
    assert (spray.date - MONDAY).days == -10
    spray, _ = dated_steps((step("spray", -10), step("check", -5, ["spray"])), MONDAY, {"spray": (6,) * 365}, {})
    assert (spray.date - MONDAY).days == -11


def test_within_a_day_the_plan_s_order_stands():
    plan = (step("b", 0), step("c", 1), step("a", 0))
    assert [each.id for each in dated_steps(plan, MONDAY, {}, {"c": MONDAY})] == ["b", "c", "a"]
