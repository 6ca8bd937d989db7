"""The days of a weather station as the engine takes them: degrees Celsius and millimetres, by date."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from functools import cached_property

Readings = Mapping[date, float]


@dataclass(frozen=True)
class DailyRecord:
    """maximum_c, minimum_c: of the screen [°C]; rain_mm: of the day [mm]. A day without a reading is left out of it."""

    maximum_c: Readings
    minimum_c: Readings
    rain_mm: Readings

    @cached_property
    def first(self) -> date:
        """The first day with any reading. Raises ValueError for a record without one."""
        return min(day for readings in self.each() for day in readings)

    @cached_property
    def last(self) -> date:
        """The last day with any reading."""
        return max(day for readings in self.each() for day in readings)

    @cached_property
    def last_warmth(self) -> date | None:
        """The last day with both a maximum and a minimum; None where no day has."""
        return max(self.mean_c, default=None)

    @cached_property
    def mean_c(self) -> Readings:
        """Mean of maximum and minimum [°C], on the days that have both."""
        return {day: (high + self.minimum_c[day]) / 2 for day, high in self.maximum_c.items() if day in self.minimum_c}

    def each(self) -> Iterator[Readings]:
        yield from (self.maximum_c, self.minimum_c, self.rain_mm)

    def __bool__(self) -> bool:
        return any(self.each())

    def until(self, day: date) -> "DailyRecord":
        """What was known at the end of a day."""
        return DailyRecord(*({each: value for each, value in readings.items() if each <= day} for readings in self.each()))
