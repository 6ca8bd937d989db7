"""Each caution against each text: who reads of a danger is shown its caution there, or somebody has read the text and said why not."""

import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml

from tests.safety.named_texts import NamedText, named_texts

HERE = Path(__file__).parent


def _file(name: str) -> Any:
    return yaml.load((HERE / name).read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)


DANGERS, READ, ONE_TRUTH = _file("dangers.yml"), _file("read.yml"), _file("one_truth.yml")
CAUTIONS = sorted(path.stem for path in (HERE.parents[1] / "data" / "cautions").glob("*.yml"))


@cache
def danger(caution: str) -> re.Pattern[str]:
    return re.compile("|".join(f"(?:{words})" for words in DANGERS[caution]), re.IGNORECASE)


def bare(caution: str, texts: tuple[NamedText, ...]) -> dict[str, int]:
    """How many texts touch the danger, by the name of what does not show the caution."""
    touching = {text.name: sum(1 for each in text.told if danger(caution).search(each)) for text in texts if caution not in text.cautions}
    return {name: number for name, number in touching.items() if number}


def read(caution: str) -> Iterator[tuple[str, int | str]]:
    for group in READ.get(caution, ()):
        yield from group["read"].items()


def test_every_caution_is_in_the_table():
    assert sorted(DANGERS) == CAUTIONS and set(READ) <= set(CAUTIONS)


@pytest.mark.parametrize("caution", CAUTIONS)
def test_a_text_that_touches_a_danger_shows_its_caution_or_was_read(caution):
    """Add the caution to the record; or read the text against it, and say in read.yml why it is right as it is."""
    found, allowed = bare(caution, named_texts()), dict(read(caution))
    assert {name: number for name, number in found.items() if allowed.get(name) not in (number, "any")} == {}


@pytest.mark.parametrize("caution", CAUTIONS)
def test_what_was_read_still_has_to_be(caution):
    """Take out of read.yml what no longer touches the danger, or bears the caution now."""
    listed = [name for name, _ in read(caution)]
    assert sorted(set(listed)) == sorted(listed)
    assert sorted(set(listed) - bare(caution, named_texts()).keys()) == []
    assert all(len(group["why"].split()) >= 3 for group in READ.get(caution, ()))


@pytest.mark.parametrize(("told", "wanted"), [
    ("Hire a corer and run it over the lawn twice.", {"buried-services", "moving-blades", "hired-machines"}),
    ("Brush sand into the holes.", {"silica-dust"}),
    ("Spread the granules by hand.", {"feed-burn"}),
    ("Rub in some potting mix.", {"legionella"}),
    ("Sharpen the blade.", {"moving-blades"}),
    ("Fill the tank with petrol.", {"fuel"}),
    ("Follow the label.", {"chemical-label"}),
    ("Mow the steep bank on the ride-on.", {"slope-rollover"}),
    ("Pick broken cement sheet out of the bed.", {"asbestos"}),
    ("Take the line trimmer to it.", {"thrown-objects", "eye-injury"}),
    ("Water it twice a day.", {"water-restrictions"}),
    ("Mow it at its usual height.", set()),
])  # fmt: skip
def test_a_new_text_that_touches_a_danger_without_its_caution_would_fail(told, wanted):
    new = (NamedText("answer new", (told,), frozenset()),)
    assert {caution for caution in CAUTIONS if bare(caution, new)} == wanted
    known = (NamedText("answer new", (told,), frozenset(wanted)),)
    assert not [caution for caution in CAUTIONS if bare(caution, known)]


@pytest.mark.parametrize("entry", ONE_TRUTH, ids=lambda entry: entry["truth"])
def test_what_was_mended_is_not_said_again(entry):
    assert entry["caution"] in CAUTIONS
    told = [(text.name, each) for text in named_texts() for each in text.told]
    told += [(f"caution {path.stem}", path.read_text(encoding="utf-8")) for path in (HERE.parents[1] / "data" / "cautions").glob("*.yml")]
    assert [name for words in entry["never"] for name, each in told if re.search(words, each, re.IGNORECASE)] == []
