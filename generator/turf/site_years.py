"""The years of a lawn's sites and soils as compact plain values, for a page that switches between them without an engine.

One letter or digit a week where that will do. `as_json` has the full figures of one site.
"""

from collections.abc import Mapping, Sequence

from generator.turf.calendar_days import month_and_day
from generator.turf.events import events
from generator.turf.needs import feed_plan, mowing_intervals, nitrogen_by_month
from generator.turf.rules import FeedRules, SoilWater
from generator.turf.season import SeasonYear, Week
from generator.turf.watering import Sprinkler, days_between, watering
from generator.turf.windows import Window

CLASS_LETTERS = {"dormant": "d", "slow": "s", "growing": "g", "peak": "p"}
YES, NO = "1", "0"
NEVER = 0


def site_year(season: SeasonYear) -> dict:
    """One site's year.

    growth: 52 letters, dormant d, slow s, growing g, peak p. frost, wet: 52 of 1 and 0. Lists of 52 whole numbers: mean,
    maximum and minimum (tenths of °C), potential and frost_percent (per cent), rain, evapotranspiration and need (tenths of
    mm a week), mowing (days between cuts, 0 where nothing grows or the book has no rule). windows: per kind a list of [from,
    best, to, why] with dates MM-DD, the main one first, and after them [earliest, latest] of each edge that is undecided,
    or null. none: per kind without a window, the reason. events: per event [from, to, why], dates null where it does not happen.
    """
    weeks = season.weeks
    share = season.largest_share_removed
    mowing = mowing_intervals(season, share) if share is not None else [None] * len(weeks)
    return {
        "growth": "".join(CLASS_LETTERS[week.growth_class] for week in weeks),
        "frost": "".join(YES if week.frosty else NO for week in weeks),
        "wet": "".join(YES if week.wet else NO for week in weeks),
        "mean": _temperatures(season, "mean_temperature_c"),
        "maximum": _temperatures(season, "maximum_temperature_c"),
        "minimum": _temperatures(season, "minimum_temperature_c"),
        "potential": [round(100 * week.growth_potential) for week in weeks],
        "frost_percent": [round(100 * week.frost_probability) for week in weeks],
        "rain": _tenths(weeks, "rain_mm"),
        "evapotranspiration": _tenths(weeks, "reference_evapotranspiration_mm"),
        "need": _tenths(weeks, "water_need_mm"),
        "mowing": [NEVER if days is None else round(days) for days in mowing],
        "windows": {kind: [_window(window) for window in found.windows] for kind, found in season.windows.items()},
        "none": {kind: found.why_none for kind, found in season.windows.items() if found.why_none},
        "events": {name: [_day(event.first), _day(event.last), event.why] for name, event in events(season).items()},
    }


def soil_year(season: SeasonYear, soil: SoilWater, sprinkler: Sprinkler | None, feed: FeedRules, product: tuple[float, float | None]) -> dict:
    """What one soil changes in a site's year.

    product: its nitrogen, and how much of that is slow release [%, %]. depth_mm of one watering; gaps: 52 whole numbers, days
    between waterings, 0 where rain is enough; run_time_min, spells, spell_min, rest_min as `Watering` has them; feeds: [MM-DD,
    nitrogen g/m², product kg/100 m²] each; why of both, and `first`, what to do before. Ours: the shape; figures from `watering`
    and `feed_plan`.
    """
    one = watering(season, soil, sprinkler)
    plan = feed_plan(season, soil, feed, *product)
    return {
        "name": soil.name, "first": soil.first,
        "depth_mm": round(one.depth_mm, 1),
        "gaps": [NEVER if days is None else days for days in days_between(season, one.depth_mm)],
        "run_time_min": _rounded(one.run_time_min), "spells": one.spells,
        "spell_min": _rounded(one.spell_min), "rest_min": _rounded(one.rest_min), "why_water": one.why,
        "feeds": [[month_and_day(each.day), round(each.nitrogen_g_per_m2, 1), round(each.product_kg_per_100_m2, 2)] for each in plan.feeds],
        "why_feeds": plan.why,
    }


def site_years(
    seasons: Mapping[str, SeasonYear], soils: Mapping[str, SoilWater], sprinkler: Sprinkler | None, feed: FeedRules,
    product: tuple[float, float | None],
) -> dict:
    """Every site with its year, its soils, and its nitrogen by month [g/m²: least, usual, most].

    seasons: one grass at one place, by site. product: as for `soil_year` [%, %]. Under 15 kB compressed for five sites and four
    soils. Ours: the shape.
    """
    return {
        site: {
            **site_year(season),
            "nitrogen": [[round(month, 2) for month in months] for months in nitrogen_by_month(season)],
            "soils": {id: soil_year(season, soil, sprinkler, feed, product) for id, soil in soils.items()},
        }
        for site, season in seasons.items()
    }


def _temperatures(season: SeasonYear, name: str) -> list[int]:
    """Tenths of a degree, whole degrees where they were printed so."""
    step = 10 if season.temperature_step_c >= 1 else 1
    return [step * round(10 * getattr(week, name) / step) for week in season.weeks]


def _tenths(weeks: Sequence[Week], name: str) -> list[int]:
    return [round(10 * getattr(week, name)) for week in weeks]


def _rounded(minutes: float | None) -> int | None:
    return None if minutes is None else round(minutes)


def _day(day: int | None) -> str | None:
    return None if day is None else month_and_day(day)


def _window(window: Window) -> list:
    return [
        month_and_day(window.first), month_and_day(window.best), month_and_day(window.last), window.why,
        *(None if edge is None else [month_and_day(day) for day in edge] for edge in (window.undecided_first, window.undecided_last)),
    ]
