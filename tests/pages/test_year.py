"""What a calendar page says of a year, in the open and for every other site."""

import json
import re
from typing import Any

import pytest

from generator.calculators.watering import sprinkler_of
from generator.site.year.need_rows import need_rows
from generator.site.year.site_years import slots, soil_slots, year_script
from generator.site.year.year_words import EVENT_LABELS, WINDOW_LABELS, event_lines, little_growth, month_rows, window_lines
from generator.words.reason_text import plain
from tests.our_book import seasons
from tests.pages.shipped_book import pairs


def said(value: Any) -> str:
    """Every word of a text, line or row, metric only."""
    if isinstance(value, str):
        return value
    if isinstance(value, dict):
        return " ".join(said(each) for each in value.values())
    return "".join(each if isinstance(each, str) else said(each) for each in value)


def year_of(grass: str, place: str) -> dict[str, Any]:
    script = year_script(seasons(), grass, place)
    return json.loads(script[script.index(",") + 1 : script.rindex(")")])


def test_a_script_carries_every_site_with_every_soil():
    years = year_of("couch", "canberra")
    assert list(years) == list(seasons().sites) and len(years) == 5
    for year in years.values():
        assert list(year["soils"]) == list(seasons().rules.soils)
        assert all(len(year[name]) == 52 for name in ("growth", "frost", "wet", "renovation", "overseeding"))
        assert all(len(series) == 52 for series in year["series"].values())


def test_sites_differ_as_gardeners_know_them():
    """Cold air lies in a hollow and paving keeps frost off: the frosty weeks are more, and fewer, than in the open."""
    frosty = {site: year["frost"].count("1") for site, year in year_of("couch", "canberra").items()}
    assert frosty["hollow"] > frosty["open"] > frosty["wall"]


@pytest.mark.parametrize("kind", WINDOW_LABELS)
def test_every_kind_of_window_has_its_dates_or_its_reason(kind):
    for grass, place in pairs():
        lines = window_lines(seasons().season(grass, place))[kind]
        assert lines
        for begins, why, *_ in lines:
            assert len(plain(why)) > 20 and plain(why).endswith("."), (grass, place)
            assert begins in ("None.", "Undecided.") or re.search(r"\d (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)|all year", begins)


def test_an_undecided_edge_is_said_in_words_and_whole_degrees_once_on_the_page():
    """Atlanta's normals are published in whole degrees."""
    season = seasons().season("tall-fescue", "atlanta")
    undecided = [window for window in season.renovation.windows if window.undecided_first or window.undecided_last]
    assert undecided
    text = said([text for _, *texts in window_lines(season)["renovation"] for text in texts])
    assert "undecided between" in text and "whole degrees" not in text


def test_a_window_that_half_a_degree_would_give_is_called_undecided():
    """San Diego's normals are published in whole degrees, and its soil at its coldest is at the mark itself."""
    (begins, why, *_), = window_lines(seasons().season("couch", "san-diego"))["pre_emergent"]
    assert begins == "Undecided." and "half a degree cooler would give a window" in plain(why)


def test_no_temperature_is_finer_than_its_source():
    for grass, place in pairs():
        season = seasons().season(grass, place)
        if season.whole_degrees:
            assert not re.search(r"\d\.\d °C", said(slots(season)["chart-temperature"])), place
            # Thresholds are published for the grass; the weather is the place's.
            given = {f"{season.transition_night_c:g} °C", f"{season.rules.dormant_soil_c:g} °C"}
            assert set(re.findall(r"\d+\.\d °C", said(event_lines(season)))) <= given, (grass, place)


def test_little_growth_is_said_where_it_is_little_and_only_there():
    for grass, place in ((grass, place) for grass in seasons().book.grasses for place in seasons().book.offered_places):
        season = seasons().season(grass, place)
        assert bool(little_growth(season)) == (season.growth.best < season.rules.little_growth), (grass, place)
    assert "little" in little_growth(seasons().season("zoysia", "invercargill"))


def test_every_event_is_told_and_those_of_warm_season_turf_for_that_alone():
    warm, cool = (event_lines(seasons().season(grass, "canberra")) for grass in ("couch", "tall-fescue"))
    assert [line[0].split(":")[0] for line in warm] == list(EVENT_LABELS.values())
    assert len(cool) == len(EVENT_LABELS) - 2
    assert not [line for line in warm + cool if not plain(line[1]).endswith(".")]


def test_the_table_of_months_adds_up_to_the_year():
    season = seasons().season("couch", "canberra")
    rain = sum(int(row[4][0][0].replace(" mm", "")) for row in month_rows(season))
    assert rain == pytest.approx(sum(season.climate.rain_mm), abs=6)  # twelve roundings of half a millimetre


def test_nitrogen_by_month_adds_up_to_the_grass_s_year():
    season = seasons().season("couch", "sydney")
    soil = next(iter(seasons().rules.soils.values()))
    rows = need_rows(season, soil, sprinkler_of(seasons().book.calculators))
    total = sum(float(row[1][0][0]) for row in rows if row[1] != "none")
    assert total == pytest.approx(season.grass.nitrogen_g_per_m2[1], abs=0.6)  # twelve roundings of 0.05 g


def test_nitrogen_reads_the_same_in_both_systems():
    """1 lb/1000 ft² is 4.882 g/m²: 0.45359237 kg over 92.90304 m²."""
    season = seasons().season("couch", "sydney")
    soil = next(iter(seasons().rules.soils.values()))
    for row in need_rows(season, soil, None):
        if row[1] != "none":
            metric, us = row[1][0]
            assert float(us) == pytest.approx(float(metric) / 4.882, abs=0.02)


def test_sand_is_watered_less_at_a_time_and_clay_in_spells():
    """Sand holds less than loam. Clay drinks so slowly that a run must rest."""
    season, soils = seasons().season("couch", "perth"), seasons().rules.soils
    text = {id: said(soil_slots(seasons(), season, soil)["watering"]) for id, soil in soils.items()}
    depth = {id: int(re.search(r"One watering is (\d+) mm", words)[1]) for id, words in text.items()}
    assert depth["sand"] < depth["loam"]
    assert "spells" in text["clay"]
    assert text["water-repellent"].startswith("Treat it with a wetting agent")


def test_feeds_are_given_as_nitrogen_and_as_the_practice_s_product():
    """Slow-release granule 21-2-9: nitrogen in g/m² is 10 x 0.21 = 2.1 times the product in kg/100 m²."""
    season = seasons().season("couch", "sydney")
    rows = soil_slots(seasons(), season, next(iter(seasons().rules.soils.values())))["feeds"]["rows"]
    assert len(rows) >= 2
    for row in rows:
        nitrogen, product = (float(cell[0][0].split(" ")[0]) for cell in row[1:])
        assert nitrogen == pytest.approx(2.1 * product, abs=0.15)
