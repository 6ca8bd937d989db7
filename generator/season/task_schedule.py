"""When a task falls due: its rule, asked of every week of a computed year.

Rules compare plain numbers: `soil_temperature > 14` means 14 °C, because the table below says that soil temperature is
given in °C. Yes-or-no quantities stand alone: `renovation_window and not wet`. No rule names a month.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from generator.book.records.task import Due
from generator.formula import Formula, FormulaError, check_names
from generator.formula.conditions import parse_condition
from generator.season.calendar_days import DAYS, WEEK_OF_DAY, WEEKS, week_days
from generator.season.events import TENTH_RISK
from generator.season.needs import mowing_intervals, nitrogen_by_week
from generator.season.windows.every_kind import WindowKind
from generator.season.year import SeasonYear, Week

# What weeks_to_... and weeks_since_... say when there is no such day: no comparison with a count of weeks holds for it.
NEVER = -1.0
A_YEAR = float(WEEKS)

Values = dict[str, float]


@dataclass(frozen=True)
class RuleQuantity:
    """One quantity that a rule may name: its unit as a rule reads it, its meaning, and how a week gets it.

    of: its value in one week; of_year: instead, its values in all 52 weeks at once, for what is worked out by the year.
    """

    unit: str
    meaning: str
    of: Callable[[SeasonYear, Week], float] | None = None
    is_flag: bool = False
    of_year: Callable[[SeasonYear], Sequence[float]] | None = None

    def weekly(self, season: SeasonYear) -> Sequence[float]:
        if self.of is None:
            assert self.of_year is not None
            return self.of_year(season)
        return [self.of(season, week) for week in season.weeks]


def _main_window(season: SeasonYear) -> int | None:
    """First day of the main renovation window."""
    return season.renovation.windows[0].first if season.renovation.windows else None


def _best_day(season: SeasonYear) -> int | None:
    return season.renovation.windows[0].best if season.renovation.windows else None


def _weeks_until(day: int | None, week: Week) -> float:
    return NEVER if day is None else float((WEEK_OF_DAY[day] - (week.week - 1)) % WEEKS)


def _weeks_since(day: int | None, week: Week) -> float:
    return NEVER if day is None else float((week.week - 1 - WEEK_OF_DAY[day]) % WEEKS)


def _weeks_to_slow_down(season: SeasonYear, week: Week) -> float:
    """Weeks until growth no longer closes an opened surface: 0 while that is so, a year where it never is."""
    day = week_days(week.week - 1)[0]
    slack = season.slack
    ahead = next((ahead for ahead in range(DAYS) if slack[(day + ahead) % DAYS]), None)
    return A_YEAR if ahead is None else float(ahead // 7)


def _weeks_to_last_frost(season: SeasonYear) -> list[float]:
    """Weeks until the last frost that one year in ten still has; -1 where no frost is that likely."""
    day = season.weather.last_frost_day(TENTH_RISK, season.grass.surface_running)
    return [_weeks_until(day, week) for week in season.weeks]


def _weeks_to_first_frost(season: SeasonYear) -> list[float]:
    day = season.weather.first_frost_day(TENTH_RISK, season.grass.surface_running)
    return [_weeks_until(day, week) for week in season.weeks]


def _mowing_intervals(season: SeasonYear) -> list[float]:
    """Days between cuts, a year where nothing grows; -1 in a book without the one-third rule."""
    if season.largest_share_removed is None:
        return [NEVER] * WEEKS
    intervals = mowing_intervals(season, season.largest_share_removed)
    return [float(DAYS) if interval is None else min(interval, float(DAYS)) for interval in intervals]


def _flag(kind: WindowKind, meaning: str) -> RuleQuantity:
    return RuleQuantity("yes or no", meaning, lambda s, w: float(kind in w.in_windows), True)


def _growth_change(season: SeasonYear, week: Week) -> float:
    """Growth share of the following week less that of this one."""
    return season.weeks[week.week % WEEKS].growth_share - week.growth_share


RULE_QUANTITIES: dict[str, RuleQuantity] = {
    "mean_temperature": RuleQuantity("°C", "mean air temperature of the week", lambda s, w: w.mean_temperature_c),
    "maximum_temperature": RuleQuantity("°C", "mean daily maximum of the week", lambda s, w: w.maximum_temperature_c),
    "minimum_temperature": RuleQuantity("°C", "mean daily minimum of the week", lambda s, w: w.minimum_temperature_c),
    "soil_temperature": RuleQuantity("°C", "estimated mean soil temperature at 100 mm", lambda s, w: w.soil_temperature_c),
    "growth_potential": RuleQuantity("1", "growth against the grass's own optimum, 0 to 1", lambda s, w: w.growth_potential),
    "growth_share": RuleQuantity("1", "growth against the most this place gives, 0 to 1", lambda s, w: w.growth_share),
    "growth_change": RuleQuantity(
        "1", "growth share of next week less that of this week: above 0 while growth rises", _growth_change
    ),
    "temperature_change": RuleQuantity(
        "K a week", "mean air temperature of next week less that of this week: below 0 while the year cools",
        lambda s, w: s.weeks[w.week % WEEKS].mean_temperature_c - w.mean_temperature_c,
    ),
    "frost_probability": RuleQuantity("1", "chance that a night of the week has air frost, 0 to 1", lambda s, w: w.frost_probability),
    "ground_frost_probability": RuleQuantity(
        "1", "chance that a night of the week has ground frost, 0 to 1", lambda s, w: w.ground_frost_probability
    ),
    "daylight": RuleQuantity("h", "hours from sunrise to sunset", lambda s, w: w.daylight_h),
    "rain": RuleQuantity("mm/week", "mean rain of the week", lambda s, w: w.rain_mm),
    "reference_evapotranspiration": RuleQuantity(
        "mm/week", "what well-watered reference grass uses", lambda s, w: w.reference_evapotranspiration_mm
    ),
    "water_need": RuleQuantity("mm/week", "what the lawn uses beyond the rain it can use", lambda s, w: w.water_need_mm),
    "renovation_window": RuleQuantity(
        "yes or no", "the week is in a renovation window", lambda s, w: float("renovation" in w.in_windows), True
    ),
    "overseeding_window": RuleQuantity(
        "yes or no", "the week is in an overseeding window", lambda s, w: float("overseeding" in w.in_windows), True
    ),
    "light_renovation_window": _flag("light_renovation", "the week is in a window for light renovation"),
    "oversowing_window": _flag("oversowing", "the week is in a window for winter ryegrass into warm-season turf"),
    "pre_emergent_window": _flag("pre_emergent", "the soil is warming through the temperatures for a pre-emergent"),
    "wet": RuleQuantity("yes or no", "the week is in a wet season", lambda s, w: float(w.wet), True),
    "dormant": RuleQuantity("yes or no", "the grass is not growing", lambda s, w: float(w.growth_class == "dormant"), True),
    "warm_season": RuleQuantity("yes or no", "a warm-season grass", lambda s, w: float(s.grass.group == "warm"), True),
    "cool_season": RuleQuantity("yes or no", "a cool-season grass", lambda s, w: float(s.grass.group == "cool"), True),
    "oversown": RuleQuantity(
        "yes or no", "winter ryegrass may be sown into this warm-season grass",
        lambda s, w: float(s.grass.oversown and s.grass.group == "warm"), True,
    ),
    "weeks_to_window_start": RuleQuantity(
        "weeks", "weeks until the main renovation window opens: 0 in the week it opens, -1 where there is none",
        lambda s, w: _weeks_until(_main_window(s), w),
    ),
    "weeks_since_window_start": RuleQuantity(
        "weeks", "weeks since the main renovation window last opened: 0 in the week it opens, -1 where there is none",
        lambda s, w: _weeks_since(_main_window(s), w),
    ),
    "weeks_to_best": RuleQuantity(
        "weeks", "weeks until the best date of the main renovation window: -1 where there is none",
        lambda s, w: _weeks_until(_best_day(s), w),
    ),
    "weeks_since_best": RuleQuantity(
        "weeks", "weeks since the best date of the main renovation window: -1 where there is none",
        lambda s, w: _weeks_since(_best_day(s), w),
    ),
    "weeks_to_slow_down": RuleQuantity(
        "weeks", "weeks until growth is too slow to close an opened surface: 0 while it is, 52 where it never is",
        _weeks_to_slow_down,
    ),
    "weeks_to_last_frost": RuleQuantity(
        "weeks", "weeks until the last frost of one year in ten: -1 where no frost is so likely", of_year=_weeks_to_last_frost,
    ),
    "weeks_to_first_frost": RuleQuantity(
        "weeks", "weeks until the first frost of one year in ten: -1 where no frost is so likely", of_year=_weeks_to_first_frost,
    ),
    "weeks_since_green_up": RuleQuantity(
        "weeks", "weeks since the soil warmed to the green-up temperature: -1 where the lawn stays green",
        lambda s, w: _weeks_since(s.green_up_day, w),
    ),
    "weeks_since_transition": RuleQuantity(
        "weeks", "weeks since nights grew warm enough for warm-season turf to take over from ryegrass: -1 where they never do",
        lambda s, w: _weeks_since(s.transition_day, w),
    ),
    "degree_days": RuleQuantity(
        "°C day", "growing degree days over the grass's base since the coldest day", lambda s, w: s.degree_days[week_days(w.week - 1)[-1]]
    ),
    "nitrogen_need": RuleQuantity(
        "g/m2 a week", "the grass's usual nitrogen in proportion to growth", of_year=nitrogen_by_week
    ),
    "mowing_interval": RuleQuantity(
        "days", "days between cuts by the one-third rule: 365 where nothing grows", of_year=_mowing_intervals
    ),
}

_FLAGS = frozenset(name for name, quantity in RULE_QUANTITIES.items() if quantity.is_flag)


@lru_cache(maxsize=1024)  # Each year asks the same rules.
def parse_rule(text: str) -> Formula:
    """The condition that a rule says. A yes-or-no quantity may stand alone.

    Raises FormulaError, its offset counted in `text`, for what is no condition or names no known quantity.
    """
    return parse_condition(text, _FLAGS, _check_rule)


def _check_rule(formula: Formula) -> None:
    check_names(formula, RULE_QUANTITIES)
    if not formula.is_condition:
        raise FormulaError(0, "the rule gives a number", "compare it with something, such as growth_share > 0.5")


def weekly_quantities(season: SeasonYear) -> tuple[Values, ...]:
    """Every rule quantity of each of the 52 weeks, in the units of RULE_QUANTITIES."""
    weekly = {name: quantity.weekly(season) for name, quantity in RULE_QUANTITIES.items()}
    return tuple({name: values[week] for name, values in weekly.items()} for week in range(WEEKS))


@dataclass(frozen=True)
class DueWeek:
    """A week (1 to 52) in which a task falls due, with what the rule read there."""

    week: int
    read: Mapping[str, float]


@dataclass(frozen=True)
class RuleWeeks:
    """What a rule says of each of the 52 weeks: whether `do_when` holds, and whether `not_when` forbids it. names: the quantities that both
    read; do_names: those of `do_when`."""

    holds: tuple[bool, ...]
    forbidden: tuple[bool, ...]
    names: frozenset[str]
    do_names: frozenset[str]


def rule_weeks(due: Due, quantities: tuple[Values, ...]) -> RuleWeeks:
    """A rule asked of every week; one of the other season group holds in none. Raises FormulaError for a rule that cannot be read."""
    formula = parse_rule(due.do_when)
    forbids = parse_rule(due.not_when) if due.not_when else None
    ours = due.season_group is None or bool(quantities[0][f"{due.season_group}_season"])
    return RuleWeeks(
        tuple(ours and bool(formula.evaluate(values)) for values in quantities),
        tuple(bool(forbids and forbids.evaluate(values)) for values in quantities),
        frozenset({*formula.names, *(forbids.names if forbids else ())}), frozenset(formula.names),
    )


def due_weeks(due: Due, quantities: tuple[Values, ...]) -> tuple[DueWeek, ...]:
    """The weeks in which a task falls due, in calendar order.

    due: the rule, with its season group, its least interval in weeks and its most times a year. quantities: from
    `weekly_quantities`. A rule that holds for a stretch of weeks falls due at its beginning, and again each time the interval
    has passed. Where the interval or the most times allow only one of two stretches, the one at the main renovation window wins.
    Raises FormulaError for a rule that cannot be read.
    """
    found = rule_weeks(due, quantities)
    holds = [each and not never for each, never in zip(found.holds, found.forbidden, strict=True)]
    if not any(holds):
        return ()
    first = _first_week(holds, quantities)
    chosen: list[int] = []
    last = None
    for step in range(WEEKS):
        week = (first + step) % WEEKS
        if holds[week] and (last is None or step - last >= due.every_weeks):
            chosen.append(week)
            last = step
    # The last of the year may crowd the first of the next.
    if len(chosen) > 1 and (chosen[0] - chosen[-1]) % WEEKS < due.every_weeks:
        chosen.pop()
    return tuple(
        DueWeek(week + 1, {name: quantities[week][name] for name in found.names}) for week in sorted(chosen[: due.at_most])
    )


def _first_week(holds: list[bool], quantities: tuple[Values, ...]) -> int:
    """The beginning of a stretch from which to count intervals.

    That is the stretch which holds the opening of the main renovation window, else the next one after it: of two windows in
    a year the main one keeps its tasks, and no stretch is cut by New Year.
    """
    opening = next((week for week in range(WEEKS) if quantities[week]["weeks_since_window_start"] == 0), 0)
    if holds[opening]:
        return next(((opening - back) % WEEKS for back in range(WEEKS) if not holds[opening - back - 1]), opening)
    return next(((opening + ahead) % WEEKS for ahead in range(WEEKS) if holds[(opening + ahead) % WEEKS]), opening)
