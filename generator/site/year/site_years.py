"""The year of a grass at a place, for each of the lawn's sites and soils: what the page shows and what its script switches to.

One function makes the texts of a site; the page lays out those of open ground and the script carries all, so both say the same.
"""

import json
from collections.abc import Iterable, Mapping
from typing import Any

from generator.book.records.practice import OPEN_SITE, Product
from generator.calculators.watering import Sprinkler, sprinkler_of
from generator.season.engine_rules import SoilWater
from generator.season.season_cache import SeasonCache
from generator.season.year import SeasonYear
from generator.site.page import Links
from generator.site.year.charts import chart_views, series_of
from generator.site.year.need_rows import feed_plan_of, feed_rows, feed_why, need_rows, nitrogen_words, soil_row, sprinkler_text, watering_text
from generator.site.year.strips import BAND_LABELS, band_views, year_sentence
from generator.site.year.year_words import WINDOW_LABELS, chart_sentences, event_lines, month_rows, summary, warned, window_lines

SITE_WORDS = {
    "open": "Open ground", "wall": "By paving or a sunny wall", "hollow": "Low hollow", "shade": "Shade", "exposed": "Exposed to wind",
}
WINDOW_TASKS = {"overseeding": "overseed", "oversowing": "overseed", "pre_emergent": "pre-emergent"}
WINDOW_NOTES = {
    "light_renovation": "A shallow pass one way, coring, a thin sanding; no cutting down.",
    "pre_emergent": "What to use, how much, and whether you may: see the label, and the law where you are.",
}
STATE_LETTERS = {"dormant": "d", "slow": "s", "growing": "g", "peak": "p"}


def site_words(site: str) -> str:
    return SITE_WORDS.get(site, site.capitalize())


def script_path(grass: str, place: str) -> str:
    return f"assets/years/{place}--{grass}.js"


def year_script(seasons: SeasonCache, grass: str, place: str) -> str:
    """The years of all sites and soils as a classic script, for a page that was opened from a folder."""
    years = {site: _site_year(seasons, seasons.season(grass, place, site)) for site in seasons.sites}
    text = json.dumps(years, ensure_ascii=False, separators=(",", ":"))
    return f"Swardbook.years({json.dumps(f'{place}--{grass}')},{text});\n"


def year_scripts(seasons: SeasonCache) -> dict[str, str]:
    """Path in the site to script text, one for each calendar."""
    return {
        script_path(grass, place): year_script(seasons, grass, place)
        for place in seasons.calendar_places for grass in seasons.book.grasses
    }


def _site_year(seasons: SeasonCache, season: SeasonYear) -> dict[str, Any]:
    """growth, frost, wet and each window: 52 letters or digits. bands: what the strip's key calls the windows. slots: texts and
    rows by the id of their place in the page; soils: those that hang on the soil as well."""
    soils = seasons.rules.soils
    return {
        "growth": "".join(STATE_LETTERS[week.growth_class] for week in season.weeks),
        "frost": _flags(week.frosty for week in season.weeks),
        "chance": _flags(week.frost_possible for week in season.weeks),
        "wet": _flags(week.wet for week in season.weeks),
        **{kind: _flags(kind in week.in_windows for week in season.weeks) for kind in BAND_LABELS},
        "bands": {band["kind"]: band["label"] for band in band_views(season, "page")},
        "description": year_sentence(season),
        "series": series_of(season),
        "slots": slots(season),
        "soils": {id: soil_slots(seasons, season, soil) for id, soil in soils.items()},
        "soil_rows": [soil_row(season, soil, _sprinkler(seasons)) for soil in soils.values()],
    }


def _flags(flags: Iterable[bool]) -> str:
    return "".join("1" if each else "0" for each in flags)


def slots(season: SeasonYear) -> dict[str, Any]:
    """By slot: a text, lines (of a strong beginning and a text) or rows (of texts)."""
    charts = {f"chart-{id}": {"text": text} for id, text in chart_sentences(season).items()}
    windows = {f"window-{kind}": {"lines": lines} for kind, lines in window_lines(season).items()}
    return {
        "summary": {"text": summary(season)}, "little": {"text": warned(season)}, **charts, **windows,
        "months": {"rows": month_rows(season)}, "events": {"lines": event_lines(season)},
    }


def soil_slots(seasons: SeasonCache, season: SeasonYear, soil: SoilWater) -> dict[str, Any]:
    product, sprinkler = product_of(seasons), _sprinkler(seasons)
    feeds = feed_plan_of(season, soil, seasons.rules.feed, product)
    return {
        "needs": {"rows": need_rows(season, soil, sprinkler)},
        "watering": {"text": watering_text(season, soil, sprinkler)},
        "feeds": {"rows": feed_rows(feeds)},
        "feed-why": {"text": feed_why(feeds)},
    }


def product_of(seasons: SeasonCache) -> Product:
    """The feed that the practice's calculators start with."""
    practice = seasons.book.practice
    return practice.products[practice.feed]


def _sprinkler(seasons: SeasonCache) -> Sprinkler | None:
    return sprinkler_of(seasons.book.calculators)


def year_context(seasons: SeasonCache, grass: str, place: str, links: Links) -> dict[str, Any]:
    """What the calendar page shows of the year in the open, on the first kind of soil, and where its switches find the rest."""
    season = seasons.season(grass, place)
    soils = seasons.rules.soils
    first = next(iter(soils), None)
    sprinkler = _sprinkler(seasons)
    shown: Mapping[str, Any] = slots(season)
    series = {site: series_of(seasons.season(grass, place, site)) for site in seasons.sites}
    return {
        "slots": {**shown, **(soil_slots(seasons, season, soils[first]) if first else {})},
        "charts": chart_views(series, OPEN_SITE, {id: shown[f"chart-{id}"]["text"] for id in ("temperature", "frost", "growth", "water")}),
        "window_kinds": [
            {"kind": kind, "label": label, "url": _task_url(seasons, kind, links), "note": WINDOW_NOTES.get(kind, "")} for kind, label in WINDOW_LABELS.items()
        ],
        "method": season.weather.evapotranspiration_method.words,
        "assumed": list(season.weather.evapotranspiration_method.assumed),
        "switch": {
            "years": links.file(script_path(grass, place)), "key": f"{place}--{grass}",
            "sites": [{"id": site, "name": site_words(site)} for site in seasons.sites],
        },
        "soils": {
            "kinds": [{"id": id, "name": soil.name} for id, soil in soils.items()],
            "rows": [soil_row(season, soil, sprinkler) for soil in soils.values()],
        },
        "nitrogen": nitrogen_words(season), "nitrogen_unit": ["g/m²", "lb/1000 ft²"], "product": product_of(seasons).name,
        "sprinkler": sprinkler_text(sprinkler) if sprinkler else "",
        "calculators": [
            {"name": seasons.book.calculators[id].name, "url": links.calculator(id)}
            for id in ("irrigation-run-time", "catch-cans", "feed-for-nitrogen") if id in seasons.book.calculators
        ],
    }


def _task_url(seasons: SeasonCache, kind: str, links: Links) -> str:
    task = WINDOW_TASKS.get(kind)
    return links.task(task) if task in seasons.book.tasks else ""
