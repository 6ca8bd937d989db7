"""What a quantity is made of: powers of length, mass, time and temperature.

An absolute temperature (20 °C on a thermometer) and a temperature difference
(20 degrees warmer) are different things: `absolute` tells them apart.
"""

from dataclasses import dataclass
from fractions import Fraction

_BASES = (("mass", "kg"), ("length", "m"), ("temperature", "K"), ("time", "s"))


@dataclass(frozen=True)
class Dimension:
    """Powers of the base quantities; all zero means a plain number."""

    length: Fraction = Fraction(0)
    mass: Fraction = Fraction(0)
    time: Fraction = Fraction(0)
    temperature: Fraction = Fraction(0)
    absolute: bool = False

    def __mul__(self, other: "Dimension") -> "Dimension":
        return Dimension(
            self.length + other.length,
            self.mass + other.mass,
            self.time + other.time,
            self.temperature + other.temperature,
        )

    def __truediv__(self, other: "Dimension") -> "Dimension":
        return self * other ** -1

    def __pow__(self, power: Fraction | int) -> "Dimension":
        return Dimension(
            self.length * power, self.mass * power, self.time * power, self.temperature * power
        )

    def difference(self) -> "Dimension":
        """The dimension of the difference between two such quantities."""
        return self * Dimension()

    @property
    def is_number(self) -> bool:
        return not (self.length or self.mass or self.time or self.temperature or self.absolute)

    @property
    def key(self) -> str:
        """A short text that is equal exactly when the dimensions are: 'kg m-2', '1'."""
        if self.absolute:
            return "absolute K"
        powers = ((symbol, getattr(self, base)) for base, symbol in _BASES)
        parts = [symbol if power == 1 else f"{symbol}{power}" for symbol, power in powers if power]
        return " ".join(parts) or "1"


NUMBER = Dimension()
