"""A calculator: one file in data/calculators. Form, working, script, command line and checks follow from it."""

from typing import Annotated, Literal

from pydantic import Field, model_validator

from generator.book.fields.numbers import FIGURE, SIGNED, InUnit, OfKind, by_unit
from generator.book.fields.sourced import CautionId, Record, RecordProblem, Sourced, TaskId, heard, sensible
from generator.book.fields.texts import FormulaText, Identifier, LongWord, Name, Sentence, Title, Typed, UnitName, Word
from generator.units import from_si, known_unit, to_si

Readings = Annotated[tuple[InUnit, ...], Field(max_length=400)]


class Input(Record):
    model_config = by_unit(SIGNED)

    question: Title = Field(description="What the form asks, plainly.")
    short: Word | None = Field(default=None, description="The same in a word or two, for a sheet with little room.")
    unit: UnitName = Field(description="Metric unit; 1 for a plain number.")
    us_unit: UnitName | None = Field(default=None, description="US unit, when it differs.")
    default: InUnit | Readings = Field(description="What the form starts with, in `unit`.")
    us_default: InUnit | Readings | None = Field(
        default=None, description="A round figure for US readers, in `us_unit`; converted from `default` otherwise."
    )
    many: bool = Field(default=False, description="True for a list of readings.")
    whole: bool = Field(default=False, description="True when only whole numbers make sense.")
    above: InUnit | None = Field(default=None, description="Must be greater than this, in `unit`.")
    at_least: InUnit | None = Field(default=None, description="Smallest possible value, in `unit`.")
    at_most: InUnit | None = Field(default=None, description="Largest possible value, in `unit`.")
    usual_low: InUnit | None = Field(default=None, description="Below this the form asks gently, in `unit`.")
    usual_high: InUnit | None = Field(default=None, description="Above this the form asks gently, in `unit`.")
    help: Sentence | None = Field(default=None, description="Where to find it: on the bag, on the label.")
    optional: bool = Field(default=False, description="May be left at its default without a word.")
    label_only: bool = Field(default=False, description="Only what is printed can give it, on a label or a report: the form starts empty.")
    printed_on: Literal["label", "report"] = Field(
        default="label", description="Where a `label_only` figure is printed: on a product's label, or on the report of a laboratory."
    )
    binds: Typed | None = Field(
        default=None, description="What fills it in on a guide, as kind.field: grass.seed_rate, practice.feed.nitrogen_percent."
    )

    @model_validator(mode="after")
    def _is_sensible(self) -> "Input":
        limits = {name: getattr(self, name) for name in ("above", "at_least", "at_most", "usual_low", "usual_high")}
        sensible(self.unit, signed=True, default=self.default, **limits)
        if self.us_default is not None:
            sensible(self.us_unit or self.unit, signed=True, us_default=self.us_default)
        self._lies_within_its_limits()
        return self

    def _lies_within_its_limits(self) -> None:
        """A form must not start with what it would refuse."""
        lowest = max((limit for limit in (self.above, self.at_least) if limit is not None), default=None)
        if lowest is not None and self.at_most is not None and lowest > self.at_most:
            raise RecordProblem(f"at_most {self.at_most:g} is below the least that is let in, {lowest:g}", "swap them", "at_most")
        if self.usual_low is not None and self.usual_high is not None and self.usual_low > self.usual_high:
            raise RecordProblem(f"usual_low {self.usual_low:g} is above usual_high {self.usual_high:g}", "swap them", "usual_low")
        for name, usual in (("usual_low", self.usual_low), ("usual_high", self.usual_high)):
            if usual is not None and ((lowest is not None and usual < lowest) or (self.at_most is not None and usual > self.at_most)):
                raise RecordProblem(f"{name} {usual:g} is not even let in", "give one between the limits, or leave it out", name)
        for key in ("default", "us_default"):
            given = getattr(self, key)
            for value in given if isinstance(given, tuple) else () if given is None else (given,):
                if value or not (self.optional or self.label_only):  # Nothing is asked of what may be left at nothing.
                    self._is_let_in(value, key)

    def _is_let_in(self, value: float, key: str) -> None:
        within, mine, here = value, known_unit(self.unit), known_unit(self.us_unit or self.unit)
        if key == "us_default" and mine and here and mine.dimension == here.dimension:
            # A round figure of other units may miss a limit by its last digit.
            within = float(f"{from_si(to_si(value, here), mine):.9g}")
        if self.above is not None and within <= self.above:
            raise RecordProblem(f"the form starts with {value:g}, which is not above {self.above:g}", "give a default that its limits let in", key)
        if (self.at_least is not None and within < self.at_least) or (self.at_most is not None and within > self.at_most):
            raise RecordProblem(f"the form starts with {value:g}, which its limits do not let in", "give a default between them", key)


