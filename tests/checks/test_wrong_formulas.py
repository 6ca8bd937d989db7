"""Twenty formulas that a tired author might write: each is refused at its line and column, with what would be right."""

import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner

from generator.cli import main
from tests.book_folders import WHOLE, edit

# The sound formula is `area / speed + pause`: m2, m2/h and min come to a time in h, declared in h.
# '@' marks the place: the sign at which two kinds part, or the value or name that does not fit. It is taken out before the check.
WRONG = [
    ("area * speed @+ pause", "cannot add area * speed"),
    ("area / speed @+ area", "a time (min), and area, an area (m2)"),
    ("area / speed @+ 2", "and 2, a plain number"),
    ("area / speed @- area", "cannot subtract"),
    ("area @* speed", "no unit of the book measures that"),
    ("speed @/ area", "the result is declared in h"),
    ("@area", "area is an area (m2), but the result is declared in h"),
    ("area / speed @* pause", "is a quantity in s2"),
    ("area / speed @/ pause", "is a plain number, but the result is declared in h"),
    ("(area / speed) @** 2", "the result is declared in h"),
    ("(area / speed) ** @pause", "an exponent is a plain number"),
    ("@max(area / speed, area)", "max cannot take area / speed, a time (min), and area, an area (m2)"),
    ("min(@pause)", "pause is one value, but min takes a list"),
    ("exp(@area) * pause", "exp needs a plain number, but area is an area (m2)"),
    ("log(@pause) * pause", "log needs a plain number, but pause is a time (min)"),
    ("pause if area @> speed else 2 * pause", "cannot compare area, an area (m2), and speed"),
    ("area / speed @if area > 2 * area else area", "'if' gives area / speed, a time (min), and area, an area (m2)"),
    ("area / speed + ceil(@pause)", "ceil needs a plain number"),
    ("mean(@area) / speed", "area is one value, but mean takes a list"),
    ("mean(area @- area) / speed", "area - area is one value, but mean takes a list"),
    ("area / @sped + pause", "unknown name 'sped'; did you mean 'speed'?"),
    ("area / speed + pause @minutes", "cannot be read at 'minutes'"),
    ("area @^ speed", "'^' has no place in a formula; write '**' for a power"),
    ("sqrt(area) @/ speed", "is a quantity in m-1 s"),
]


@pytest.mark.parametrize(("marked", "words"), WRONG, ids=[formula.replace("@", "") for formula, _ in WRONG])
def test_a_wrong_formula_is_refused_where_it_is_wrong(marked: str, words: str, tmp_path: Path) -> None:
    formula = marked.replace("@", "")
    shutil.copytree(WHOLE, tmp_path / "book")
    edit(tmp_path / "book" / "data" / "calculators" / "sweeping.yml", {"formula: area / speed + pause": f"formula: {formula}"})
    run = CliRunner().invoke(main, ["check", "--book", str(tmp_path / "book")])
    (line,) = run.stdout.splitlines()
    column = len("    formula: ") + 1 + marked.index("@")
    assert line.startswith(f"data/calculators/sweeping.yml:25:{column}: "), line
    assert words in line and "; " in line
    assert run.exit_code == 1


def test_there_are_twenty() -> None:
    assert len({formula for formula, _ in WRONG}) >= 20
