"""Published equations that the engine and the browser share, each once, as formula text.

The engine evaluates the text in Python; a calculator names an equation by its id and the browser gets the same text
compiled. Constants carry their unit; an empirical equation divides by unit constants first.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cached_property

from generator.formula import Formula, parse
from generator.units import to_si, unit


@dataclass(frozen=True)
class EquationConstant:
    """A number inside an equation, in its unit, and what it is."""

    value: float
    unit: str
    meaning: str

    @property
    def si(self) -> float:
        return to_si(self.value, unit(self.unit))


ZERO_CELSIUS = EquationConstant(0, "°C", "zero of the Celsius scale")
ONE_DEGREE = EquationConstant(1, "K", "one degree, to make a temperature a plain number")


@dataclass(frozen=True)
class Equation:
    """One published equation.

    text: a formula over the names in `inputs` and `constants`. inputs: name to unit spelling, as a calculator asks for them.
    result_unit: of the answer. source: id in data/sources.yml; where: equation number or page; from_memory: the source has
    not been read by us. title and limits: plain words for the methods page.
    """

    id: str
    title: str
    text: str
    inputs: dict[str, str]
    result_unit: str
    source: str
    where: str
    limits: str
    constants: dict[str, EquationConstant] = field(default_factory=dict)
    from_memory: bool = False

    @cached_property
    def formula(self) -> Formula:
        return parse(self.text)

    @cached_property
    def constants_si(self) -> dict[str, float]:
        return {name: constant.si for name, constant in self.constants.items()}

    @cached_property
    def _evaluate(self) -> Callable[[dict[str, float]], float]:
        return self.formula.evaluate

    def evaluate(self, **inputs_si: float) -> float:
        """The answer in SI units, from inputs in SI units. Raises FormulaProblem where the values have no answer."""
        return self._evaluate({**self.constants_si, **inputs_si})


_ALL = (
    Equation(
        id="growth-potential",
        title="Growth potential of cool-season grass",
        text="exp(-0.5 * ((mean_temperature - optimum) / spread)**2)",
        inputs={"mean_temperature": "°C", "optimum": "°C", "spread": "K"},
        result_unit="1",
        source="stowell-gelernter-growth-potential",
        where="the equation of 2005; its form read in woods-growth-potential-code",
        limits="Temperature only: it knows nothing of light, water, feed or wear. A smooth bell fitted to practice, not measured "
        "growth; above the optimum the cool-season form falls as heat slows the grass.",
    ),
    Equation(
        id="growth-potential-warm",
        title="Growth potential of warm-season grass",
        text="exp(-0.5 * ((min(mean_temperature, optimum) - optimum) / spread)**2)",
        inputs={"mean_temperature": "°C", "optimum": "°C", "spread": "K"},
        result_unit="1",
        source="stowell-gelernter-growth-potential",
        where="revised warm-season model: at and above the optimum growth potential stays at 1",
        limits="As for cool-season grass, but warmth beyond the optimum no longer counts against the grass.",
    ),
    Equation(
        id="solar-declination",
        title="Declination of the sun",
        text="0.409 * sin(2 * pi / 365 * day_of_year - 1.39)",
        inputs={"day_of_year": "1"},
        result_unit="rad",
        source="fao56",
        where="equation 24",
        limits="A year of 365 days; within half a degree of the almanac (our estimate).",
    ),
    Equation(
        id="inverse-distance",
        title="Inverse relative distance of earth and sun",
        text="1 + 0.033 * cos(2 * pi / 365 * day_of_year)",
        inputs={"day_of_year": "1"},
        result_unit="1",
        source="fao56",
        where="equation 23",
        limits="A year of 365 days.",
    ),
    Equation(
        id="sunset-hour-angle",
        title="Hour angle of sunset",
        text="acos(max(-1, min(1, -tan(latitude) * tan(solar_declination))))",
        inputs={"latitude": "deg", "solar_declination": "rad"},
        result_unit="rad",
        source="fao56",
        where="equation 25",
        limits="Held between 0 and pi, so that polar night and midnight sun have an answer; the paper stops at the polar circles.",
    ),
    Equation(
        id="daylight",
        title="Length of the day",
        text="half_day / pi * 2 * sunset_hour_angle",
        inputs={"sunset_hour_angle": "rad"},
        constants={"half_day": EquationConstant(12, "h", "half of 24 hours")},
        result_unit="h",
        source="fao56",
        where="equation 34",
        limits="Sun's centre on a level horizon without refraction: some minutes shorter than the almanac's day.",
    ),
    Equation(
        id="extraterrestrial-radiation",
        title="Radiation of the sun above the atmosphere",
        text="solar_constant / pi * inverse_distance * (sunset_hour_angle * sin(latitude) * sin(solar_declination)"
        " + cos(latitude) * cos(solar_declination) * sin(sunset_hour_angle))",
        inputs={
            "latitude": "deg", "solar_declination": "rad", "sunset_hour_angle": "rad", "inverse_distance": "1",
        },
        constants={"solar_constant": EquationConstant(0.0820, "MJ/m2/min", "solar constant")},
        result_unit="MJ/m2/day",
        source="fao56",
        where="equation 21",
        limits="Level ground; what reaches the lawn is less, by cloud, haze and shade.",
    ),
    Equation(
        id="hargreaves",
        title="Reference evapotranspiration from temperature (Hargreaves and Samani)",
        text="0.0023 * ((minimum_temperature - zero_celsius + (maximum_temperature - minimum_temperature) / 2) / one_degree + 17.8)"
        " * sqrt((maximum_temperature - minimum_temperature) / one_degree)"
        " * extraterrestrial_radiation / latent_heat / water_density",
        inputs={
            "minimum_temperature": "°C", "maximum_temperature": "°C", "extraterrestrial_radiation": "MJ/m2/day",
        },
        constants={
            "zero_celsius": ZERO_CELSIUS,
            "one_degree": ONE_DEGREE,
            "latent_heat": EquationConstant(2.45, "MJ/kg", "heat that evaporates a kilogram of water"),
            "water_density": EquationConstant(1000, "kg/m3", "density of water"),
        },
        result_unit="mm/day",
        source="fao56",
        where="equation 52",
        limits="Made for means over five days or more; reads high in humid and low in windy, dry weather. FAO-56 prefers "
        "Penman-Monteith where humidity, sun and wind are known.",
    ),
    Equation(
        id="saturation-vapour-pressure",
        title="Saturation vapour pressure",
        text="0.6108 * one_kilopascal * exp(17.27 * (temperature - zero_celsius) / (temperature - zero_celsius + offset))",
        inputs={"temperature": "°C"},
        constants={
            "zero_celsius": ZERO_CELSIUS,
            "offset": EquationConstant(237.3, "K", "constant of the Tetens form"),
            "one_kilopascal": EquationConstant(1, "kPa", "one kilopascal"),
        },
        result_unit="kPa",
        source="fao56",
        where="equation 11",
        limits="Over water, -20 to 50 °C (our limit).",
    ),
    Equation(
        id="effective-rain",
        title="Effective rain of a month",
        text="rain * (125 - 0.2 * rain / one_millimetre) / 125 if rain <= 250 * one_millimetre else 125 * one_millimetre + 0.1 * rain",
        inputs={"rain": "mm"},
        constants={"one_millimetre": EquationConstant(1, "mm", "one millimetre")},
        result_unit="mm",
        source="usda-effective-rain",
        where="monthly formula",
        limits="Made for crops in deep soil; a shallow-rooted lawn on sand uses less of a heavy fall.",
    ),
)

EQUATIONS: dict[str, Equation] = {equation.id: equation for equation in _ALL}
