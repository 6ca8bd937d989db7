"""How one grass is told from the others, in the words that the key of grasses asks about."""

from typing import Annotated, Any, Literal, get_args

from pydantic import Field, model_validator

from generator.book.fields.sourced import CountryId, Figure, GrassId, Measured, Record, RecordProblem, Sourced, Statement
from generator.book.fields.texts import Sentence, Word

Ligule = Literal["skin", "hairs", "skin with hairs", "none"]
Bud = Literal["folded", "rolled"]
Auricles = Literal["none", "short", "clasping"]
Tip = Literal["boat", "blunt", "pointed"]
Leaf = Literal["needle", "fine", "medium", "broad"]
Runners = Literal["none", "wiry", "fleshy", "flat", "scaly"]
Seedhead = Literal["hidden", "fingers", "few fingers", "pair", "spike", "thick spike", "branched"]
Pollen = Literal["shed", "none"]

# What the key may ask about besides where a grass runs and its season: feature -> the words for it.
FEATURES: dict[str, tuple[str, ...]] = {
    "ligule": get_args(Ligule), "bud": get_args(Bud), "auricles": get_args(Auricles), "tip": get_args(Tip), "leaf": get_args(Leaf),
    "runners": get_args(Runners), "seedhead": get_args(Seedhead), "pollen": get_args(Pollen),
}  # fmt: skip


def _one_or_more(description: str) -> Any:
    return Field(min_length=1, description=f"{description} More than one where plants or sources differ: the key does not ask there.")


class Identification(Sourced):
    """What an eye with a lens sees on one plant. Where this grass stands in the key follows from it."""

    ligule: tuple[Ligule, ...] = _one_or_more("What is inside the joint of blade and sheath.")
    bud: tuple[Bud, ...] = _one_or_more("How the youngest leaf is folded in the shoot.")
    auricles: tuple[Auricles, ...] = _one_or_more("Ears at the foot of the blade.")
    tip: tuple[Tip, ...] = _one_or_more("Shape of an uncut leaf's end.")
    leaf: tuple[Leaf, ...] = _one_or_more("needle; fine, to 2 mm; medium, to 5 mm; broad, more.")
    runners: tuple[Runners, ...] = _one_or_more("What its runners are like; none for a grass that has none.")
    seedhead: tuple[Seedhead, ...] = _one_or_more("Shape of the seed head.")
    pollen: tuple[Pollen, ...] = Field(default=("shed",), min_length=1, description="none for a sterile hybrid.")
    leaf_width: Annotated[Figure, Measured("width of a leaf")] = Field(description="Width of a full-grown leaf, mm.")
    sets_apart: Statement = Field(description="What settles it, in a sentence: shown where the key ends.")


class LookAlike(Statement):
    """A plant it is taken for. A pair of grasses of this book is written once, under either of the two."""

    grass: Annotated[GrassId | None, Field(description="Id of the other grass, where this book has it.")] = None
    name: Annotated[Word | None, Field(description="Its name, where this book does not have it.")] = None

    @model_validator(mode="after")
    def _names_one(self) -> "LookAlike":
        if (self.grass is None) == (self.name is None):
            raise RecordProblem("this look-alike needs one of 'grass' and 'name'", "give 'grass' for a grass of this book, else 'name'")
        return self


class Feature(Record):
    """One thing to look at, in the key's words."""

    name: Word = Field(description="What it is called: Ligule.")
    look: Sentence = Field(description="How to look at it.")
    words: dict[Word, Word] = Field(description="Each value that grasses may have, as a page says it.")


class HabitWords(Statement):
    """What a way of running means for renovation, in a sentence."""

    name: Word = Field(description="The way it runs, as a heading.")


class KeyQuestion(Record):
    ask: Sentence = Field(description="A question that is answered yes or no.")
    feature: Literal["habit", "season_group", "ligule", "bud", "auricles", "tip", "leaf", "runners", "seedhead", "pollen"] = Field(
        description="The feature it asks about."
    )
    yes: tuple[Word, ...] = Field(min_length=1, description="The values of the feature that mean yes; every other one means no.")
    hint: Sentence | None = Field(default=None, description="What helps to answer it.")


class Stranger(Statement):
    name: Word = Field(description="A plant that is no grass of this book.")


class Key(Record):
    """One file, data/key.yml; a book without one has no key of grasses."""

    title: Word
    summary: Sentence = Field(description="The answer first: how to use the key.")
    habits: dict[Literal["above ground", "above and below ground", "below ground", "bunch"], HabitWords] = Field(
        description="What each way of running means for renovation."
    )
    features: dict[Literal["ligule", "bud", "auricles", "tip", "leaf", "runners", "seedhead", "pollen"], Feature]
    questions: tuple[KeyQuestion, ...] = Field(
        min_length=1,
        description="In the order they are put: of those that part the grasses still in play, and that each of them answers, the first is asked.",
    )
    weed_authorities: dict[CountryId, Sentence] = Field(
        default={}, description="Who to ask, by country, before a grass is planted or carted: it may be a weed there."
    )
    none_of_ours: Sentence = Field(description="What to do when no grass of this book fits.")
    strangers: tuple[Stranger, ...] = Field(default=(), description="Plants often met that are none of this book's grasses.")
