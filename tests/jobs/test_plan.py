"""Which steps a grass keeps, and why it loses others. Records here are invented."""

import pytest

from generator.book.records.grass import Grass
from generator.book.records.renovation import Renovation
from generator.book.records.step import AddedStep
from generator.jobs.plan_steps import Adjusted, stage_of, steps_for

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


def an_added(id, day, **fields):
    return AddedStep.model_validate({"id": id, "day": day, "title": id, "say": f"So {id}.", "source": PRACTICE, **fields})


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
    assert [[kept.step.id for kept in plan.stage(stage)] for stage in ("before", "day", "after")] == [["z"], ["a", "b"], ["c"]]


def test_stages_turn_at_renovation_day():
    assert [stage_of(day) for day in (-1, 0, 1)] == ["before", "day", "after"]


CORE = ({"id": "core", "day": 0, "task": "core"}, {"id": "sand", "day": 0, "after": ["core"]})


@pytest.mark.parametrize(("own", "down", "level", "how"), [
    ("hard", 1, "moderate", "Both ways. Too little sun."), ("moderate", 1, "light", "Both ways. Too little sun."),
    ("hard", 2, "light", "Both ways. Too little sun."), ("light", 0, "light", "Both ways. Too little sun."),
])
def test_a_softened_operation_is_so_many_levels_gentler_and_says_why(own, down, level, how):
    grass = a_grass(operations={"core": operation(own, "Both ways."), "mow": operation("hard", "Often.")})
    plan = steps_for(a_plan(*CORE, {"id": "mow", "day": 7, "task": "mow"}), grass, Adjusted(softer={"core": (down, "Too little sun.")}))
    assert (plan.kept[0].operation.level, plan.kept[0].operation.how) == (level, how)
    # The others, and a step without a task, stay as they are.
    assert [each.operation and each.operation.how for each in plan.kept[1:]] == [None, "Often."]
    assert plan.kept[2].operation.level == "hard"


@pytest.mark.parametrize(("own", "down"), [("hard", 3), ("moderate", 2), ("light", 1), ("light", 5)])
def test_an_operation_softened_to_nothing_is_left_out_for_that_reason_alone(own, down):
    plan = steps_for(a_plan(*CORE), a_grass(operations={"core": operation(own, "Both ways.")}), Adjusted(softer={"core": (down, "Too little sun.")}))
    assert [(left.step.id, left.reason, left.operation.level) for left in plan.left_out] == [("core", "Too little sun.", "none")]
    assert kept_ids(plan) == ["sand"] and plan.kept[0].after == () and plan.not_taken == {}


def test_what_a_grass_never_takes_keeps_its_own_reason_however_it_is_softened():
    plan = steps_for(a_plan(*CORE), a_grass(operations={"core": operation("none", "It tears.")}), Adjusted(softer={"core": (1, "Too little sun.")}))
    assert plan.left_out[0].reason == "It tears."


def test_a_step_not_needed_here_is_left_out_by_its_id_or_its_task():
    grass = a_grass(operations={"core": operation("hard")})
    steps = (*CORE, {"id": "core-again", "day": 90, "task": "core"}, {"id": "talk", "day": 1})
    by_id = steps_for(a_plan(*steps), grass, Adjusted(without={"core": "Not needed."}))
    assert [(left.step.id, left.reason) for left in by_id.left_out] == [("core", "Not needed.")]
    by_task = steps_for(a_plan(*steps), grass, Adjusted(tasks_without={"core": "Too wet."}))
    assert [(left.step.id, left.reason) for left in by_task.left_out] == [("core", "Too wet."), ("core-again", "Too wet.")]
    assert by_task.left_out[0].operation.level == "hard" and kept_ids(by_task) == ["sand", "talk"]
    # The grass's own reason comes before ours, and a step's before its task's.
    never = steps_for(a_plan(*steps), a_grass(operations={"core": operation("none", "It tears.")}), Adjusted(without={"core": "Not needed."}))
    assert never.left_out[0].reason == "It tears."
    both = steps_for(a_plan(*steps), grass, Adjusted(without={"core": "Not needed."}, tasks_without={"core": "Too wet."}))
    assert [left.reason for left in both.left_out] == ["Not needed.", "Too wet."]


