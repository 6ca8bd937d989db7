"""Answers of the language against published figures, and its rounding rules."""

import math

import pytest

from generator.formula import FormulaProblem, parse
from generator.formula.evaluate import ONE_NUMBER
from generator.units import from_si, to_si, unit

# Catch-can readings [mL] with printed uniformities: G. Grabow, NC State University, 2021,
# documentation of an open sprinkler-evaluation library, CU, DU and DU.lh examples.
FIFTEEN_CANS = [47, 42, 45, 24, 13, 26, 33, 34, 27, 30, 40, 44, 32, 12, 12]
# The same author, 2022: landscape sprinkler audit, two-zone turf rotor system.
FORTY_SIX_CANS = [
    9, 11, 11, 13, 17, 14, 15, 15, 3, 15, 13, 6, 14, 11, 7, 11, 14, 17, 9, 6, 4, 8, 9, 12, 26, 17, 8,
    4, 6, 10, 14, 16, 14, 9, 6, 7, 10, 6, 16, 11, 3, 16, 10, 2, 5, 11,
]  # fmt: skip
LOW_QUARTER = "100 * lowest_quarter_mean(cans) / mean(cans)"
LOW_HALF = "100 * lowest_half_mean(cans) / mean(cans)"
CHRISTIANSEN = "100 * (1 - mean_deviation(cans) / mean(cans))"


@pytest.mark.parametrize(
    ("text", "cans", "printed", "tolerance"),
    [
        (CHRISTIANSEN, FIFTEEN_CANS, 69.13955, 5e-6),
        (LOW_QUARTER, FIFTEEN_CANS, 49.62039, 5e-6),
        (LOW_HALF, FIFTEEN_CANS, 71.58351, 5e-6),
        (CHRISTIANSEN, FORTY_SIX_CANS, 64, 0.5),
        (LOW_HALF, FORTY_SIX_CANS, 64, 0.5),
        (LOW_QUARTER, FORTY_SIX_CANS, 45, 0.5),
    ],
)
def test_catch_can_uniformity_as_printed(text, cans, printed, tolerance):
    assert parse(text).evaluate({"cans": cans}) == pytest.approx(printed, abs=tolerance)


@pytest.mark.parametrize(
    ("count", "lowest"),
    # n/4 to the nearest, halves up: 46/4 = 11.5 -> 12, 15/4 = 3.75 -> 4, 1/4 -> at least 1.
    [(46, 12), (15, 4), (16, 4), (13, 3), (6, 2), (5, 1), (2, 1), (1, 1)],
)
def test_how_many_cans_make_the_lowest_quarter(count, lowest):
    # Readings 1..count: the mean of the lowest k of them is (k + 1) / 2.
    cans = [float(reading) for reading in range(count, 0, -1)]
    found = parse("lowest_quarter_mean(cans)").evaluate({"cans": cans})
    assert found == (lowest + 1) / 2


@pytest.mark.parametrize(
    ("text", "readings", "area"),
    [
        # A parabola 4 - x**2 from -2 to 2 holds 32/3; Simpson finds it whole, straight lines lose a little: 0 + 3 + 4 + 3 + 0.
        ("simpson_sum(r)", [0, 3, 4, 3, 0], 32 / 3),
        ("trapezoidal_sum(r)", [0, 3, 4, 3, 0], 10),
        # An even number: the last step, from 4 to 0, is straight; the two before it hold (0 + 4 x 3 + 4) / 3.
        ("simpson_sum(r)", [0, 3, 4, 0], 16 / 3 + 2),
        ("simpson_sum(r)", [2, 4], 3),
        ("simpson_sum(r)", [5], 0),
        ("trapezoidal_sum(r)", [5], 0),
        # A right triangle of legs 3 and 4, and a rectangle of 2 by 5 far from zero.
        ("polygon_area(r)", [0, 0, 3, 0, 0, 4], 6),
        ("polygon_area(r)", [1000, 1000, 1000, 1005, 1002, 1005, 1002, 1000], 10),
        ("polygon_area(r)", [0, 0, 3, 0], 0),
    ],
)
def test_areas_from_readings(text, readings, area):
    assert parse(text).evaluate({"r": [float(each) for each in readings]}) == pytest.approx(area, rel=1e-15)


def test_a_corner_with_one_distance_is_refused():
    with pytest.raises(FormulaProblem, match="Every corner needs two distances"):
        parse("polygon_area(r)").evaluate({"r": [0.0, 0.0, 3.0]})


def test_extraterrestrial_radiation_of_the_fao_example():
    """FAO Irrigation and Drainage Paper 56 (Allen et al. 1998), example 8: 3 September at 20 °S.

    The paper prints dr = 0.985, declination 0.120, sunset angle 1.527, Ra = 32.2 MJ/m2/day.
    """
    values = {"latitude": to_si(-20, unit("deg")), "day_of_year": 246.0}
    values["solar_constant"] = to_si(0.0820, unit("MJ/m2/min"))

    def step(name, text, printed, tolerance):
        values[name] = parse(text).evaluate(values)
        assert values[name] == pytest.approx(printed, abs=tolerance)

    step("distance", "1 + 0.033 * cos(2 * pi * day_of_year / 365)", 0.985, 0.0005)
    step("declination", "0.409 * sin(2 * pi * day_of_year / 365 - 1.39)", 0.120, 0.0005)
    step("sunset", "acos(-tan(latitude) * tan(declination))", 1.527, 0.0005)
    radiation = parse(
        "solar_constant / pi * distance * (sunset * sin(latitude) * sin(declination)"
        " + cos(latitude) * cos(declination) * sin(sunset))"
    ).evaluate(values)
    assert from_si(radiation, unit("MJ/m2/day")) == pytest.approx(32.2, abs=0.05)


