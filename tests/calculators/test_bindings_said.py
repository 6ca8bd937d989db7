"""What is wrong with a field that fills in a calculator, in the very words its author reads. Records here are invented."""

import pytest

from generator.book.records.step import SharedStep
from generator.book.records.task import Task
from generator.calculators.bindings import bindings, bound_value, filled, practice_filled
from generator.calculators.chosen import Chosen, chosen_from
from generator.calculators.filled_value import BindError, Bound, Missing, Unchosen, unit_of_field, words_of
from tests.calculators.test_bindings import a_practice
from tests.jobs.test_plan import PRACTICE, a_grass, a_plan
from tests.our_book import book, seasons
from tests.season.shipped import COUCH, groups, made_up, places, season

FIGURE = {"use": 10, "unit": "mm", "source": PRACTICE}


def refused(expression, **chosen):
    with pytest.raises(BindError) as problem:
        bound_value(expression, Chosen(**chosen))
    error = problem.value
    return type(error), error.what, error.instead, getattr(error, "unit", None)


@pytest.mark.parametrize(("expression", "given", "what", "instead", "unit"), [
    ("grass.seed_rate", (), "'grass.seed_rate' needs a grass", "choose a grass", None),
    ("grass.nitrogen_per_year.high", ("practice",), "'grass.nitrogen_per_year.high' needs a grass", "choose a grass", None),
    ("group.crop_coefficient", (), "'group.crop_coefficient' needs a grass", "choose a grass", None),
    ("group.growth_optimum", ("groups",), "'group.growth_optimum' needs a grass", "choose a grass", None),
    ("group.crop_coefficient", ("grass",), "'group.crop_coefficient' needs a grass", "choose a grass", None),
    ("place.latitude", ("grass",), "'place.latitude' needs a place", "choose a place", "deg"),
    ("place.elevation", (), "'place.elevation' needs a place", "choose a place", "m"),
    ("week.day_of_year", ("place", "year"), "'week.day_of_year' needs a date", "choose a date", "1"),
    ("week.growth_potential", ("place", "year", "day"), "'week.growth_potential' needs a grass", "choose a grass", "1"),
    ("week.rain", ("grass",), "'week.rain' needs a place and a date", "choose both", "mm"),
    ("week.rain", ("place", "year"), "'week.rain' needs a place and a date", "choose both", "mm"),
    ("week.rain", ("day", "year"), "'week.rain' needs a place and a date", "choose both", "mm"),
    ("week.mean_temperature", ("place", "day"), "'week.mean_temperature' needs a place and a date", "choose both", "°C"),
    ("span.days", ("day",), "'span.days' needs two dates", "choose both", "day"),
    ("span.days", ("until",), "'span.days' needs two dates", "choose both", "day"),
    *(
        (f"span.{name}", given, f"'span.{name}' needs a grass, a place and two dates", "choose them", "°C day")
        for name, given in (
            ("degree_days_at_first", ("place", "year", "day")), ("degree_days_at_first", ("grass", "year", "day")),
            ("degree_days_at_first", ("grass", "place", "day")), ("degree_days_at_first", ("grass", "place", "year", "until")),
            ("degree_days_at_last", ("grass", "place", "year", "day")), ("degree_days_of_year", ("grass",)),
        )
    ),
    ("practice.hourly_price", ("grass",), "'practice.hourly_price' needs a practice", "give the book a practice", "1"),
    ("practice.tax_percent", (), "'practice.tax_percent' needs a practice", "give the book a practice", "%"),
    ("practice.feed.pack_mass_kg", (), "'practice.feed.pack_mass_kg' needs a practice", "give the book a practice", "kg"),
    ("practice.product.pack_mass_kg", ("practice",), "'practice.product.pack_mass_kg' needs a product", "choose a product", "kg"),
    ("practice.machine.speed_km_per_h", ("practice",), "'practice.machine.speed_km_per_h' needs a machine", "choose a machine", "km/h"),
    ("practice.operation.setup_minutes", ("practice",), "'practice.operation.setup_minutes' needs an operation", "choose an operation", "min"),
    ("step.damp.depth", ("grass",), "'step.damp.depth' needs the book's steps", "give the book steps", "mm"),
])
def test_what_nobody_chose_is_asked_for(expression, given, what, instead, unit):
    everything = {
        "grass": a_grass(), "groups": groups(), "practice": a_practice(), "place": places()["sydney"], "year": season(COUCH, "sydney"),
        "day": 284, "until": 290,
    }
    assert refused(expression, **{name: everything[name] for name in given}) == (Unchosen, what, instead, unit)


