"""What a reader's own notes are judged by, as scripts that a page loads when there are notes: the rules, and one for each place."""

import json
from typing import Any

from generator.formula import to_javascript
from generator.season.equations.seen_equations import SEEN_EQUATIONS
from generator.season.season_cache import SeasonCache
from generator.season.seen.seen_place import seen_place
from generator.site.page_context import PageContext
from generator.site.year.year_words import WINDOW_LABELS
from generator.units import to_si, unit
from generator.words.figures import range_words, value_words
from generator.words.seen_sentences import COLDEST_SOIL_C, DEEPEST_MM, EDGES, HALVES, HOTTEST_SOIL_C, LONGEST_AGO_DAYS, NOTES, REFUSALS, SENTENCES, SHALLOWEST_MM, SOURCES

MILLIMETRES_A_METRE, METRES_AN_INCH = 1000, 0.0254
FOLDER = "assets/seen/"
FORMULAS = {"lag": "seen-depth-lag", "soil": "seen-soil-day", "later": "seen-days-later", "move": "seen-move"}


def seen_scripts(seasons: SeasonCache) -> dict[str, str]:
    """Path in the site to script text."""
    return {
        f"{FOLDER}rules.js": rules_script(seasons),
        **{f"{FOLDER}{place}.js": place_script(seasons, place) for place in seasons.book.offered_places},
    }


def place_script(seasons: SeasonCache, place: str) -> str:
    return f"Swardbook.seenPlace({json.dumps(place)},{_text(seen_place(seasons, place))});\n"


def rules_script(seasons: SeasonCache) -> str:
    """Sets `Swardbook.seenRules`: compiled formulas, figures [days, K, m, m2/s], limits of what is typed [SI], and words."""
    rules, soil = seasons.rules.seen, seasons.rules.soil
    formulas = ",".join(
        f"{name}:{to_javascript(SEEN_EQUATIONS[id].formula, SEEN_EQUATIONS[id].constants_si)}" for name, id in FORMULAS.items()
    )
    plain = {
        "most": rules.most_days, "fade": rules.fade_days, "least_change": rules.least_change_k, "depth": soil.depth_m, "diffusivity": soil.diffusivity_m2_per_s,
        "longest_ago": LONGEST_AGO_DAYS, "no-soil": _limits(COLDEST_SOIL_C, HOTTEST_SOIL_C, "°C"), "no-depth": _limits(SHALLOWEST_MM, DEEPEST_MM, "mm"),
        "words": {
            "sentences": SENTENCES, "halves": HALVES, "sources": SOURCES, "notes": NOTES, "refusals": REFUSALS, "edges": EDGES, "labels": WINDOW_LABELS,
        },
    }
    return f"Swardbook.seenRules=Object.assign({_text(plain)},{{formulas:{{{formulas}}}}});\n"


def seen_view(seasons: SeasonCache, here: PageContext, place: str = "", grass: str = "", follows: str = "") -> dict[str, Any]:
    """The dict of the part seen-here."""
    metres = seasons.rules.soil.depth_m
    depth = {"metric": f"{round(metres * MILLIMETRES_A_METRE)} mm", "us": f"{round(metres / METRES_AN_INCH)} in"}
    return {"id": "seen", "folder": here.links.file(FOLDER), "place": place, "grass": grass, "follows": follows, "write_at": "", "depth": depth}


def _limits(least: float, most: float, spelling: str) -> dict[str, Any]:
    words = [value_words(each, spelling) for each in (least, most)]
    return {
        "least": to_si(least, unit(spelling)), "most": to_si(most, unit(spelling)), "metric": [range_words(each, each, spelling) for each in (least, most)],
        "us": [each["us"] or each["metric"] for each in words],
    }


def _text(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))
