"""What people type is read right, or refused in one line that leads to no wrong unit: 20,000 texts by lot, in Python and in the browser."""

import json
import re
from collections import Counter

import pytest

from generator.units import QuantityError, read_quantity, unit
from tests.formula.browser_side import run_in_browser
from tests.formula.typed_by_people import SEED, Typed, dimension_of, size_of, typed_by_people

LONGEST_LINE = 200
AMOUNT_OF = {"m": "m3", "kg/m2": "kg", "m3/s": "m3"}  # What the word that means two things measures, in an amount over an area or a time.
QUOTED = re.compile(r"'([^']+)'")


def in_python(one: Typed) -> dict:
    try:
        return {"si": read_quantity(one.text, unit(one.unit))}
    except QuantityError as problem:
        return {"code": problem.code, "sentence": problem.sentence}


def fault_of_reading(one: Typed, si: float) -> str | None:
    if one.must == "refuse":
        return f"read as {si}, and had to be refused"
    meant = one.means[:1] if one.must == "read" else one.means
    if not any(abs(si - float(each)) <= 1e-9 * abs(float(each)) for each in meant):
        return f"read as {si}, and means {[float(each) for each in meant]}"
    return None


def is_near(offered: str, one: Typed) -> bool:
    return any(abs(size_of(offered) / size - 1) < 0.01 for size in one.sizes)


def fault_of_refusal(one: Typed, sentence: str) -> str | None:
    if one.must == "read":
        return "had to be read"
    if len(sentence) > LONGEST_LINE or len(sentence.splitlines()) != 1:
        return "no short line"
    said = sentence.replace(one.text, "")
    if hint := re.search(r"perhaps '([^']+)' is meant", said):
        return None if is_near(hint[1], one) else f"a hint of another size: {hint[1]}"
    if examples := re.search(r"; use ([^;]+)\.$", said):
        offered = examples[1].split(", ")
        wrong = [each for each in offered if dimension_of(each) != dimension_of(one.wanted)]
        return f"examples of another kind: {wrong}" if wrong or len(offered) < 2 else None
    if meanings := re.search(r"; write (.+)\.$", said):
        if "such as" in meanings[1] or "without" in meanings[1]:
            return None
        offered = QUOTED.findall(meanings[1])
        if wrong := [each for each in offered if dimension_of(each) not in (one.dimension, AMOUNT_OF.get(one.dimension))]:
            return f"meanings of another kind: {wrong}"
        if len(offered) > 1 and one.dimension not in AMOUNT_OF and not all(any(abs(size_of(each) / size - 1) < 0.01 for each in offered) for size in one.sizes):
            return f"not what it may mean: {offered}"
    return None


@pytest.mark.parametrize("seed", [SEED, pytest.param(SEED + 1, marks=pytest.mark.soak), pytest.param(SEED + 2, marks=pytest.mark.soak)])
def test_what_people_type_is_read_right_or_refused_in_a_line(browser, tmp_path, seed):
    listed = list(typed_by_people(20_000, seed))
    outcomes = [in_python(one) for one in listed]
    faults = [
        (one.text, one.unit, fault, outcome.get("sentence"))
        for one, outcome in zip(listed, outcomes, strict=True)
        if (fault := fault_of_reading(one, outcome["si"]) if "si" in outcome else fault_of_refusal(one, outcome["sentence"]))
    ]
    counted = Counter("read" if "si" in outcome else outcome["code"] for outcome in outcomes)
    print(f"seed {seed}: {dict(counted)}")
    assert faults == [], f"{len(faults)} of {len(listed)}"
    assert counted["read"] > len(listed) / 3 and counted["unknown-unit"] > 1000 and counted["ambiguous-unit"] > 300 and counted["ambiguous-number"] > 100
    assert sum("perhaps" in outcome.get("sentence", "") for outcome in outcomes) > 500

    cases = json.dumps([[one.text, one.unit] for one in listed])
    script = f"""
    window.outcome = {cases}.map(function (one) {{
      try {{ return {{ si: Swardbook.quantity.read(one[0], one[1]) }}; }} catch (problem) {{ return {{ code: problem.code || String(problem), sentence: problem.sentence }}; }}
    }});"""
    there = run_in_browser(browser, tmp_path, script)
    assert [(one.text, here, other) for one, here, other in zip(listed, outcomes, there, strict=True) if here != other] == []
