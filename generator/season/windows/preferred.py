"""The short span inside a window in which the work had best be done, and why."""

from collections.abc import Iterable
from math import fsum
from typing import NamedTuple

from generator.season.calendar_days import DAYS, week_number
from generator.season.engine_rules import WindowRules
from generator.season.reasons import Reason, because, count, limit_degrees, share
from generator.season.windows.limits import NEVER_DAYS, Year, days_until
from generator.season.windows.warm_limits import rise

# Days before and after the hottest that are called summer.
HALF_A_SUMMER = 45


class Preferred(NamedTuple):
    """Day numbers, `first` above `last` over New Year, and why then; the best date is the middle."""

    first: int
    last: int
    why: Reason

    @property
    def best(self) -> int:
        return (self.first + (self.last - self.first) % DAYS // 2) % DAYS


def preferred(year: Year, rules: WindowRules, first: int, last: int) -> Preferred:
    """The best weeks of a window from one day number to another. Source: the rules of data/season-groups.yml, most of them assumptions."""
    middle = (first + (last - first) % DAYS // 2) % DAYS
    length = round(rules.preferred_weeks * 7)
    if rules.group == "warm":
        return _warm(year, rules, first, last, length)
    return (_cool_spring if year.is_warming(middle) else _cool_autumn)(year, rules, first, last, length)


def within(first: int, last: int, from_day: int, days: int, why: Reason) -> Preferred:
    """So many days from a day on, as much of it as the window from `first` to `last` holds; its nearest days where it holds none."""
    window = (last - first) % DAYS
    start = (from_day - first) % DAYS
    if start > window:
        start = 0 if DAYS - start <= start - window else max(0, window - days)
    return Preferred((first + start) % DAYS, (first + min(start + days, window)) % DAYS, why)


def _warm(year: Year, rules: WindowRules, first: int, last: int, length: int) -> Preferred:
    """As spring rises: early where winter leaves the turf green or summer is dry, later the longer it lay dormant, with roots to make anew."""
    climate = year.climate
    dormant, moist = sum(1 for value in climate.soil_c if value <= rules.dormant_soil_c), _summer_rain(year)
    part = min(1.0, dormant / rules.long_dormancy_days) * min(1.0, moist / rules.moist_summer)
    mark = rules.preferred_rise + part * (rules.preferred_rise_dormant - rules.preferred_rise)
    day = first_day(climate.coldest_day, (value >= mark for value in rise(year)))
    day = climate.hottest_day if day is None else day
    said = {"share": share(mark), "week": count(week_number(day))}
    if not dormant:
        return within(first, last, day, length, because("preferred-in-spring", **said))
    return within(first, last, day, length, because("preferred-after-dormancy", dormant=count(dormant / 7), moist=share(moist), **said))


def _summer_rain(year: Year) -> float:
    """Rain of the three hottest months against reference evapotranspiration [1]."""
    days = [(year.climate.hottest_day + ahead) % DAYS for ahead in range(-HALF_A_SUMMER, HALF_A_SUMMER)]
    evaporates = fsum(year.weather.reference_evapotranspiration_mm[day] for day in days)
    return fsum(year.climate.rain_mm[day] for day in days) / evaporates if evaporates else 1.0


def _cool_spring(year: Year, rules: WindowRules, first: int, last: int, length: int) -> Preferred:
    """Early, as soon as the soil sprouts seed, so that as many weeks as can be lie between it and summer."""
    day = first_day(year.climate.coldest_day, (value >= rules.seed_soil_c for value in year.climate.soil_c))
    why = because("preferred-early", mark=limit_degrees(rules.seed_soil_c))
    return within(first, last, first if day is None else day, length, why)


def before_cold(year: Year, rules: WindowRules, first: int, last: int) -> Preferred | None:
    """The span that leaves seed its weeks of growing weather before the soil is too cold; None where it never is."""
    cold = first_day(year.climate.hottest_day, (value < rules.seed_soil_c for value in year.climate.soil_c))
    if cold is None:
        return None
    _, least, most = rules.seedling_weeks
    length = round(rules.preferred_weeks * 7)
    why = because("preferred-before-cold", mark=limit_degrees(rules.seed_soil_c), week=count(week_number(cold)), least=count(least), most=count(most))
    return within(first, last, (cold - round(least * 7) - length) % DAYS, length, why)


def _cool_autumn(year: Year, rules: WindowRules, first: int, last: int, length: int) -> Preferred:
    """Six to eight weeks before the soil is too cold for seed, and no later than growth is still strong; never in extreme heat."""
    climate, hottest = year.climate, year.climate.hottest_day
    _, least, most = rules.seedling_weeks
    cold = first_day(hottest, (value < rules.seed_soil_c for value in climate.soil_c))
    slow = first_day(
        hottest, (mean < year.optimum_c and part < rules.preferred_share for mean, part in zip(climate.mean_c, year.growth.share, strict=True))
    )
    if cold is None:
        day = first_day(hottest, (value <= year.optimum_c for value in climate.mean_c))
        return within(first, last, first if day is None else day, length, because("preferred-at-optimum", optimum=limit_degrees(year.optimum_c)))
    ends = {"preferred-before-cold": (cold - hottest) % DAYS - round(least * 7)}
    if slow is not None:
        ends["preferred-in-strong-growth"] = (slow - hottest) % DAYS
    code = min(ends, key=lambda each: ends[each])
    why = because(
        code, mark=limit_degrees(rules.seed_soil_c), week=count(week_number(slow if slow is not None and code == "preferred-in-strong-growth" else cold)),
        share=share(rules.preferred_share), least=count(least), most=count(most),
    )
    start = (hottest + ends[code] - length) % DAYS
    cooler = first_day(hottest, (value <= rules.heat_limit_c for value in climate.mean_c))
    if cooler is not None and (cooler - hottest) % DAYS > (start - hottest) % DAYS:
        start = cooler
    return within(first, last, start, length, why)


def first_day(start: int, flags: Iterable[bool]) -> int | None:
    """The first day from `start` on that is flagged, or None."""
    ahead = days_until(flags)[start]
    return None if ahead == NEVER_DAYS else (start + ahead) % DAYS
