"""A problem: one file in data/problems. And who to send for: one file in data/experts."""

from collections.abc import Iterator
from typing import Literal

from pydantic import Field, model_validator

from generator.book.fields.sourced import (
    AftercareId,
    CalculatorId,
    CautionId,
    CountryId,
    ExpertId,
    Figure,
    OnlyGrassId,
    ProblemId,
    Record,
    RecordProblem,
    RenovationId,
    Sourced,
    Statement,
    TaskId,
    heard,
    statements,
)
from generator.book.fields.texts import Identifier, Sentence, Word

Where = Literal["anywhere", "full sun", "shade", "edges and paths", "low spots", "slopes and humps", "new lawn"]
Shape = Literal["all over", "stripes", "round patches", "rings", "irregular patches", "small spots", "single plants", "on the leaf", "the ground itself"]
Colour = Literal["yellow", "straw or brown", "white or pale", "grey or blue", "dark green", "orange or pink", "black", "bare", "still green"]
When = Literal[
    "after feeding", "after spraying", "after mowing or renovation", "first weeks of a new lawn", "heat or drought", "wet weather", "frost and winter",
    "spring", "any time",
]  # fmt: skip


class Signs(Record):
    """What the list of problems is sorted by: what anyone sees from the path."""

    where: tuple[Where, ...] = Field(min_length=1, description="Where on the lawn it shows.")
    shape: tuple[Shape, ...] = Field(min_length=1, description="What shape it has; the first one says where in the list it goes.")
    colour: tuple[Colour, ...] = Field(min_length=1, description="What colour it has.")
    when: tuple[When, ...] = Field(min_length=1, description="When it shows.")


class ProblemAnswer(Record):
    """One answer to a question, and where it leads."""

    answer: Word = Field(description="What was found, in a few words: Rolls back like a mat.")
    causes: tuple[Identifier, ...] = Field(default=(), description="Causes of this problem that it points to, by their ids below.")
    problem: ProblemId | None = Field(default=None, description="Another problem that it is, when it is not this one.")

    @model_validator(mode="after")
    def _leads_somewhere(self) -> "ProblemAnswer":
        if not self.causes and self.problem is None:
            raise RecordProblem("this answer leads nowhere", "give the 'causes' that it points to, or another 'problem'")
        return self


class Question(Record):
    """What to find out next, with what is in any shed."""

    ask: Sentence = Field(description="A question that looking, touching or digging can answer.")
    how: Sentence | None = Field(default=None, description="How to find out, with a knife, a screwdriver, a bucket or a jar.")
    answers: tuple[ProblemAnswer, ...] = Field(min_length=2)


class Cause(Record):
    """A likely cause: what tells it from the others, what to do, what not to do."""

    name: Word = Field(description="The cause in a few words: Rows spread too far apart.")
    tells: tuple[Statement, ...] = Field(min_length=1, description="What tells it from the other causes.")
    do: tuple[Statement, ...] = Field(min_length=1, description="What to do, in order. No rate of a pesticide and no name of a product: the label decides.")
    leave: tuple[Statement, ...] = statements("What not to do.")
    caused_by: tuple[TaskId, ...] = Field(default=(), description="Tasks that bring it on; their pages lead here.")
    cured_by: tuple[TaskId, ...] = Field(default=(), description="Tasks that cure or prevent it; their pages lead here.")
    cautions: tuple[CautionId, ...] = Field(default=(), description="Cautions to mind in what is done.")
    calculators: tuple[CalculatorId, ...] = Field(default=(), description="Calculators that help.")
    plans: tuple[RenovationId, ...] = Field(default=(), description="Plans that put it right.")
    problems: tuple[ProblemId, ...] = Field(default=(), description="Problems whose own page says more about this cause.")


class SendFor(Sourced):
    """When somebody with a licence or a qualification does it, not the reader."""

    expert: ExpertId = Field(description="Who: a file of data/experts, which says who that is in each country.")
    when: Sentence = Field(description="When to send for them.")


class Problem(Record):
    name: Word = Field(description="What is seen, in plain words, not what caused it: Stripes after feeding.")
    names: dict[CountryId, tuple[Word, ...]] = Field(default={}, description="Other words people use for it, by country. Search finds them.")
    misspellings: tuple[Word, ...] = heard()
    summary: Sentence = Field(description="The answer first: what it usually is, and the first thing to do.")
    signs: Signs
    figures: dict[Identifier, Figure] = Field(
        default={}, description="Numbers that the statements of this page put in, by a short name: {problem.dollar-spot.warmth}."
    )
    looks: tuple[Statement, ...] = Field(min_length=1, description="What you see, close to.")
    how_soon: Statement = Field(description="How soon it shows, and after what.")
    where: Statement = Field(description="Where on the lawn it shows, and why there.")
    grasses: tuple[OnlyGrassId, ...] = Field(default=(), description="Grasses it is best known on; any grass when left out.")
    questions: tuple[Question, ...] = Field(min_length=1, description="What to find out, the question that splits best first.")
    causes: dict[Identifier, Cause] = Field(min_length=2, description="Likely causes by a short id, the most usual first.")
    send_for: tuple[SendFor, ...] = Field(default=(), description="When to send for a licensed or qualified person.")
    aftercare: tuple[AftercareId, ...] = Field(default=(), description="Aftercare sheets that lead here when something looks wrong.")
    similar: tuple[ProblemId, ...] = Field(default=(), description="Problems that look like it.")

    def texts(self) -> Iterator[tuple[tuple[str | int, ...], str]]:
        """Every text that may quote a figure, with its path."""
        yield from (((*path, "text"), each.text) for path, each in self._statements())

    def _statements(self) -> Iterator[tuple[tuple[str | int, ...], Statement]]:
        yield from ((("looks", at), each) for at, each in enumerate(self.looks))
        yield ("how_soon",), self.how_soon
        yield ("where",), self.where
        for id, cause in self.causes.items():
            for field in ("tells", "do", "leave"):
                yield from ((("causes", id, field, at), each) for at, each in enumerate(getattr(cause, field)))

    @property
    def caused_by(self) -> frozenset[str]:
        """Tasks that bring any of its causes on."""
        return frozenset(task for cause in self.causes.values() for task in cause.caused_by)

    @property
    def cured_by(self) -> frozenset[str]:
        """Tasks that cure or prevent any of its causes."""
        return frozenset(task for cause in self.causes.values() for task in cause.cured_by)


class Expert(Sourced):
    """Somebody with a licence or a qualification, and who that is in each country."""

    name: Word = Field(description="Who, in general words: A licensed spray operator. No firm and no brand.")
    summary: Sentence = Field(description="What they do that the reader should not.")
    by_country: dict[CountryId, Sentence] = Field(default={}, description="Who that is by country, in general words.")
    for_cautions: tuple[CautionId, ...] = Field(
        default=(), description="Cautions that ask for them: a problem with a cause that names one of these has them under `send_for`."
    )
