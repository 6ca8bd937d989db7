"""The practice that publishes the book (practice.yml), and the two season groups (season-groups.yml)."""

from pydantic import Field

from generator.model.record import (
    CURRENCY, WEB_FOLDER, Figure, GrassId, Identifier, PlaceId, ProductId, Record, Sentence, Share, Temperature,
    TemperatureDifference, Word,
)


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
    home_grass: GrassId = Field(description="The grass the book opens with.")
    feed: ProductId = Field(description="The product that calculators start with.")
    products: dict[Identifier, Product]


class SeasonGroupFigures(Record):
    """Temperatures and needs of a season group; a grass may override some."""

    growth_optimum: Temperature = Field(description="Optimum of the growth-potential model, °C.")
    growth_spread: TemperatureDifference = Field(description="Spread of the growth-potential model, °C difference.")
    full_growth_above_optimum: bool = Field(description="True where growth stays full above the optimum.")
    crop_coefficient: Share = Field(description="Share of reference evapotranspiration used, 1.")


class SeasonGroups(Record):
    warm: SeasonGroupFigures
    cool: SeasonGroupFigures
    rules: dict[str, Figure] = Field(description="Thresholds of the window rules.")
    sites: dict[str, dict[str, Figure]] = Field(description="Offsets of the named microclimates.")
