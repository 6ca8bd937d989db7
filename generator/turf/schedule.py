"""When a task falls due: its rule, asked of every week of a computed year.

Rules compare plain numbers: `soil_temperature > 14` means 14 °C, because the table below says that soil temperature is
given in °C. Yes-or-no quantities stand alone: `renovation_window and not wet`. No rule names a month.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from generator.formula import Formula, FormulaError, check_names, parse
from generator.model.task import Due
from generator.turf.calendar_days import DAYS, WEEK_OF_DAY, WEEKS, week_days
from generator.turf.season import SeasonYear, Week

# What weeks_to_... and weeks_since_... say when there is no such day: no comparison with a count of weeks holds for it.
NEVER = -1.0
A_YEAR = float(WEEKS)

Values = dict[str, float]


@dataclass(frozen=True)
class RuleQuantity:
    """One quantity that a rule may name: its unit as a rule reads it, its meaning, and how a week gets it."""

    unit: str
    meaning: str
    of: Callable[[SeasonYear, Week], float]
    is_flag: bool = False


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
    "frost_probability": RuleQuantity("1", "chance that a night of the week has air frost, 0 to 1", lambda s, w: w.frost_probability),
    "ground_frost_probability": RuleQuantity(
        "1", "chance that a night of the week has ground frost, 0 to 1", lambda s, w: w.ground_frost_probability
    ),
    "daylight": RuleQuantity("h", "hours from sunrise to sunset", lambda s, w: w.daylight_h),
    "rain": RuleQuantity("mm/week", "mean rain of the week", lambda s, w: w.rain_mm),
    "reference_evapotranspiration": RuleQuantity(
        "mm/week", "what well-watered reference grass gives off", lambda s, w: w.reference_evapotranspiration_mm
    ),
    "water_need": RuleQuantity("mm/week", "what the lawn uses beyond the rain it can use", lambda s, w: w.water_need_mm),
    "renovation_window": RuleQuantity(
        "yes or no", "the week lies in a renovation window", lambda s, w: float("renovation" in w.in_windows), True
    ),
    "overseeding_window": RuleQuantity(
        "yes or no", "the week lies in an overseeding window", lambda s, w: float("overseeding" in w.in_windows), True
    ),
    "wet": RuleQuantity("yes or no", "the week lies in a wet season", lambda s, w: float(w.wet), True),
    "dormant": RuleQuantity("yes or no", "the grass stands still", lambda s, w: float(w.growth_class == "dormant"), True),
    "warm_season": RuleQuantity("yes or no", "a warm-season grass", lambda s, w: float(s.grass.group == "warm"), True),
    "cool_season": RuleQuantity("yes or no", "a cool-season grass", lambda s, w: float(s.grass.group == "cool"), True),
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
}

_FLAG = re.compile(r"\b(%s)\b(?! *[<>=!])" % "|".join(name for name, q in RULE_QUANTITIES.items() if q.is_flag))
_ASKED = " > 0)"


def parse_rule(text: str) -> Formula:
    """The condition that a rule says. A yes-or-no quantity may stand alone.

    Raises FormulaError, its offset counted in `text`, for what is no condition or names no known quantity.
    """
    flags = list(_FLAG.finditer(text))
    spelt = _FLAG.sub(rf"(\1{_ASKED}", text)

    def as_written(offset: int) -> int:
        """An offset in the spelt-out text, counted in the author's."""
        added = 0
        for flag in flags:
            if flag.start() + added >= offset:
                break
            added += min(len(_ASKED) + 1, max(1, offset - flag.end() - added))
        return max(0, min(offset - added, len(text)))

    try:
        formula = parse(spelt)
        check_names(formula, RULE_QUANTITIES)
        if not formula.is_condition:
            raise FormulaError(0, "the rule gives a number", "compare it with something, as in growth_share > 0.5")
    except FormulaError as error:
        raise FormulaError(as_written(error.offset), error.what, error.instead) from error
    return formula


def weekly_quantities(season: SeasonYear) -> tuple[Values, ...]:
    """Every rule quantity of each of the 52 weeks, in the units of RULE_QUANTITIES."""
    return tuple(
        {name: quantity.of(season, week) for name, quantity in RULE_QUANTITIES.items()} for week in season.weeks
    )


@dataclass(frozen=True)
class DueWeek:
    """A week (1 to 52) in which a task falls due, with what the rule read there."""

    week: int
    read: Mapping[str, float]


def due_weeks(due: Due, quantities: tuple[Values, ...]) -> tuple[DueWeek, ...]:
    """The weeks in which a task falls due, in calendar order.

    due: the rule, with its season group and its least interval in weeks. quantities: from `weekly_quantities`.
    A rule that holds for a stretch of weeks falls due at its beginning, and again each time the interval has passed. Where the
    interval allows only one of two stretches, the one at the main renovation window wins.
    Raises FormulaError for a rule that cannot be read.
    """
    if due.season_group is not None and not quantities[0][f"{due.season_group}_season"]:
        return ()
    formula = parse_rule(due.do_when)
    holds = [bool(formula.evaluate(values)) for values in quantities]
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
        DueWeek(week + 1, {name: quantities[week][name] for name in formula.names}) for week in sorted(chosen)
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
