"""Quantities as people of the English-speaking countries type them, by lot, each with what it means: worked out here and never by our reader.

Factors are exact. NIST Special Publication 811 (2008), appendix B: the inch, the pound, the US gallon of 231 cubic inches, the acre of
43 560 square feet, 0 °F and the pound-force of 9.80665 m/s2. Weights and Measures Act 1985 (United Kingdom), schedule 1: the gallon of
4.54609 L, its pint and fluid ounce, the stone of 14 lb and the ton of 2240 lb. Australian tablespoons hold 20 mL, American ones half a
fluid ounce.
"""

import random
from collections.abc import Iterator
from fractions import Fraction as F
from typing import NamedTuple

SEED = 20_260
INCH, POUND, US_GALLON, GALLON = F("0.0254"), F("0.45359237"), 231 * F("0.0254") ** 3, F("0.00454609")
FOOT, ACRE = 12 * INCH, 43_560 * (12 * INCH) ** 2
OUNCE, US_FLUID_OUNCE, FLUID_OUNCE = POUND / 16, US_GALLON / 128, GALLON / 160


class Way(NamedTuple):
    """A way to type a unit. sizes: what it may mean, in SI; reads: among metric units, and among US units, None where it has to be refused.

    american: whether '1,500' of it is fifteen hundred, as the list of units says of what is American in all its parts.
    """

    text: str
    sizes: tuple[F, ...]
    reads: tuple[F | None, F | None]
    american: bool = False
    offset: F = F(0)


def _sure(size: F, texts: str, american: bool = False, offset: F = F(0)) -> list[Way]:
    return [Way(text.strip(), (size,), (size, size), american, offset) for text in texts.split(",")]


def _american(size: F, texts: str) -> list[Way]:
    return _sure(size, texts, american=True)


def _either(sizes: tuple[F, ...], texts: str) -> list[Way]:
    """Words that mean what the first size says to somebody among US units, and are refused elsewhere."""
    return [Way(text.strip(), sizes, (None, sizes[0]), True) for text in texts.split(",")]


def _refused(sizes: tuple[F, ...], texts: str) -> list[Way]:
    return [Way(text.strip(), sizes, (None, None)) for text in texts.split(",")]


