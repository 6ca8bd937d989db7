"""A computed year in words: what each small chart shows, the windows with their reasons, the dates, and the months in figures.

A text is plain words, or a list of words and of [metric, US] pairs (the `words` component). A row is a list of texts.
"""

from dataclasses import replace
from math import fsum
from typing import Any

from generator.season.calendar_days import MONTH_LENGTHS, MONTHS, WEEKS, month_days, week_days
from generator.season.events import events
from generator.season.reasons import Reason, Several
from generator.season.windows.every_kind import WindowKind
from generator.season.windows.main_windows import WHOLE_DEGREES, Window
from generator.season.winter import risked_in_winter
from generator.season.year import SeasonYear
from generator.site.year.strips import BAND_LABELS, all_dates, preferred_dates, short_day, window_dates
from generator.words.days import event_days
from generator.words.figures import converted, range_words, value_words
from generator.words.reason_text import Text, in_one, said, said_exactly, sentence
from generator.words.rough_words import rough_share

Row = list[Text]

WINDOW_LABELS: dict[WindowKind, str] = {
    "renovation": "Renovate", "light_renovation": "Lighter work", "overseeding": "Overseed",
    "oversowing": "Sow winter ryegrass", "pre_emergent": "Pre-emergent against summer grass",
}
EVENT_LABELS = {
    "last_frost_even": "Last frost, half of the years",
    "last_frost_tenth": "Last frost, nine years in ten",
    "last_ground_frost_even": "Last ground frost, half of the years",
    "last_ground_frost_tenth": "Last ground frost, nine years in ten",
    "green_up": "Green-up",
    "spring_transition": "Winter ryegrass gives way",
    "peak": "Growth at its best",
    "last_safe_renovation": "Last day to finish a renovation",
    "last_safe_light_renovation": "Last day to finish lighter work",
    "slow_down": "Growth slows down",
    "first_ground_frost_tenth": "First ground frost, one year in ten",
    "first_ground_frost_even": "First ground frost, half of the years",
    "first_frost_tenth": "First frost, one year in ten",
    "first_frost_even": "First frost, half of the years",
    "dormancy": "Dormant",
}
# What only warm-season turf does.
WARM_ONLY = ("green_up", "spring_transition")
# Below this chance a night is called free of frost [per cent].
HARDLY_ANY = 1


def degrees(celsius: float, season: SeasonYear) -> list[str]:
    """A temperature as [metric, US]; no decimals where the source printed none."""
    digits = 0 if season.whole_degrees else 1
    fahrenheit = converted(celsius, "°C", "°F")
    return [f"{celsius:.{digits}f} °C".replace("-", "−"), f"{fahrenheit:.0f} °F".replace("-", "−")]


def pair(value: float, unit: str) -> list[str]:
    """A quantity as [metric, US]."""
    words = value_words(value, unit)
    return [words["metric"] or "", words["us"] or ""]


def total(millimetres: float) -> list[str]:
    """A year's depth of water as [metric, US]; no eighths of an inch where there are many inches."""
    metric, us = pair(round(millimetres), "mm")
    inches = converted(millimetres, "mm", "in")
    return [metric, f"{inches:.0f} in" if inches >= 10 else us]


def chart_sentences(season: SeasonYear) -> dict[str, Text]:
    """By chart: what it shows, in a sentence or two with its numbers."""
    return {"temperature": _temperature(season), "frost": _frost(season), "growth": _growth(season), "water": _water(season)}


def _about(week: int) -> str:
    return f"about {short_day(week_days(week)[3])}"


def _peak_week(values: list[float]) -> int:
    return max(range(WEEKS), key=lambda week: values[week])


def _temperature(season: SeasonYear) -> Text:
    means = [week.mean_temperature_c for week in season.weeks]
    low, high = _peak_week([-value for value in means]), _peak_week(means)
    return [
        "The mean runs from ", degrees(means[low], season), f" {_about(low)} to ", degrees(means[high], season), f" {_about(high)}; "
        "usual nights fall to ", degrees(season.weeks[low].minimum_temperature_c, season), ", usual days reach ",
        degrees(season.weeks[high].maximum_temperature_c, season), ".",
    ]


def _frost(season: SeasonYear) -> Text:
    air = [100 * week.frost_probability for week in season.weeks]
    ground = [100 * week.ground_frost_probability for week in season.weeks]
    week = _peak_week(ground)
    if ground[week] < HARDLY_ANY:
        return "Expect no frost."
    if air[week] < HARDLY_ANY:
        return f"Hardly any frost in the air; on the ground on {ground[week]:.0f} nights in a hundred {_about(week)}."
    return f"Most likely {_about(week)}: in {air[week]:.0f} nights in a hundred in the air, in {ground[week]:.0f} on the ground."


def _growth(season: SeasonYear) -> Text:
    values = [week.growth_potential for week in season.weeks]
    low, high = _peak_week([-value for value in values]), _peak_week(values)
    return f"From {values[low]:.2f} {_about(low)} to {values[high]:.2f} {_about(high)}; 1 is the most that this grass can do anywhere."


