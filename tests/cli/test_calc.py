"""`swardbook calc` as a person and as another program meets it."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from generator.cli import main
from generator.units import from_si, to_si, unit
from tests.our_book import book

ROOT = Path(__file__).parents[2]
CALCULATORS = book().calculators
EXAMPLES = [(id, number) for id, each in CALCULATORS.items() for number in range(len(each.examples))]


def calc(*words: str):
    return CliRunner().invoke(main, ["calc", "--book", str(ROOT), *words])


@pytest.mark.parametrize(("id", "number"), EXAMPLES)
def test_published_examples_by_command(id, number):
    example = CALCULATORS[id].examples[number]
    told = calc(id, *(f"{name}={text}" for name, text in example.inputs.items()), "--json")
    assert told.exit_code == 0, told.output
    results = json.loads(told.stdout)["results"]
    for name, expected in example.results.items():
        got = from_si(to_si(results[name]["value"], unit(results[name]["unit"])), unit(expected.unit))
        assert abs(got - expected.value) <= expected.within * 1.000001


def test_json_names_a_unit_with_every_value():
    told = json.loads(calc("topdressing-sand", "area=250 m2", "depth=4 mm", "--json").stdout)
    assert told["inputs"]["depth"] == {"value": 4.0, "unit": "mm"}
    assert told["results"]["volume"] == {"value": 1.0, "unit": "m3"}


def test_a_calculator_answers_to_its_old_name_and_says_the_new_one():
    """A tenth on top of 350, 187.50 and 95 is 63.25."""
    old = calc("quote", "lines=350, 187.5, 95", "tax=10 %", "--json")
    assert old.exit_code == 0 and "'quote' is 'estimate' now" in old.stderr
    told = json.loads(old.stdout)
    assert told["calculator"] == "estimate" and told["results"]["tax_amount"]["value"] == pytest.approx(63.25)


def test_plain_numbers_take_the_listed_unit():
    assert json.loads(calc("topdressing-sand", "area=250", "depth=4", "--json").stdout)["results"]["volume"]["value"] == 1


def test_text_shows_given_answers_warnings_and_method():
    told = calc("topdressing-sand", "area=30 ft x 12 ft", "depth=15 mm")
    assert told.exit_code == 0
    for words in ("Given", "33.4451 m2", "Answers", "0.5 m3", "seldom over 10 mm", "Method: Area times depth"):
        assert words in told.stdout


def test_us_units():
    told = json.loads(calc("topdressing-sand", "area=1000 ft2", "depth=1 in", "--us", "--json").stdout)
    assert told["results"]["volume"]["unit"] == "yd3"
    assert told["results"]["volume"]["value"] == pytest.approx(1000 / 12 / 27)


def test_turned_round():
    """Two bags of 20 kg at 2 kg/100 m2 go as far as 2000 m2, and 4.8 kg of it lie on 240 m2."""
    told = json.loads(calc("granular-feed", "--solve", "area", "product=4.8 kg", "rate=2", "--json").stdout)
    assert told["solved"] == "area" and told["inputs"]["area"] == {"value": 240, "unit": "m2"}
    told = calc("granular-feed", "--solve", "area", "packs=2", "rate=2", "pack_mass=20")
    assert "2000 m2" in told.stdout and "the largest is given" in told.stdout


def test_list():
    told = json.loads(calc("--list", "--json").stdout)
    assert told.keys() == CALCULATORS.keys()
    assert told["topdressing-sand"]["inputs"]["depth"]["unit"] == "mm"
    assert told["tank-mix"]["inputs"]["label_rate"]["default"] is None
    assert told["coring"]["results"]["holes_per_area"]["unit"] == "/m2"
    assert "takes area [m2], depth [mm]" in calc("topdressing-sand", "--list").stdout


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (("corng",), 2, "no calculator 'corng'; did you mean 'coring'?"),
        ((), 2, "name a calculator"),
        (("coring", "240"), 2, "'240' is not INPUT=VALUE"),
        (("coring", "area=2", "area=3"), 2, "'area' is given twice"),
        (("coring", "arae=2"), 2, "did you mean 'area'?"),
        (("coring", "area=2 kg"), 2, "'2 kg' is a mass, but an area is wanted"),
        (("coring", "area=two"), 2, "'two' is not a quantity"),
        (("coring", "area="), 2, "Nothing is typed here"),
        (("coring", "area=-2"), 1, "Area to core must be more than 0 m2; -2 m2 was given."),
        (("granular-feed", "nitrogen_percent=101"), 1, "Nitrogen on the bag cannot be more than 100 %; 101 % was given."),
        (("tank-mix",), 2, "only the label can give it"),
        (("catch-cans", "readings=0 0 0"), 1, "these values would divide by zero"),
        (("coring", "--solve", "aera", "core_volume=1 L"), 2, "did you mean 'area'?"),
        (("coring", "--solve", "area"), 2, "One result must be given to work back from"),
        (("coring", "--solve", "area", "core_volum=1 L"), 2, "did you mean 'core_volume'?"),
        (("coring", "--solve", "area", "area=2", "core_volume=1 L"), 2, "is both given and asked for"),
        (("tank-mix", "--solve", "label_rate", "product=1 L"), 2, "only the label can give it"),
        (("granular-feed", "--solve", "nitrogen_percent", "nitrogen=50 kg"), 1, "it never goes above 1.5 kg."),
        (("reference-evapotranspiration", "minimum_temperature=30", "maximum_temperature=20"), 1, "Swap them."),
    ],
)
def test_trouble_is_told_in_a_sentence_with_its_exit_code(words, code, said):
    told = calc(*words)
    assert told.exit_code == code
    assert said in told.output and "Traceback" not in told.output
    assert told.exception is None or isinstance(told.exception, SystemExit)


def season_week(grass: str, place: str, number: int) -> dict:
    told = CliRunner().invoke(main, ["season", "--book", str(ROOT), grass, place, "--json"])
    return json.loads(told.stdout)["weeks"][number - 1]


def test_what_is_not_typed_is_filled_in_from_what_is_chosen_and_says_so():
    # 12 October is in the 41st week: 8 October is day 281, forty weeks of seven days after 1 January.
    week = season_week("couch", "sydney", 41)
    told = json.loads(calc("weekly-water-need", "--grass", "couch", "--place", "sydney", "--on", "10-12", "rain=0", "--json").stdout)
    assert told["inputs"]["reference_evapotranspiration"]["value"] * 7 == pytest.approx(week["reference_evapotranspiration_mm"], abs=0.05)
    assert told["bound"]["reference_evapotranspiration"] == "from Sydney, week of 12 October"
    assert told["inputs"]["rain"]["value"] == 0 and "rain" not in told["bound"] and "area" not in told["bound"]
    text = calc("weekly-water-need", "--grass", "couch", "--place", "sydney", "--on", "2026-10-12").stdout
    assert "Rain in that time (from Sydney, week of 12 October)" in text


def test_a_place_and_a_day_are_enough_for_what_no_grass_changes():
    told = json.loads(calc("reference-evapotranspiration", "--place", "chicago", "--on", "2024-02-29", "--json").stdout)
    assert sorted(told["bound"]) == ["day_of_year", "latitude", "maximum_temperature", "minimum_temperature"]
    assert told["inputs"]["day_of_year"]["value"] == 59  # the engine's year has no 29 February


def test_a_product_and_a_machine_bring_their_own_figures():
    practice = book().practice
    product, machine = practice.products["starter-feed"], practice.machines["corer"]
    told = json.loads(calc("granular-feed", "--product", "starter-feed", "--json").stdout)
    assert told["inputs"]["nitrogen_percent"] == {"value": product.nitrogen_percent, "unit": "%"}
    told = json.loads(calc("machine-hours", "--machine", "corer", "passes=2", "--json").stdout)
    assert told["inputs"]["width"]["value"] == machine.working_width_m
    assert told["bound"]["width"] == f"from {machine.name}, working width"


def test_turned_round_what_is_chosen_still_counts_but_never_for_what_is_sought():
    told = json.loads(calc("granular-feed", "--solve", "nitrogen_percent", "--product", "starter-feed", "nitrogen=500 g", "--json").stdout)
    assert "nitrogen_percent" not in told["bound"] and "pack_mass" in told["bound"]


def test_degree_days_between_two_dates_at_a_place():
    told = json.loads(calc("degree-days-between-dates", "--grass", "couch", "--place", "sydney", "--on", "08-05", "--until", "10-07", "--json").stdout)
    # Week 31 ends on 5 August, week 40 on 7 October.
    counted = season_week("couch", "sydney", 40)["growing_degree_days_c"] - season_week("couch", "sydney", 31)["growing_degree_days_c"]
    assert told["results"]["degree_days"]["value"] == pytest.approx(counted, abs=1)
    assert told["inputs"]["days"]["value"] == 63


def test_without_a_choice_nothing_is_bound():
    assert "bound" not in json.loads(calc("granular-feed", "--json").stdout)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--grass", "cooch"), "no grass 'cooch'; did you mean 'couch'?"),
        (("--on", "32-10"), "--on: '32-10' is not a day; write it as 10-12 or 2026-10-12"),
        (("--product", "grannule"), "no product 'grannule'"),
    ],
)
def test_a_choice_the_book_does_not_know_is_told(words, said):
    told = calc("granular-feed", *words)
    assert told.exit_code == 2 and said in told.stderr


def test_the_input_that_was_sought_is_an_answer_in_us_units():
    """50 lb at 3 lb to 1000 square feet go 50 / 3 x 1000, 16 667 square feet; a US reader's gallon is the US one."""
    words = ("--solve", "area", "product=50 lb", "nitrogen_rate=0.75 lb N/1000 sq. ft.", "nitrogen_percent=25", "--us")
    told = json.loads(calc("feed-for-nitrogen", *words, "--json").stdout)
    assert told["inputs"]["area"] == {"value": pytest.approx(16666.6667), "unit": "ft2"}
    assert "16666.6667 ft2" in calc("feed-for-nitrogen", *words).stdout
    told = json.loads(calc("sprayer-output", "flow=0.5 gal/min", "speed=3 mph", "swath=20 in", "--us", "--json").stdout)
    assert told["results"]["application_rate"]["value"] == pytest.approx(5940 * 0.5 / 60)


def test_a_size_that_no_smaller_unit_can_hold_is_too_large():
    result = calc("irrigation-run-time", "depth=1e308 m")
    assert result.exit_code != 0
    assert "'1e308 m' is too large a number." in result.stderr + result.stdout
