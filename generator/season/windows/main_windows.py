"""Windows for renovation and overseeding: from, to, and the preferred span between them, each with its reason, or why there is none."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from generator.season.calendar_days import DAYS, week_number
from generator.season.climate.climate import Daily
from generator.season.engine_rules import GrassSeason, WindowRules
from generator.season.reasons import Day, Reason, Several, because, both, count, depth_a_week, growth, times
from generator.season.windows.cool_limits import cool_limits
from generator.season.windows.limits import Limit, Year
from generator.season.windows.preferred import Preferred, preferred
from generator.season.windows.warm_limits import warm_limits
from generator.season.winter import risked_in_winter

WHOLE_DEGREES = because("whole-degrees")
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
    last: int
    preferred: Preferred
    why_first: tuple[Reason, ...]
    why_last: tuple[Reason, ...]
    limited_by: tuple[tuple[str, ...], tuple[str, ...]]
    is_main: bool
    notes: tuple[Reason, ...] = ()
    undecided_first: tuple[int, int] | None = None
    undecided_last: tuple[int, int] | None = None

    @property
    def best(self) -> int:
        """The one date to name: the middle of the preferred span."""
        return self.preferred.best

    @property
    def days(self) -> int:
        return (self.last - self.first) % DAYS + 1

    def holds(self, day: int) -> bool:
        return (day - self.first) % DAYS < self.days

    @property
    def why(self) -> Several:
        """The reasons of all three dates, and what has to be said beside them."""
        return Several((
            _edge("window-from", self.first, self.undecided_first, self.why_first),
            because("window-preferred", first=Day(self.preferred.first), last=Day(self.preferred.last), why=self.preferred.why),
            _edge("window-until", self.last, self.undecided_last, self.why_last),
            *self.notes,
        ), "next-sentence")


def _edge(code: str, day: int, undecided: tuple[int, int] | None, why: tuple[Reason, ...]) -> Reason:
    between = because("between-days", earliest=Day(undecided[0]), latest=Day(undecided[1])) if undecided else because("nothing")
    return because(code, day=Day(day), undecided=between, why=both(why))


@dataclass(frozen=True)
class Windows:
    """The windows of one kind in a year, the main one first; `why_none` is the reason when there is none.

    undecided: there is none, but half a printed degree would give one.
    """

    windows: tuple[Window, ...]
    why_none: Reason | None
    undecided: bool = False


def limits(year: Year, rules: WindowRules, grass: GrassSeason, recovery_weeks: float, sown: bool) -> list[Limit]:
    """Every limit that applies to this work here. recovery_weeks: of full growth [weeks]. sown: seed goes in with it."""
    if rules.group == "warm":
        return warm_limits(year, rules, recovery_weeks, grass.recovery_weeks * rules.longest_stretch)
    return cool_limits(year, rules, round(recovery_weeks * 7), round(grass.germination_days) if sown else 0)


def windows(year: Year, rules: WindowRules, grass: GrassSeason, recovery_weeks: float, sown: bool) -> Windows:
    """When turf may be opened up here so that it closes again.

    recovery_weeks: of full growth, until it has closed over or its seedlings stand [weeks]. sown: seed goes in with it. Every other number
    is in `rules`. Returns the windows, main first, or the reason why there is none.
    Source: rules and their sources in data/season-groups.yml; how far they agree with what public bodies print is on the page of methods.
    """
    if year.growth.best < rules.least_growth:
        return Windows((), because("no-growing-season", best=growth(year.growth.best), least=times(rules.least_growth)))
    rule_list = limits(year, rules, grass, recovery_weeks, sown)
    days = round(recovery_weeks * 7)
    found = [_window(year, rules, rule_list, first, last) for first, last in runs_of(allowed_by(rule_list))]
    long_enough = [window for window in found if window.days >= rules.shortest_weeks * 7]
    if not long_enough:
        return Windows((), why_none(rule_list, found, rules.shortest_weeks))
    main = max(long_enough, key=lambda window: _merit(year, rules, window))
    ordered = sorted(long_enough, key=lambda window: (window is not main, window.first))
    risk = risked_in_winter(year.weather, grass)
    return Windows(tuple(_marked(replace(window, notes=(risk,) if risk else ()), window is main, year, rules, days) for window in ordered), None)


def _merit(year: Year, rules: WindowRules, window: Window) -> tuple[bool, int]:
    """Warm-season work belongs to the warming half of the year, cool-season work to the cooling half; then the longer one."""
    return year.is_warming(window.best) == (rules.group == "warm"), window.days


def _marked(window: Window, is_main: bool, year: Year, rules: WindowRules, days: int) -> Window:
    notes = list(window.notes)
    if not is_main and rules.group == "cool":
        notes.append(because("second-best"))
    if rules.group == "cool" and not year.is_warming(window.first) and (dry := _dry_start(year, rules, window.first)):
        notes.append(dry)
    if year.growth.best < rules.little_growth:
        notes.append(because("little-growth", best=growth(year.growth.best)))
    first, last = undecided_edges(year, window, days)
    if first or last:
        notes.append(WHOLE_DEGREES)
    return replace(window, is_main=is_main, notes=tuple(notes), undecided_first=first, undecided_last=last)


def _dry_start(year: Year, rules: WindowRules, day: int) -> Reason | None:
    """That rain on a day is too little beside what evaporates for seed to come up by itself, or None."""
    rain, evaporates = year.climate.rain_mm[day], year.weather.reference_evapotranspiration_mm[day]
    return because("dry-start", rain=depth_a_week(7 * rain), evaporates=depth_a_week(7 * evaporates)) if rain < rules.moist_summer * evaporates else None


def undecided_edges(year: Year, window: Window, days: int, curve_c: Daily | None = None) -> tuple[tuple[int, int] | None, tuple[int, int] | None]:
    """For each edge of a window the earliest and latest day it may fall on, where temperatures are printed in whole degrees.

    days: looked ahead by the rules [days]; the last day hangs on what the weather is so much later. curve_c: what the rules
    read, 365 days [°C]; the mean air temperature when left out.
    A printed 14 °C stands for anything from 13.5 to 14.5, so every day on which it lies within half a step of its value
    at the edge is undecided. None for an edge that rain sets, or that no rule sets. Half of the printed step.
    """
    if year.weather.temperature_step_c < 1:
        return None, None

    def stretch(day: int) -> tuple[int, int]:
        mean, half = curve_c or year.climate.mean_c, year.weather.temperature_step_c / 2
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


def _window(year: Year, rules: WindowRules, rule_list: Sequence[Limit], first: int, last: int) -> Window:
    return window_between(rule_list, first, last, preferred(year, rules, first, last))


def window_between(rule_list: Sequence[Limit], first: int, last: int, preferred: Preferred) -> Window:
    """The window from its first to its last day number, with the reasons of the rules that set them."""
    opening = [limit for limit in rule_list if limit.opens is not None and not limit.allowed[first - 1]]
    closing = [limit for limit in rule_list if limit.closes is not None and not limit.allowed[(last + 1) % DAYS]]
    always = (because("never-closed"),)
    return Window(
        first, last, preferred,
        tuple(limit.opens(first) for limit in opening if limit.opens) or always,
        tuple(limit.closes(last) for limit in closing if limit.closes) or always,
        (tuple(limit.name for limit in opening), tuple(limit.name for limit in closing)),
        is_main=True,
    )


def why_none(rule_list: Sequence[Limit], found: Sequence[Window], shortest_weeks: float) -> Reason:
    """Which rule forbids the whole year, or which rules leave nothing between them.

    found: the windows that were too short. shortest_weeks: a window shorter than this is not offered [weeks].
    """
    never = [limit.never for limit in rule_list if not any(limit.allowed)]
    if never:
        return because("never-allowed", why=Several(tuple(never), "semicolon"))
    if found:
        longest = max(found, key=lambda window: window.days)
        return because(
            "too-short", days=count(longest.days), first=Day(longest.first), last=Day(longest.last), shortest=times(shortest_weeks),
            opens=both(longest.why_first), closes=both(longest.why_last),
        )
    return because("no-common-day", allowed=Several(tuple(
        because("rule-allows", rule=because(f"rule-{limit.name.replace(' ', '-')}"), weeks=_week_ranges(limit.allowed))
        for limit in rule_list if not all(limit.allowed)
    ), "comma"))


def _week_ranges(allowed: Sequence[bool]) -> Several:
    return both(tuple(
        because("weeks-to", first=count(week_number(first)), last=count(week_number(last))) for first, last in runs_of(allowed)
    ))
