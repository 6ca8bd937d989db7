"""Reading and printing quantities: Python and the browser against the same vectors."""

import json
import math
import random
from pathlib import Path

import pytest

from generator.units import QuantityError, read_list, read_quantity, show, unit, units
from tests.formula.browser_side import run_in_browser
from tests.yaml_files import read_yaml

VECTORS = read_yaml(Path(__file__).parent / "vectors" / "quantities.yml")
READERS = {"read": read_quantity, "list": read_list}
SCRIPT = """
window.outcome = CASES.map(function (one) {
  var quantity = Swardbook.quantity;
  try {
    if (one.how === "show") { return { text: quantity.show(one.si, one.unit, one.figures) }; }
    return { si: (one.how === "read" ? quantity.read : quantity.readList)(one.text, one.unit) };
  } catch (problem) {
    return { problem: problem.code || String(problem), sentence: problem.sentence };
  }
});
"""


def in_python(case: dict) -> dict:
    wanted = unit(case["unit"])
    try:
        if case["how"] == "show":
            return {"text": show(case["si"], wanted, case["figures"])}
        return {"si": READERS[case["how"]](case["text"], wanted)}
    except QuantityError as problem:
        return {"problem": problem.code, "sentence": problem.sentence}


def all_in_browser(browser, folder, cases: list[dict]) -> list[dict]:
    script = f"var CASES = {json.dumps(cases)};{SCRIPT}"
    return run_in_browser(browser, folder, script)


def cases(*kinds: str) -> list[dict]:
    return [{"how": how, **case} for how in kinds for case in VECTORS[how]]


@pytest.mark.parametrize("case", cases("read", "list", "show"), ids=str)
def test_python_reads_what_was_meant(case):
    found = in_python(case)
    if case["how"] == "show":
        assert found["text"] == case["text"]
    elif "problem" in case:
        assert found.get("problem") == case["problem"], found
    else:
        assert found.get("si") == pytest.approx(case["si"], rel=1e-10, abs=1e-300), found


def test_the_browser_reads_the_same(browser, tmp_path):
    listed = cases("read", "list", "show")
    for case, found in zip(listed, all_in_browser(browser, tmp_path, listed), strict=True):
        expected = in_python(case)
        expected_sentence, sentence = expected.pop("sentence", None), found.pop("sentence", None)
        assert found == expected, case
        # Near misses are looked up in Python only; every other sentence is the same.
        if expected.get("problem") != "unknown-unit":
            assert sentence == expected_sentence


def test_every_unit_reads_back_what_it_shows(browser, tmp_path):
    chance = random.Random(1)
    listed = [
        {"how": "show", "si": chance.uniform(0.1, 1) * 10 ** chance.randint(-9, 9),
         "unit": spelling, "figures": chance.randint(1, 15)}
        for spelling in units() for _ in range(20)
    ]  # fmt: skip
    shown = [in_python(case)["text"] for case in listed]
    assert [found["text"] for found in all_in_browser(browser, tmp_path, listed)] == shown
    for case, text in zip(listed, shown, strict=True):
        if case["unit"] not in ("1", "100 m2", "°C", "°F"):
            step = 10.0 ** (1 - case["figures"])
            assert read_quantity(text, unit(case["unit"])) == pytest.approx(case["si"], rel=step)


def test_noise_is_a_number_or_a_sentence_and_the_same_on_both_sides(browser, tmp_path):
    chance = random.Random(2)
    pieces = ["1", "2,5", "1 200", "1/2", ".", ",", ";", " ", "-", "+", "e5", "m2", "kg", "/", "x",
              "100 m2", "°C", "½", "\u00a0", "\n", "<b>", "per", "gal", "US gal", "%", "٣", "\u2028",
              "ft", "’", "lb", "\x00", "ſ", "İ", "😀", "__proto__", "1e308", "000"]  # fmt: skip
    listed = [
        {"how": chance.choice(["read", "list"]), "unit": chance.choice(list(units())),
         "text": "".join(chance.choices(pieces, k=chance.randint(0, 7)))}
        for _ in range(10_000)
    ]  # fmt: skip
    for case, found in zip(listed, all_in_browser(browser, tmp_path, listed), strict=True):
        expected = in_python(case)
        assert found.get("problem") == expected.get("problem"), (case, found, expected)
        assert found.get("si") == expected.get("si"), case
        if "si" in expected:
            si = expected["si"] if isinstance(expected["si"], list) else [expected["si"]]
            assert all(math.isfinite(value) for value in si)
        else:
            assert expected["sentence"].endswith(".")