FALL_BACK = "give it, or add a value to fall back on, such as 'grass.seed_rate or 20 g/m2'"


@pytest.mark.parametrize(("expression", "unit"), [
    ("grass.seed_rate", None), ("practice.minimum_charge", "1"), ("practice.products.sand.full_rate_kg_per_100_m2", "kg/100 m2"),
    ("practice.machines.corer.overlap_percent", "%"), ("practice.operations.mow.setup_minutes", "min"), ("place.elevation", "m"),
])
def test_what_is_left_out_is_asked_for_with_its_unit(expression, unit):
    place = places()["sydney"].model_copy(update={"elevation_m": None})
    assert refused(expression, grass=a_grass(), practice=a_practice(), place=place) == (Missing, f"'{expression}' is not given", FALL_BACK, unit)


SEE_SCHEMA = "see the fields of its kind in data/schema"
WRITE_VALUE = "write a value with its unit, such as '5 mm', or a field, such as 'grass.seed_rate'"
NAME_FIGURE = "name a field that holds a figure, such as 'grass.seed_rate'"


@pytest.mark.parametrize(("expression", "what", "instead"), [
    ("grass", "'grass' is neither a value nor a field", WRITE_VALUE),
    ("grass.", "'grass.' is neither a value nor a field", WRITE_VALUE),
    ("sand.depth", "'sand.depth' is neither a value nor a field", WRITE_VALUE),
    ("5  mm", "'5  mm' is neither a value nor a field", WRITE_VALUE),
    ("-5 mm", "'-5 mm' is neither a value nor a field", WRITE_VALUE),
    ("grass.xyzzy", "'grass.xyzzy' names no field", SEE_SCHEMA),
    ("grass.name.first", "'grass.name.first' names no field", SEE_SCHEMA),
    ("grass.season.xyzzy", "'grass.season.xyzzy' names no field", SEE_SCHEMA),
    ("grass.name", "'grass.name' is not a quantity", NAME_FIGURE),
    ("practice.invented", "'practice.invented' is not a quantity", NAME_FIGURE),
    ("practice.currency", "'practice.currency' is not a quantity", NAME_FIGURE),
    ("practice.operations.core.charged_in_jobs", "'practice.operations.core.charged_in_jobs' is not a quantity", NAME_FIGURE),
    ("group.xyzzy", "'group.xyzzy' names no field", SEE_SCHEMA),
    ("place.xyzzy", "'place.xyzzy' names no field of a place", "write 'place.latitude'"),
    ("week.xyzzy", "'week.xyzzy' is not a figure of a week",
     "a week has mean_temperature, minimum_temperature, maximum_temperature, soil_temperature, growth_potential, leaf_growth, "
     "reference_evapotranspiration, rain, rain_share, water_need, days, day_of_year"),
    ("week.day_of_yer", "'week.day_of_yer' is not a figure of a week", "did you mean 'day_of_year'?"),
    ("span.xyzzy", "'span.xyzzy' is not a figure of a run of days",
     "it has degree_days_at_first, degree_days_at_last, degree_days_of_year, days"),
    ("practice.xyzzy", "'practice.xyzzy' names no field", "write 'practice.feed.nitrogen_percent'"),
    ("practice.tax_percnt", "'practice.tax_percnt' names no field", "did you mean 'tax_percent'?"),
    ("practice.machin.speed_km_per_h", "'practice.machin.speed_km_per_h' names no field", "did you mean 'machine'?"),
    ("practice.tax_percent.low", "'practice.tax_percent.low' names no field", "did you mean 'tax_percent'?"),
    ("practice.feed", "'practice.feed' names no field of products",
     "write 'practice.feed.nitrogen_percent' or 'practice.products.NAME.pack_mass_kg'"),
    ("practice.machines.corer", "'practice.machines.corer' names no field of machines",
     "write 'practice.machine.speed_km_per_h' or 'practice.machines.NAME.speed_km_per_h'"),
    ("practice.operation.core.minimum_price", "'practice.operation.core.minimum_price' names no field of operations",
     "write 'practice.operation.minimum_price' or 'practice.operations.TASK.minimum_price'"),
    ("practice.machine.xyzzy", "'practice.machine.xyzzy' names no field", SEE_SCHEMA),
    ("practice.products.xyzzy.price", "product 'xyzzy' is not in practice.yml", "the products are granule, sand"),
    ("practice.machines.xyzzy.speed_km_per_h", "machine 'xyzzy' is not in practice.yml", "the machines are corer"),
    ("practice.operations.xyzzy.minimum_price", "operation 'xyzzy' is not in practice.yml", "the operations are core, mow"),
    ("step.damp", "'step.damp' names no field of a step", "write 'step.NAME.depth', for the depth of one of its waterings"),
    ("step.damp.xyzzy", "'step.damp.xyzzy' names no field of a step", "write 'step.NAME.depth', for the depth of one of its waterings"),
    ("step.damp.watering.depth", "'step.damp.watering.depth' names no field of a step",
     "write 'step.NAME.depth', for the depth of one of its waterings"),
    ("step.xyzzy.depth", "step 'xyzzy' waters nothing or is not in data/steps", "the steps that water are damp, soak"),
    ("task.water", "'task.water' belongs on a task's page", "write a value, or a field such as 'grass.seed_rate'"),
    ("renovation.xyzzy", "'renovation.xyzzy' is not among this plan's figures", "give the plan `figures`, or write a value"),
])
def test_what_names_nothing_says_what_would_be_right(expression, what, instead):
    steps = {
        id: SharedStep.model_validate({"title": id, "say": "Water.", "source": PRACTICE, **more})
        for id, more in {"damp": {"watering": {"depth": "4 mm"}}, "soak": {"watering": {"depth": "9 mm"}}, "rake": {}}.items()
    }
    chosen = {"grass": a_grass(), "practice": a_practice(), "groups": groups(), "steps": steps, "place": places()["sydney"], "day": 1, "until": 2}
    assert refused(expression, **chosen) == (BindError, what, instead, None)


