"""Reasons are data: each has its sentence, and says itself in the reader's units wherever it stands."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from generator.season.events import events
from generator.season.reasons import NumberSaid, Reason, Several, because, degrees, depth_a_week, difference
from generator.season.year import SeasonYear
from generator.words.reason_text import plain, said, sentence, text
from generator.words.sentences import SENTENCES
from tests.our_book import seasons

ENGINE = Path(__file__).parents[2] / "generator"
# The name of a rule is looked up by the rule's own name, a job's by what it is.
BY_NAME = re.compile(r"rule-")
PLACE = re.compile(r"\{([a-z_]+)\}")


def codes_in_the_engine() -> set[str]:
    """Every word in quotes that the engine hands to a reason, or joins reasons with."""
    files = [file for room in ("season", "calculators", "jobs") for file in (ENGINE / room).rglob("*.py")]
    return {word for file in files for word in re.findall(r'"([a-z]+(?:-[a-z]+)*)"', file.read_text(encoding="utf-8"))}


def parts(reason: Reason | Several) -> Iterator[Reason]:
    if isinstance(reason, Several):
        for each in reason.reasons:
            yield from parts(each)
        return
    yield reason
    for value in reason.values.values():
        if isinstance(value, Reason | Several):
            yield from parts(value)


def all_reasons(year: SeasonYear) -> Iterator[Reason | Several]:
    for found in year.windows.values():
        yield from (window.why for window in found.windows)
        yield from (found.why_none,) if found.why_none else ()
    yield from (event.why for event in events(year).values())


def years() -> Iterator[SeasonYear]:
    cache = seasons()
    yield from (cache.season(grass, place) for grass in cache.book.grasses for place in cache.book.offered_places)


def test_every_sentence_is_said_by_something() -> None:
    assert {code for code in SENTENCES if not BY_NAME.match(code)} <= codes_in_the_engine()


def test_every_reason_has_its_sentence_and_the_sentence_its_numbers() -> None:
    met = set()
    for year in years():
        for reason in all_reasons(year):
            for each in parts(reason):
                assert set(PLACE.findall(SENTENCES[each.code])) <= set(each.values), each
                met.add(each.code)
    assert len(met) > 50


@pytest.mark.parametrize("us", [False, True], ids=["metric", "US"])
def test_a_reason_is_told_in_one_system_of_units(us: bool) -> None:
    """A reader in the United States meets no degree Celsius and no millimetre in any reason of any year, and the others no Fahrenheit."""
    other = re.compile(r"\d (°C|mm|cm|kg|g/m²)\b" if us else r"\d (°F|in|lb)\b")
    told = [line for year in years() for reason in all_reasons(year) if other.search(line := text(reason, us))]
    assert told == []


def test_quantities_of_reasons_in_both_systems() -> None:
    """20 °C is 68 °F and 5 K are 9 °F by definition (BIPM, The International System of Units, 2019; NIST SP 811, B.8); 25.4 mm are an inch."""
    assert said(because("never-greens-up", mark=degrees(20, 1))) == ["the soil never warms to ", ["20 °C", "68 °F"]]
    assert said(because("deep-winter-past", rise=difference(5)))[1] == ["5 °C", "9 °F"]
    assert said(because("wet-past", rain=depth_a_week(25.4), evaporates=depth_a_week(50.8)))[1::2] == [["25 mm", "1 in"], ["51 mm", "2 in"]]
    assert text(because("thermometer", depth=NumberSaid(100, "mm", "g")), us=True).endswith("a thermometer at 4 in decides.")


def test_a_sentence_begins_and_ends_as_one() -> None:
    assert sentence("growth is slow") == "Growth is slow."
    assert sentence(["past ", ["5 °C", "41 °F"]]) == ["Past ", ["5 °C", "41 °F"], "."]
    assert plain(["Past ", ["5 °C", "41 °F"], "."], us=True) == "Past 41 °F."
