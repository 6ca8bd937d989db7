"""What must hold for cool-season turf to be opened up or sown on a day: it grows, no heat or high summer comes at once, and seed still sprouts."""

from generator.season.calendar_days import DAYS, week_number
from generator.season.engine_rules import WindowRules
from generator.season.reasons import Reason, because, count, difference, growth, limit_degrees, share
from generator.season.windows.limits import Limit, Year, clear_ahead, heat_limit, high_summer_limit, next_bad, weeks_said, wet_limit


def cool_limits(year: Year, rules: WindowRules, recovery_days: int, germination_days: int) -> list[Limit]:
    """Every limit of cool-season grass.

    recovery_days: to be free of extreme heat and high summer [days]. germination_days: of soil warm enough for seed, 0 for work without
    seed, which the day itself must still be warm enough for [days].
    """
    return [
        _growing_limit(year, rules), cold_limit(year, rules, germination_days),
        heat_limit(year, rules, recovery_days), high_summer_limit(year, rules, recovery_days),
        wet_limit(year, rules, (min(recovery_days, germination_days),) * DAYS),
    ]


def _growing_limit(year: Year, rules: WindowRules) -> Limit:
    """In spring growth is under way."""
    mean, part = year.climate.mean_c, year.growth.share

    def opens(day: int) -> Reason:
        return because(
            "growth-rising", week=count(week_number(day)), reached=because("share-of-best", share=share(part[day])),
            potential=growth(year.growth.potential[day]), best=growth(year.growth.best), mean=year.degrees(mean[day]),
        )

    return Limit(
        "growing",
        tuple(
            not warming or value >= year.optimum_c or of_best >= rules.open_share
            for warming, value, of_best in zip(year.climate.warming, mean, part, strict=True)
        ),
        opens, None, because("too-slow-all-year"),
    )


def cold_limit(year: Year, rules: WindowRules, germination_days: int) -> Limit:
    """The depth of winter is no time for it, and as the year cools the soil must stay warm enough until seed is up."""
    mean, soil = year.climate.mean_c, year.climate.soil_c
    deep_winter = year.climate.lowest_mean_c + rules.turn_k
    deep = tuple(value <= deep_winter for value in mean)
    cold = tuple(not warming and value < rules.seed_soil_c for warming, value in zip(year.climate.warming, soil, strict=True))
    bad = tuple(map(max, deep, cold))
    mark, weeks = limit_degrees(rules.seed_soil_c), weeks_said(germination_days)

    def closes(day: int) -> Reason:
        end = next_bad(bad, (day + 1) % DAYS)
        if not cold[end]:
            return because("before-deep-winter", weeks=weeks, week=count(week_number(end)))
        if not germination_days:
            return because("before-soil-cold", mark=mark, week=count(week_number(end)))
        return because("before-soil-cold-for-seed", mark=mark, days=count(germination_days), week=count(week_number(end)))

    return Limit(
        "cold", clear_ahead(bad, germination_days),
        lambda day: because("deep-winter-past", rise=difference(rules.turn_k)), closes, because("too-cold-all-year", mark=mark),
    )
