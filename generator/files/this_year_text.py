"""This year of a grass at a place: what was measured, beside the usual year; as text for a terminal and as plain values."""

from typing import Any

from generator.book.daily.daily_record import DailyRecord
from generator.files.season_text import EVENTS, KINDS
from generator.season.calendar_days import WEEKS, day_words, month_and_day, week_days
from generator.season.observed.moves import Move, moves
from generator.season.observed.so_far import SoFar, since, so_far
from generator.season.observed.this_year import ThisYear

VERSION = 1
NO_SPREAD = "This place does not say how its years differ, so no earliest and latest day is given."
QUANTITIES = {
    "mean_temperature": "mean temperature", "growth_potential": "growth potential", "growing_degree_days": "growing degree days",
    "soil_temperature_now": "soil on the last day", "frost_nights": "frost nights", "rain": "rain", "reference_evapotranspiration": "ET",
    "water_need": "water beyond rain",
}


def measured_to(this: ThisYear) -> str:
    """'Measured to 31 October 2026, usual weather after that.'"""
    return f"Measured to {this.until.day} {day_words(this.circle.today).split()[1]} {this.until.year}, usual weather after that."


def this_year_text(this: ThisYear, record: DailyRecord) -> str:
    """Several lines: until when it is measured, what the days since the turn brought, and what moves."""
    begin = since(this)
    lines = [measured_to(this), "", f"Since {begin.day} {day_words_of(begin)}:{'':<17}measured    usual"]
    for name, each in so_far(this, record).items():
        lines.append(f"  {QUANTITIES[name]:<32}{_shown(each.measured, each):>8} {_shown(each.usual, each):>8}  {_unit(each)}".rstrip())
    lines += ["", "What moves:"]
    found = [line for name, each in moves(this).items() if (line := _moved(name, each))]
    lines += found or ["  nothing: every day falls as in a usual year"]
    if this.cooler is None:
        lines.append(f"  {NO_SPREAD}")
    return "\n".join(lines)


def day_words_of(day: Any) -> str:
    """'November 2026'."""
    return f"{day:%B} {day.year}"


def _moved(name: str, each: Move) -> str | None:
    if not each.later and each.earliest == each.latest:
        return None
    days = "as usual" if not each.later else f"{abs(each.later)} {'day' if abs(each.later) == 1 else 'days'} {'later' if each.later > 0 else 'earlier'} than usual"
    band = ""
    if each.earliest is not None and each.latest is not None:
        band = f"; in two years of three {day_words(each.earliest)} to {day_words(each.latest)}"
    return f"  {_called(name, each.is_past)}: {day_words(each.day)}, {days} ({day_words(each.usual)}), {'measured' if each.is_past else 'expected'}{band}"


def _called(name: str, is_past: bool) -> str:
    kind, _, edge = name.partition(" ")
    if is_past and "frost" in kind:
        return EVENTS[kind].partition(",")[0]  # What was seen has no odds.
    return f"{KINDS[kind][0].lower()} {edge}" if edge else EVENTS[kind]  # type: ignore[index]  # A name of `moves` begins with a kind of window.


def _shown(value: float | None, of: SoFar) -> str:
    if value is None:
        return "-"
    return f"{value:.2f}" if of.unit == "1" and value <= 1 and of.usual <= 1 else f"{value:.1f}" if of.unit == "°C" else f"{value:.0f}"


def _unit(of: SoFar) -> str:
    return "" if of.unit == "1" else of.unit


def this_year_values(this: ThisYear, record: DailyRecord) -> dict[str, Any]:
    """What was measured and what moves, as plain values; the weeks beside them are this year's. Dates are YYYY-MM-DD, days of a year MM-DD."""
    return {
        "version": VERSION,
        "until": this.until.isoformat(), "since": since(this).isoformat(),
        "weeks_measured": [_measured(this, week) for week in range(WEEKS)],
        "so_far": {
            name: {"measured": None if each.measured is None else round(each.measured, 3), "usual": round(each.usual, 3), "unit": each.unit, "days": each.days}
            for name, each in so_far(this, record).items()
        },
        "moves": {
            name: {
                "day": month_and_day(each.day), "usual": month_and_day(each.usual), "days_later": each.later, "measured": each.is_past,
                "earliest": None if each.earliest is None else month_and_day(each.earliest), "latest": None if each.latest is None else month_and_day(each.latest),
            }
            for name, each in moves(this).items()
        },
        "usual_weeks": [
            {
                "week": week.week, "mean_temperature_c": round(week.mean_temperature_c, 1), "soil_temperature_c": round(week.soil_temperature_c, 1),
                "growth_potential": round(week.growth_potential, 3), "rain_mm": round(week.rain_mm, 1), "water_need_mm": round(week.water_need_mm, 1),
            }
            for week in this.usual.weeks
        ],
    }


def _measured(this: ThisYear, week: int) -> str:
    flags = {this.circle.is_measured(day) for day in week_days(week)}
    return "part" if len(flags) > 1 else "whole" if True in flags else "none"
