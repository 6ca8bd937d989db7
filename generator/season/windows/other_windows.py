"""Windows that other rules set: winter ryegrass into warm-season turf, and the pre-emergent against summer grass."""

from collections.abc import Callable, Sequence
from dataclasses import replace

from generator.season.calendar_days import DAYS, week_number
from generator.season.climate.climate import Daily
from generator.season.engine_rules import OversowingRules, PreEmergentRules, WindowRules
from generator.season.growth import yearly_growth
from generator.season.reasons import NumberSaid, Reason, because, count, limit_degrees, share
from generator.season.windows.limits import Limit, Year, growth_limits, heat_limit
from generator.season.windows.main_windows import WHOLE_DEGREES, Windows, allowed_by, runs_of, undecided_edges, why_none, window_between

THERMOMETER = because("thermometer", depth=NumberSaid(100, "mm", "g"))
NOT_OVERSOWN = because("not-oversown")
NOT_INTO_COOL = because("not-into-cool")
NO_FIGURE = because("no-soil-figure")


def oversowing(year: Year, oversown: bool, own: WindowRules, rules: OversowingRules) -> Windows:
    """When ryegrass may be sown into warm-season turf for a green winter.

    year: of the warm-season grass; every series 365 days. oversown: the grass takes it at all. own: the rules of its group.
    The turf must be past its best, the soil cooled to the published temperature, and weeks of growing weather left for the
    ryegrass before its own slow season. Source: data/tasks/overseed.yml for the soil; the rest as for sowing cool-season grass.
    """
    if own.group == "cool":
        return Windows((), NOT_INTO_COOL)
    if not oversown:
        return Windows((), NOT_OVERSOWN)
    if rules.soil_c is None:
        return Windows((), NO_FIGURE)
    days = round(rules.establishment_weeks * 7)
    seed = replace(
        year, growth=yearly_growth(year.climate.mean_c, rules.ryegrass), surface_running=False, optimum_c=rules.ryegrass[0]
    )
    limits = [
        _slowing(year, own), _cooled(year, rules.soil_c), _half_of_the_year(year, warming=False),
        *growth_limits(seed, rules.ryegrass_rules, days), heat_limit(seed, rules.ryegrass_rules, days),
    ]

    def best(first: int, last: int) -> tuple[int, Reason]:
        return first, because("best-while-soil-warm", week=count(week_number(first)), soil=year.degrees(year.climate.soil_c[first]))

    return _found(year, limits, days, own.shortest_weeks, best)


def pre_emergent(year: Year, rules: PreEmergentRules | None) -> Windows:
    """When a pre-emergent against summer grass goes on: while the soil warms through the published temperatures.

    year: every series 365 days. Source: data/tasks/pre-emergent.yml, the earliest and the latest of the services' figures.
    """
    if rules is None:
        return Windows((), NO_FIGURE)
    soil = year.climate.soil_c
    lowest, highest = year.degrees(min(soil)), year.degrees(max(soil))
    early, late = limit_degrees(rules.earliest_soil_c), limit_degrees(rules.latest_soil_c)
    limits = [
        _half_of_the_year(year, warming=True),
        Limit(
            "soil warm enough", tuple(value >= rules.earliest_soil_c for value in soil),
            lambda day: because("soil-warmed", soil=year.degrees(soil[day]), earliest=early), None,
            because("soil-never-warms", mark=early, highest=highest),
        ),
        Limit(
            "soil not too warm", tuple(value <= rules.latest_soil_c for value in soil), None,
            lambda day: because("summer-grass-sprouts", week=count(week_number(day + 1)), mark=late),
            because("summer-grass-any-time", mark=late, lowest=lowest),
        ),
    ]

    def best(first: int, last: int) -> tuple[int, Reason]:
        span = [(first + ahead) % DAYS for ahead in range((last - first) % DAYS + 1)]
        day = next((day for day in reversed(span) if soil[day] <= rules.usual_soil_c), first)
        return day, because("in-place-by", soil=year.degrees(soil[day]), usual=limit_degrees(rules.usual_soil_c))

    return _found(year, limits, 0, 0, best, soil)


def _slowing(year: Year, rules: WindowRules) -> Limit:
    of_best = year.growth.share
    return Limit(
        "turf slowing", tuple(value < rules.peak_share for value in of_best),
        lambda day: because("turf-past-best", share=share(of_best[day])),
        lambda day: because("turf-back", share=share(of_best[(day + 1) % DAYS])),
        because("turf-never-slows", share=share(rules.peak_share)),
    )


def _cooled(year: Year, soil_c: float) -> Limit:
    soil = year.climate.soil_c
    return Limit(
        "soil cooled", tuple(value <= soil_c for value in soil),
        lambda day: because("soil-cooled", soil=year.degrees(soil[day]), mark=limit_degrees(soil_c)),
        lambda day: because("soil-warms-past", mark=limit_degrees(soil_c)),
        because("soil-never-cools", mark=limit_degrees(soil_c), lowest=year.degrees(min(soil))),
    )


def _half_of_the_year(year: Year, warming: bool) -> Limit:
    mean = year.climate.mean_c

    def says(day: int) -> Reason:
        turned = "turned-at-lowest" if year.is_warming(day) else "turned-at-highest"
        return because(turned, mean=year.degrees(mean[day]), week=count(week_number(day)))

    return Limit(
        "warming" if warming else "cooling", tuple(year.is_warming(day) == warming for day in range(DAYS)),
        says, lambda day: says(day + 1), because("never-turns"),
    )


def _found(
    year: Year, limits: Sequence[Limit], days: int, shortest_weeks: float, best: Callable[[int, int], tuple[int, Reason]],
    curve_c: Daily | None = None,
) -> Windows:
    found = [window_between(limits, first, last, best(first, last)) for first, last in runs_of(allowed_by(limits))]
    kept = [window for window in found if window.days >= shortest_weeks * 7]
    if not kept:
        return Windows((), why_none(limits, found, shortest_weeks))
    main = max(kept, key=lambda window: window.days)
    marked = []
    for window in sorted(kept, key=lambda window: (window is not main, window.first)):
        first, last = undecided_edges(year, window, days, curve_c)
        notes = (THERMOMETER, WHOLE_DEGREES) if first or last else (THERMOMETER,)
        marked.append(replace(window, is_main=window is main, notes=notes, undecided_first=first, undecided_last=last))
    return Windows(tuple(marked), None)