LENGTHS = (
    _sure(F(1, 1000), "mm, mm., millimetre, millimetres, millimeters, mms") + _sure(F(1, 100), "cm, cms, centimetres, centimeters")
    + _sure(F(1), "m, metre, metres, meter, meters, mtrs") + _sure(F(1000), "km, kilometres, kms")
    + _american(INCH, "in, in., inch, inches, \", ″, '', ins") + _american(FOOT, "ft, ft., foot, feet, ', ′, ’")
    + _american(3 * FOOT, "yd, yds, yard, yards") + _american(5280 * FOOT, "mi, mile, miles")
    + _refused((INCH / 1000, F(1, 1000)), "mil, mils") + _refused((66 * FOOT,), "chain, chains") + _refused((INCH / 100,), "points")
)  # fmt: skip
AREAS = (
    _sure(F(1), "m2, m², m^2, sq m, sqm, sq. m., sq.m, square metre, square metres, square meters, sq metres") + _sure(F(10_000), "ha, hectare, hectares")
    + _american(FOOT**2, "ft2, ft², ft^2, sq ft, sqft, sq. ft., square feet, sq feet, sf")
    + _american(9 * FOOT**2, "yd2, yd², sq yd, sq yds, square yards") + _american(ACRE, "acre, acres, ac")
    + _sure(F(100), "100 m2, 100 sq m") + _american(1000 * FOOT**2, "1000 ft2, 1,000 sq ft, 1000 sq. ft., thousand square feet")
    + _refused((F(10**6),), "km2, sq km, square kilometres") + _refused((F(100),), "are, ares") + _refused((F(1, 100),), "dm2, sq dm")
    + _refused((F(1000),), "1000 m2")
)  # fmt: skip
VOLUMES = (
    _sure(F(1, 10**6), "mL, ml, mls, millilitre, millilitres, milliliters, cc, cubic cm") + _sure(F(1, 1000), "L, l, litre, litres, liter, liters, ltr, ltrs")
    + _sure(F(1), "m3, m³, cubic metres, cubic meters, kL")
    + _american(US_GALLON, "US gal, US gallon, US gallons, U.S. gal, US gal., us gallons, gal (US), gallons US")
    + _sure(GALLON, "imp gal, imp. gal., imp gallons, imperial gallon, imperial gallons, UK gal, UK gallons, British gallons, gallons (UK), gal imp")
    + _american(US_GALLON / 8, "US pint, US pints, pt") + _sure(GALLON / 8, "imp pt, UK pint, UK pints, imperial pints, UK pt, pints (UK)")
    + _american(US_GALLON / 4, "qt, US quarts") + _sure(GALLON / 4, "imp qt, UK quarts")
    + _american(US_FLUID_OUNCE, "fl oz, fl. oz., floz, US fl oz, fluid ounces, fluid oz")
    + _sure(FLUID_OUNCE, "imp fl oz, UK fl oz, imperial fl oz, UK fluid ounces, fl oz (UK)")
    + _american(FOOT**3, "ft3, ft³, cu ft, cubic feet") + _american(27 * FOOT**3, "yd3, cu yd, cu. yd., cubic yards")
    + _american(US_FLUID_OUNCE / 2, "tbsp") + _american(US_FLUID_OUNCE / 6, "tsp, teaspoons")
    + _either((US_GALLON, GALLON), "gal, gals, gallon, gallons, gal.") + _either((US_GALLON / 8, GALLON / 8), "pint, pints, pts")
    + _either((US_GALLON / 4, GALLON / 4), "quart, quarts") + _either((US_FLUID_OUNCE / 2, F(20, 10**6)), "tablespoon, tablespoons")
    + _refused((F(1000), F(1, 10**6)), "ML, MLs, Ml, megalitres") + _refused((US_GALLON / 16, F(250, 10**6)), "cup, cups") + _refused((F(1, 10**5),), "cl")
)  # fmt: skip
MASSES = (
    _sure(F(1), "kg, kgs, kg., kilo, kilos, kilogram, kilograms") + _sure(F(1, 1000), "g, gram, grams, gm, gms, grammes") + _sure(F(1, 10**6), "mg, milligrams")
    + _sure(F(1000), "t, tonne, tonnes, metric ton, metric tons, metric tonnes") + _american(POUND, "lb, lbs, lb., lbs., pound, pounds")
    + _american(OUNCE, "oz, oz., ounce, ounces") + _american(2000 * POUND, "short ton, short tons, US ton, US tons")
    + _sure(2240 * POUND, "long ton, long tons, UK tons, imperial tons") + _either((2000 * POUND, 2240 * POUND, F(1000)), "ton, tons")
    + _refused((14 * POUND, 2000 * POUND), "st") + _refused((14 * POUND,), "stone, stones") + _refused((112 * POUND, 100 * POUND), "cwt, hundredweight")
    + _refused((F(1000), F(1, 10**6)), "Mg") + _refused((POUND / 7000, F(1, 1000)), "gr") + _refused((POUND,), "#")
)  # fmt: skip
TIMES = _sure(F(3600), "h, hr, hrs, hour, hours, hr.") + _sure(F(60), "min, mins, minute, minutes") + _sure(F(1), "s, sec, secs, seconds") + _sure(F(86400), "days, day")
TEMPERATURES = (
    _sure(F(1), "°C, C, deg C, degC, degrees C, Celsius, degrees Celsius, ° C, ℃, º C", offset=F("273.15"))
    + _sure(F(5, 9), "°F, F, deg F, degrees F, Fahrenheit, degrees Fahrenheit, ℉", american=True, offset=F("459.67") * F(5, 9))
    + _refused((F(1), F(5, 9)), "°, deg, degrees")
)  # fmt: skip
PSI = POUND * F("9.80665") / INCH**2
PRESSURES = (
    _sure(F(1000), "kPa, kpa, kilopascals") + _sure(F(100_000), "bar, bars")
    + _american(PSI, "psi, p.s.i., lb/in2, lb/sq in, lbs per square inch, pounds per square inch")
    + _refused((F(100),), "hPa, mbar, millibars") + _refused((F(10**6),), "MPa")
)  # fmt: skip
SPEEDS = (
    _sure(F(5, 18), "km/h, kph, kmh, km/hr, kmph, kilometres per hour, km per hour") + _sure(F(1), "m/s, metres per second, m/sec")
    + _american(5280 * FOOT / 3600, "mph, mi/h, miles per hour, miles/hour") + _american(FOOT / 60, "ft/min, feet per minute, fpm")
    + _refused((F(1852, 3600),), "knots, kn, kts") + _refused((F(1),), "mps")
)  # fmt: skip
RAIN = (
    _sure(F(1, 3_600_000), "mm/h, mm/hr, mm per hour, millimetres per hour") + _american(INCH / 3600, "in/h, in/hr, inches per hour, in. per hr")
    + _sure(F(1, 604_800_000), "mm/week, mm per week") + _american(INCH / 604_800, "in/week, inches per week")
)  # fmt: skip
FLOWS = (
    _sure(F(1, 60_000), "L/min, l/min, lpm, litres per minute, liters/minute, L per min") + _sure(F(1, 3_600_000), "L/h, l/hr, litres per hour")
    + _american(US_GALLON / 60, "gpm, US gal/min, US gpm, US gallons per minute") + _sure(GALLON / 60, "imp gal/min, imp gpm, UK gpm, imp gallons per minute")
    + _either((US_GALLON / 60, GALLON / 60), "gal/min, gallons per minute, gal per min") + _refused((F(1, 60_000),), "l/m, litres a minute")
)  # fmt: skip
SHARES = _sure(F(1, 100), "%, per cent, percent, pct") + _refused((F(1, 100),), "pc, p.c.")
PER_AREA = (
    ((F(1), False), ("m2", "m²", "sq m", "square metre")), ((F(100), False), ("100 m2", "100 m²", "100 sq m")), ((F(10_000), False), ("ha", "hectare")),
    ((ACRE, True), ("acre", "ac")), ((1000 * FOOT**2, True), ("1000 ft2", "1,000 sq ft", "1000 sq. ft.", "1000 sf", "thousand sq ft")),
)  # fmt: skip
THOUSANDS = ("lbs per thousand", "lb/1000", "lb/thousand", "lbs per 1000")


