"""What is said of a calculator to its author and to whoever types into it, word for word. Calculators here are made up."""

import pytest

from generator.calculators.calculate import Amount, ExampleFault, InputProblem, Said, calculate, figures, run_example, show_amount, unit_after
from generator.calculators.inversion import solve
from generator.calculators.prepared import CalculatorFault, faults
from generator.units import unit
from tests.calculators.test_quantities import made_up

AREA = {"question": "Area", "unit": "m2", "us_unit": "ft2", "default": 100, "above": 0, "usual_low": 5, "usual_high": 1000}
RATE = {"question": "Rate", "unit": "g/m2", "default": 10, "at_least": 0, "at_most": 50, "usual_low": 2}
TIMES = {"question": "Times", "unit": "passes", "default": 1, "whole": True, "at_least": 1, "at_most": 9}
CANS = {"question": "Cans", "unit": "mm", "default": [3, 5], "many": True, "at_least": 0, "at_most": 80, "usual_high": 40}
LABEL = {"question": "Rate on the label", "unit": "g/m2", "default": 0, "above": 0, "label_only": True}
MASS = {"label": "Mass", "unit": "kg", "us_unit": "lb", "formula": "area * rate", "main": True}


def a_calculator(inputs=None, results=None, **more):
    return made_up(inputs=inputs or {"area": AREA, "rate": RATE, "times": TIMES}, results=results or {"mass": MASS}, **more)


@pytest.mark.parametrize(("changes", "fault"), [
    ({"inputs": {"area": AREA, "rate": RATE, "max": TIMES}},
     (("inputs", "max", "[key]"), 0, "'max' is a word of the formula language", "choose another name")),
    ({"inputs": {"area": AREA, "rate": RATE, "pi": TIMES}}, (("inputs", "pi", "[key]"), 0, "'pi' is a word of the formula language", "choose another name")),
    ({"constants": {"rate": {"value": 2, "unit": "1", "meaning": "Two.", "source": "common practice"}}},
     (("constants", "rate", "[key]"), 0, "'rate' is already in inputs", "give each value a name of its own")),
    ({"results": {"mass": MASS, "area": {**MASS, "main": False}}},
     (("results", "area", "[key]"), 0, "'area' is already in inputs", "give each value a name of its own")),
    ({"weighed": {"rat": {"unit": "kg", "us_unit": "lb"}}},
     (("weighed", "rat", "[key]"), 0, "'rat' is not an input or result", "did you mean 'rate'?")),
    ({"weighed": {"xyzzy": {"unit": "kg", "us_unit": "lb"}}},
     (("weighed", "xyzzy", "[key]"), 0, "'xyzzy' is not an input or result", "name one of them")),
    ({"results": {"mass": {**MASS, "main": False}}},
     (("results",), 0, "no result is the main one", "write 'main: true' at the answer people come for")),
    ({"inputs": {"area": {**AREA, "us_unit": "lb"}, "rate": RATE}},
     (("inputs", "area", "us_unit"), 0, "'lb' is a mass, but 'm2' is an area", "give a US unit of the same kind")),
    ({"results": {"mass": {**MASS, "us_unit": "ft2"}}},
     (("results", "mass", "us_unit"), 0, "'ft2' is an area, but 'kg' is a mass", "give a US unit of the same kind")),
    ({"results": {"mass": {**MASS, "formula": None, "equation": "xyzzy"}}},
     (("results", "mass", "equation"), 0, "unknown equation 'xyzzy'", None)),
    ({"warnings": [{"when": "area > rate", "say": "Too much.", "source": "common practice"}]},
     (("warnings", 0, "when"), 5, "cannot compare area, an area (m2), and rate, a mass per area (kg/100 m2)", None)),
    ({"warnings": [{"when": "times > 2", "say": "Much.", "source": "common practice"}, {"when": "tims > 2", "say": "More.", "source": "common practice"}]},
     (("warnings", 1, "when"), 0, "unknown name 'tims'", "did you mean 'times'?")),
])
def test_what_an_author_must_mend(changes, fault):
    inputs = {"area": AREA, "rate": RATE, "times": TIMES}
    results = {name: {key: each for key, each in result.items() if each is not None} for name, result in changes.get("results", {"mass": MASS}).items()}
    (found,) = faults(made_up(**{"inputs": inputs, **changes, "results": results}))
    path, offset, what, instead = fault
    assert found == CalculatorFault(path, offset, what, found.instead if instead is None else instead) and found.instead


