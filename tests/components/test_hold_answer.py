"""The page and the command line answer hold or go alike, on days of which more or less is known."""

import random
from collections import Counter
from datetime import date

import pytest

from generator.field.forecast import NONE, QUESTIONS, read_forecast
from generator.field.holds import answer_for, asks_of, holds_of
from generator.site.frame.render import COMPONENTS
from generator.site.shared.hold_script import hold_script
from tests.asking import ask
from tests.components.calculators import BOOK, page_with

SCRIPT = COMPONENTS / "hold-or-go" / "hold-or-go-answer.js"
RANGES = {"°C": (-8, 45), "mm": (0, 60), "km/h": (0, 50), "h": (0, 48), "day": (0, 60)}
DAYS = 600
TODAY = date(2026, 11, 28)
# Days that something was seen on, one of them no day and one still to come.
PAST = ["2026-11-28", "2026-11-27", "2026-11-26", "2026-11-16", "2026-02-30", "2026-11-29", "1 night", "3 nights"]
SLIPS = 0.02  # Of all questions; so most days have none.
ASK = """(days) => days.map(([task, answers]) => {
  const ids = Swardbook.holds.of(task), day = Swardbook.holds.read(answers, {}, '2026-11-28'), found = Swardbook.holds.answer(ids, day);
  return {
    answer: found.answer, again: found.again, reasons: found.reasons.map((each) => [each.hold, each.said]),
    notKnown: found.notKnown.map((each) => [each.question, each.could, each.holds]), quiet: found.quiet,
    presumed: found.presumed, asks: Swardbook.holds.asks(ids), troubles: day.troubles
  };
})"""


def some_day(draw: random.Random) -> dict[str, str]:
    """Answers to some of the questions, or to all but a few, as somebody would type them."""
    share = draw.choice((0.2, 0.7, 0.95, 1))
    answers = {}
    for id, question in QUESTIONS.items():
        if draw.random() < share:
            words = [*question.words, *([f"{draw.uniform(*RANGES[question.unit]):.1f} {question.unit}"] * 3 if question.unit else [])]
            words += PAST if question.lately else []
            answers[id] = draw.choice(words)
        if draw.random() < SLIPS:
            answers[draw.choice([id, id[1:], f"{id}s"])] = draw.choice(["drry", "frost", "ys", "-3 mm", "20", "20 °C", "fast", "12 kmm/h", " Wet ", "none", "<b>"])
    return answers


def here(task: str, answers: dict[str, str]) -> dict:
    holds = holds_of(task, BOOK.holds)
    day, troubles = read_forecast(answers, TODAY)
    found = answer_for(holds, day)
    return {
        "answer": found.answer, "again": found.again, "reasons": [[each.hold, each.said] for each in found.reasons],
        "notKnown": [[each.question, each.could, list(each.holds)] for each in found.not_known], "quiet": list(found.quiet),
        "presumed": list(found.presumed), "asks": list(asks_of(holds)), "troubles": {each.question: each.sentence for each in troubles},
    }


@pytest.fixture
def ready(page, tmp_path):
    errors: list[str] = []
    page.on("pageerror", lambda error: errors.append(str(error)))
    page.goto(page_with(tmp_path, [], []))
    page.add_script_tag(path=SCRIPT)
    page.add_script_tag(content=hold_script(BOOK))
    yield page
    assert errors == []


def test_random_days_are_answered_alike_on_both_sides(ready):
    draw = random.Random(3)
    days = [(draw.choice(sorted(BOOK.tasks)), some_day(draw)) for _ in range(DAYS)]
    seen, told = Counter(), set()
    for day, theirs in zip(days, ask(ready, ASK, days), strict=True):
        ours = here(*day)
        seen[ours["answer"]] += 1
        told |= set(ours["troubles"].values())
        assert theirs == ours, day
    assert set(seen) == {"go", "care", "hold", "ask"} and min(seen.values()) > DAYS / 100
    for words in ("Nothing asks", "does not answer this; write", "does not answer this; did", "cannot be less", "Or type 'none'", "swap them", "still to come"):
        assert any(words in sentence for sentence in told), words


def test_what_cannot_be_read_is_a_sentence_and_a_label_may_set_no_limit(ready):
    def read(answers, units=None):
        return ready.evaluate("([answers, units]) => Swardbook.holds.read(answers, units)", [answers, units])

    for id, text in (("wind", "fast"), ("rain_to_come", "-3 mm"), ("low", "<b>2</b>"), ("label_wind", "20 mm")):
        found = read({id: text})
        assert found["known"] == {} and found["absent"] == {}
        assert len(found["troubles"][id]) > 10 and found["troubles"][id].endswith(".")
    assert read({"label_wind": NONE.upper(), "leaf": " "}) == {"known": {}, "absent": {"label_wind": True}, "unlooked": {}, "troubles": {}}
    # 50 °F are 10 °C, 283.15 K: a bare number in the unit that the reader uses.
    assert read({"low": "50"}, {"low": "°F"})["known"]["low"] == pytest.approx(283.15)
