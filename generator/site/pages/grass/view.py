"""Grass pages: what it is, what it takes, what never to do to it."""

from collections.abc import Iterator
from typing import Any

from generator.book.book import Book
from generator.book.records.grass import Grass, Tolerance
from generator.season.season_cache import SeasonCache
from generator.site.making import Making
from generator.site.page import Page, Section
from generator.site.page_context import PageContext, all_names
from generator.site.pages.grass.grass_parts import habit_view, look_alikes, namesakes, parts_view
from generator.site.pages.problem.view import grass_problems
from generator.site.shared.laws import laws_said
from generator.site.shared.see_links import asked_about
from generator.site.year.home_years import card_strip, page_strip
from generator.site.year.strips import all_dates
from generator.site.year.year_address import year_address

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
    ("recovery", "Growing weather to recover from renovation"), ("winter_kill", "Nights in which winter kills it"),
)
TOLERANCES = ("frost", "shade", "drought", "heat", "salt", "wear")
SECTIONS = (
    Section("facts", "Facts and figures"), Section("never", "Never do this to it"),
    Section("takes", "How hard to go with each job"), Section("calendars", "Calendars"),
    Section("tolerates", "What it tolerates"), Section("water", "Water"), Section("recognise", "How to tell it apart"),
    Section("look-alikes", "What it gets mistaken for"), Section("problems", "Problems"), Section("names", "Names"), Section("weed", "Where it is a weed"),
)


def grass_page(book: Book, id: str, here: PageContext, strip: dict[str, Any], calendars: list[dict[str, Any]]) -> Page:
    """strip: the season strip of the home place; calendars: one link per place."""
    grass, sourcing, key = book.grasses[id], here.sourcing, book.key
    context = {
        "title": grass.name, "botanical_name": grass.botanical_name, "botanical_synonyms": list(grass.botanical_synonyms),
        "group": GROUP_WORDS[grass.season_group], "habit": HABIT_WORDS[grass.habit], "summary": grass.summary,
        "guide_url": here.links.guide(id), "compare_url": here.links.comparison(id), "facts": {"rows": fact_rows(grass, here)},
        "never": sourcing.statements(grass.never), "levels": level_rows(book, grass, here),
        "tolerances": [
            _tolerance(name, tolerance, here) for name in TOLERANCES if (tolerance := getattr(grass.tolerance, name))
        ],
        "runs": habit_view(key, grass, here) if key else None, "parts": parts_view(key, grass, here) if key else None,
        "key_url": here.links.to("grasses/key") if key else "", "look_alikes": look_alikes(book, id, here), "namesakes": namesakes(grass),
        "water": sourcing.statements(grass.water),
        "recognise": sourcing.statements(grass.recognise), "problems": sourcing.statements(grass.problems), "found": grass_problems(book, id, here),
        "asked": asked_about(book, "grasses", id, here),
        "thatch": sourcing.statement(grass.thatch), "establishment": _establishment(grass, here),
        "names": here.names(grass.names), "cautions": here.cautions(grass.cautions),
        "weed_status": _weed_status(book, grass, here), "laws": laws_said(book, grass),
        "strip": strip, "calendars": calendars,
    }
    names = (*all_names(book, grass.names), grass.botanical_name, *grass.botanical_synonyms)
    return Page(f"grasses/{id}", grass.name, "grass", context, grass.summary, grass.misspellings, sections=SECTIONS, names=names)


def fact_rows(grass: Grass, here: PageContext) -> list[dict[str, Any]]:
    rows = [
        here.sourcing.figure(label, figure) for name, label in FIGURES if (figure := getattr(grass, name)) is not None
    ]
    rows[1:1] = [here.sourcing.figure(f"Mowing height, {use}", height) for use, height in grass.heights.items()]
    if grass.season.optimum:
        rows.append(here.sourcing.figure("Grows best at a mean of", grass.season.optimum))
    if grass.season.base:
        rows.append(here.sourcing.figure("Stops growing below", grass.season.base))
    return rows


