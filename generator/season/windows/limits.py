"""What must hold for turf to be opened up on a day: one limit each for growth, frost, heat, high summer and rain.

A limit looks ahead over the weeks the grass needs to close again, so the same rule gives both edges of a window: a day is
allowed when the whole recovery is free of what the limit guards against. Hemisphere, months and dates appear nowhere.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache

from generator.season.calendar_days import DAYS, week_number
from generator.season.climate.climate import Daily, DailyClimate
from generator.season.climate.frost import Frost
from generator.season.growth import Growth
from generator.season.engine_rules import WindowRules

Flags = tuple[bool, ...]


@dataclass(frozen=True)
class Year:
    """What the limits look at: one grass at one site, every series 365 days from 1 January."""

    climate: DailyClimate
    growth: Growth
    frost: Frost
    reference_evapotranspiration_mm: Daily
    temperature_step_c: float
    surface_running: bool
    optimum_c: float

    def is_warming(self, day: int) -> bool:
        """True from the coldest day of the year up to the hottest."""
        return self.climate.warming[day % DAYS]

    def degrees(self, temperature_c: float) -> str:
        """A temperature as finely as the normals were printed."""
        return f"{temperature_c:z.{0 if self.temperature_step_c >= 1 else 1}f} °C"  # z: never "-0.0"


@dataclass(frozen=True)
class Limit:
    """One rule over the year. `allowed` says for each of 365 start days whether it lets the work begin.

    `opens` and `closes` give the sentence for a window edge that this rule sets, from the day number of the edge; a rule
    that never sets such an edge leaves it None. `never` is the sentence for a year in which it allows no day.
    """

    name: str
    allowed: Flags
    opens: Callable[[int], str] | None
    closes: Callable[[int], str] | None
    never: str


def clear_ahead(bad: Sequence[bool], days: int) -> Flags:
    """For each day, whether it and the `days` after it are free of bad days; the year wraps round."""
    if not any(bad):
        return (True,) * DAYS
    # Twice round, so that the end of the year sees the start of the next; from one stretch of bad days to the next.
    years, clear, day = bytes(bad) * 2, [False] * DAYS, 0
    while 0 <= day < DAYS:
        bad_again = years.index(1, day)
        for each in range(day, min(bad_again - days, DAYS)):
            clear[each] = True
        day = years.find(0, bad_again)
    return tuple(clear)


def next_bad(bad: Sequence[bool], day: int) -> int:
    """The first bad day at or after a day, wrapping round; the day itself when there is none."""
    return next((day + ahead for ahead in range(DAYS) if bad[(day + ahead) % DAYS]), day) % DAYS


def slack_season(year: Year, rules: WindowRules) -> Flags:
    """Days on which growth is too slow to close an opened surface.

    While the year warms, growth must have passed `start_share`; while it cools, `slow_share`. Warm-season grasses are judged
    by the swing between the place's own low and best; cool-season grasses by the share of the best, on the cold side of
    their optimum only (heat has its own limit). Where winter never slows a cool-season grass, deep winter stands in.
    """
    mean, growth = year.climate.mean_c, year.growth
    if rules.group == "warm":
        if growth.best and growth.least / growth.best >= rules.no_slack_share:
            return (False,) * DAYS
        return tuple(
            growth.swing[day] < (rules.start_share if year.is_warming(day) else rules.slow_share) for day in range(DAYS)
        )
    cold = tuple(
        mean[day] < year.optimum_c
        and growth.share[day] < (rules.start_share if year.is_warming(day) else rules.slow_share)
        for day in range(DAYS)
    )
    if any(cold) or min(mean) >= year.optimum_c:
        return cold
    coldest = min(mean)
    return tuple(value <= coldest + rules.turn_k for value in mean)


def growth_limits(year: Year, rules: WindowRules, recovery_days: int) -> list[Limit]:
    """Growth must be under way at the start, and last until the surface has closed."""
    slack = slack_season(year, rules)
    best = f"{year.growth.best:.2f}"
    weeks = _weeks(recovery_days)
    deep_winter = rules.group == "cool" and any(slack) and all(
        year.growth.share[day] >= rules.slow_share for day in range(DAYS) if slack[day]
    )

    def reached(share: float) -> str:
        if rules.group == "warm":
            return f"{share:.0%} of the way from the year's low to its best"
        return f"{share:.0%} of the most this place gives"

    def opens(day: int) -> str:
        if deep_winter:
            return f"deep winter is past: the mean has risen {rules.turn_k:g} °C from its lowest"
        way = year.growth.swing if rules.group == "warm" else year.growth.share
        return (
            f"growth is rising and in week {week_number(day)} reaches {reached(way[day])} "
            f"(growth potential {year.growth.potential[day]:.2f}, best {best}), at a mean of {year.degrees(year.climate.mean_c[day])}"
        )

    def closes(day: int) -> str:
        slow = next_bad(slack, (day + 1) % DAYS)
        if deep_winter:
            return f"it needs {weeks} of growing weather before the depth of winter in week {week_number(slow)}"
        return (
            f"it needs {weeks} of growing weather before growth falls back below {reached(rules.slow_share)} "
            f"in week {week_number(slow)} (growth potential {year.growth.potential[slow]:.2f}, best {best})"
        )

    return [
        Limit("growing", tuple(not flag for flag in slack), opens, None, "growth is too slow all year"),
        Limit(
            "recovery", clear_ahead(slack, recovery_days), None, closes,
            f"growing weather never lasts the {weeks} it needs to close over",
        ),
    ]


def frost_limit(year: Year, rules: WindowRules, recovery_days: int) -> Limit | None:
    """A frost night must be unlikely while the grass is cut down or thin; None where frost sets no limit."""
    risk = rules.frost_risk_surface_running if year.surface_running else rules.frost_risk
    if risk is None:
        return None
    bare_days = frost_days_watched(rules, recovery_days)
    chances = _chances_ahead(year.frost, bare_days)
    kind = "ground-frost" if year.surface_running else "frost"
    weeks = _weeks(bare_days)

    def opens(day: int) -> str:
        return (
            f"from week {week_number(day)} the chance of a {kind} night in the {weeks} that follow is {chances[day]:.0%}, "
            f"no longer above {risk:.0%}"
        )

    def closes(day: int) -> str:
        return f"begun later, a {kind} night in the {weeks} that follow becomes likelier than {risk:.0%}"

    return Limit(
        "frost", tuple(chance <= risk for chance in chances), opens, closes,
        f"no {weeks} of the year keep the chance of a {kind} night at or below {risk:.0%}; the safest still carry {min(chances):.0%}",
    )


@lru_cache(maxsize=512)
def _chances_ahead(frost: Frost, days: int) -> Daily:
    """Chance of any frost night in the `days` from each day of the year on; the same for every grass of a place."""
    return tuple(frost.chance_of_any(day, days) for day in range(DAYS))


def frost_days_watched(rules: WindowRules, recovery_days: int) -> int:
    """Days after the work in which frost would find the grass cut down or thin [days].

    recovery_days: until it has closed [days]. The number of weeks is an assumption of data/season-groups.yml.
    """
    return min(recovery_days, round(rules.frost_weeks * 7))


def heat_limit(year: Year, rules: WindowRules, recovery_days: int) -> Limit:
    """Opened turf and seedlings scorch: the daily mean must stay at or below the limit while it recovers."""
    mean = year.climate.mean_c
    hot = tuple(value > rules.heat_limit_c for value in mean)
    top = f"{rules.heat_limit_c:g} °C"
    return Limit(
        "heat", clear_ahead(hot, recovery_days),
        lambda day: f"not in the heat: the daily mean is down to {year.degrees(mean[day])}, no longer above {top}",
        lambda day: (
            f"it must have recovered before the daily mean passes {top} in week {week_number(next_bad(hot, (day + 1) % DAYS))}"
        ),
        f"the daily mean does not stay at or below {top} for {_weeks(recovery_days)}; "
        f"it runs from {year.degrees(min(mean))} to {year.degrees(max(mean))} through the year",
    )


def high_summer_limit(year: Year, rules: WindowRules, recovery_days: int) -> Limit | None:
    """Cool-season grass is not sown into the height of summer, however mild: weeds and drought win. None for warm-season grass."""
    if rules.group == "warm":
        return None
    hottest = max(year.climate.mean_c)
    summer = tuple(value > hottest - rules.turn_k for value in year.climate.mean_c)
    return Limit(
        "high summer", clear_ahead(summer, recovery_days),
        lambda day: (
            f"the height of summer is past: the mean has come down {rules.turn_k:g} °C from its highest, "
            f"{year.degrees(hottest)} in week {week_number(year.climate.hottest_day)}"
        ),
        lambda day: (
            f"it must have recovered before the height of summer begins in week {week_number(next_bad(summer, (day + 1) % DAYS))}"
        ),
        "the temperature hardly changes through the year, so no season is cooler than the rest",
    )


def wet_limit(year: Year, rules: WindowRules, recovery_days: int) -> Limit:
    """Sand washes off and cored soil stays waterlogged in a wet season."""
    wet = wet_season(year, rules)
    return Limit(
        "wet season", clear_ahead(wet, recovery_days),
        lambda day: (
            f"the wet season is past: rain is down to {7 * year.climate.rain_mm[day]:.0f} mm a week, "
            f"against {7 * year.reference_evapotranspiration_mm[day]:.0f} mm that evaporates"
        ),
        lambda day: (
            f"it needs {_weeks(recovery_days)} to close before the wet season begins in week "
            f"{week_number(next_bad(wet, (day + 1) % DAYS))} (over {7 * rules.wet_rain_mm_per_day:.0f} mm of rain a week and "
            f"{rules.wet_ratio:g} times what evaporates)"
        ),
        "it is too wet all year",
    )


def wet_season(year: Year, rules: WindowRules) -> Flags:
    """Days in whose season rain is both heavy and well above what evaporates."""
    return tuple(
        rain > rules.wet_rain_mm_per_day and rain > rules.wet_ratio * evaporation
        for rain, evaporation in zip(year.climate.rain_mm, year.reference_evapotranspiration_mm)
    )


def limits(year: Year, rules: WindowRules, recovery_days: int) -> list[Limit]:
    """Every limit that applies to this grass here."""
    found = [
        *growth_limits(year, rules, recovery_days),
        frost_limit(year, rules, recovery_days),
        heat_limit(year, rules, recovery_days),
        high_summer_limit(year, rules, recovery_days),
        wet_limit(year, rules, recovery_days),
    ]
    return [limit for limit in found if limit is not None]


def _weeks(days: int) -> str:
    return f"{days / 7:.0f} weeks"
