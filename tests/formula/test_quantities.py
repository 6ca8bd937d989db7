"""Reading and printing quantities: Python and the browser against the same vectors."""

import json
import math
import random
from collections import Counter
from pathlib import Path

import pytest

from generator.findings import nearest
from generator.units import QuantityError, read_list, read_quantity, show, unit, units
from generator.units.known_units import spellings
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
        assert found == in_python(case), case


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
        for _ in range(4_000)
    ]  # fmt: skip
    for case, found in zip(listed, all_in_browser(browser, tmp_path, listed), strict=True):
        expected = in_python(case)
        assert found == expected, case
        if "si" in expected:
            si = expected["si"] if isinstance(expected["si"], list) else [expected["si"]]
            assert all(math.isfinite(value) for value in si)
        else:
            assert expected["sentence"].endswith(".")


# Texts as people type them, each to be spoilt.
TYPED = [
    "240 m2", "1 1/2 in", "2,5 kg", "30 ft x 12 ft", "5 ft 6 in", "3 lb 4 oz", "1,200.5 ft2", "1 200 L", "0.5 US gal/1000 ft2", "20 °C", "33.9 S",
    "12 kg per 100 m²", "4 sq. ft.", "2 seeds/lb", "1e3 g/m2", "15 mL/L", "½ inch", "10 gal/acre", "7 tons", "46 %", "3 passes", "5 psi", "9 mm/week",
    "2 hectares", "6 tablespoons", "8 bushels", "kg N/ha", "1 min 30 s", "(12, 8)", "12, 14; 15 mL", "12 14 15 mL", "1.234,5 m", "1/0 m", "9e300 km",
    "3 UK pints", "40 imp gal/acre", "20 mls", "5 ML", "10-12 mm", "7:30 am", "1 500 m2", "2 UK tons", "3 cwt", "10 to 12 t/acre",
]
SPOILS = "0123456789.,;/ xX-+()'\"°²½µ\u00a0\u2028\n<>&{}$\\abcdefgiklmnopqrstuyzLMKNPGTé😀"


def spoilt(chance: random.Random, text: str) -> str:
    for _ in range(chance.choice((0, 1, 1, 2, 3, 6))):
        at, sign = chance.randint(0, len(text)), chance.choice(SPOILS)
        text = chance.choice((text[:at] + sign + text[at:], text[:at] + text[at + 1 :], text[:at] + sign + text[at + 1 :], text[:at] + text[at:][::-1]))
    return text


@pytest.mark.parametrize("count", [1_000, pytest.param(40_000, marks=pytest.mark.soak)])
def test_what_is_spoilt_is_refused_in_the_same_words(browser, tmp_path, count):
    chance, known = random.Random(3), list(units())
    ways = [*TYPED, *(f"{chance.choice(('3', '1,5', '2 1/4', '1 000'))} {spelling}" for spelling in spellings())]
    listed = [
        {"how": chance.choice(("read", "read", "list")), "unit": chance.choice(known), "text": spoilt(chance, chance.choice(ways))} for _ in range(count)
    ]
    codes = Counter()
    for case, found in zip(listed, all_in_browser(browser, tmp_path, listed), strict=True):
        expected = in_python(case)
        assert found == expected, case
        codes[expected.get("problem")] += 1
        codes["hint"] += "perhaps" in expected.get("sentence", "")
    assert codes["hint"] > count / 400 and all(codes[code] for code in ("unknown-unit", "ambiguous-unit", "wrong-dimension", "not-a-number", "ambiguous-number", None))


def test_a_hint_is_the_one_that_difflib_finds(browser, tmp_path):
    """Long words, words with one sign many times over, and ties, which units alone would seldom bring."""
    chance = random.Random(4)
    known = ["".join(chance.choices("abcé😀", k=chance.randint(0, 12))) for _ in range(60)]
    words = ["".join(chance.choices("abcé😀", k=chance.randint(0, 14))) for _ in range(300)] + ["a" * 150, "ab" * 70, ""]
    found = run_in_browser(browser, tmp_path, f"window.outcome = {json.dumps(words)}.map(function (word) {{ return Swardbook.nearest(word, {json.dumps(known)}); }});")
    assert found == [nearest(word, known) for word in words]
    assert None in found and len(set(found)) > 20


@pytest.mark.parametrize(
    ("text", "wanted", "said"),
    [
        ("2 stone", "kg", "Unknown unit 'stone'; write it in kg, g or lb."),
        ("2 hectre", "m2", "Unknown unit 'hectre'; perhaps 'ha' is meant."),
        ("2 lires/hectre", "L/ha", "Unknown unit 'lires/hectre'; perhaps 'L/ha' is meant."),
        ("2 hectre", "mm", "Unknown unit 'hectre'; use mm, cm, m."),
        ("2 gallos", "L", "'gallos' can mean two things; write 'US gal' or 'imp gal'."),
        ("2 mmph", "mm/h", "Unknown unit 'mmph'; use mm/h, mm/day, mm/week."),  # And not kmph.
        ("2 gallns", "L", "'gallns' can mean two things; write 'US gal' or 'imp gal'."),
        ("2 kg/1000 m2", "kg/100 m2", "Unknown unit 'kg/1000 m2'; use kg/100 m2, g/m2, kg/ha."),
        ("2 foo", "1", "Unknown unit 'foo'; use a number alone."),
        ("6:30", "mm", "'6:30' is a time of day; give a number with its unit, such as 2.5 mm."),
        ("6:30", "min", "'6:30' is a time of day; give a number with its unit, such as 1 h 30 min."),
        ("5 ft 6 ft", "m", "'5 ft 6 ft' names two amounts; give one of them."),
        ("approx 5 m2", "m2", "'approx 5 m2' is not a quantity; write one such as 2.5."),
    ],
)
def test_what_is_said_of_a_unit_that_is_not_read(text, wanted, said):
    with pytest.raises(QuantityError) as refusal:
        read_quantity(text, unit(wanted))
    assert refusal.value.sentence == said
