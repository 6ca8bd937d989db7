"""A place and its climate, one file in data/places; and the countries that places lie in, one entry in countries.yml each."""

from typing import Annotated

from pydantic import Field, StringConstraints, model_validator

from generator.book.fields.numbers import NO_FINER, OfKind
from generator.book.fields.sourced import CountryId, PublishedId, Record, RecordProblem
from generator.book.fields.texts import COUNTRY_CODE, Currency, Sentence, ShortWord, Word

OF_A_YEAR = Field(min_length=12, max_length=12)
Twelve = Annotated[tuple[Annotated[float, OfKind("temperature of a month"), NO_FINER], ...], OF_A_YEAR]
TwelveSpreads = Annotated[tuple[Annotated[float, OfKind("spread of a month"), NO_FINER], ...], OF_A_YEAR]
TwelveRains = Annotated[tuple[Annotated[float, OfKind("rain of a month"), NO_FINER], ...], OF_A_YEAR]
TwelvePans = Annotated[tuple[Annotated[float, OfKind("pan evaporation"), NO_FINER], ...], OF_A_YEAR]
TwelveHours = Annotated[tuple[Annotated[float, OfKind("hours of sunshine"), NO_FINER], ...], OF_A_YEAR]
TwelvePercent = Annotated[tuple[Annotated[float, OfKind("humidity"), NO_FINER], ...], OF_A_YEAR]
TwelveCounts = Annotated[tuple[Annotated[float, OfKind("days of a month"), NO_FINER], ...], OF_A_YEAR]

Year = Annotated[int, OfKind("year of a record")]
Years = Annotated[int, OfKind("years of a month")]
Latitude = Annotated[float, OfKind("latitude"), NO_FINER]
Longitude = Annotated[float, OfKind("longitude"), NO_FINER]
Edge = Annotated[float, OfKind("edge of a country"), NO_FINER]
Side = Annotated[float, OfKind("side of a country"), NO_FINER]


class Normals(Record):
    """Twelve monthly figures, January first, in either hemisphere."""

    station: Word
    station_id: ShortWord | None = None
    first_year: Year
    last_year: Year
    years_of_each_month: tuple[Years, Years] | None = Field(
        default=None, description="Of a short record with gaps: the fewest and the most years that a month is the mean of."
    )
    temperature_step_c: Annotated[float, OfKind("step of a record"), NO_FINER] = Field(description="0.1, or 1 where the source gave whole degrees.")
    source: PublishedId = Field(description="Source id of the temperatures.")
    mean_maximum_c: Twelve = Field(description="Mean daily maximum, screen height, °C.")
    mean_minimum_c: Twelve = Field(description="Mean daily minimum, screen height, °C.")
    rain_mm: TwelveRains = Field(description="Mean monthly rain, mm.")
    rain_source: PublishedId | None = Field(default=None, description="Source id of the rain, when it is another.")
    frost_days: TwelveCounts | None = Field(default=None, description="Nights a month at or below 0 °C in the screen.")
    cold_days_at_or_below_2c: TwelveCounts | None = None
    minimum_standard_deviation_c: TwelveSpreads | None = Field(
        default=None, description="Standard deviation of the daily minimum within the month, °C."
    )
    night_to_night_correlation: Annotated[float, OfKind("likeness of nights"), NO_FINER] | None = Field(
        default=None, description="Correlation of one night's departure from the mean minimum with the next night's, from a daily record, 0 to 1."
    )
    mean_spread_between_years_c: TwelveSpreads | None = Field(
        default=None, description="Standard deviation, from year to year, of the month's mean temperature, °C: how far a year may differ from the usual one."
    )
    lowest_minimum_c: Twelve | None = Field(default=None, description="Lowest minimum of the period in each month, °C.")
    sunshine_h_per_day: TwelveHours | None = Field(
        default=None, description="Mean hours of bright sunshine a day; with it, evapotranspiration is by Penman-Monteith."
    )
    relative_humidity_3pm_percent: TwelvePercent | None = Field(
        default=None, description="Mean relative humidity at 15:00, per cent."
    )
    pan_evaporation_mm_per_day: TwelvePans | None = Field(
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
    latitude_deg: Latitude = Field(description="South is negative.")
    longitude_deg: Longitude = Field(description="West is negative.")
    elevation_m: Annotated[float, OfKind("elevation"), NO_FINER] | None = None
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


class PartOfCountry(Record):
    """A part of a country, between four lines of whole degrees or so: wide enough for all of it, and for a stretch of sea."""

    what: Word = Field(description="Which part: the mainland, an island far from it.")
    south: Edge = Field(description="Its southern edge; south is negative.")
    north: Edge = Field(description="Its northern edge.")
    west: Side = Field(description="Its western edge; west is negative.")
    east: Side = Field(description="Its eastern edge: less than the western one where 180 degrees lie between.")

    @model_validator(mode="after")
    def _is_upright(self) -> "PartOfCountry":
        if self.south >= self.north:
            raise RecordProblem(f"the southern edge {self.south:g} is not south of the northern one, {self.north:g}", "swap them; south is negative", "south")
        return self

    def holds(self, latitude_deg: float, longitude_deg: float) -> bool:
        """Whether a point lies in it."""
        between = self.west <= longitude_deg <= self.east if self.west <= self.east else not self.east < longitude_deg < self.west
        return self.south <= latitude_deg <= self.north and between


class Country(Record):
    """A country, as a place, a name or a line of it gives it by its two capitals. Pages show countries in the order of the file."""

    name: Word = Field(description="As a reader says it: Britain.")
    in_a_sentence: Word | None = Field(default=None, description="The same after 'in', where that is another: the United States.")
    us_units: bool = Field(default=False, description="True where people count in inches, pounds and degrees Fahrenheit.")
    month_first: bool = Field(default=False, description="True where people write September 3, and not 3 September.")
    currency: Currency | None = Field(default=None, description="Its money, by the three capitals of ISO 4217: what a new book there begins with.")
    words: dict[Word, Word] = Field(
        default={}, description="What people there say for a word of the texts: 'autumn: fall'. Grasses take theirs from their own `names`."
    )
    lies: tuple[PartOfCountry, ...] = Field(
        default=(), description="Where on earth it lies, part by part: a place of this country outside all of them is refused. Not asked where left out."
    )
