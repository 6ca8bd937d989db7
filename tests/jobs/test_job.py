"""A whole job of a plan made up here: its watering, its gear and what has to settle, counted by hand."""

from datetime import date, timedelta

import pytest

from generator.jobs.job import Records, Request, gear_of, settling_days, work_out
from tests.jobs.made_up import CALCULATORS, a_practice, a_step, some_tasks
from tests.jobs.test_plan import PRACTICE, a_grass, a_plan, operation
from tests.season.shipped import COUCH, groups, made_up, rules, season

DAY = date(2026, 10, 12)
MACHINES = {
    "corer": {"name": "Corer", "ownership": "hire", "book_days_ahead": 10, "check": "Tines are long enough."},
    "mower": {"name": "Mower", "check": "Blade is sharp."}, "borrowed": {"name": "Roller", "ownership": "borrow"},
}
FIGURE = {"low": 2, "high": 4, "unit": "week", "source": PRACTICE}
TASKS = some_tasks("core", "spray")
TASKS["spray"] = TASKS["spray"].model_validate({
    "name": "Spray", "summary": "Made up.", "steps": [{"text": "Do.", "source": PRACTICE}], "figures": {"to-die": FIGURE},
})


def job(*steps, area_m2=100, place="sydney", grass=None, practice=None, **asked):
    records = Records(practice or a_practice(machines=MACHINES), groups(), TASKS, CALCULATORS, rules().oversowing.ryegrass)
    return work_out(Request(area_m2, DAY, **asked), a_plan(*steps), "couch", grass or a_grass(), season(COUCH, place), records)


def days(*ahead):
    return [DAY + timedelta(each) for each in ahead]


def test_water_is_counted_by_the_day_and_the_lawn():
    """4 mm twice a day are 8 mm, on 100 m2 800 L, of sprinklers that give their driest quarter 70 % of the mean 1143; every second day from the first to the seventh there are four of them."""
    watering = {"depth": "4 mm", "times_a_day": 2, "every_days": 2}
    (step,) = job({"id": "water", "day": 1, "until_day": 7, "watering": watering}).steps
    assert [each.day for each in step.watering] == days(1, 3, 5, 7)
    assert [(each.depth_mm, each.times, each.litres, each.rain_mm) for each in step.watering] == [(pytest.approx(8), 2, pytest.approx(800 / 0.7), None)] * 4
    (once,) = job({"id": "water", "day": 1, "watering": {"depth": "0.5 cm"}}, area_m2=40).steps
    assert [(each.day, each.depth_mm, each.times, each.litres) for each in once.watering] == [(*days(1), pytest.approx(5), 1, pytest.approx(200 / 0.7))]
    (dry,) = job({"id": "mow", "day": 1}).steps
    assert dry.watering == ()


def test_rain_stands_in_for_a_watering_that_it_covers():
    watering = {"depth": "8 mm"}
    rain = dict(zip(days(1, 2, 3), (7.5, 8, 20), strict=True))
    (step,) = job({"id": "water", "day": 1, "until_day": 4, "watering": watering}, rain_mm=rain).steps
    assert [each.rain_mm for each in step.watering] == [None, 8, 20, None]


GEAR = {
    "corer": {"name": "Hollow corer", "machine": "corer", "book_days_ahead": 3}, "mower": {"name": "Mower", "machine": "mower", "from_where": "hire"},
    "roller": {"name": "Roller", "machine": "borrowed", "book_days_ahead": 5, "check": "It is clean."}, "rake": {"name": "Rake"},
    "tarp": {"name": "Tarp", "from_where": "buy", "book_days_ahead": 2},
}


def test_gear_is_booked_by_the_practice_s_own_days_and_checked_the_day_before():
    found = {each.name: each for each in job({"id": "work", "day": 2, "gear": list(GEAR.values())}).gear}
    told = {
        name: (each.machine, each.from_where, each.book_by and (each.needed - each.book_by).days, each.check) for name, each in found.items()
    }
    assert told == {
        # The practice says ten days, and what to look at; whose a machine is, it says too.
        "Hollow corer": ("corer", "hire", 10, "Tines are long enough."), "Mower": ("mower", "own", None, "Blade is sharp."),
        "Roller": ("borrowed", "borrow", 5, "It is clean."), "Rake": (None, "own", None, None), "Tarp": (None, "buy", 2, None),
    }
    assert all((each.needed, each.check_by, each.days, each.steps) == (*days(2, 1), tuple(days(2)), ("work",)) for each in found.values())


def test_gear_of_several_steps_is_told_once_for_the_first_with_the_longest_booking():
    tarp = {"name": "Tarp", "from_where": "buy"}
    steps = (
        {"id": "first", "day": -2, "gear": [{**tarp, "book_days_ahead": 2}]}, {"id": "same-day", "day": -2, "gear": [tarp]},
        {"id": "second", "day": 5, "gear": [{**tarp, "book_days_ahead": 7, "check": "It is whole."}]},
        {"id": "third", "day": 6, "gear": [{**tarp, "check": "It is dry."}]},
    )
    (found,) = job(*steps).gear
    assert found.days == tuple(days(-2, 5, 6)) and found.needed == DAY - timedelta(2) and found.steps == ("first", "same-day", "second", "third")
    assert found.book_by == DAY - timedelta(9) and found.check_by == DAY - timedelta(3) and found.check == "It is whole."


def test_one_machine_under_two_names_is_one_and_two_things_without_one_are_two():
    steps = [{"name": "Corer", "machine": "corer"}, {"name": "Hollow corer", "machine": "corer"}, {"name": "Rake"}, {"name": "Broom"}]
    assert [each.name for each in job({"id": "work", "day": 0, "gear": steps}).gear] == ["Corer", "Rake", "Broom"]


