"""What all records share: strict reading, sourced figures, sourced statements."""

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field, StringConstraints, model_validator

Identifier = Annotated[str, StringConstraints(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", max_length=60)]
Sentence = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=1200)]
Word = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=120)]
Country = Literal["AU", "NZ", "ZA", "US", "GB"]

COMMON_PRACTICE = "common practice"
ASSUMPTION = "assumption"


class Record(BaseModel):
    """Unknown keys are errors, and a loaded record never changes."""

    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False)


class Sourced(Record):
    """Anything that must say where it comes from."""

    source: str | tuple[str, ...] = Field(
        description="A source id from sources.yml (or a list of them), 'common practice', or 'assumption'."
    )
    from_memory: bool = Field(
        default=False,
        description="True while the source is recalled and has not been read; pages mark it so.",
    )
    note: Sentence | None = Field(default=None, description="What the figure holds for, or a limit to it.")

    @property
    def sources(self) -> tuple[str, ...]:
        return (self.source,) if isinstance(self.source, str) else self.source


class Claim(Sourced):
    """One published number or range."""

    low: float | None = Field(default=None, description="Lower end, in `unit`.")
    high: float | None = Field(default=None, description="Upper end, in `unit`.")
    use: float | None = Field(default=None, description="The one number that calculators and rules take.")
    unit: str = Field(description="A unit of the trade, as in units: mm, g/m2, °C, weeks, 1.")

    @model_validator(mode="after")
    def _has_a_number(self) -> "Claim":
        if self.low is None and self.high is None and self.use is None:
            raise ValueError("a figure needs `use`, or `low` and `high`")
        if self.low is not None and self.high is not None and self.low > self.high:
            raise ValueError(f"low {self.low:g} is above high {self.high:g}; swap them")
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


class Figure(Claim):
    """A number of the trade, with the other published numbers that disagree with it."""

    because: Sentence | None = Field(
        default=None, description="Why this one is the default. Required when `others` are given."
    )
    others: tuple[Claim, ...] = Field(default=(), description="What other sources publish.")

    @model_validator(mode="after")
    def _explains_its_choice(self) -> "Figure":
        if self.others and not self.because:
            raise ValueError("sources disagree here; say in `because` why this one is the default")
        return self


class Statement(Sourced):
    """One sentence of advice or fact, in plain words for someone holding a rake."""

    text: Sentence


def statements(description: str) -> tuple[Statement, ...]:
    return Field(default=(), description=description)
