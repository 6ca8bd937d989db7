"""Python and the browser give the same for a hundred random inputs of every calculator (a thousand in the long run): answers, refusals and remarks."""

import math
import random

import pytest

from generator.calculators.calculate import calculate
from tests.asking import ask
from tests.components.calculators import BOOK, IDS, typed

SPREADS = ((0.6, 1.4), (0.6, 1.4), (0.05, 4), (-0.2, 4))  # Of what a field starts with.
RUN = """(id, many) => many.map(typed => {
  const out = Swardbook.calculator.run(Swardbook.calculators[id], typed);
  return [out.results, Object.assign({}, out.problems, out.unread), out.noAnswer, out.said.map(each => each.say), out.notes];
})"""


def texts_of(calculator, chance: random.Random) -> dict[str, str]:
    """What a person might type into each field: about the usual, or far from it and even below nought, some of it in US units."""
    texts, (lowest, highest) = {}, chance.choice(SPREADS)
    for name, asked in calculator.inputs.items():
        start = asked.default if asked.many else (asked.default or 5,)
        texts[name] = "; ".join(f"{value * chance.uniform(lowest, highest):.6g}" for value in start)
        if asked.whole and chance.random() < 0.9:
            texts[name] = str(chance.randint(1, 12))
        elif asked.us_unit and not asked.many and asked.unit != "°C" and chance.random() < 0.3:
            texts[name] += f" {asked.us_unit}"
        elif chance.random() < 0.03:
            texts[name] += chance.choice((" kgg", " m3", " /0", "é", " mmm", "%", " gal"))
    return texts


@pytest.mark.parametrize("count", [100, pytest.param(1000, marks=pytest.mark.soak)])
@pytest.mark.parametrize("id", IDS)
def test_browser_and_python_agree_on_random_inputs(all_scripts, id, count):
    calculator, chance = BOOK.calculators[id], random.Random(f"thousand {id}")
    many = [texts_of(calculator, chance) for _ in range(count)]
    outs = ask(all_scripts, RUN, id, [typed(calculator, texts) for texts in many])
    answered = 0
    for texts, (results, problems, no_answer, said, notes) in zip(many, outs, strict=True):
        run = calculate(calculator, texts)
        assert results.keys() == run.results.keys(), texts
        for name, amount in run.results.items():
            assert math.isclose(results[name], amount.si, rel_tol=1e-9, abs_tol=1e-12), (name, texts, results[name], amount.si)
        assert problems | no_answer == {problem.about: problem.sentence for problem in run.problems}, texts
        assert said == [each.sentence for each in run.warnings if each.about is None], texts
        assert notes == {each.about: each.sentence for each in run.warnings if each.about}, texts
        answered += run.results.keys() == calculator.results.keys()
    assert answered >= count / 50  # Not only refusals were compared.
