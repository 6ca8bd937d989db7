"""A place as the file of a book: commented YAML for an author to go on from, and the entry of its source."""

import json
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import fsum
from textwrap import wrap

from generator.season.calendar_days import MONTHS

Twelve = Sequence[float]
LONGEST_LINE = 120
# Sure to be read as the text that it is, without quotes.
_PLAIN = re.compile(r"[A-Za-z(][A-Za-z0-9 ,.()/'-]*[A-Za-z0-9.)]|[A-Za-z]")
_NO_TEXT = {"yes", "no", "on", "off", "true", "false", "null", "y", "n"}


@dataclass(frozen=True)
class PlaceWritten:
    """What goes into the file. made_of: sentences for its head, for the author alone. years: the fewest and the most of a month, for a short record.

    Series are 12 figures, January first [°C, mm, nights]; None where nothing is known.
    """

    name: str
    region: str
    country: str
    latitude_deg: float
    longitude_deg: float
    elevation_m: float | None
    station: str
    station_id: str | None
    first_year: int
    last_year: int
    source: str
    mean_maximum_c: Twelve
    mean_minimum_c: Twelve
    rain_mm: Twelve
    temperature_step_c: float = 0.1
    years: tuple[int, int] | None = None
    frost_days: Twelve | None = None
    cold_days: Twelve | None = None
    minimum_spread_c: Twelve | None = None
    lowest_minimum_c: Twelve | None = None
    mean_spread_c: Twelve | None = None
    night_to_night: float | None = None
    notes: tuple[str, ...] = ()
    made_of: tuple[str, ...] = ()


def place_text(place: PlaceWritten) -> str:
    """The file: keys in the order of the schema, and what an author should know above each that is not plain."""
    return "\n".join([*_head(place), *_normals(place), *_notes(place)]) + "\n"


def _head(place: PlaceWritten) -> Iterator[str]:
    yield "# yaml-language-server: $schema=../schema/place.schema.json"
    for sentence in place.made_of:
        yield from (f"# {line}" for line in wrap(sentence, LONGEST_LINE - 2))
    yield f"name: {quoted(place.name)}"
    yield f"region: {quoted(place.region)}"
    yield f"country: {quoted(place.country, always=True)}"
    yield "# South and west are negative."
    yield f"latitude_deg: {place.latitude_deg:.6g}"
    yield f"longitude_deg: {place.longitude_deg:.7g}"
    if place.elevation_m is not None:
        yield f"elevation_m: {place.elevation_m:.6g}"
    else:
        yield "# elevation_m: 120, the height above sea level, if you know it"
    yield "# In plain words, as the list of places says it; and two sentences on what a lawn there meets. Write your own."
    yield f"climate_kind: {quoted(_kind(place))}"
    yield "summary: >-"
    yield from (f"  {line}" for line in wrap(_summary(place), LONGEST_LINE - 2))


def _kind(place: PlaceWritten) -> str:
    warm, cold = max(place.mean_maximum_c), min(place.mean_minimum_c)
    summer = "hot summers" if warm >= 30 else "warm summers" if warm >= 23 else "mild summers"
    return f"{summer}, with frost" if cold <= 4 else f"{summer}, seldom any frost"


def _summary(place: PlaceWritten) -> str:
    means = [high + low for high, low in zip(place.mean_maximum_c, place.mean_minimum_c, strict=True)]
    turn = f"{MONTHS[means.index(max(means))]} is the warmest month here, and {MONTHS[means.index(min(means))]} the coldest."
    if place.frost_days is None:
        return turn
    nights = round(fsum(place.frost_days))
    return f"{turn} Frost comes on about {nights} nights of a year." if nights else f"{turn} Frost is hardly known."


def _normals(place: PlaceWritten) -> Iterator[str]:
    yield "# Every row has twelve figures, January first."
    yield "normals:"
    yield f"  station: {quoted(place.station)}"
    if place.station_id:
        yield f"  station_id: {quoted(place.station_id, always=True)}"
    yield f"  first_year: {place.first_year}"
    yield f"  last_year: {place.last_year}"
    if place.years is not None:
        yield "  # The fewest and the most years that a month is the mean of."
        yield f"  years_of_each_month: [{place.years[0]}, {place.years[1]}]"
    yield f"  temperature_step_c: {place.temperature_step_c:g}"
    yield "  # An entry of data/sources.yml."
    yield f"  source: {place.source}"
    yield from _row("mean_maximum_c", place.mean_maximum_c)
    yield from _row("mean_minimum_c", place.mean_minimum_c)
    yield from _row("rain_mm", place.rain_mm)
    yield from _row("frost_days", place.frost_days, "Nights of each month with a minimum of 0 °C or less in the screen.")
    yield from _row("cold_days_at_or_below_2c", place.cold_days, "The same at 2 °C or less, when the ground may freeze.")
    yield from _row("minimum_standard_deviation_c", place.minimum_spread_c, "How far nights lie about their mean: the standard deviation of the minimum.")
    if place.night_to_night is not None:
        yield "  # How alike one night is to the next, 0 to 1."
        yield f"  night_to_night_correlation: {place.night_to_night:.2f}"
    yield from _row("mean_spread_between_years_c", place.mean_spread_c, "How far a month's mean differs from year to year: its standard deviation.")
    yield from _row("lowest_minimum_c", place.lowest_minimum_c)


def _row(key: str, values: Twelve | None, comment: str | None = None) -> Iterator[str]:
    if values is None:
        return
    if comment:
        yield f"  # {comment}"
    # No "-0.0": nothing is colder than itself.
    yield f"  {key}: [{', '.join(f'{round(value, 1) + 0.0:.1f}' for value in values)}]"


def _notes(place: PlaceWritten) -> Iterator[str]:
    if place.notes:
        yield "# What a reader should know of these figures."
        yield "notes:"
        yield from (f"  - {quoted(note)}" for note in place.notes)


def quoted(text: str, always: bool = False) -> str:
    """A text as YAML takes it for a text, whatever it holds."""
    plain = not always and _PLAIN.fullmatch(text) and text.lower() not in _NO_TEXT
    return text if plain else json.dumps(text, ensure_ascii=False)


def source_text(id: str, entry: Mapping[str, str | int]) -> str:
    """An entry for the file of sources, with the keys that are given."""
    rows = [f"  {key}: {quoted(value) if isinstance(value, str) and key != 'address' else value}" for key, value in entry.items() if value]
    return "\n".join([f"{id}:", *rows]) + "\n"
