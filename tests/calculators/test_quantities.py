"""Calculators run in Python: published answers, what may be typed, and a sentence for everything that cannot be."""

from functools import cache
from pathlib import Path

import pytest

from generator.book.records.calculator import Calculator
from generator.calculators.calculate import calculate, figures, run_example, show_amount
from generator.calculators.prepared import faults, prepared
from generator.units import unit
from tests.our_book import book

ROOT = Path(__file__).parents[2]
FILES = sorted((ROOT / "data" / "calculators").glob("*.yml"))


@cache
def calculators() -> dict[str, Calculator]:
    """As the book has them, figures of tasks filled in."""
    return book().calculators


def calculator(id: str) -> Calculator:
    return calculators()[id]


def value(id: str, result: str, wanted: str, **given: str) -> float:
    run = calculate(calculator(id), given)
    assert run.problems == ()
    return run.results[result].value(unit(wanted))


def made_up(**changes) -> Calculator:
    """A small calculator: a mass from an area and a rate."""
    record = {
        "name": "Made up", "topic": "area", "summary": "Made up.", "method": "Made up.",
        "inputs": {
            "area": {"question": "Area", "unit": "m2", "us_unit": "ft2", "default": 100, "above": 0, "usual_high": 1000},
            "rate": {"question": "Rate", "unit": "g/m2", "default": 10, "at_least": 0},
        },
        "results": {"mass": {"label": "Mass", "unit": "kg", "formula": "area * rate", "main": True}},
        "examples": [],
    } | changes
    record["examples"] = changes.get("examples") or [{
        "title": "By hand", "source": "common practice", "basis": "arithmetic", "inputs": {}, "results": {},
    }]
    return Calculator.model_validate(record)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_is_sound_and_agrees_with_its_published_examples(path):
    found = calculator(path.stem)
    assert faults(found) == []
    assert [run_example(found, example) for example in found.examples] == [[]] * len(found.examples)
    assert len(found.examples) >= 2


def test_the_design_s_twelve_are_there_with_their_names():
    """Ids, inputs and results that other programs rely on."""
    promised = {
        "granular-feed": (
            "area rate nitrogen_percent phosphate_percent potash_percent pack_mass passes",
            "product packs nitrogen phosphorus potassium per_pass nitrogen_rate",
        ),
        "feed-for-nitrogen": ("area nitrogen_rate nitrogen_percent", "product rate"),
        "topdressing-sand": ("area depth bulk_density", "volume mass"),
        "coring": (
            "area tine_diameter spacing_along spacing_across depth target_percent",
            "surface_percent holes_per_area core_volume passes_for_target",
        ),
        "scarifying": ("blade_width blade_spacing", "surface_percent"),
        "irrigation-run-time": ("depth precipitation_rate uniformity", "run_time"),
        "catch-cans": ("readings minutes", "precipitation_rate uniformity_low_quarter christiansen"),
        "sprayer-output": ("flow speed swath", "application_rate"),
        "tank-mix": ("area application_rate label_rate tank_volume", "water product loads product_per_load"),
        "seeding": ("area seed_rate purity_percent germination_percent", "seed pure_live_seed_percent"),
        "growth-potential": ("mean_temperature optimum spread", "growth_potential"),
        "reference-evapotranspiration": ("latitude day_of_year minimum_temperature maximum_temperature", "hargreaves"),
    }
    for id, (inputs, results) in promised.items():
        found = calculator(id)
        assert set(inputs.split()) <= found.inputs.keys() and set(results.split()) <= found.results.keys()
        promised_inputs = set(inputs.split())
        others = [name for name, asked in found.inputs.items() if name not in promised_inputs and not asked.optional]
        assert others == [], "the promised inputs alone must do"


# NC State Extension, The calibration of turfgrass boom sprayers and spreaders, figure 1: 20 gal/acre at 3 mph become 10 at 6.
def test_output_halves_when_speed_doubles():
    slow = value("sprayer-output", "application_rate", "US gal/acre", flow="1 US gal/min", speed="3 mph", swath="20 in")
    fast = value("sprayer-output", "application_rate", "US gal/acre", flow="1 US gal/min", speed="6 mph", swath="20 in")
    assert slow == pytest.approx(2 * fast)


