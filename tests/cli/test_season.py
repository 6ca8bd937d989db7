"""`swardbook season`: the computed year at the terminal and as JSON."""

import json
import re
import shutil
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from generator.cli import main
from tests.book_folders import SMALLEST

MONTH_DAY = re.compile(r"^(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$")
SITES = ("open", "wall", "hollow", "shade", "exposed")
# name: least and most of one week anywhere on earth (our limits, wide on purpose)
RANGES = {
    "mean_temperature_c": (-40, 45),
    "growth_potential": (0, 1),
    "growth_share": (0, 1),
    "frost_probability": (0, 1),
    "reference_evapotranspiration_mm": (0, 105),
    "rain_mm": (0, 500),
    "water_need_mm": (0, 105),
}


def season(*arguments: str) -> Result:
    return CliRunner().invoke(main, ["season", "--book", str(SMALLEST), *arguments])


@pytest.fixture(scope="module")
def year() -> dict[str, Any]:
    run = season("plaingrass", "flatfield", "--json")
    assert run.exit_code == 0, run.output
    return json.loads(run.stdout)


def test_the_year_says_what_it_is_of(year: dict[str, Any]) -> None:
    assert (year["grass"], year["place"], year["site"]) == ("plaingrass", "flatfield", "open")


def test_the_weeks_cover_the_year(year: dict[str, Any]) -> None:
    """52 weeks from 1 January on, seven days apart; 52 x 7 = 364, so the last one is a day or two longer."""
    weeks = year["weeks"]
    assert [week["week"] for week in weeks] == list(range(1, 53))
    assert [week["from"] for week in weeks] == [f"{date(2025, 1, 1) + timedelta(days=7 * number):%m-%d}" for number in range(52)]


@pytest.mark.parametrize("name", RANGES)
def test_each_number_of_a_week_is_possible(year: dict[str, Any], name: str) -> None:
    least, most = RANGES[name]
    assert all(least <= week[name] <= most for week in year["weeks"])


def test_windows_name_their_days_and_their_reasons(year: dict[str, Any]) -> None:
    assert {"renovation", "overseeding"} <= set(year["windows"])
    for kind, windows in year["windows"].items():
        assert windows or year["why_none"][kind]
        for window in windows:
            assert {"from", "best", "to", "why"} <= set(window)
            assert all(MONTH_DAY.match(window[edge]) for edge in ("from", "best", "to"))
            assert len(window["why"]) > 20


def test_a_warm_season_grass_of_the_south_is_renovated_in_its_warm_half(year: dict[str, Any]) -> None:
    """Flatfield lies at 34 degrees south and is warmest in January: no window may stand open in its winter."""
    for window in year["windows"]["renovation"]:
        assert window["best"][:2] in ("09", "10", "11", "12", "01", "02", "03")


def test_text_fits_a_terminal_of_100_columns() -> None:
    run = season("plaingrass", "flatfield")
    assert run.exit_code == 0
    assert run.stdout.startswith("Plaingrass at Flatfield, open\n")
    assert max(len(line) for line in run.stdout.splitlines()) <= 100
    assert "Renovation:" in run.stdout
    assert sum(bool(re.match(r"^ *\d+  \d\d-\d\d ", line)) for line in run.stdout.splitlines()) == 52


@pytest.mark.parametrize("site", SITES)
def test_each_site_has_a_year_of_its_own(site: str) -> None:
    run = season("plaingrass", "flatfield", "--site", site, "--json")
    assert run.exit_code == 0, run.output
    assert json.loads(run.stdout)["site"] == site


