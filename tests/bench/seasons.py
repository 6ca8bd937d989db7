"""How long every season of the shipped book takes: `make bench`.

Each figure is the middle one of several runs, each in a process of its own, so that nothing is remembered from the last.
Loading the book is not counted; it is printed beside. Ends with 1 when a bar is missed.
"""

import subprocess
import sys
from pathlib import Path
from statistics import median
from time import perf_counter

RUNS = 3
BAR_S = 3.0
# Twice the places may cost no more than this times twice the time.
LINEAR_WITHIN = 1.3
ROOT = Path(__file__).parents[2]


def measure(share: int) -> None:
    """Print seconds to load, seconds for the seasons of every `share`-th place, and seconds for their weeks and events."""
    from generator.book.loading.whole_book import read_book
    from generator.files.season_json import as_json
    from generator.season.season_cache import SeasonCache

    start = perf_counter()
    book, findings = read_book(ROOT)
    assert not findings, findings
    seasons = SeasonCache(book)
    loaded = perf_counter()
    asked = [(grass, place) for place in list(book.places)[::share] for grass in book.grasses]
    seasons = [seasons.season(grass, place) for grass, place in asked]
    computed = perf_counter()
    for season in seasons:
        as_json(season)
    told = perf_counter()
    print(len(book.grasses), len(asked) // len(book.grasses), loaded - start, computed - loaded, told - computed)


def run(share: int) -> tuple[float, ...]:
    """The middle of several fresh runs: grasses, places, seconds to load, to compute, to tell."""
    found = [
        tuple(float(word) for word in subprocess.run(
            [sys.executable, "-m", "tests.bench.seasons", str(share)], cwd=ROOT, check=True, capture_output=True, text=True,
        ).stdout.split())
        for _ in range(RUNS)
    ]
    return tuple(median(values) for values in zip(*found))


def main() -> int:
    grasses, places, load_s, compute_s, tell_s = run(1)
    _, half_places, _, half_compute_s, half_tell_s = run(2)
    seasons = grasses * places
    print(f"{grasses:.0f} grasses x {places:.0f} places, open site: {seasons:.0f} seasons")
    print(f"  loading the book                 {load_s:6.2f} s")
    print(f"  windows and daily series         {compute_s:6.2f} s  {1000 * compute_s / seasons:5.1f} ms a season  (bar {BAR_S:g} s)")
    print(f"  weeks, events and JSON of each   {tell_s:6.2f} s  {1000 * tell_s / seasons:5.1f} ms a season")
    ratio = (compute_s + tell_s) / (half_compute_s + half_tell_s) / (places / half_places)
    print(f"  {places / half_places:.2f} times the places cost {ratio * places / half_places:.2f} times the time: ratio {ratio:.2f} (1 is linear)")
    missed = [name for name, held in (("seconds", compute_s < BAR_S), ("linear", ratio < LINEAR_WITHIN)) if not held]
    print("every bar held" if not missed else f"missed: {', '.join(missed)}")
    return 1 if missed else 0


if __name__ == "__main__":
    if len(sys.argv) > 1:
        measure(int(sys.argv[1]))
    else:
        raise SystemExit(main())