def test_figures_of_a_plan_and_a_task_are_listed():
    figures = {"feed-later": {**FIGURE, "unit": "g/m2"}, "sand": FIGURE}
    plan = a_plan({"id": "a", "day": 0}, figures=figures)
    assert refused("renovation.xyzzy", renovation=plan)[1:3] == (
        "'renovation.xyzzy' is not among this plan's figures", "the plan's figures are feed-later, sand",
    )
    assert refused("renovation.feed-latr", renovation=plan)[2] == "did you mean 'feed-later'?"
    body = {"name": "Water", "summary": "Water.", "steps": [{"text": "Do.", "source": PRACTICE}]}
    water, bare = (Task.model_validate({**body, "figures": each}) for each in ({"on-sand": FIGURE, "on-clay": FIGURE}, {}))
    assert refused("task.xyzzy", task=water)[1:3] == ("'task.xyzzy' is not among this task's figures", "its figures are on-sand, on-clay")
    assert refused("task.xyzzy", task=bare)[2] == "give the task `figures`, or write a value"
    assert refused("task.on-snd", task=water)[2] == "did you mean 'on-sand'?"
    # A name with a dot in it is told whole.
    assert refused("task.on-sand.low", task=water)[1] == "'task.on-sand.low' is not among this task's figures"
    no_water = {"rake": SharedStep.model_validate({"title": "Rake", "say": "Rake.", "source": PRACTICE})}
    assert refused("step.damp.depth", steps=no_water)[1:3] == (
        "step 'damp' waters nothing or is not in data/steps", "no step of this book waters",
    )


def test_of_several_that_are_missing_all_are_told_with_the_first_unit_that_is_known():
    kind, what, instead, unit = refused("grass.seed_rate or practice.minimum_charge", grass=a_grass(), practice=a_practice())
    assert (kind, what, instead, unit) == (Missing, "'grass.seed_rate' is not given and 'practice.minimum_charge' is not given", FALL_BACK, "1")
    kind, what, instead, unit = refused("grass.seed_rate or place.latitude", grass=a_grass())
    assert (kind, what, instead, unit) == (Unchosen, "'grass.seed_rate' is not given and 'place.latitude' needs a place", FALL_BACK, "deg")
    # What can never be filled in is an error whatever stands before it.
    assert refused("grass.seed_rate or grass.xyzzy", grass=a_grass())[0] is BindError


