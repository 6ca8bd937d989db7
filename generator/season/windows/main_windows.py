"""Windows for renovation and overseeding: from, best, to, each with its reason, or why there is none."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import accumulate

from generator.season.calendar_days import DAYS, day_words, week_number
from generator.season.climate.climate import Daily
from generator.season.windows.limits import Limit, Year, limits
from generator.season.engine_rules import WindowRules

# A best date keeps this clear of the closing edge, so that a rained-off week does not close the window.
MARGIN_DAYS = 7
WHOLE_DEGREES = (
    "Temperatures here were printed in whole degrees, so a date that half a degree would shift is undecided; go by the lawn and the soil."
)
# Near the top and bottom of the year the temperature stands still; no date is then called more than a month uncertain.
LONGEST_DOUBT_DAYS = 30
# Rules whose edge half a degree does not move: rain, and the turn of the year.
SURE = {"wet season", "warming", "cooling"}


@dataclass(frozen=True)
class Window:
    """One stretch of the year, inclusive day numbers 0 to 364; `first` above `last` crosses New Year.

    `limited_by` names the rules that set the first and the last day. `is_main` marks the better of two windows in a year.
    `undecided_first` and `undecided_last`: where the normals are printed in whole degrees, the earliest and latest day that
    edge may fall on, or None where it stands as it is.
    """

    first: int
    best: int
    last: int
    why_first: tuple[str, ...]
    why_best: str
    why_last: tuple[str, ...]
    limited_by: tuple[tuple[str, ...], tuple[str, ...]]
    is_main: bool
    notes: tuple[str, ...] = ()
    undecided_first: tuple[int, int] | None = None
    undecided_last: tuple[int, int] | None = None

    @property
    def days(self) -> int:
        return (self.last - self.first) % DAYS + 1

    def holds(self, day: int) -> bool:
        return (day - self.first) % DAYS < self.days

    @property
    def why(self) -> str:
        """The reasons of all three dates in one paragraph."""
        parts = [
            f"From {day_words(self.first)}{_undecided_words(self.undecided_first)}: {' and '.join(self.why_first)}.",
            f"Best about {day_words(self.best)}: {self.why_best}.",
            f"Until {day_words(self.last)}{_undecided_words(self.undecided_last)}: {' and '.join(self.why_last)}.",
            *self.notes,
        ]
        return " ".join(parts)


def _undecided_words(days: tuple[int, int] | None) -> str:
    return f", undecided between {day_words(days[0])} and {day_words(days[1])}" if days else ""


@dataclass(frozen=True)
class Windows:
    """The windows of one kind in a year, the main one first; `why_none` is the reason when there is none.

    undecided: there is none, but half a printed degree would give one.
    """

    windows: tuple[Window, ...]
    why_none: str | None
    undecided: bool = False


def recovery_days(recovery_weeks: float, year: Year, rules: WindowRules) -> int:
    """Days the surface needs to close [days], longer where the place gives this grass little growth.

    recovery_weeks: what it needs where it grows well [weeks]. The stretch is an assumption of data/season-groups.yml.
    """
    stretch = rules.little_growth_stretch if year.growth.best < rules.little_growth else 1.0
    return round(recovery_weeks * 7 * stretch)


def windows(year: Year, rules: WindowRules, recovery_weeks: float) -> Windows:
    """When turf may be opened up here so that it closes again.

    recovery_weeks: growing weather needed to close over [weeks]. Every other number is in `rules`.
    Returns the windows, main first, or the reason why there is none.
    Source: rules and their sources in data/season-groups.yml; the growth rule follows the model's authors, who schedule
    aggressive work while growth potential is above half and rising; here it is judged against what the place itself reaches.
    """
    if year.growth.best < rules.least_growth:
        return Windows((), (
            f"this place gives the grass no real growing season: its growth potential never passes {year.growth.best:.2f}"
            f" (a window needs {rules.least_growth:g})"
        ))
    days = recovery_days(recovery_weeks, year, rules)
    rule_list = limits(year, rules, days)
    found = [_window(year, rules, rule_list, first, last, days) for first, last in runs_of(allowed_by(rule_list))]
    long_enough = [window for window in found if window.days >= rules.shortest_weeks * 7]
    if not long_enough:
        return Windows((), why_none(rule_list, found, rules.shortest_weeks))
    main = max(long_enough, key=lambda window: _merit(year, rules, window))
    ordered = sorted(long_enough, key=lambda window: (window is not main, window.first))
    return Windows(tuple(_marked(window, window is main, year, rules, days) for window in ordered), None)


def _merit(year: Year, rules: WindowRules, window: Window) -> tuple[bool, int]:
    """Warm-season work belongs to the warming half of the year, cool-season work to the cooling half; then the longer one."""
    return year.is_warming(window.best) == (rules.group == "warm"), window.days


def _marked(window: Window, is_main: bool, year: Year, rules: WindowRules, days: int) -> Window:
    notes = list(window.notes)
    if not is_main and rules.group == "cool":
        notes.append("Second best: seed sown now meets weeds and then summer.")
    if year.growth.best < rules.little_growth:
        notes.append(
            f"There is little growth here: at best {year.growth.best:.2f} of what the grass can do, so allow "
            f"{rules.little_growth_stretch:g} times the usual recovery."
        )
    first, last = undecided_edges(year, window, days)
    if first or last:
        notes.append(WHOLE_DEGREES)
    return replace(window, is_main=is_main, notes=tuple(notes), undecided_first=first, undecided_last=last)


def undecided_edges(year: Year, window: Window, days: int, curve_c: Daily | None = None) -> tuple[tuple[int, int] | None, tuple[int, int] | None]:
    """For each edge of a window the earliest and latest day it may fall on, where temperatures are printed in whole degrees.

    days: looked ahead by the rules [days]; the last day hangs on what the weather is so much later. curve_c: what the rules
    read, 365 days [°C]; the mean air temperature when left out.
    A printed 14 °C stands for anything from 13.5 to 14.5, so every day on which it lies within half a step of its value
    at the edge is undecided. None for an edge that rain sets, or that no rule sets. Half of the printed step.
    """
    if year.temperature_step_c < 1:
        return None, None

    def stretch(day: int) -> tuple[int, int]:
        mean, half = curve_c or year.climate.mean_c, year.temperature_step_c / 2
        near = [abs(value - mean[day % DAYS]) < half for value in mean]
        before = next((back for back in range(LONGEST_DOUBT_DAYS) if not near[(day - back - 1) % DAYS]), LONGEST_DOUBT_DAYS)
        after = next((ahead for ahead in range(LONGEST_DOUBT_DAYS) if not near[(day + ahead + 1) % DAYS]), LONGEST_DOUBT_DAYS)
        return before, after

    def by_temperature(names: tuple[str, ...]) -> bool:
        return bool(names) and not set(names) <= SURE

    first = last = None
    # No edge may pass the best date.
    to_best, from_best = (window.best - window.first) % DAYS, (window.last - window.best) % DAYS
    if by_temperature(window.limited_by[0]):
        before, after = stretch(window.first)
        first = ((window.first - before) % DAYS, (window.first + min(after, to_best)) % DAYS)
    if by_temperature(window.limited_by[1]):
        before, after = stretch(window.last + days)
        last = ((window.last - min(before, from_best)) % DAYS, (window.last + after) % DAYS)
    return first, last


def allowed_by(rule_list: Sequence[Limit]) -> list[bool]:
    """For each of 365 days, whether every rule allows it."""
    return [all(day) for day in zip(*(limit.allowed for limit in rule_list))]


def runs_of(allowed: Sequence[bool]) -> list[tuple[int, int]]:
    """Stretches of allowed days as first and last day; a stretch over New Year is one stretch."""
    if all(allowed):
        return [(0, DAYS - 1)]
    firsts = [day for day in range(DAYS) if allowed[day] and not allowed[day - 1]]
    lasts = [day for day in range(DAYS) if allowed[day] and not allowed[(day + 1) % DAYS]]
    if firsts and lasts and lasts[0] < firsts[0]:
        lasts = lasts[1:] + lasts[:1]
    return list(zip(firsts, lasts, strict=True))


def _window(
    year: Year, rules: WindowRules, rule_list: Sequence[Limit], first: int, last: int, days: int
) -> Window:
    return window_between(rule_list, first, last, _best(year, rules, first, last, days))


def window_between(rule_list: Sequence[Limit], first: int, last: int, best: tuple[int, str]) -> Window:
    """The window from its first to its last day number, with the reasons of the rules that set them.

    best: the day number of the best date, and its reason.
    """
    opening = [limit for limit in rule_list if limit.opens and not limit.allowed[first - 1]]
    closing = [limit for limit in rule_list if limit.closes and not limit.allowed[(last + 1) % DAYS]]
    always = ("no rule closes it at any time of the year",)
    return Window(
        first, best[0], last,
        tuple(limit.opens(first) for limit in opening) or always,
        best[1],
        tuple(limit.closes(last) for limit in closing) or always,
        (tuple(limit.name for limit in opening), tuple(limit.name for limit in closing)),
        is_main=True,
    )


def _best(year: Year, rules: WindowRules, first: int, last: int, days: int) -> tuple[int, str]:
    """The best start.

    Warm-season grass with a winter: the first day of strong and rising growth. Otherwise among the days whose recovery
    is near the strongest, the last while the year cools (less heat, fewer weeds), the first while it warms, and the middle
    one where the year makes no difference.
    """
    span = [(first + ahead) % DAYS for ahead in range((last - first) % DAYS + 1)]
    safe = span[:-MARGIN_DAYS] or span
    seasonal = year.growth.best and year.growth.least / year.growth.best < rules.no_slack_share
    if rules.group == "warm" and seasonal:
        for day in safe:
            if year.growth.swing[day] >= rules.best_share and year.is_warming(day):
                return day, (
                    f"growth has come {year.growth.swing[day]:.0%} of the way to its yearly best and is rising, "
                    f"in week {week_number(day)}, with the rest of the growing season ahead"
                )
    running = (0.0, *accumulate(year.growth.potential * 2))
    days = max(days, 1)  # What heals at once is judged by the day itself.
    years, rest = divmod(days, DAYS)  # A recovery may take longer than a year.
    ahead = [(years * running[DAYS] + running[day + rest] - running[day]) / days for day in safe]
    strongest = max(ahead)
    good = [day for day, growth in zip(safe, ahead) if growth >= rules.near_best * strongest]
    if not seasonal:
        return good[len(good) // 2], (
            "growth hardly changes through the window, so its middle is best, furthest from both edges"
        )
    warming = year.is_warming(safe[ahead.index(strongest)])
    best = good[0] if warming else good[-1]
    mean = ahead[safe.index(best)]
    which = "early, with time in hand," if warming else "as cool as it gets"
    return best, (
        f"{which} while the {days / 7:.0f} weeks of recovery still give {mean / strongest if strongest else 1:.0%} of the strongest growth "
        f"(a mean growth potential of {mean:.2f})"
    )


def why_none(rule_list: Sequence[Limit], found: Sequence[Window], shortest_weeks: float) -> str:
    """Which rule forbids the whole year, or which rules leave nothing between them.

    found: the windows that were too short. shortest_weeks: a window shorter than this is not offered [weeks].
    """
    never = [limit.never for limit in rule_list if not any(limit.allowed)]
    if never:
        return "; ".join(never)
    if found:
        longest = max(found, key=lambda window: window.days)
        return (
            f"the weather leaves only {longest.days} days, from {day_words(longest.first)} to {day_words(longest.last)}, "
            f"and a window shorter than {shortest_weeks:g} weeks is not worth planning on: "
            f"{' and '.join(longest.why_first)}, but {' and '.join(longest.why_last)}"
        )
    parts = [f"{limit.name} allows {_week_ranges(limit.allowed)}" for limit in rule_list if not all(limit.allowed)]
    return "the rules leave no common day: " + ", ".join(parts)


def _week_ranges(allowed: Sequence[bool]) -> str:
    return " and ".join(f"weeks {week_number(first)} to {week_number(last)}" for first, last in runs_of(allowed))
