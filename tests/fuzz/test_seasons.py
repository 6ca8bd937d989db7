"""However far the figures of the season engine are stretched within what a book may say, each year comes out, and every number of it is one."""

import json
from math import cos, pi
from random import Random

import pytest

from generator.book.book import Book
from generator.book.fields.sourced import ASSUMPTION, Figure, Measured, Record
from generator.book.fields.walk import measured
from generator.book.records.practice import SeasonGroups
from generator.checks import check_book
from generator.files.season_json import as_json
from generator.season.climate.climate_faults import COLDEST_C, HOTTEST_C, climate_faults
from generator.season.inputs import climate_of, engine_rules_of, grass_season_of
from generator.season.year import SeasonYear, year
from tests.book_folders import WHOLE


@pytest.fixture(scope="module")
def book() -> Book:
    return check_book(WHOLE).book


def figure(asked: Measured, draw: Random) -> Figure:
    between = asked.lowest + (asked.highest - asked.lowest) * draw.random()
    return Figure(use=draw.choice((asked.lowest, asked.highest, between)), unit=asked.unit, source=ASSUMPTION)


def stretched_groups(groups: SeasonGroups, share: float, draw: Random) -> SeasonGroups:
    def stretched(figures: Record) -> Record:
        asked = {name: measured(figures, name) for name in type(figures).model_fields}
        return figures.model_copy(update={name: figure(each, draw) for name, each in asked.items() if each and draw.random() < share})

    sites = {site: stretched(offsets) for site, offsets in groups.sites.items()}
    return groups.model_copy(update={"sites": sites, **{name: stretched(getattr(groups, name)) for name in ("rules", "warm", "cool")}})


def odd_climate(draw: Random) -> dict:
    """Twelve months of a planet somewhere between what was ever measured; None where a place need not say."""
    mean, swing, gap = draw.choice((-90, -40, 0, 20, 45)), draw.choice((0, 5, 60)), draw.choice((0, 0.1, 20))
    highs = tuple(min(max(mean + swing * cos(pi * month / 6), COLDEST_C), HOTTEST_C) for month in range(12))
    return {
        "mean_maximum_c": highs, "mean_minimum_c": tuple(max(high - gap, COLDEST_C) for high in highs),
        "rain_mm": tuple(draw.choice((0.0, 50.0, 5000.0)) for _ in range(12)), "temperature_step_c": draw.choice((1e-6, 0.1, 1.0)),
        "frost_days": draw.choice((None, (0.0,) * 12, (28.0,) * 12)), "cold_days_at_or_below_2c": draw.choice((None, (28.0,) * 12)),
        "minimum_standard_deviation_c": draw.choice((None, (1e-6,) * 12, (40.0,) * 12)),
        "sunshine_h_per_day": draw.choice((None, (0.0,) * 12)), "relative_humidity_3pm_percent": draw.choice((None, (1e-6,) * 12, (100.0,) * 12)),
    }  # fmt: skip


def stretched_year(book: Book, seed: int) -> SeasonYear | None:
    """None for a climate that a check refuses."""
    draw = Random(seed)
    groups, place = stretched_groups(book.season_groups, draw.choice((0.03, 0.2, 1)), draw), book.places["flatfield"]
    if draw.random() < 0.5:
        place = place.model_copy(update={
            "normals": place.normals.model_copy(update=odd_climate(draw)), "elevation_m": draw.choice((None, -430.0, 6000.0)),
            "latitude_deg": draw.choice((-90.0, -67.0, -34.0, 0.0, 1e-6, 66.6, 90.0)),
        })
        if climate_faults(place.normals, place.latitude_deg):
            return None
    id, grass = draw.choice(list(book.grasses.items()))
    if draw.random() < 0.3:
        asked = {name: measured(grass, name) for name in ("recovery", "mowing_height", "nitrogen_per_year")}
        grass = grass.model_copy(update={name: figure(each, draw) for name, each in asked.items()})
    rules = engine_rules_of(groups, book.tasks)
    return year(climate_of(place), grass_season_of(id, grass, groups), rules.sites[draw.choice(list(rules.sites))], rules)


def computed(book: Book, seeds: range) -> None:
    years = [found for seed in seeds if (found := stretched_year(book, seed))]
    for each in years:
        json.dumps(as_json(each), allow_nan=False)
    print(f"\n{len(years)} stretched years of {len(seeds)}; the others have a climate that is refused")
    assert len(years) > len(seeds) / 2


def test_a_stretched_year_comes_out(book: Book) -> None:
    computed(book, range(15))


@pytest.mark.soak
def test_many_a_stretched_year_comes_out(book: Book) -> None:
    computed(book, range(5000))


def test_what_heals_at_once_has_a_best_day(book: Book) -> None:
    """A share of 0 for light work leaves no day of recovery to take a mean over."""
    at_once = book.season_groups.model_copy(update={
        "rules": book.season_groups.rules.model_copy(update={"light_recovery_share": Figure(use=0, unit="1", source=ASSUMPTION)}),
    })
    rules = engine_rules_of(at_once, book.tasks)
    for id, grass in book.grasses.items():
        found = year(climate_of(book.places["flatfield"]), grass_season_of(id, grass, at_once), rules.sites["open"], rules)
        assert found.light_renovation.windows or found.light_renovation.why_none


def test_half_a_degree_beyond_the_coldest_is_the_coldest(book: Book) -> None:
    """Whole degrees leave half a degree of doubt, also where no colder month was ever measured."""
    place = book.places["flatfield"]
    coldest = dict.fromkeys(("mean_maximum_c", "mean_minimum_c"), (COLDEST_C,) * 12)
    cold = place.model_copy(update={"normals": place.normals.model_copy(update={**coldest, "temperature_step_c": 1.0, "frost_days": (28.0,) * 12})})
    rules = engine_rules_of(book.season_groups, book.tasks)
    for id, grass in book.grasses.items():
        assert year(climate_of(cold), grass_season_of(id, grass, book.season_groups), rules.sites["open"], rules).renovation.why_none
