"""A computed year as text for a terminal: a strip, the windows, and a row a week."""

from textwrap import fill

from generator.season.events import events
from generator.season.windows.every_kind import WindowKind
from generator.season.windows.main_windows import Windows
from generator.season.year import SeasonYear
from generator.words.days import event_days
from generator.words.reason_text import text

STATES = {"dormant": ".", "slow": "-", "growing": "+", "peak": "#"}
# What the window is called, and the shorter word before its row of the strip.
KINDS: dict[WindowKind, tuple[str, str]] = {
    "renovation": ("Renovation", "renovate"),
    "light_renovation": ("Light renovation", "light"),
    "overseeding": ("Overseeding", "overseed"),
    "oversowing": ("Winter ryegrass", "ryegrass"),
    "pre_emergent": ("Pre-emergent", "pre-em"),
}
EVENTS = {
    "last_frost_even": "last frost, evens", "last_frost_tenth": "last frost, one year in ten", "green_up": "green-up",
    "last_ground_frost_even": "last ground frost, evens", "last_ground_frost_tenth": "last ground frost, one year in ten",
    "first_ground_frost_tenth": "first ground frost, one year in ten", "first_ground_frost_even": "first ground frost, evens",
    "spring_transition": "spring transition", "peak": "at its best", "last_safe_renovation": "last safe day to renovate",
    "last_safe_light_renovation": "last safe day for a light job", "slow_down": "slow-down",
    "first_frost_tenth": "first frost, one year in ten", "first_frost_even": "first frost, evens", "dormancy": "dormancy",
}
MONTH_ROW = "".join(letter.ljust(width) for letter, width in zip("JFMAMJJASOND", (5, 4, 4, 4, 5, 4, 4, 5, 4, 4, 5, 4), strict=True))


def season_text(season: SeasonYear, grass: str, place: str, site: str, us: bool = False, so_far: str | None = None) -> str:
    """Several lines, at most 100 characters wide, in plain characters that any terminal shows. us: reasons in US units. so_far: of this year."""
    head = [f"{grass} at {place}, {site}", "", *([so_far, ""] if so_far else [])]
    return "\n".join([
        *head, *_strip(season), "", *_windows(season, us), "", *_events(season, us), "", *_table(season), "", *_how(season),
    ])


def _strip(season: SeasonYear) -> list[str]:
    frost = "".join("*" if week.frosty else "'" if week.frost_possible else " " for week in season.weeks)
    growth = "".join(STATES[week.growth_class] for week in season.weeks)
    wet = "".join("~" if week.wet else " " for week in season.weeks)
    rows = [f"          {MONTH_ROW.rstrip()}", f"growth    {growth}"]
    if frost.strip():
        rows.append(f"frost     {frost.rstrip()}")
    if wet.strip():
        rows.append(f"wet       {wet.rstrip()}")
    for kind, (_, label) in KINDS.items():
        if season.windows[kind].windows:
            band = "".join("=" if kind in week.in_windows else " " for week in season.weeks)
            rows.append(f"{label:<10}{band.rstrip()}")
    key = ["one character a week; growth . dormant - slow + growing # best"]
    if frost.strip():
        key.append("* frost likely ' possible")
    if wet.strip():
        key.append("~ often too wet")
    return [*rows, "          " + "; ".join(key)]


def _windows(season: SeasonYear, us: bool) -> list[str]:
    lines = []
    for kind, (name, _) in KINDS.items():
        lines += [f"{name}:", *_window_lines(season.windows[kind], us)]
    return lines


def _window_lines(found: Windows, us: bool) -> list[str]:
    if found.why_none is not None:
        return [fill(f"none: {text(found.why_none, us)}", 100, initial_indent="  ", subsequent_indent="  ")]
    return [fill(text(window.why, us), 100, initial_indent="  ", subsequent_indent="  ") for window in found.windows]


def _events(season: SeasonYear, us: bool) -> list[str]:
    lines = [f"{EVENTS[name]}: {event_days(event)}; {text(event.why, us)}" for name, event in events(season).items()]
    return ["Through the year:", *(fill(line, 100, initial_indent="  ", subsequent_indent="    ") for line in lines)]


def _how(season: SeasonYear) -> list[str]:
    method = season.weather.evapotranspiration_method
    text = f"ET, the water that well-watered grass uses, is worked out by {method.words}. Assumed: {'; '.join(method.assumed)}."
    return [fill(text, 100, initial_indent="", subsequent_indent="  ")]


def _table(season: SeasonYear) -> list[str]:
    digits = 0 if season.whole_degrees else 1
    head = "week  from    mean °C  growth  frost  rain mm  ET mm  water mm  class"
    rows = [
        f"{week.week:>4}  {week.starts}  {week.mean_temperature_c:>8.{digits}f}  {week.growth_potential:>6.2f}"
        f"  {week.frost_probability:>5.0%}  {week.rain_mm:>7.0f}  {week.reference_evapotranspiration_mm:>5.0f}"
        f"  {week.water_need_mm:>8.0f}  {week.growth_class}"
        for week in season.weeks
    ]
    return [head, *rows]
