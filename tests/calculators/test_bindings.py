"""What fills in a calculator: the value, its unit, where it comes from, and what is wrong. Records here are invented, but for the last ones."""

import pytest

from generator.book.records.practice import Practice
from generator.book.records.step import SharedStep
from generator.book.records.task import Task
from generator.calculators.bindings import bound_value, filled
from generator.calculators.chosen import Chosen
from generator.calculators.filled_value import BindError, Missing, Unchosen
from generator.calculators.season_fields import WEEK
from generator.files.season_json import as_json
from tests.jobs.test_plan import PRACTICE, a_grass, a_plan
from tests.season.shipped import COUCH, groups, places, season

OCTOBER_12 = 284  # 31 + 28 + 31 + 30 + 31 + 30 + 31 + 31 + 30 days of nine months, and eleven more, from day 0.


def a_practice():
    return Practice.model_validate({
        "name": "Example practice", "invented": True, "about": "Invented.", "home_place": "here", "home_grass": "example",
        "feed": "granule", "hourly_price": 88, "tax_percent": 10, "spoil_price_per_m3": 60,
        "machines": {"corer": {"name": "Corer", "working_width_m": 0.5, "speed_km_per_h": 3, "hire_price_per_day": 160}},
        "operations": {"core": {"price_per_100_m2": 75, "minimum_price": 190, "setup_minutes": 40}, "mow": {"price_per_100_m2": 18}},
        "products": {
            "granule": {"name": "Granule", "nitrogen_percent": 21, "pack_mass_kg": 20, "full_rate_kg_per_100_m2": 3},
            "sand": {"name": "Sand", "pack_mass_kg": 1000},
        },
    })


def bound(expression, **chosen):
    return bound_value(expression, Chosen(**{"grass": a_grass(), "practice": a_practice(), **chosen}))


def test_a_figure_of_the_grass_fills_in_with_its_unit():
    grass = a_grass(seed_rate={"low": 25, "high": 35, "unit": "g/m2", "source": PRACTICE})
    found = bound("grass.seed_rate", grass=grass)
    # The middle of 25 to 35.
    assert (found.value, found.unit, found.where_from) == (30, "g/m2", "from this grass's seed rate")
    assert found.typed == "30 g/m2"


def test_an_end_of_a_range_fills_in_with_the_range_s_unit():
    grass = a_grass(nitrogen_per_year={"low": 5, "high": 15, "use": 10, "unit": "g/m2", "source": PRACTICE})
    ends = [bound(f"grass.nitrogen_per_year.{end}", grass=grass) for end in ("low", "high")]
    assert [end.typed for end in ends] == ["5 g/m2", "15 g/m2"]
    with pytest.raises(Missing, match="'grass.nitrogen_per_year.low' is not given"):
        bound("grass.nitrogen_per_year.low")
    with pytest.raises(BindError, match="'grass.name.low' names no field"):
        bound("grass.name.low")


def test_the_practice_s_feed_fills_in_from_its_bag():
    found = bound("practice.feed.nitrogen_percent")
    assert (found.typed, found.where_from) == ("21 %", "from Granule, nitrogen")
    assert bound("practice.feed.full_rate_kg_per_100_m2").typed == "3 kg/100 m2"
    assert bound("practice.products.sand.pack_mass_kg").typed == "1000 kg"


def test_a_plan_s_own_figure_fills_in():
    figures = {"feed-later": {"low": 2.1, "high": 3.15, "use": 2.1, "unit": "g/m2", "source": PRACTICE}}
    found = bound("renovation.feed-later", renovation=a_plan({"id": "a", "day": 0}, figures=figures))
    assert (found.typed, found.where_from) == ("2.1 g/m2", "set by this plan")


def test_plain_values_keep_their_unit_and_may_have_none():
    assert bound("5 mm")[:2] == (5, "mm")
    assert bound("28 %")[:2] == (28, "%")
    assert bound("2")[:2] == (2, "1")


def test_the_first_that_is_given_counts():
    expression = "grass.topdressing_depth or 5 mm"
    assert bound(expression).typed == "5 mm"
    grass = a_grass(topdressing_depth={"use": 6, "unit": "mm", "source": PRACTICE})
    assert bound(expression, grass=grass).typed == "6 mm"


