"""Seattle's daily minima and maxima of 2012 to 2015, from NOAA's public-domain record."""

import csv
from datetime import date
from functools import cache
from pathlib import Path

SEATTLE = Path(__file__).parent / "seattle-daily.csv"
# The package names no station; this is the city's airport, and both sides of each comparison use it.
SEATTLE_LATITUDE = 47.45


@cache
def seattle_days() -> list[tuple[date, float, float]]:
    with SEATTLE.open(encoding="utf-8") as lines:
        return [
            (date.fromisoformat(row["date"]), float(row["minimum_c"]), float(row["maximum_c"]))
            for row in csv.DictReader(line for line in lines if not line.startswith("#"))
        ]