def test_the_equations_that_are_known_are_listed_and_their_inputs():
    def told(**result):
        (fault,) = faults(a_calculator(results={"mass": {"label": "Mass", "unit": "kg", "main": True, **result}}))
        return fault.what, fault.instead

    what, instead = told(equation="xyzzy")
    assert what == "unknown equation 'xyzzy'" and instead.startswith("it knows ") and instead.removeprefix("it knows ").split(", ") == sorted(
        instead.removeprefix("it knows ").split(", ")) and "growth-potential" in instead
    assert told(equation="growth-potental")[1] == "did you mean 'growth-potential'?"
    assert told(equation="effective-rain", given={"xyzzy": "area"}) == ("equation 'effective-rain' has no input 'xyzzy'", "its inputs are rain")


def test_faults_stand_in_the_order_of_the_file_and_one_cause_is_told_once():
    both = a_calculator(inputs={"area": {**AREA, "unit": "stone", "us_unit": None}, "rate": {**RATE, "unit": "furlong"}})
    assert [(fault.path, fault.what) for fault in faults(both)] == [
        (("inputs", "area", "unit"), "unknown unit 'stone'"), (("inputs", "rate", "unit"), "unknown unit 'furlong'"),
    ]
    # The second rests on the first, and so does the warning.
    resting = a_calculator(
        results={"mass": {**MASS, "formula": "area * raet"}, "twice": {**MASS, "main": False, "formula": "2 * mass"}},
        warnings=[{"when": "mass > area", "say": "Much.", "source": "common practice"}],
    )
    assert [fault.path for fault in faults(resting)] == [("results", "mass", "formula")]
    # The twice-weighed product is looked at in both of its units.
    weighed = a_calculator(weighed={"rate": {"unit": "mL/m2", "us_unit": "fl oz/1000 ft2"}})
    (fault,) = faults(weighed)
    assert fault.path == ("results", "mass", "formula") and "the result is declared in kg" in fault.what


def examples(inputs, results):
    found = a_calculator(examples=[{"title": "By hand", "source": "common practice", "basis": "arithmetic", "inputs": inputs, "results": results}])
    return run_example(found, found.examples[0])


def expected(value, unit="kg", within=0.01):
    return {"value": value, "unit": unit, "within": within}


@pytest.mark.parametrize(("inputs", "results", "told"), [
    ({}, {"mass": expected(1)}, []), ({}, {"mass": expected(1000, "g")}, []), ({}, {"mass": expected(1.01)}, []),
    ({"area": "200 m2"}, {"mass": expected(1)}, [ExampleFault("mass", "mass comes to 2 kg, but the example says 1 kg, within 0.01")]),
    ({}, {"mass": expected(1.02)}, [ExampleFault("mass", "mass comes to 1 kg, but the example says 1.02 kg, within 0.01")]),
    ({}, {"mas": expected(1)}, [ExampleFault("mas", "There is no result 'mas'", "did you mean 'mass'?")]),
    ({}, {"xyzzy": expected(1)}, [ExampleFault("xyzzy", "There is no result 'xyzzy'", "name one of its results")]),
    ({}, {"mass": expected(1, "m2")}, [ExampleFault("mass", "mass is not measured in m2", "use kg")]),
    ({"xyzzy": "1"}, {}, [ExampleFault("xyzzy", "There is no input 'xyzzy'", "it takes area, rate, times")]),
    ({"area": "0 m2"}, {"mass": expected(1)}, [ExampleFault("area", "Area must be more than 0 m2; 0 m2 was given.")]),
    ({}, {"xyzzy": expected(1), "mass": expected(5)}, [
        ExampleFault("xyzzy", "There is no result 'xyzzy'", "name one of its results"),
        ExampleFault("mass", "mass comes to 1 kg, but the example says 5 kg, within 0.01"),
    ]),
])
def test_what_is_wrong_with_an_example(inputs, results, told):
    assert examples(inputs, results) == told


@pytest.mark.parametrize(("given", "problem"), [
    ({"area": "0 m2"}, ("area", "impossible", "Area must be more than 0 m2; 0 m2 was given.", None)),
    ({"rate": "60 g/m2"}, ("rate", "impossible", "Rate cannot be more than 50 g/m2; 60 g/m2 was given.", None)),
    ({"times": "0"}, ("times", "impossible", "Times cannot be less than 1 pass; 0 passes was given.", None)),
    ({"times": "2.5"}, ("times", "impossible", "Times must be a whole number; 2.5 passes was given.", None)),
    ({"cans": "3, 90, 100 mm"}, ("cans", "impossible", "Cans cannot be more than 80 mm; 90 mm was given.", None)),
    ({"xyzzy": "1"}, ("xyzzy", "unknown-input", "There is no input 'xyzzy'", "it takes area, rate, times, cans")),
    ({"area": "lots"}, ("area", "unreadable", "Area: 'lots' is not a quantity", "write one such as 2.5.")),
])
def test_what_is_wrong_with_what_was_typed(given, problem):
    found = calculate(a_calculator({"area": AREA, "rate": RATE, "times": TIMES, "cans": CANS}), given)
    assert found.problems == (InputProblem(*problem),)
    about = problem[0]
    assert about not in found.inputs and ("mass" in found.results) == (about not in ("area", "rate"))


