"""The allow-list: every unit spelling an author or a reader may use.

A spelling is an atom ('kg', 'US gal', '100 m2') or atoms joined by '/'. Only the
pint expressions below ever reach pint, never what somebody typed: in pint `C` is
coulomb, `m2` is unknown and `kg/100 m**2` means kilogram square metres.

'K', '°C difference' and '°F difference' are temperature differences; '°C' and '°F'
are readings of a thermometer. 'oz' is always mass and 'fl oz' always the US fluid
ounce; 'pt', 'qt' and 'tbsp' are US liquid measures, and British ones are typed with 'imp' or 'UK'. A depth of water in mm is the same thing
as L/m2. '%' and 'ppm' are shares of one: 46 % is 0.46 inside a formula.
"""

from typing import NamedTuple


class Atom(NamedTuple):
    """One unit that stands by itself: our pint expression for it, and other ways to type it."""

    pint: str
    aliases: tuple[str, ...] = ()


class Count(NamedTuple):
    """A thing that is counted; a plain number inside."""

    aliases: tuple[str, ...] = ()


# The acre here is 4840 square yards of the international foot; pint's own acre is the
# survey acre, four parts in a million larger.
ATOMS: dict[str, Atom] = {
    "mm": Atom("millimetre", ("mms", "millimetre", "millimetres", "millimeter", "millimeters")),
    "cm": Atom("centimetre", ("cms", "centimetre", "centimetres", "centimeter", "centimeters")),
    "m": Atom("metre", ("mtr", "mtrs", "metre", "metres", "meter", "meters")),
    "km": Atom("kilometre", ("kms", "kilometre", "kilometres", "kilometer", "kilometers")),
    "in": Atom("inch", ("ins", "inch", "inches", '"', "''")),
    "ft": Atom("foot", ("foot", "feet", "'")),
    "yd": Atom("yard", ("yard", "yards", "yds")),
    "mi": Atom("mile", ("mile", "miles")),
    "mm2": Atom("millimetre**2", ("sqmm", "squaremm")),
    "cm2": Atom("centimetre**2", ("sqcm", "squarecm")),
    "m2": Atom(
        "metre**2",
        ("sqm", "squarem", "sqmetre", "sqmetres", "sqmeter", "sqmeters", "squaremetre", "squaremetres", "squaremeter",
         "squaremeters"),
    ),
    "ha": Atom("hectare", ("hectare", "hectares")),
    "in2": Atom("inch**2", ("sqin", "sqinch", "sqinches", "squarein", "squareinch", "squareinches")),
    "ft2": Atom("foot**2", ("sf", "sqft", "sqfoot", "sqfeet", "squareft", "squarefoot", "squarefeet")),
    "yd2": Atom("yard**2", ("sqyd", "sqyds", "sqyard", "sqyards", "squareyd", "squareyard", "squareyards")),
    "acre": Atom("4840 * yard**2", ("acres", "ac")),
    "mL": Atom("millilitre", ("mls", "millilitre", "millilitres", "milliliter", "milliliters")),
    "L": Atom("litre", ("ltr", "ltrs", "litre", "litres", "liter", "liters")),
    "cm3": Atom("centimetre**3", ("cc", "cubiccm", "cubiccentimetre", "cubiccentimetres", "cubiccentimeter", "cubiccentimeters")),
    "m3": Atom("metre**3", ("kL", "kilolitre", "kilolitres", "kiloliter", "kiloliters", "cubicm", "cubicmetre", "cubicmetres", "cubicmeter", "cubicmeters")),
    "in3": Atom("inch**3", ("cuin", "cubicin", "cubicinch", "cubicinches")),
    "ft3": Atom("foot**3", ("cuft", "cufoot", "cufeet", "cubicft", "cubicfoot", "cubicfeet")),
    "yd3": Atom("yard**3", ("cuyd", "cuyds", "cuyard", "cuyards", "cubicyd", "cubicyds", "cubicyard", "cubicyards")),
    "tsp": Atom("US_fluid_ounce / 6", ("teaspoon", "teaspoons")),
    "tbsp": Atom("US_fluid_ounce / 2", ("tbs", "UStablespoon", "UStablespoons")),
    "bu": Atom("2150.42 * inch**3", ("bushel", "bushels", "USbushel", "USbushels")),
    "fl oz": Atom("US_fluid_ounce", ("USfloz", "fluidoz", "fluidounce", "fluidounces")),
    "pt": Atom("US_pint", ("USpt", "USpint", "USpints")),
    "qt": Atom("US_liquid_quart", ("USqt", "USquart", "USquarts")),
    "US gal": Atom("US_liquid_gallon", ("USgallon", "USgallons", "USgals")),
    "imp gal": Atom("imperial_gallon", (
        "impgals", "impgallon", "impgallons", "imperialgal", "imperialgallon", "imperialgallons", "UKgal", "UKgals", "UKgallon", "UKgallons",
        "britishgallon", "britishgallons",
    )),
    "imp qt": Atom("imperial_quart", ("impquart", "impquarts", "imperialquart", "imperialquarts", "UKqt", "UKquart", "UKquarts")),
    "imp pt": Atom("imperial_pint", ("imppint", "imppints", "imperialpint", "imperialpints", "UKpt", "UKpint", "UKpints", "britishpint", "britishpints")),
    "imp fl oz": Atom("imperial_fluid_ounce", (
        "impfluidounce", "impfluidounces", "imperialfloz", "imperialfluidounce", "imperialfluidounces", "UKfloz", "UKfluidoz", "UKfluidounce",
        "UKfluidounces",
    )),
    "mg": Atom("milligram", ("milligram", "milligrams")),
    "g": Atom("gram", ("gram", "grams", "gramme", "grammes", "gm", "gms")),
    "kg": Atom("kilogram", ("kilogram", "kilograms", "kilogramme", "kilogrammes", "kgs", "kilo", "kilos")),
    "t": Atom("metric_ton", ("tonne", "tonnes", "metricton", "metrictons", "metrictonne", "metrictonnes")),
    "oz": Atom("ounce", ("ounce", "ounces", "ozs")),
    "lb": Atom("pound", ("lbs", "pound", "pounds")),
    "long ton": Atom("long_ton", ("longtons", "UKton", "UKtons", "imperialton", "imperialtons")),
    "short ton": Atom("short_ton", ("shorttons", "USton", "UStons")),
    "s": Atom("second", ("sec", "secs", "second", "seconds")),
    "min": Atom("minute", ("mins", "minute", "minutes")),
    "h": Atom("hour", ("hr", "hrs", "hour", "hours")),
    "day": Atom("day", ("days", "d", "night", "nights")),
    "week": Atom("week", ("weeks", "wk")),
    "mph": Atom("mile/hour", ("mi/h",)),
    "°C": Atom("degC", ("degC", "C", "degreesC", "degreeC", "celsius", "degcelsius", "degreecelsius", "degreescelsius", "centigrade", "degreescentigrade")),
    "°F": Atom("degF", ("degF", "F", "degreesF", "degreeF", "fahrenheit", "degfahrenheit", "degreefahrenheit", "degreesfahrenheit")),
    "K": Atom("kelvin", ("kelvin",)),
    "°C difference": Atom("delta_degC", ("degCdifference", "Cdifference")),
    "°F difference": Atom("delta_degF", ("degFdifference", "Fdifference")),
    "°C day": Atom("delta_degC * day", ("°Cdays", "degCday", "degCdays", "Cday", "Cdays")),
    "°F day": Atom("delta_degF * day", ("°Fdays", "degFday", "degFdays", "Fday", "Fdays")),
    "kPa": Atom("kilopascal", ("kilopascal", "kilopascals")),
    "bar": Atom("bar", ("bars",)),
    "psi": Atom("pound_force_per_square_inch", ("lb/in2",)),
    "MJ": Atom("megajoule"),
    "W": Atom("watt", ("watt", "watts")),
    "deg": Atom("degree", ("°", "degree", "degrees")),
    "rad": Atom("radian", ("radian", "radians")),
    "1": Atom("1"),
    "%": Atom("percent", ("percent", "per cent", "pct")),
    "ppm": Atom("ppm", ("mg/kg",)),
}

