"""What happens in a computed year, as dates with reasons: green-up, peak, slow-down, dormancy, frosts, last safe dates."""

from dataclasses import dataclass

from generator.season.calendar_days import DAYS, week_number
from generator.season.reasons import NumberSaid, Reason, because, both, count, growth, limit_degrees, share
from generator.season.windows.every_kind import WindowKind
from generator.season.year import SeasonYear

# Risks at which the last and the first frost are told.
EVEN_RISK, TENTH_RISK = 0.5, 0.1


@dataclass(frozen=True)
class Event:
    """A day (`first` and `last` the same) or a stretch of the year, day numbers from 0; both None where it does not happen.

    `why` is what set it, with its numbers, or why there is none.
    """

    first: int | None
    last: int | None
    why: Reason


def events(season: SeasonYear) -> dict[str, Event]:
    """Every event of the year by its id, in the order in which a growing season meets them."""
    return {
        "last_frost_even": _last_frost(season, EVEN_RISK, ground=False),
        "last_frost_tenth": _last_frost(season, TENTH_RISK, ground=False),
        "last_ground_frost_even": _last_frost(season, EVEN_RISK, ground=True),
        "last_ground_frost_tenth": _last_frost(season, TENTH_RISK, ground=True),
        "green_up": _green_up(season), "spring_transition": _transition(season), "peak": _peak(season),
        "last_safe_renovation": _last_safe(season, "renovation", "a-renovation"),
        "last_safe_light_renovation": _last_safe(season, "light_renovation", "a-light-renovation"),
        "slow_down": _slow_down(season),
        "first_ground_frost_tenth": _first_frost(season, TENTH_RISK, ground=True),
        "first_ground_frost_even": _first_frost(season, EVEN_RISK, ground=True),
        "first_frost_tenth": _first_frost(season, TENTH_RISK, ground=False),
        "first_frost_even": _first_frost(season, EVEN_RISK, ground=False),
        "dormancy": _dormancy(season),
    }


def _on(day: int | None, why: Reason, why_none: Reason) -> Event:
    return Event(None, None, why_none) if day is None else Event(day, day, why)


def _stretch(days: tuple[int, int] | None, why: Reason, why_none: Reason) -> Event:
    return Event(None, None, why_none) if days is None else Event(*days, why)


def _soil(season: SeasonYear, day: int) -> NumberSaid:
    return season.view.degrees(season.climate.soil_c[day])


def _green_up(season: SeasonYear) -> Event:
    mark, day = season.rules.green_up_soil_c, season.green_up_day
    if mark is None:
        return Event(None, None, because("stays-green-cool"))
    if day is None:
        kept = min(season.climate.soil_c) >= mark
        lowest = season.view.degrees(min(season.climate.soil_c))
        return Event(None, None, because("stays-green", mark=limit_degrees(mark), lowest=lowest) if kept else because("never-greens-up", mark=limit_degrees(mark)))
    return Event(day, day, because("greens-up", soil=_soil(season, day), mark=limit_degrees(mark)))


def _transition(season: SeasonYear) -> Event:
    day, mark = season.transition_day, season.transition_night_c
    if season.grass.group == "cool":
        return Event(None, None, because("no-transition"))
    nights = season.climate.minimum_c
    if day is None:
        low, high = season.view.degrees(min(nights)), season.view.degrees(max(nights))
        return Event(None, None, because("nights-never-cross", mark=limit_degrees(mark), lowest=low, highest=high))
    return Event(day, day, because("nights-warmed", night=season.view.degrees(nights[day]), mark=limit_degrees(mark)))


def _peak(season: SeasonYear) -> Event:
    return _stretch(
        season.peak, because("at-its-best", share=share(season.rules.peak_share), best=growth(season.growth.best)), because("nothing-grows"),
    )


def _slow_down(season: SeasonYear) -> Event:
    day = season.slow_down_day
    if day is None:
        return Event(None, None, because("growth-never-falls", least=growth(season.growth.least), best=growth(season.growth.best)))
    return Event(day, day, because(
        "slows-down", week=count(week_number(day)), share=share(season.growth.share[day]), potential=growth(season.growth.potential[day]),
    ))


def _dormancy(season: SeasonYear) -> Event:
    mark = limit_degrees(season.rules.dormant_soil_c)
    lowest = season.view.degrees(min(season.climate.soil_c))
    return _stretch(
        season.dormancy, because("soil-dormant", mark=mark, lowest=lowest), because("never-dormant", mark=mark, lowest=lowest),
    )


def _last_safe(season: SeasonYear, kind: WindowKind, job: str) -> Event:
    """The last day on which a job may be done before winter: the end of its window in the cooling half of the year, else of its main one."""
    found = season.windows[kind]
    if found.why_none is not None:
        return Event(None, None, found.why_none)
    window = next((each for each in found.windows if not season.view.is_warming(each.last)), found.windows[0])
    if window.days == DAYS:
        return Event(None, None, because("never-slows"))
    return Event(window.last, window.last, because("last-safe", job=because(job), why=both(window.why_last)))


def _frost(risk: float, ground: bool) -> dict[str, Reason]:
    """The kind of frost, and the odds."""
    odds = because("evens") if risk == EVEN_RISK else because("one-year-in", years=count(1 / risk))
    return {"kind": because("a-ground-frost" if ground else "a-frost"), "odds": odds}


def _last_frost(season: SeasonYear, risk: float, ground: bool) -> Event:
    frost = _frost(risk, ground)
    return _on(season.weather.last_frost_day(risk, ground), because("no-more-frost", **frost), because("no-frost-before-summer", **frost))


def _first_frost(season: SeasonYear, risk: float, ground: bool) -> Event:
    frost = _frost(risk, ground)
    return _on(season.weather.first_frost_day(risk, ground), because("first-frost", **frost), because("never-a-frost", **frost))