def test_what_is_needed_from_the_label_is_asked_for():
    found = calculate(a_calculator({"area": AREA, "rate": LABEL}), {})
    assert found.problems == (InputProblem("rate", "missing", "Rate on the label is needed: only the label can give it."),)
    assert found.results == {}
    assert calculate(a_calculator({"area": AREA, "rate": LABEL}), {"rate": "2 g/m2"}).results["mass"].value() == pytest.approx(0.2)


def test_a_problem_is_told_in_one_sentence():
    assert InputProblem("area", "x", "Too small.").sentence == "Too small." and InputProblem("a", "x", "No 'a'", "write 'b'").sentence == "No 'a'; write 'b'"


@pytest.mark.parametrize(("given", "said"), [
    ({}, []), ({"area": "5 m2"}, []), ({"area": "1000 m2"}, []), ({"rate": "2 g/m2"}, []),
    ({"area": "4 m2"}, [("Area is seldom under 5 m2; is 4 m2 right?", "area")]), ({"area": "1001 m2"}, [("Area is seldom over 1000 m2; is 1001 m2 right?", "area")]),
    ({"rate": "1 g/m2", "area": "4 m2"}, [("Area is seldom under 5 m2; is 4 m2 right?", "area"), ("Rate is seldom under 2 g/m2; is 1 g/m2 right?", "rate")]),
    ({"cans": "3, 41, 50 mm"}, [("Cans is seldom over 40 mm; is 50 mm right?", "cans")]),
])
def test_what_is_unusual_is_asked_about(given, said):
    found = calculate(a_calculator({"area": AREA, "rate": RATE, "cans": CANS}), given)
    assert list(found.warnings) == [Said(sentence, "note", about) for sentence, about in said] and "mass" in found.results


def test_a_warning_has_its_weight_and_one_without_its_value_is_silent():
    warnings = [{"when": "mass == mass", "say": "Always, where there is an answer.", "source": "common practice"},
                {"when": "times > 2", "say": "Much.", "source": "common practice", "weight": "danger"}]
    found = calculate(a_calculator(warnings=warnings), {"times": "3", "area": "0 m2"})
    assert found.warnings == (Said("Much.", "danger"),)
    found = calculate(a_calculator(warnings=warnings), {"times": "2"})
    assert [said.sentence for said in found.warnings] == ["Always, where there is an answer."]


def test_an_answer_is_given_in_its_own_unit_or_in_another():
    found = calculate(a_calculator(results={"mass": {**MASS, "decimals": 3}}), {"area": "48 m2", "rate": "100 g/m2"})
    assert found.problems and "mass" not in found.results  # 100 g/m2 are more than may be given.
    mass = calculate(a_calculator(results={"mass": {**MASS, "decimals": 3}}), {"area": "480 m2", "rate": "10 g/m2"}).results["mass"]
    assert (mass.value(), mass.value(unit("g")), mass.unit, mass.us_unit, mass.decimals) == (4.8, 4800, unit("kg"), unit("lb"), 3)
    cans = calculate(a_calculator({"area": AREA, "rate": RATE, "cans": CANS}), {"cans": "0.3, 12 mm"}).inputs["cans"]
    assert cans.value() == (0.3, 12) and cans.value(unit("cm")) == (0.03, 1.2)
    assert calculate(a_calculator(), {}).results["mass"].decimals is None


def test_values_may_be_given_in_si_and_lists_too():
    inputs = {"area": AREA, "rate": RATE, "cans": CANS}
    found = calculate(a_calculator(inputs), {"area": 50, "cans": [0.002, 0.004]})
    assert found.results["mass"].value() == 0.5 and found.inputs["cans"].value() == (2, 4)
    assert calculate(a_calculator(inputs), {}).inputs["cans"].value() == (3, 5)


