"""Windows that other rules set: winter ryegrass into warm-season turf, and the pre-emergent against summer grass."""

from collections.abc import Callable, Sequence
from dataclasses import replace

from generator.season.calendar_days import DAYS, week_number
from generator.season.climate.climate import Daily
from generator.season.engine_rules import OversowingRules, PreEmergentRules, WindowRules
from generator.season.reasons import NumberSaid, Reason, because, count, limit_degrees
from generator.season.windows.cool_limits import cold_limit
from generator.season.windows.limits import Limit, Year, days_until
from generator.season.windows.main_windows import WHOLE_DEGREES, Windows, allowed_by, runs_of, undecided_edges, why_none, window_between
from generator.season.windows.preferred import Preferred, before_cold, within
from generator.season.windows.warm_limits import rise

THERMOMETER = because("thermometer", depth=NumberSaid(100, "mm", "g"))
NOT_OVERSOWN = because("not-oversown")
NOT_INTO_COOL = because("not-into-cool")
NO_FIGURE = because("no-soil-figure")


def oversowing(year: Year, oversown: bool, own: WindowRules, rules: OversowingRules) -> Windows:
    """When ryegrass may be sown into warm-season turf for a green winter.

    year: of the warm-season grass; every series 365 days. oversown: the grass takes it at all. own: the rules of its group.
    Nights have cooled, so that the turf slows and seedlings stand, summer is behind, and weeks are left before the soil is too cold for
    seed or the depth of winter begins. Source: data/season-groups.yml, `ryegrass_night` and what stands beside it.
    """
    if own.group == "cool":
        return Windows((), NOT_INTO_COOL)
    if not oversown:
        return Windows((), NOT_OVERSOWN)
    seed = rules.ryegrass_rules
    days = round(seed.seedling_weeks[0] * 7)
    limits = [_half_of_the_year(year, warming=False), _cool_nights(year, rules), _summer_over(year, rules), cold_limit(year, seed, days)]

    def best(first: int, last: int) -> Preferred:
        early = before_cold(year, seed, first, last)
        if early is not None:
            return early
        why = because("best-while-soil-warm", week=count(week_number(first)), soil=year.degrees(year.climate.soil_c[first]))
        return within(first, last, first, round(seed.preferred_weeks * 7), why)

    return _found(year, limits, days, own.shortest_weeks, best)


def pre_emergent(year: Year, rules: PreEmergentRules | None, turn_k: float) -> Windows:
    """When a pre-emergent against summer grass goes on: before the soil reaches the temperature at which its seed sprouts.

    year: every series 365 days. turn_k: above its lowest before the soil is said to be warming [K]. Source: data/tasks/pre-emergent.yml for
    the usual and the latest of the services' figures, which are those of germination; it opens at `seed_soil` of season-groups.yml.
    """
    if rules is None:
        return Windows((), NO_FIGURE)
    soil = year.climate.soil_c
    coldest = min(soil)
    lowest, highest = year.degrees(coldest), year.degrees(max(soil))
    # Where winter soil is hardly colder than that, summer grass waits for it to have warmed a little.
    latest = rules.latest_soil_c if coldest > rules.latest_soil_c else max(rules.latest_soil_c, coldest + 2 * turn_k)
    warm_enough = max(rules.earliest_soil_c, coldest + turn_k)
    early, late, usual = (limit_degrees(mark) for mark in (rules.earliest_soil_c, latest, rules.usual_soil_c))
    limits = [
        _half_of_the_year(year, warming=True),
        Limit(
            "soil warm enough", tuple(value >= warm_enough for value in soil),
            lambda day: because("soil-warmed", soil=year.degrees(soil[day]), usual=usual), None,
            because("soil-never-warms", mark=early, highest=highest),
        ),
        Limit(
            "soil not too warm", tuple(value <= latest for value in soil), None,
            lambda day: because("summer-grass-sprouts", week=count(week_number(day + 1)), mark=late),
            because("summer-grass-any-time", mark=late, lowest=lowest),
        ),
    ]

    def best(first: int, last: int) -> Preferred:
        length = (last - first) % DAYS
        sprouts = days_until(value > rules.usual_soil_c for value in soil)[first]
        return within(first, last, first, min(max(0, sprouts - 1), length), because("in-place-by", usual=usual))

    return _found(year, limits, 0, 0, best, soil)


def _cool_nights(year: Year, rules: OversowingRules) -> Limit:
    nights, mark = year.climate.minimum_c, limit_degrees(rules.night_c)
    return Limit(
        "cool nights", tuple(value <= rules.night_c for value in nights),
        lambda day: because("nights-cooled", night=year.degrees(nights[day]), mark=mark), None,
        because("nights-never-cool", mark=mark, lowest=year.degrees(min(nights))),
    )


def _summer_over(year: Year, rules: OversowingRules) -> Limit:
    risen, mean = rise(year), year.climate.mean_c
    return Limit(
        "summer over", tuple(value <= rules.rise for value in risen),
        lambda day: because("summer-behind", mean=year.degrees(mean[day]), highest=year.degrees(year.climate.highest_mean_c)), None, because("never-turns"),
    )


def _half_of_the_year(year: Year, warming: bool) -> Limit:
    mean = year.climate.mean_c

    def says(day: int) -> Reason:
        turned = "turned-at-lowest" if year.is_warming(day) else "turned-at-highest"
        return because(turned, mean=year.degrees(mean[day]), week=count(week_number(day)))

    return Limit(
        "warming" if warming else "cooling", tuple(each == warming for each in year.climate.warming),
        says, lambda day: says(day + 1), because("never-turns"),
    )


def _found(
    year: Year, limits: Sequence[Limit], days: int, shortest_weeks: float, best: Callable[[int, int], Preferred],
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
