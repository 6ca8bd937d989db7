"""The compact years of a page: small, whole, and true to the full ones."""

import gzip
import json

import pytest

from generator.turf.season_json import as_json
from generator.turf.site_years import site_years
from tests.turf.shipped import COUCH, FESCUE, GRASSES, KIKUYU, rules, season


def years(grass, place) -> dict:
    seasons = {site: season(grass, place, site) for site in rules().sites}
    return site_years(seasons, rules().soils, None, rules().feed, (21, 60))


@pytest.mark.parametrize("place", ["sydney", "canberra", "armidale", "dubbo", "dallas", "darwin"])
@pytest.mark.parametrize("grass", GRASSES, ids=lambda grass: grass.id)
def test_five_sites_and_four_soils_fit_in_fifteen_kilobytes(grass, place):
    packed = gzip.compress(json.dumps(years(grass, place), separators=(",", ":"), ensure_ascii=False).encode())
    assert len(packed) <= 15_000


def test_a_site_has_a_letter_or_a_number_for_every_week():
    for site, year in years(COUCH, "canberra").items():
        assert {len(value) for value in year.values() if isinstance(value, str)} == {52}, site
        for name in ("mean", "maximum", "minimum", "potential", "frost_percent", "rain", "evapotranspiration", "need", "mowing"):
            assert len(year[name]) == 52 and all(isinstance(value, int) for value in year[name]), name
        assert set(year["growth"]) <= set("dsgp") and set(year["frost"] + year["wet"]) <= set("01")
        assert set(year["soils"]) == {"loam", "sand", "clay", "water-repellent"}


@pytest.mark.parametrize("grass", [COUCH, FESCUE, KIKUYU], ids=lambda grass: grass.id)
def test_it_says_what_the_full_year_says(grass):
    compact, full = years(grass, "auckland")["open"], as_json(season(grass, "auckland"))
    for kind, windows in full["windows"].items():
        assert [each[:4] for each in compact["windows"][kind]] == [[w["from"], w["best"], w["to"], w["why"]] for w in windows]
        for each, window in zip(compact["windows"][kind], windows):
            edge = window["edges"]["from"]
            assert each[4] == ([edge["earliest"], edge["latest"]] if edge["undecided"] else None)
    assert compact["none"] == full["why_none"]
    assert {name: [e["from"], e["to"], e["why"]] for name, e in full["events"].items()} == compact["events"]
    assert [round(value / 10, 1) for value in compact["mean"]] == [week["mean_temperature_c"] for week in full["weeks"]]


def test_sites_differ_where_it_matters():
    found = years(COUCH, "canberra")
    assert found["wall"]["windows"]["renovation"][0][0] < found["hollow"]["windows"]["renovation"][0][0]
    assert found["hollow"]["frost"].count("1") > found["wall"]["frost"].count("1")