def test_a_unit_that_nobody_knows_is_told_as_everywhere():
    kind, what, instead, _ = refused("5 furlongs")
    assert kind is BindError and "furlongs" in what and instead and str(BindError(what, instead)) == f"{what}; {instead}"


@pytest.mark.parametrize(("expression", "value", "unit", "where_from"), [
    ("5.25 mm", 5.25, "mm", "set by this plan"), ("12 m2", 12, "m2", "set by this plan"), ("3", 3, "1", "set by this plan"),
    ("practice.machines.corer.hire_price_per_day", 160, "1", "from Corer, hire price per day"),
    ("practice.operations.core.price_per_100_m2", 75, "1", "from our prices for core, price per 100 m2"),
    ("practice.operations.core.setup_minutes", 40, "min", "from our prices for core, setup"),
    ("practice.spoil_price_per_m3", 60, "1", "from the practice's spoil price per m3"),
    ("practice.products.granule.full_rate_kg_per_100_m2", 3, "kg/100 m2", "from Granule, full rate"),
    ("grass.mowing_height", 30, "mm", "from this grass's mowing height"),
    ("grass.nitrogen_per_year.low", 5, "g/m2", "from this grass's nitrogen per year"),
    ("place.elevation", 39, "m", "from Sydney, elevation"),
    ("week.mean_temperature or 5 °C", 5, "°C", "set by this plan"),
])
def test_what_is_filled_in_says_where_it_is_from(expression, value, unit, where_from):
    grass = a_grass(nitrogen_per_year={"low": 5, "high": 15, "use": 10, "unit": "g/m2", "source": PRACTICE})
    place = places()["sydney"].model_copy(update={"elevation_m": 39})
    assert bound_value(expression, Chosen(grass=grass, practice=a_practice(), place=place)) == Bound(value, unit, where_from)


def test_an_operation_that_is_chosen_fills_in_what_is_charged_for_it():
    found = bound_value("practice.operation.minimum_price", Chosen(practice=a_practice(), operation="core"))
    assert found == Bound(190, "1", "from our prices for core, minimum price")


def test_the_group_s_figures_are_those_of_its_own_season():
    for kind, coefficient in (("warm", groups().warm.crop_coefficient), ("cool", groups().cool.crop_coefficient)):
        found = bound_value("group.crop_coefficient", Chosen(grass=a_grass(season_group=kind), groups=groups()))
        assert found == Bound(coefficient.default, "1", f"from the {kind}-season group's crop coefficient")
    assert groups().warm.crop_coefficient.default != groups().cool.crop_coefficient.default
    own = a_grass(season={"base": {"use": 12, "unit": "°C", "source": PRACTICE}})
    assert bound_value("group.growth_base", Chosen(grass=own, groups=groups())) == Bound(12, "°C", "from this grass's growth base")
    # The optimum is not its own, so the group's counts.
    assert bound_value("group.growth_optimum", Chosen(grass=own, groups=groups())).where_from == "from the warm-season group's growth optimum"


def test_what_a_calculator_is_bound_to_and_what_the_practice_fills_in():
    """The machine-hours calculator asks the machine that is chosen; the estimate asks the practice itself."""
    estimate = book().calculators["estimate"]
    assert bindings(estimate) == {
        "minimum_charge": "practice.minimum_charge", "tax": "practice.tax_percent", "deposit_share": "practice.deposit_percent",
    }
    assert practice_filled(a_practice(), estimate) == {"tax": Bound(10, "%", "from the practice's tax")}
    assert practice_filled(a_practice(), book().calculators["machine-hours"]) == {}
    with pytest.raises(BindError, match="names no field"):
        filled({"area": "5 mm", "rate": "grass.xyzzy"}, Chosen())


def test_choices_by_id_are_the_book_s_own_records():
    found = chosen_from(seasons(), "kikuyu", "perth", 10, "sand-tonne", "corer", 20, "core")
    assert (found.grass, found.place) == (book().grasses["kikuyu"], book().places["perth"])
    assert (found.practice, found.groups) == (book().practice, book().season_groups)
    assert (found.day, found.until, found.product, found.machine, found.operation) == (10, 20, "sand-tonne", "corer", "core")
    assert found.year is seasons().season("kikuyu", "perth")
    # Weather is the same in the year of any grass: without one it is that of the grass the book opens with.
    home = chosen_from(seasons(), place="perth")
    assert home.year is seasons().season(book().practice.home_grass, "perth") and home.grass is None
    nothing = chosen_from(seasons())
    assert (nothing.grass, nothing.place, nothing.year, nothing.day, nothing.until) == (None, None, None, None, None)


