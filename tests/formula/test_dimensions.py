"""Units that do not agree are refused at their character, in the trade's words."""

import pytest

from generator.formula import FormulaError, ListOf, check, parse, result_dimension
from generator.units import unit

INPUTS = {
    "area": unit("m2"), "depth": unit("mm"), "mass": unit("kg"), "rain": unit("mm"),
    "rate": unit("kg/100 m2"), "flow": unit("L/min"), "speed": unit("km/h"), "swath": unit("m"),
    "nitrogen_percent": unit("%"), "packs": unit("packs"), "pack_mass": unit("kg"),
    "maximum": unit("°C"), "minimum": unit("°C"), "spread": unit("K"), "latitude": unit("deg"),
    "catches": ListOf(unit("mL")), "maxima": ListOf(unit("°C")), "minima": ListOf(unit("°C")), "minutes": unit("min"),
}  # fmt: skip

AGREE = [
    ("area * depth", "m3"),
    ("area * rate", "lb"),
    ("area * rate * nitrogen_percent", "kg"),
    ("ceil(area * rate / pack_mass)", "packs"),
    ("flow / (speed * swath)", "L/ha"),
    ("sqrt(area)", "m"),
    ("depth ** 3", "m3"),
    ("area ** 0.5", "ft"),
    ("area ** -1", "/m2"),
    ("maximum - minimum", "°F difference"),
    ("maximum + spread", "°F"),
    ("spread + maximum", "°C"),
    ("maximum - spread", "°C"),
    ("mean(maximum, minimum)", "°C"),
    ("max(maximum, minimum)", "°C"),
    ("mean(maxima)", "°C"),
    ("mean_deviation(maxima)", "K"),
    ("(maximum - minimum) / spread", "1"),
    ("exp(-((maximum - minimum) / spread) ** 2)", "1"),
    ("sin(latitude)", "1"),
    ("lowest_quarter_mean(catches) / mean(catches)", "%"),
    ("lowest_half_mean(catches)", "mL"),
    ("sides_cross(catches) > 0", None),
    ("count(catches)", "1"),
    ("sum(catches)", "L"),
    ("simpson_sum(catches)", "L"),
    ("mean_deviation(catches / minutes)", "L/min"),
    ("sum(max(mean(maxima, minima) - minimum, 0))", "K"),
    ("mean(min(maxima, maximum))", "°C"),
    ("sum(abs(catches - mean(catches))) / sum(catches)", "%"),
    ("sum(catches * (2 if depth > rain else 1))", "mL"),
    ("count(maxima - minima)", "1"),
    ("sqrt(polygon_area(catches))", "L"),
    ("max(0, depth - rain)", "mm"),
    ("depth if rain > depth else 0", "mm"),
    ("0", "mm"),
    ("abs(depth - rain)", "in"),
    ("2 ** packs", "1"),
    ("rain > 0 and maximum < minimum", None),
    ("0 < rain <= depth", None),
]

