"""Comma-separated values (RFC 4180) for a spreadsheet, and the weeks of a computed year in them."""

import csv
from collections.abc import Callable, Iterable
from decimal import Decimal
from io import StringIO

from generator.book.lists.shielding import shielded
from generator.season.year import SeasonYear, Week

# Temperatures are given no finer than their source has them.
TEMPERATURES = ("mean_temperature_c", "maximum_temperature_c", "minimum_temperature_c", "soil_temperature_c")
COLUMNS: dict[str, Callable[[Week], object]] = {
    "growth_potential": lambda week: round(week.growth_potential, 3),
    "growth": lambda week: week.growth_class,
    "frost_probability": lambda week: round(week.frost_probability, 3),
    "ground_frost_probability": lambda week: round(week.ground_frost_probability, 3),
    "rain_mm": lambda week: round(week.rain_mm, 1),
    "reference_evapotranspiration_mm": lambda week: round(week.reference_evapotranspiration_mm, 1),
    "water_need_mm": lambda week: round(week.water_need_mm, 1),
    "windows": lambda week: " ".join(week.in_windows),
}


def csv_text(rows: Iterable[Iterable[object]]) -> str:
    """Rows of values, the names first. Text is shielded, so that a spreadsheet runs none of it; a number stays a number."""
    text = StringIO()
    # The writer ends lines with CR LF, as RFC 4180 has it.
    csv.writer(text).writerows([shielded(value) if isinstance(value, str) else value for value in row] for row in rows)
    return text.getvalue()


def weeks_csv(season: SeasonYear, attribution: str) -> str:
    """A row a week under a row of names; the wording that the data's owner asks for stands in the last column."""
    digits = 0 if season.whole_degrees else 1
    rows: list[list[object]] = [["week", "from", *TEMPERATURES, *COLUMNS, "attribution"]]
    for week in season.weeks:
        temperatures = [Decimal(f"{getattr(week, name):.{digits}f}") for name in TEMPERATURES]
        rows.append([week.week, week.starts, *temperatures, *(read(week) for read in COLUMNS.values()), attribution])
    return csv_text(rows)
