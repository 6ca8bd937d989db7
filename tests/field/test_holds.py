"""Hold or go on the shipped book, as whoever stands at the lawn would read it. The published advice stands beside each case."""

import pytest

from generator.field.forecast import ANSWERED_BY, QUESTIONS, read_forecast
from generator.field.holds import answer_for, asks_of, condition_of, holds_of
from tests.our_book import book

BOOK = book()
# A mild, dry day on couch: nothing in it is a reason to wait. Of the label it says that it sets no limits.
FINE = {
    "low": "12 °C", "high": "24 °C", "rain_to_come": "0 mm", "hours_to_rain": "none", "rain_fallen": "0 mm", "wind": "10 km/h",
    "leaf": "dry", "soil": "moist", "sand": "dry", "watering_day": "yes", "depth_due": "5 mm", "days_since_cut_down": "none",
    "cool_season": "no", "surface_running": "no", "label_wind": "none", "label_low": "none", "label_high": "none",
    "label_rain_free_hours": "none",
}  # fmt: skip
WORK = sorted({task for hold in BOOK.holds.values() for task in hold.tasks})


def ask(task, day):
    forecast, troubles = read_forecast(day)
    assert not troubles
    return answer_for(holds_of(task, BOOK.holds), forecast)


def on(task, **changed):
    return ask(task, {**FINE, **changed})


def why(found):
    return {reason.hold for reason in found.reasons}


@pytest.mark.parametrize("task", WORK)
def test_a_mild_dry_day_holds_nothing(task):
    found = on(task)
    assert (found.answer, found.reasons, found.not_known) == ("go", (), ())


@pytest.mark.parametrize("task", WORK)
def test_a_day_of_which_nothing_is_known_is_never_a_go(task):
    found = ask(task, {})
    assert found.answer == "ask" and found.not_known
    assert {each.question for each in found.not_known} <= set(asks_of(holds_of(task, BOOK.holds)))


HOLDS = [
    # A Western Australian trade body (tgawa-tips): spread on dry lawn, feed on wet leaf can burn.
    ("feed", {"leaf": "wet"}, "dewy-leaf"),
    ("lime", {"leaf": "wet"}, "dewy-leaf"),
    # Southwest Florida Water Management District (swfwmd): not ahead of heavy rain. Ohio (ANR-0156): over an inch, 25.4 mm.
    ("feed", {"rain_to_come": "1.1 in"}, "heavy-rain-on-feed"),
    ("pre-emergent", {"rain_to_come": "60 mm"}, "heavy-rain-on-feed"),
    # Michigan (msu-fert) and Ohio: neither on frozen nor on saturated ground.
    ("feed", {"soil": "wet"}, "ground-for-feeding"),
    ("feed", {"soil": "frozen"}, "ground-for-feeding"),
    # Common practice: what was spread has to be watered in within a day.
    ("feed", {"watering_day": "no"}, "watering-in"),
    ("wetting-agent", {"watering_day": "no"}, "watering-in"),
    ("pre-emergent", {"watering_day": "no"}, "watering-in-pre-emergent"),
    # Purdue (purdue-aer16): soil neither too wet nor too dry for coring. The rest is common practice.
    ("core", {"soil": "wet"}, "sodden-ground"),
    ("core", {"soil": "dry"}, "dry-ground"),
    ("solid-tine", {"soil": "wet"}, "sodden-ground"),
    ("scarify", {"soil": "wet"}, "sodden-ground"),
    # Cumberland County (cumb-td): top-dress when it is dry. Storms before the sand has settled are common practice.
    ("topdress", {"leaf": "wet"}, "damp-sand"),
    ("level", {"leaf": "wet"}, "damp-sand"),
    ("topdress", {"rain_to_come": "40 mm"}, "heavy-rain-on-sand"),
    ("overseed", {"rain_to_come": "40 mm"}, "heavy-rain-on-seed"),
    # Western Australia (wa-care) and Florida (uf-mow-clay): do not mow wet grass.
    ("mow", {"leaf": "wet"}, "wet-mowing"),
    # Kansas State and the USGA (ksu-frost, usga-frost): stay off frosted grass.
    ("mow", {"leaf": "frosted"}, "frosted-leaf"),
    # Common practice: no frost may be forecast for the night after cutting down or opening the turf.
    ("cut-down", {"low": "-1 °C"}, "frost-tonight"),
    ("scarify", {"low": "31 °F"}, "frost-tonight"),
    # UC (uc-aer) and the RHS (rhs-aut): no aerating or scarifying of cool-season lawns in summer heat.
    ("core", {"cool_season": "yes", "high": "34 °C"}, "great-heat"),
    ("scarify", {"cool_season": "yes", "high": "34 °C"}, "great-heat"),
    # Perth's Water Corporation (wc-wa): only on the days of the roster.
    ("water", {"watering_day": "no"}, "watering-rules"),
    # Common practice: rain that covers what is due does the watering.
    ("water", {"rain_to_come": "8 mm"}, "rain-waters"),
    ("water", {"rain_fallen": "8 mm"}, "rain-waters"),
]  # fmt: skip


