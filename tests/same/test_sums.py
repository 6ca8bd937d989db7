"""Sums come out the same under every Python: since 3.12 the built-in one compensates for rounding, and a printed half tips over."""

import ast
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from generator.formula import plain_sum
from tests.book_folders import WHOLE

ROOT = Path(__file__).parents[2]
GENERATOR = sorted((ROOT / "generator").rglob("*.py"))
# Both see the book's seasons as a build writes them; the second with the sum of the other Pythons: Neumaier's in older ones, plain in newer.
SEASONS = """
import builtins, hashlib, json, sys
from math import fsum
from pathlib import Path

def other(numbers, start=0):
    numbers = list(numbers)
    if not any(isinstance(each, float) for each in numbers):
        return plain(numbers, start)
    if sys.version_info < (3, 12):
        return start + fsum(numbers)
    total = start
    for each in numbers:
        total += each
    return total

plain = builtins.sum
if sys.argv[2] == "other":
    builtins.sum = other
from generator.checks import check_book
from generator.season.season_cache import SeasonCache
from generator.site.pages.calendar.view import month_facts
from generator.files.season_json import as_json
seasons = SeasonCache(check_book(Path(sys.argv[1])).book)
for place in seasons.book.offered_places:
    for grass in seasons.book.grasses:
        year = seasons.season(grass, place)
        print(json.dumps([as_json(year), [month_facts(year, month) for month in range(12)], year.weather.air_frost.nights_per_month(), year.water_need_mm]))
"""


def float_sums(source: str) -> Iterator[int]:
    """Lines with a built-in sum of anything but ones, and with anything of `statistics`."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "sum":
            counted = node.args[0]
            if not (isinstance(counted, ast.GeneratorExp) and isinstance(counted.elt, ast.Constant) and counted.elt.value == 1):
                yield node.lineno
        elif isinstance(node, ast.Import | ast.ImportFrom) and "statistics" in (getattr(node, "module", ""), *(each.name for each in node.names)):
            yield node.lineno


def test_nothing_but_a_count_goes_through_the_built_in_sum() -> None:
    """What no script adds up too takes math.fsum; what the browser adds up as well takes plain_sum, as it does."""
    found = [f"{file.relative_to(ROOT)}:{line}" for file in GENERATOR for line in float_sums(file.read_text(encoding="utf-8"))]
    assert found == []


def test_the_guard_would_notice() -> None:
    assert sorted(float_sums("a = sum(1 for x in y)\nb = sum(x for x in y)\nimport statistics\nc = sum(y)")) == [2, 3, 4]


def test_the_plain_sum_is_the_browsers() -> None:
    """1 and ten times 1e-16, one after another, are 1: IEEE 754, where the nearest number above 1 is 2.2e-16 away. The exact sum is not."""
    assert plain_sum([1.0, *[1e-16] * 10]) == 1.0 != 1.0 + 1e-15


def seasons(which: str, book: Path) -> bytes:
    return subprocess.run([sys.executable, "-c", SEASONS, str(book), which], capture_output=True, check=True, cwd=ROOT).stdout


def test_a_years_figures_hang_on_no_pythons_sum() -> None:
    these = seasons("this", WHOLE)
    assert len(these) > 1000 and these == seasons("other", WHOLE)


@pytest.mark.soak
def test_the_whole_books_figures_hang_on_no_pythons_sum() -> None:
    these, others = seasons("this", ROOT), seasons("other", ROOT)
    lines = these.count(b"\n")
    print(f"\n{lines} years of a grass at a place, {len(these)} bytes, the same with either sum")
    assert lines > 500 and these == others