@pytest.mark.parametrize(
    ("text", "answer"),
    [
        ("round(2.5)", 3), ("round(-2.5)", -3), ("round(0.5)", 1), ("round(1.4999)", 1),
        ("round(0.49999999999999994)", 0), ("round(4503599627370497.0)", 4503599627370497),
        ("ceil(4.0000000001)", 4), ("ceil(4.00000001)", 5), ("ceil(3.2)", 4), ("ceil(-3.2)", -3),
        ("floor(3.9999999999)", 4), ("floor(3.99999999)", 3), ("floor(-3.2)", -4),
        ("ceil(1000000.0005)", 1000000), ("ceil(1000000000.4)", 1000000001),
        ("ceil((0.1 + 0.2) / 0.1)", 3), ("ceil(0)", 0),
        ("2 ** 3 ** 2", 512), ("-2 ** 2", -4), ("(-2) ** 3", -8), ("2 ** -2", 0.25), ("4 ** 0.5", 2),
        ("0 ** 0", 1), ("7 - 3 - 2", 2), ("8 / 4 / 2", 1), ("1e3 + .5", 1000.5),
        ("min(3, 1, 2)", 1), ("max(3, 1, 2)", 3), ("sum(1, 2, 3)", 6), ("mean(1, 2, 6)", 3),
        ("abs(-3)", 3), ("sqrt(9)", 3), ("1 if 2 > 1 else 1 / 0", 1), ("exp(0) + log(1)", 1),
        ("1 < 2 < 3", True), ("1 < 3 < 2", False), ("not 1 > 2 and 2 == 2", True),
        ("1 != 1 or 2 >= 2", True), ("2 > 1 or 1 / 0 > 1", True),
    ],
)  # fmt: skip
def test_what_arithmetic_gives(text, answer):
    found = parse(text).evaluate({})
    assert found == answer
    assert isinstance(found, bool) == isinstance(answer, bool)


def test_a_problem_says_where_and_what():
    with pytest.raises(FormulaProblem) as problem:
        parse("2 + area / (rate - rate)").evaluate({"area": 1.0, "rate": 2.0})
    assert problem.value.code == "division-by-zero"
    assert problem.value.offset == 9
    assert problem.value.sentence == "These values would divide by zero."


def test_a_missing_value_is_named():
    with pytest.raises(FormulaProblem) as problem:
        parse("area * rate").evaluate({"area": 1.0})
    assert problem.value.sentence == "One of the values is missing (rate)."


def test_functions_leave_no_problem_to_python():
    for name, function in ONE_NUMBER.items():
        for value in (-1e308, -2.5, -1.0, -0.0, 0.0, 0.5, 1.0, 1e308, 5e-324):
            try:
                assert math.isfinite(parse(f"{name}(a)").evaluate({"a": value})), (name, value)
            except FormulaProblem as problem:
                assert problem.sentence.endswith("."), function


@pytest.mark.parametrize(
    ("text", "given", "expected"),
    [
        # Worked by hand: 25 and 15 have the mean of 20, 10 above the base; 12 and 2 have 7, which is below it and counts as nought.
        ("sum(max(mean(highs, lows) - base, 0))", {"highs": [25, 12], "lows": [15, 2], "base": 10}, 10),
        ("sum(highs - lows)", {"highs": [25, 12, 7], "lows": [15, 2, 7]}, 20),
        ("max(2 * r ** 2 - 1)", {"r": [1, -3, 2]}, 17),
        ("min(-r)", {"r": [1, -3, 2]}, -2),
        ("count(r - 1)", {"r": [1, -3, 2]}, 3),
        # Deviations from the mean of 4: 2, 0 and 2.
        ("sum(abs(r - mean(r)))", {"r": [2, 4, 6]}, 4),
        ("sum(min(r, cap, s))", {"r": [1, 9, 5], "s": [8, 8, 3], "cap": 6}, 10),
        ("sum(r * (2 if cap > 1 else 3))", {"r": [1, 2], "cap": 6}, 6),
    ],
)
def test_arithmetic_reading_by_reading(text, given, expected):
    assert parse(text).evaluate(given) == expected


def test_lists_that_are_not_equally_long_get_a_sentence():
    with pytest.raises(FormulaProblem) as problem:
        parse("sum(2 * (highs - lows))").evaluate({"highs": [1, 2], "lows": [1]})
    assert (problem.value.code, problem.value.offset) == ("lists-unequal", 15)
    assert problem.value.sentence == "The lists of readings are not the same length."
