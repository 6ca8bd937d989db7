"""48 Australian stations: monthly figures of the daily minimum, in the order of the split into a fitted and a held half."""

import csv
from functools import cache
from pathlib import Path

# Monthly figures of 48 stations; (c) Commonwealth of Australia, Bureau of Meteorology, derived by this project.
STATIONS = Path(__file__).parent / "frost-stations.csv"


@cache
def stations():
    """Station -> twelve (mean minimum, standard deviation, nights at or below 0 °C, at or below 2 °C), in the order of the split."""
    found = {}
    with STATIONS.open(encoding="utf-8") as lines:
        for row in csv.DictReader(line for line in lines if not line.startswith("#")):
            found.setdefault(row["station"], []).append(
                tuple(float(row[name]) for name in ("mean_minimum_c", "standard_deviation_c", "frost_days", "cold_days"))
            )
    return {name: found[name] for name in sorted(found)}


def halves():
    names = list(stations())
    return names[::2], names[1::2]


def yearly_range(months):
    return max(m[0] for m in months) - min(m[0] for m in months)
