"""Frost nights against the record, and what the chance of any frost means."""

import csv
from pathlib import Path
from statistics import fmean

import pytest

from generator.turf.calendar_days import DAYS
from generator.turf.climate import OPEN
from generator.turf.frost import Frost, frost
from tests.turf.shipped import COUCH, climates, made_up, rules, season

# Monthly figures of 48 stations; (c) Commonwealth of Australia, Bureau of Meteorology, derived by this project.
STATIONS = Path(__file__).parent / "frost-stations.csv"


def stations():
    """Station -> twelve (mean minimum, standard deviation, frost nights), in the order in which they were split for the fit."""
    found = {}
    with STATIONS.open(encoding="utf-8") as lines:
        for row in csv.DictReader(line for line in lines if not line.startswith("#")):
            found.setdefault(row["station"], []).append(
                (float(row["mean_minimum_c"]), float(row["standard_deviation_c"]), float(row["frost_days"]))
            )
    return {name: found[name] for name in sorted(found)}


def halves():
    names = list(stations())
    return names[::2], names[1::2]


def yearly_range(months):
    return max(m[0] for m in months) - min(m[0] for m in months)


def test_the_spread_rule_is_the_least_squares_line_of_the_fitted_half():
    # Ordinary least squares of standard deviation on yearly range, months with a mean minimum up to 12 °C.
    points = [
        (yearly_range(stations()[name]), deviation)
        for name in halves()[0] for low, deviation, _ in stations()[name] if low <= 12
    ]
    x, y = fmean(p[0] for p in points), fmean(p[1] for p in points)
    slope = sum((a - x) * (b - y) for a, b in points) / sum((a - x) ** 2 for a, _ in points)
    assert rules().frost.spread_per_range == pytest.approx(slope, abs=0.0005)
    assert rules().frost.spread_base_k == pytest.approx(y - slope * x, abs=0.005)


def test_frost_nights_on_stations_not_fitted(capsys):
    fitted, held = halves()
    usual = [fmean(stations()[name][month][2] for name in fitted) for month in range(12)]
    errors, zero, by_usual = [], [], []
    for name in held:
        months = stations()[name]
        climate = made_up([low + 12 for low, _, _ in months], [low for low, _, _ in months])
        nights = frost(climate, OPEN, rules().soil, rules().frost).nights_per_month()
        for month, (_, _, seen) in enumerate(months):
            if seen > 0:
                errors.append(abs(nights[month] - seen))
                zero.append(seen)
                by_usual.append(abs(usual[month] - seen))
    with capsys.disabled():
        print(
            f" frost nights a month, {len(errors)} months of {len(held)} stations not fitted: mean absolute error "
            f"{fmean(errors):.2f}, always zero {fmean(zero):.2f}, mean of the fitted stations {fmean(by_usual):.2f} ", end="",
        )
    assert fmean(errors) <= 1.5
    assert fmean(errors) < 0.5 * fmean(zero)
    assert fmean(errors) < 0.5 * fmean(by_usual)


@pytest.mark.parametrize("name", [name for name, climate in climates().items() if climate.frost_days is not None])
def test_published_frost_nights_are_matched(name):
    # Printed to 0.1, so a printed 0.0 is anything under 0.05.
    nights = frost(climates()[name], OPEN, rules().soil, rules().frost).nights_per_month()
    assert nights == pytest.approx(climates()[name].frost_days, abs=0.06)


def test_ground_frost_is_never_rarer_than_air_frost():
    for name, climate in climates().items():
        air, ground = (frost(climate, OPEN, rules().soil, rules().frost, ground=flag) for flag in (False, True))
        assert all(g >= a - 1e-9 for a, g in zip(air.nights_per_month(), ground.nights_per_month())), name


def test_a_hollow_has_more_frost_and_a_wall_less():
    nights = {site: sum(season(COUCH, "canberra", site).air_frost.nights_per_month()) for site in ("hollow", "open", "wall")}
    assert nights["hollow"] > nights["open"] > nights["wall"]


def test_no_frost_in_the_tropics():
    year = season(COUCH, "darwin")
    assert max(year.air_frost.chance) < 1e-6
    assert year.last_frost_day(0.1) is None and year.first_frost_day(0.1) is None


def test_chance_of_any_frost_by_hand():
    # Two nights at 0.2, runs beginning with 0.1 each: 1 - exp(-(0.2 + 0.1)) = 0.2592.
    one = Frost(chance=(0.2,) * DAYS, onset=(0.1,) * DAYS)
    assert one.chance_of_any(364, 2) == pytest.approx(0.2592, abs=0.0001)
    assert one.chance_of_any(10, 0) == 0


def test_frost_in_runs_is_likelier_to_be_missed_than_independent_nights():
    # With correlation 0 every night begins its own run as often as chance has it: onset = p (1 - p).
    from dataclasses import replace

    climate = climates()["canberra"]
    free = frost(climate, OPEN, rules().soil, replace(rules().frost, night_to_night=0.0))
    assert free.onset == pytest.approx([p * (1 - p) for p in free.chance], abs=0.002)
    tied = frost(climate, OPEN, rules().soil, rules().frost)
    assert all(a <= b + 1e-9 for a, b in zip(tied.onset, free.onset))


def test_runs_of_frost_err_towards_caution(capsys):
    # Seattle 2012-2015, public-domain daily record: 88 frost nights in 28 runs, 22 nights and 7.0 runs a year. Mean minima
    # and frost nights by month are of those four years; the maxima do not enter.
    minima = [2.7, 4.1, 4.9, 6.4, 9.6, 12.2, 14.2, 14.8, 12.4, 9.4, 4.7, 3.3]
    climate = made_up([low + 8 for low in minima], minima, latitude=47.45,
                      frost_days=(7.75, 2.5, 1.75, 0, 0, 0, 0, 0, 0, 0, 4.5, 5.5))
    found = frost(climate, OPEN, rules().soil, rules().frost)
    runs, independent = sum(found.onset), sum(p * (1 - p) for p in found.chance)
    with capsys.disabled():
        print(f" frost runs a year, Seattle: record 7.0, this {runs:.1f}, independent nights {independent:.1f} ", end="")
    assert sum(found.nights_per_month()) == pytest.approx(22, abs=0.3)
    # Fewer runs than the record would call a late frost rarer than it is; as many as independent nights, far likelier.
    assert 7.0 <= runs < (7.0 + independent) / 2


def test_last_and_first_frost_bracket_the_summer():
    year = season(COUCH, "canberra")
    summer = year.climate.hottest_day
    last, first = year.last_frost_day(0.1), year.first_frost_day(0.1)
    assert (summer - last) % DAYS < DAYS // 2 and (first - summer) % DAYS < DAYS // 2
    # A smaller risk is passed later in spring and met earlier in autumn.
    assert (summer - year.last_frost_day(0.5)) % DAYS > (summer - last) % DAYS
    assert (year.first_frost_day(0.5) - summer) % DAYS > (first - summer) % DAYS