# Minner 2011: three-quarter-inch tines more than double the area of half-inch tines. (0.75 / 0.5) squared is 2.25.
def test_wider_tines_take_the_square_of_their_width():
    ratio = value("coring", "surface_percent", "%", tine_diameter="0.75 in") / value("coring", "surface_percent", "%", tine_diameter="0.5 in")
    assert ratio == pytest.approx(2.25)


def test_four_full_packs_stay_four():
    """2000 m2 at 4 kg/100 m2 are 80 kg, four packs of 20; a hair more is five."""
    assert value("granular-feed", "packs", "packs", area="2000 m2", rate="4 kg/100 m2", pack_mass="20 kg") == 4
    assert value("granular-feed", "packs", "packs", area="2001 m2", rate="4 kg/100 m2", pack_mass="20 kg") == 5


def test_a_job_smaller_than_the_tank_gets_product_for_itself_only():
    """10 L of a 15 L tank: the product is for 10 L, or the lawn gets half as much again as the label allows."""
    given = {"area": "250 m2", "application_rate": "400 L/ha", "label_rate": "20 mL/100 m2", "tank_volume": "15 L"}
    assert value("tank-mix", "product_per_load", "mL", **given) == pytest.approx(50)
    assert value("tank-mix", "last_load_volume", "L", **given) == pytest.approx(10)


def test_only_the_label_gives_a_label_rate():
    run = calculate(calculator("tank-mix"), {"area": "500 m2"})
    assert [(p.about, p.code) for p in run.problems] == [("label_rate", "missing")]
    assert "only the label can give it" in run.problems[0].sentence
    assert "product" not in run.results and "water" in run.results


def test_a_product_may_be_weighed():
    run = calculate(calculator("tank-mix"), {"area": "500 m2", "label_rate": "20 g/100 m2"})
    assert run.results["product"].unit.spelling == "g" and run.results["product"].value() == pytest.approx(100)


def test_cans_read_in_millilitres():
    """Ten minutes at a mean of 20 mL are 2 mL a minute; the driest of four is 12 of 20, 60 %."""
    run = calculate(calculator("catch-cans"), {"readings": "12, 20, 24, 24 mL", "minutes": "10 min"})
    assert run.results["precipitation_rate"].unit.spelling == "mL/min" and run.results["precipitation_rate"].value() == pytest.approx(2)
    assert run.results["uniformity_low_quarter"].value() == pytest.approx(60)


@pytest.mark.parametrize(
    ("id", "wrong", "right", "said"),
    [
        ("area-polygon", {"corners": "0 0 12 8 12 0 0 8 m"}, {"corners": "0 0 12 0 12 8 0 8 0 0 m"}, "Walk round the edge"),
        ("area-trapezium", {"first_side": "0 m", "second_side": "0 m"}, {"first_side": "0 m", "second_side": "4 m"}, "a line has no area"),
        ("area-offsets", {"widths": "0 0 0 0 0 0 0 m"}, {"widths": "0 2 4 4 4 2 0 m"}, "Every width is nought"),
    ],
)
def test_what_encloses_no_lawn_is_a_danger_to_its_area(id, wrong, right, said):
    def dangers(given: dict[str, str]) -> list[str]:
        return [warning.sentence for warning in calculate(calculator(id), given).warnings if warning.weight == "danger"]

    (danger,) = dangers(wrong)
    assert said in danger and dangers(right) == []


def test_a_spread_of_temperature_may_be_typed_without_the_word_difference():
    assert value("growth-potential", "growth_potential", "1", mean_temperature="50 F", optimum="68 F", spread="10 F") == pytest.approx(
        0.19790, abs=0.00001  # e to the power of minus half of 1.8 squared.
    )


def test_heavy_quick_release_nitrogen_draws_a_caution_and_slow_release_lifts_it():
    """3 kg/100 m2 of a 12 % feed is 3.6 g N/m2; the Florida rule stops at 3.4 quick-release."""
    feed = calculator("granular-feed")
    given = {"rate": "3 kg/100 m2", "nitrogen_percent": "12"}
    assert any("quick-release" in said.sentence for said in calculate(feed, given).warnings)
    assert calculate(feed, given | {"slow_release": "50 %"}).warnings == ()