@pytest.mark.parametrize(("task", "changed", "hold"), HOLDS)
def test_it_holds(task, changed, hold):
    found = on(task, **changed)
    assert found.answer == "hold" and hold in why(found)
    (reason, *_) = [each for each in found.reasons if each.hold == hold and each.rule.answer == "hold"]
    assert reason.rule.reason and reason.rule.change


CARE = [
    # California's rule for outdoor work, landscaping named, has measures for high heat from 95 °F on.
    ("edge", {"high": "95 °F"}, "heat-for-people"),
    # UC (uc-dethatch): moisten the surface first. UC (uc-fertqt): water deeply the day before feeding.
    ("scarify", {"soil": "dry"}, "dry-thatch"),
    ("feed", {"soil": "dry"}, "ground-for-feeding"),
    # Purdue (purdue-ay8): not at midday above 32 °C on dry soil.
    ("mow", {"soil": "dry", "high": "33 °C"}, "midday-heat"),
    # Common practice: a light frost on cut-down turf sets it back.
    ("mow", {"low": "-2 °C", "days_since_cut_down": "10"}, "frost-after-cutting-down"),
    ("topdress", {"sand": "damp"}, "damp-sand"),
    # Waikato Regional Council's chart: hazard of drift is high in still air, under 1 m/s (3.6 km/h).
    ("spray-out", {"wind": "2 km/h"}, "still-air"),
    # More than the 6 mm that rinse feed off the leaf, less than heavy rain.
    ("feed", {"rain_to_come": "12 mm"}, "watering-in"),
    ("water", {"rain_to_come": "2 mm"}, "rain-waters"),
    ("overseed", {"watering_day": "no"}, "seed-without-water"),
    ("water", {"wind": "30 km/h"}, "strong-wind"),
    # Common practice: holes in warm-season turf close slowly while frosts are about.
    ("core", {"frost_seen": "2 nights"}, "frost-seen-coring"),
    # Nebraska (unl-frost-weeds): leaf that frost has softened takes little in, so look at it first.
    ("spray-out", {"frost_seen": "2 nights"}, "frost-seen-spraying"),
    ("pre-emergent", {"frost_seen": "0"}, "frost-seen-spraying"),
]  # fmt: skip


@pytest.mark.parametrize(("task", "changed", "hold"), CARE)
def test_it_goes_with_care(task, changed, hold):
    found = on(task, **changed)
    assert found.answer == "care" and why(found) == {hold}


