"""The practice that publishes the book (practice.yml), and the two season groups (season-groups.yml)."""

from typing import Annotated, Literal

from pydantic import Field, StringConstraints, model_validator

from generator.book.fields.numbers import NO_FINER, OfKind
from generator.book.fields.over_shared import OverShared
from generator.book.fields.private import MACHINE, OPENS, PRICE, TIME, Opened
from generator.book.fields.sourced import (
    Figure,
    GrassId,
    MachineId,
    Measured,
    OnlyGrassId,
    OnlyRenovationId,
    PlaceId,
    ProductId,
    Record,
    RecordProblem,
    Sourced,
    Statement,
    TaskId,
    statements,
)
from generator.book.fields.texts import ONE_LINE, Currency, Identifier, MonthDay, Sentence, ShortWord, WebFolder, Word
from generator.book.records.season_rules import SeasonRules, SiteOffsets

OPEN_SITE = "open"

Nutrient = Annotated[float, OfKind("share of a nutrient"), NO_FINER]
PriceOfHour = Annotated[float, OfKind("price of an hour"), NO_FINER, PRICE]
PriceOfWork = Annotated[float, OfKind("price of work"), NO_FINER, PRICE]


MinutesOfWork = Annotated[float, OfKind("minutes of work"), NO_FINER]
Hands = Literal["one", "shared"]
HANDS = "shared: several people do it together, so that it takes one person's time divided by them. one: it takes as long however many are there."


class Product(Record):
    """A feed, sand or other product of the practice's own; never a pesticide."""

    name: Word
    nitrogen_percent: Nutrient | None = None
    phosphate_percent: Nutrient | None = Field(default=None, description="As P2O5.")
    potash_percent: Nutrient | None = Field(default=None, description="As K2O.")
    slow_release_percent: Annotated[float, OfKind("part of a whole"), NO_FINER] | None = Field(default=None, description="Share of the nitrogen.")
    pack_mass_kg: Annotated[float, OfKind("mass of a pack"), NO_FINER] | None = Field(default=None, description="What one pack holds, for what is sold by mass.")
    pack_volume_l: Annotated[float, OfKind("volume of a pack"), NO_FINER] | None = Field(
        default=None, description="What one pack holds, for what is sold by volume; 1000 for a cubic metre."
    )
    full_rate_kg_per_100_m2: Annotated[float, OfKind("rate of a product"), NO_FINER] | None = Field(default=None, description="Rate on its bag.")
    price: Annotated[float, OfKind("price of a pack"), NO_FINER, PRICE] | None = Field(default=None, description="Of one pack, in the practice's currency.")
    for_tasks: tuple[TaskId, ...] = Field(
        default=(), description="Tasks it is used for. A plan's step takes the first product of its task, in the order of this file."
    )
    for_grasses: tuple[OnlyGrassId, ...] = Field(
        default=(), description="Grasses it is for, as the seed of one is; every grass when left out. A step's product follows the job's grass."
    )
    note: Annotated[Sentence, PRICE] | None = None


