"""What must hold for turf to be opened up on a day: one limit each for growth, frost, heat, high summer and rain.

A limit looks ahead over the weeks the grass needs to close again, so the same rule gives both edges of a window: a day is
allowed when the whole recovery is free of what the limit guards against. Hemisphere, months and dates appear nowhere.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache

from generator.season.calendar_days import DAYS, week_number
from generator.season.climate.climate import Daily, DailyClimate
from generator.season.climate.frost import Frost
from generator.season.engine_rules import WindowRules
from generator.season.growth import Growth
from generator.season.reasons import NumberSaid, Reason, because, count, degrees, depth_a_week, difference, limit_degrees, share, times
from generator.season.weather import WeatherYear

Flags = tuple[bool, ...]
# More than any recovery: what is said to be so far off never comes.
NEVER_DAYS = 1_000_000


@dataclass(frozen=True)
class Year:
    """What the limits look at: one grass in the weather of one site, every series 365 days from 1 January.

    frost: the one that harms it, of the air, or of the ground where it runs above it.
    """

    weather: WeatherYear
    growth: Growth
    frost: Frost
    surface_running: bool
    optimum_c: float

    @property
    def climate(self) -> DailyClimate:
        return self.weather.days

    def is_warming(self, day: int) -> bool:
        """True from the coldest day of the year up to the hottest."""
        return self.climate.warming[day % DAYS]

    def degrees(self, temperature_c: float) -> NumberSaid:
        """A temperature [°C] as finely as the normals were printed."""
        return degrees(temperature_c, self.weather.temperature_step_c)


@dataclass(frozen=True)
class Limit:
    """One rule over the year. `allowed` says for each of 365 start days whether it lets the work begin.

    `opens` and `closes` give the reason for a window edge that this rule sets, from the day number of the edge; a rule
    that never sets such an edge leaves it None. `never` is the reason in a year in which it allows no day.
    """

    name: str
    allowed: Flags
    opens: Callable[[int], Reason] | None
    closes: Callable[[int], Reason] | None
    never: Reason


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


def clear_for(bad: Sequence[bool], days: Sequence[int]) -> Flags:
    """For each day, whether it and so many days after it are free of bad days; the year wraps round."""
    return tuple(until > ahead for until, ahead in zip(days_until(bad), days, strict=True))


def days_until(flags: Iterable[bool]) -> tuple[int, ...]:
    """From each day of the year on, the days to the first that is flagged: 0 on such a day, NEVER_DAYS where there is none."""
    year = tuple(flags)
    if not any(year):
        return (NEVER_DAYS,) * DAYS
    # From the day after the last flagged one backwards round the year, so that its end sees the start of the next.
    last = max(day for day in range(DAYS) if year[day])
    found = [0] * DAYS
    for day in range(last + DAYS, last, -1):
        found[day % DAYS] = 0 if year[day % DAYS] else found[(day + 1) % DAYS] + 1
    return tuple(found)


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
    coldest = year.climate.lowest_mean_c
    return tuple(value <= coldest + rules.turn_k for value in mean)


def frost_limit(year: Year, rules: WindowRules, recovery_days: int) -> Limit | None:
    """A frost night must be unlikely while the grass is cut down or thin; None where frost sets no limit."""
    risk = rules.frost_risk_surface_running if year.surface_running else rules.frost_risk
    if risk is None:
        return None
    bare_days = frost_days_watched(rules, recovery_days)
    chances = _chances_ahead(year.frost, bare_days)
    kind, weeks, top = because("of-ground-frost" if year.surface_running else "of-frost"), weeks_said(bare_days), share(risk)
    return Limit(
        "frost", tuple(chance <= risk for chance in chances),
        lambda day: because("frost-past", week=count(week_number(day)), kind=kind, weeks=weeks, chance=share(chances[day]), risk=top),
        lambda day: because("before-frost", kind=kind, weeks=weeks, risk=top),
        because("frost-all-year", kind=kind, weeks=weeks, risk=top, safest=share(min(chances))),
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
    """Opened cool-season turf and seedlings scorch: the daily mean must stay at or below the limit while it recovers."""
    mean = year.climate.mean_c
    hot = tuple(value > rules.heat_limit_c for value in mean)
    top = limit_degrees(rules.heat_limit_c)
    return Limit(
        "heat", clear_ahead(hot, recovery_days),
        lambda day: because("heat-past", mean=year.degrees(mean[day]), limit=top),
        lambda day: because("before-heat", limit=top, week=count(week_number(next_bad(hot, (day + 1) % DAYS)))),
        because("heat-all-year", limit=top, weeks=weeks_said(recovery_days), lowest=year.degrees(min(mean)), highest=year.degrees(max(mean))),
    )


def high_summer_limit(year: Year, rules: WindowRules, recovery_days: int) -> Limit:
    """Cool-season grass is not sown into the height of summer, however mild: weeds and drought win."""
    hottest = year.climate.highest_mean_c
    summer = tuple(value > hottest - rules.turn_k for value in year.climate.mean_c)
    return Limit(
        "high summer", clear_ahead(summer, recovery_days),
        lambda day: because(
            "summer-past", fall=difference(rules.turn_k), highest=year.degrees(hottest), week=count(week_number(year.climate.hottest_day)),
        ),
        lambda day: because("before-summer", week=count(week_number(next_bad(summer, (day + 1) % DAYS)))),
        because("no-cooler-season"),
    )


def wet_limit(year: Year, rules: WindowRules, recovery: Sequence[int]) -> Limit:
    """Sand washes off and cored soil stays waterlogged in a wet season. recovery: from each day of the year on [days]."""
    wet = wet_season(year, rules)
    return Limit(
        "wet season", clear_for(wet, recovery),
        lambda day: because(
            "wet-past", rain=depth_a_week(7 * year.climate.rain_mm[day]), evaporates=depth_a_week(7 * year.weather.reference_evapotranspiration_mm[day]),
        ),
        lambda day: because(
            "before-wet", weeks=weeks_said(recovery[day]), week=count(week_number(next_bad(wet, (day + 1) % DAYS))),
            rain=depth_a_week(7 * rules.wet_rain_mm_per_day), ratio=times(rules.wet_ratio),
        ),
        because("wet-all-year"),
    )


def wet_season(year: Year, rules: WindowRules) -> Flags:
    """Days in whose season rain is both heavy and well above what evaporates."""
    return tuple(
        rain > rules.wet_rain_mm_per_day and rain > rules.wet_ratio * evaporation
        for rain, evaporation in zip(year.climate.rain_mm, year.weather.reference_evapotranspiration_mm)
    )

def weeks_said(days: float) -> NumberSaid:
    """Days [days] as weeks."""
    return count(days / 7)
