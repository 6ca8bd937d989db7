"""The small charts of a computed year: series of 52 whole numbers, the shapes that draw them, and scales in both systems.

A chart is drawn in the units of its series (tenths of a degree, per cent, tenths of a millimetre), so that a path is the numbers
themselves and the page's script needs no arithmetic to draw another site. Twin: year chart.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from math import ceil, floor, log10
from typing import Any

from generator.season.calendar_days import week_days
from generator.season.year import SeasonYear
from generator.site.year.strips import STRIP_MONTHS
from generator.words.figures import converted

Series = Mapping[str, Sequence[int]]

TENTHS = 10
PER_CENT = 100
# The scale's top keeps this share of its height free, so that a thick line is not cut off.
HEADROOM = 0.04
MOST_STEPS = 4


@dataclass(frozen=True)
class Shape:
    """One drawing of one series, or of two for a band. kind: line, area, bars or band. style: how its ink is laid."""

    kind: str
    series: tuple[str, ...]
    style: str
    label: str


@dataclass(frozen=True)
class Chart:
    """What a chart shows. unit: of its labels; us_unit: of those in US units. per_unit: how many of the series' numbers make one."""

    id: str
    title: str
    unit: str
    us_unit: str
    per_unit: int
    shapes: tuple[Shape, ...]
    least_top: float | None = None
    from_zero: bool = True


CHARTS = (
    Chart("temperature", "Temperature", "°C", "°F", TENTHS, (
        Shape("band", ("maximum", "minimum"), "band", "from the mean minimum to the mean maximum"),
        Shape("line", ("mean",), "bold", "mean"),
    ), from_zero=False),
    Chart("frost", "Chance of a frost night", "%", "%", 1, (
        Shape("area", ("frost",), "frost", "air frost"),
        Shape("line", ("ground_frost",), "dashes", "ground frost"),
    ), PER_CENT),
    Chart("growth", "Growth potential", "", "", PER_CENT, (
        Shape("area", ("potential",), "moss", "of the most that the grass can do, which is 1"),
    ), 1),
    Chart("water", "Water in a week", "mm", "in", TENTHS, (
        Shape("bars", ("rain",), "bars", "rain"),
        Shape("area", ("need",), "moss", "what the lawn needs beyond it"),
        Shape("line", ("evapotranspiration",), "dashes", "reference evapotranspiration"),
    )),
)


def series_of(season: SeasonYear) -> dict[str, list[int]]:
    """The year as whole numbers, 52 each: tenths of °C, per cent, tenths of mm in seven days."""
    weeks = season.weeks

    def water(name: str) -> list[int]:
        """The last week has eight days; in a drawing it would stand out."""
        return [round(TENTHS * getattr(week, name) * 7 / len(week_days(week.week - 1))) for week in weeks]

    return {
        "maximum": [round(TENTHS * week.maximum_temperature_c) for week in weeks],
        "minimum": [round(TENTHS * week.minimum_temperature_c) for week in weeks],
        "mean": [round(TENTHS * week.mean_temperature_c) for week in weeks],
        "frost": [round(PER_CENT * week.frost_probability) for week in weeks],
        "ground_frost": [round(PER_CENT * week.ground_frost_probability) for week in weeks],
        "potential": [round(PER_CENT * week.growth_potential) for week in weeks],
        "rain": water("rain_mm"),
        "need": water("water_need_mm"),
        "evapotranspiration": water("reference_evapotranspiration_mm"),
    }


def chart_views(years: Mapping[str, Series], shown: str, sentences: Mapping[str, Any]) -> list[dict[str, Any]]:
    """A year-chart view each, drawn for the site `shown`, on a scale that holds all sites: a switch then moves the year, not the scale.

    years: series by site. sentences: by chart, what it says in words.
    """
    return [_view(chart, years, shown, sentences[chart.id]) for chart in CHARTS]