def test_a_figure_this_grass_leaves_out_is_missing_and_asks_for_it():
    with pytest.raises(Missing) as problem:
        bound("grass.overseed_rate")
    assert str(problem.value) == (
        "'grass.overseed_rate' is not given; give it, or add a value to fall back on, such as 'grass.seed_rate or 20 g/m2'"
    )


@pytest.mark.parametrize(
    ("expression", "what", "instead"),
    [
        ("grass.sed_rate", "'grass.sed_rate' names no field", "did you mean 'seed_rate'?"),
        ("grass.summary", "'grass.summary' is not a quantity", "name a field that holds a figure, such as 'grass.seed_rate'"),
        ("gras.seed_rate", "'gras.seed_rate' is neither a value nor a field",
         "write a value with its unit, such as '5 mm', or a field, such as 'grass.seed_rate'"),
        ("practice.feed.nitrogen", "'practice.feed.nitrogen' names no field", "did you mean 'nitrogen_percent'?"),
        ("practice.products.sandd.pack_mass_kg", "product 'sandd' is not in practice.yml", "did you mean 'sand'?"),
        ("renovation.feed-later", "'renovation.feed-later' is not among this plan's figures",
         "give the plan `figures`, or write a value"),
    ],
)
def test_a_fill_that_names_nothing_says_what_would_be_right(expression, what, instead):
    with pytest.raises(BindError) as problem:
        bound(expression)
    assert (problem.value.what, problem.value.instead) == (what, instead)


def test_an_unknown_unit_in_a_value_is_refused():
    with pytest.raises(BindError):
        bound("5 furlongs")


@pytest.mark.parametrize(
    ("expression", "waits_for", "unit"),
    [
        ("place.latitude", "a place", "deg"), ("week.rain", "a place and a date", "mm"), ("week.day_of_year", "a date", "1"),
        ("practice.product.price", "a product", "1"), ("practice.product.pack_mass_kg", "a product", "kg"),
    ],
)
def test_what_nobody_chose_is_waited_for_and_its_unit_is_known(expression, waits_for, unit):
    with pytest.raises(Unchosen) as problem:
        bound(expression)
    assert problem.value.what == f"'{expression}' needs {waits_for}" and problem.value.unit == unit


def test_a_choice_may_still_give_what_this_grass_leaves_out():
    with pytest.raises(Unchosen):
        bound("grass.overseed_rate or practice.product.full_rate_kg_per_100_m2")


def test_a_product_that_is_chosen_stands_in_for_the_practice_s_feed():
    found = bound("practice.feed.pack_mass_kg", product="sand")
    assert (found.typed, found.where_from) == ("1000 kg", "from Sand, pack mass")
    assert bound("practice.product.pack_mass_kg", product="sand") == found
    with pytest.raises(Missing, match="is not given"):  # never the feed's own nitrogen beside sand's bag
        bound("practice.feed.nitrogen_percent", product="sand")


def test_a_machine_that_is_chosen_fills_in_how_it_works_and_what_it_costs():
    found = bound("practice.machine.working_width_m", machine="corer")
    assert (found.typed, found.where_from) == ("0.5 m", "from Corer, working width")
    assert bound("practice.machine.hire_price_per_day", machine="corer")[:2] == (160, "1")
    assert bound("practice.machines.corer.speed_km_per_h").typed == "3 km/h"
    with pytest.raises(BindError, match="machine 'cores' is not in practice.yml; did you mean 'corer'"):
        bound("practice.machines.cores.speed_km_per_h")


def test_the_practice_s_own_prices_fill_in_as_plain_numbers():
    found = bound("practice.hourly_price")
    assert found[:] == (88, "1", "from the practice's hourly price")
    assert bound("practice.tax_percent").typed == "10 %"
    # The name ends in m3, but a price for a cubic metre is no volume.
    assert bound("practice.spoil_price_per_m3")[:2] == (60, "1")


def test_the_season_group_fills_in_and_the_grass_s_own_figure_comes_first():
    found = bound("group.growth_optimum", groups=groups())
    assert (found.typed, found.where_from) == (f"{groups().warm.growth_optimum.default:g} °C", "from the warm-season group's growth optimum")
    own = a_grass(season={"optimum": {"use": 25, "unit": "°C", "source": PRACTICE}})
    found = bound("group.growth_optimum", grass=own, groups=groups())
    assert (found.typed, found.where_from) == ("25 °C", "from this grass's growth optimum")
    with pytest.raises(BindError, match="not a quantity"):
        bound("group.full_growth_above_optimum", groups=groups())


