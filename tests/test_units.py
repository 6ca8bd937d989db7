"""The list of units: factors against published ones, spellings, and what is refused."""

import json
import re
from fractions import Fraction
from math import prod
from pathlib import Path

import pytest

from generator import units as room
from generator.units import Dimension, UnitError, american_words, from_si, kind_of, like, to_si, unit, unit_table, units
from generator.units.unit_list import ATOMS, COUNTS, KINDS

# Plain arithmetic on the exact definitions (1 in = 2.54 cm, 1 lb = 0.45359237 kg, 1 US gal = 231 in3,
# 1 imperial gal = 4.54609 L), as NIST Special Publication 811 (2008), appendix B, lists them.
NIST_SP_811 = [
    ("in", 2.54e-2),
    ("ft", 3.048e-1),
    ("yd", 9.144e-1),
    ("mi", 1.609344e3),
    ("ft2", 9.290304e-2),
    ("yd2", 8.3612736e-1),
    ("ha", 1e4),
    ("ft3", 2.8316846592e-2),
    ("yd3", 7.64554857984e-1),
    ("bu", 3.523907016688e-2),
    ("tbsp", 1.478676478125e-5),
    ("psi", 6.894757293168e3),
    ("US gal", 3.785411784e-3),
    ("imp gal", 4.54609e-3),
    # Weights and Measures Act 1985 (United Kingdom), schedule 1: the pint is 0.56826125 L, the fluid ounce a twentieth of it, the ton 2240 lb.
    ("imp pt", 5.6826125e-4), ("imp qt", 1.1365225e-3), ("imp fl oz", 2.84130625e-5), ("long ton", 1016.0469088),
    ("fl oz", 2.95735295625e-5),
    ("pt", 4.73176473e-4),
    ("qt", 9.46352946e-4),
    ("lb", 4.5359237e-1),
    ("oz", 2.8349523125e-2),
    ("short ton", 9.0718474e2),
    ("t", 1e3),
    ("day", 8.64e4),
    ("mph", 4.4704e-1),
    ("km/h", 1 / 3.6),
    ("US gal/min", 3.785411784e-3 / 60),
    ("lb/ft3", 1.601846337396e1),
    ("°F difference", 5 / 9),
    ("deg", 1.745329251994e-2),
    # The same arithmetic: an acre is 4840 square yards of the international foot; a teaspoon a third of a tablespoon.
    ("in2", 6.4516e-4), ("in3", 1.6387064e-5), ("acre", 4046.8564224), ("tsp", 4.92892159375e-6), ("°F", 5 / 9), ("°F day", 8.64e4 * 5 / 9),
    # The SI brochure (BIPM, 9th edition, 2019), tables 4, 7 and 8: prefixes, and units outside the SI.
    ("mm", 1e-3), ("cm", 1e-2), ("m", 1), ("km", 1e3), ("mm2", 1e-6), ("cm2", 1e-4), ("m2", 1), ("mL", 1e-6), ("L", 1e-3), ("cm3", 1e-6), ("m3", 1),
    ("mg", 1e-6), ("g", 1e-3), ("kg", 1), ("s", 1), ("min", 60), ("h", 3600), ("week", 604800), ("°C", 1), ("K", 1), ("°C difference", 1), ("°C day", 86400),
    ("kPa", 1e3), ("bar", 1e5), ("MJ", 1e6), ("W", 1), ("rad", 1), ("1", 1), ("%", 1e-2), ("ppm", 1e-6),
]

