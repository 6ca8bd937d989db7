"""Which steps a grass keeps, and why it loses others. Records here are invented."""

from generator.book.records.grass import Grass
from generator.book.records.renovation import Renovation
from generator.jobs.plan_steps import stage_of, steps_for

PRACTICE = "common practice"


def operation(level, how="On this grass, so."):
    return {"level": level, "how": how, "source": PRACTICE}


def a_grass(habit="above ground", operations=None, **fields):
    figure = {"use": 30, "unit": "mm", "source": PRACTICE}
    tolerance = {"level": "low", "source": PRACTICE}
    return Grass.model_validate({
        "name": "Example grass", "botanical_name": "Exemplum invented", "names": {"AU": ["example grass"]},
        "season_group": "warm", "habit": habit, "summary": "Invented.", "mowing_height": figure,
        "nitrogen_per_year": {"use": 10, "unit": "g/m2", "source": PRACTICE},
        "thatch": {"text": "Little.", "source": PRACTICE}, "recovery": {"use": 4, "unit": "week", "source": PRACTICE},
        "tolerance": dict.fromkeys(("frost", "shade", "drought", "salt", "wear"), tolerance),
        "operations": operations or {}, "renovation": "example",
        "never": [{"text": "Never this.", "source": PRACTICE}], **fields,
    })


def a_plan(*steps, **fields):
    return Renovation.model_validate({
        "name": "Example plan", "summary": "Invented.", "window": "renovation",
        "steps": [{"title": step["id"], "say": "Do it.", "source": PRACTICE, **step} for step in steps], **fields,
    })


def kept_ids(plan):
    return [kept.step.id for kept in plan.kept]


SCARIFY = (
    {"id": "scarify", "day": 0, "task": "scarify"},
    {"id": "across", "day": 0, "task": "scarify", "only_levels": ["hard"], "after": ["scarify"]},
    {"id": "clear", "day": 0, "after": ["across"]},
)


def test_a_step_whose_task_the_grass_does_not_take_is_left_out_with_the_grass_s_own_reason():
    grass = a_grass(operations={"scarify": operation("none", "Blades tear out its only runners.")})
    plan = steps_for(a_plan(*SCARIFY), grass)
    assert kept_ids(plan) == ["clear"]
    assert [left.step.id for left in plan.left_out] == ["scarify", "across"]
    assert plan.left_out[0].reason == "Blades tear out its only runners."
    assert plan.left_out[0].operation.level == "none"


def test_what_a_grass_must_not_have_is_told_even_where_the_plan_has_no_step_for_it():
    operations = {"cut-down": operation("none", "Nothing below to come back from."), "scarify": operation("none"), "core": operation("light")}
    plan = steps_for(a_plan(*SCARIFY), a_grass(operations=operations))
    assert {task: each.how for task, each in plan.not_taken.items()} == {"cut-down": "Nothing below to come back from."}


def test_a_second_direction_is_only_for_a_grass_that_takes_it_hard():
    for level, expected in (("hard", ["scarify", "across", "clear"]), ("moderate", ["scarify", "clear"])):
        grass = a_grass(operations={"scarify": operation(level)})
        assert kept_ids(steps_for(a_plan(*SCARIFY), grass)) == expected


def test_a_gentle_step_is_left_out_of_a_grass_that_takes_more_and_says_so():
    gentle = {"id": "comb", "day": 0, "task": "scarify", "only_levels": ["light"]}
    left = steps_for(a_plan(gentle), a_grass(operations={"scarify": operation("hard", "Along and across.")})).left_out
    assert [each.reason for each in left] == ["Only for grass that takes it light; Example grass takes it hard."]


def test_what_waited_for_a_step_left_out_waits_for_what_came_before_it():
    plan = steps_for(a_plan(*SCARIFY), a_grass(operations={"scarify": operation("light")}))
    assert plan.kept[-1].after == ("scarify",)
    plan = steps_for(a_plan(*SCARIFY), a_grass(operations={"scarify": operation("none")}))
    assert plan.kept[-1].after == ()


def test_steps_that_wait_for_each_other_do_not_hang():
    circle = (
        {"id": "one", "day": 0, "task": "scarify", "after": ["two"]},
        {"id": "two", "day": 0, "task": "scarify", "after": ["one"]},
        {"id": "three", "day": 0, "after": ["two"]},
    )
    plan = steps_for(a_plan(*circle), a_grass(operations={"scarify": operation("none")}))
    assert plan.kept[0].after == ()


def test_a_step_for_another_way_of_growing_is_left_out_and_says_so():
    plan = steps_for(a_plan({"id": "cut", "day": 0, "only_habits": ["below ground", "bunch"]}), a_grass())
    assert plan.left_out[0].reason == "Only for grass that grows below ground or bunch; Example grass grows above ground."


def test_a_task_the_grass_says_nothing_of_stays_without_a_level():
    plan = steps_for(a_plan({"id": "mow", "day": 0, "task": "mow"}), a_grass())
    assert plan.kept[0].operation is None


def test_steps_come_in_order_of_day_and_keep_the_plan_s_order_within_it():
    plan = steps_for(a_plan({"id": "c", "day": 7}, {"id": "a", "day": 0}, {"id": "b", "day": 0}, {"id": "z", "day": -7}), a_grass())
    assert kept_ids(plan) == ["z", "a", "b", "c"]
    assert [kept.step.id for kept in plan.stage("day")] == ["a", "b"]


def test_stages_turn_at_renovation_day():
    assert [stage_of(day) for day in (-1, 0, 1)] == ["before", "day", "after"]
