"""Hold rules in words: what a reader is told is what the rule compares, in the reader's own units."""

from datetime import date

import pytest

from generator.book.records.hold import Hold
from generator.site.page_context import PageContext
from generator.site.pages.sources.view import sources_page
from generator.site.shared.hold_words import rule_words
from tests.our_book import book

BOOK = book()


def words_of(when: str) -> list:
    """The words of a rule in a hold of our own making."""
    def number(value, unit):
        return {"value": value, "unit": unit, "meaning": "x", "source": "common practice"}

    hold = Hold.model_validate({
        "name": "x", "constants": {"cold": number(2, "°C"), "strong": number(6, "m/s"), "much": number(25, "mm"), "bare": number(4, "week")},
        "rules": [{"when": when, "answer": "hold", "reason": "x", "change": "x", "source": "common practice"}],
    })
    return rule_words(hold, hold.rules[0])


# Both units by their definitions: 1 in = 25.4 mm, 1 mile = 1.609344 km, °F = 32 + 9/5 °C (NIST SP 811).
@pytest.mark.parametrize(("when", "words"), [
    ("low <= cold", ["Lowest temperature at most ", ["2 °C", "35.6 °F"]]),
    ("wind > strong", ["Wind over ", ["21.6 km/h", "13.4 mph"]]),
    ("rain_to_come >= much", ["Rain to come at least ", ["25 mm", "0.984 in"]]),
    ("days_since_cut_down <= bare", ["Days since cut down at most ", ["4 weeks", ""]]),
    ("leaf_wet", ["Leaf: wet or frosted"]),
    ("leaf_wet and not leaf_frosted", ["Leaf: wet"]),
    ("not water_allowed", ["Watering allowed today: no"]),
    ("wind > label_wind", ["Wind over the label's highest wind"]),
    ("rain_to_come > 0 and rain_to_come < much", ["Rain to come over ", ["0 mm", "0 in"], " and under ", ["25 mm", "0.984 in"]]),
    ("soil_dry and wind > strong and not soil_wet", ["Soil: dry, and wind over ", ["21.6 km/h", "13.4 mph"]]),
    ("soil_wet or wind > strong", ["Soil: wet, or wind over ", ["21.6 km/h", "13.4 mph"]]),
    ("not (wind > strong)", ["Not (wind over ", ["21.6 km/h", "13.4 mph"], ")"]),
    ("low + cold > high", ["Low + cold > high"]),
])  # fmt: skip
def test_a_condition_in_words(when: str, words: list) -> None:
    assert words_of(when) == words


def test_no_rule_of_the_book_falls_back_on_its_formula() -> None:
    """Names of the language have underscores; words for people have none."""
    for id, hold in BOOK.holds.items():
        for rule in hold.rules:
            text = "".join(each if isinstance(each, str) else each[0] for each in rule_words(hold, rule))
            assert "_" not in text and ">" not in text and "<" not in text, (id, rule.when)


def test_the_sources_page_names_the_tasks_whose_holds_lean_on_a_source() -> None:
    rows = {row["id"]: row for row in sources_page(BOOK, PageContext(BOOK, "sources", date(2026, 1, 1))).context["rows"]}
    strong = BOOK.holds["strong-wind"]
    assert strong.constants["strong"].sources == ("waikato-drift-chart",)
    assert {BOOK.tasks[task].name for task in strong.tasks} <= {each["name"] for each in rows["waikato-drift-chart"]["used_by"]}