@pytest.mark.parametrize(("value", "decimals", "shown"), [
    # At most so many decimals, but never fewer than two digits that count; halves away from zero; a whole number stays whole.
    (0, 2, "0"), (4.8, 2, "4.8"), (4.856, 2, "4.86"), (4.855, 2, "4.86"), (-4.855, 2, "-4.86"), (0.0123, 1, "0.012"), (0.5, 0, "0.5"),
    (12.3, 0, "12"), (12.5, 0, "13"), (3, 0, "3"), (1600.0, 2, "1600"), (100, None, "100"), (1234.5, None, "1235"), (0.012345, None, "0.0123"),
    (4.8, None, "4.8"), (1.25, 0, "1.3"),
])
def test_a_number_prints_as_it_can_be_measured_out(value, decimals, shown):
    assert figures(value, decimals) == shown


def test_a_unit_stands_after_its_number():
    told = [show_amount(si, unit(spelling), decimals) for si, spelling, decimals in (
        (4.8, "kg", 2), (0.75, "%", 0), (2, "1", 0), (1, "packs", 0), (3, "packs", 0), (0.0123456, "m", None), (0.0123456, "m", 2),
    )]
    assert told == ["4.8 kg", "75 %", "2", "1 pack", "3 packs", "0.0123 m", "0.012 m"]
    assert [unit_after("1", unit(spelling)) for spelling in ("loads", "kg", "1", "cmol/kg")] == ["load", "kg", "", "cmol/kg"]
    assert Amount(0.3, unit("m"), unit("ft")).value() == 0.3


def back(wanted, for_input, inputs=None, results=None, **given):
    run = solve(a_calculator(inputs, results), wanted, for_input, given)
    return run if not run.problems else [(each.about, each.code, each.sentence) for each in run.problems]


LISTED = {"area": AREA, "rate": RATE, "cans": CANS, "label": LABEL}


@pytest.mark.parametrize(("wanted", "for_input", "given", "problem"), [
    ({"mass": "1 kg"}, "xyzzy", {}, ("xyzzy", "unknown-input", "There is no input 'xyzzy'; it takes area, rate, cans, label")),
    ({"mass": "1 kg"}, "aera", {}, ("aera", "unknown-input", "There is no input 'aera'; did you mean 'area'?")),
    ({"xyzzy": "1 kg"}, "area", {}, ("xyzzy", "unknown-result", "There is no result 'xyzzy'; it gives mass, twice")),
    ({}, "area", {}, ("area", "unknown-result", "One result must be given to work back from; it gives mass, twice.")),
    ({"mass": "1 kg", "twice": "2 kg"}, "area", {}, ("area", "unknown-result", "One result must be given to work back from; it gives mass, twice.")),
    ({"mass": "1 kg"}, "area", {"area": "5 m2"}, ("area", "given-twice", "Area is both given and asked for; leave its value out.")),
    ({"mass": "1 kg"}, "label", {}, ("label", "not-solved", "Rate on the label is never worked out here: only the label can give it.")),
    ({"mass": "1 kg"}, "cans", {}, ("cans", "not-solved", "Cans is a list, which no single result can give back.")),
    ({"mass": "lots"}, "area", {}, ("mass", "unreadable", "Mass: 'lots' is not a quantity; write one such as 2.5.")),
    ({"mass": "-1 kg"}, "area", {}, ("mass", "no-answer", "Mass cannot be -1 kg: whatever 'Area' is, it never goes below 0 kg.")),
    ({"mass": "6 kg"}, "rate", {}, ("mass", "no-answer", "Mass cannot be 6 kg: whatever 'Rate' is, it never goes above 5 kg.")),
    ({"fixed": "6 kg"}, "rate", {}, ("fixed", "no-answer", "Fixed does not change with 'Rate'.")),
])
def test_what_cannot_be_worked_back_says_why(wanted, for_input, given, problem):
    results = {"mass": MASS, "twice": {**MASS, "label": "Twice", "main": False, "formula": "2 * mass"}}
    if "fixed" in wanted:
        results["fixed"] = {**MASS, "label": "Fixed", "main": False, "formula": "area * rate * 0"}
    given = {"label": "1 g/m2", **given} if for_input != "label" else given
    assert back(wanted, for_input, LISTED, results, **given) == [problem]


def test_what_is_wrong_with_the_other_inputs_is_told_before_anything_is_worked_back():
    assert back({"mass": "1 kg"}, "area", rate="60 g/m2") == [("rate", "impossible", "Rate cannot be more than 50 g/m2; 60 g/m2 was given.")]
    run = solve(a_calculator(), {"mass": "1 kg"}, "area", {"rate": "60 g/m2"})
    assert run.results == {}


