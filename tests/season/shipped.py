"""What the season tests share: the places, rules and grasses of the shipped book, and invented grasses."""

import sys
from dataclasses import fields, replace
from functools import cache

from generator.book.records.place import Place
from generator.book.records.practice import SeasonGroups
from generator.book.records.task import Task
from generator.season.calendar_days import DAYS
from generator.season.climate.climate import Climate
from generator.season.engine_rules import GrassSeason
from generator.season.inputs import EngineRules, climate_of, engine_rules_of
from generator.season.year import SeasonYear, year
from tests.our_book import book


def forget_years() -> None:
    """Whatever the engine keeps of what it worked out is worked out again: every cached function of its rooms."""
    kept = [
        each for name, module in sorted(sys.modules.items()) if name.startswith(("generator.season", "generator.formula"))
        for each in vars(module).values() if hasattr(each, "cache_clear") and each.__module__ == name
    ]
    assert len(kept) > 5
    for each in kept:
        each.cache_clear()


def groups() -> SeasonGroups:
    return book().season_groups


@cache
def rules() -> EngineRules:
    return engine_rules_of(groups(), tasks())


def tasks() -> dict[str, Task]:
    return book().tasks


def places() -> dict[str, Place]:
    """The places that the practice offers: every kind of climate, and few enough to go through for each rule."""
    return book().offered_places


@cache
def climates() -> dict[str, Climate]:
    return {name: climate_of(place) for name, place in places().items()}


# Grasses of the two groups as the book's own are: recovery in the range that the trade gives them.
COUCH = GrassSeason("couch", "warm", 31, 7, True, 4, False, 0.6, 2, 0, True, 10, 25, 4, 0.5, (14.6, 15, 24.4))
KIKUYU = GrassSeason("kikuyu", "warm", 25, 7, True, 4, False, 0.6, 2, 0, True, 10, 30, 4, 0.5, (5, 10, 15))
BUFFALO = GrassSeason("buffalo", "warm", 31, 7, True, 7, True, 0.6, 3.5, 0, False, 10, 50, 4, 0.5, (9.8, 12, 19.5))
FESCUE = GrassSeason("fescue", "cool", 20, 5.5, False, 5, False, 0.8, 2.5, 10, False, 0, 75, 5, 0.4, (9.8, 10, 14.6))
GRASSES = (COUCH, KIKUYU, BUFFALO, FESCUE)


@cache
def season(grass: GrassSeason, place: str | Climate, site: str = "open") -> SeasonYear:
    climate = climates()[place] if isinstance(place, str) else place
    return year(climate, grass, rules().sites[site], rules())


def made_up(maximum, minimum, rain=None, latitude=-35.0, **more) -> Climate:
    """A climate from twelve figures, or from one for every month."""
    twelve = [tuple(v) if isinstance(v, list | tuple) else (v,) * 12 for v in (maximum, minimum, 60 if rain is None else rain)]
    return Climate(latitude, *twelve, **more)


def turned(climate: Climate) -> Climate:
    """The same climate half a year later, on the other side of the equator."""
    def half_a_year_on(monthly):
        return monthly[6:] + monthly[:6]

    monthly = [field.name for field in fields(climate) if isinstance(getattr(climate, field.name), tuple)]
    return replace(
        climate, latitude_deg=-climate.latitude_deg, **{name: half_a_year_on(getattr(climate, name)) for name in monthly}
    )


def apart(day: int, other: int) -> int:
    return min((day - other) % DAYS, (other - day) % DAYS)