class Machine(Record):
    """A machine of the practice, or one that it hires or borrows: how it works, whose it is and what it costs."""

    name: Word
    working_width_m: Annotated[float, OfKind("width of work"), NO_FINER] | None = Field(default=None, description="Width of ground that one pass works.")
    speed_km_per_h: Annotated[float, OfKind("speed of work"), NO_FINER] | None = Field(default=None, description="Working speed; 4 is a brisk walk.")
    overlap_percent: Annotated[float, OfKind("overlap"), NO_FINER] | None = Field(
        default=None, description="Share of the width that the next pass goes over again."
    )
    efficiency_percent: Annotated[float, OfKind("time at work"), NO_FINER] | None = Field(
        default=None, description="Share of the time spent working; the rest is turning, emptying and going round things."
    )
    tine_diameter_mm: Annotated[float, OfKind("thickness of a tine or blade"), NO_FINER] | None = Field(
        default=None, description="Of a corer: inside of a hollow tine, or a solid tine."
    )
    hole_depth_mm: Annotated[float, OfKind("depth in the ground"), NO_FINER] | None = Field(
        default=None, description="Of a corer: how deep its holes go on a lawn."
    )
    hole_spacing_along_mm: Annotated[float, OfKind("spacing"), NO_FINER] | None = Field(
        default=None, description="Of a corer: between holes of one pass, along the run."
    )
    hole_spacing_across_mm: Annotated[float, OfKind("spacing"), NO_FINER] | None = Field(
        default=None, description="Of a corer: between holes of one pass, across the run."
    )
    blade_width_mm: Annotated[float, OfKind("thickness of a tine or blade"), NO_FINER] | None = Field(
        default=None, description="Of a scarifier or vertical mower: thickness of a blade."
    )
    blade_spacing_mm: Annotated[float, OfKind("spacing"), NO_FINER] | None = Field(
        default=None, description="Of a scarifier or vertical mower: from blade to blade."
    )
    ownership: Literal["own", "hire", "borrow"] = Field(default="own", description="Who owns it; a plan books what the practice does not own.")
    hire_price_per_day: Annotated[float, OfKind("price of a day"), NO_FINER, PRICE] | None = Field(
        default=None, description="What a day's hire costs the practice, before tax."
    )
    running_price_per_hour: PriceOfHour | None = Field(default=None, description="Fuel, wear and upkeep for an hour of work, before tax.")
    book_days_ahead: Annotated[int, OfKind("days ahead")] | None = Field(
        default=None, description="Days before the job by which it is booked; left out, the plan's own days."
    )
    pace_of_people: Annotated[int, OfKind("people on a job")] = Field(
        default=1, description="How many people its speed is the pace of: 2 for a barrow with one wheeling and one spreading."
    )
    check: Sentence | None = Field(default=None, description="What to look at before the day.")
    note: Sentence | None = None


class PricedOperation(Record):
    """What the practice asks for a task, and the machine that does it. All prices are before tax unless `prices_include_tax`."""

    price_per_100_m2: PriceOfWork | None = Field(default=None, description="Work and machine, once over the lawn; what is spread or sown is extra.")
    minimum_price: PriceOfWork | None = Field(default=None, description="The minimum price for it on any lawn.")
    machine: Annotated[MachineId, MACHINE] | None = Field(default=None, description="One of `machines`.")
    setup_minutes: Annotated[float, OfKind("minutes of setting up"), NO_FINER, TIME] | None = Field(
        default=None, description="Unloading, setting up, cleaning and loading, whatever the size of the lawn."
    )
    hands: Annotated[Hands, TIME] = Field(default="one", description=HANDS + " Setting up takes as long for many as for one.")
    charged_in_jobs: Annotated[bool, PRICE] = Field(
        default=True, description="False for what a job's price holds already, as the looks at how a lawn recovers; its time still counts."
    )

    @model_validator(mode="after")
    def _says_something(self) -> "PricedOperation":
        if not self.model_fields_set:
            raise RecordProblem("this operation has neither a price nor a machine", "give one, or take the operation out")
        return self


class HandWork(Record):
    """How long a step takes that is done by hand and has no price of its own: marking, clearing up, carting off, washing down."""

    minutes: MinutesOfWork | None = Field(default=None, description="Whatever the size of the lawn.")
    minutes_per_100_m2: MinutesOfWork | None = Field(default=None, description="For each 100 m2 of lawn.")
    minutes_per_spoil_m3: MinutesOfWork | None = Field(default=None, description="For each loose cubic metre that the job carries away: barrowing and loading.")
    minutes_per_load: MinutesOfWork | None = Field(default=None, description="For each trailer load: there and back, and tipping. More hands do not shorten it.")
    hands: Hands = Field(default="shared", description=HANDS)

    @model_validator(mode="after")
    def _says_how_long(self) -> "HandWork":
        if self.model_fields_set <= {"hands"}:
            raise RecordProblem("this work has no time", "give its minutes, or take it out")
        return self


class Invoicing(Record):
    """What the practice's invoices say beside the work: its own registration, numbering and terms. Nothing in the book takes a payment."""

    prefix: Annotated[str, StringConstraints(pattern=ONE_LINE, max_length=20)] = Field(
        default="", description="What stands before an invoice's number; the numbers are counted on the reader's device."
    )
    registration: Word | None = Field(default=None, description="The practice's business or tax number, as the law wants it on an invoice.")
    address: tuple[Word, ...] = Field(default=(), max_length=5, description="The practice's postal address, a line each.")
    pays_within_days: Annotated[int, OfKind("days to pay")] = Field(default=14, description="Days from its date in which an invoice is paid.")
    how_to_pay: Sentence | None = Field(default=None, description="How it is paid, in words: to which account, with what reference.")


