"""What a formula may say, and what an author is told, at which character, when it may not."""

import random
import time

import pytest

from generator.formula import FormulaError, check_names, parse, to_text
from tests.formula import generated

ALLOWED = "use numbers, names, + - * / **, comparisons, and/or/not, 'a if c else b' and functions"

REFUSED = [
    # Not one line of plain characters.
    ("", 0, "the formula is empty", "write an expression such as area * rate"),
    ("   ", 0, "the formula is empty", "write an expression such as area * rate"),
    ("area *\nrate", 6, "'U+000A' has no place in a formula", "write the formula on one line"),
    ("area × rate", 5, "'×' has no place in a formula", "write '*'"),
    ("area ÷ 2", 5, "'÷' has no place in a formula", "write '/'"),
    ("a − b", 2, "'−' has no place in a formula", "write a plain '-'"),
    ("a ^ 2", 2, "'^' has no place in a formula", "write '**' for a power"),
    ("a²", 1, "'²' has no place in a formula", "write '**2'"),
    ("a ≤ b", 2, "'≤' has no place in a formula", "write '<='"),
    ("46%", 2, "'%' has no place in a formula",
     "give the value a unit of % instead: 46 % is 0.46 in a formula"),
    ("Fläche * 2", 2, "'ä' has no place in a formula", ALLOWED),
    ("ﬁeld * 2", 0, "'ﬁ' has no place in a formula", ALLOWED),
    ("a\0b", 1, "'U+0000' has no place in a formula", ALLOWED),
    ("a\u202eb", 1, "'U+202E' has no place in a formula", ALLOWED),
    # Python that is not arithmetic.
    ("__import__('os')", 11, "''' has no place in a formula", ALLOWED),
    ("__import__(a)", 0, "unknown function '__import__'", None),
    ("a.b", 0, "'a.b' is not arithmetic", ALLOWED),
    ("2 * a.b(c)", 4, "'a.b' cannot be called", ALLOWED),
    ("a[0]", 1, "'[' has no place in a formula", ALLOWED),
    ("lambda: 1", 6, "':' has no place in a formula", ALLOWED),
    ("(a := 1)", 3, "':' has no place in a formula", ALLOWED),
    ("sum(x for x in y)", 3, "'(x for x in y)' is not arithmetic", ALLOWED),
    ("min(*readings)", 4, "'*readings' is not arithmetic", ALLOWED),
    ("round(a, digits=2)", 15, "'=' does not compare", "write '==' to compare, or leave the name out"),
    ("True", 0, "'True' is not a plain number", ALLOWED),
    ("None", 0, "'None' is not a plain number", ALLOWED),
    ("...", 0, "'...' is not a plain number", ALLOWED),
    ("'text'", 0, "''' has no place in a formula", ALLOWED),
    ("a, b", 0, "'a, b' is not arithmetic", ALLOWED),
    ("a in b", 0, "'a in b' does not compare numbers", "use < <= > >= == or !="),
    ("a is b", 0, "'a is b' does not compare numbers", "use < <= > >= == or !="),
    ("a // b", 2, "'//' is not a division here", "use floor(a / b)"),
    ("a >> b", 0, "'a >> b' is not arithmetic", ALLOWED),
    ("+a", 0, "a sign '+' or '~' says nothing here", "leave it out"),
    ("0x10", 0, "'0x10' is not a plain number", ALLOWED),
    ("1_000", 0, "'1_000' is not a plain number", ALLOWED),
    ("3j", 0, "'3j' is not a plain number", ALLOWED),
    ("a * 1e999", 4, "'1e999' is too large", "use a unit"),
    ("__class__", 0, "'__class__' is not a name", ALLOWED),
    # Slips.
    ("a +", 3, "the formula breaks off", "finish it, or close its brackets"),
    ("  a b", 4, "the formula cannot be read at 'b'", "look for a missing sign, name or bracket"),
    ("2 +* 3", 3, "the formula cannot be read at '* 3'", "look for a missing sign, name or bracket"),
    ("(a + b", 0, "'(' is never closed", "close it with ')'"),
    ("a + b)", 5, "')' closes nothing", "take it out, or open it before"),
    ("1) + (2", 1, "')' closes nothing", "take it out, or open it before"),
    ("a = 5", 2, "'=' does not compare", "write '==' to compare, or leave the name out"),
    ("2 * squrt(a)", 4, "unknown function 'squrt'", "did you mean 'sqrt'?"),
    ("2 * ceil + 1", 4, "ceil is a function", "give it values: ceil(...)"),
    ("sqrt(a, b)", 0, "sqrt takes one value, not 2", "write sqrt(x)"),
    ("sqrt()", 0, "sqrt takes one value, not 0", "write sqrt(x)"),
    ("count(a, b)", 0, "count takes one list", "write count(readings)"),
    ("mean()", 0, "mean takes one list", "write mean(readings)"),
    ("max(2 * 3)", 6, "max of one value needs a list of readings", "write max(readings) or max(a, b)"),
    ("1 + (a > 0)", 7, "'a > 0' answers yes or no, but a number is needed here",
     "choose one with 'a if condition else b'"),
    ("a and b > 0", 0, "'a' is a number, but yes or no is needed here",
     "compare it with something, such as rain > 0"),
    ("not a", 4, "'a' is a number, but yes or no is needed here",
     "compare it with something, such as rain > 0"),
    ("1 if a else 2", 5, "'a' is a number, but yes or no is needed here",
     "compare it with something, such as rain > 0"),
    ("a if a > 1 else a > 2", 2, "one side of 'if' is a number and the other answers yes or no",
     "give both sides the same kind"),
    # Limits.
    ("a" * 401, 400, "the formula has 401 characters", "keep it under 400, naming a step on the way"),
    ("x" * 10_000, 400, "the formula has 10000 characters",
     "keep it under 400, naming a step on the way"),
    ("(" * 300, 60, "brackets are nested more than 60 deep", "split the formula in two"),
    ("-" * 300 + "a", 60, "the formula is nested more than 60 deep", "split it in two"),
    ("a" + "+a" * 100, 0, "the formula is nested more than 60 deep", "split it in two"),
    ("max(" + "1," * 190 + "1)", None, "the formula has more than 150 parts", "split it in two"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "offset", "what", "instead"), REFUSED, ids=lambda v: str(v)[:30])
