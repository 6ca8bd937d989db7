"""`swardbook record`: a year's nitrogen, by hand arithmetic, and wrong rows told."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from generator.cli import main

ROOT = Path(__file__).resolve().parents[2]
# 5 kg at 21 % are 1.05 kg of nitrogen, on 240 m2 4.375 g/m2; 2.4 kg at 20 % are 0.48 kg, on 240 m2 2 g/m2: 6.375 g/m2 together.
# 10 lb at 10 % are 1 lb, on 1000 ft2: 1 lb/1000 ft2 = 453.59237 g on 92.90304 m2 = 4.8824 g/m2.
KEPT = (
    "work,date,lawn,grass,area,product,amount,nitrogen_percent\r\n"
    'feed,2026-09-20,TL-014,kikuyu,240 m2,"Made, up ""feed""",2.4 kg,20 %\r\n'
    "feed,2026-03-01,TL-014,kikuyu,240 m2,Made-up feed,5 kg,21 %\r\n"
    "feed,2026-10-20,TL-014,kikuyu,240 m2,Liquid,2 L,20 %\r\n"
    "spray,2026-10-21,TL-014,kikuyu,240 m2,Made-up spray,20 mL,\r\n"
    "feed,2025-10-20,TL-002,couch,1000 ft2,Made-up feed,10 lb,10 %\r\n"
)


@pytest.fixture
def kept(tmp_path: Path) -> Path:
    file = tmp_path / "kept.csv"
    file.write_text(KEPT, encoding="utf-8", newline="")
    return file


def run(*words: object) -> tuple[int, str, str]:
    done = CliRunner().invoke(main, ["record", "--book", str(ROOT), *map(str, words)])
    return done.exit_code, done.stdout, done.stderr


def test_a_lawns_year_adds_up(kept: Path) -> None:
    code, said, _ = run(kept, "--json")
    first, second = json.loads(said)["lawns"]
    assert code == 0
    assert (first["lawn"], first["year"], second["lawn"], second["year"]) == ("TL-002", 2025, "TL-014", 2026)
    assert first["nitrogen"]["value"] == pytest.approx(4.8824, abs=5e-5)
    assert second["nitrogen"] == {"value": pytest.approx(6.375, abs=1e-9), "unit": "g/m2"}
    assert (second["feeds"], second["against_range"]) == (2, "within")
    assert [each["line"] for each in second["not_counted"]] == [4]


@pytest.mark.parametrize(("amount", "verdict", "words"), [
    ("20 kg", "over", "more than it is usually given"), ("1 kg", "under", "less than it is usually given"),
    ("9 kg", "within", "within what it is usually given"),
])  # fmt: skip
def test_too_much_and_too_little_feed_are_seen(kept: Path, amount: str, verdict: str, words: str) -> None:
    """20 kg of 25 % on 100 m2 is 50 g/m2, more than any source gives couch in a year; 1 kg is 2.5, less than any; 9 kg is 22.5."""
    kept.write_text(f"{KEPT.splitlines()[0]}\r\nfeed,2026-10-20,TL-002,couch,100 m2,Made-up feed,{amount},25 %\r\n", encoding="utf-8", newline="")
    assert json.loads(run(kept, "--json")[1])["lawns"][0]["against_range"] == verdict
    assert words in run(kept)[1]


def test_a_wrong_row_ends_it_with_its_place(kept: Path) -> None:
    kept.write_text(KEPT.replace("2026-03-01", "1 March"), encoding="utf-8", newline="")
    code, said, told = run(kept)
    assert (code, said) == (1, "")
    assert told.startswith("kept.csv:3:6: '1 March' is not a date; ")