def test_a_place_fills_in_with_the_unit_of_its_field():
    oxford = places()["oxford"]
    found = bound("place.latitude", place=oxford)
    assert (found.value, found.unit, found.where_from) == (oxford.latitude_deg, "deg", "from Oxford, latitude")
    assert bound("place.elevation", place=oxford).unit == "m"
    with pytest.raises(Missing, match="is not given"):
        bound("place.elevation", place=oxford.model_copy(update={"elevation_m": None}))


def in_sydney(expression, day=OCTOBER_12):
    return bound(expression, place=places()["sydney"], year=season(COUCH, "sydney"), day=day)


def test_the_week_of_a_day_fills_in_what_the_season_says_of_it():
    # 8 to 14 October is week 41: forty weeks of seven days go before 8 October, day number 280.
    week = as_json(season(COUCH, "sydney"))["weeks"][40]
    assert week["from"] == "10-08"
    reference, rain = in_sydney("week.reference_evapotranspiration"), in_sydney("week.rain")
    assert (reference.unit, reference.where_from) == ("mm/day", "from Sydney, week of 12 October")
    assert 7 * reference.value == pytest.approx(week["reference_evapotranspiration_mm"], abs=0.05)
    assert (rain.unit, in_sydney("week.days").typed) == ("mm", "7 day")
    assert rain.value == pytest.approx(week["rain_mm"], abs=0.05)
    # Day of the year 285: 1 January is 1.
    assert in_sydney("week.day_of_year")[:] == (285, "1", "from the date, 12 October")


def test_weather_needs_no_grass_and_growth_does():
    chosen = Chosen(place=places()["sydney"], year=season(COUCH, "sydney"), day=OCTOBER_12)
    assert bound_value("week.rain", chosen) == in_sydney("week.rain")
    with pytest.raises(Unchosen, match="needs a grass"):
        bound_value("week.growth_potential", chosen)


def test_the_last_week_of_the_year_counts_its_eight_days():
    assert in_sydney("week.days", day=364).typed == "8 day"
    week = as_json(season(COUCH, "sydney"))["weeks"][51]
    assert 8 * in_sydney("week.reference_evapotranspiration", day=364).value == pytest.approx(week["reference_evapotranspiration_mm"], abs=0.05)


def test_water_that_is_bound_makes_the_season_s_own_need():
    """Evapotranspiration, coefficient, rain and its share, each filled in, come to what the calendar says."""
    used = in_sydney("week.reference_evapotranspiration").value * 7 * COUCH.crop_coefficient
    counted = in_sydney("week.rain").value * in_sydney("week.rain_share").value / 100
    assert used - counted == pytest.approx(in_sydney("week.water_need").value, abs=0.05)


@pytest.mark.parametrize(("name", "asked"), WEEK.items(), ids=list(WEEK))
def test_each_quantity_of_a_week_has_the_unit_it_says(name, asked):
    found = in_sydney(f"week.{name}")
    assert found.unit == asked.unit and found.value > 0


def between(expression, first, last):
    return bound(expression, place=places()["sydney"], year=season(COUCH, "sydney"), day=first, until=last)


def test_degree_days_between_two_dates_are_those_of_the_season():
    # Week 31 ends on day number 216 (5 August), week 40 on 279 (7 October).
    weeks = as_json(season(COUCH, "sydney"))["weeks"]
    first, last = between("span.degree_days_at_first", 216, 279), between("span.degree_days_at_last", 216, 279)
    assert first.value == pytest.approx(weeks[30]["growing_degree_days_c"], abs=0.5)
    assert last.value == pytest.approx(weeks[39]["growing_degree_days_c"], abs=0.5)
    assert last.where_from == "from Sydney, usual count over 10 °C to 7 October"
    assert between("span.days", 216, 279)[:] == (63, "day", "from the two dates")
    assert between("span.days", 360, 5).value == 10  # over New Year
    climate = season(COUCH, "sydney").climate
    whole = sum(max(0, (high + low) / 2 - 10) for high, low in zip(climate.maximum_c, climate.minimum_c, strict=True))
    assert between("span.degree_days_of_year", 216, 279).value == pytest.approx(whole)
    with pytest.raises(Unchosen, match="needs two dates"):
        between("span.days", 216, None)
    with pytest.raises(BindError, match="did you mean 'degree_days_at_last'"):
        between("span.degree_days_at_lst", 216, 279)