def test_a_hollow_freezes_more_than_a_wall() -> None:
    def frost(site: str) -> float:
        weeks = json.loads(season("plaingrass", "flatfield", "--site", site, "--json").stdout)["weeks"]
        return sum(week["frost_probability"] for week in weeks)

    assert frost("hollow") > frost("open") > frost("wall")


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["plaingras", "flatfield"], "no grass 'plaingras'; did you mean 'plaingrass'?"),
        (["plaingrass", "flatfeild"], "no place 'flatfeild'; did you mean 'flatfield'?"),
        (["plaingrass", "flatfield", "--site", "holow"], "no site 'holow'; did you mean 'hollow'?"),
        (["plaingrass", "atlantis"], "no place 'atlantis'; there are flatfield"),
    ],
)
def test_a_name_that_is_not_there_is_a_usage_error_with_the_nearest_one(arguments: list[str], said: str) -> None:
    run = season(*arguments)
    assert run.exit_code == 2
    assert said in run.stderr
    assert run.stdout == ""


def observed(folder: Path, last: date, warmer_c: float) -> str:
    """Days from 1 May of a year to a day of it at Flatfield, so many degrees warmer than 16 and 6."""
    day, lines = date(last.year, 5, 1), ["date,tmax,tmin,rain"]
    while day <= last:
        lines.append(f"{day},{16 + warmer_c},{6 + warmer_c},1")
        day += timedelta(days=1)
    (folder / "days.csv").write_text("\n".join(lines), encoding="utf-8")
    return str(folder / "days.csv")


def test_a_year_that_is_measured_so_far_says_until_when_and_what_it_moves(tmp_path: Path, year: dict[str, Any]) -> None:
    file = observed(tmp_path, date(2025, 10, 20), 9)
    run = season("plaingrass", "flatfield", "--observed", file)
    assert run.exit_code == 0, run.output
    assert "Measured to 20 October 2025, usual weather after that." in run.stdout and "earlier than usual" in run.stdout
    # What was guessed of the file goes beside the answer, not into it.
    assert "days.csv" in run.stderr and "days.csv" not in run.stdout
    told = json.loads(season("plaingrass", "flatfield", "--observed", file, "--json").stdout)
    so_far = told["observed"]
    assert (so_far["version"], so_far["until"]) == (1, "2025-10-20")
    assert so_far["so_far"]["mean_temperature"]["measured"] == pytest.approx(20) and so_far["so_far"]["rain"]["unit"] == "mm"
    assert so_far["weeks_measured"][40] == "whole" and so_far["weeks_measured"][47] == "none"
    warmer = [this["mean_temperature_c"] - usual["mean_temperature_c"] for this, usual in zip(told["weeks"], so_far["usual_weeks"], strict=True)]
    assert warmer[38] > 2 and warmer[50] == pytest.approx(0, abs=0.11)
    assert "observed" not in year


def test_the_book_s_own_record_is_taken_unless_the_usual_year_is_asked_for(tmp_path: Path) -> None:
    shutil.copytree(SMALLEST, tmp_path / "book")
    usual = CliRunner().invoke(main, ["season", "--book", str(tmp_path / "book"), "plaingrass", "flatfield"]).stdout
    (tmp_path / "book/observed").mkdir()
    shutil.copy(observed(tmp_path, date(2025, 10, 20), 9), tmp_path / "book/observed/flatfield.csv")
    measured, plain = (
        CliRunner().invoke(main, ["season", "--book", str(tmp_path / "book"), "plaingrass", "flatfield", *words]).stdout for words in ((), ("--usual",))
    )
    assert "Measured to 20 October 2025" in measured and plain == usual


def test_a_record_that_is_wrong_is_told_and_nothing_is_worked_out(tmp_path: Path) -> None:
    (tmp_path / "days.csv").write_text("date,tmax,tmin\n2025-13-01,20,10\n2025-10-02,x,10\n", encoding="utf-8")
    run = season("plaingrass", "flatfield", "--observed", str(tmp_path / "days.csv"))
    assert run.exit_code == 1 and run.stdout == ""
    assert "days.csv:2:1: '2025-13-01' is no day of the calendar" in run.stderr and "days.csv:3:12: 'x' is not a number" in run.stderr
