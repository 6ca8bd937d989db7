"""The practice that publishes the book (practice.yml), and the two season groups (season-groups.yml)."""

from typing import Annotated, Literal

from pydantic import Field

from generator.model.record import (
    CURRENCY, MONTH_DAY, WEB_FOLDER, Depth, Figure, GrassId, Identifier, Measured, PlaceId, ProductId, Record, Sentence,
    Share, Sourced, Temperature, TemperatureDifference, Word,
)

MonthDay = Annotated[str, Field(pattern=MONTH_DAY, description="Month and day as MM-DD: \"09-01\".")]


class Product(Record):
    """A feed, sand or other product of the practice's own; never a pesticide."""

    name: Word
    nitrogen_percent: float | None = Field(default=None, ge=0, le=100)
    phosphate_percent: float | None = Field(default=None, ge=0, le=100, description="As P2O5.")
    potash_percent: float | None = Field(default=None, ge=0, le=100, description="As K2O.")
    slow_release_percent: float | None = Field(default=None, ge=0, le=100, description="Share of the nitrogen.")
    pack_mass_kg: float | None = Field(default=None, gt=0)
    full_rate_kg_per_100_m2: float | None = Field(default=None, gt=0, description="Rate on its bag.")
    price: float | None = Field(default=None, ge=0, description="Each, in the practice's currency.")
    note: Sentence | None = None


class Practice(Record):
    name: Word
    invented: bool = Field(description="True for a demonstration practice; every page footer says so.")
    about: Sentence
    public_address: str | None = Field(
        default=None, pattern=WEB_FOLDER, description="Where the book is hosted; client links and QR codes are built on it."
    )
    telephone: str | None = Field(default=None, max_length=40)
    email: str | None = Field(default=None, max_length=80)
    currency: str = Field(default="AUD", pattern=CURRENCY)
    home_place: PlaceId = Field(description="The place the book opens with.")
    calendar_places: tuple[PlaceId, ...] | None = Field(
        default=None, min_length=1,
        description="Places whose months are printed, the home place among them; every place when left out. The others keep a page of their own.",
    )
    home_grass: GrassId = Field(description="The grass the book opens with.")
    feed: ProductId = Field(description="The product that calculators start with.")
    products: dict[Identifier, Product]


class SeasonGroupFigures(Record):
    """Temperatures and needs of a season group; a grass may override some."""

    growth_optimum: Temperature = Field(description="Optimum of the growth-potential model, °C.")
    growth_spread: TemperatureDifference = Field(description="Spread of the growth-potential model, °C difference.")
    full_growth_above_optimum: bool = Field(description="True where growth stays full above the optimum.")
    crop_coefficient: Share = Field(description="Share of reference evapotranspiration used, 1.")
    growth_base: Temperature = Field(description="Base of growing degree days, °C; a grass may carry its own.")
    leaf_growth: Annotated[Figure, Measured("mm/day")] = Field(description="Height gained in a day of full growth, mm/day.")
    allowable_depletion: Share = Field(description="Share of the soil's available water used before watering, 1.")


class SoilKind(Record):
    """A kind of soil, as far as water and feed go."""

    name: Word
    available_water: Share = Field(description="Water held between full and wilting, depth per depth of soil, 1.")
    infiltration: Annotated[Figure, Measured("mm/h")] = Field(description="What wet soil takes in, mm/h.")
    root_depth: Depth = Field(description="Depth from which the lawn drinks, mm.")
    light_dressings: bool = Field(description="True where feed must be given in smaller dressings, because it washes through.")
    first: Sentence | None = Field(default=None, description="What to do before any watering helps.")


class PublishedCalendar(Sourced):
    """A stretch of the year that a public body prints, to hold our windows against."""

    place: PlaceId
    grasses: tuple[GrassId, ...] = Field(min_length=1)
    window: Literal["renovation", "light_renovation", "overseeding", "oversowing", "pre_emergent"]
    first: MonthDay
    last: MonthDay
    says: Sentence = Field(description="What is printed there, in our words.")
    explained: Sentence | None = Field(default=None, description="Where the two disagree, and why.")


class SeasonGroups(Record):
    warm: SeasonGroupFigures
    cool: SeasonGroupFigures
    rules: dict[str, Figure] = Field(description="Thresholds of the window rules.")
    sites: dict[str, dict[str, Figure]] = Field(description="Offsets of the named microclimates.")
    soils: dict[Identifier, SoilKind] = Field(description="Kinds of soil; the first one is taken where nothing is said.")
    published: tuple[PublishedCalendar, ...] = Field(
        default=(), description="Calendars of public bodies, to hold the windows against."
    )