# Conversions printed elsewhere, to half their last digit.
PRINTED = [
    # Kansas State University, Soils laboratory manual, conversion factors (back matter).
    (1, "US gal/acre", "L/ha", 9.354, 0.0006),
    (1, "lb/acre", "kg/ha", 1.12, 0.005),
    # Texas A&M, rancher's reference guide, common conversions.
    (1, "ha", "acre", 2.471, 0.0005),
    (1, "US gal", "fl oz", 128, 1e-9),
    # Arithmetic on those definitions: 1 acre of 43 560 ft2, 1 lb and 1 oz over 1000 ft2.
    (1, "acre", "m2", 4046.856, 0.0005),
    (1, "lb/1000 ft2", "g/m2", 4.88243, 0.000005),
    (1, "oz/1000 ft2", "g/m2", 0.305152, 0.0000005),
    (1, "in/h", "mm/h", 25.4, 1e-9),
    (1, "mph", "km/h", 1.609344, 1e-9),
    # Arithmetic: 1 mm of water on 1 m2 is 1 L; 1 kg/100 m2 is 100 kg/ha is 10 g/m2.
    (1, "mm", "L/m2", 1, 1e-12),
    (1, "kg/100 m2", "kg/ha", 100, 1e-9),
    (1, "kg/100 m2", "g/m2", 10, 1e-9),
    (1, "mL/100 m2", "L/ha", 0.1, 1e-12),
    (1, "g/L", "kg/m3", 1, 1e-12),
    (1, "mL/L", "%", 0.1, 1e-12),
    (1, "kg/100 L", "g/100 L", 1000, 1e-9),
    (20, "°C", "°F", 68, 1e-9),
    (-40, "°F", "°C", -40, 1e-9),
    (9, "°F difference", "°C difference", 5, 1e-12),
    (25.4, "mm/week", "in/week", 1, 1e-12),
]


@pytest.mark.parametrize(("spelling", "factor"), [each for each in NIST_SP_811 if each[0] in units()])
def test_factor_against_nist(spelling, factor):
    assert unit(spelling).factor == pytest.approx(factor, rel=1e-12)


@pytest.mark.parametrize(("value", "given", "wanted", "printed", "tolerance"), PRINTED)
def test_conversion_against_print(value, given, wanted, printed, tolerance):
    assert unit(given).dimension == unit(wanted).dimension
    assert from_si(to_si(value, unit(given)), unit(wanted)) == pytest.approx(printed, abs=tolerance)


def test_every_unit_of_the_list_is_checked_against_print():
    assert {spelling for spelling, _ in NIST_SP_811} >= {spelling for spelling in ATOMS if spelling not in COUNTS}


@pytest.mark.parametrize("known", [each for each in units().values() if "/" in each.spelling.removesuffix("cmol/kg") or each.spelling[:3].isdigit()], ids=str)
def test_a_unit_of_several_is_their_quotient(known):
    """'lb/1000 ft2' is a pound over a thousand square feet, each as printed."""
    printed = dict(NIST_SP_811) | dict.fromkeys(COUNTS, 1.0)

    def size(part: str) -> float:
        count, _, rest = part.partition(" ")
        return float(count) * printed[rest] if count.isdigit() and rest else printed[part or "1"]

    above, *below = known.spelling.split("/")
    assert known.factor == pytest.approx(size(above) / prod(map(size, below)), rel=1e-11)


def test_thermometers_begin_where_they_are_defined_to():
    """0 °C is 273.15 K, 32 °F is 0 °C, and nothing else has a beginning of its own."""
    assert [to_si(0, unit("°C")), to_si(32, unit("°F"))] == pytest.approx([273.15, 273.15], rel=1e-12)
    assert {known.spelling for known in units().values() if known.offset} == {"°C", "°F"}
    assert from_si(273.15, unit("°F")) == pytest.approx(32, rel=1e-12)


@pytest.mark.parametrize(
    ("typed", "spelling"),
    [
        ("m²", "m2"), ("sq m", "m2"), ("M2", "m2"), ("square metres", "m2"), ("ft^2", "ft2"),
        ("lbs", "lb"), ("kg per 100 m²", "kg/100 m2"), ("kg/100m2", "kg/100 m2"),
        ("lb / 1,000 sq ft", "lb/1000 ft2"), ("fluid ounces/1000 ft2", "fl oz/1000 ft2"),
        ("litres/hectare", "L/ha"), ("ml/100 sqm", "mL/100 m2"), ("degC", "°C"), ("deg C", "°C"),
        ("degF", "°F"), ("tonnes/m3", "t/m3"), ("in/hr", "in/h"), ("mi/h", "mph"), ("pass", "passes"),
        ("per m2", "/m2"), ("degrees", "deg"), ("bags", "packs"), ("mg/kg", "ppm"), ("in.", "in"),
        ("GPM", "US gal/min"), ("gpa", "US gal/acre"), ("kph", "km/h"), ("sq. ft.", "ft2"), ("cu. yd.", "yd3"), ("fl. oz.", "fl oz"),
        ("lbs/1,000 sq. ft.", "lb/1000 ft2"), ("seeds/lb", "/lb"), ("seeds per pound", "/lb"), ("holes/sq ft", "/ft2"),
        ("cubic yds", "yd3"), ("meq/100 g", "cmol/kg"), ("pt per 100 US gal", "pt/100 US gal"),
    ],
)  # fmt: skip
def test_other_ways_to_type_a_unit(typed, spelling):
    assert unit(typed).spelling == spelling