def _rates(tops: list[Way], read: set[tuple[F, F]]) -> list[Way]:
    """Each amount over each area; those of `read` (size of the amount, size of the area) have to be read, others may be."""
    found = []
    for top in tops:
        for (area, american), texts in PER_AREA:
            for place, text in enumerate(texts):
                joined = f"{top.text}{('/', ' per ', ' / ', '/')[place % 4]}{text}"
                reads = tuple(size and size / area for size in top.reads) if (top.sizes[0], area) in read else (None, None)
                may = not any(reads) and any(top.reads)
                found.append(Way(joined, tuple(size / area for size in top.sizes), MAY if may else reads, top.american and american))
    return found


MAY = ("may", "may")  # Not held to be read: right or refused.
_ALL_AREAS = {size for (size, _), _ in PER_AREA}
MASS_RATES = _rates(
    [way for way in MASSES if way.text in ("kg", "kgs", "g", "grams", "t", "tonnes", "lb", "lbs", "oz", "tons", "cwt", "stone", "kilos", "gm")],
    {(F(1), F(100)), (F(1), F(1)), (F(1), F(10_000)), (F(1, 1000), F(1)), (F(1000), F(10_000)), (POUND, ACRE), (POUND, 1000 * FOOT**2), (OUNCE, 1000 * FOOT**2)},
) + _american(POUND / (1000 * FOOT**2), ", ".join(THOUSANDS)) + _american(OUNCE / (9 * FOOT**2), "oz/yd2, oz per sq yd, ounces per square yard")  # fmt: skip
VOLUME_RATES = _rates(
    [way for way in VOLUMES if way.text in (
        "L", "litres", "mL", "mls", "ml", "US gal", "imp gal", "UK gallons", "gal", "gallons", "fl oz", "imp fl oz", "UK pints", "pints", "imp pt", "pt", "ML", "m3",
    )],
    {(F(1, 1000), F(10_000)), (F(1, 1000), F(100)), (F(1, 10**6), F(100)), (US_GALLON, ACRE), (GALLON, ACRE), (US_FLUID_OUNCE, 1000 * FOOT**2),
     (FLUID_OUNCE, ACRE), (GALLON / 8, ACRE)},
) + _american(US_GALLON / ACRE, "gpa, GPA") + _sure(GALLON / ACRE, "imp gpa, UK gpa")  # fmt: skip

