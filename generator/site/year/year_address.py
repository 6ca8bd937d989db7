"""Where the year of a grass at a place is shown."""

from generator.season.season_cache import SeasonCache
from generator.site.page import Links


def year_address(seasons: SeasonCache, links: Links, grass: str, place: str) -> str:
    """Its calendar; its part of the place's page where the place has no calendars; its row there where the place is not offered."""
    return links.calendar(grass, place) if place in seasons.calendar_places else links.to(f"places/{place}", grass)