def test_a_step_that_an_inspection_adds_stands_among_the_plan_s():
    added = (an_added("lime", -3, task="lime"), an_added("spike", 5, task="core", only_levels=["light"]))
    plan = steps_for(a_plan(*CORE), a_grass(operations={"core": operation("hard"), "lime": operation("none", "Never.")}), Adjusted(added=added[:1]))
    assert [left.step.id for left in plan.left_out] == ["lime"] and plan.not_taken == {}
    plan = steps_for(a_plan(*CORE), a_grass(operations={"core": operation("light"), "lime": operation("light")}), Adjusted(added=added))
    assert kept_ids(plan) == ["lime", "core", "sand", "spike"] and [each.step.id for each in plan.kept if each.added] == ["lime", "spike"]


def test_a_step_that_is_added_comes_before_what_it_is_for_and_moves_with_it():
    """Where the step that it stands in for is left out, what waited for that waits for it."""
    agent = an_added("agent", 0, task="wetting-agent", before=["lime", "topdress"])
    plan = steps_for(a_plan(CORE[0], {**CORE[1], "task": "topdress"}), a_grass(), Adjusted(added=(agent,)))
    assert [(each.step.id, each.after) for each in plan.kept] == [("core", ()), ("agent", ("core",)), ("sand", ("core", "agent"))]
    fork = an_added("fork", 0, task="solid-tine", before=["core"])
    plan = steps_for(a_plan(*CORE), a_grass(), Adjusted(added=(fork,), tasks_without={"core": "Too narrow."}))
    assert [(each.step.id, each.after) for each in plan.kept] == [("fork", ()), ("sand", ("fork",))]


def test_what_the_plan_does_that_day_anyway_is_no_second_step():
    more = an_added("more", 0, task="core", before=["topdress"]), an_added("also", -4, part_of=["sand"])
    plan = steps_for(a_plan(*CORE), a_grass(), Adjusted(added=more))
    assert [(each.step.id, each.step.say, each.added) for each in plan.kept] == [("core", "Do it. So more.", False), ("sand", "Do it. So also.", False)]
    # On another day, by another's hands, or with the plan's own left out, it is a step.
    for other in (an_added("more", 3, task="core"), an_added("more", 0, task="core", who="client")):
        assert kept_ids(steps_for(a_plan(*CORE), a_grass(), Adjusted(added=(other,)))) == ["core", "sand", "more"]
    plan = steps_for(a_plan(*CORE), a_grass(), Adjusted(added=more[1:], without={"sand": "Not needed."}))
    assert kept_ids(plan) == ["also", "core"]


@pytest.mark.parametrize(("levels", "own", "reason"), [
    (["light", "moderate"], "hard", "Only for grass that takes it light or moderate; Example grass takes it hard."),
    # A grass that takes it more gently than the step asks says how it takes it.
    (["hard"], "light", "Once, shallow."), (["moderate", "hard"], "light", "Once, shallow."),
    (["light", "hard"], "moderate", "Once, shallow."), (["hard"], "hard", None), (["light"], "none", "Once, shallow."),
])
def test_a_step_for_some_levels_says_why_it_is_left_out(levels, own, reason):
    step = {"id": "across", "day": 0, "task": "scarify", "only_levels": levels}
    plan = steps_for(a_plan(step), a_grass(operations={"scarify": operation(own, "Once, shallow.")}))
    assert [left.reason for left in plan.left_out] == ([] if reason is None else [reason])


def test_a_step_for_the_way_this_grass_grows_is_kept():
    assert kept_ids(steps_for(a_plan({"id": "cut", "day": 0, "only_habits": ["above ground"]}), a_grass())) == ["cut"]


def test_what_waited_for_several_steps_left_out_waits_for_all_that_came_before_them_once():
    steps = (
        {"id": "mark", "day": 0}, {"id": "mow", "day": 0}, {"id": "scarify", "day": 0, "task": "scarify", "after": ["mark", "mow"]},
        {"id": "across", "day": 0, "task": "scarify", "after": ["scarify", "mark"]}, {"id": "clear", "day": 0, "after": ["across", "mow"]},
    )
    plan = steps_for(a_plan(*steps), a_grass(operations={"scarify": operation("none")}))
    assert plan.kept[-1].step.id == "clear" and plan.kept[-1].after == ("mark", "mow")
