"""How long a step takes with so many people: sums by hand, from a practice made up here."""

import pytest

from generator.jobs.amounts import Spoil
from generator.jobs.step_time import minutes_of, people_of, time_of
from tests.jobs.made_up import CALCULATORS, a_practice, a_step

MACHINES = {
    "corer": {"name": "Corer", "working_width_m": 0.5, "speed_km_per_h": 3, "overlap_percent": 20, "efficiency_percent": 50},
    "plain": {"name": "Mower", "working_width_m": 0.5, "speed_km_per_h": 3},
    "blower": {"name": "Blower", "speed_km_per_h": 3}, "bare-rake": {"name": "Rake", "working_width_m": 0.5},
    "barrow": {"name": "Barrow", "working_width_m": 1, "speed_km_per_h": 0.2, "efficiency_percent": 50, "pace_of_people": 2},
}
OPERATIONS = {
    "core": {"machine": "corer", "setup_minutes": 40}, "mow": {"machine": "plain"}, "blow": {"machine": "blower", "setup_minutes": 5},
    "level": {"machine": "bare-rake"}, "edge": {"setup_minutes": 15}, "feed": {"price_per_100_m2": 12},
    "topdress": {"machine": "barrow", "setup_minutes": 30, "hands": "shared"},
}
HAND_WORK = {
    "mark": {"minutes": 10, "minutes_per_100_m2": 5}, "spoil": {"minutes_per_spoil_m3": 20, "minutes_per_load": 45}, "hand-over": {"minutes": 20, "hands": "one"},
}
TIMED = a_practice(machines=MACHINES, operations=OPERATIONS, hand_work=HAND_WORK)
AWAY = Spoil(3.0, 50, 2)


def minutes(step, area_m2=200.0, passes=1, people=1, away=AWAY, calculators=CALCULATORS):
    time = time_of(step, TIMED, calculators)
    return None if time is None else minutes_of(time, calculators, area_m2, passes, people, away)


@pytest.mark.parametrize(("task", "area_m2", "expected"), [
    # 0.5 m less a fifth, at 3000 m an hour, half the time: 600 m2 an hour. 200 m2 take 20 minutes, with 40 to set up.
    ("core", 200, 60),
    # Nothing said of overlap is none, and the calculator starts at 70 %: 0.5 m * 3000 m * 0.7 are 1050 m2 an hour, 210 m2 in 12 minutes.
    ("mow", 210, 12),
    # A machine whose width or speed nobody gave: what is left is the setting up, or nothing to say.
    ("blow", 200, 5), ("level", 200, None),
    ("edge", 200, 15), ("feed", 200, None), ("lime", 200, None), (None, 200, None),
])
def test_a_step_takes_what_its_machine_and_setting_up_take(task, area_m2, expected):
    assert minutes(a_step("any", task), area_m2) == (None if expected is None else pytest.approx(expected))


def test_every_pass_takes_its_time_and_setting_up_is_once():
    """600 m2 an hour: 200 m2 in 20 minutes, three times over in an hour, with 40 minutes to set up."""
    assert minutes(a_step("core", "core"), passes=3) == pytest.approx(100)


def test_a_book_without_the_calculator_of_machine_hours_has_the_setting_up_alone():
    without = {id: each for id, each in CALCULATORS.items() if id != "machine-hours"}
    assert minutes(a_step("core", "core"), passes=3, calculators=without) == 40
    assert minutes(a_step("mow", "mow"), calculators=without) is None


def test_more_people_shorten_what_they_share_and_no_machine():
    """Two at the barrow do 0.5 * 200 = 100 m2 an hour: 200 m2 in 120 minutes, with 30 to set up; one alone takes twice the 120, four take half."""
    found = [[minutes(a_step("any", task), people=people) for people in (1, 2, 4)] for task in ("topdress", "core")]
    assert found == [[pytest.approx(270), pytest.approx(150), pytest.approx(90)], [pytest.approx(60)] * 3]


def test_work_by_hand_takes_what_the_practice_says_of_the_step():
    """10 + 5 * 2 minutes for 200 m2. 20 * 3 to load three cubic metres, and 45 for each of two loads, which no helper shortens."""
    assert [minutes(a_step("mark"), people=people) for people in (1, 2)] == [20, 10]
    assert [minutes(a_step("spoil"), people=people) for people in (1, 2)] == [150, 120]
    assert [minutes(a_step("hand-over"), people=people) for people in (1, 2)] == [20, 20]
    # By the shared step it is, by what it says itself, and before the time of its task.
    assert minutes(a_step("flag", use="mark")) == minutes(a_step("found", timed_as="mark")) == minutes(a_step("mark", "core")) == 20
    assert minutes(a_step("spoil"), away=Spoil(3.0, 50, None)) is None, "nobody said what the trailer holds"


def test_who_goes_to_a_job_is_asked_for_or_the_practice_s_own_number():
    assert (people_of(TIMED), people_of(a_practice(people=3)), people_of(a_practice(people=3), 1)) == (1, 3, 1)