PACKS = {"mass": MASS, "packs": {"label": "Packs", "unit": "packs", "formula": "ceil(area * rate / (area * rate) * times / 3)", "main": False}}


def test_where_a_result_goes_in_steps_the_stretch_is_told():
    """Three times to a pack: two packs for four to six times, of which six use them to the full."""
    run = back({"packs": "2"}, "times", None, PACKS)
    assert run.inputs["times"].value() == 6 and run.results["packs"].value() == 2
    assert run.warnings == (Said("Packs: 2 packs for any value from 4 passes to 6 passes; the largest is given.", "note", "times"),)


def test_what_is_worked_back_comes_out_again_without_a_remark():
    run = back({"mass": "2 kg"}, "area")
    assert run.inputs["area"].value() == 200 and run.results["mass"].value() == 2 and run.warnings == ()
    assert back({"mass": 2.0}, "area").inputs["area"].value() == 200


def test_a_leap_tells_both_its_sides():
    """Whole passes of 1 kg each: 2.5 kg lie between two and three."""
    each = {"mass": MASS, "all": {**MASS, "label": "All", "main": False, "formula": "mass * times"}}
    run = back({"all": "2.5 kg"}, "times", None, each)
    assert run.inputs["times"].value() == 2
    assert run.warnings[0] == Said("No value of 'Times' gives exactly 2.5 kg: 2 kg with 2 passes, 3 kg with 3 passes.", "note", "times")


def test_the_side_of_a_leap_that_is_given_stays_within_what_is_wanted_however_it_is_rounded():
    """2 kg up to a third of 200 m2 and 2.4 kg from there on: to nine digits a third is 66.6666667, which is over it. 2.3 kg allow 2."""
    constants = {
        name: {"value": value, "unit": spelling, "meaning": name, "source": "common practice"}
        for name, value, spelling in (("edge", 200, "m2"), ("low", 2, "kg"), ("high", 2.4, "kg"))
    }
    stepped = {"mass": {**MASS, "formula": "low if 3 * area < edge else high"}}
    run = solve(a_calculator(results=stepped, constants=constants), {"mass": "2.3 kg"}, "area", {})
    assert run.results["mass"].value() == 2 and run.inputs["area"].value() == pytest.approx(200 / 3)
    assert run.warnings[0].sentence == "No value of 'Area' gives exactly 2.3 kg: 2 kg with 66.6667 m2, 2.4 kg with a little more."
    falling = {"mass": {**MASS, "formula": "high if 3 * area < edge else low"}}
    run = solve(a_calculator(results=falling, constants=constants), {"mass": "2.3 kg"}, "area", {})
    assert run.results["mass"].value() == 2
    assert run.warnings[0].sentence == "No value of 'Area' gives exactly 2.3 kg: 2 kg with 66.6667 m2, 2.4 kg with a little less."


def test_what_rises_and_falls_says_all_that_meet_or_that_there_are_too_many():
    """times (9 - times) is 14 for 2 and for 7; of a swing that meets it more than three times none is listed."""
    hill = {"mass": MASS, "hill": {"label": "Hill", "unit": "1", "formula": "times * (9 - times)", "main": False}}
    assert back({"hill": "14"}, "times", None, hill) == [
        ("hill", "no-answer", "Hill rises and falls with 'Times', so more than one value gives 14: 2 passes and 7 passes."),
    ]
    swing = {"mass": MASS, "swing": {"label": "Swing", "unit": "1", "formula": "(times - 2) * (times - 4) * (times - 6) * (times - 8)", "main": False}}
    assert back({"swing": "0"}, "times", None, swing) == [
        ("swing", "no-answer", "Swing rises and falls with 'Times', so too many values give 0; ask for another."),
    ]


def test_what_has_no_answer_at_all_says_so():
    root = {"mass": MASS, "root": {"label": "Root", "unit": "1", "formula": "sqrt(0 - times)", "main": False}}
    assert back({"root": "2"}, "times", None, root) == [("root", "no-answer", "Root: no answer, whatever 'Times' is.")]


def test_an_open_stretch_and_one_that_jumps_past():
    """At most 3 whatever comes: the smallest that gives it is given. In steps of 2, an odd number is jumped past."""
    capped = {"mass": {**MASS, "formula": "min(area * rate, cap)"}}
    constants = {"cap": {"value": 3, "unit": "kg", "meaning": "Most.", "source": "common practice"}}
    run = solve(a_calculator(results=capped, constants=constants), {"mass": "3 kg"}, "area", {})
    assert run.inputs["area"].value() == 300
    assert run.warnings[0].sentence == "Mass: 3 kg for any value from 300 m2 up; the smallest is given."