def test_gear_that_is_no_machine_of_the_practice_stays_as_the_plan_has_it():
    gear = a_step(gear=[{"name": "Sprayer", "machine": "sprayer", "from_where": "borrow", "book_days_ahead": 4}]).gear[0]
    assert gear_of(gear, a_practice(machines=MACHINES)) == gear
    assert gear_of(a_step(gear=[{"name": "Rake"}]).gear[0], a_practice(machines=MACHINES)).from_where == "own"


SPRAY = {"id": "spray", "day": -28, "task": "spray", "settles": "spray.to-die"}


def test_what_settles_says_on_which_day_the_job_may_be():
    """Done on its day it takes so long here; what waits for it is a week before the day, so the day is a week after it has settled."""
    steps = (SPRAY, {"id": "check", "day": -7, "after": ["spray"]}, {"id": "core", "day": 0, "after": ["spray"]})
    found = job(*steps)
    (settling,) = found.settling
    spray = next(each for each in found.steps if each.id == "spray").dated
    assert (settling.step, settling.done_on, settling.days) == ("spray", spray.date, spray.settles_days) and 14 <= settling.days <= 28
    assert settling.first_day == spray.date + timedelta(settling.days + 7)
    (alone,) = job(SPRAY).settling
    assert alone.first_day == alone.done_on + timedelta(alone.days)
    assert job(*steps[1:]).settling == ()


@pytest.mark.parametrize(("mean_c", "takes"), [
    # At its optimum, or hotter, what dies grows at its fullest: the short end of two to four weeks. Far too cold, it takes the long end.
    (20, 14), (32, 14), (-10, 28),
])
def test_how_long_it_takes_to_die_hangs_on_how_it_would_grow(mean_c, takes):
    year = season(COUCH, made_up(mean_c + 5, mean_c - 5))
    assert set(settling_days("spray.to-die", TASKS, year, (20, 5.5, False))) == {takes}


def test_halfway_to_its_growth_it_takes_three_weeks():
    """Growth potential of Woods and others: exp(-0.5 ((t - optimum) / spread)^2), a half at 1.17741 spreads below the optimum."""
    year = season(COUCH, made_up(20 - 1.17741 * 5.5 + 5, 20 - 1.17741 * 5.5 - 5))
    assert set(settling_days("spray.to-die", TASKS, year, (20, 5.5, False))) == {21}


def test_each_step_has_the_season_of_its_own_date_and_the_time_of_its_task():
    """15 July and 15 January: Canberra's coldest and hottest months (Bureau of Meteorology normals, station 070351)."""
    operations = {"core": {"setup_minutes": 40}, "mow": {"setup_minutes": 5}}
    steps = ({"id": "core", "day": 0, "task": "core"}, {"id": "mow", "day": 0, "task": "mow"}, {"id": "talk", "day": 1})
    winter, summer = date(2027, 7, 15), date(2027, 1, 15)
    found = job(*steps, place="canberra", practice=a_practice(machines=MACHINES, operations=operations), done={"core": winter, "mow": summer})
    told = {each.id: each for each in found.steps}
    assert {id: each.minutes for id, each in told.items()} == {"core": 40, "mow": 5, "talk": None}
    year = season(COUCH, "canberra")
    assert (told["core"].growth_class, told["core"].mean_temperature_c, told["core"].frost_chance) == (
        "dormant", year.climate.mean_c[195], year.weather.air_frost.chance[195],
    )
    assert (told["mow"].growth_class, told["mow"].mean_temperature_c) == (year.classes[14], year.climate.mean_c[14])
    assert told["core"].frost_chance > 0.3 > told["mow"].frost_chance and told["core"].mean_temperature_c < 8 < 18 < told["mow"].mean_temperature_c


def test_the_job_keeps_what_it_was_asked_and_what_it_leaves_out():
    grass = a_grass(operations={"core": operation("none", "It tears.")})
    found = job({"id": "core", "day": 0, "task": "core"}, {"id": "feed", "day": 3, "task": "feed"}, grass=grass)
    assert found.request == Request(100, DAY) and [each.id for each in found.steps] == ["feed"]
    assert [(each.step.id, each.reason) for each in found.left_out] == [("core", "It tears.")]
    assert found.verdict.kind == "renovation" and found.verdict.inside and found.cost is None


def test_what_is_worked_out_is_bought_carried_away_and_priced():
    """5 mm on 100 m2 are half a cubic metre: one pack of 500 L at 40, and at 60 for a cubic metre another 30."""
    products = {"granule": {"name": "Granule"}, "sand": {"name": "Sand", "pack_volume_l": 500, "price": 40, "for_tasks": ["core"]}}
    practice = a_practice(products=products, operations={"core": {"minimum_price": 100}}, spoil_price_per_m3=60)
    quantity = {"calculator": "topdressing-sand", "fill": {"depth": "5 mm"}, "buy": {"result": "volume"}, "spoil": "volume"}
    found = job({"id": "core", "day": 0, "task": "core", "quantities": [quantity]}, practice=practice)
    assert [(each.product, each.packs, each.cost) for each in found.shopping] == [("sand", 1, 40)]
    assert found.spoil.volume_m3 == pytest.approx(0.5)
    assert [(each.kind, each.name, each.amount) for each in found.cost.lines] == [
        ("work", "Core", 100), ("product", "Sand", 40), ("spoil", "Spoil carried away", 30),
    ]
    assert found.cost.total == pytest.approx(170)
