"""The waterings of a job: on which days, how deep, how many litres, and what rain does instead. Twin: job work."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta

from generator.book.records.calculator import Calculator
from generator.book.records.step import Watering
from generator.calculators.bindings import bindings, bound_value, filled
from generator.calculators.calculate import calculate
from generator.calculators.chosen import Chosen
from generator.calculators.single_value import single
from generator.jobs.dates import DatedStep
from generator.units import to_si, unit

# The calculator that says how much water sprinklers take for a depth; without it in the book, every drop is taken to count.
RUN_TIME = "irrigation-run-time"
LITRES_A_CUBIC_METRE = 1000


@dataclass(frozen=True)
class WateringDay:
    """A day on which the lawn is watered: depth [mm] in all, in so many goes, and the litres that sprinklers as uneven as these take for it.

    rain_mm: the rain that does it instead [mm], or None when it has to be done.
    """

    day: date
    depth_mm: float
    times: int
    litres: float
    rain_mm: float | None


@dataclass(frozen=True)
class Waterings:
    """The waterings of a lawn of so much grass [m2]. rain_mm: rain that is forecast, by date [mm in 24 hours]."""

    area_m2: float
    rain_mm: Mapping[date, float]
    chosen: Chosen
    calculators: Mapping[str, Calculator]

    def days(self, dated: DatedStep) -> tuple[WateringDay, ...]:
        """Every day on which a step waters; none for one that does not."""
        water = dated.step.step.watering
        if water is None:
            return ()
        found = bound_value(water.depth, self.chosen)
        depth_m = to_si(found.value, unit(found.unit)) * water.times_a_day
        litres = self._litres(depth_m)
        return tuple(self._day(day, depth_m, water.times_a_day, litres) for day in _days(dated, water))

    def _day(self, day: date, depth_m: float, times: int, litres: float) -> WateringDay:
        depth_mm, rain = depth_m * 1000, self.rain_mm.get(day, 0.0)
        return WateringDay(day, depth_mm, times, litres, rain if rain >= depth_mm else None)

    def _litres(self, depth_m: float) -> float:
        """Litres for a depth [m] where it is driest: as the run-time calculator has it, so that time and litres speak of the same water."""
        calculator = self.calculators.get(RUN_TIME)
        if calculator is None:
            return depth_m * self.area_m2 * LITRES_A_CUBIC_METRE
        of_lawn = {name: to_si(each.value, unit(each.unit)) for name, each in filled(bindings(calculator), self.chosen).items()}
        found = calculate(calculator, {**of_lawn, "depth": depth_m, "area": self.area_m2})
        return single(found.results["water"].si) * LITRES_A_CUBIC_METRE


def _days(dated: DatedStep, water: Watering) -> tuple[date, ...]:
    length = ((dated.until or dated.date) - dated.date).days
    return tuple(dated.date + timedelta(ahead) for ahead in range(0, length + 1, water.every_days))
