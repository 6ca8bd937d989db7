"""A grass: one file in data/grasses."""

from typing import Annotated, Literal

from pydantic import Field

from generator.book.fields.sourced import CautionId, CountryId, Figure, Measured, Record, RenovationId, Sourced, Statement, TaskId, heard, statements
from generator.book.fields.texts import Sentence, Word
from generator.book.records.identification import Identification, LookAlike

SeasonGroup = Literal["warm", "cool"]
Habit = Literal["above ground", "above and below ground", "below ground", "bunch"]
Level = Literal["none", "light", "moderate", "hard"]
Use = Literal["fine lawn", "sports ground", "in shade", "in heat or drought", "low upkeep"]
LEVELS: tuple[Level, ...] = ("none", "light", "moderate", "hard")
Degree = Literal["low", "medium", "high"]


class Tolerance(Sourced):
    level: Degree
    others: tuple["Tolerance", ...] = Field(default=(), description="What other sources say, where they disagree.")


class Tolerances(Record):
    frost: Tolerance
    shade: Tolerance
    drought: Tolerance
    salt: Tolerance
    wear: Tolerance
    heat: Tolerance | None = None


class Operation(Sourced):
    """How hard this grass takes one task, and how it is done on this grass."""

    level: Level = Field(description="none, light, moderate or hard.")
    how: Sentence = Field(description="What that means on this grass: depth, directions, what not to do.")
    others: tuple[Statement, ...] = Field(default=(), description="What other sources say, where they disagree.")


class WeedStatus(Statement):
    country: CountryId
    regions: tuple[Word, ...] = Field(default=(), description="Only in these, by the region that places give; everywhere in the country when left out.")
    declared: bool = Field(
        default=False, description="True where a law or regulation forbids or limits growing, moving or selling it. Plans and calendars there say so first."
    )
    ask: Sentence | None = Field(
        default=None, description="The authority to ask before planting or carting it, where it is not the one that data/key.yml names."
    )


class Season(Record):
    """Temperatures of this grass where they differ from its season group."""

    optimum: Annotated[Figure, Measured("best growing temperature")] | None = Field(default=None, description="Mean air temperature of strongest growth, °C.")
    base: Annotated[Figure, Measured("base temperature of growth")] | None = Field(default=None, description="Temperature below which growth stops, °C.")


class Establishment(Record):
    from_seed: Statement | None = None
    from_runners: Statement | None = Field(default=None, description="Runners, sprigs or plugs.")
    from_rolls: Statement | None = None


class Grass(Record):
    name: Word = Field(description="The name this book uses in headings.")
    botanical_name: Word = Field(description="Current accepted name, with author if known.")
    botanical_synonyms: tuple[Word, ...] = Field(default=(), description="Older names still used in the trade.")
    names: dict[CountryId, tuple[Word, ...]] = Field(
        description="Common names by country, usual one first. Search finds every one of them."
    )
    misspellings: tuple[Word, ...] = heard()
    season_group: SeasonGroup = Field(description="warm or cool.")
    habit: Habit = Field(description="Where it runs: this decides how hard it may be renovated.")
    summary: Sentence = Field(description="Two or three sentences that open its page: the answer first.")
    identification: Identification | None = Field(
        default=None, description="What tells it from others, part by part; the key of grasses asks for it."
    )
    recognise: tuple[Statement, ...] = statements("How to tell it from others, where the parts do not say it.")
    look_alikes: tuple[LookAlike, ...] = Field(default=(), description="What it gets mistaken for, and what tells the two apart.")
    mowing_height: Annotated[Figure, Measured("height of grass")] = Field(description="Home-lawn height, mm.")
    heights: dict[Use, Annotated[Figure, Measured("height of grass")]] = Field(default={}, description="Heights for other uses, mm.")
    renovation_height: Annotated[Figure, Measured("height of grass")] | None = Field(
        default=None, description="Height it may be cut down to at renovation, mm. Leave out when it must not be."
    )
    nitrogen_per_year: Annotated[Figure, Measured("nitrogen of a year")] = Field(description="Nitrogen a year for a home lawn, g/m2.")
    nitrogen_per_feed: Annotated[Figure, Measured("nitrogen of one feed")] | None = Field(
        default=None, description="Nitrogen at one feed, g/m2, if this grass differs from the usual."
    )
    seed_rate: Annotated[Figure, Measured("rate of seed")] | None = Field(default=None, description="Seed for a new lawn, g/m2. Leave out if not sown.")
    overseed_rate: Annotated[Figure, Measured("rate of seed")] | None = Field(default=None, description="Seed over a living lawn, g/m2.")
    topdressing_depth: Annotated[Figure, Measured("depth of sand")] | None = Field(default=None, description="Sand in one dressing, mm.")
    water: tuple[Statement, ...] = statements("How much water it needs, and how it behaves when dry.")
    thatch: Statement
    thatch_limit: Annotated[Figure, Measured("depth of thatch")] | None = Field(default=None, description="Thatch depth above which to act, mm.")
    germination: Annotated[Figure, Measured("days to sprout")] | None = Field(default=None, description="Days until its seed is up. Leave out if not sown.")
    recovery: Annotated[Figure, Measured("weeks of recovery")] = Field(description="Weeks of growing weather to full cover after its usual renovation.")
    season: Season = Season()
    winter_kill: Annotated[Figure, Measured("killing cold")] | None = Field(
        default=None,
        description=(
            "Coldest night of a year that it lives through: below `high` winter begins to kill some of it, below `low` it does not last. "
            "Leave out for grass that no winter here kills."
        ),
    )
    tolerance: Tolerances
    operations: dict[TaskId, Operation] = Field(
        description="Level by task id, for every operation a renovation may use."
    )
    renovation: RenovationId = Field(description="The renovation plan this grass follows.")
    renovation_why: tuple[Statement, ...] = statements("Why and when this grass is renovated.")
    wait_for: tuple[Statement, ...] = statements("What to wait for before starting.")
    never: tuple[Statement, ...] = Field(min_length=1, description="What must never be done to it, each with its reason.")
    establishment: Establishment = Establishment()
    problems: tuple[Statement, ...] = statements("Problems it is known for.")
    weed_status: tuple[WeedStatus, ...] = Field(default=(), description="Where it is a declared or listed weed.")
    cautions: tuple[CautionId, ...] = Field(default=(), description="Caution ids that always go with this grass.")
