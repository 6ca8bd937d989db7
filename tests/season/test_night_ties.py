"""How alike one night is to the next, by a place's climate, against records it was and was not fitted to."""

import csv
from dataclasses import replace
from pathlib import Path
from statistics import fmean

import pytest

from generator.season.climate.frost_margin import CLOSEST_TIE, night_to_night
from tests.season.frost_stations import halves, stations, yearly_range
from tests.season.shipped import climates, made_up, rules

# Correlations of 48 stations, (c) Commonwealth of Australia, Bureau of Meteorology, derived by this project; and of five whole records elsewhere.
TIES = Path(__file__).parent / "night-to-night.csv"
# What the daily record of Seattle gives.
SEATTLE = 0.69


def ties():
    """Station -> its record, yearly swing of the mean minimum and daily swing of the cold months [K], and correlation of a night with the next."""
    with TIES.open(encoding="utf-8") as lines:
        rows = list(csv.DictReader(line for line in lines if not line.startswith("#")))
    return {row["station"]: (row["record"], *(float(row[name]) for name in ("yearly_swing_k", "daily_swing_k", "correlation"))) for row in rows}


def tie_of_swings(yearly: float, daily: float, **changed: float) -> float:
    """What the rule makes of a place whose nights and days swing so far."""
    lows = [yearly * share / 11 for share in range(12)]
    return night_to_night(made_up([low + daily for low in lows], lows), replace(rules().frost, **changed))


def off(names, rule) -> float:
    """Root mean square of the rule's error at these stations."""
    return fmean((rule(*ties()[name][1:3]) - ties()[name][3]) ** 2 for name in names) ** 0.5


def knowing_frost(names):
    """Stations that see 2 °C or less on a night a year or more."""
    return [name for name in names if sum(month[3] for month in stations()[name]) >= 1]


def test_the_tie_of_nights_is_the_best_of_the_fitted_half():
    fitted = knowing_frost(halves()[0])
    best = min((off(fitted, lambda yearly, daily, n=n: tie_of_swings(yearly, daily, night_to_night=n / 200)), n / 200) for n in range(60, 160))[1]
    assert len(fitted) == 16 and rules().frost.night_to_night == pytest.approx(best, abs=0.0051)
    assert all(ties()[name][1] == pytest.approx(yearly_range(stations()[name]), abs=0.051) for name in fitted)


@pytest.mark.parametrize(
    ("names", "most"),
    [(knowing_frost(halves()[1]), 0.03), ([name for name, row in ties().items() if row[0] == "whole"], 0.06)],
    ids=["Australian stations not fitted", "whole records elsewhere"],
)
def test_the_tie_of_nights_where_it_was_not_fitted(names, most, capsys):
    # Against it: the mean of the fitted stations everywhere, and Seattle's everywhere.
    usual = fmean(ties()[name][3] for name in knowing_frost(halves()[0]))
    found, by_usual, by_seattle = (off(names, rule) for rule in (tie_of_swings, lambda *_: usual, lambda *_: SEATTLE))
    with capsys.disabled():
        print(f" night to night, {len(names)} stations: off by {found:.3f}; the mean of those fitted by {by_usual:.3f}, Seattle's by {by_seattle:.3f} ", end="")
    assert len(names) >= 5 and found <= most and found < 0.5 * by_usual


def test_no_place_has_nights_more_alike_than_any_record():
    assert max(row[3] for row in ties().values()) < CLOSEST_TIE
    assert tie_of_swings(40, 1) == CLOSEST_TIE and tie_of_swings(0, 8) == 0
    assert all(0.3 < night_to_night(climate, rules().frost) <= CLOSEST_TIE for climate in climates().values())
