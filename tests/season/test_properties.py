"""What must hold of any place: the other hemisphere, warmth, frost, and the order of the files."""

import json
import shutil
from dataclasses import replace
from math import cos, pi

import pytest
import yaml
from click.testing import CliRunner
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.cli import main
from generator.files.season_json import as_json
from generator.season.calendar_days import DAYS
from generator.season.windows.limits import frost_days_watched
from tests.book_folders import WHOLE
from tests.season.shipped import BUFFALO, COUCH, GRASSES, apart, climates, forget_years, made_up, season, turned
from tests.slices import every
from tests.yaml_files import read_yaml

HALF_A_YEAR = 182


def half_a_year_from(day: int) -> int:
    return (day + HALF_A_YEAR) % DAYS


@pytest.mark.parametrize("place", every(5, climates()))
def test_temperature_alone_is_the_same_half_a_year_later_within_three_days(place):
    # January to June have 181 days, July to December 184, so half a year on is 182 days give or take.
    here, there = season(COUCH, place), season(COUCH, turned(climates()[place]))
    assert apart(here.climate.hottest_day, half_a_year_from(there.climate.hottest_day)) <= 3
    for name in ("green_up_day", "transition_day"):
        one, other = getattr(here, name), getattr(there, name)
        assert (one is None) == (other is None), name
        assert one is None or apart(one, half_a_year_from(other)) <= 3, name
    assert (here.dormancy is None) == (there.dormancy is None)
    for one, other in zip(here.dormancy or (), there.dormancy or ()):
        assert apart(one, half_a_year_from(other)) <= 3
    assert len(here.pre_emergent.windows) == len(there.pre_emergent.windows)
    for one, other in zip(here.pre_emergent.windows, there.pre_emergent.windows):
        assert apart(one.first, half_a_year_from(other.first)) <= 3 and apart(one.last, half_a_year_from(other.last)) <= 3


@pytest.mark.parametrize("place", every(5, climates()))
@pytest.mark.parametrize("grass", GRASSES, ids=lambda grass: grass.id)
def test_windows_are_the_same_half_a_year_later_within_ten_days(place, grass):
    """The sun is 7 % weaker at one end of the year, and rain is held against what it evaporates; what rain bounds differs by more, and what lasts under four
    weeks may fall away."""
    here, there = season(grass, place), season(grass, turned(climates()[place]))
    for kind in here.windows:
        one_kind, other_kind = here.windows[kind].windows, there.windows[kind].windows
        if any("wet season" in names for window in (*one_kind, *other_kind) for names in window.limited_by):
            continue
        for mine, theirs in ((one_kind, other_kind), (other_kind, one_kind)):
            for window in mine:
                if window.days >= 28:
                    assert any(
                        apart(window.first, half_a_year_from(other.first)) <= 10 and apart(window.last, half_a_year_from(other.last)) <= 10
                        for other in theirs
                    ), (kind, window.first, window.last)


@pytest.mark.parametrize("place", every(12, climates()))
@pytest.mark.parametrize("grass", [COUCH, BUFFALO], ids=lambda grass: grass.id)
def test_a_hotter_place_never_sleeps_longer(place, grass):
    climate = climates()[place]
    asleep = []
    for warmer in (0, 0.5, 1, 2, 4):
        hotter = replace(
            climate, mean_maximum_c=tuple(t + warmer for t in climate.mean_maximum_c),
            mean_minimum_c=tuple(t + warmer for t in climate.mean_minimum_c),
        )
        asleep.append(season(grass, hotter).classes.count("dormant"))
    assert asleep == sorted(asleep, reverse=True)


@settings(max_examples=40, deadline=None)
@given(st.floats(-6, 20), st.floats(1, 14), st.floats(0.1, 6))
def test_a_hotter_place_never_has_longer_dormancy(mean, swing, warmer):
    lows = [mean + swing * cos(2 * pi * month / 12) for month in range(12)]

    def dormant_days(shift):
        climate = made_up([low + 11 + shift for low in lows], [low + shift for low in lows])
        return season(COUCH, climate).classes.count("dormant")

    assert dormant_days(warmer) <= dormant_days(0)


@pytest.mark.parametrize("place", every(5, climates()))
@pytest.mark.parametrize("grass", [COUCH, BUFFALO], ids=lambda grass: grass.id)
@pytest.mark.parametrize("site", ["open", "hollow"])
def test_no_window_holds_a_day_that_the_frost_rule_forbids(place, grass, site):
    year = season(grass, place, site)
    risk = year.rules.frost_risk_surface_running if grass.surface_running else year.rules.frost_risk
    for found, weeks in ((year.renovation, grass.recovery_weeks), (year.light_renovation, grass.light_recovery_weeks)):
        days = frost_days_watched(year.rules, round(weeks * 7))
        for window in found.windows:
            inside = ((window.first + ahead) % DAYS for ahead in range(window.days))
            assert max(year.view.frost.chance_of_any(day, days) for day in inside) <= risk


def test_the_order_in_which_years_are_asked_changes_nothing():
    asked = [(grass, place) for grass in GRASSES for place in ("sydney", "chicago", "darwin", "armidale")]
    first = {(grass.id, place): json.dumps(as_json(season(grass, place))) for grass, place in asked}
    forget_years()
    again = {(grass.id, place): json.dumps(as_json(season(grass, place))) for grass, place in reversed(asked)}
    assert first == again


def test_the_order_of_the_files_changes_nothing(tmp_path):
    """The same book, its files written in the opposite order and the keys of its rules turned round."""
    other = tmp_path / "book"
    for file in sorted(WHOLE.rglob("*"), reverse=True):
        if file.is_file():
            target = other / file.relative_to(WHOLE)
            target.parent.mkdir(parents=True, exist_ok=True)
            shutil.copy(file, target)
    groups = other / "data" / "season-groups.yml"
    turned_round = read_yaml(groups)
    for part in ("rules", "sites"):
        turned_round[part] = dict(reversed(turned_round[part].items()))
    groups.write_text(yaml.safe_dump(turned_round, allow_unicode=True, sort_keys=False), encoding="utf-8")

    def asked(book):
        told = {}
        for grass in sorted(file.stem for file in (WHOLE / "data" / "grasses").glob("*.yml")):
            for place in sorted(file.stem for file in (WHOLE / "data" / "places").glob("*.yml")):
                run = CliRunner().invoke(main, ["season", "--book", str(book), grass, place, "--json"])
                assert run.exit_code == 0, run.output
                told[grass, place] = run.stdout
        return told

    assert asked(WHOLE) == asked(other)