@pytest.mark.parametrize(
    ("given", "about", "code", "sentence"),
    [
        ({"area": "-3"}, "area", "impossible", "Area must be more than 0 m2; -3 m2 was given."),
        ({"area": "0"}, "area", "impossible", "Area must be more than 0 m2; 0 m2 was given."),
        ({"rate": "-1 g/m2"}, "rate", "impossible", "Rate cannot be less than 0 g/m2; -1 g/m2 was given."),
        ({"area": "4 kg"}, "area", "unreadable", "Area: '4 kg' is a mass, but an area is wanted; use m2, ha, 100 m2."),
        ({"area": "lots"}, "area", "unreadable", "Area: 'lots' is not a quantity; write one such as 2.5."),
        ({"areaa": "4"}, "areaa", "unknown-input", "There is no input 'areaa'; did you mean 'area'?"),
    ],
)
def test_trouble_is_a_sentence(given, about, code, sentence):
    (problem,) = calculate(made_up(), given).problems
    assert (problem.about, problem.code, problem.sentence) == (about, code, sentence)


def test_unusual_is_asked_about_but_answered():
    run = calculate(made_up(), {"area": "2000"})
    assert run.warnings[0].sentence == "Area is seldom over 1000 m2; is 2000 m2 right?"
    assert run.results["mass"].value() == 20


def test_one_cause_one_sentence():
    """Nothing is said of a result that rests on one without an answer."""
    results = {
        "share": {"label": "Share", "unit": "1", "formula": "1 / (rate / rate - 1)", "main": True},
        "twice": {"label": "Twice", "unit": "1", "formula": "2 * share"},
    }
    run = calculate(made_up(results=results), {})
    assert [problem.sentence for problem in run.problems] == ["Share: no answer; these values would divide by zero."]


@pytest.mark.parametrize(
    ("changes", "path", "offset", "what"),
    [
        ({"formula": "area * raet"}, ("results", "mass", "formula"), 7, "unknown name 'raet'"),
        ({"formula": "area + rate"}, ("results", "mass", "formula"), 5, "cannot add area, an area (m2), and rate"),
        ({"unit": "m3"}, ("results", "mass", "formula"), 5, "but the result is declared in m3"),
        ({"unit": "stone/m2"}, ("results", "mass", "unit"), 0, "unknown unit 'stone/m2'"),
        ({"formula": None, "equation": "growth-potental"}, ("results", "mass", "equation"), 0, "unknown equation"),
        ({"formula": None, "equation": "effective-rain", "given": {"rainn": "area"}}, ("results", "mass", "equation"), 0,
         "equation 'effective-rain' has no input 'rainn'"),
        ({"formula": None, "equation": "effective-rain", "given": {"rain": "area"}}, ("results", "mass", "equation"), 0, "cannot compare area"),
    ],
)
def test_faults_point_at_the_character(changes, path, offset, what):
    mass = {"label": "Mass", "unit": "kg", "formula": "area * rate", "main": True} | changes
    (fault,) = faults(made_up(results={"mass": {key: each for key, each in mass.items() if each is not None}}))
    assert (fault.path, fault.offset) == (path, offset) and what in fault.what


def test_a_wrong_example_is_told():
    example = {
        "title": "Wrong", "source": "common practice", "basis": "arithmetic", "inputs": {"area": "100 m2", "rate": "10 g/m2"},
        "results": {"mass": {"value": 2, "unit": "kg", "within": 0.5}},
    }
    found = made_up(examples=[example])
    (fault,) = run_example(found, found.examples[0])
    assert (fault.about, fault.what) == ("mass", "mass comes to 1 kg, but the example says 2 kg, within 0.5")


def test_prepared_once():
    found = made_up()
    assert prepared(found) is prepared(found)


def test_counts_read_as_words():
    assert show_amount(1, unit("packs"), 0) == "1 pack" and show_amount(2, unit("passes"), 0) == "2 passes"
    assert figures(0.5, 0) == "0.5"  # Never rounded to nothing.
