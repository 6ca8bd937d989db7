"""What a keeper's notes are compared with at one place: its usual soil, and of each grass the days that warmth and frost set.

Plain values, as the page of a year loads them too, so that the command line and the browser start from the same figures.
"""

from typing import Any

from generator.book.records.practice import OPEN_SITE
from generator.season.calendar_days import DAYS
from generator.season.events import EVEN_RISK, TENTH_RISK
from generator.season.season_cache import SeasonCache
from generator.season.windows.every_kind import KINDS, WindowKind
from generator.season.windows.limits import frost_days_watched, wet_season
from generator.season.windows.main_windows import Window
from generator.season.year import SeasonYear

HUNDREDTHS = 100
# Rules that hang on how warm it is, by the names of limits. Frost has its own note, and rain, the length of the day and the height of summer do not move.
WARMTH = {"spring", "green", "recovery", "growing", "cold", "heat", "soil warm enough", "soil not too warm", "cool nights", "summer over"}
FROST = "frost"
BY_WARMTH, BY_FROST, BY_NEITHER = "w", "f", ""


def seen_place(seasons: SeasonCache, place: str) -> dict[str, Any]:
    """{soil: 365 usual temperatures in the open [hundredths of °C], coldest, hottest: days of that curve, offsets: by site [hundredths of K], grasses: by grass and
    site {green_up, last_frost: days or None, windows: by kind, each [first, best, last, opens by, closes by, room earlier, room later]}}.

    Days are numbers from 0 for 1 January. opens by, closes by: 'w' for warmth, 'f' for frost, both, or nothing. room: how many days earlier the
    opening may come and how many later the closing, before a rule that does not hang on warmth forbids it [days].
    """
    grasses = list(seasons.book.grasses)
    sites = seasons.sites if place in seasons.calendar_places else (OPEN_SITE,)
    offsets = {
        site: round(HUNDREDTHS * (seasons.rules.sites[site].maximum_offset_k + seasons.rules.sites[site].minimum_offset_k) / 2) for site in sites
    }
    return {
        **soil_of(seasons.season(grasses[0], place)), "offsets": offsets,
        "grasses": {grass: {site: seen_values_of(seasons, seasons.season(grass, place, site)) for site in sites} for grass in grasses},
    }


def soil_of(season: SeasonYear) -> dict[str, Any]:
    """The usual soil of a year in the open, and its turns: soil, coldest and hottest of `seen_place`."""
    soil = [round(HUNDREDTHS * value) for value in season.climate.soil_c]
    return {"soil": soil, "coldest": soil.index(min(soil)), "hottest": soil.index(max(soil))}


def seen_values_of(seasons: SeasonCache, season: SeasonYear) -> dict[str, Any]:
    """What `seen_place` says of one grass at one site."""
    ground = season.view.surface_running
    last = next((day for risk in (EVEN_RISK, TENTH_RISK) if (day := season.weather.last_frost_day(risk, ground)) is not None), None)
    free = _free_of_the_rest(season)
    most = int(seasons.rules.seen.most_days)
    return {
        "green_up": season.green_up_day, "last_frost": last,
        "windows": {kind: [_edges(each, kind, free, most) for each in season.windows[kind].windows if each.days < DAYS] for kind in KINDS},
    }


def _edges(window: Window, kind: WindowKind, free: list[bool], most: int) -> list[Any]:
    own = kind in ("oversowing", "pre_emergent")
    earlier = most if own else next((back for back in range(most) if not free[(window.first - back - 1) % DAYS]), most)
    later = most if own else next((ahead for ahead in range(most) if not free[(window.last + ahead + 1) % DAYS]), most)
    return [window.first, window.best, window.last, _by(window.limited_by[0]), _by(window.limited_by[1]), earlier, later]


def _by(rules: tuple[str, ...]) -> str:
    return (BY_WARMTH if any(rule in WARMTH for rule in rules) else BY_NEITHER) + (BY_FROST if FROST in rules else BY_NEITHER)


def _free_of_the_rest(season: SeasonYear) -> list[bool]:
    """Whether rain, frost and the height of summer would let the work begin, 365 days."""
    view, rules = season.view, season.rules
    wet, summer = wet_season(view, rules), view.climate.highest_mean_c - rules.turn_k
    risk = rules.frost_risk_surface_running if view.surface_running else rules.frost_risk
    watched = frost_days_watched(rules, round(season.grass.recovery_weeks * 7))
    return [
        not wet[day] and (risk is None or view.frost.chance_of_any(day, watched) <= risk) and (rules.group == "warm" or view.climate.mean_c[day] <= summer)
        for day in range(DAYS)
    ]
