"""What an inspection's answers change: each effect, what nobody looked at, and the trade's facts in the shipped sheet.

The facts of the shipped sheet are common practice unless a source is named beside them.
"""

from typing import Any

import pytest

from generator.book.fields.sourced import RecordProblem
from generator.book.records.inspection import Inspection, Outcome
from generator.field.inspection_result import findings_of
from generator.field.inspection_words import estimate_pieces
from tests.our_book import book

BOOK = book()
SHIPPED = BOOK.inspection


def outcome(**fields: Any) -> dict[str, Any]:
    return {"say": "So.", "because": "It is so.", "source": "common practice", **fields}


def asked(id: str, *outcomes: dict[str, Any], **fields: Any) -> dict[str, Any]:
    return {"id": id, "ask": f"{id}?", "how": "Look.", "outcomes": outcomes, **fields}


def inspection(*questions: dict[str, Any]) -> Inspection:
    limit = {"value": 25, "unit": "mm", "meaning": "A limit.", "source": "assumption"}
    return Inspection.model_validate({"title": "T", "summary": "S", "constants": {"limit": limit}, "questions": questions})


DEEP = asked("depth", outcome(when="depth > limit", words="Over {limit}", effect="stop"), unit="mm", at_least=0, at_most=300)
ROOTS = asked(
    "roots",
    outcome(choice=["many"], effect="soften", tasks=["core", "scarify"]),
    outcome(choice=["few", "many"], effect="note"),
    choices={"none": "None", "few": "Few", "many": "Many"},
)


def keys(found: Any) -> list[str]:
    return [f"{each.question}:{each.position}" for each in found]


def test_nothing_answered_changes_nothing_and_is_listed():
    result = findings_of(inspection(DEEP, ROOTS), {})
    assert result.unanswered == ("depth", "roots")
    assert not (result.stops or result.softened or result.left_out or result.added or result.notes or result.troubles)


def test_a_blank_is_no_answer():
    assert findings_of(inspection(DEEP), {"depth": "  "}).unanswered == ("depth",)


# 1 inch is 25.4 mm, just over 25; 2,5 cm is the limit itself.
@pytest.mark.parametrize(("depth", "stops"), [("26 mm", True), ("1 in", True), ("2,5 cm", False), ("25", False), (0.026, True), ("0", False)])
def test_a_measure_in_any_unit_is_held_against_its_limit(depth, stops):
    result = findings_of(inspection(DEEP), {"depth": depth})
    assert keys(result.stops) == (["depth:0"] if stops else [])
    assert result.unanswered == ()


@pytest.mark.parametrize(("depth", "sentence"), [
    ("deep", "'deep' is not a quantity; write one such as 2.5."),
    ("301 mm", "This cannot be more than 300 mm; is that a slip?"),
    ("-1 mm", "This cannot be less than 0 mm; is that a slip?"),
])
def test_an_answer_that_cannot_be_is_told_and_counts_as_none(depth, sentence):
    result = findings_of(inspection(DEEP), {"depth": depth})
    assert [(each.question, each.sentence) for each in result.troubles] == [("depth", sentence)]
    assert result.unanswered == ("depth",) and result.stops == ()


def test_a_choice_that_is_not_there_is_told():
    result = findings_of(inspection(ROOTS), {"roots": "countless"})
    assert "not one of its choices" in result.troubles[0].sentence
    assert result.unanswered == ("roots",)


def test_a_choice_softens_each_of_its_tasks_and_says_why():
    result = findings_of(inspection(ROOTS), {"roots": "many"})
    assert {task: soft.levels for task, soft in result.softened.items()} == {"core": 1, "scarify": 1}
    assert keys(result.softened["core"].why) == ["roots:0"]
    assert keys(result.notes) == ["roots:1"]


def test_of_two_reasons_to_soften_the_greater_holds_and_both_are_told():
    shade = asked("shade", outcome(choice=["deep"], effect="soften", tasks=["core"], levels=2), choices={"deep": "Deep", "none": "None"})
    soft = findings_of(inspection(ROOTS, shade), {"roots": "many", "shade": "deep"}).softened["core"]
    assert soft.levels == 2
    assert keys(soft.why) == ["roots:0", "shade:0"]


def test_what_is_left_out_is_not_softened_as_well():
    gate = asked("gate", outcome(choice=["narrow"], effect="leave-out", tasks=["core"]), choices={"narrow": "Narrow", "wide": "Wide"})
    result = findings_of(inspection(ROOTS, gate), {"roots": "many", "gate": "narrow"})
    assert list(result.softened) == ["scarify"]
    assert {task: keys(why) for task, why in result.left_out.items()} == {"core": ["gate:0"]}


def test_a_step_is_added_with_its_day():
    add = {"task": "soil-test", "day": -49, "say": "Send it."}
    ph = asked("ph", outcome(when="ph < 5.5", words="Sour", effect="add", add=add), unit="1")
    added = findings_of(inspection(ph), {"ph": "5"}).added
    assert [(each.outcome.add.task, each.outcome.add.day) for each in added] == [("soil-test", -49)]


def test_a_formula_over_two_measures_waits_for_both():
    width = asked("width", outcome(when="width < depth * 2", words="Narrow", effect="note"), unit="mm")
    assert findings_of(inspection(DEEP, width), {"width": "10 mm"}).notes == ()
    assert keys(findings_of(inspection(DEEP, width), {"width": "10 mm", "depth": "6 mm"}).notes) == ["width:0"]