def level_rows(book: Book, grass: Grass, here: PageContext) -> list[dict[str, Any]]:
    return [
        {
            **here.task_link(task_id), "level": operation.level, "how": operation.how, "note": operation.note,
            "marks": here.sourcing.marks(operation), "others": here.sourcing.statements(operation.others),
        }
        for task_id, operation in grass.operations.items() if task_id in book.tasks
    ]


def _tolerance(name: str, tolerance: Tolerance, here: PageContext) -> dict[str, Any]:
    return {
        "name": name.capitalize(), "level": tolerance.level, "note": tolerance.note, "marks": here.sourcing.marks(tolerance),
        "others": [
            {"level": other.level, "note": other.note, "marks": here.sourcing.marks(other)} for other in tolerance.others
        ],
    }


def _establishment(grass: Grass, here: PageContext) -> list[dict[str, Any]]:
    start = grass.establishment
    ways = (("From seed", start.from_seed), ("From runners", start.from_runners), ("From rolls", start.from_rolls))
    return [{"label": label, **here.sourcing.statement(way)} for label, way in ways if way]


def _weed_status(book: Book, grass: Grass, here: PageContext) -> list[dict[str, Any]]:
    """By country, and region where only it is meant: what is known of it there as a weed, and whom to ask; nothing known is told too."""
    authorities = book.key.weed_authorities if book.key else {}
    rows = []
    for code, country in book.countries.items():
        known = [each for each in grass.weed_status if each.country == code]
        asked = next((each.ask for each in known if each.ask and not each.regions), authorities.get(code, ""))
        for at, each in enumerate(known):
            of_its_own = each.ask if each.regions else None
            rows.append({
                "where": ", ".join((country.name, *each.regions)), "ask": of_its_own or (asked if at == len(known) - 1 else ""), **here.sourcing.statement(each)
            })
        if not known and code in authorities:
            rows.append({"where": country.name, "ask": authorities[code], "text": "", "note": None, "marks": None})
    return rows


def grass_index(book: Book, here: PageContext, strips: dict[str, dict[str, Any]]) -> Page:
    groups = [
        {"title": f"{GROUP_WORDS[group]}es", "cards": [
            {"title": grass.name, "url": here.links.grass(id), "text": grass.summary, "strip": strips[id]}
            for id, grass in book.grasses.items() if grass.season_group == group
        ]}
        for group in ("warm", "cool")
    ]
    if len(book.grasses) > 1:
        compare = {"title": "Grasses side by side", "url": here.links.to("side-by-side"), "text": "Two to four at a time: heights, feed, shade, frost, wear."}
        ranked = {"title": "Which grass for what", "url": here.links.to("which-grass"), "text": "Every grass in order: shade, wear, little water, salt, frost, heat."}
        groups.insert(0, {"title": "Compare", "cards": [ranked, compare]})
    home = book.places[book.practice.home_place].name
    lead = f"Each strip is one year at {home}, January at the left. Every grass has a page, a renovation guide and a calendar for each place."
    key = [{"title": None, "cards": [{"title": book.key.title, "url": here.links.to("grasses/key"), "text": book.key.summary}]}] if book.key else []
    context = {"title": "Grasses", "lead": lead, "groups": [*key, *(group for group in groups if group["cards"])]}
    return Page("grasses/index", "Grasses", "index", context, lead)


def pages(making: Making) -> Iterator[Page]:
    book, seasons = making.book, making.seasons
    yield grass_index(book, making.here("grasses/index"), {id: card_strip(seasons, id) for id in book.grasses})
    for id in book.grasses:
        here = making.here(f"grasses/{id}")
        yield grass_page(book, id, here, page_strip(seasons, id), _calendars(seasons, id, here))


def _calendars(seasons: SeasonCache, grass: str, here: PageContext) -> list[dict[str, str]]:
    rows = []
    for place, record in seasons.book.offered_places.items():
        dates = all_dates(seasons.season(grass, place).renovation)
        text = f"renovate {dates}" if dates else "no renovation window"
        rows.append({"name": record.name, "url": year_address(seasons, here.links, grass, place), "text": text})
    return rows
