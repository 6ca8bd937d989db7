"""The units of a daily record: fixed by its service, named in its head, or told by the values themselves."""

from collections.abc import Callable, Mapping, Sequence

from generator.book.daily.layout_table import Role, bare, layout_table
from generator.units import from_si, to_si, unit

# Above the hottest day on record in °F, 134; and below the coldest in °C, -90.
HOTTEST_F, HOTTEST_C, COLDEST_C = 140, 60, -91
# More rain than in any day on record, 1825 mm.
MOST_INCHES = 75
OF_WARMTH, OF_RAIN = ("°C", "tenths of °C", "°F"), ("mm", "tenths of mm", "in")
TENTHS = "tenths of "


def units_for(role: Role) -> tuple[str, ...]:
    """The units that a reading may have."""
    return OF_RAIN if role == "rain" else OF_WARMTH


def unit_named(text: str) -> str | None:
    """Our spelling of a unit as somebody wrote it; None for what is none of ours."""
    return layout_table().unit_names.get(bare(text.replace("0.1", "01")))


def temperature_unit(highs: Sequence[float], lows: Sequence[float]) -> str:
    """What the values must be in: the hottest and the coldest reading tell.

    No day is hotter than 60 °C or, in °F, 140; a reading beyond that is in tenths of °C, and so is one below -91.
    """
    hottest, coldest = max((*highs, *lows), default=0.0), min((*lows, *highs), default=0.0)
    if hottest > HOTTEST_F or coldest < COLDEST_C:
        return "tenths of °C"
    return "°F" if hottest > HOTTEST_C else "°C"


def rain_unit(of_warmth: str, amounts: Sequence[float]) -> str:
    """As the temperatures are: °F goes with inches, tenths with tenths; inches never where the wettest day would be more than any on record."""
    if of_warmth == "°F":
        return "in" if max(amounts, default=0.0) <= MOST_INCHES else "mm"
    return "tenths of mm" if of_warmth == "tenths of °C" else "mm"


def to_engine(spelling: str) -> Callable[[float], float]:
    """Turns a reading in a unit into °C or mm."""
    tenths, plain = spelling.startswith(TENTHS), spelling.removeprefix(TENTHS)
    ours, part = "°C" if plain in ("°C", "°F") else "mm", 0.1 if tenths else 1.0
    if plain == ours:
        return (lambda value: round(value * part, 6)) if tenths else float
    return lambda value: round(from_si(to_si(value, unit(plain)), unit(ours)), 6)


def told_units(units: Mapping[Role, str]) -> str:
    """'maximum in °C, minimum in °C, rain in mm'."""
    return ", ".join(f"{role} in {spelling}" for role, spelling in units.items())