DISAGREE = [
    ("area * depth", "kg", 5,
     "area * depth is a volume (L), but the result is declared in kg; use a volume such as m3 or L"),
    ("area + mass", "m2", 5,
     "cannot add area, an area (m2), and mass, a mass (kg); give both the same kind of unit"),
    ("2 * (mass - area)", "kg", 10,
     "cannot subtract mass, a mass (kg), and area, an area (m2); give both the same kind of unit"),
    ("mass < area", None, 5,
     "cannot compare mass, a mass (kg), and area, an area (m2); give both the same kind of unit"),
    ("rain > 1", None, 5,
     "cannot compare rain, a length or a volume per area (mm), and 1, a plain number;"
     " give both the same kind of unit"),
    ("min(mass, area)", "kg", 0,
     "min cannot take mass, a mass (kg), and area, an area (m2); give both the same kind of unit"),
    ("mass if rain > 0 else area", "kg", 5,
     "'if' gives mass, a mass (kg), and area, an area (m2); give both the same kind of unit"),
    ("exp(depth)", "1", 4,
     "exp needs a plain number, but depth is a length or a volume per area (mm);"
     " divide it by a constant of the same unit first"),
    ("log(2 * mass)", "1", 6,
     "log needs a plain number, but 2 * mass is a mass (kg); divide it by a constant of the same unit first"),
    ("ceil(mass)", "1", 5,
     "ceil needs a plain number, but mass is a mass (kg); divide it by a constant of the same unit first"),
    ("sin(minutes)", "1", 4,
     "sin needs a plain number, but minutes is a time (min); divide it by a constant of the same unit first"),
    ("sqrt(mass)", "kg", 0,
     "sqrt(mass) is a quantity in kg1/2, but the result is declared in kg;"
     " no unit of the book measures that; look for a factor too many or too few"),
    ("area ** packs", "m2", 8,
     "area is an area (m2), and its exponent is not a constant; write the exponent as a number, such as 2"),
    ("depth ** 5", "m", 9,
     "the exponent 5 of a length or a volume per area (mm) is beyond 4;"
     " divide by a constant of that unit first"),
    ("2 ** depth", "1", 5,
     "the exponent depth is a length or a volume per area (mm); an exponent is a plain number"),
    ("maximum + minimum", "°C", 8,
     "two temperature readings cannot be added; take the mean(a, b), or the difference of two readings"),
    ("2 * maximum", "°C", 2,
     "a temperature reading cannot be multiplied; take the mean(a, b), or the difference of two readings"),
    ("maximum / 2", "°C", 8,
     "a temperature reading cannot be divided; take the mean(a, b), or the difference of two readings"),
    ("spread - maximum", "°C", 7,
     "cannot subtract spread, a temperature difference (K), and maximum, a temperature (°C);"
     " only a difference in K moves a temperature reading"),
    ("maximum > spread", None, 8,
     "cannot compare maximum, a temperature (°C), and spread, a temperature difference (K);"
     " give both the same kind of unit"),
    ("maximum > 0", None, 8,
     "cannot compare maximum, a temperature (°C), and 0, a plain number; give both the same kind of unit"),
    ("sum(maxima)", "°C", 0,
     "a temperature reading cannot be added up; take the mean(a, b), or the difference of two readings"),
    ("maximum - minimum", "°C", 8,
     "maximum - minimum is a temperature difference (K), but the result is declared in °C;"
     " use a temperature difference such as °C difference or K"),
    ("catches * 2", "mL", 0, "catches is a list of readings; reduce it first, such as mean(catches)"),
    ("maxima - minima", "K", 0, "maxima is a list of readings; reduce it first, such as mean(maxima)"),
    ("sum(maxima - minima) + abs(minima - maxima)", "K", 27, "minima is a list of readings; reduce it first, such as mean(minima)"),
    ("sum(maxima - depth)", "K", 11,
     "cannot subtract maxima, a temperature (°C), and depth, a length or a volume per area (mm);"
     " only a difference in K moves a temperature reading"),
    ("sum(mean(maxima) - minimum)", "K", 17,
     "mean(maxima) - minimum is one value, but sum takes a list; give a list of readings, or write sum(a, b)"),
    ("sum(catches if catches > 0 else 0)", "mL", 15, "catches is a list of readings; reduce it first, such as mean(catches)"),
    ("mean(depth)", "mm", 5,
     "depth is one value, but mean takes a list; give a list of readings, or write mean(a, b)"),
    ("count(depth)", "1", 6, "depth is one value, but count takes a list; give a list of readings"),
    ("aera * depth", "m3", 0, "unknown name 'aera'; did you mean 'area'?"),
    ("rain > depth", "mm", 5,
     "rain > depth answers yes or no, but the result is declared in mm;"
     " choose a value with 'a if condition else b'"),
    ("rain", None, 0,
     "rain is a length or a volume per area (mm), but yes or no is needed here;"
     " compare it with something, such as rain > 0"),
    ("area / area", "kg", 5,
     "area / area is a plain number, but the result is declared in kg;"
     " use 1 or %, or multiply by a constant that has the unit"),
    ("depth + 1 / 0 * depth", "mm", 10, "1 / 0 has no answer; these values would divide by zero"),
    ("10 ** 400", "1", 3, "10**400 has no answer; these values give a number too large to work with"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "result"), AGREE)
def test_units_that_agree(text, result):
    check(parse(text), INPUTS, result and unit(result))
    found = result_dimension(parse(text), INPUTS)
    # A bare 0 is a plain number that every unit accepts.
    assert text == "0" or found == (unit(result).dimension if result else None)


@pytest.mark.parametrize(("text", "result", "offset", "message"), DISAGREE)
def test_units_that_disagree(text, result, offset, message):
    with pytest.raises(FormulaError) as refusal:
        check(parse(text), INPUTS, result and unit(result))
    assert (refusal.value.offset, str(refusal.value)) == (offset, message)
