"""Each hold rule gives the same answer in the browser as in Python, on days drawn at random."""

import random

from generator.turf.forecast import QUESTIONS, read_forecast
from generator.turf.holds import answer_for, condition_of
from generator.units import to_si, unit
from tests.formula.test_javascript import browser_outcomes
from tests.turf.test_holds import BOOK

DAYS = 25


def some_day(chance):
    """An answer to every question, over the whole of what weather brings."""
    ranges = {"°C": (-8, 45), "mm": (0, 60), "km/h": (0, 50), "h": (0, 48), "day": (0, 60)}
    return {
        id: chance.choice(list(question.choices)) if question.choices else f"{chance.uniform(*ranges[question.unit]):.1f} {question.unit}"
        for id, question in QUESTIONS.items()
    }


def test_python_and_browser_answer_alike(browser, tmp_path):
    chance = random.Random(5)
    formulas, all_values, here = [], [], []
    for hold in BOOK.holds.values():
        numbers = {name: to_si(each.value, unit(each.unit)) for name, each in hold.constants.items()}
        for rule in hold.rules:
            alone = {"this": hold.model_copy(update={"rules": (rule,)})}
            for _ in range(DAYS):
                # Days on which the low lies above the high are told of, and read all the same.
                day, _ = read_forecast(some_day(chance))
                formulas.append(condition_of(rule))
                all_values.append({**day.known, **numbers})
                here.append({"is": answer_for(alone, day).answer == rule.answer})
    there = browser_outcomes(browser, tmp_path, formulas, all_values)
    assert there == here
    assert 0.1 < sum(each["is"] for each in here) / len(here) < 0.9
