"""`swardbook hold` as someone at a terminal sees it, on the invented book whose one task is held by wind and asks care on a wet leaf."""

import json

import pytest
from click.testing import CliRunner

from generator.cli import main
from generator.commands.exit_codes import OF_HOLD
from tests.book_folders import WHOLE
from tests.our_book import ROOT


def run(*words):
    return CliRunner().invoke(main, ["hold", "--book", str(WHOLE), *words])


def said(*words):
    result = run(*words)
    assert result.exit_code in {code for code, _ in OF_HOLD}, result.output
    return result.stdout


def test_a_calm_dry_morning_is_a_go():
    """Two sweeps in 9 km/h come to 18, and 20 hold."""
    assert said("sweep", "wind=9", "leaf=dry", "soil=moist").startswith("Sweep: go\n")


def test_a_hold_says_why_what_would_change_it_and_where_it_comes_from():
    text = said("sweep", "wind=11 km/h", "leaf=dry", "soil=moist")
    assert text.startswith("Sweep: hold\n") and "The dust flies." in text
    assert "What would change it: A calmer day." in text and "From: common practice." in text
    assert "Read the cautions: sore-back." in text


def test_care_is_told_as_care():
    assert said("sweep", "wind=2", "leaf=wet", "soil=dry").startswith("Sweep: go with care\n")


def test_without_answers_everything_is_asked_for():
    text = said("sweep")
    assert text.startswith("Sweep: not known yet\n") and text.count("Not known, so ask for this.") == 3
    assert "wind [km/h]" in text and "leaf [dry, wet, frosted]" in text


def test_the_list_asks_and_answers_nothing():
    text = said("sweep", "--list")
    assert [line.split()[0] for line in text.splitlines() if line[2] != " "] == ["wind", "leaf", "soil"]


def test_a_task_without_holds_goes_and_says_so():
    assert said("look") == "Look: go\n\nNo weather and no state of the ground holds up this task.\n"
    assert said("look", "--list") == "There is nothing to ask about this task.\n"


def test_json_carries_the_same():
    """36 km/h are 10 m/s; measured answers come back in the unit of their question."""
    answer = json.loads(said("sweep", "wind=10 m/s", "leaf=wet", "--json"))
    assert (answer["task"], answer["answer"]) == ("sweep", "hold")
    assert [(each["hold"], each["answer"]) for each in answer["reasons"]] == [("dust-in-the-air", "hold")]
    assert answer["reasons"][0]["change"] == "A calmer day." and answer["reasons"][0]["sources"] == ["common practice"]
    assert answer["inputs"] == {"wind": {"value": 36, "unit": "km/h"}, "leaf": "wet"}
    assert [(each["question"], each["could"]) for each in answer["not_known"]] == [("soil", "care")]


def frost(*words):
    """On our own book, a mild dry day on couch."""
    mild = ("low=6", "high=18", "leaf=dry", "soil=moist", "--grass", "couch")
    return CliRunner().invoke(main, ["hold", "--book", str(ROOT), "cut-down", *mild, *words], env={"SOURCE_DATE_EPOCH": "1795867200"})


def test_frost_that_was_seen_is_said_with_its_nights_or_its_date():
    """The clock stands at 28 November 2026, so the 26th was two nights ago."""
    for seen in ("2 nights", "2", "2026-11-26"):
        result = frost(f"frost_seen={seen}")
        assert result.stdout.startswith("Cut down: hold\n") and "Frost was seen on the lawn two nights ago." in result.stdout, result.output


def test_what_was_taken_for_granted_is_said_on_the_terminal_and_in_json():
    text = frost().stdout
    assert text.startswith("Cut down: go\n") and "frost_seen [day, or none, or unknown]  Taken for granted: no frost has been seen" in text
    answer = json.loads(frost("--json").stdout)
    assert answer["answer"] == "go" and answer["not_known"] == []
    (taken,) = answer["presumed"]
    assert taken["question"] == "frost_seen" and taken["sentence"].startswith("Taken for granted")
    told = json.loads(frost("--json", "frost_seen=2 nights").stdout)
    assert told["presumed"] == [] and told["inputs"]["frost_seen"] == {"value": 2, "unit": "day"}
    assert "two nights ago" in told["reasons"][0]["reason"]
    assert json.loads(frost("--json", "frost_seen=unknown").stdout)["answer"] == "ask"


@pytest.mark.parametrize(("words", "says"), [
    (["swep"], "no task 'swep'; did you mean 'sweep'?"),
    (["sweep", "wind"], "'wind' is not QUESTION=ANSWER; write it as leaf=dry or wind='12 km/h'"),
    (["sweep", "wind=1", "wind=2"], "'wind' is given twice; give it once"),
    (["sweep", "leaf=damp"], "leaf: 'damp' does not answer this; write dry or wet or frosted."),
    (["sweep", "--grass", "plaingras"], "no grass 'plaingras'; did you mean 'plaingrass'?"),
])  # fmt: skip
def test_a_slip_is_told_in_a_sentence(words, says):
    result = run(*words)
    assert result.exit_code == 2 and says in result.stderr


def test_every_slip_is_told_at_once():
    result = run("sweep", "leaf=damp", "wind=fast", "rain=2")
    assert result.exit_code == 2 and all(word in result.stderr for word in ("'damp'", "wind: ", "rain: "))


def test_a_label_that_nobody_read_decides():
    from generator.files.hold_answer import not_known

    assert not_known("label_wind") == (
        "Not known: the label's highest wind. The label decides; read it there, and type 'none' if it sets none."
    )