COUNTS: dict[str, Count] = {
    "passes": Count(("pass",)),
    "packs": Count(("pack", "bags", "bag")),
    "loads": Count(("load", "tanks")),
    "holes": Count(("hole",)),
    "cuts": Count(("cut",)),
    "readings": Count(("reading", "cans")),
    "plants": Count(("plant", "sprigs", "plugs", "rolls")),
    "cmol/kg": Count(("cmolc/kg", "cmol(+)/kg", "cmol+/kg", "meq/100g")),
}

# One word for a whole unit. A GPM or GPA is a word of American sprayers, so its gallon is the US one; so are pounds to the thousand.
WORDS: dict[str, tuple[str, ...]] = {
    "US gal/min": ("gpm", "USgpm"),
    "US gal/h": ("gph",),
    "US gal/acre": ("gpa",),
    "L/min": ("lpm",),
    "imp gal/min": ("impgpm", "UKgpm"),
    "imp gal/acre": ("impgpa", "UKgpa"),
    "km/h": ("kph", "kmh", "kmph"),
    "ft/min": ("fpm",),
    "1000 ft2": ("thousandft2", "thousandsqft", "thousandsquarefeet"),
    "lb/1000 ft2": ("lb/1000", "lb/thousand"),
    "oz/1000 ft2": ("oz/1000", "oz/thousand"),
}