STEPS = {
    id: SharedStep.model_validate({"title": "Keep it damp", "say": "Water.", "source": PRACTICE, **more})
    for id, more in {"damp": {"watering": {"depth": "4 mm"}}, "rake": {}}.items()
}


def test_the_depth_of_a_step_s_watering_fills_in_and_names_the_step():
    assert bound("step.damp.depth", steps=STEPS)[:] == (4, "mm", "from our step: Keep it damp")
    with pytest.raises(BindError, match="step 'dam' waters nothing or is not in data/steps; did you mean 'damp'"):
        bound("step.dam.depth", steps=STEPS)
    with pytest.raises(BindError, match="step 'rake' waters nothing"):
        bound("step.rake.depth", steps=STEPS)
    with pytest.raises(BindError, match="names no field of a step"):
        bound("step.damp.title", steps=STEPS)


def test_a_task_s_figures_fill_in_on_its_own_page_only():
    figure = {"use": 10, "unit": "mm", "source": PRACTICE}
    step = {"text": "Do.", "source": PRACTICE}
    task = Task.model_validate({"name": "Water", "summary": "Water.", "steps": [step], "figures": {"one-watering": figure}})
    assert bound("task.one-watering", task=task)[:] == (10, "mm", "from this task's figures, one watering")
    with pytest.raises(BindError, match="did you mean 'one-watering'"):
        bound("task.one-waterin", task=task)
    with pytest.raises(BindError, match="belongs on a task's page"):
        bound("task.one-watering")


def test_a_plain_value_says_who_set_it():
    assert bound("8 mm", told_by="this sheet").where_from == "set by this sheet"


@pytest.mark.parametrize(
    ("expression", "what", "instead"),
    [
        ("place.lattitude", "'place.lattitude' names no field of a place", "did you mean 'latitude'?"),
        ("place.name", "'place.name' names no field of a place", "write 'place.latitude'"),
        ("week.rian", "'week.rian' is not a figure of a week", "did you mean 'rain'?"),
        ("group.crop_coeficient", "'group.crop_coeficient' names no field", "did you mean 'crop_coefficient'?"),
        ("practice.product.prise", "'practice.product.prise' names no field", "did you mean 'price'?"),
        ("practice.about", "'practice.about' is not a quantity", "name a field that holds a figure, such as 'grass.seed_rate'"),
        ("practice.products.sand", "'practice.products.sand' names no field of products",
         "write 'practice.feed.nitrogen_percent' or 'practice.products.NAME.pack_mass_kg'"),
    ],
)
def test_a_field_that_cannot_be_is_told_even_before_anything_is_chosen(expression, what, instead):
    with pytest.raises(BindError) as problem:
        bound(expression)
    assert (problem.value.what, problem.value.instead) == (what, instead)


def test_what_is_not_given_is_left_out_of_what_is_filled_in():
    expressions = {"rate": "grass.overseed_rate", "latitude": "place.latitude", "nitrogen": "practice.feed.nitrogen_percent"}
    assert list(filled(expressions, Chosen(grass=a_grass(), practice=a_practice()))) == ["nitrogen"]


def test_an_operation_that_is_chosen_fills_in_what_is_asked_for_it():
    found = bound("practice.operation.price_per_100_m2", operation="core")
    assert found == (75, "1", "from our prices for core, price per 100 m2")
    assert bound("practice.operation.setup_minutes", operation="core").typed == "40 min"
    assert bound("practice.operations.mow.price_per_100_m2").value == 18
    with pytest.raises(Missing, match="'practice.operation.minimum_price' is not given"):
        bound("practice.operation.minimum_price", operation="mow")
    with pytest.raises(Unchosen, match="needs an operation"):
        bound("practice.operation.minimum_price")
    with pytest.raises(BindError, match="operation 'cor' is not in practice.yml; did you mean 'core'"):
        bound("practice.operations.cor.minimum_price")
