"""One grass across every place of the book: its years under one another, from the earliest window to the latest."""

from collections.abc import Iterator
from typing import Any

from generator.book.attribution import attribution
from generator.season.calendar_days import DAYS
from generator.season.season_cache import SeasonCache
from generator.season.year import SeasonYear
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext
from generator.site.year.strips import STRIP_MONTHS, strip_view
from generator.site.year.year_address import year_address
from generator.site.year.year_words import little_growth, summary

HALVES = {True: ("south", "South of the equator"), False: ("north", "North of the equator")}
# Half a year on, so that a southern spring is as early in its list as a northern one.
HALF_A_YEAR = DAYS // 2


def compare_page(seasons: SeasonCache, grass_id: str, here: PageContext) -> Page:
    book = seasons.book
    grass = book.grasses[grass_id]
    home_is_south = book.places[book.practice.home_place].latitude_deg < 0
    groups: list[dict[str, Any]] = []
    for south in (home_is_south, not home_is_south):
        places = [id for id, place in book.offered_places.items() if (place.latitude_deg < 0) == south]
        if places:
            id, title = HALVES[south]
            places.sort(key=lambda place: _opening(seasons.season(grass_id, place), south))
            rows = [_row(seasons, grass_id, place, here) for place in places]
            groups.append({"id": id, "title": title, "compare": {"of": "place", "months": STRIP_MONTHS, "rows": rows}})
    title = f"{grass.name}: place by place"
    lead = (
        f"The year of {grass.name} at each of {len(book.offered_places)} places, with the one whose renovation window opens first at the top. "
        "Find the place most like yours in frost, heat and rain."
    )
    context = {"title": title, "lead": lead, "groups": groups, "grass": grass.name, "grass_url": here.links.grass(grass_id)}
    sections = tuple(Section(group["id"], group["title"]) for group in groups)
    return Page(
        f"compare/{grass_id}", title, "compare", context, lead, (f"{grass.name} places", f"compare {grass.name}"),
        sections, tuple(attribution(book, book.offered_places)),
    )


def _opening(season: SeasonYear, south: bool) -> tuple[bool, int]:
    """Places with a window first, in the order of its first day, counted from the middle of the southern winter or from New Year."""
    found = season.renovation.windows
    if not found:
        return True, 0
    return False, (found[0].first - (HALF_A_YEAR if south else 0)) % DAYS


def _row(seasons: SeasonCache, grass: str, place: str, here: PageContext) -> dict[str, Any]:
    record = seasons.book.places[place]
    season = seasons.season(grass, place)
    return {
        "id": place, "name": record.name, "url": year_address(seasons, here.links, grass, place),
        "note": here.region(place), "strip": strip_view(season, f"strip-{place}", "card", ""),
        "text": summary(season), "warning": "Little growth here." if little_growth(season) else "", "why": [], "links": [],
    }


def pages(making: Making) -> Iterator[Page]:
    yield from (compare_page(making.seasons, id, making.here(f"compare/{id}")) for id in making.book.grasses)
