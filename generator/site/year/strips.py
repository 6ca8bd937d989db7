"""A computed year as the season strip, the mark of the book, and its windows in words."""

from typing import Any

from generator.season.calendar_days import DAYS, MONTH_LENGTHS, MONTH_STARTS, MONTHS, day_words
from generator.season.windows.every_kind import WindowKind
from generator.season.windows.main_windows import Window, Windows
from generator.season.year import SeasonYear
from generator.site.shared.strip_drawing import SIGNS
from generator.words.reason_text import Text, said, said_exactly, sentence

STRIP_MONTHS = [
    {"name": name, "start_fraction": round(start / DAYS, 5), "width_fraction": round(length / DAYS, 5)}
    for name, start, length in zip(MONTHS, MONTH_STARTS, MONTH_LENGTHS, strict=True)
]
BAND_LABELS: dict[WindowKind, str] = {"renovation": SIGNS["renovation"], "overseeding": SIGNS["overseeding"]}


def short_day(day: int) -> str:
    """'12 Oct' for a day number."""
    number, month = day_words(day).split()
    return f"{number} {month[:3]}"


def window_dates(window: Window) -> str:
    """'12 Oct to 3 Feb', or 'all year'."""
    return "all year" if window.days >= DAYS else f"{short_day(window.first)} to {short_day(window.last)}"


def preferred_dates(window: Window) -> str:
    """'8 to 22 Sep', or '27 Sep to 11 Oct': the best weeks of a window."""
    first, last = short_day(window.preferred.first), short_day(window.preferred.last)
    return f"{first.split()[0]} to {last}" if first.split()[1:] == last.split()[1:] else f"{first} to {last}"


def strip_view(season: SeasonYear, id: str, size: str, title: str, legend: bool = False, today: bool = False) -> dict[str, Any]:
    return {
        "id": id, "size": size, "title": title, "description": year_sentence(season), "legend": legend, "today": today,
        "bands": band_views(season, size), "months": STRIP_MONTHS,
        "weeks": [
            {
                "number": week.week, "from": _short(week.starts), "state": week.growth_class, "frost": week.frosty, "chance": week.frost_possible,
                "wet": week.wet, **{kind: kind in week.in_windows for kind in BAND_LABELS},
            }
            for week in season.weeks
        ],
    }


def band_views(season: SeasonYear, size: str) -> list[dict[str, str]]:
    """The windows that a strip draws, with their dates where the strip has room for words."""
    return [
        {"label": label if size == "card" else f"{label}: {all_dates(season.windows[kind])}", "kind": kind}
        for kind, label in BAND_LABELS.items() if season.windows[kind].windows
    ]


def all_dates(found: Windows) -> str:
    """'12 Oct to 3 Feb and 1 Mar to 4 Apr'; empty where there is no window."""
    return " and ".join(window_dates(window) for window in found.windows)


def _short(month_day: str) -> str:
    month, day = month_day.split("-")
    return f"{int(day)} {MONTHS[int(month) - 1][:3]}"


def year_sentence(season: SeasonYear) -> str:
    """The strip for someone who does not see it: growth, frost and windows in one breath."""
    parts = []
    for state, words in (("peak", "peak growth"), ("dormant", "dormant")):
        stretches = _stretches([week.growth_class == state for week in season.weeks])
        if stretches:
            parts.append(f"{words} {' and '.join(_stretch(season, each) for each in stretches)}")
    frost = _stretches([week.frosty for week in season.weeks])
    parts.append(f"frost likely {' and '.join(_stretch(season, each) for each in frost)}" if frost else "no week with frost likely")
    possible = _stretches([week.frost_possible for week in season.weeks])
    if possible:
        parts.append(f"frost possible {' and '.join(_stretch(season, each) for each in possible)}")
    for kind, label in BAND_LABELS.items():
        if season.windows[kind].windows:
            parts.append(f"{label.lower()} {all_dates(season.windows[kind])}")
    text = "; ".join(parts)
    return f"{text[0].upper()}{text[1:]}."


def _stretches(flags: list[bool]) -> list[tuple[int, int]]:
    """First and last week of each run of True; a run over New Year is one."""
    if all(flags):
        return [(0, len(flags) - 1)]
    firsts = [week for week in range(len(flags)) if flags[week] and not flags[week - 1]]
    stretches = []
    for first in firsts:
        length = next(ahead for ahead in range(len(flags)) if not flags[(first + ahead) % len(flags)])
        stretches.append((first, (first + length - 1) % len(flags)))
    return stretches


def _stretch(season: SeasonYear, weeks: tuple[int, int]) -> str:
    first, last = (MONTHS[int(season.weeks[week].starts[:2]) - 1] for week in weeks)
    if (weeks[1] - weeks[0]) % 52 == 51:
        return "all year"
    return f"in {first}" if first == last else f"from {first} to {last}"


def window_rows(found: Windows) -> list[dict[str, Text]]:
    return [{"dates": window_dates(each), "best": preferred_dates(each), "why": said(each.why), "exactly": said_exactly(each.why)} for each in found.windows]


def when_row(season: SeasonYear, kind: WindowKind, place_id: str, place: str, calendar_url: str) -> dict[str, Any]:
    """One place in the table of windows."""
    found = season.windows[kind]
    return {
        "place_id": place_id, "place": place, "calendar_url": calendar_url, "windows": window_rows(found),
        "why_none": sentence(said(found.why_none)) if found.why_none else None,
        "none_exactly": sentence(said_exactly(found.why_none)) if found.why_none else "",
    }
