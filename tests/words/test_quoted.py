"""What a text quotes is the record's own figure, source and all; what names nothing is told with the nearest name."""

from types import SimpleNamespace

import pytest

from generator.book.fields.sourced import Figure
from generator.calculators.filled_value import BindError
from generator.words.quoted_figures import Placeholder, pieces, quote
from tests.book_folders import WHOLE, load_book

BOOK = load_book(WHOLE).book


def shares(percent: float) -> SimpleNamespace:
    figure = Figure(use=percent, unit="%", source="common practice")
    return SimpleNamespace(tasks={"mow": SimpleNamespace(name="Mow", figures={"share": figure})})


def test_a_text_parts_into_plain_stretches_and_placeholders():
    assert list(pieces("Give {a.b} now.")) == ["Give ", Placeholder("a.b", 5), " now."]
    assert list(pieces("Plain.")) == ["Plain."]


def test_a_figure_keeps_its_range_its_unit_and_its_source():
    found = quote("task.sweep.sweeps", BOOK)  # 1 to 3, of which 2, from the almanac: data/tasks/sweep.yml of the book
    assert (found.claim.low, found.claim.high, found.claim.use, found.claim.source) == (1, 3, 2, "almanac")
    assert (found.kind, found.id, found.label) == ("tasks", "sweep", "Sweep: sweeps")


@pytest.mark.parametrize(("end", "value"), [("low", 1), ("high", 3), ("use", 2)])
def test_one_number_of_a_range_can_be_asked_for(end, value):
    assert quote(f"task.sweep.sweeps.{end}", BOOK).claim.default == value


@pytest.mark.parametrize(("percent", "words"), [(33, "a third"), (50, "half"), (80, "four fifths"), (66.7, "two thirds")])
def test_a_share_is_said_as_a_person_says_it(percent, words):
    assert quote("task.mow.share.words", shares(percent)).words == words


def test_a_share_without_a_name_is_told():
    with pytest.raises(BindError, match="not a share that has a name"):
        quote("task.mow.share.words", shares(37))


def test_a_word_of_the_practice_is_put_in_as_it_stands():
    assert quote("practice.name", BOOK).words == BOOK.practice.name


@pytest.mark.parametrize(
    ("expression", "says"),
    [
        ("tusk.sweep.sweeps", "did you mean 'task'"), ("task.sweep.sweep", "did you mean 'sweeps'"), ("task.swep.sweeps", "did you mean 'sweep'"),
        ("grass.plaingrass.name", "is not a figure"), ("plan.plain-renovation.nothing", "is not a step of the plan"), ("task", "names no figure"),
        ("practice.name.low", "leave out '.low'"), ("inspection.deep_litre", "did you mean 'deep_litter'"),
    ],
)  # fmt: skip
def test_what_names_nothing_is_told_with_what_would_be_right(expression, says):
    with pytest.raises(BindError) as caught:
        quote(expression, BOOK)
    assert says in str(caught.value)