# Words that mean different amounts to different readers, and what to write instead.
AMBIGUOUS = {
    "gal": "write 'US gal' or 'imp gal'",
    "gals": "write 'US gal' or 'imp gal'",
    "gallon": "write 'US gal' or 'imp gal'",
    "gallons": "write 'US gal' or 'imp gal'",
    "ton": "write 't' for 1000 kg, 'long ton' for 2240 lb or 'short ton' for 2000 lb",
    "tons": "write 't' for 1000 kg, 'long ton' for 2240 lb or 'short ton' for 2000 lb",
    "pint": "write 'imp pt' for the British pint or 'pt' for the US one",
    "pints": "write 'imp pt' for the British pint or 'pt' for the US one",
    "quart": "write 'imp qt' for the British quart or 'qt' for the US one",
    "quarts": "write 'imp qt' for the British quart or 'qt' for the US one",
    "pts": "write 'imp pt' for the British pint or 'pt' for the US one",
    "qts": "write 'imp qt' for the British quart or 'qt' for the US one",
    "tablespoon": "write it in mL, or 'tbsp' for the US one",
    "tablespoons": "write it in mL, or 'tbsp' for the US one",
    "cwt": "write it in kg or lb",
    "hundredweight": "write it in kg or lb",
    "st": "write 'short ton' for 2000 lb; write stones in kg or lb",
    "mil": "write it in mm or mL",
    "mils": "write it in mm or mL",
    "gr": "write 'g' for grams",
}

# Units that people know and this book does not take, and what to write instead; without it the nearest name would be another unit.
NOT_TAKEN = {
    ("stone", "stones", "dram", "drams", "grain", "grains"): "write it in kg, g or lb",
    ("cup", "cups", "cl", "dl", "centilitre", "centilitres", "hectolitre", "hectolitres", "peck", "pecks"): "write it in mL or L",
    ("chain", "chains", "furlong", "furlongs", "rod", "rods"): "write it in m, ft or yd",
    ("are", "ares", "rood", "roods", "perch", "perches", "km2", "sqkm", "squarekm", "sqmi", "mi2", "squaremile", "squaremiles"): "write it in ha or acre",
    ("mm3", "cubicmm", "dm3", "cubicdm"): "write it in mL or L",
    ("dm2", "sqdm", "squaredm"): "write it in m2 or cm2",
    ("hpa", "mbar", "mb", "millibar", "millibars", "mpa", "megapascal", "megapascals", "atm", "pa", "pascal", "pascals"): "write it in kPa",
    ("points",): "write rain in mm or in",
    ("knot", "knots", "kn", "kt", "kts"): "write it in km/h or mph",
    ("megalitre", "megalitres", "megaliter", "megaliters"): "write it in m3",
}

# Capitals that make another unit of it, a million or a thousand million times as large: nobody on a lawn means that one.
_MEGALITRE = "write 'mL' for a thousandth of a litre, or m3"
AS_TYPED = dict.fromkeys(("ML", "Ml", "MLs", "Mls", "MLS"), _MEGALITRE) | dict.fromkeys(("Mg", "MG"), "write 'mg' or 't'")

