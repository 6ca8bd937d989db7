"""One soil reading on the first of a month, in real years that are held back: it tells the opening better than the usual dates, on average.

`pytest -s` prints the errors. Seattle, 2012 to 2015, each year against the normals of the other three. The thermometer is made of the measured
air: each day's departure from the usual, as soil at the engine's depth feels it (Carslaw and Jaeger 1959, section 2.4).
"""

from datetime import date, timedelta
from math import fsum
from statistics import fmean
from typing import Any

from generator.season.inputs import grass_season_of
from generator.season.normals.record_normals import day_number
from generator.season.observed.departures import SOIL_MEMORY_DAYS, felt_after
from generator.season.observed.this_year import move
from generator.season.seen.seen_place import seen_values_of, soil_of
from generator.season.seen.seen_year import SeenNotes, seen_year
from generator.season.year import SeasonYear, year
from tests.our_book import book, seasons
from tests.season.held_years import HeldYear, firsts, seattle_years, told, turns

GRASS = "couch"


def usual_year(held: HeldYear) -> SeasonYear:
    rules = seasons().rules
    return year(held.climate, grass_season_of(GRASS, book().grasses[GRASS], book().season_groups), rules.sites["open"], rules)


def place_of(usual: SeasonYear) -> dict[str, Any]:
    return {**soil_of(usual), "offsets": {"open": 0}, "grasses": {GRASS: {"open": seen_values_of(seasons(), usual)}}}


def reading_c(held: HeldYear, usual: SeasonYear, day: date) -> float:
    """What a thermometer in the soil would have said [°C]."""
    back = [day - timedelta(days=lag) for lag in range(SOIL_MEMORY_DAYS)]
    felt = felt_after(seasons().rules.soil)
    mean = held.record.mean_c
    return usual.climate.soil_c[day_number(day)] + fsum(part * (mean[each] - usual.climate.mean_c[day_number(each)]) for part, each in zip(felt, back) if each in mean)


def test_a_reading_tells_the_opening_better_than_the_usual_dates() -> None:
    errors: list[tuple[int, int]] = []
    rules = seasons().rules
    for held in seattle_years(GRASS):
        start, end = turns(held)
        truth = told(held, end)
        assert truth is not None
        usual = usual_year(held)
        place = place_of(usual)
        for day in firsts(start, end):
            found = seen_year(place, GRASS, "open", SeenNotes(reading_c(held, usual, day), None, day), day, rules.seen, rules.soil)
            opens = usual.renovation.windows[0].first
            moved = next((each.moved[0] for each in found.windows if each.kind == "renovation" and each.usual[0] == opens), opens)
            errors.append((abs(move(moved, (truth[0],)) or 0), abs(move(opens, (truth[0],)) or 0)))
    by_reading, by_the_usual = (fmean(each) for each in zip(*errors))
    print(f"\n{len(errors)} readings: opening told to {by_reading:.1f} days by a reading, {by_the_usual:.1f} days by the usual dates")
    assert len(errors) > 20 and by_reading < by_the_usual - 1