class Practice(OverShared):
    invented: bool = Field(description="True for a demonstration practice; every page footer says so.")
    about: Sentence
    calendar_name: ShortWord | None = Field(
        default=None, pattern=r"^[a-z0-9]+([.-][a-z0-9]+)*$",
        description="Ends the ids of events in calendar files, such as kestrelflat.example. Never change it, wherever the book is hosted: telephones go by it.",
    )
    public_address: WebFolder | None = Field(
        default=None, description="Where the book is hosted; client links, codes, canonical links and the list of pages for search engines are built on it."
    )
    public: tuple[Opened, ...] = Field(
        default=(), exclude=True,
        description="What the site for clients has beside what is always in it. " + " ".join(f"{word}: {what}." for word, what in OPENS.items()),
    )
    telephone: ShortWord | None = None
    email: Word | None = None
    currency: Currency = "AUD"
    home_place: PlaceId = Field(description="The place the book opens with.")
    places: tuple[PlaceId, ...] | None = Field(
        default=None, min_length=1,
        description="Places that the practice offers, the home place among them; every place when left out. Each of the others keeps one light page.",
    )
    calendar_places: tuple[PlaceId, ...] | None = Field(
        default=None, min_length=1,
        description="Places whose months are printed, the home place among them; every place that is offered when left out. The others keep a page of their own.",
    )
    home_grass: GrassId = Field(description="The grass the book opens with.")
    feed: ProductId = Field(description="The product that calculators start with.")
    products: dict[Identifier, Product]
    machines: Annotated[dict[Identifier, Machine], MACHINE] = Field(
        default={}, description="Machines by an id of the practice's own, which plans and operations name."
    )
    operations: dict[TaskId, PricedOperation] = Field(default={}, description="Task id to what is charged for it and what does it.")
    hand_work: Annotated[dict[Identifier, HandWork], TIME] = Field(
        default={}, description="A plan's step, by its id or the shared step's, to how long it takes by hand; it goes before the time of the step's task."
    )
    people: Annotated[int, OfKind("people on a job"), TIME] | None = Field(default=None, description="People who go to a job.")
    hourly_price: PriceOfHour | None = Field(default=None, description="The price of one person's hour of work.")
    minimum_charge: PriceOfWork | None = Field(default=None, description="The minimum charge for any trip.")
    spoil_price_per_m3: Annotated[float, OfKind("price of a cubic metre"), NO_FINER, PRICE] | None = Field(
        default=None, description="The price of carrying away and tipping a loose cubic metre of thatch, cores or turf."
    )
    spoil_bag_l: Annotated[float, OfKind("volume of a bag"), NO_FINER, MACHINE] | None = Field(
        default=None, description="What one bag for thatch and clippings holds, in litres."
    )
    trailer_volume_m3: Annotated[float, OfKind("volume of a trailer"), NO_FINER, MACHINE] | None = Field(
        default=None, description="What fits in the trailer that spoil goes away in."
    )
    tax_name: Annotated[ShortWord, PRICE] | None = Field(default=None, description="What the tax on a sale is called on an estimate: GST, VAT, sales tax.")
    tax_percent: Annotated[float, OfKind("tax on a sale"), NO_FINER, PRICE] | None = Field(
        default=None, description="Tax on a sale; 0 for a practice that is not registered for it."
    )
    prices_include_tax: Annotated[bool, PRICE] = Field(default=False, description="True if the prices in this file include the tax already.")
    deposit_percent: Annotated[float, OfKind("deposit"), NO_FINER, PRICE] | None = Field(
        default=None, description="Share of an estimate that is paid when it is accepted."
    )
    estimate_valid_days: Annotated[int, OfKind("days of an estimate"), PRICE] | None = Field(default=None, description="Days for which an estimate can be accepted.")
    invoice: Annotated[Invoicing, PRICE] = Field(default=Invoicing(), description="What stands on an invoice.")

    @property
    def described(self) -> str:
        return self.description or self.about


