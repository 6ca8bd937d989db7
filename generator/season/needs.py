"""What the lawn needs through the year: nitrogen by month, as feeds of a product, and how often it is mown."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate
from math import ceil, fsum

from generator.season.calendar_days import DAYS, MONTH_LENGTHS, monthly_means, weekly_means, weekly_sums
from generator.season.climate.climate import Daily, Twelve
from generator.season.engine_rules import FeedRules, SoilWater
from generator.season.reasons import NumberSaid, Reason, because, count
from generator.season.windows.limits import clear_ahead
from generator.season.year import SeasonYear

PER_CENT = 100.0
GRAMS_PER_M2_IN_KG_PER_100_M2 = 10.0


def _growth_shares(season: SeasonYear) -> Daily:
    """Each day's share of the year's growth; 0 throughout where nothing grows."""
    total = fsum(season.growth.potential)
    return tuple(value / total if total else 0.0 for value in season.growth.potential)


def nitrogen_by_week(season: SeasonYear) -> Daily:
    """The usual yearly nitrogen of the grass, spread over 52 weeks as it grows [g/m² a week]. Shares of growth potential."""
    usual = season.grass.nitrogen_g_per_m2[1]
    return tuple(usual * share for share in weekly_sums(_growth_shares(season)))


def nitrogen_by_month(season: SeasonYear) -> tuple[Twelve, Twelve, Twelve]:
    """Nitrogen of each month [g/m²], January first: the least, the usual and the most of the grass's yearly range.

    Source: nitrogen in proportion to growth potential, as in Woods 2015, Is the annual N rate a useful measure; here the
    year's total is the grass's own published range. Limit: it knows nothing of clippings returned or of the soil's own supply.
    """
    months = tuple(mean * length for mean, length in zip(monthly_means(_growth_shares(season)), MONTH_LENGTHS))
    least, usual, most = (tuple(yearly * share for share in months) for yearly in season.grass.nitrogen_g_per_m2)
    return least, usual, most


@dataclass(frozen=True)
class Feed:
    """One dressing: the day number it goes on, its nitrogen [g/m²], and the product that carries it [kg/100 m²]."""

    day: int
    nitrogen_g_per_m2: float
    product_kg_per_100_m2: float


@dataclass(frozen=True)
class FeedPlan:
    """The feeds of a year in calendar order, why so many and so large, or why none."""

    feeds: tuple[Feed, ...]
    why: Reason


def feed_plan(
    season: SeasonYear, soil: SoilWater, rules: FeedRules, nitrogen_percent: float, slow_release_percent: float | None
) -> FeedPlan:
    """The usual yearly nitrogen as equal feeds, none above the published ceiling for one dressing, each ahead of the growth it feeds.

    nitrogen_percent: of the product [%]. slow_release_percent: share of that nitrogen [%]; None counts as none.
    Source: ceilings of data/tasks/feed.yml. Equal feeds, spaced by growth, most of a cool-season lawn's in the cooling
    half of the year; none while growth is slack, in the wet season, in heat above the grass's limit or a cool-season grass's
    high summer, or too near the slow-down.
    """
    yearly = season.grass.nitrogen_g_per_m2[1]
    ceiling, which = _ceiling(soil, rules, slow_release_percent)
    if ceiling is None:
        return FeedPlan((), because("no-ceiling"))
    if not yearly or not nitrogen_percent:
        return FeedPlan((), because("no-nitrogen-to-give" if nitrogen_percent else "product-without-nitrogen"))
    fit = _fit_to_feed(season, rules)
    if not any(fit):
        return FeedPlan((), because("never-fit-to-feed"))
    feeds = ceil(yearly / ceiling - 1e-9)
    each = yearly / feeds
    product = each / (nitrogen_percent / PER_CENT) / GRAMS_PER_M2_IN_KG_PER_100_M2
    days = sorted(_spaced_by_growth(season, fit, feeds, rules))
    why = because(
        "feeds" if feeds > 1 else "one-feed", yearly=NumberSaid(yearly, "g/m2", "g"), feeds=count(feeds), each=NumberSaid(each, "g/m2", ".1f"),
        which=which, ceiling=NumberSaid(ceiling, "g/m2", ".1f"),
    )
    return FeedPlan(tuple(Feed(day, each, product) for day in days), why)


def _ceiling(soil: SoilWater, rules: FeedRules, slow_release_percent: float | None) -> tuple[float | None, Reason]:
    """The most nitrogen in one dressing [g/m²], and what sets it."""
    slow = (slow_release_percent or 0.0) / PER_CENT
    ceiling, which = rules.ceiling, because("ceiling")
    if rules.slow_release_share is not None and slow < rules.slow_release_share and rules.soluble_ceiling is not None:
        ceiling, which = rules.soluble_ceiling, because("ceiling-soluble")
    if soil.light_dressings and rules.light_dressing is not None and (ceiling is None or rules.light_dressing < ceiling):
        return rules.light_dressing, because("light-dressing", soil=soil.name.lower())
    return ceiling, which


def _fit_to_feed(season: SeasonYear, rules: FeedRules) -> tuple[bool, ...]:
    """Days on which a feed is taken up: growing for some weeks yet, not wet, not in the heat."""
    growing = clear_ahead(season.slack, round(rules.last_feed_weeks * 7))
    mean, heat = season.climate.mean_c, season.rules.heat_limit_c
    if season.grass.group == "cool":
        heat = min(heat, max(mean) - season.rules.turn_k)
    return tuple(growing[day] and not season.wet[day] and mean[day] <= heat for day in range(DAYS))


def _spaced_by_growth(season: SeasonYear, fit: Sequence[bool], count: int, rules: FeedRules) -> list[int]:
    """The days on which the growth of the fit days, from the coldest day of the year on, has passed 0, 1/n, 2/n ...

    For cool-season grass, growth of the cooling half counts for as much more as gives that half its share of the feed.
    """
    order = [(season.climate.coldest_day + ahead) % DAYS for ahead in range(DAYS)]
    order = [day for day in order if fit[day]]
    growth = {day: season.growth.potential[day] for day in order}
    if season.grass.group == "cool":
        warming = fsum(value for day, value in growth.items() if season.view.is_warming(day))
        cooling = fsum(growth.values()) - warming
        if warming and cooling:
            weight = rules.cool_autumn_share / (1 - rules.cool_autumn_share) * warming / cooling
            growth = {day: value * (1 if season.view.is_warming(day) else weight) for day, value in growth.items()}
    passed = (0.0, *accumulate(growth[day] for day in order))
    return [next(day for day, before in zip(order, passed) if before >= passed[-1] * part / count - 1e-9) for part in range(count)]


def height_at_cut(height_mm: float, largest_share_removed: float) -> float:
    """Height at which the lawn must be cut so that no more than a share of it goes [mm].

    height_mm: as left by the mower [mm]. largest_share_removed: of the height at the cut, 0 to 1.
    Source: one-third rule; Cornell University, Home gardening: 3 in is cut at 4.5 in.
    """
    return height_mm / (1 - largest_share_removed)


def mowing_intervals(season: SeasonYear, largest_share_removed: float) -> tuple[float | None, ...]:
    """Days between cuts in each of 52 weeks [days], None where nothing grows.

    largest_share_removed: of the height at the cut, 0 to 1. Height gained at full growth (an assumption of
    data/season-groups.yml) times growth potential, and the one-third rule; feed and water change it at least twofold.
    """
    height = season.grass.mowing_height_mm
    room = height_at_cut(height, largest_share_removed) - height
    return tuple(
        room / (season.grass.leaf_growth_mm_per_day * growth) if growth > NO_GROWTH else None
        for growth in weekly_means(season.growth.potential)
    )


# A growth potential so small that a cut would be most of a year away.
NO_GROWTH = 0.01
