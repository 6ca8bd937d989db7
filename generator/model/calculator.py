"""A calculator: one file in data/calculators. Form, working, script, command line and checks follow from it."""

from typing import Literal

from pydantic import Field, model_validator

from generator.model.record import CautionId, Identifier, Record, RecordProblem, Sentence, Sourced, TaskId, Word

FormulaText = str


class Input(Record):
    question: Sentence = Field(description="What the form asks, plainly.")
    unit: str = Field(description="Metric unit; 1 for a plain number.")
    us_unit: str | None = Field(default=None, description="US unit, when it differs.")
    default: float | tuple[float, ...] = Field(description="What the form starts with, in `unit`.")
    us_default: float | tuple[float, ...] | None = Field(
        default=None, description="A round figure for US readers, in `us_unit`; converted from `default` otherwise."
    )
    many: bool = Field(default=False, description="True for a list of readings.")
    whole: bool = Field(default=False, description="True when only whole numbers make sense.")
    above: float | None = Field(default=None, description="Must be greater than this, in `unit`.")
    at_least: float | None = Field(default=None, description="Smallest possible value, in `unit`.")
    at_most: float | None = Field(default=None, description="Largest possible value, in `unit`.")
    usual_low: float | None = Field(default=None, description="Below this the form asks gently, in `unit`.")
    usual_high: float | None = Field(default=None, description="Above this the form asks gently, in `unit`.")
    help: Sentence | None = Field(default=None, description="Where to find it: on the bag, on the label.")
    optional: bool = Field(default=False, description="May be left at its default without a word.")
    label_only: bool = Field(default=False, description="Only the product's label can give it; the book offers none.")
    binds: str | None = Field(
        default=None, description="What fills it in on a guide, as kind.field: grass.seed_rate, practice.feed.nitrogen_percent."
    )


class Constant(Sourced):
    value: float
    unit: str
    meaning: Sentence


class Result(Record):
    label: Sentence = Field(description="What it is, plainly.")
    unit: str
    us_unit: str | None = None
    formula: FormulaText | None = Field(default=None, description="One line of plain arithmetic over inputs, constants and earlier results.")
    equation: Identifier | None = Field(default=None, description="Or the id of an equation of the season engine.")
    given: dict[str, str] = Field(
        default={}, description="For an equation: the value here that stands for one of its inputs, where their names differ."
    )
    main: bool = Field(default=False, description="The answer people came for; shown large.")
    working: bool = Field(default=False, description="A step on the way, shown with the working only.")
    decimals: int | None = Field(default=None, ge=0, le=6, description="How finely it can be measured out.")
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

    unit: str = Field(description="Metric unit of mass, or of mass per area.")
    us_unit: str | None = None


class Warning(Sourced):
    """A sentence shown when a condition over inputs and results holds."""

    when: FormulaText
    say: Sentence
    weight: Literal["note", "care", "danger"] = "care"


class Expected(Record):
    value: float
    unit: str
    within: float = Field(gt=0, description="Half the last printed digit, in `unit`.")


class Example(Sourced):
    """A published worked example: it runs at every build, and the page shows it."""

    title: Sentence
    where: Sentence | None = Field(default=None, description="Page, table or example number.")
    basis: Literal["printed", "recomputed", "arithmetic"] = Field(
        description="printed: the source prints this answer. recomputed: its own inputs give this, it prints another. "
        "arithmetic: ours, a slip check, never called published."
    )
    inputs: dict[str, str] = Field(description="By input name, as a reader would type them: '6000 ft2'.")
    results: dict[str, Expected]


Topic = Literal[
    "area", "feed and soil", "sand and levels", "cutting and opening", "spreading and spraying", "water", "seed and turf",
    "growth and weather", "time and cost",
]


class Calculator(Record):
    name: Word
    topic: Topic = Field(description="The shelf it stands on in the list of calculators.")
    misspellings: tuple[Word, ...] = Field(default=(), description="Words people search for it by.")
    summary: Sentence = Field(description="What it answers, in a sentence.")
    inputs: dict[str, Input] = Field(min_length=1)
    constants: dict[str, Constant] = {}
    figures: dict[str, str] = Field(
        default={}, description="Figures of tasks that formulas use: a name to task.figure, as feed.shade-share."
    )
    results: dict[str, Result] = Field(min_length=1)
    weighed: dict[str, Weighed] = Field(
        default={},
        description="By input or result name: the units in which the same formulas hold for a product that is weighed.",
    )
    warnings: tuple[Warning, ...] = ()
    method: Sentence = Field(description="How it is worked out, in plain words, with its limits.")
    cautions: tuple[CautionId, ...] = ()
    tasks: tuple[TaskId, ...] = Field(default=(), description="Tasks it belongs to.")
    examples: tuple[Example, ...] = Field(min_length=1)
