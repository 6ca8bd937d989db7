"""Published equations that the engine and the browser share, each once, as formula text.

The engine evaluates the text in Python; a calculator names an equation by its id and the browser gets the same text
compiled. Constants carry their unit; an empirical equation divides by unit constants first.
"""

from generator.season.equations.equation import Equation
from generator.season.equations.evapotranspiration_equations import EVAPOTRANSPIRATION_EQUATIONS
from generator.season.equations.sun_equations import SUN_EQUATIONS

GROWTH_EQUATIONS = (
    Equation(
        id="growth-potential",
        title="Growth potential of cool-season grass",
        text="exp(-0.5 * ((mean_temperature - optimum) / spread)**2)",
        inputs={"mean_temperature": "°C", "optimum": "°C", "spread": "K"},
        result_unit="1",
        source="stowell-gelernter-growth-potential",
        where="the equation of 2005, as later texts print it",
        limits="Temperature only: it knows nothing of light, water, feed or wear. A smooth bell fitted to practice, not measured "
        "growth; above the optimum the cool-season form falls as heat slows the grass.",
    ),
    Equation(
        id="growth-potential-warm",
        title="Growth potential of warm-season grass",
        text="exp(-0.5 * ((min(mean_temperature, optimum) - optimum) / spread)**2)",
        inputs={"mean_temperature": "°C", "optimum": "°C", "spread": "K"},
        result_unit="1",
        source="stowell-gelernter-warm-form",
        where="revised warm-season model: at and above the optimum growth potential stays at 1",
        limits="As for cool-season grass, but warmth beyond the optimum no longer counts against the grass.",
    ),
)

EQUATIONS: dict[str, Equation] = {
    equation.id: equation for equation in (*GROWTH_EQUATIONS, *SUN_EQUATIONS, *EVAPOTRANSPIRATION_EQUATIONS)
}