class SeasonGroupFigures(Record):
    """Temperatures and needs of a season group; a grass may override some."""

    growth_optimum: Annotated[Figure, Measured("best growing temperature")] = Field(description="Optimum of the growth-potential model, °C.")
    growth_spread: Annotated[Figure, Measured("spread of growth")] = Field(description="Spread of the growth-potential model, °C difference.")
    full_growth_above_optimum: bool = Field(description="True where growth stays full above the optimum.")
    crop_coefficient: Annotated[Figure, Measured("share of what evaporates")] = Field(description="Share of reference evapotranspiration used, 1.")
    growth_base: Annotated[Figure, Measured("base temperature of growth")] = Field(description="Base of growing degree days, °C; a grass may carry its own.")
    leaf_growth: Annotated[Figure, Measured("growth of leaf")] = Field(description="Height gained in a day of full growth, mm/day.")
    allowable_depletion: Annotated[Figure, Measured("share of soil water")] = Field(description="Share of the soil's available water used before watering, 1.")


class SoilKind(Record):
    """A kind of soil, as far as water and feed go."""

    name: Word
    available_water: Annotated[Figure, Measured("share of water in soil")] = Field(description="Water held between full and wilting, depth per depth of soil, 1.")
    infiltration: Annotated[Figure, Measured("intake of soil")] = Field(description="What wet soil takes in, mm/h.")
    root_depth: Annotated[Figure, Measured("depth of roots")] = Field(description="Depth from which the lawn drinks, mm.")
    light_dressings: bool = Field(description="True if feed must be given in smaller dressings, because it washes through.")
    first: Sentence | None = Field(default=None, description="What to do before watering is any help.")


class PublishedCalendar(Sourced):
    """A stretch of the year that a public body prints, to hold our windows against."""

    place: PlaceId
    grasses: tuple[GrassId, ...] = Field(min_length=1)
    window: Literal["renovation", "light_renovation", "overseeding", "oversowing", "pre_emergent"]
    first: MonthDay = Field(description="Month and day as MM-DD: \"09-01\".")
    last: MonthDay = Field(description="The same of its end.")
    says: Sentence = Field(description="What is printed there, in our words.")
    explained: Sentence | None = Field(default=None, description="Where the two disagree, and why.")


class GreatHeat(Record):
    """Heat that closes no window but has a price."""

    afternoons: Annotated[Figure, Measured("heat of a rule")] = Field(description="Mean of the daily maximum in the four weeks from the job, from which this is said.")
    cost: tuple[Statement, ...] = statements("What such heat means for the job: water, hours, people.")


class Outside(Record):
    """What to do about a job outside its window, or when the weather turned on one inside it."""

    plans: tuple[OnlyRenovationId, ...] = Field(default=(), description="Only for these plans, before what is said to all of the group.")
    early: tuple[Statement, ...] = statements("Before the window opens.")
    late: tuple[Statement, ...] = statements("After it has closed.")
    gone_wrong: tuple[Statement, ...] = statements("What a frost or a heatwave does to a job that is done, and what then.")


class SeasonGroups(Record):
    warm: SeasonGroupFigures
    cool: SeasonGroupFigures
    rules: SeasonRules = Field(description="Thresholds of the window rules.")
    sites: dict[Identifier, SiteOffsets] = Field(description="Offsets of the named microclimates, 'open' among them.")
    soils: dict[Identifier, SoilKind] = Field(description="Kinds of soil; the first one is used if nothing is said.")
    outside: dict[Identifier, Outside] = Field(
        default={}, description="What to do about a day outside the window: 'warm' and 'cool' by group, any other name for the plans that it gives."
    )
    great_heat: GreatHeat | None = None
    published: tuple[PublishedCalendar, ...] = Field(
        default=(), description="Calendars of public bodies, to compare the windows with."
    )

    @model_validator(mode="after")
    def _has_the_open_station(self) -> "SeasonGroups":
        if OPEN_SITE not in self.sites:
            raise RecordProblem(f"'sites' lacks '{OPEN_SITE}', the weather station itself", "add it, with offsets of 0", "sites")
        return self
