"""The year of a grass and place as a small script: what the home page's "this month" reads, also from a folder on disk."""

import json
from typing import Any

from generator.season.season_cache import SeasonCache
from generator.site.year.strips import strip_view
from generator.site.year.year_words import summary


def season_scripts(seasons: SeasonCache) -> dict[str, str]:
    """Path in the site to script text, one for each grass and place."""
    book = seasons.book
    return {
        f"assets/seasons/{grass}--{place}.js": season_script(seasons, grass, place) for grass in book.grasses for place in seasons.calendar_places
    }


def season_script(seasons: SeasonCache, grass_id: str, place_id: str) -> str:
    book, season = seasons.book, seasons.season(grass_id, place_id)
    grass, place = book.grasses[grass_id], book.places[place_id]
    strip = strip_view(season, "picker-strip", "card", "")
    year: dict[str, Any] = {
        "grass": grass.name, "place": place.name, "summary": summary(season), "description": strip["description"],
        "weeks": [
            "".join((week["state"][0], *(letter for flag, letter in FLAGS.items() if week[flag]))) for week in strip["weeks"]
        ],
        "months": [
            {"due": [
                {
                    "task": each.name, "url": f"tasks/{each.task_id}.html", "when": each.when, "say": each.due.say,
                    "because": each.due.because,
                }
                for each in month
            ]}
            for month in seasons.due(grass_id, place_id)
        ],
    }
    text = json.dumps(year, ensure_ascii=False, separators=(",", ":"))
    return f"Swardbook.season({json.dumps(grass_id)},{json.dumps(place_id)},{text});\n"


# A week is its growth by first letter (dormant, slow, growing, peak), then a letter for each thing that is so.
FLAGS = {"frost": "f", "chance": "c", "wet": "w", "renovation": "r", "overseeding": "o"}