@pytest.mark.parametrize("fields", [
    {"effect": "stop"}, {"effect": "stop", "choice": ["a"], "when": "x > 1", "words": "x"}, {"effect": "stop", "when": "x > 1"},
    {"effect": "soften", "choice": ["a"]}, {"effect": "leave-out", "choice": ["a"]}, {"effect": "add", "choice": ["a"]},
    {"effect": "note", "choice": ["a"], "add": {"day": 0, "say": "x"}}, {"effect": "note", "choice": ["a"], "words": "x"},
])
def test_an_outcome_that_does_not_fit_together_is_refused(fields):
    with pytest.raises((RecordProblem, ValueError)):
        Outcome.model_validate(outcome(**fields))


# ---- the shipped sheet ----

def shipped(**answers: str) -> Any:
    return findings_of(SHIPPED, {id.replace("_", "-"): answer for id, answer in answers.items()})


def test_the_sheet_asks_what_the_trade_asks():
    """The list of things to find out before any plan is common practice."""
    assert {question.id for question in SHIPPED.questions} >= {
        "grass-confirmed", "living-cover", "thatch-depth", "soil-type", "soil-ph", "water-repellence", "sun-hours", "weeds", "tree-roots",
        "water-supply", "water-pressure", "access-width", "slope", "services", "sprinkler-heads", "pets", "pool", "neighbours",
    }


def test_thin_thatch_keeps_the_scarifier_at_home():
    """Half an inch, 12.7 mm, is the published trigger (Oklahoma State, Purdue AY-16), rounded there to 13 mm here."""
    assert list(shipped(thatch_depth="10 mm").left_out) == ["scarify"]
    assert shipped(thatch_depth="15 mm").left_out == {}


def test_thick_thatch_takes_two_seasons():
    """60 mm is more than the 25 mm that blades reach (University of California)."""
    thick = shipped(thatch_depth="60 mm")
    assert [each.outcome.add.day for each in thick.added] == [365] and "scarify" in thick.chosen


def test_a_lawn_with_little_grass_left_is_not_renovated():
    assert keys(shipped(living_cover="30 %").stops) == ["living-cover:0"]
    thin = shipped(living_cover="60 %")
    assert thin.stops == () and set(thin.softened) == {"scarify", "vertical-mow", "cut-down"}
    assert shipped(living_cover="95 %").softened == {}


@pytest.mark.parametrize("grass", ["another", "not-sure"])
def test_no_plan_for_a_grass_that_is_not_the_one_booked(grass):
    assert shipped(grass_confirmed=grass).stops


def test_no_water_no_job():
    assert shipped(water_supply="none").stops


@pytest.mark.parametrize(("answers", "left_out"), [
    ({"soil_ph": "7.4"}, {"lime"}), ({"services": "uncertain"}, {"core", "solid-tine"}), ({"slope": "40 %"}, {"scarify", "core"}),
    ({"recent_spray": "seed-stopper"}, {"overseed"}), ({"sun_hours": "3 h"}, {"cut-down", "scarify"}), ({"access_width": "650 mm"}, {"core"}),
    ({"soil_type": "fill"}, {"core", "solid-tine"}),
])
def test_what_an_answer_leaves_out(answers, left_out):
    assert set(shipped(**answers).left_out) == left_out


@pytest.mark.parametrize(("answers", "task"), [
    ({"water_repellence": "beads"}, "wetting-agent"), ({"soil_ph": "5"}, "soil-test"), ({"access_width": "650 mm"}, "solid-tine"),
    ({"weeds": "many"}, "scout"), ({"water_supply": "hose"}, "water"),
])
def test_what_an_answer_adds(answers, task):
    assert [each.outcome.add.task for each in shipped(**answers).added] == [task]


def test_services_and_neighbours_are_asked_before_the_day():
    for answers in ({"services": "not-asked"}, {"sprinkler_heads": "hidden"}, {"neighbours": "near"}):
        assert all(each.outcome.add.day < 0 for each in shipped(**answers).added), answers
        assert shipped(**answers).added, answers


def test_an_easy_lawn_changes_nothing():
    easy = shipped(
        grass_confirmed="as-planned", living_cover="95 %", thatch_depth="20 mm", soil_type="loam", soil_ph="6.5", water_repellence="soaks-in",
        sun_hours="9 h", weeds="few", recent_spray="nothing", tree_roots="none", water_supply="automatic", water_flow="25 L/min",
        water_pressure="350 kPa", access_width="1.5 m", slope="3 %", services="marked", sprinkler_heads="marked", pets="none", pool="none",
        neighbours="far", sprinkler_rate="15 mm/h", sprinkler_evenness="75 %",
    )
    assert not (easy.stops or easy.softened or easy.left_out or easy.added or easy.notes or easy.unanswered or easy.troubles)


def test_an_estimate_holds_the_practice_s_own_terms():
    pieces, missing = estimate_pieces(SHIPPED, BOOK.practice, "AU")
    text = {piece.id: words for piece, words in pieces}
    assert missing == []
    assert "AUD 95" in text["minimum"] and text["tax"] == "10 % GST is added."
    assert "30 days" in text["valid"] and "20 %" in text["deposit"] and "Australian" in text["rights"]
    assert not [words for words in text.values() if "{" in words]


def test_a_piece_without_its_value_is_left_out_and_named():
    bare = BOOK.practice.model_copy(update={"tax_name": None, "minimum_charge": None, "deposit_percent": None, "estimate_valid_days": None})
    pieces, missing = estimate_pieces(SHIPPED, bare, None)
    assert {piece.id for piece in missing} == {"tax", "minimum", "deposit", "valid"}
    assert {"opening", "price", "variations", "rights", "acceptance"} <= {piece.id for piece, _ in pieces}


def test_a_practice_whose_prices_hold_the_tax_says_so():
    included = BOOK.practice.model_copy(update={"prices_include_tax": True})
    assert "10 % GST is included." in [words for _, words in estimate_pieces(SHIPPED, included, "AU")[0]]