class Constant(Sourced):
    model_config = by_unit(FIGURE)

    value: InUnit
    unit: UnitName
    meaning: Sentence

    @model_validator(mode="after")
    def _is_sensible(self) -> "Constant":
        sensible(self.unit, value=self.value)
        return self


class Result(Record):
    label: Title = Field(description="What it is, plainly.")
    short: Word | None = Field(default=None, description="The same in a word or two, for a sheet with little room.")
    unit: UnitName
    us_unit: UnitName | None = None
    formula: FormulaText | None = Field(default=None, description="One line of plain arithmetic over inputs, constants and earlier results.")
    equation: Identifier | None = Field(default=None, description="Or the id of an equation of the season engine.")
    given: dict[LongWord, LongWord] = Field(
        default={}, description="For an equation: the value here that stands for one of its inputs, where their names differ."
    )
    main: bool = Field(default=False, description="The answer people came for; shown large.")
    working: bool = Field(default=False, description="A step on the way, shown with the working only.")
    decimals: Annotated[int, OfKind("decimals")] | None = Field(default=None, description="How finely it can be measured out.")
    note: Sentence | None = None

    @model_validator(mode="after")
    def _has_one_rule(self) -> "Result":
        if (self.formula is None) == (self.equation is None):
            raise RecordProblem("a result is worked out in one way", "give either 'formula' or 'equation'")
        if self.given and self.equation is None:
            raise RecordProblem("'given' belongs to an equation", "use the names themselves in a formula")
        return self


class Weighed(Record):
    """The units of an input or result when the product is weighed instead of measured."""

    unit: UnitName = Field(description="Metric unit of mass, or of mass per area.")
    us_unit: UnitName | None = None


class Warning(Sourced):
    """A sentence shown when a condition over inputs and results holds."""

    when: FormulaText
    say: Sentence
    weight: Literal["note", "care", "danger"] = "care"


class Expected(Record):
    model_config = by_unit(SIGNED)

    value: InUnit
    unit: UnitName
    within: InUnit = Field(gt=0, description="Half the last printed digit, in `unit`.")

    @model_validator(mode="after")
    def _is_sensible(self) -> "Expected":
        sensible(self.unit, signed=True, value=self.value, within=self.within)
        return self


class Example(Sourced):
    """A published worked example: it runs at every build, and the page shows it."""

    title: Title
    where: Sentence | None = Field(default=None, description="Page, table or example number.")
    basis: Literal["printed", "recomputed", "arithmetic"] = Field(
        description="printed: the source prints this answer. recomputed: its own inputs give this, it prints another. "
        "arithmetic: ours, a slip check, never called published."
    )
    inputs: dict[LongWord, Typed] = Field(description="By input name, as a reader would type them: '6000 ft2'.")
    results: dict[LongWord, Expected]


class PublishedValues(Sourced):
    """Figures that a public body prints, to fill in by their name; a reader may type other ones."""

    name: Word = Field(description="What they are and whose, as the form offers them.")
    fills: dict[Name, Typed] = Field(min_length=1, description="Input to its value as typed: '36 ppm'.")


class Calculator(Record):
    name: Word
    topic: Word = Field(description="The shelf it is on in the list of calculators: one of `calculators` in topics.yml.")
    misspellings: tuple[Word, ...] = heard()
    summary: Sentence = Field(description="What it answers, in a sentence.")
    inputs: dict[Name, Input] = Field(min_length=1, max_length=60)
    published: tuple[PublishedValues, ...] = Field(default=(), max_length=30, description="Figures of public bodies that the form offers by name.")
    constants: dict[Name, Constant] = Field(default={}, max_length=60)
    figures: dict[Name, LongWord] = Field(
        default={}, max_length=60, description="Figures of tasks that formulas use: a name to task.figure, as feed.shade-share."
    )
    results: dict[Name, Result] = Field(min_length=1, max_length=60)
    weighed: dict[LongWord, Weighed] = Field(
        default={}, max_length=60,
        description="By input or result name: the units in which the same formulas hold for a product that is weighed.",
    )
    warnings: tuple[Warning, ...] = Field(default=(), max_length=60)
    method: Sentence = Field(description="How it is worked out, in plain words, with its limits.")
    cautions: tuple[CautionId, ...] = ()
    tasks: tuple[TaskId, ...] = Field(default=(), description="Tasks it belongs to.")
    examples: tuple[Example, ...] = Field(min_length=1, max_length=100)