GOES = [
    ("feed", {"rain_to_come": "5 mm"}),  # Enough to rinse the leaf (6 mm at most), and no runoff.
    ("feed", {"watering_day": "no", "rain_to_come": "6 mm"}),  # Rain waters it in.
    ("mow", {"soil": "dry", "high": "31 °C"}),  # Under Purdue's 90 °F.
    ("mow", {"low": "-2 °C", "days_since_cut_down": "60"}),  # It has long closed over: four weeks are watched.
    ("cut-down", {"low": "5 °C"}),
    ("cut-down", {"frost_seen": "3 weeks"}),
    ("cut-down", {"frost_seen": "2 nights", "cool_season": "yes"}),  # Cool-season grass is cut a little, and has met frosts before.
    ("mow", {"frost_seen": "2 nights"}),
    ("topdress", {"high": "31 °C"}),
    ("water", {"rain_to_come": "0 mm", "rain_fallen": "2 mm"}),
    ("core", {"rain_to_come": "40 mm"}),  # Rain tomorrow spoils no holes.
    ("mow", {"wind": "40 km/h"}),
]  # fmt: skip


@pytest.mark.parametrize(("task", "changed"), GOES)
def test_it_goes(task, changed):
    found = on(task, **changed)
    assert (found.answer, found.reasons) == ("go", ())


# The limit is typed in from a label; 3 to 20 km/h is the range that the Australian regulator's standard restraints name.
@pytest.mark.parametrize(("wind", "answer"), [("12 km/h", "go"), ("20 km/h", "go"), ("21 km/h", "hold"), ("15 mph", "hold")])
def test_wind_for_spraying_is_held_against_the_typed_label(wind, answer):
    assert on("spray-out", wind=wind, label_wind="20 km/h").answer == answer


@pytest.mark.parametrize(("changed", "answer"), [
    ({"label_high": "28 °C", "high": "30 °C"}, "hold"), ({"label_high": "28 °C", "high": "27 °C"}, "go"),
    ({"label_low": "8 °C", "low": "5 °C"}, "hold"), ({"label_low": "8 °C", "low": "9 °C"}, "go"),
    ({"label_rain_free_hours": "6", "hours_to_rain": "4 h"}, "hold"), ({"label_rain_free_hours": "6", "hours_to_rain": "8 h"}, "go"),
    ({"label_rain_free_hours": "6", "hours_to_rain": "none"}, "go"), ({"label_rain_free_hours": "none", "hours_to_rain": "1 h"}, "go"),
])  # fmt: skip
def test_the_rest_of_the_label(changed, answer):
    assert on("spray-out", **changed).answer == answer


@pytest.mark.parametrize("limit", [id for id, question in QUESTIONS.items() if question.label])
def test_until_the_label_is_typed_the_label_decides(limit):
    day = {**FINE, "hours_to_rain": "10 h"}
    del day[limit]
    found = ask("spray-out", day)
    assert found.answer == "ask" and [each.question for each in found.not_known] == [limit]
    assert found.not_known[0].could == "hold"


def test_the_book_offers_no_label_value():
    for hold in BOOK.holds.values():
        assert not [name for name in hold.constants if "label" in name]
    assert all(question.none for question in QUESTIONS.values() if question.label)


def test_grass_that_runs_above_ground_only_is_held_by_a_ground_frost():
    """At 1 °C in the air the leaf may freeze; only runners below ground come back from that."""
    assert on("cut-down", low="1 °C", surface_running="yes").answer == "hold"
    assert on("cut-down", low="1 °C").answer == "care"


def test_frost_holds_today_and_two_milder_days_later_it_goes():
    assert on("cut-down", low="-1 °C").answer == "hold"
    assert on("cut-down", low="6 °C").answer == "go"


@pytest.mark.parametrize(("seen", "told"), [
    ("0 nights", "this morning"), ("1 night", "one night ago"), ("2 nights", "two nights ago"), ("48 h", "two nights ago"), ("7", "seven nights ago"),
])  # fmt: skip
def test_frost_seen_on_the_lawn_holds_warm_season_work_and_the_reason_says_when(seen, told):
    """Common practice, whatever tonight's forecast: cold nights come in runs, and turf that is cut down has no cover."""
    found = on("cut-down", frost_seen=seen)
    assert found.answer == "hold" and why(found) == {"frost-seen"}
    assert f"Frost was seen on the lawn {told}." in found.reasons[0].said


