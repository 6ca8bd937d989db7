"""Grass pages: what it is, what it takes, what never to do to it."""

from typing import Any

from generator.model.book import Book
from generator.model.grass import Grass, Tolerance
from generator.pages.desk import COUNTRY_NAMES, Desk, all_names
from generator.pages.identification import habit_view, look_alikes, parts_view
from generator.pages.page import Page, Section
from generator.pages.problem import grass_problems
from generator.pages.see import asked_about

HABIT_WORDS = {
    "above ground": "Runs above ground only: nothing below to come back from.",
    "above and below ground": "Runs above and below ground: comes back from below when cut low.",
    "below ground": "Spreads by runners below ground.",
    "bunch": "Grows in bunches; gaps are filled by seed, not by runners.",
}
GROUP_WORDS = {"warm": "Warm-season grass", "cool": "Cool-season grass"}
FIGURES = (
    ("mowing_height", "Mowing height"), ("renovation_height", "Height to cut to at renovation"),
    ("nitrogen_per_year", "Nitrogen a year"), ("nitrogen_per_feed", "Nitrogen at one feed"),
    ("seed_rate", "Seed for a new lawn"), ("overseed_rate", "Seed over a living lawn"),
    ("topdressing_depth", "Sand in one dressing"), ("thatch_limit", "Thatch: act when deeper than"),
    ("recovery", "Growing weather to recover from renovation"),
)
TOLERANCES = ("frost", "shade", "drought", "heat", "salt", "wear")
SECTIONS = (
    Section("facts", "Facts and figures"), Section("never", "Never do this to it"),
    Section("takes", "How hard to go with each job"), Section("calendars", "Calendars"),
    Section("tolerates", "What it tolerates"), Section("water", "Water"), Section("recognise", "How to tell it apart"),
    Section("look-alikes", "What it gets mistaken for"), Section("problems", "Problems"), Section("names", "Names"), Section("weed", "Where it is a weed"),
)


def grass_page(book: Book, id: str, desk: Desk, strip: dict[str, Any], calendars: list[dict[str, Any]]) -> Page:
    """strip: the season strip of the home place; calendars: one link per place."""
    grass, sourcing, key = book.grasses[id], desk.sourcing, book.key
    context = {
        "title": grass.name, "botanical_name": grass.botanical_name, "botanical_synonyms": list(grass.botanical_synonyms),
        "group": GROUP_WORDS[grass.season_group], "habit": HABIT_WORDS[grass.habit], "summary": grass.summary,
        "guide_url": desk.links.guide(id), "compare_url": desk.links.comparison(id), "facts": {"rows": fact_rows(grass, desk)},
        "never": sourcing.statements(grass.never), "levels": level_rows(book, grass, desk),
        "tolerances": [
            _tolerance(name, tolerance, desk) for name in TOLERANCES if (tolerance := getattr(grass.tolerance, name))
        ],
        "runs": habit_view(key, grass, desk) if key else None, "parts": parts_view(key, grass, desk) if key else None,
        "key_url": desk.links.to("grasses/key") if key else "", "look_alikes": look_alikes(book, id, desk),
        "water": sourcing.statements(grass.water),
        "recognise": sourcing.statements(grass.recognise), "problems": sourcing.statements(grass.problems), "found": grass_problems(book, id, desk),
        "asked": asked_about(book, "grasses", id, desk),
        "thatch": sourcing.statement(grass.thatch), "establishment": _establishment(grass, desk),
        "names": desk.names(grass.names), "cautions": desk.cautions(grass.cautions),
        "weed_status": _weed_status(book, grass, desk),
        "strip": strip, "calendars": calendars,
    }
    names = (*all_names(grass.names), grass.botanical_name, *grass.botanical_synonyms)
    return Page(f"grasses/{id}", grass.name, "grass", context, grass.summary, grass.misspellings, sections=SECTIONS, names=names)


def fact_rows(grass: Grass, desk: Desk) -> list[dict[str, Any]]:
    rows = [
        desk.sourcing.figure(label, figure) for name, label in FIGURES if (figure := getattr(grass, name)) is not None
    ]
    rows[1:1] = [desk.sourcing.figure(f"Mowing height, {use}", height) for use, height in grass.heights.items()]
    if grass.season.optimum:
        rows.append(desk.sourcing.figure("Grows best at a mean of", grass.season.optimum))
    if grass.season.base:
        rows.append(desk.sourcing.figure("Stops growing below", grass.season.base))
    return rows


def level_rows(book: Book, grass: Grass, desk: Desk) -> list[dict[str, Any]]:
    return [
        {
            **desk.task_link(task_id), "level": operation.level, "how": operation.how, "note": operation.note,
            "marks": desk.sourcing.marks(operation), "others": desk.sourcing.statements(operation.others),
        }
        for task_id, operation in grass.operations.items() if task_id in book.tasks
    ]


def _tolerance(name: str, tolerance: Tolerance, desk: Desk) -> dict[str, Any]:
    return {
        "name": name.capitalize(), "level": tolerance.level, "note": tolerance.note, "marks": desk.sourcing.marks(tolerance),
        "others": [
            {"level": other.level, "note": other.note, "marks": desk.sourcing.marks(other)} for other in tolerance.others
        ],
    }


def _establishment(grass: Grass, desk: Desk) -> list[dict[str, Any]]:
    start = grass.establishment
    ways = (("From seed", start.from_seed), ("From runners", start.from_runners), ("From rolls", start.from_rolls))
    return [{"label": label, **desk.sourcing.statement(way)} for label, way in ways if way]


def _weed_status(book: Book, grass: Grass, desk: Desk) -> list[dict[str, Any]]:
    """By country: what is known of it there as a weed, and whom to ask; a country of the book's list is told of even if nothing is."""
    authorities = book.key.weed_authorities if book.key else {}
    rows = []
    for code, name in COUNTRY_NAMES.items():
        known = [each for each in grass.weed_status if each.country == code]
        asked = next((each.ask for each in known if each.ask), authorities.get(code, ""))
        for at, each in enumerate(known):
            rows.append({"country_name": name, "ask": asked if at == len(known) - 1 else "", **desk.sourcing.statement(each)})
        if not known and code in authorities:
            rows.append({"country_name": name, "ask": authorities[code], "text": "", "note": None, "marks": None})
    return rows


def grass_index(book: Book, desk: Desk, strips: dict[str, dict[str, Any]]) -> Page:
    groups = [
        {"title": f"{GROUP_WORDS[group]}es", "cards": [
            {"title": grass.name, "url": desk.links.grass(id), "text": grass.summary, "strip": strips[id]}
            for id, grass in book.grasses.items() if grass.season_group == group
        ]}
        for group in ("warm", "cool")
    ]
    if len(book.grasses) > 1:
        compare = {"title": "Grasses side by side", "url": desk.links.to("side-by-side"), "text": "Two to four at a time: heights, feed, shade, frost, wear."}
        ranked = {"title": "Which grass for what", "url": desk.links.to("which-grass"), "text": "Every grass in order: shade, wear, little water, salt, frost, heat."}
        groups.insert(0, {"title": "Compare", "cards": [ranked, compare]})
    home = book.places[book.practice.home_place].name
    lead = f"Each strip is one year at {home}, January at the left. Every grass has a page, a renovation guide and a calendar for each place."
    key = [{"title": None, "cards": [{"title": book.key.title, "url": desk.links.to("grasses/key"), "text": book.key.summary}]}] if book.key else []
    context = {"title": "Grasses", "lead": lead, "groups": [*key, *(group for group in groups if group["cards"])]}
    return Page("grasses/index", "Grasses", "index", context, lead)