# What the same words mean to somebody who works in US units.
AMERICAN = {
    "gal": "US gal", "gals": "US gal", "gallon": "US gal", "gallons": "US gal", "ton": "short ton", "tons": "short ton",
    "pint": "pt", "pints": "pt", "pts": "pt", "quart": "qt", "quarts": "qt", "qts": "qt", "tablespoon": "tbsp", "tablespoons": "tbsp",
}

# Kind -> (metric spellings, US spellings, spellings that both use). A kind is what the
# trade calls the quantity; several kinds may share a dimension (a depth is a length).
KINDS: dict[str, tuple[str, str, str]] = {
    "a length": ("mm, cm, m, km", "in, ft, yd, mi", ""),
    "an area": ("m2, ha, 100 m2, cm2, mm2", "ft2, 1000 ft2, yd2, acre, in2", ""),
    "a volume": ("L, m3, mL, cm3, imp gal, imp qt, imp pt, imp fl oz", "US gal, fl oz, pt, qt, ft3, yd3, in3, tbsp, tsp, bu", ""),
    "a mass": ("kg, g, t, mg, long ton", "lb, oz, short ton", ""),
    "a time": ("", "", "min, h, s, day, week"),
    "a flow": ("L/min, L/s, L/h, mL/min, m3/h, imp gal/min", "US gal/min, fl oz/min, US gal/h", ""),
    "a rate of water": ("mm/h, mm/day, mm/week, cm/h", "in/h, in/day, in/week", ""),
    "a speed": ("km/h, m/s, m/min", "mph, ft/s, ft/min", ""),
    "a work rate": ("m2/h, ha/h, m2/min", "ft2/h, acre/h, ft2/min", ""),
    "a density": (
        "kg/m3, t/m3, g/cm3, kg/L, g/L, mg/L, g/100 L, kg/100 L, kg/1000 L",
        "lb/ft3, lb/yd3, short ton/yd3, lb/US gal, oz/US gal, lb/100 US gal, oz/100 US gal",
        "",
    ),
    "a mass per area": (
        "kg/100 m2, g/m2, kg/ha, kg/m2, t/ha, g/ha, g/100 m2, t/acre, kg/acre, g/acre",
        "lb/1000 ft2, lb/acre, oz/1000 ft2, lb/100 ft2, oz/acre, short ton/acre, oz/yd2",
        "",
    ),
    "a mass per area and time": ("g/m2/day, kg/ha/day, g/m2/week", "lb/1000 ft2/week", ""),
    "a volume per area": (
        "L/ha, mL/100 m2, L/100 m2, mL/m2, L/m2, mL/ha, m3/ha, m3/100 m2, L/acre, mL/acre, imp gal/acre, imp pt/acre, imp fl oz/acre,"
        " imp gal/1000 ft2, imp fl oz/1000 ft2",
        "US gal/acre, US gal/1000 ft2, fl oz/1000 ft2, fl oz/acre, pt/acre, qt/acre,"
        " ft3/1000 ft2, yd3/1000 ft2, pt/1000 ft2, qt/1000 ft2, tbsp/1000 ft2, bu/1000 ft2, bu/acre",
        "",
    ),
    "a share": ("mL/L, mL/100 L, L/100 L", "fl oz/US gal, fl oz/100 US gal, pt/100 US gal, qt/100 US gal, tbsp/US gal, tsp/US gal", "%, ppm"),
    "a number per area": ("/m2, /cm2", "/ft2, /in2", ""),
    "a number per mass": ("/g, /kg", "/lb, /oz", ""),
    "an area per mass": ("m2/kg", "ft2/lb", ""),
    "an area per volume": ("m2/L", "ft2/US gal", ""),
    "a length per time": ("mm/min", "in/min", ""),
    "a temperature": ("°C", "°F", ""),
    "a temperature difference": ("K, °C difference", "°F difference", ""),
    "degree days": ("°C day", "°F day", ""),
    "a pressure": ("kPa, bar", "psi", ""),
    "a pressure per degree": ("kPa/K", "", ""),
    "an energy per area and time": ("MJ/m2/day, MJ/m2/min, W/m2", "", ""),
    "an energy per mass": ("MJ/kg", "", ""),
    "an angle": ("", "", "deg, rad"),
    "a plain number": ("", "", "1"),
}
