"""A calculator turned round in a real browser: the same answers and sentences as in Python."""

import random

import pytest

from generator.calculators.calculate import calculate, default_si
from generator.calculators.inversion import solve
from tests.asking import ask
from tests.components.calculators import BOOK, IDS, field, figure

SOLVE = """(id, many) => many.map(([values, asked]) => Swardbook.solve(Swardbook.calculators[id], values, asked))"""
SOLVABLE = [id for id in IDS if any(not each.many and not each.label_only for each in BOOK.calculators[id].inputs.values())]


def turns_of(calculator, chance, most):
    """Every answer against at most so many of the inputs, for wanted values drawn by lot, some of them out of reach."""
    names = [name for name, asked in calculator.inputs.items() if not asked.many and not asked.label_only]
    for result in calculator.results:
        for name in chance.sample(names, min(len(names), most)):
            values = {each: default_si(asked) for each, asked in calculator.inputs.items() if not asked.label_only}
            values |= {each: 1e-5 * chance.randint(1, 9) for each, asked in calculator.inputs.items() if asked.label_only}
            run = calculate(calculator, values)
            if result in run.results:
                yield result, name, repr(run.results[result].value() * chance.choice((1, 1.3, 0.45, -1))), values


@pytest.mark.parametrize("most", [2, pytest.param(100, marks=pytest.mark.soak)])
@pytest.mark.parametrize("id", SOLVABLE)
def test_browser_and_python_turn_round_alike(all_scripts, id, most):
    calculator = BOOK.calculators[id]
    turns = list(turns_of(calculator, random.Random(id), most))
    units = {name: asked.unit for name, asked in calculator.inputs.items()}
    many = [
        (values, {"result": result, "text": wanted, "unit": calculator.results[result].unit, "input": name,
                  "resultUnit": calculator.results[result].unit, "inputUnit": units[name]})
        for result, name, wanted, values in turns
    ]  # fmt: skip
    for (result, name, wanted, values), theirs in zip(turns, ask(all_scripts, SOLVE, id, many), strict=True):
        ours = solve(calculator, {result: wanted}, name, {each: value for each, value in values.items() if each != name})
        about = (result, name, wanted)
        if result not in ours.results:
            assert theirs.get("problem") == ours.problems[0].sentence, about
        else:
            assert theirs.get("si") == pytest.approx(ours.inputs[name].si, rel=1e-9, abs=1e-12), about
            remarks = [said.sentence for said in ours.warnings if said.about == name and "seldom" not in said.sentence]
            assert [theirs["remark"]] == (remarks or [None]), about


def turn(page, result: str, amount: str, for_input: str) -> str:
    box = page.locator(".sb-calculator__turn")
    if not box.get_attribute("open"):
        box.evaluate("each => { each.open = true; }")
    box.locator("[data-part=result]").select_option(result)
    box.locator("[data-part=input]").select_option(for_input)
    box.locator("[data-part=amount]").fill(amount)
    page.wait_for_timeout(400)
    return box.locator("[data-part=answer]").inner_text()


def test_how_far_two_bags_go(opened):
    """40 kg at 1.6 kg/100 m2 cover 25 hundreds of square metres."""
    page = opened("granular-feed")
    field(page, "rate").fill("1.6")
    assert turn(page, "packs", "2", "area") == (
        "Area to feed: 2500 m². Packs to have in the shed: 2 packs for any value from 1250 m² to 2500 m²; the largest is given."
    )
    page.locator("[data-part=use]").click()
    assert field(page, "area").input_value() == "2500" and figure(page, "packs") == "2 packs" and figure(page, "product") == "40 kg"


def test_an_answer_out_of_reach_and_nonsense_get_sentences(opened):
    page = opened("granular-feed")
    assert turn(page, "nitrogen", "5 kg", "nitrogen_percent").endswith("it never goes above 1.5 kg.")
    assert not page.locator("[data-part=use]").is_visible()
    assert turn(page, "nitrogen", "<b>5</b>", "nitrogen_percent") == "Nitrogen delivered: '<b>5</b>' is not a quantity; write one such as 2.5."
    field(page, "rate").fill("banana")
    page.wait_for_timeout(400)
    assert page.locator("[data-part=answer]").inner_text() == (
        "First fix this: Rate of this feed. 'banana' is not a quantity; write one such as 2.5."
    )


def test_a_label_rate_is_not_offered(opened):
    page = opened("tank-mix")
    offered = page.locator(".sb-calculator__turn [data-part=input] option").evaluate_all("all => all.map(each => each.value)")
    assert "area" in offered and "label_rate" not in offered


def test_us_units(opened):
    """1 cubic yard is 27 cubic feet: half an inch deep it covers 648 square feet."""
    page = opened("topdressing-sand")
    page.evaluate("Swardbook.preferences.set('units', 'us')")
    field(page, "depth").fill("0.5")
    assert turn(page, "volume", "1", "area") == "Area to top-dress: 648 ft²."
