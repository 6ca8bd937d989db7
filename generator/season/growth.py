"""How strongly a grass can grow at a temperature, and what the place itself reaches."""

from dataclasses import dataclass
from functools import cached_property, lru_cache

from generator.season.climate.climate import Daily
from generator.season.equations.every_equation import EQUATIONS

ZERO_CELSIUS_K = 273.15


def growth_potential(mean_temperature_c: float, optimum_c: float, spread_k: float, full_growth_above_optimum: bool) -> float:
    """Growth at a mean temperature against growth at the optimum, 0 to 1.

    mean_temperature_c: mean air temperature of the day, week or month [°C]. optimum_c [°C], spread_k [K].
    full_growth_above_optimum: True holds growth at 1 above the optimum (the model's warm-season revision).
    Source: Gelernter and Stowell 2005; see the equations `growth-potential` and `growth-potential-warm`.
    """
    equation = EQUATIONS["growth-potential-warm" if full_growth_above_optimum else "growth-potential"]
    return equation.evaluate(
        mean_temperature=mean_temperature_c + ZERO_CELSIUS_K, optimum=optimum_c + ZERO_CELSIUS_K, spread=spread_k
    )


@dataclass(frozen=True)
class Growth:
    """A year of growth potential, 365 days from 1 January, 0 to 1."""

    potential: Daily

    @cached_property
    def best(self) -> float:
        """The most this place gives in the year."""
        return max(self.potential)

    @cached_property
    def least(self) -> float:
        return min(self.potential)

    @cached_property
    def share(self) -> Daily:
        """Each day against the most this place gives, 0 to 1; 0 throughout where nothing grows at all."""
        return tuple(value / self.best if self.best else 0.0 for value in self.potential)

    @cached_property
    def swing(self) -> Daily:
        """How far each day has come from the year's low (0) towards its best (1).

        Where winters are mild, the share alone never says that growth has slowed; the swing does.
        """
        span = self.best - self.least
        return tuple((value - self.least) / span if span else 1.0 for value in self.potential)


@lru_cache(maxsize=2048)
def _growth(mean_c: Daily, key: tuple[float, float, bool]) -> Growth:
    return Growth(tuple(growth_potential(temperature, *key) for temperature in mean_c))


def yearly_growth(mean_c: Daily, key: tuple[float, float, bool]) -> Growth:
    """Growth potential for 365 daily mean temperatures [°C].

    key: optimum [°C], spread [K], and whether growth stays full above the optimum. Source: as `growth_potential`.
    """
    return _growth(mean_c, key)
