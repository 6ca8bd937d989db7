"""What all records share: strict reading, sourced figures, sourced statements."""

from dataclasses import dataclass
from typing import Annotated, NamedTuple

from pydantic import BaseModel, ConfigDict, Field, GetJsonSchemaHandler, model_validator
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import core_schema

from generator.book.fields.numbers import FIGURE, WHY, InUnit, by_unit
from generator.book.fields.plausible import PLAUSIBLE, Plausible
from generator.book.fields.texts import Identifier, LongWord, Sentence, UnitName, Word
from generator.units import bounds_of, from_si, known_unit, to_si, unit

COMMON_PRACTICE = "common practice"
ASSUMPTION = "assumption"
# What the practice itself promises, charges or is used to do: no fact of the trade, so no source can stand behind it.
OURS = "ours"
UNPUBLISHED = (COMMON_PRACTICE, ASSUMPTION, OURS)


@dataclass(frozen=True)
class Reference:
    """Marks a text in a record as the id of something else; loading resolves it.

    kind: a folder of data/, 'sources', 'countries', 'terms' (of the glossary), or 'products' or 'machines' (of the practice).
    also: words that may stand there instead of an id. narrows: a list of such ids says what its record is for, and an empty one would say that
    it is for all; where a book has none of them, the record goes.
    """

    kind: str
    also: tuple[str, ...] = ()
    narrows: bool = False


@dataclass(frozen=True)
class Measured:
    """Marks a figure with a unit with what it means: a row of `plausible.py`, whose kind of quantity it must hold in any unit of that kind."""

    kind: str

    @property
    def row(self) -> Plausible:
        return PLAUSIBLE[self.kind]

    @property
    def unit(self) -> str:
        return self.row.unit

    @property
    def lowest(self) -> float:
        return self.row.lowest

    @property
    def highest(self) -> float:
        return self.row.highest

    def __get_pydantic_json_schema__(self, schema: core_schema.CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        return {**handler(schema), WHY: self.row.told}


GrassId = Annotated[Identifier, Reference("grasses")]
OnlyGrassId = Annotated[Identifier, Reference("grasses", narrows=True)]
TaskId = Annotated[Identifier, Reference("tasks")]
OnlyTaskId = Annotated[Identifier, Reference("tasks", narrows=True)]
CautionId = Annotated[Identifier, Reference("cautions")]
PlaceId = Annotated[Identifier, Reference("places")]
CalculatorId = Annotated[Identifier, Reference("calculators")]
RenovationId = Annotated[Identifier, Reference("renovations")]
OnlyRenovationId = Annotated[Identifier, Reference("renovations", narrows=True)]
AftercareId = Annotated[Identifier, Reference("aftercare")]
ProblemId = Annotated[Identifier, Reference("problems")]
ExpertId = Annotated[Identifier, Reference("experts")]
AnswerId = Annotated[Identifier, Reference("answers")]
TermId = Annotated[Identifier, Reference("terms")]
ProductId = Annotated[Identifier, Reference("products")]
MachineId = Annotated[Identifier, Reference("machines")]
CountryId = Annotated[LongWord, Reference("countries")]
PublishedId = Annotated[LongWord, Reference("sources")]
SourceId = Annotated[LongWord, Reference("sources", also=UNPUBLISHED)]


class RecordProblem(ValueError):
    """A record whose values contradict each other: what is wrong, what would be right, and under which key."""

    def __init__(self, what: str, instead: str, key: str | None = None) -> None:
        super().__init__(f"{what}; {instead}")
        self.what, self.instead, self.key = what, instead, key


class BeyondSense(RecordProblem):
    """A number that no quantity of its kind has."""


def sensible(spelling: str, signed: bool = False, **numbers: float | tuple[float, ...] | None) -> None:
    """BeyondSense at the first number that no quantity of its kind has; silent for a unit that is none, which is told elsewhere.

    numbers: by the key of the record they stand under.
    """
    given_in = known_unit(spelling)
    if given_in is None:
        return
    sized = bounds_of(given_in, signed)
    for key, given in numbers.items():
        for value in given if isinstance(given, tuple) else (given,):
            if value is not None and (fault := sized.fault(value)):
                raise BeyondSense(*fault, key)


class Record(BaseModel):
    """Unknown keys are errors, and a loaded record never changes."""

    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False)