# Kind -> its dimension, units that a page may want it in (metric, then US), and the ways.
KINDS: dict[str, tuple[str, tuple[str, ...], tuple[str, ...], list[Way]]] = {
    "a length": ("m", ("mm", "m", "cm"), ("in", "ft"), LENGTHS),
    "an area": ("m2", ("m2", "ha", "100 m2"), ("ft2", "1000 ft2", "acre"), AREAS),
    "a volume": ("m3", ("L", "mL", "m3"), ("US gal", "fl oz", "yd3"), VOLUMES),
    "a mass": ("kg", ("kg", "g", "t"), ("lb", "oz", "short ton"), MASSES),
    "a time": ("s", ("min", "h", "s"), (), TIMES),
    "a temperature": ("K", ("°C",), ("°F",), TEMPERATURES),
    "a pressure": ("kPa", ("kPa", "bar"), ("psi",), PRESSURES),
    "a speed": ("m/s", ("km/h", "m/s"), ("mph", "ft/min"), SPEEDS),
    "a rate of water": ("m/s", ("mm/h", "mm/week"), ("in/h",), RAIN),
    "a flow": ("m3/s", ("L/min", "L/h"), ("US gal/min",), FLOWS),
    "a share": ("1", ("%",), (), SHARES),
    "a mass per area": ("kg/m2", ("g/m2", "kg/100 m2", "kg/ha"), ("lb/1000 ft2", "lb/acre"), MASS_RATES),
    "a volume per area": ("m", ("L/ha", "mL/100 m2"), ("US gal/acre", "fl oz/1000 ft2"), VOLUME_RATES),
}
SIZES = {
    "mm": F(1, 1000), "cm": F(1, 100), "m": F(1), "km": F(1000), "in": INCH, "ft": FOOT, "yd": 3 * FOOT, "mi": 5280 * FOOT, "m2": F(1), "ha": F(10_000),
    "cm2": F(1, 10_000), "mm2": F(1, 10**6), "ft2": FOOT**2, "in2": INCH**2, "yd2": 9 * FOOT**2, "acre": ACRE, "L": F(1, 1000), "mL": F(1, 10**6), "m3": F(1),
    "cm3": F(1, 10**6), "US gal": US_GALLON, "imp gal": GALLON, "pt": US_GALLON / 8, "qt": US_GALLON / 4, "imp pt": GALLON / 8, "imp qt": GALLON / 4,
    "fl oz": US_FLUID_OUNCE, "imp fl oz": FLUID_OUNCE, "ft3": FOOT**3, "yd3": 27 * FOOT**3, "in3": INCH**3, "tbsp": US_FLUID_OUNCE / 2, "tsp": US_FLUID_OUNCE / 6,
    "kg": F(1), "g": F(1, 1000), "mg": F(1, 10**6), "t": F(1000), "lb": POUND, "oz": OUNCE, "short ton": 2000 * POUND, "long ton": 2240 * POUND, "min": F(60),
    "h": F(3600), "s": F(1), "day": F(86400), "week": F(604_800), "°C": F(1), "°F": F(5, 9), "kPa": F(1000), "bar": F(100_000), "psi": PSI,
    "mph": 5280 * FOOT / 3600, "%": F(1, 100),
}  # fmt: skip
_DIMENSIONS = {"mm cm m km in ft yd mi": "m", "m2 ha cm2 mm2 ft2 in2 yd2 acre": "m2", "kg g mg t lb oz": "kg", "min h s day week": "s", "L mL m3 cm3 pt qt": "m3"}
DIMENSIONS = {name: dimension for names, dimension in _DIMENSIONS.items() for name in names.split()} | dict.fromkeys(
    ("US gal", "imp gal", "imp pt", "imp qt", "fl oz", "imp fl oz", "ft3", "yd3", "in3", "tbsp", "tsp"), "m3"
) | {"short ton": "kg", "long ton": "kg", "°C": "K", "°F": "K", "kPa": "kPa", "bar": "kPa", "psi": "kPa", "mph": "m/s", "%": "1"}  # fmt: skip
_SAME = {"m3/m2": "m", "m3/m3": "1"}


