"""A place and its climate: one file in data/places."""

from typing import Annotated

from pydantic import Field

from generator.model.record import Country, PublishedId, Record, Sentence, Word

Twelve = Annotated[tuple[float, ...], Field(min_length=12, max_length=12)]
TwelveAmounts = Annotated[tuple[Annotated[float, Field(ge=0)], ...], Field(min_length=12, max_length=12)]
TwelveHours = Annotated[tuple[Annotated[float, Field(ge=0, le=24)], ...], Field(min_length=12, max_length=12)]
TwelvePercent = Annotated[tuple[Annotated[float, Field(ge=0, le=100)], ...], Field(min_length=12, max_length=12)]
TwelveCounts = Annotated[tuple[Annotated[float, Field(ge=0, le=31)], ...], Field(min_length=12, max_length=12)]


class Normals(Record):
    """Twelve monthly figures, January first, in either hemisphere."""

    station: Word
    station_id: str | None = Field(default=None, max_length=40)
    first_year: int = Field(ge=1850, le=2100)
    last_year: int = Field(ge=1850, le=2100)
    years_of_each_month: tuple[int, int] | None = Field(
        default=None, description="Of a short record with gaps: the fewest and the most years that a month is the mean of."
    )
    temperature_step_c: float = Field(description="0.1, or 1 where the source gave whole degrees.")
    source: PublishedId = Field(description="Source id of the temperatures.")
    mean_maximum_c: Twelve = Field(description="Mean daily maximum, screen height, °C.")
    mean_minimum_c: Twelve = Field(description="Mean daily minimum, screen height, °C.")
    rain_mm: TwelveAmounts = Field(description="Mean monthly rain, mm.")
    rain_source: PublishedId | None = Field(default=None, description="Source id of the rain, when it is another.")
    frost_days: TwelveCounts | None = Field(default=None, description="Nights a month at or below 0 °C in the screen.")
    cold_days_at_or_below_2c: TwelveCounts | None = None
    minimum_standard_deviation_c: Twelve | None = Field(
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


class Place(Record):
    name: Word
    region: Word
    country: Country
    latitude_deg: float = Field(ge=-90, le=90, description="South is negative.")
    longitude_deg: float = Field(ge=-180, le=180, description="West is negative.")
    elevation_m: float | None = Field(default=None, ge=-430, le=6000)
    climate_kind: Word = Field(description="In plain words: inland with frost.")
    summary: Sentence
    normals: Normals
    notes: tuple[Sentence, ...] = Field(default=(), description="Limits of the record a reader should know.")
