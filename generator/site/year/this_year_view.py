"""This year of a grass at a place as its page shows it: measured so far, beside the usual year."""

from collections.abc import Sequence
from datetime import date
from math import fsum
from typing import Any

from generator.book.daily.daily_record import DailyRecord
from generator.files.season_text import EVENTS
from generator.files.this_year_text import NO_SPREAD
from generator.season.calendar_days import MONTHS, WEEK_OF_DAY, WEEKS, day_words
from generator.season.due_months import due_by_month
from generator.season.growth import growth_potential
from generator.season.normals.record_normals import day_number
from generator.season.observed.moves import Move, moves
from generator.season.observed.so_far import SoFar, since, so_far
from generator.season.observed.this_year import ThisYear
from generator.season.season_cache import SeasonCache
from generator.season.year import SeasonYear
from generator.site.year.charts import PER_CENT, TENTHS, Chart, Shape, still_view
from generator.site.year.year_words import WINDOW_LABELS
from generator.words.figures import value_words

# A record that ended longer ago is not this year's.
STALE_DAYS = 183
SOON_DAYS = 120
# A week is drawn when so many of its days were read.
LEAST_DAYS_OF_A_WEEK = 4
LABELS = {
    "mean_temperature": "Mean temperature", "growth_potential": "Growth potential", "soil_temperature_now": "Soil on the last day",
    "frost_nights": "Frost nights", "rain": "Rain", "reference_evapotranspiration": "Reference evapotranspiration", "water_need": "Water needed beyond the rain",
}


def this_year_view(seasons: SeasonCache, grass: str, place: str, today: date) -> dict[str, Any] | None:
    """The dict of the part this-year; None for a place without a record of late."""
    this = seasons.measured(grass, place)
    if this is None or (today - this.until).days > STALE_DAYS:
        return None
    record, until = seasons.book.observed[place], dated(this.until)
    named, book = seasons.book.places[place].name, seasons.book
    due = due_by_month(book, book.grasses[grass], this.season)
    begin = since(this)
    return {
        "measured": f"to {until} at {named}; usual weather after that. All of it is for a lawn in the open.",
        "moves": [{"name": _called(name, each), "text": _moved(each)} for name, each in moves(this).items() if _worth_telling(this, name, each)],
        "due": [
            {"title": f"Due in {MONTHS[month]}:", "text": "; ".join(f"{each.name}, {each.when}" for each in due[month]) + "."}
            for month in (this.until.month - 1, this.until.month % 12) if due[month]
        ],
        "charts": [_temperature(this, record, until), _growth(this, record, until)],
        "table_title": f"What was measured at {named}", "since": f"Since {dated(begin)}",
        "rows": [
            {"label": LABELS[name], "measured": _said(each.measured, each), "usual": _said(each.usual, each)}
            for name, each in so_far(this, record).items() if name in LABELS
        ],
        "note": "" if this.cooler else NO_SPREAD,
    }


def _worth_telling(this: ThisYear, name: str, each: Move) -> bool:
    """What moves or may move, and what opens soon, as usual or not."""
    return bool(each.later) or each.earliest != each.latest or (name.endswith(" opens") and 0 < this.circle.offset(each.day) <= SOON_DAYS)


def dated(day: date) -> str:
    """'31 October 2026'."""
    return f"{day.day} {MONTHS[day.month - 1]} {day.year}"


def _called(name: str, each: Move) -> str:
    kind, _, edge = name.partition(" ")
    label = next((label for of, label in WINDOW_LABELS.items() if of == kind), None)
    if label is not None:
        return f"{label}: {edge}"
    words = EVENTS[name].partition(",")[0] if each.is_past and "frost" in name else EVENTS[name]
    return words[0].upper() + words[1:]


def _moved(each: Move) -> str:
    days = f"{abs(each.later)} {'day' if abs(each.later) == 1 else 'days'}"
    how = "as usual" if not each.later else f"{days} {'later' if each.later > 0 else 'earlier'} than usual"
    band = ""
    if each.earliest is not None and each.latest is not None and each.earliest != each.latest:
        band = f" In two years of three: {day_words(each.earliest)} to {day_words(each.latest)}."
    return f"{'on' if each.is_past else 'about'} {day_words(each.day)}, {how}.{band}"


def _said(value: float | None, of: SoFar) -> str | list[Any]:
    if value is None:
        return "not measured"
    if of.unit == "1":
        return f"{value:.2f}" if of.usual <= 1 and value <= 1 else f"{value:.0f}"
    words = value_words(round(value, 1 if of.unit == "°C" else 0), of.unit)
    return [[words["metric"], words["us"]]]


def _weekly(record: DailyRecord, year: int) -> list[float | None]:
    """Mean temperature of each week of a calendar year as it was measured [°C]; None for one of which too little was."""
    weeks: list[list[float]] = [[] for _ in range(WEEKS)]
    for day, value in record.mean_c.items():
        if day.year == year:
            weeks[WEEK_OF_DAY[day_number(day)]].append(value)
    return [fsum(days) / len(days) if len(days) >= LEAST_DAYS_OF_A_WEEK else None for days in weeks]


def _ahead(this: ThisYear, low: Sequence[float], high: Sequence[float]) -> tuple[list[int | None], list[int | None]]:
    """Two series of whole numbers for the weeks that lie ahead in the calendar year of the last measured day."""
    first = WEEK_OF_DAY[this.circle.today]
    return tuple([round(value) if week >= first else None for week, value in enumerate(each)] for each in (low, high))  # type: ignore[return-value]  # Two of two.


def _temperature(this: ThisYear, record: DailyRecord, until: str) -> dict[str, Any]:
    measured = [None if value is None else round(TENTHS * value) for value in _weekly(record, this.until.year)]

    def means(season: SeasonYear) -> list[float]:
        return [TENTHS * week.mean_temperature_c for week in season.weeks]

    return _chart(this, "temperature", "Mean temperature this year", ("°C", "°F", TENTHS), measured, means(this.usual), until, means)


def _growth(this: ThisYear, record: DailyRecord, until: str) -> dict[str, Any]:
    key = this.season.grass.growth_key
    measured = [None if value is None else round(PER_CENT * growth_potential(value, *key)) for value in _weekly(record, this.until.year)]

    def potentials(season: SeasonYear) -> list[float]:
        return [PER_CENT * week.growth_potential for week in season.weeks]

    return _chart(this, "growth", "Growth potential this year", ("", "", PER_CENT), measured, potentials(this.usual), until, potentials)


def _chart(
    this: ThisYear, id: str, title: str, units: tuple[str, str, int], measured: list[int | None], usual: list[float], until: str, series_of: Any,
) -> dict[str, Any]:
    shapes = [Shape("line", ("usual",), "dashes", "usual year"), Shape("line", ("measured",), "bold", f"this year, measured to {until}")]
    series: dict[str, Sequence[int | None]] = {"usual": [round(value) for value in usual], "measured": measured}
    if this.cooler and this.warmer:
        series["low"], series["high"] = _ahead(this, series_of(this.cooler), series_of(this.warmer))
        shapes.insert(0, Shape("band", ("high", "low"), "band", "where two years of three lie from here"))
    chart = Chart(f"this-year-{id}", title, *units, tuple(shapes), 1 if units[2] == PER_CENT else None, from_zero=units[2] == PER_CENT)
    return still_view(chart, series, f"The bold line is measured to {until}; the dashes are a usual year.")
