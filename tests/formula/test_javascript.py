"""Python and the browser must give the same answer, or the same named problem, for anything."""

import json
import math
import random

import pytest

from generator.formula import FormulaProblem, evaluate, parse, to_javascript
from generator.formula import nodes as tree
from tests.formula import generated
from tests.formula.browser_side import run_in_browser

SCRIPT = """
window.outcome = CASES.map(function (one) {
  try {
    var answer = Swardbook.formula.answer(one.compiled, one.values);
    return typeof answer === "boolean" ? { is: answer } : { is: String(answer) };
  } catch (problem) {
    return { problem: problem.code || String(problem), sentence: problem.sentence };
  }
});
"""
# These, and powers that are not whole constants, may differ in the last digit between
# libraries; everything else is plain IEEE arithmetic and has to agree to the bit.
LIBRARY = {"exp", "log", "sin", "cos", "tan", "acos"}


def outcome(formula, values):
    try:
        return {"is": formula.evaluate(values)}
    except FormulaProblem as problem:
        return {"problem": problem.code, "sentence": problem.sentence}


def uses_library(root: tree.Node) -> bool:
    return any(
        (isinstance(part, tree.Call) and part.function in LIBRARY)
        or (
            isinstance(part, tree.Arithmetic)
            and part.operator == "**"
            and evaluate.whole_power(part.right) is None
        )
        for part in tree.walk(root)
    )


def nudged_outcomes(monkeypatch, root, values) -> list[dict]:
    """The outcomes when every library function is off by a few of its last digits."""
    found = []
    for digits in (-3, 3, 1):
        with monkeypatch.context() as patched:
            for name in LIBRARY:
                patched.setitem(evaluate.ONE_NUMBER, name, off_by(evaluate.ONE_NUMBER[name], digits))
            patched.setattr(evaluate, "power", off_by(evaluate.power, digits))
            try:
                found.append({"is": evaluate.compiled(root)(values)})
            except FormulaProblem as problem:
                found.append({"problem": problem.code})
    return found


def off_by(function, digits):
    def moved(*arguments):
        answer = function(*arguments)
        # Exact answers (exp(0), cos(0), log(1)) are exact in every library.
        if answer in (0.0, 1.0):
            return answer
        return answer * (1 + digits * 2.220446049250313e-16)

    return moved


def agree(one: dict, other: dict, tolerance: float) -> bool:
    if "problem" in one or "problem" in other or isinstance(one["is"], bool):
        return one == other
    return math.isclose(one["is"], other["is"], rel_tol=tolerance, abs_tol=0.0)


def browser_outcomes(browser, folder, formulas, all_values) -> list[dict]:
    names = {float("inf"): "Infinity", float("-inf"): "-Infinity"}

    def literal(value):
        if isinstance(value, list):
            return f"[{', '.join(map(literal, value))}]"
        return "NaN" if value != value else names.get(value, repr(value))

    functions = []
    for formula, values in zip(formulas, all_values, strict=True):
        pairs = ", ".join(f"{json.dumps(name)}: {literal(v)}" for name, v in values.items())
        functions.append(f"{{compiled: {to_javascript(formula)}, values: {{{pairs}}}}}")
    script = "var CASES = [" + ",\n".join(functions) + "];" + SCRIPT
    found = run_in_browser(browser, folder, script)
    return [
        {"is": float(one["is"])} if isinstance(one.get("is"), str) else one for one in found
    ]


def compare_both_sides(browser, folder, monkeypatch, seed: int, count: int) -> None:
    chance = random.Random(seed)
    formulas = [parse(generated.formula_text(chance)) for _ in range(count)]
    all_values = [generated.values(chance) for _ in range(count)]
    unsettled, problems = 0, set()
    found = browser_outcomes(browser, folder, formulas, all_values)
    for formula, values, there in zip(formulas, all_values, found, strict=True):
        here = outcome(formula, values)
        problems.add(here.get("problem"))
        if "is" in here and not isinstance(here["is"], bool):
            assert math.isfinite(here["is"]), formula.text
        if agree(here, there, 1e-9 if uses_library(formula.root) else 0.0):
            continue
        # Only where the answer hangs on a last digit of the library may the sides differ.
        nudged = nudged_outcomes(monkeypatch, formula.root, values)
        settled = all(agree(here, other, 1e-11) for other in nudged)
        assert not settled and uses_library(formula.root), (formula.text, values, here, there)
        unsettled += 1
    assert unsettled <= count / 100
    assert problems >= set(tree.SENTENCES), set(tree.SENTENCES) - problems


def test_python_and_browser_agree_on_random_formulas(browser, tmp_path, monkeypatch):
    compare_both_sides(browser, tmp_path, monkeypatch, seed=1, count=2500)


@pytest.mark.soak
@pytest.mark.parametrize("seed", range(100, 130))
def test_python_and_browser_agree_for_long(browser, tmp_path, monkeypatch, seed):
    compare_both_sides(browser, tmp_path, monkeypatch, seed, count=10_000)


