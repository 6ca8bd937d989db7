"""A calculator turned round: the input that leads to a wanted result, or a sentence that says why there is none."""

import math
import random

import numpy as np
import pytest

from generator.calculators.calculate import calculate, default_si
from generator.calculators.inversion import solve
from generator.calculators.root_search import meetings, points
from tests.our_book import book
from tests.slices import every

CALCULATORS = book().calculators


def turned(id: str, wanted: dict[str, str], for_input: str, **given: str):
    run = solve(CALCULATORS[id], wanted, for_input, given)
    assert not run.problems, run.problems
    return run.inputs[for_input].value(), [said.sentence for said in run.warnings if said.about == for_input]


def refused(id: str, wanted: dict[str, str], for_input: str, **given: str) -> str:
    run = solve(CALCULATORS[id], wanted, for_input, given)
    (problem,) = run.problems
    assert not run.results
    return problem.sentence


# By hand: 4.8 kg at 2 kg/100 m2 lies on 240 m2; 1.6 t of sand at 1600 kg/m3 is 1 m3, on 250 m2 4 mm deep; 100 g at
# 50 g/100 m2 treats 200 m2.
@pytest.mark.parametrize(
    ("id", "wanted", "for_input", "given", "expected"),
    [
        ("granular-feed", {"product": "4.8 kg"}, "area", {"rate": "2 kg/100 m2"}, 240),
        ("topdressing-sand", {"mass": "1.6 t"}, "depth", {"area": "250 m2"}, 4),
        ("tank-mix", {"product": "100 g"}, "area", {"label_rate": "50 g/100 m2"}, 200),
    ],
)
def test_one_answer(id, wanted, for_input, given, expected):
    found, remarks = turned(id, wanted, for_input, **given)
    assert found == pytest.approx(expected, rel=1e-12) and remarks == []


def test_how_far_two_bags_go():
    """40 kg at 1.5 kg/100 m2 cover 40 / 1.5 = 26.667 hundreds of square metres; from 20 kg up a second bag is opened."""
    found, remarks = turned("granular-feed", {"packs": "2"}, "area", rate="1.5", pack_mass="20")
    assert found == pytest.approx(4000 / 1.5, rel=1e-8)
    assert remarks == ["Packs to have in the shed: 2 packs for any value from 1333.3333 m2 to 2666.6667 m2; the largest is given."]


def test_two_and_a_half_bags_go_as_far_as_two():
    found, remarks = turned("granular-feed", {"packs": "2.5"}, "area", rate="1.5", pack_mass="20")
    assert found == pytest.approx(4000 / 1.5, rel=1e-8)
    assert remarks == [
        "No value of 'Area to feed' gives exactly 2.5 packs: 2 packs with 2666.6667 m2, 3 packs with a little more."
    ]


def test_a_whole_number_is_found_whole():
    """3.6 kg in passes of 1 kg would be 3.6 passes: 4 passes of 0.9 kg stay within it, 3 passes of 1.2 kg do not."""
    found, remarks = turned("granular-feed", {"per_pass": "1 kg"}, "passes", area="240", rate="1.5")
    assert found == 4
    assert remarks == ["No value of 'Passes over the lawn' gives exactly 1 kg: 0.9 kg with 4 passes, 1.2 kg with 3 passes."]


def test_where_a_result_levels_off_the_first_value_that_reaches_it():
    found, remarks = turned("granular-feed", {"remaining": "0 kg"}, "rate", full_rate="3")
    assert found == pytest.approx(3, rel=1e-9)
    assert remarks == ["Product left for the later feed: 0 kg for any value from 3 kg/100 m2 up; the smallest is given."]


def test_two_temperatures_give_half_growth():
    """exp(-0.5 ((t - 31) / 7)^2) is 0.5 at 31 -+ 7 sqrt(2 ln 2) = 31 -+ 8.2419 (Stowell and Gelernter's warm-season constants)."""
    assert refused("growth-potential", {"growth_potential": "0.5"}, "mean_temperature", optimum="31 °C", spread="7 K") == (
        "Growth potential rises and falls with 'Mean air temperature', so more than one value gives 0.5: 22.7581 °C and 39.2419 °C."
    )


@pytest.mark.parametrize(("wanted", "apart"), [("0.99", math.sqrt(-2 * math.log(0.99))), ("0.9999", math.sqrt(-2 * math.log(0.9999)))])
def test_a_narrow_peak_is_not_overlooked(wanted, apart):
    """exp(-0.5 d^2) is the wanted share at d spreads of 7 K on either side of 31."""
    sentence = refused("growth-potential", {"growth_potential": wanted}, "mean_temperature", optimum="31 °C", spread="7 K")
    assert f"{round(31 - 7 * apart, 4):g} °C and {round(31 + 7 * apart, 4):g} °C" in sentence


