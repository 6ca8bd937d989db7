"""Which steps a grass keeps, why it loses others, and what fills in the calculators. Records here are invented."""

import pytest

from generator.model.grass import Grass
from generator.model.practice import Practice
from generator.model.renovation import Renovation
from generator.turf.plan import BindError, Missing, bound_value, stage_of, steps_for

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


def a_practice():
    return Practice.model_validate({
        "name": "Example practice", "invented": True, "about": "Invented.", "home_place": "here", "home_grass": "example",
        "feed": "granule",
        "products": {
            "granule": {"name": "Granule", "nitrogen_percent": 21, "pack_mass_kg": 20, "full_rate_kg_per_100_m2": 3},
            "sand": {"name": "Sand", "pack_mass_kg": 1000},
        },
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


def test_a_figure_of_the_grass_fills_in_with_its_unit():
    grass = a_grass(seed_rate={"low": 25, "high": 35, "unit": "g/m2", "source": PRACTICE})
    bound = bound_value("grass.seed_rate", grass, a_practice())
    # The middle of 25 to 35.
    assert (bound.value, bound.unit, bound.where_from) == (30, "g/m2", "from this grass's seed rate")
    assert bound.typed == "30 g/m2"


def test_an_end_of_a_range_fills_in_with_the_range_s_unit():
    grass = a_grass(nitrogen_per_year={"low": 5, "high": 15, "use": 10, "unit": "g/m2", "source": PRACTICE})
    ends = [bound_value(f"grass.nitrogen_per_year.{end}", grass, a_practice()) for end in ("low", "high")]
    assert [end.typed for end in ends] == ["5 g/m2", "15 g/m2"]
    with pytest.raises(Missing, match="'grass.nitrogen_per_year.low' is not given"):
        bound_value("grass.nitrogen_per_year.low", a_grass(), a_practice())
    with pytest.raises(BindError, match="'grass.name.low' names no field"):
        bound_value("grass.name.low", a_grass(), a_practice())


def test_the_practice_s_feed_fills_in_from_its_bag():
    bound = bound_value("practice.feed.nitrogen_percent", a_grass(), a_practice())
    assert (bound.typed, bound.where_from) == ("21 %", "from Granule, nitrogen")
    assert bound_value("practice.feed.full_rate_kg_per_100_m2", a_grass(), a_practice()).typed == "3 kg/100 m2"
    assert bound_value("practice.products.sand.pack_mass_kg", a_grass(), a_practice()).typed == "1000 kg"


def test_a_plan_s_own_figure_fills_in():
    figures = {"feed-later": {"low": 2.1, "high": 3.15, "use": 2.1, "unit": "g/m2", "source": PRACTICE}}
    bound = bound_value("renovation.feed-later", a_grass(), a_practice(), a_plan({"id": "a", "day": 0}, figures=figures))
    assert (bound.typed, bound.where_from) == ("2.1 g/m2", "set by this plan")


def test_plain_values_keep_their_unit_and_may_have_none():
    assert bound_value("5 mm", a_grass(), a_practice())[:2] == (5, "mm")
    assert bound_value("28 %", a_grass(), a_practice())[:2] == (28, "%")
    assert bound_value("2", a_grass(), a_practice())[:2] == (2, "1")


def test_the_first_that_is_given_counts():
    expression = "grass.topdressing_depth or 5 mm"
    assert bound_value(expression, a_grass(), a_practice()).typed == "5 mm"
    grass = a_grass(topdressing_depth={"use": 6, "unit": "mm", "source": PRACTICE})
    assert bound_value(expression, grass, a_practice()).typed == "6 mm"


def test_a_figure_this_grass_leaves_out_is_missing_and_asks_for_it():
    with pytest.raises(Missing) as problem:
        bound_value("grass.overseed_rate", a_grass(), a_practice())
    assert str(problem.value) == (
        "'grass.overseed_rate' is not given; give it, or add a value to fall back on, as 'grass.seed_rate or 20 g/m2'"
    )


@pytest.mark.parametrize(
    ("expression", "what", "instead"),
    [
        ("grass.sed_rate", "'grass.sed_rate' names no field", "did you mean 'seed_rate'?"),
        ("grass.summary", "'grass.summary' is not a quantity", "name a field that holds a figure, such as 'grass.seed_rate'"),
        ("gras.seed_rate", "'gras.seed_rate' is neither a value nor a field",
         "write a value with its unit, as '5 mm', or a field, as 'grass.seed_rate'"),
        ("practice.feed.nitrogen", "'practice.feed.nitrogen' names no field", "did you mean 'nitrogen_percent'?"),
        ("practice.products.sandd.pack_mass_kg", "product 'sandd' is not in practice.yml", "did you mean 'sand'?"),
        ("renovation.feed-later", "'renovation.feed-later' is not among this plan's figures",
         "give the plan `figures`, or write a value"),
    ],
)
def test_a_fill_that_names_nothing_says_what_would_be_right(expression, what, instead):
    with pytest.raises(BindError) as problem:
        bound_value(expression, a_grass(), a_practice())
    assert (problem.value.what, problem.value.instead) == (what, instead)


def test_an_unknown_unit_in_a_value_is_refused():
    with pytest.raises(BindError):
        bound_value("5 furlongs", a_grass(), a_practice())