EDGES = [
    ("1 / a", {"a": 0.0}, "division-by-zero"),
    ("1 / a", {"a": -0.0}, "division-by-zero"),
    ("a ** -1", {"a": 0.0}, "division-by-zero"),
    ("a ** b", {"a": 0.0, "b": -0.5}, "division-by-zero"),
    ("sqrt(a)", {"a": -1e-300}, "negative-root"),
    ("log(a)", {"a": 0.0}, "log-of-zero-or-less"),
    ("log(a)", {"a": -1.0}, "log-of-zero-or-less"),
    ("a ** 0.5", {"a": -4.0}, "power-of-negative"),
    ("acos(a)", {"a": 1.0000000000000002}, "angle-outside"),
    ("mean(r)", {"r": []}, "empty-list"),
    ("count(r)", {"r": []}, "empty-list"),
    ("min(r)", {"r": []}, "empty-list"),
    ("exp(a)", {"a": 710.0}, "too-large"),
    ("a * a", {"a": 1e200}, "too-large"),
    ("a + a", {"a": 1.7e308}, "too-large"),
    ("1 / (a * a)", {"a": 1e200}, "too-large"),
    ("a ** b", {"a": 10.0, "b": 400.0}, "too-large"),
    ("a ** 8", {"a": 1e100}, "too-large"),
    ("sum(r)", {"r": [1.7e308, 1.7e308]}, "too-large"),
    ("mean(r)", {"r": [1.7e308, 1.7e308]}, "too-large"),
    ("mean_deviation(r)", {"r": [1.7e308, 1.7e308, -1.7e308]}, "too-large"),
    ("polygon_area(r)", {"r": [0.0, 0.0, 3.0]}, "corners-unpaired"),
    ("sides_cross(r)", {"r": [0.0, 0.0, 3.0]}, "corners-unpaired"),
    ("sum(a - r)", {"a": [1.0, 2.0], "r": [1.0]}, "lists-unequal"),
    ("sum(a - r)", {"a": [1.0], "r": []}, "empty-list"),
    ("sum(a - r)", {"a": 1.0, "r": 2.0}, "wrong-kind"),
    ("sum(1 / (a - r))", {"a": [1.0, 2.0], "r": 2.0}, "division-by-zero"),
    ("sum(a * r)", {"a": [1e200], "r": [1e200]}, "too-large"),
    ("sum(sqrt(a - r))", {"a": [1.0], "r": [2.0]}, "negative-root"),
    ("sum(a - r)", {"a": [1.0]}, "missing-value"),
    ("sum(a - (r if b > 1 else 2))", {"a": [1.0], "r": [1.0], "b": 2.0}, "wrong-kind"),
    ("simpson_sum(r)", {"r": [1.7e308, 1.7e308, 1.0]}, "too-large"),
    ("a + 1", {"a": float("nan")}, "not-a-number"),
    ("a > 1", {"a": float("nan")}, "not-a-number"),
    ("a + 1", {"a": float("inf")}, "not-a-number"),
    ("max(r)", {"r": [1.0, float("nan")]}, "not-a-number"),
    ("a + 1", {}, "missing-value"),
    ("toString + 1", {}, "missing-value"),
    ("a + 1", {"a": [1.0]}, "wrong-kind"),
    ("-a", {"a": [1.0]}, "wrong-kind"),
    ("mean(a)", {"a": 1.0}, "wrong-kind"),
    ("2 if a > 1 else 3", {"a": [1.0]}, "wrong-kind"),
    ("min(a, b)", {"a": [1.0], "b": 1.0}, "wrong-kind"),
    ("a == b", {"a": [1.0], "b": 1.0}, "wrong-kind"),
]


def test_each_problem_has_the_same_name_and_sentence_on_both_sides(browser, tmp_path):
    formulas = [parse(text) for text, _, _ in EDGES]
    here = [outcome(f, v) for f, (_, v, _) in zip(formulas, EDGES, strict=True)]
    there = browser_outcomes(browser, tmp_path, formulas, [values for _, values, _ in EDGES])
    assert [found["problem"] for found in here] == [code for _, _, code in EDGES]
    assert there == here


def test_what_is_written_for_the_browser():
    assert to_javascript(parse("area * rate / 2")) == "(F,v,l)=>F.divide(F.sure(v.area*v.rate),2)"
    assert to_javascript(parse("1 < a <= 2 and not a == 1.5")) == (
        '(F,v,l)=>(F.ordered(["<","<="],[1,v.a,2])&&(!(v.a===1.5)))'
    )
    assert to_javascript(parse("sum(max(highs - base, 0))")) == (
        "(F,v,l)=>F.sum(F.each((_1)=>F.max([_1,0]),[F.each((_1,_2)=>F.sure(_1-_2),[l.highs,l.base])]))"
    )
    assert to_javascript(parse("mean(r) - frost"), {"frost": -2.5}) == "(F,v,l)=>F.sure(F.mean(l.r)-(-2.5))"
