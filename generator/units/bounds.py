"""How large and how small a quantity can sensibly be: one line for each kind, whatever the unit it is written in.

Wide enough for any lawn, farm or weather on earth, and narrow enough that nothing worked out from them can overflow.
"""

from dataclasses import dataclass
from functools import cache
from typing import NamedTuple

from generator.units.known_units import Unit, from_si, to_si, unit


class Line(NamedTuple):
    """unit: that of the other three. lowest: of a figure. finest: the smallest that is not nothing."""

    unit: str
    lowest: float
    highest: float
    finest: float


LINES: dict[str, Line] = {
    "a length": Line("m", 0, 100_000, 1e-9),
    "an area": Line("m2", 0, 1e10, 1e-9),
    "a volume": Line("m3", 0, 1e7, 1e-12),
    "a mass": Line("kg", 0, 1e8, 1e-9),
    "a time": Line("day", 0, 36_525, 1e-9),
    "a flow": Line("L/min", 0, 1e6, 1e-9),
    "a rate of water": Line("mm/h", 0, 100_000, 1e-9),
    "a speed": Line("km/h", 0, 1000, 1e-9),
    "a work rate": Line("m2/h", 0, 1e8, 1e-9),
    "a density": Line("kg/m3", 0, 30_000, 1e-9),
    "a mass per area": Line("kg/m2", 0, 10_000, 1e-12),
    "a mass per area and time": Line("g/m2/day", 0, 100_000, 1e-9),
    "a volume per area": Line("L/m2", 0, 100_000, 1e-12),
    "a share": Line("%", 0, 100_000, 1e-9),
    "a number per area": Line("/m2", 0, 1e8, 1e-9),
    "a number per mass": Line("/kg", 0, 1e9, 1e-9),
    "an area per mass": Line("m2/kg", 0, 1e6, 1e-9),
    "an area per volume": Line("m2/L", 0, 1e6, 1e-9),
    "a length per time": Line("mm/min", 0, 1e6, 1e-9),
    "a temperature": Line("°C", -100, 100, 1e-6),
    "a temperature difference": Line("K", -100, 100, 1e-9),
    "degree days": Line("°C day", 0, 100_000, 1e-9),
    "a pressure": Line("kPa", 0, 100_000, 1e-9),
    "a pressure per degree": Line("kPa/K", 0, 1000, 1e-9),
    "an energy per area and time": Line("MJ/m2/day", -1000, 1000, 1e-9),
    "an energy per mass": Line("MJ/kg", 0, 1000, 1e-9),
    "an angle": Line("deg", -360, 360, 1e-9),
    "a count": Line("holes", 0, 1e9, 1e-9),
    "a plain number": Line("1", -1e9, 1e9, 1e-12),
}


@dataclass(frozen=True)
class Bounds:
    """What a number in `unit` may be: lowest to highest, and nothing between 0 and finest on either side.

    words: the same in the unit of the table, for an author.
    """

    lowest: float
    highest: float
    finest: float
    unit: Unit
    words: str

    def fault(self, value: float) -> tuple[str, str] | None:
        """What is wrong with a number, and what it may be; None for a sensible one."""
        given = f"{value:g}" if self.unit.spelling == "1" else f"{value:g} {self.unit}"
        if not self.lowest <= value <= self.highest:
            return f"{given} is not a sensible {self.unit.kind.partition(' ')[2]}", self.words
        if 0 < abs(value) < self.finest:
            return f"{given} is too small for {self.unit.kind}", f"give 0, or at least {self.finest:.3g}"
        return None


@cache
def bounds_of(of: Unit, signed: bool = False) -> Bounds:
    """The bounds of a quantity in the unit it is written in.

    signed: for what may be less than nothing though no such figure of the trade is: an input's limit, a difference that comes out.
    """
    line = LINES[of.kind]
    shown, lowest = unit(line.unit), -line.highest if signed else line.lowest
    low, high = (from_si(to_si(value, shown), of) for value in (lowest, line.highest))
    slack = 1e-9 * (high - low)  # So that a round bound is itself within, whatever unit it is read in.
    words = f"give {lowest:.12g} to {line.highest:.12g}" + ("" if line.unit == "1" else f" {line.unit}")
    return Bounds(low - slack if low else low, high + slack, line.finest * shown.factor / of.factor, of, words)