def _water(season: SeasonYear) -> Text:
    rain, reference, need = (
        fsum(getattr(week, name) for week in season.weeks) for name in ("rain_mm", "reference_evapotranspiration_mm", "water_need_mm")
    )
    daily = [week.water_need_mm / len(week_days(week.week - 1)) for week in season.weeks]
    most = _peak_week(daily)
    a_week = round(7 * daily[most])
    said: list[Any] = [
        "In a year ", total(rain), " of rain; well-watered reference grass uses ", total(reference),
    ]
    if not a_week:
        return [*said, ". Rain is enough."]
    return [
        *said, "; this lawn needs ", total(need), " beyond the rain it can use, at most ", pair(a_week, "mm"),
        f" a week, {_about(most)}.",
    ]


def summary(season: SeasonYear) -> Text:
    """The calendar's answer in one or two sentences."""
    parts: list[Text] = []
    for kind, label in BAND_LABELS.items():
        found = season.windows[kind]
        if found.windows:
            parts.append(f"{label} {all_dates(found)}, best {preferred_dates(found.windows[0])}.")
        elif kind == "renovation" and found.why_none is not None:
            parts.append(in_one("No renovation window here: ", said(found.why_none), "."))
    return in_one(*(in_one(" ", part) if number else part for number, part in enumerate(parts)))


def window_lines(season: SeasonYear) -> dict[WindowKind, list[Row]]:
    """By kind of window: lines of a strong beginning, its reason and, where that is more, the exact reason. The page says once that temperatures are whole degrees."""
    lines: dict[WindowKind, list[Row]] = {}
    for kind in WINDOW_LABELS:
        found = season.windows[kind]
        lines[kind] = [[f"{window_dates(each)}.", *with_exact(_said_here(each).why)] for each in found.windows] if found.why_none is None else [
            ["Undecided." if found.undecided else "None.", *with_exact(found.why_none)]
        ]
    return lines


def with_exact(reason: Reason | Several) -> list[Text]:
    """A reason as a sentence for people, and the exact one behind it where that says more."""
    return [sentence(each) for each in (said(reason), said_exactly(reason)) if each]


def _said_here(window: Window) -> Window:
    return replace(window, notes=tuple(note for note in window.notes if note != WHOLE_DEGREES))


def little_growth(season: SeasonYear) -> str:
    """A warning where the place gives this grass little growth; empty elsewhere."""
    best = season.growth.best
    if best >= season.rules.little_growth:
        return ""
    said = f"There is little growth here: at best this grass reaches {rough_share(best, exactly=False)} of what it can do. "
    if best < season.rules.least_growth:
        return said + "It has no real growing season at this place."
    return said + "It takes longer to close than elsewhere: think about another grass."


def warned(season: SeasonYear) -> Text:
    """What to know of the grass here before any date: that winter may kill some of it, and that it hardly grows. Why there is no window stands above."""
    risk = risked_in_winter(season.weather, season.grass)
    lines = (sentence(said(risk)) if risk else "", little_growth(season))
    return in_one(*(piece for each in lines if each for piece in (each, " ")))


def event_lines(season: SeasonYear) -> list[Row]:
    """What happens and when, and why, in the order in which a growing season meets it; the exact reason last, where that is more."""
    kept = {id: event for id, event in events(season).items() if season.grass.group == "warm" or id not in WARM_ONLY}
    return [[f"{EVENT_LABELS[id]}: {event_days(event)}.", *with_exact(event.why)] for id, event in kept.items()]


def month_rows(season: SeasonYear) -> list[Row]:
    """The charts as a table: a row a month of nights, days, frost nights, growth, rain, evapotranspiration and need."""
    frost = season.weather.air_frost.nights_per_month()
    return [
        [
            MONTHS[month],
            degrees_range(season, month),
            f"{frost[month]:.0f}" if frost[month] >= 0.95 else ("under 1" if frost[month] >= 0.05 else "none"),
            f"{month_mean(season.growth.potential, month):.2f}",
            *([pair(round(_total(series, month)), "mm")] for series in (
                season.climate.rain_mm, season.weather.reference_evapotranspiration_mm, season.water_need_mm,
            )),
        ]
        for month in range(12)
    ]


def frost_words(nights: float) -> str:
    if nights < 0.05:
        return "none expected"
    return "fewer than one" if nights < 0.95 else f"about {round(nights)}"


def degrees_range(season: SeasonYear, month: int) -> Text:
    low, high = (month_mean(series, month) for series in (season.climate.minimum_c, season.climate.maximum_c))
    us = [round(converted(value, "°C", "°F")) for value in (low, high)]
    return [[range_words(round(low), round(high), "°C"), range_words(*us, "°F")]]


def month_mean(daily: tuple[float, ...], month: int) -> float:
    return _total(daily, month) / MONTH_LENGTHS[month]


def _total(daily: tuple[float, ...], month: int) -> float:
    return fsum(daily[day] for day in month_days(month))
