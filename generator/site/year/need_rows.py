"""What a lawn needs through a year, as rows for a page: nitrogen, water and mowing by month, feeds of a product, one watering.

Texts and rows are those of `year_words`.
"""

from collections.abc import Sequence
from typing import Any

from generator.book.records.practice import Product
from generator.calculators.watering import Sprinkler, days_between, watering
from generator.season.calendar_days import MONTHS, WEEKS_OF_MONTH, day_words
from generator.season.engine_rules import FeedRules, SoilWater
from generator.season.needs import FeedPlan, feed_plan, mowing_intervals, nitrogen_by_month
from generator.season.year import SeasonYear
from generator.site.year.year_words import Row, month_mean, pair
from generator.words.figures import value_words
from generator.words.reason_text import Text, in_one, said, sentence

# Cuts or waterings so far apart are no rhythm any more.
RARE_DAYS = 28
DAYS_A_WEEK = 7


def need_rows(season: SeasonYear, soil: SoilWater, sprinkler: Sprinkler | None) -> list[Row]:
    """Twelve rows: month, usual nitrogen [g/m² and lb/1000 ft²], water to add in a week, how often that is a watering, how often to mow."""
    _, usual, _ = nitrogen_by_month(season)
    gaps = days_between(season, watering(season, soil, sprinkler).depth_mm)
    share = season.largest_share_removed
    cuts = mowing_intervals(season, share) if share is not None else None
    return [
        [
            MONTHS[month], _nitrogen(usual[month]), _week(DAYS_A_WEEK * month_mean(season.water_need_mm, month)),
            _rhythm(_weeks_of(gaps, month), "rain is enough"), _rhythm(_weeks_of(cuts, month), "hardly at all") if cuts else "",
        ]
        for month in range(12)
    ]


def _nitrogen(grams: float) -> Text:
    """Bare numbers: the head of the column has the units."""
    if grams < 0.05:
        return "none"
    us = value_words(grams, "g/m2")["us"] or ""
    return [[f"{grams:.1f}", us.split(" ")[0]]]


def _week(millimetres: float) -> Text:
    return "none" if millimetres < 0.5 else [pair(round(millimetres), "mm")]


def _weeks_of(values: Sequence[float | None], month: int) -> list[float | None]:
    return [values[week] for week in WEEKS_OF_MONTH[month]]


def _rhythm(intervals: Sequence[float | None], none: str) -> str:
    """'4 to 6 days'; `none` where no week has a rhythm; and where some have not, so it is said."""
    days = [round(each) for each in intervals if each is not None and each <= RARE_DAYS]
    if not days:
        return none
    low, high = min(days), max(days)
    said = "day" if high == 1 else f"{low} days" if low == high else f"{low} to {high} days"
    return said if len(days) == len(intervals) else f"{said}, at times"


def nitrogen_words(season: SeasonYear) -> Text:
    """The year's nitrogen, in a sentence."""
    least, usual, most = season.grass.nitrogen_g_per_m2
    span: list[Any] = ["from ", pair(least, "g/m2"), " to ", pair(most, "g/m2"), ", usually "] if least != most else []
    return ["Nitrogen in a year: ", *span, pair(usual, "g/m2"), ". It is spread over the months as the grass grows."]


def feed_plan_of(season: SeasonYear, soil: SoilWater, rules: FeedRules, product: Product) -> FeedPlan:
    """The feeds of a year, all of one product."""
    return feed_plan(season, soil, rules, product.nitrogen_percent or 0.0, product.slow_release_percent)


def feed_rows(plan: FeedPlan) -> list[Row]:
    """A row a feed: date, nitrogen, product. One row with the reason where there is none."""
    return [
        [f"about {day_words(feed.day)}", [pair(round(feed.nitrogen_g_per_m2, 1), "g/m2")], [pair(round(feed.product_kg_per_100_m2, 1), "kg/100 m2")]]
        for feed in plan.feeds
    ] or [["none", sentence(said(plan.why)), ""]]


def feed_why(plan: FeedPlan) -> Text:
    return sentence(said(plan.why)) if plan.feeds else ""


def watering_text(season: SeasonYear, soil: SoilWater, sprinkler: Sprinkler | None) -> Text:
    """One watering: its depth, its run time in spells, and why; and what to do before, where the soil asks for it."""
    one = watering(season, soil, sprinkler)
    words: list[Any] = [f"{soil.first} "] if soil.first else []
    words += ["One watering is ", pair(round(one.depth_mm), "mm")]
    if one.run_time_min is not None:
        words.append(f": {one.run_time_min:.0f} minutes")
        if one.spells > 1 and one.spell_min is not None and one.rest_min is not None:
            words.append(f", in {one.spells} spells of {one.spell_min:.0f} with {one.rest_min:.0f} minutes between for it to soak in")
    return in_one(words, ". ", sentence(said(one.why)))


def soil_row(season: SeasonYear, soil: SoilWater, sprinkler: Sprinkler | None) -> Row:
    """Soil, depth of one watering, run time in spells, days between at the height of need."""
    one = watering(season, soil, sprinkler)
    gaps = [days for days in days_between(season, one.depth_mm) if days is not None]
    run = "" if one.run_time_min is None else f"{one.run_time_min:.0f} min"
    if run and one.spells > 1 and one.spell_min is not None:
        run += f", in {one.spells} spells of {one.spell_min:.0f}"
    return [soil.name, [pair(round(one.depth_mm), "mm")], run, f"{min(gaps)} days" if gaps else "rain is enough"]


def sprinkler_text(sprinkler: Sprinkler) -> Text:
    return [
        "Assumed: a sprinkler that gives ", pair(sprinkler.rate_mm_per_h, "mm/h"),
        f" with a uniformity of {sprinkler.uniformity:.0%}, which the calculator starts with. Put out cans and use your own figures.",
    ]