def size_of(spelling: str) -> F:
    """Of a unit as the book prints it, '1000 ft2', 'kg/100 m2', in SI."""
    top, *below = (_part(part) for part in spelling.split("/"))
    for each in below:
        top /= each
    return top


def _part(part: str) -> F:
    count, _, rest = part.partition(" ")
    return F(count) * SIZES[rest] if count.isdigit() else SIZES[part]


def dimension_of(spelling: str) -> str:
    parts = [DIMENSIONS[part.lstrip("0123456789 ")] for part in spelling.split("/")]
    joined = "/".join(parts)
    return _SAME.get(joined, joined)


class Typed(NamedTuple):
    """text: what was typed, where a page wants `unit`. means: what it may mean, in SI; must: 'read' as the first of these, 'refuse', or 'may'."""

    text: str
    unit: str
    means: tuple[F, ...]
    must: str
    sizes: tuple[F, ...]
    dimension: str
    wanted: str


BLANKS = (" ", " ", " ", " ", "  ", "\u00a0", "\u2009", "\u202f")
FRACTIONS = {"½": F(1, 2), "¼": F(1, 4), "¾": F(3, 4), "⅓": F(1, 3), "⅛": F(1, 8)}


def _number(chance: random.Random, american: bool) -> tuple[str, tuple[F, ...], str]:
    """A number as typed, what it may mean, and whether it must be read, refused, or may be."""
    whole, small, group = chance.randint(1, 9999), chance.randint(1, 20), chance.randint(100, 999)
    blank = chance.choice(("\u00a0", "\u2009", "\u202f", " "))
    kind = chance.randint(0, 29)
    if kind < 6:
        return str(whole), (F(whole),), "read"
    if kind < 10:
        text = f"{small}.{chance.randint(0, 99):02}"
        return text, (F(text),), "read"
    top, bottom = chance.choice(((1, 2), (1, 4), (3, 4), (5, 8), (1, 3)))
    sign, share = chance.choice(list(FRACTIONS.items()))
    ways: dict[int, tuple[str, tuple[F, ...], str]] = {
        10: (f".{small}", (F(f"0.{small}"),), "read"),
        11: (f"{whole}.", (F(whole),), "read"),
        12: (f"{small},5", (F(f"{small}.5"),), "read"),
        13: (f"{small},{group}", (F(small * 1000 + group), F(f"{small}.{group}")), "read" if american else "refuse"),
        14: (f"{small},{group},000", (F(small * 10**6 + group * 1000),), "read"),
        15: (f"{small},{group}.5", (F(f"{small}{group}.5"),), "read"),
        16: (f"{small}.{group},5", (F(f"{small}{group}.5"),), "read"),
        17: (f"{small}{blank}{group}", (F(small * 1000 + group),), "read"),
        18: (f"{small}'{group}", (F(small * 1000 + group),), "read"),
        19: (f"{top}/{bottom}", (F(top, bottom),), "read"),
        20: (f"{small}{chance.choice((' ', '-'))}{top}/{bottom}", (small + F(top, bottom),), "read"),
        21: (f"{chance.choice(('', str(small), f'{small} '))}{sign}", (), "read"),
        22: (f"{small}{chance.choice(('e', 'E', 'e+'))}{chance.randint(0, 3)}", (), "read"),
        23: (f"+{small}", (F(small),), "read"),
        24: (f"{chance.choice('-−–')}{small}", (F(-small),), "read"),
        25: (f"{small}{chance.choice((' to ', '-', ' - ', '–', '—', ' or ', '..'))}{small + 5}", (F(small), F(small + 5)), "refuse"),
        26: (f"{chance.choice(('~', 'approx ', 'approx. ', 'about ', 'c. ', 'ca ', '<', 'up to ', '≈', 'max '))}{small}", (F(small),), "refuse"),
        27: (f"{small}·5", (F(f"{small}.5"),), "read"),
        28: (f"{small}{chance.choice((' ±', '+/-', ' +'))}", (F(small),), "refuse"),
        29: (f"{small}.{group}", (F(f"{small}.{group}"),), "read"),
    }  # fmt: skip
    text, means, must = ways[kind]
    if kind == 21:
        means = (share + (F(text[:-1].strip()) if text[:-1] else 0),)
    if kind == 22:
        means = (F(text.lower()),)
    return text, means, must