@pytest.mark.parametrize(("field", "unit", "words"), [
    ("pack_volume_l", "L", "pack volume"), ("speed_km_per_h", "km/h", "speed"), ("price_per_100_m2", "1", "price per 100 m2"),
    ("rate_mm_per_h", "mm/h", "rate"), ("flow_l_per_min", "L/min", "flow"), ("working_width_m", "m", "working width"),
    ("estimate_valid_days", "day", "estimate valid"), ("minimum_charge", "1", "minimum charge"), ("elevation_m", "m", "elevation"),
    ("bulk_density_kg_per_m3", "kg/m3", "bulk density"), ("people", None, "people"),
])
def test_a_field_s_name_says_its_unit_and_its_words(field, unit, words):
    assert (unit_of_field(field), words_of(field)) == (unit, words)


def test_a_filled_in_value_is_typed_as_a_reader_would():
    typed = [Bound(value, unit, "").typed for value, unit in ((0.1 + 0.2, "mm"), (5.0, "1"), (1600.0, "kg/m3"), (12.5, "%"))]
    assert typed == ["0.3 mm", "5", "1600 kg/m3", "12.5 %"]


def test_the_week_of_a_day_is_the_same_a_year_later():
    chosen = Chosen(place=places()["sydney"], year=season(COUCH, "sydney"), day=5 + 365)
    assert bound_value("week.rain", chosen) == bound_value("week.rain", Chosen(place=chosen.place, year=chosen.year, day=5))
    assert bound_value("week.day_of_year", chosen) == Bound(6, "1", "from the date, 6 January")


def test_each_figure_of_a_week_is_the_season_s_own():
    """Week 3, of 15 January. Millimetres a day of evapotranspiration are a seventh of the week's; leaf growth is the full 4 mm times the potential."""
    year = season(COUCH, "canberra")
    week, days = year.weeks[2], range(14, 21)
    found = {
        name: bound_value(f"week.{name}", Chosen(grass=a_grass(), place=places()["canberra"], year=year, day=14)).value
        for name in ("mean_temperature", "minimum_temperature", "maximum_temperature", "soil_temperature", "growth_potential", "leaf_growth",
                     "reference_evapotranspiration", "rain", "rain_share", "water_need", "days")
    }
    assert found == pytest.approx({
        "mean_temperature": week.mean_temperature_c, "minimum_temperature": week.minimum_temperature_c,
        "maximum_temperature": week.maximum_temperature_c, "soil_temperature": week.soil_temperature_c,
        "growth_potential": week.growth_potential, "leaf_growth": 4 * week.growth_potential,
        "reference_evapotranspiration": week.reference_evapotranspiration_mm / 7, "rain": week.rain_mm,
        "rain_share": 100 * sum(year.weather.effective_rain_mm[day] for day in days) / week.rain_mm, "water_need": week.water_need_mm, "days": 7,
    })


def test_a_week_without_rain_uses_all_of_it():
    dry = season(COUCH, made_up(30, 18, rain=0))
    assert bound_value("week.rain_share", Chosen(place=places()["sydney"], year=dry, day=14)).value == 100


def test_degree_days_count_from_the_coldest_day_and_over_the_grass_s_base():
    year, place = season(COUCH, "canberra"), places()["canberra"]
    chosen = Chosen(grass=a_grass(), place=place, year=year, day=14, until=100)
    assert bound_value("span.degree_days_at_first", chosen) == Bound(year.degree_days[14], "°C day", "from Canberra, usual count over 10 °C to 15 January")
    assert bound_value("span.degree_days_at_last", chosen).where_from == "from Canberra, usual count over 10 °C to 11 April"
    assert bound_value("span.degree_days_of_year", chosen) == Bound(max(year.degree_days), "°C day", "from Canberra, usual count over 10 °C in a year")
    assert bound_value("span.days", chosen) == Bound(86, "day", "from the two dates")
    assert bound_value("span.degree_days_at_first", Chosen(grass=a_grass(), place=place, year=year, day=14 + 365)).value == year.degree_days[14]
