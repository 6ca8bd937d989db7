"""What must hold for warm-season turf to be opened up on a day: it is green, frost is past, and it closes again in time."""

from collections.abc import Sequence
from itertools import accumulate, cycle, islice

from generator.season.calendar_days import DAYS, week_number
from generator.season.engine_rules import WindowRules
from generator.season.reasons import Reason, because, count, growth, limit_degrees, share, times
from generator.season.windows.limits import Flags, Limit, Year, days_until, frost_days_watched, frost_limit, next_bad, weeks_said, wet_limit


def warm_limits(year: Year, rules: WindowRules, recovery_weeks: float, longest_weeks: float) -> list[Limit]:
    """Every limit of warm-season grass.

    recovery_weeks: of full growth, until an opened surface has closed [weeks]. longest_weeks: that it may take here [weeks].
    """
    closing = days_to_close(year, rules, recovery_weeks, longest_weeks)
    # Where it never closes, the other limits look ahead over the weeks of full growth.
    least = round(recovery_weeks * 7)
    watched = [least if days is None else days for days in closing]
    found = [
        _spring_limit(year, rules), _green_limit(year, rules), _recovery_limit(year, rules, recovery_weeks, longest_weeks, closing),
        frost_limit(year, rules, frost_days_watched(rules, least)), wet_limit(year, rules, watched),
    ]
    return [limit for limit in found if limit is not None]


def rise(year: Year) -> tuple[float, ...]:
    """How far each day's mean has come from the year's lowest (0) towards its highest (1), 365 values [1]; 1 where it never changes."""
    mean = year.climate.mean_c
    low, high = year.climate.lowest_mean_c, year.climate.highest_mean_c
    return tuple((value - low) / (high - low) if high > low else 1.0 for value in mean)


def never_slows(year: Year, rules: WindowRules) -> bool:
    """Whether temperature closes no window: the slowest day still gives most of the place's best."""
    return bool(year.growth.best) and year.growth.least / year.growth.best >= rules.no_slack_share


def slowing(year: Year, rules: WindowRules) -> Flags:
    """Days after the height of summer on which growth is too slow to close an opened surface."""
    if never_slows(year, rules):
        return (False,) * DAYS
    return tuple(not warming and swing < rules.slow_share for warming, swing in zip(year.climate.warming, year.growth.swing, strict=True))


def days_to_close(year: Year, rules: WindowRules, recovery_weeks: float, longest_weeks: float) -> tuple[int | None, ...]:
    """From each day of the year on, the days until an opened surface has closed [days]; None where it does not in time.

    recovery_weeks: of full growth [weeks]; longest_weeks: that it may take here [weeks]. A day counts as a whole one from
    `full_recovery_potential` on, in proportion below it. In time: before growth slows in autumn, and within `longest_weeks`.
    Source: Gelernter and Stowell 2005, who do aggressive work above half of the growth potential; that days are counted by it is an
    assumption of data/season-groups.yml.
    """
    rate = [min(1.0, potential / rules.full_recovery_potential) for potential in year.growth.potential]
    longest, slow = int(longest_weeks * 7), days_until(slowing(year, rules))
    grown, need = (0.0, *accumulate(islice(cycle(rate), DAYS + longest))), recovery_weeks * 7
    found: list[int | None] = []
    ahead = 0
    for day in range(DAYS):
        ahead = max(ahead - 1, 0)  # Begun a day later, it closes no earlier.
        while ahead <= longest and grown[day + ahead] - grown[day] < need:
            ahead += 1
        found.append(ahead if ahead <= longest and slow[day] > ahead else None)
    return tuple(found)


def _spring_limit(year: Year, rules: WindowRules) -> Limit:
    """The year has turned for good: part of the way up to summer is behind it."""
    risen, mean = rise(year), year.climate.mean_c
    always = never_slows(year, rules)

    def opens(day: int) -> Reason:
        return because(
            "warmth-rising", week=count(week_number(day)), mean=year.degrees(mean[day]), share=share(risen[day]), lowest=year.degrees(year.climate.lowest_mean_c),
            highest=year.degrees(year.climate.highest_mean_c), potential=growth(year.growth.potential[day]), best=growth(year.growth.best),
        )

    return Limit(
        "spring", tuple(always or not warming or part >= rules.open_rise for warming, part in zip(year.climate.warming, risen, strict=True)), opens, None,
        because("never-turns"),
    )


def _green_limit(year: Year, rules: WindowRules) -> Limit | None:
    """Turf that winter sent dormant has greened up again; None where it never goes dormant, or nothing is known of its green-up."""
    soil, mark = year.climate.soil_c, rules.green_up_soil_c
    if mark is None or min(soil) > rules.dormant_soil_c:
        return None
    return Limit(
        "green", tuple(not warming or value >= mark for warming, value in zip(year.climate.warming, soil, strict=True)),
        lambda day: because("greened-up", soil=year.degrees(soil[day]), mark=limit_degrees(mark)), None,
        because("never-greens-up", mark=limit_degrees(mark)),
    )


def _recovery_limit(year: Year, rules: WindowRules, recovery_weeks: float, longest_weeks: float, closing: Sequence[int | None]) -> Limit:
    slow, best = slowing(year, rules), growth(year.growth.best)
    weeks, most = weeks_said(recovery_weeks * 7), weeks_said(longest_weeks * 7)

    def opens(day: int) -> Reason:
        return because("closes-in-time", weeks=weeks_said(closing[day] or 0), needs=weeks, most=most)

    def closes(day: int) -> Reason:
        end = next_bad(slow, (day + 1) % DAYS)
        return because(
            "before-growth-falls", weeks=weeks_said(closing[day] or 0), reached=because("share-of-swing", share=share(rules.slow_share)),
            week=count(week_number(end)), potential=growth(year.growth.potential[end]), best=best,
        )

    return Limit(
        "recovery", tuple(days is not None for days in closing), opens, closes,
        because("never-closes", needs=weeks, most=most, best=best, full=times(rules.full_recovery_potential)),
    )
