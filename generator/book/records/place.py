"""A place and its climate, one file in data/places; and the countries that places lie in, one entry in countries.yml each."""

from typing import Annotated

from pydantic import Field, StringConstraints

from generator.book.fields.numbers import NO_FINER, Percent
from generator.book.fields.sourced import CountryId, PublishedId, Record
from generator.book.fields.texts import COUNTRY_CODE, Sentence, ShortWord, Word

OF_A_YEAR = Field(min_length=12, max_length=12)
# Wider than what was ever measured, which checks/climates holds a place to.
Temperature = Annotated[float, Field(ge=-120, le=80), NO_FINER]
Twelve = Annotated[tuple[Temperature, ...], OF_A_YEAR]
TwelveSpreads = Annotated[tuple[Annotated[float, Field(ge=0, le=40), NO_FINER], ...], OF_A_YEAR]
TwelveAmounts = Annotated[tuple[Annotated[float, Field(ge=0, le=5000), NO_FINER], ...], OF_A_YEAR]
TwelveHours = Annotated[tuple[Annotated[float, Field(ge=0, le=24), NO_FINER], ...], OF_A_YEAR]
TwelvePercent = Annotated[tuple[Percent, ...], OF_A_YEAR]
TwelveCounts = Annotated[tuple[Annotated[float, Field(ge=0, le=31), NO_FINER], ...], OF_A_YEAR]

Years = Annotated[int, Field(ge=0, le=500)]


class Normals(Record):
    """Twelve monthly figures, January first, in either hemisphere."""

    station: Word
    station_id: ShortWord | None = None
    first_year: int = Field(ge=1850, le=2100)
    last_year: int = Field(ge=1850, le=2100)
    years_of_each_month: tuple[Years, Years] | None = Field(
        default=None, description="Of a short record with gaps: the fewest and the most years that a month is the mean of."
    )
    temperature_step_c: Annotated[float, Field(gt=0, le=1), NO_FINER] = Field(description="0.1, or 1 where the source gave whole degrees.")
    source: PublishedId = Field(description="Source id of the temperatures.")
    mean_maximum_c: Twelve = Field(description="Mean daily maximum, screen height, °C.")
    mean_minimum_c: Twelve = Field(description="Mean daily minimum, screen height, °C.")
    rain_mm: TwelveAmounts = Field(description="Mean monthly rain, mm.")
    rain_source: PublishedId | None = Field(default=None, description="Source id of the rain, when it is another.")
    frost_days: TwelveCounts | None = Field(default=None, description="Nights a month at or below 0 °C in the screen.")
    cold_days_at_or_below_2c: TwelveCounts | None = None
    minimum_standard_deviation_c: TwelveSpreads | None = Field(
        default=None, description="Standard deviation of the daily minimum within the month, °C."
    )
    lowest_minimum_c: Twelve | None = Field(default=None, description="Lowest minimum of the period in each month, °C.")
    sunshine_h_per_day: TwelveHours | None = Field(
        default=None, description="Mean hours of bright sunshine a day; with it, evapotranspiration is by Penman-Monteith."
    )
    relative_humidity_3pm_percent: TwelvePercent | None = Field(
        default=None, description="Mean relative humidity at 15:00, per cent."
    )
    pan_evaporation_mm_per_day: TwelveAmounts | None = Field(
        default=None, description="Mean Class A pan evaporation a day, mm; to compare with, nothing is worked out from it."
    )


class Hardiness(Record):
    """How cold its winters get, by the open standard of the United States' department of agriculture."""

    zone: Annotated[str, StringConstraints(pattern=r"^([1-9]|1[0-3])[ab]$", max_length=3)] = Field(
        description="Half zone of 5 °F that holds the mean of each year's coldest night: 8a."
    )
    source: PublishedId


class Place(Record):
    name: Word
    region: Word
    country: CountryId
    latitude_deg: Annotated[float, Field(ge=-90, le=90), NO_FINER] = Field(description="South is negative.")
    longitude_deg: Annotated[float, Field(ge=-180, le=180), NO_FINER] = Field(description="West is negative.")
    elevation_m: Annotated[float, Field(ge=-430, le=6000), NO_FINER] | None = None
    climate_kind: Word = Field(description="In plain words: inland with frost.")
    summary: Sentence
    normals: Normals
    hardiness: Hardiness | None = Field(default=None, description="Leave out where nobody publishes it; it is then worked out from the normals.")
    notes: tuple[Sentence, ...] = Field(default=(), description="Limits of the record a reader should know.")

    @property
    def climate_sources(self) -> tuple[str, ...]:
        """Whose figures its climate is, each source once."""
        of_winter = self.hardiness.source if self.hardiness else None
        return tuple(dict.fromkeys(filter(None, (self.normals.source, self.normals.rain_source, of_winter))))


CountryCode = Annotated[str, StringConstraints(pattern=COUNTRY_CODE, max_length=120)]


class Country(Record):
    """A country, as a place, a name or a line of it gives it by its two capitals. Pages show countries in the order of the file."""

    name: Word = Field(description="As a reader says it: Britain.")
    in_a_sentence: Word | None = Field(default=None, description="The same after 'in', where that is another: the United States.")
    us_units: bool = Field(default=False, description="True where people count in inches, pounds and degrees Fahrenheit.")