def _cased(chance: random.Random, way: Way) -> tuple[str, bool]:
    """The unit as typed, and whether its letters are as they should be. A capital M may make a million of a thousandth."""
    if chance.random() < 0.85:
        return way.text, True
    text = chance.choice((str.upper, str.lower, str.title, str.capitalize))(way.text)
    return text, text == way.text


def _quantity(chance: random.Random) -> Typed:
    kind = chance.choice(list(KINDS))
    dimension, _, _, ways = KINDS[kind]
    way = chance.choice(ways)
    wanted_kind = kind if chance.random() < 0.9 else chance.choice(list(KINDS))
    wanted_dimension, wanted_metric, wanted_us, _ = KINDS[wanted_kind]
    wanted = chance.choice((*wanted_metric, *wanted_us))
    american = wanted in wanted_us
    bare = chance.random() < 0.08
    number, values, must = _number(chance, american if bare else way.american)
    if bare:
        size, offset = size_of(wanted), {"°C": F("273.15"), "°F": F("459.67") * F(5, 9)}.get(wanted, F(0))
        # A blank before the last hundred of '5 100' may part it from '100 m2'; without a unit it does not.
        return Typed(number, wanted, tuple(value * size + offset for value in values), must, (size,), wanted_dimension, wanted)
    unit, usual = _cased(chance, way)
    reads = way.reads[american]
    if reads is None or wanted_dimension != dimension:
        must = "refuse"
    elif must == "read" and (reads == "may" or not usual or wanted_kind != kind or unit[0].isdigit()):
        must = "may"
    if any(word.lower().strip("s") in ("ml", "mg") and word[0] == "M" for word in unit.replace("/", " ").split()):
        must = "refuse"
    elif way.text[0] == "M" and not usual and wanted_dimension == dimension:
        must = "may"
    sizes = (reads,) if isinstance(reads, F) else way.sizes
    if must == "may" and len(values) > 1 and way.american:
        values = values[:1]
    between = "" if chance.random() < 0.3 and not unit[0].isdigit() and number[-1] not in "±-+" else chance.choice(BLANKS)
    if not between and "e" in number.lower():
        between = " "
    ending = "." if chance.random() < 0.05 and usual else ""
    means = tuple(value * size + way.offset for size in sizes for value in values)
    return Typed(f"{number}{between}{unit}{ending}", wanted, means, must, way.sizes, dimension, wanted)