class Sourced(Record):
    """Anything that must say where it comes from."""

    source: SourceId | Annotated[tuple[SourceId, ...], Field(min_length=1)] = Field(
        description=(
            "A source id from sources.yml (or a list of them), 'common practice', 'assumption' for what this book chose, "
            "or 'ours' for a promise or a custom of the practice."
        )
    )
    note: Sentence | None = Field(default=None, description="What the figure holds for, or a limit to it.")

    @property
    def sources(self) -> tuple[str, ...]:
        return (self.source,) if isinstance(self.source, str) else self.source


class Amounts(NamedTuple):
    """The numbers of a figure in a unit that was asked for: the least, the one to calculate with, the most."""

    lowest: float
    default: float
    highest: float


class Claim(Sourced):
    """One published number or range."""

    model_config = by_unit(FIGURE)

    low: InUnit | None = Field(default=None, description="Lower end, in `unit`.")
    high: InUnit | None = Field(default=None, description="Upper end, in `unit`.")
    use: InUnit | None = Field(default=None, description="The one number that calculators and rules take.")
    unit: UnitName = Field(description="A unit of the trade, as in units: mm, g/m2, °C, weeks, 1.")

    @model_validator(mode="after")
    def _has_a_number(self) -> "Claim":
        if self.low is None and self.high is None and self.use is None:
            raise RecordProblem("this figure has no number", "give 'use', or 'low' and 'high', or all three")
        sensible(self.unit, low=self.low, high=self.high, use=self.use)
        if self.low is not None and self.high is not None and self.low > self.high:
            raise RecordProblem(f"low {self.low:g} is above high {self.high:g}", "swap them", "low")
        if self.use is not None and not self.lowest <= self.use <= self.highest:
            raise RecordProblem(
                f"use {self.use:g} is outside the range {self.lowest:g} to {self.highest:g}",
                "use a number inside it, or give the other source's range under 'others'", "use",
            )
        return self

    @property
    def lowest(self) -> float:
        return next(v for v in (self.low, self.use, self.high) if v is not None)

    @property
    def highest(self) -> float:
        return next(v for v in (self.high, self.use, self.low) if v is not None)

    @property
    def default(self) -> float:
        """The number to calculate with: `use`, or the middle of the range."""
        return self.use if self.use is not None else (self.lowest + self.highest) / 2

    def measured_in(self, spelling: str) -> "Amounts":
        """Its numbers in another unit of its kind, whatever unit the author wrote. Raises ValueError for a unit of another kind."""
        given, wanted = unit(self.unit), unit(spelling)
        if given.dimension != wanted.dimension:
            raise ValueError(f"{self.unit} is {given.kind}, not {wanted.kind}")
        return Amounts(*(each if given == wanted else from_si(to_si(each, given), wanted) for each in (self.lowest, self.default, self.highest)))


class Figure(Claim):
    """A number of the trade, with the other published numbers that disagree with it."""

    because: Sentence | None = Field(
        default=None, description="Why this one is the default. Required when `others` are given."
    )
    others: tuple[Claim, ...] = Field(default=(), description="What other sources publish.")

    @model_validator(mode="after")
    def _explains_its_choice(self) -> "Figure":
        if self.others and not self.because:
            raise RecordProblem("sources disagree here", "say in 'because' why this one is the default")
        return self


class Statement(Sourced):
    """One sentence of advice or fact, in plain words for someone holding a rake."""

    text: Sentence


def heard(description: str = "Words and spellings people search for it by. Search hears them; nothing shows them.") -> tuple[Word, ...]:
    """Words that only help search: slips, turns of phrase, old names. They are in no page and in no public file of the data."""
    return Field(default=(), exclude=True, description=description)


def statements(description: str) -> tuple[Statement, ...]:
    return Field(default=(), description=description)
