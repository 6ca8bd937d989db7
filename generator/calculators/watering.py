"""Water on the ground: how deep one watering goes in a kind of soil, how many days lie between, and how the sprinkler is run."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import ceil, floor, inf

from generator.book.records.calculator import Calculator
from generator.calculators.calculate import calculate
from generator.calculators.single_value import single
from generator.season.calendar_days import week_days
from generator.season.engine_rules import SoilWater
from generator.season.reasons import NumberSaid, Reason, because, share
from generator.season.year import SeasonYear
from generator.units import to_si, unit

MILLIMETRES_A_METRE = 1000.0
SECONDS_A_MINUTE = 60.0
MINUTES_AN_HOUR = 60.0
# Rain comes between waterings so far apart; the calendar then says that rain is enough.
LONGEST_GAP_DAYS = 28


@dataclass(frozen=True)
class Sprinkler:
    """How fast it rains down [mm/h], how evenly (0 to 1), and the calculator that turns a depth into a run time."""

    rate_mm_per_h: float
    uniformity: float
    calculator: Calculator


@dataclass(frozen=True)
class WateringRhythm:
    """One watering on a soil: its depth [mm]; with a sprinkler its run time [min], in how many spells, and the rest between [min].

    spell_min: how long each spell runs [min]. why: what sets the depth, with its numbers.
    """

    depth_mm: float
    run_time_min: float | None
    spells: int
    spell_min: float | None
    rest_min: float | None
    why: Reason


def sprinkler_of(calculators: Mapping[str, Calculator]) -> Sprinkler | None:
    """The sprinkler that the run-time calculator starts with; None in a book without that calculator."""
    calculator = calculators.get("irrigation-run-time")
    if calculator is None:
        return None

    def start(name: str, wanted: str) -> float:
        asked = calculator.inputs[name]
        return to_si(single(asked.default), unit(asked.unit)) / unit(wanted).factor

    return Sprinkler(start("precipitation_rate", "mm/h"), start("uniformity", "1"), calculator)


def usable_water(soil: SoilWater, allowable_depletion: float) -> float:
    """Water a lawn may use before it is watered again [mm].

    allowable_depletion: share of the available water, 0 to 1.
    Source: FAO-56 equations 82 and 83 (readily available water): available water of the root depth times the depletion fraction.
    """
    return soil.available_water * soil.root_depth_mm * allowable_depletion


def spell(soil: SoilWater, rate_mm_per_h: float) -> tuple[float, float]:
    """How long a sprinkler may run before water runs off, and how long the soil then needs to take it in [min, min].

    rate_mm_per_h: of the sprinkler [mm/h]. Infinite and 0 where the soil takes it as fast as it falls.
    The soil takes in its final rate, and what falls beyond stands between the leaves up to a depth assumed in
    data/season-groups.yml; dry soil takes more at first.
    """
    if rate_mm_per_h <= soil.infiltration_mm_per_h:
        return inf, 0.0
    return (
        soil.ponding_mm / (rate_mm_per_h - soil.infiltration_mm_per_h) * MINUTES_AN_HOUR,
        soil.ponding_mm / soil.infiltration_mm_per_h * MINUTES_AN_HOUR,
    )


def watering(season: SeasonYear, soil: SoilWater, sprinkler: Sprinkler | None) -> WateringRhythm:
    """One watering of this grass on this soil: as deep as the soil holds, no more than it takes in over a few spells.

    Source: `usable_water`, `spell`; the run time is the calculator's.
    """
    depth = usable_water(soil, season.grass.allowable_depletion)
    held = because(
        "soil-holds", soil=soil.name.lower(), depth=NumberSaid(depth, "mm", ".0f"), available=NumberSaid(soil.available_water, "1", ".1%"),
        roots=NumberSaid(soil.root_depth_mm, "mm", ".0f"), depletion=share(season.grass.allowable_depletion),
    )
    if sprinkler is None:
        return WateringRhythm(depth, None, 1, None, None, held)
    longest, rest = spell(soil, sprinkler.rate_mm_per_h)
    run_time = _run_time(depth, sprinkler)
    if longest * soil.spells_a_morning < run_time:
        depth *= longest * soil.spells_a_morning / run_time
        run_time = longest * soil.spells_a_morning
        takes_in = NumberSaid(soil.infiltration_mm_per_h, "mm", "g")
        held = because("soil-takes-in", held=held, rate=takes_in, depth=NumberSaid(depth, "mm", ".0f"))
    spells = 1 if longest == inf else ceil(run_time / longest - 1e-9)
    return WateringRhythm(depth, run_time, spells, run_time / spells, rest if spells > 1 else None, held)


def days_between(season: SeasonYear, depth_mm: float) -> tuple[int | None, ...]:
    """Whole days between waterings in each of 52 weeks, at least 1; None where rain is enough.

    depth_mm: of one watering [mm]. The depth over the week's mean daily need, rounded down. Limit: rain is taken as
    falling a little every day; a dry spell in a rainy month needs water that this does not show.
    """
    gaps: list[int | None] = []
    for week in season.weeks:
        need = week.water_need_mm / len(week_days(week.week - 1))
        gap = depth_mm / need if need else inf
        gaps.append(None if gap > LONGEST_GAP_DAYS else max(1, floor(gap)))
    return tuple(gaps)


def _run_time(depth_mm: float, sprinkler: Sprinkler) -> float:
    """Run time for a depth [min], as the reader's own calculator gives it."""
    given = {
        "depth": depth_mm / MILLIMETRES_A_METRE,
        "precipitation_rate": sprinkler.rate_mm_per_h / MILLIMETRES_A_METRE / (SECONDS_A_MINUTE * MINUTES_AN_HOUR),
        "uniformity": sprinkler.uniformity,
    }
    seconds = calculate(sprinkler.calculator, given).results["run_time"].si
    assert isinstance(seconds, float)
    return seconds / SECONDS_A_MINUTE
