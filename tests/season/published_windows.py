"""Our windows scored against what public bodies print: shares of days, entry by entry and all together."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cache
from statistics import mean
from typing import Any

from generator.season.calendar_days import DAYS, day_words
from generator.season.windows.main_windows import Window
from generator.season.windows.printed_agreement import day_number
from tests.our_book import ROOT, seasons
from tests.our_book import book as our_book
from tests.yaml_files import read_yaml

# What a printed job is called among our windows.
KINDS = {
    "warm_renovation": "renovation", "warm_coring": "light_renovation", "warm_establish": "renovation", "winter_overseeding": "oversowing",
    "pre_emergent_summer": "pre_emergent", "cool_overseed_autumn": "overseeding", "cool_overseed_spring": "overseeding",
    "cool_renovation": "renovation", "cool_coring": "light_renovation",
}


@dataclass(frozen=True)
class Score:
    """One entry against ours, the mean over its grasses; shares 0 to 1.

    covered: of the printed days, by our window. preferred: of our preferred days, inside the printed span; best: whether our best date is;
    both None for an entry that gives no span. off: days by which the best date lies outside the printed span.
    """

    entry: dict[str, Any]
    covered: float
    preferred: float | None
    best: float | None
    off: float
    ours: str
    window: str
    weeks: str


def entries() -> list[dict[str, Any]]:
    """Those that have a window among ours and a place in the book."""
    found = read_yaml(ROOT / "tests" / "published" / "windows.yml")["windows"]
    return [each for each in found if each["place"] and each["job"] in KINDS and each["edge"] in ("span", "point")]


@cache
def scores() -> tuple[Score, ...]:
    return tuple(_score(each) for each in entries())


def _score(entry: dict[str, Any]) -> Score:
    printed = _days(day_number(entry["first"]), (day_number(entry["last"]) - day_number(entry["first"])) % DAYS + 1)
    parts = [_one(printed, seasons().season(grass, entry["place"]).windows[KINDS[entry["job"]]].windows) for grass in entry["grasses"]]
    spans = entry["edge"] == "span"
    return Score(
        entry, mean(part[0] for part in parts), mean(part[1] for part in parts) if spans else None,
        mean(part[2] for part in parts) if spans else None, mean(part[3] for part in parts), *parts[0][4],
    )


def _one(printed: set[int], windows: tuple[Window, ...]) -> tuple[float, float, float, float, tuple[str, str, str]]:
    """Of two windows a year, the one that shares more with what is printed is meant."""
    if not windows:
        return 0.0, 0.0, 0.0, float(DAYS), ("none", "none", "none")
    window = max(windows, key=lambda each: len(printed & _days(each.first, each.days)))
    preferred = _days(window.preferred.first, (window.preferred.last - window.preferred.first) % DAYS + 1)
    off = min(min((window.best - day) % DAYS, (day - window.best) % DAYS) for day in printed)
    ours = f"{window.first:3d} to {window.last:3d}, best {window.preferred.first:3d} to {window.preferred.last:3d}"
    shown = ours, *(f"{day_words(first)} to {day_words(last)}" for first, last in ((window.first, window.last), window.preferred[:2]))
    return len(printed & _days(window.first, window.days)) / len(printed), len(preferred & printed) / len(preferred), float(window.best in printed), off, shown


def _days(first: int, count: int) -> set[int]:
    return {(first + ahead) % DAYS for ahead in range(count)}


@dataclass(frozen=True)
class Sum:
    """spans: entries with a printed span. Shares 0 to 1; works: of single works, inside our window, None where there are none."""

    spans: int
    covered: float
    preferred: float
    best: float
    works: float | None


def summed(wanted: Callable[[Score], bool] = lambda score: True) -> Sum:
    mine = [score for score in scores() if wanted(score)]
    spans, works = [score for score in mine if score.preferred is not None], [score.covered for score in mine if score.preferred is None]
    return Sum(len(spans), _mean(each.covered for each in spans), _mean(each.preferred or 0 for each in spans), _mean(each.best or 0 for each in spans), mean(works) if works else None)


def _mean(values: Iterable[float]) -> float:
    listed = list(values)
    return mean(listed) if listed else 0.0


def table() -> str:
    """Everything, a line an entry, and the sums by job and country."""
    lines = [f"{'entry':32} {'printed':13} {'ours (day numbers)':34} covered preferred  off"]
    for score in sorted(scores(), key=lambda each: (each.entry["job"], each.entry["id"])):
        shown = "      -" if score.preferred is None else f"{score.preferred:7.0%}"
        lines.append(f"{score.entry['id']:32} {score.entry['first']}..{score.entry['last']}  {score.ours:34} {score.covered:7.0%}  {shown} {score.off:5.0f}")
    for key in ("job", "country"):
        for name in sorted({score.entry[key] for score in scores()}):
            found = summed(lambda score, key=key, name=name: score.entry[key] == name)
            lines.append(f"{name:24} {found.spans:3d} spans: covered {found.covered:.0%}, preferred days inside {found.preferred:.0%}, best dates {found.best:.0%}")
    return "\n".join(lines)


# What a job is called on the page.
JOBS = {
    "warm_renovation": "Warm-season renovation", "warm_coring": "Warm-season coring", "warm_establish": "Warm-season planting", "winter_overseeding": "Winter ryegrass",
    "pre_emergent_summer": "Pre-emergent", "cool_overseed_autumn": "Cool-season sowing, autumn", "cool_overseed_spring": "Cool-season sowing, spring",
    "cool_renovation": "Cool-season renovation", "cool_coring": "Cool-season coring",
}


def page_tables() -> str:
    """The sums by job and country, and every entry, as the page of printed windows shows them."""
    lines = ["| | Spans | Covered | Best weeks | Best date |", "|---|---|---|---|---|"]
    for key in ("job", "country"):
        for name in sorted({score.entry[key] for score in scores()}):
            found = summed(lambda score, key=key, name=name: score.entry[key] == name)
            if found.spans:
                shown = JOBS[name] if key == "job" else our_book().countries[name].name
                lines.append(f"| {shown} | {found.spans} | {found.covered:.0%} | {found.preferred:.0%} | {found.best:.0%} |".replace("%", " %"))
    lines += ["", "| Who prints it, and where | Job | Printed | Ours | Best weeks | Covered |", "|---|---|---|---|---|---|"]
    for score in sorted(scores(), key=lambda each: (each.entry["job"], each.entry["where"], each.entry["id"])):
        entry = score.entry
        who = f"{entry['source']['organisation']}: {entry['where']}"
        printed = f"{day_words(day_number(entry['first']))} to {day_words(day_number(entry['last']))}"
        lines.append(f"| {who} | {JOBS[entry['job']]} | {printed} | {score.window} | {score.weeks} | {score.covered:.0%} |".replace("%", " %"))
    lines += ["", *(f"- {score.entry['where']}: {score.entry['explained']}" for score in scores() if score.entry.get("explained"))]
    return "\n".join(lines)
