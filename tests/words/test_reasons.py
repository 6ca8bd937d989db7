"""Reasons are data: each has its sentence, and says itself in the reader's units wherever it stands."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from generator.season.events import events
from generator.season.reasons import NumberSaid, Reason, Several, because, degrees, depth_a_week, difference
from generator.season.year import SeasonYear
from generator.words.reason_text import plain, said, said_exactly, sentence, template, text
from generator.words.rough_words import rough_share, rough_week
from generator.words.sentences import SENTENCES
from tests.our_book import seasons

ENGINE = Path(__file__).parents[2] / "generator"
# The name of a rule is looked up by the rule's own name, a job's by what it is.
BY_NAME = re.compile(r"rule-")
PLACE = re.compile(r"\{([a-z_]+)(?:\.[a-z]+)?\}")


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
                assert all(set(PLACE.findall(template(each.code, exactly))) <= set(each.values) for exactly in (False, True)), each
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


def test_people_are_told_no_week_by_its_number_and_no_hundredth_of_growth() -> None:
    """Nobody counts weeks over a rake. The numbers that decided are told to whoever asks, a week's beside its first day."""
    met = 0
    for year in years():
        for reason in all_reasons(year):
            assert not re.search(r"\bweek \d|growth potential|\b\d\d?%", told := text(reason, exactly=False)), told
            exact = plain(said_exactly(reason))
            assert not re.search(r"\bweek \d+\b(?! \(\d+ [A-Z])", exact), exact
            met += "growth potential" in exact
    assert met > 100


@pytest.mark.parametrize(("week", "words", "exact"), [
    (1, "early January", "week 1 (1 January)"), (45, "early November", "week 45 (5 November)"), (9, "early March", "week 9 (26 February)"),
    (20, "mid-May", "week 20 (14 May)"), (52, "late December", "week 52 (24 December)"),
])
def test_a_week_is_told_by_its_third_of_the_month(week: int, words: str, exact: str) -> None:
    """By the calendar of a year without a leap day: week 45 begins 44 weeks, 308 days, after 1 January, on 5 November; its middle is the 8th.

    Week 9 begins on 26 February, and its middle, three days later, is 1 March.
    """
    assert (rough_week(week, False), rough_week(week, True)) == (words, exact)


@pytest.mark.parametrize(("part", "words"), [
    (0.58, "about three fifths"), (0.48, "about half"), (0.33, "about a third"), (0.1, "about a tenth"), (0.02, "hardly any"), (0.97, "nearly all"), (1.2, "120%"),
])
def test_a_share_is_told_by_the_fraction_next_to_it(part: float, words: str) -> None:
    """58 of a hundred lie next to sixty, which are three fifths."""
    assert rough_share(part, False) == words and rough_share(part, True) == f"{part:.0%}"