@pytest.mark.parametrize(
    ("typed", "message"),
    [
        ("hectre", "unknown unit 'hectre'; did you mean 'hectare'?"),
        ("kg/100 m3", "unknown unit 'kg/100 m3'; did you mean 'kg/100 m2'?"),
        ("gal", "'gal' can mean two things; write 'US gal' or 'imp gal'"),
        ("gal/1000 ft2", "'gal/1000 ft2' can mean two things; write 'US gal' or 'imp gal'"),
        ("tons", "'tons' can mean two things; write 't' for 1000 kg, 'long ton' for 2240 lb or 'short ton' for 2000 lb"),
        ("", "unknown unit ''; use one such as kg/100 m2, L/ha, mm or m2"),
        ("coulomb", "unknown unit 'coulomb'; use one such as kg/100 m2, L/ha, mm or m2"),
    ],
)
def test_a_unit_off_the_list_is_refused_with_what_would_be_right(typed, message):
    with pytest.raises(UnitError) as refusal:
        unit(typed)
    assert str(refusal.value) == message


@pytest.mark.parametrize(
    ("typed", "spelling"),
    [("gal", "US gal"), ("oz/gal", "oz/US gal"), ("gal per 1000 sq ft", "US gal/1000 ft2"), ("tons/acre", "short ton/acre"), ("pints", "pt"), ("tablespoons", "tbsp")],
)
def test_what_it_means_to_somebody_in_us_units(typed, spelling):
    assert unit(typed, american=True).spelling == spelling
    assert unit(american_words(typed)).spelling == spelling


def test_a_gallon_that_is_said_is_left_alone():
    text = "2 imp gal in 3 US gal/min of 1 short ton, 2 long tons, 2 metric tons, 4 British gallons and 3 gal (UK)"
    assert american_words(text) == text


def test_a_reading_and_a_difference_of_temperature_are_different():
    assert unit("°C").dimension != unit("K").dimension
    assert unit("°C").dimension.difference() == unit("°F difference").dimension
    assert (unit("°C").factor, unit("°C").offset) == (1.0, 273.15)


def test_what_the_trade_calls_a_dimension():
    assert kind_of(unit("m3").dimension) == "a volume"
    assert kind_of(unit("kg/ha").dimension) == "a mass per area"
    assert kind_of(Dimension()) == "a plain number"
    assert kind_of(Dimension(mass=Fraction(2))) == "a quantity in kg2"


def test_every_kind_has_one_dimension():
    for kind, columns in KINDS.items():
        spellings = [s for column in columns for s in column.split(", ") if s]
        assert len({unit(spelling).dimension for spelling in spellings}) == 1, kind


def test_units_that_measure_the_same_are_listed_together():
    assert [known.spelling for known in like(unit("m3").dimension)][:2] == ["L", "m3"]


def test_no_two_spellings_are_typed_alike():
    typed = [way for record in (ATOMS | COUNTS).values() for way in record.aliases]
    lowered = [way.lower() for way in (*typed, *ATOMS, *COUNTS)]
    assert len(lowered) == len(set(lowered))


def test_the_table_for_the_browser_is_plain_json():
    table = json.loads(json.dumps(unit_table(), allow_nan=False))
    assert table["units"]["kg/100 m2"] == ["kg/100m2", 0.01, 0.0, "kg m-2", "a mass per area", "metric"]
    assert set(table["units"]) == set(units())


def test_only_one_module_knows_pint():
    imports = re.compile(r"^\s*(?:import|from) pint\b", re.MULTILINE)
    generator = Path(room.__file__).parents[1]
    found = [f for f in generator.rglob("*.py") if imports.search(f.read_text("utf-8"))]
    assert [f.name for f in found] == ["known_units.py"]
