"""The working as MathML: well formed, as written, with the names as words."""

import random
import xml.etree.ElementTree as xml

import pytest

from generator.formula import parse, to_mathml
from tests.formula import generated

# MathML Core (W3C), the elements this house uses.
CORE = {"math", "mrow", "mfrac", "msqrt", "msup", "mtable", "mtr", "mtd", "mi", "mn", "mo", "mtext"}


def read(text: str, labels=None) -> str:
    """A formula's MathML as the words a reader sees, fractions and powers marked."""

    def words(part):
        inner = [words(child) for child in part]
        match part.tag:
            case "mfrac":
                return f"[{inner[0]} over {inner[1]}]"
            case "msup":
                return f"{inner[0]}^{{{inner[1]}}}"
            case "msqrt":
                return f"root[{inner[0]}]"
            case "mtr":
                return " ".join(inner) + ";"
        return " ".join([part.text] if part.text else inner)

    return words(xml.fromstring(to_mathml(parse(text), labels or {})))


@pytest.mark.parametrize(
    ("text", "seen"),
    [
        ("area * bag_rate / 100", "[area × bag rate over 100]"),
        ("area * (bag_rate / 100)", "area × ( [bag rate over 100] )"),
        ("a - (b - c)", "a − ( b − c )"),
        ("(a + b) / (c + d)", "[a + b over c + d]"),
        ("(a + b) * 2", "( a + b ) × 2"),
        ("(-a) ** (b + 1)", "( − a )^{b + 1}"),
        ("sqrt(a * b)", "root[a × b]"),
        ("exp(-a / b)", "e^{[− a over b]}"),
        ("ceil(a / b)", "⌈ [a over b] ⌉"),
        ("abs(a - b)", "| a − b |"),
        ("lowest_quarter_mean(cans) / mean(cans)", "[lowest quarter mean ( cans ) over mean ( cans )]"),
        ("min(a, 2.50)", "min ( a , 2.50 )"),
        ("a < b <= c and not d != 1", "a < b ≤ c  and  not  d ≠ 1"),
        ("1 if a > 1 else 2 if a > 0 else 3", "{ 1 if  a > 1; 2 if  a > 0; 3 otherwise;"),
        ("sum(max(highs - base, 0))", "sum ( max ( highs − base , 0 ) )"),
        ("2 * pi", "2 × π"),
    ],
)
def test_what_a_reader_sees(text, seen):
    assert read(text) == seen


def test_labels_are_words_and_never_markup():
    labels = {"a": "sand & <b>loam</b>", "b": "depth"}
    written = to_mathml(parse("a < b"), labels, "cut > 5 mm")
    assert read("a < b", labels) == "sand & <b>loam</b> < depth"
    assert "<b>" not in written
    assert xml.fromstring(written)[0][0].text == "cut > 5 mm"


def test_random_formulas_are_well_formed_mathml_core():
    chance = random.Random(5)
    for _ in range(1000):
        root = xml.fromstring(to_mathml(parse(generated.formula_text(chance)), {}))
        assert {part.tag for part in root.iter()} <= CORE
        for part in root.iter("mfrac"):
            assert len(part) == 2
        for part in root.iter("msup"):
            assert len(part) == 2
