"""Reading what somebody says of a day: with units, in words, and what is wrong with it as a sentence."""

from datetime import date

import pytest

from generator.field.forecast import NONE, QUESTIONS, read_forecast


def known(**answers):
    forecast, troubles = read_forecast(answers)
    assert troubles == []
    return forecast


def trouble(**answers):
    _, troubles = read_forecast(answers)
    (one,) = troubles
    return one.sentence


def test_measures_come_out_in_si_units():
    """0 °C is 273.15 K, 36 km/h are 10 m/s, an inch is 25.4 mm, 6 h are 21 600 s."""
    forecast = known(low="0 °C", wind="36 km/h", rain_to_come="1 in", hours_to_rain="6")
    assert forecast.known == pytest.approx({"low": 273.15, "wind": 10, "rain_to_come": 0.0254, "hours_to_rain": 21600})


def test_a_plain_number_is_in_the_question_s_unit():
    assert known(low="-1.5").known["low"] == pytest.approx(271.65)
    assert known(wind="12").known == known(wind="12 km/h").known


@pytest.mark.parametrize(("said", "wet", "frosted"), [("dry", 0, 0), ("Wet ", 1, 0), ("frosted", 1, 1)])
def test_a_word_answers_all_that_rules_ask_of_it(said, wet, frosted):
    assert known(leaf=said).known == {"leaf_wet": wet, "leaf_frosted": frosted}


def test_soil_is_one_thing_at_a_time():
    for said in QUESTIONS["soil"].choices:
        assert sum(known(soil=said).known.values()) == (said != "moist")


def test_none_is_an_answer_where_there_may_be_no_such_thing():
    forecast = known(label_wind="none", hours_to_rain="None")
    assert forecast.absent == {"label_wind", "hours_to_rain"} and not forecast.known
    assert "rain" not in NONE and trouble(wind="none") == "'none' is not a quantity; write one such as 2.5."


def test_a_day_on_which_something_was_seen_is_counted_back_from():
    """From 26 to 28 November are two days, 172 800 s."""
    for seen in ("2", "2 nights", "2 days", "48 h", "2026-11-26"):
        forecast, troubles = read_forecast({"frost_seen": seen}, date(2026, 11, 28))
        assert (forecast.known, troubles) == ({"frost_seen": 172_800}, []), seen


@pytest.mark.parametrize(("seen", "says"), [
    ("2026-11-29", "2026-11-29 is still to come; write a day that is over, or how many days ago it was."),
    ("2026-02-30", "Or type 'none': no frost has been seen on the lawn."),
    ("-1 night", "Days since frost was last seen on the lawn, or the date of that morning cannot be less than 0; -1 night was given."),
])  # fmt: skip
def test_a_day_that_cannot_have_been_is_said(seen, says):
    _, troubles = read_forecast({"frost_seen": seen}, date(2026, 11, 28))
    assert says in troubles[0].sentence


def test_what_nobody_looked_at_is_neither_known_nor_none():
    forecast = known(frost_seen="Unknown")
    assert (forecast.known, forecast.absent, forecast.unlooked) == ({}, frozenset(), {"frost_seen"})
    assert trouble(wind="unknown") == "'unknown' is not a quantity; write one such as 2.5."


def test_a_blank_is_no_answer():
    forecast = known(low=" ", leaf="")
    assert not forecast.known and not forecast.answers


def test_what_the_grass_decides_is_filled_in_unless_it_was_answered():
    grass = known(cool_season="no").of_grass(True, True)
    assert grass.known == {"cool_season": 0, "surface_running": 1}


@pytest.mark.parametrize(("answers", "says"), [
    ({"leaf": "drry"}, "'drry' does not answer this; did you mean 'dry'?"),
    ({"soil": "sandy"}, "'sandy' does not answer this; write dry or moist or wet or frozen."),
    ({"wnd": "3"}, "Nothing asks for this; did you mean 'wind'?"),
    ({"rain_to_come": "-3 mm"}, "Rain forecast for the next 24 hours cannot be less than 0; -3 mm was given."),
    ({"low": "20", "high": "10"}, "The lowest is above the highest; swap them."),
])  # fmt: skip
def test_what_cannot_be_is_said_in_a_sentence(answers, says):
    assert trouble(**answers) == says


def test_a_wrong_unit_says_what_would_fit_and_that_there_may_be_none():
    sentence = trouble(label_wind="20 mm")
    assert "speed" in sentence and "the label sets no such limit" in sentence


def test_each_question_asks_in_words_and_is_answered_in_one_way():
    for id, question in QUESTIONS.items():
        assert question.asks[0].isupper() and not question.asks.endswith((".", "?")), id
        assert (question.unit is None) != (not question.choices), id
        assert question.label == id.startswith("label_"), id
