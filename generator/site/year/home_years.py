"""The years where the practice is: as strips on cards and pages, and each grass's window there in a sentence."""

from typing import Any

from generator.season.season_cache import SeasonCache
from generator.site.year.strips import all_dates, strip_view


def card_strip(seasons: SeasonCache, grass: str) -> dict[str, Any]:
    return strip_view(seasons.season(grass, seasons.book.practice.home_place), f"strip-{grass}", "card", "")


def page_strip(seasons: SeasonCache, grass: str) -> dict[str, Any]:
    home = seasons.book.practice.home_place
    title = f"The year at {seasons.book.places[home].name}"
    return strip_view(seasons.season(grass, home), "year", "page", title, legend=True, today=True)


def window_at_home(seasons: SeasonCache, grass: str) -> str:
    """When its own plan is done where the practice is, in a sentence."""
    book, home = seasons.book, seasons.book.practice.home_place
    dates = all_dates(seasons.season(grass, home).windows[book.renovations[book.grasses[grass].renovation].window])  # type: ignore[index]  # A check holds it to a window.
    return f"{book.places[home].name}: {dates}." if dates else f"{book.places[home].name}: no window."