def test_what_is_refused_and_what_the_author_is_told(text, offset, what, instead):
    started = time.perf_counter()
    with pytest.raises(FormulaError) as refusal:
        parse(text)
    assert refusal.value.what == what
    assert offset is None or refusal.value.offset == offset
    assert instead is None or refusal.value.instead == instead
    assert str(refusal.value) == f"{what}; {refusal.value.instead}"
    assert time.perf_counter() - started < 0.5


def test_an_unknown_name_suggests_the_nearest():
    with pytest.raises(FormulaError) as refusal:
        check_names(parse("2 * aera"), {"area": None, "depth": None})
    assert (refusal.value.offset, str(refusal.value)) == (
        4, "unknown name 'aera'; did you mean 'area'?",
    )  # fmt: skip


def test_an_unknown_name_near_nothing_lists_what_there_is():
    with pytest.raises(FormulaError) as refusal:
        check_names(parse("zzz"), {"area": None, "depth": None})
    assert str(refusal.value) == "unknown name 'zzz'; it knows area, depth"


def test_a_formula_knows_its_names_and_kind():
    formula = parse("depth * area + depth * pi")
    assert formula.names == ("depth", "area")
    assert not formula.is_condition
    assert parse("rain > 2 and not (wind > 3)").is_condition


@pytest.mark.parametrize(
    "text",
    [
        "a - (b - c)", "(a - b) - c", "a / (b * c)", "(a ** b) ** c", "a ** b ** c", "-a ** 2",
        "(-a) ** 2", "a ** -b", "a * -b", "-(a * b)", "--a", "not (a > b or c > d)", "(a > b) and c > d",
        "a < b <= c", "(a if b > c else d) * 2", "a if b > c else d if e > 1 else 3",
        "(a if b > c else d) if e > 1 else 3", "a if (b > 1 if c > 1 else d > 1) else 2",
        "min(a, b, max(c, 1))", ".5 + 5. + 1e-3", "mean(readings) / pi",
    ],
)  # fmt: skip
def test_printed_text_parses_back_to_the_same_tree(text):
    formula = parse(text)
    assert parse(to_text(formula)) == formula


def test_brackets_that_change_the_tree_are_kept():
    assert parse("a - (b - c)") != parse("a - b - c")
    assert to_text(parse("a-(b-c)")) == "a - (b - c)"
    assert to_text(parse("((a)*(b))")) == "a * b"


def test_random_formulas_print_and_parse_back():
    chance = random.Random(3)
    for _ in range(3000):
        text = generated.formula_text(chance)
        formula = parse(text)
        assert to_text(formula) == text
        assert parse(to_text(formula)) == formula


def test_noise_is_a_formula_or_an_error_inside_the_text():
    chance = random.Random(4)
    pieces = ["a", "1", "(", ")", "+", "**", "/", " ", ",", "if", " else ", "not ", ".", "=", "<", "min(",
              "sum", "e", "j", "\t", "'", "#", "\\", ";", ":", "[", "é", "\x00", "lambda", "yield "]  # fmt: skip
    for _ in range(20_000):
        text = "".join(chance.choices(pieces, k=chance.randint(0, 12)))
        try:
            parse(text)
        except FormulaError as error:
            assert 0 <= error.offset <= len(text)
            assert error.what and error.instead