def test_frost_that_nobody_spoke_of_reads_as_none_and_is_said():
    """The answer of a day that says nothing of it is what it always was."""
    found = on("cut-down")
    assert (found.answer, found.not_known, found.presumed) == ("go", (), ("frost_seen",))
    assert on("cut-down", frost_seen="none").presumed == ()
    # For cool-season grass no answer to it could change anything, so nothing has to be presumed.
    assert on("cut-down", cool_season="yes").presumed == ()
    assert on("mow").presumed == ()


def test_frost_that_nobody_looked_for_is_not_known_where_it_matters():
    found = on("cut-down", frost_seen="unknown")
    assert found.answer == "ask" and [(each.question, each.could) for each in found.not_known] == [("frost_seen", "hold")]
    assert on("cut-down", frost_seen="unknown", cool_season="yes").answer == "go"


def test_with_frost_seen_the_grass_is_asked_for_and_without_it_is_not():
    day = {**without("cool_season"), "high": "20 °C"}
    assert ask("cut-down", {**day, "frost_seen": "2 nights"}).answer == "ask"
    assert ask("vertical-mow", day).answer == "go"


def test_any_hold_outweighs_any_care_and_both_are_told():
    found = on("feed", leaf="wet", soil="dry", wind="35 km/h")
    assert found.answer == "hold" and found.reasons[0].rule.answer == "hold"
    assert why(found) == {"dewy-leaf", "ground-for-feeding", "strong-wind"}


def without(*questions):
    return {id: answer for id, answer in FINE.items() if id not in questions}


def test_what_is_not_known_is_asked_for_only_where_it_matters():
    """On a mild night nobody needs to know when the grass was cut down; with frost coming it is asked."""
    day = without("days_since_cut_down")
    assert ask("mow", day).answer == "go"
    found = ask("mow", {**day, "low": "-3 °C"})
    assert found.answer == "ask" and [each.question for each in found.not_known] == ["days_since_cut_down"]


def test_an_unknown_does_not_hide_a_hold():
    found = ask("feed", {"leaf": "wet"})
    assert found.answer == "hold" and why(found) == {"dewy-leaf"}
    assert {"rain_to_come", "soil", "high"} <= {each.question for each in found.not_known}


def test_an_unknown_that_could_only_ask_for_care_again_leaves_the_answer():
    """Care for dry soil stands already, and strong wind could only ask for care as well."""
    found = ask("feed", {**without("wind"), "soil": "dry"})
    assert found.answer == "care" and [(each.question, each.could) for each in found.not_known] == [("wind", "care")]


def test_an_unknown_that_could_hold_keeps_care_from_standing():
    found = ask("feed", {**without("leaf"), "soil": "dry"})
    assert found.answer == "ask" and why(found) == {"ground-for-feeding"}


def test_the_order_of_a_condition_does_not_matter_for_what_is_unknown():
    """`leaf_wet and not leaf_frosted` on a leaf nobody felt asks for the leaf; on a dry one it is settled."""
    assert "leaf" in {each.question for each in ask("mow", without("leaf")).not_known}
    assert "wet-mowing" in on("mow").quiet


def test_every_question_is_asked_by_some_rule_and_every_hold_belongs_to_a_task():
    used = {ANSWERED_BY[name] for hold in BOOK.holds.values() for rule in hold.rules for name in condition_of(rule).names if name in ANSWERED_BY}
    assert used == set(QUESTIONS)
    for hold in BOOK.holds.values():
        assert hold.tasks and len({rule.reason for rule in hold.rules}) == len(hold.rules)


def test_numbers_of_tasks_and_season_are_used_by_name():
    """Six millimetres rinse feed off the leaf (suffolk-fertiliser-selection), and stand in the task's file only."""
    watering = BOOK.holds["watering-in"].constants["enough_rain"]
    assert (watering.value, watering.unit) == (BOOK.tasks["feed"].figures["water-in-depth"].use, "mm")
    frost = BOOK.holds["frost-tonight"].constants["air_frost"]
    assert frost.value == BOOK.season_groups.rules.air_frost_c.use == 0