def test_the_very_top_of_a_peak_is_met_and_no_more():
    found, remarks = turned("growth-potential", {"growth_potential": "1"}, "mean_temperature", optimum="31 °C", spread="7 K")
    assert found == pytest.approx(31, abs=1e-4) and remarks == []
    sentence = refused("growth-potential", {"growth_potential": "1.01"}, "mean_temperature", optimum="31 °C", spread="7 K")
    assert sentence.endswith("it never goes above 1.")


@pytest.mark.parametrize(
    ("wanted", "for_input", "given", "words"),
    [
        ({"left_in_pack": "3 kg"}, "area", {}, "rises and falls with 'Area to feed', so too many values give 3 kg"),
        ({"product": "1 kg"}, "pack_mass", {}, "Product for this feed does not change with 'Product in one pack'."),
        ({"nitrogen": "5 kg"}, "nitrogen_percent", {}, "it never goes above 1.5 kg."),  # 100 m2 at 1.5 kg are 1.5 kg in all.
        ({"product": "-1 kg"}, "area", {}, "cannot be -1 kg: whatever 'Area to feed' is, it never goes below 0 kg."),
        ({"product": "banana"}, "area", {}, "'banana' is not a quantity"),
        ({"product": "3 m2"}, "area", {}, "is an area, but a mass is wanted"),
        ({"product": "3 kg"}, "area", {"rate": "banana"}, "'banana' is not a quantity"),
        ({"product": "3 kg"}, "area", {"rate": "-1"}, "Rate of this feed must be more than 0 kg/100 m2"),
        ({"product": "3 kg"}, "area", {"area": "3"}, "Area to feed is both given and asked for"),
        ({"product": "3 kg"}, "aera", {}, "There is no input 'aera'; did you mean 'area'?"),
        ({"prodct": "3 kg"}, "area", {}, "There is no result 'prodct'; did you mean 'product'?"),
        ({}, "area", {}, "One result must be given to work back from"),
        ({"product": "3 kg", "packs": "2"}, "area", {}, "One result must be given to work back from"),
    ],
)
def test_why_there_is_no_answer(wanted, for_input, given, words):
    assert words in refused("granular-feed", wanted, for_input, **given)


def test_a_rate_that_only_the_label_gives_is_never_worked_out():
    assert "only the label can give it" in refused("tank-mix", {"product": "100 mL"}, "label_rate")


def test_a_list_is_not_worked_out():
    assert "is a list" in refused("catch-cans", {"precipitation_rate": "30 mm/h"}, "readings")


def numbers(calculator):
    return [name for name, asked in calculator.inputs.items() if not asked.many and not asked.label_only]


@pytest.mark.parametrize("id", every(2, [id for id, each in sorted(CALCULATORS.items()) if numbers(each)]))
def test_there_and_back(id):
    """From any possible inputs to a result and back to an input: the result comes out again, within it where it goes in steps."""
    calculator, chance = CALCULATORS[id], random.Random(id)
    label = {name: default_si(asked) or 1e-4 for name, asked in calculator.inputs.items() if asked.label_only}
    for _ in range(15):
        given = dict(label)
        for name in numbers(calculator):
            asked = calculator.inputs[name]
            given[name] = str(chance.randint(1, 9)) if asked.whole else repr(asked.default * chance.uniform(0.8, 1.2))
        run = calculate(calculator, given)
        for_input, result = chance.choice(numbers(calculator)), chance.choice(sorted(calculator.results))
        if run.problems:
            continue
        wanted = run.results[result].si
        back = solve(calculator, {result: wanted}, for_input, {name: value for name, value in given.items() if name != for_input})
        if back.problems:
            assert any(words in back.problems[0].sentence for words in ("does not change", "rises and falls", "no answer"))
            continue
        assert back.results[result].si == pytest.approx(wanted, rel=1e-8, abs=1e-12), (given, result, for_input)


@pytest.mark.parametrize(
    ("coefficients", "wanted"), [((1.0, 0.0, 1.0, -5.0), 7.0), ((2.0, 3.0, 4.0, 0.0), 900.0), ((0.5, 0.1, 0.01, 0.0), 3.3)]
)
def test_roots_of_rising_cubics_against_numpy(coefficients, wanted):
    """numpy's roots come from the eigenvalues of a companion matrix, not from bisection."""
    real = [root.real for root in np.roots([*coefficients[:3], coefficients[3] - wanted]) if abs(root.imag) < 1e-9 and root.real > 0]
    function = np.poly1d(coefficients)
    (met,) = meetings(lambda x: float(function(x)), points(0.0, None, 1.0), wanted)
    assert met.kind == "point" and met.first == pytest.approx(real[0], rel=1e-9)


def test_a_pole_is_no_meeting():
    """1/x passes from below nought to above it through infinity, and is never 0."""
    assert meetings(lambda x: None if x == 0 else 1 / x, points(-10.0, 10.0, 1.0), 0.0) == []
    assert meetings(lambda x: math.tan(x), [1.0, 2.0], 0.0) == []