def _view(chart: Chart, years: Mapping[str, Series], shown: str, sentence: Any) -> dict[str, Any]:
    names = {name for shape in chart.shapes for name in shape.series}
    values = [value / chart.per_unit for series in years.values() for name in names for value in series[name]]
    top = max(values) if chart.least_top is None else max(chart.least_top, *values)
    bottom = 0.0 if chart.from_zero else min(values)
    step = nice_step(top - bottom)
    bottom, top = floor(bottom / step) * step, ceil(top / step - 1e-9) * step
    high = top + HEADROOM * (top - bottom)
    ink = {"low": round(bottom * chart.per_unit), "high": round(high * chart.per_unit)}
    return {
        "id": f"chart-{chart.id}", "title": chart.title, "sentence": sentence, "months": STRIP_MONTHS, **ink,
        "shapes": [
            {"kind": shape.kind, "series": " ".join(shape.series), "style": shape.style, "label": shape.label,
             "path": path(shape.kind, [years[shown][name] for name in shape.series])}
            for shape in chart.shapes
        ],
        "scale": [_tick(value, chart.unit, (high - value) / (high - bottom)) for value in _steps(bottom, top, step)],
        "us_scale": _us_scale(chart, bottom, top, high) if chart.us_unit != chart.unit else [],
    }


def still_view(chart: Chart, series: Mapping[str, Sequence[int | None]], sentence: Any) -> dict[str, Any]:
    """A year-chart view of series with weeks that have no figure, which no switch draws again. Its shapes are lines and bands."""
    names = [name for shape in chart.shapes for name in shape.series]
    known = {name: [value for value in series[name] if value is not None] for name in names}
    view = _view(replace(chart, shapes=tuple(Shape("line", (name,), "bold", "") for name in names)), {"": known}, "", sentence)
    shapes = [
        {"kind": shape.kind, "series": "", "style": shape.style, "label": shape.label, "path": broken_path(shape.kind, [series[name] for name in shape.series])}
        for shape in chart.shapes
    ]
    return {**view, "shapes": shapes, "still": True}


def broken_path(kind: str, values: Sequence[Sequence[int | None]]) -> str:
    """The `d` of a path of weeks, as `path`, with a gap where a week has no figure. kind: line, or band between two series that have the same gaps."""
    stretches: list[list[int]] = [[]]
    for week, value in enumerate(values[0]):
        if value is None:
            stretches.append([])
        else:
            stretches[-1].append(week)

    def points(series: Sequence[int | None], weeks: Sequence[int]) -> str:
        return "L".join(f"{week}.5 {-(series[week] or 0)}" for week in weeks)

    if kind == "band":
        return "".join(f"M{points(values[0], weeks)}L{points(values[1], weeks[::-1])}Z" for weeks in stretches if weeks)
    return "".join(f"M{points(values[0], weeks)}" for weeks in stretches if weeks)


def path(kind: str, values: Sequence[Sequence[int]]) -> str:
    """The `d` of an SVG path: a week is one wide, and up is less. The year is a ring: both ends meet half-way.

    kind: line, area (down to 0), bars (from 0), or band (between the first series and the second).
    """
    if kind == "bars":
        return "".join(f"M{week}.5 0V{-value}" for week, value in enumerate(values[0]))
    if kind == "area":
        return f"M0 0L{_points(values[0])}L52 0Z"
    if kind == "band":
        back = _points(values[1]).split("L")
        return f"M{_points(values[0])}L{'L'.join(reversed(back))}Z"
    return f"M{_points(values[0])}"


def _points(values: Sequence[int]) -> str:
    ends = -((values[0] + values[-1]) // 2)
    inner = (f"{week}.5 {-value}" for week, value in enumerate(values))
    return "L".join((f"0 {ends}", *inner, f"{len(values)} {ends}"))


def nice_step(span: float) -> float:
    """The smallest 1, 2, 2.5 or 5 times a power of ten that divides a span into four steps or fewer."""
    rough = span / MOST_STEPS or 1.0
    size = 10.0 ** floor(log10(rough))
    return next(size * times for times in (1, 2, 2.5, 5, 10) if size * times >= rough * (1 - 1e-9))


def _steps(bottom: float, top: float, step: float) -> list[float]:
    first, last = ceil(bottom / step - 1e-9), floor(top / step + 1e-9)
    return [number * step for number in range(first, last + 1)]


def _us_scale(chart: Chart, bottom: float, top: float, high: float) -> list[dict[str, str]]:
    """Round numbers of the US unit, each where it belongs on the metric scale."""
    low_us, top_us = (converted(value, chart.unit, chart.us_unit) for value in (bottom, top))
    return [
        _tick(value, chart.us_unit, (high - converted(value, chart.us_unit, chart.unit)) / (high - bottom))
        for value in _steps(low_us, top_us, nice_step(top_us - low_us))
    ]


def _tick(value: float, unit: str, share_from_top: float) -> dict[str, Any]:
    number = f"{round(value, 6):g}".replace("-", "−")
    return {"label": f"{number} {unit}".strip(), "at": round(share_from_top, 4)}