def _in_two_steps(chance: random.Random) -> Typed:
    larger, smaller = chance.randint(1, 12), chance.randint(1, 11)
    kinds = (
        ("a length", FOOT, INCH, ("{} ft {} in", "{}' {}\"", "{}'{}\"", "{}′{}″", "{}ft {}in", "{}ft{}in", "{} feet {} inches", "{} ft {}", "{}'{}", "{} ft and {} in")),
        ("a mass", POUND, OUNCE, ("{} lb {} oz", "{} lbs {} oz", "{}lb {}oz", "{} pounds {} ounces", "{} lb {}", "{}lb{}oz")),
        ("a mass", 14 * POUND, POUND, ("{} st {} lb", "{} stone {}", "{} stone {} lb", "{}st {}lb")),
        ("a time", F(3600), F(60), ("{} h {} min", "{}h{}", "{}h{}m", "{}h {}m", "{} hr {} min", "{} hours {} minutes", "{} hrs {}", "{}:{:02}", "{} hour and {} minutes")),
        ("a time", F(60), F(1), ("{} min {} s", "{} min {} sec", "{}min {}s", "{} mins {}", "{}min{}s")),
    )  # fmt: skip
    kind, one, other, ways = chance.choice(kinds)
    dimension, metric, us, _ = KINDS[kind]
    way, wanted = chance.choice(ways), chance.choice((*metric, *us))
    sure = way.count("{}") == 2 and way[-1] != "}" and "st" not in way and "and" not in way
    return Typed(way.format(larger, smaller), wanted, (larger * one + smaller * other,), "read" if sure else "may", (one, other), dimension, wanted)


def _clock(chance: random.Random) -> Typed:
    hour, minute = chance.randint(1, 12), chance.randint(0, 59)
    text = chance.choice((f"{hour}:{minute:02}", f"{hour}.{minute:02}pm", f"{hour} am", f"{hour}pm", f"{hour}:{minute:02} a.m.", f"{hour}:{minute:02}:00"))
    kind = chance.choice(list(KINDS))
    dimension, metric, us, _ = KINDS[kind]
    wanted = chance.choice((*metric, *us))
    return Typed(text, wanted, (), "refuse", (), dimension, wanted)


NAMES = [
    (kind, way) for kind in ("a length", "an area", "a volume", "a mass", "a time", "a pressure")
    for way in KINDS[kind][3] if isinstance(way.reads[0], F) and way.text.replace(" ", "").isalpha() and len(way.text.split()[-1]) > 3
]  # fmt: skip
KNOWN = {way.text.lower().replace(" ", "") for _, _, _, ways in KINDS.values() for way in ways}


def _slip(chance: random.Random) -> Typed:
    """The name of a unit with one slip of the pen: refused with a hint that leads back, unless the slip made another name of the same unit."""
    while True:
        kind, way = chance.choice(NAMES)
        at, letter = chance.randrange(len(way.text)), chance.choice("aeioulmnrstdghc")
        text = chance.choice((
            way.text[:at] + way.text[at + 1 :], way.text[:at] + letter + way.text[at:], way.text[:at] + letter + way.text[at + 1 :],
            way.text[:at] + way.text[at : at + 2][::-1] + way.text[at + 2 :],
        ))  # fmt: skip
        if text.lower().replace(" ", "") not in KNOWN:
            break
    dimension, metric, us, _ = KINDS[kind]
    wanted = chance.choice((*metric, *us))
    number = chance.randint(1, 99)
    return Typed(f"{number} {text}", wanted, tuple(number * size for size in way.sizes), "may", way.sizes, dimension, wanted)


def typed_by_people(count: int, seed: int = SEED) -> Iterator[Typed]:
    chance = random.Random(seed)
    for _ in range(count):
        draw = chance.random()
        yield _quantity(chance) if draw < 0.8 else _in_two_steps(chance) if draw < 0.87 else _clock(chance) if draw < 0.89 else _slip(chance)
