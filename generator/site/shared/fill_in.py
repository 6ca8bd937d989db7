"""'Fill in from': what a reader chooses on a calculator's page, and the one file of figures that the choices fill in from. Twin: fill-in."""

import json
from collections.abc import Iterable, Mapping
from itertools import pairwise
from typing import Any

from generator.book.book import Book
from generator.book.records.calculator import Calculator
from generator.calculators.bindings import bound_value, parts_of
from generator.calculators.chosen import Chosen
from generator.calculators.filled_value import Missing
from generator.calculators.season_fields import COUNT_WORDS, DATE_WORDS, DAY_OF_YEAR, SPAN, SPAN_WORDS, WEEK, WEEK_WORDS, YEAR_WORDS
from generator.season.inputs import grass_season_of
from generator.season.season_cache import SeasonCache
from generator.season.year import SeasonYear
from generator.site.page_context import PageContext

SCRIPT = "assets/fill-in.js"
FILE, COUNTS_FILE = "assets/fill-in-figures.js", "assets/fill-in-degree-days.js"
# Enough digits for any field, and few enough for one file to hold every place's weeks.
DIGITS, DIGITS_OF_A_WEEK = 5, 3
LABELS = {"grass": "Grass", "place": "Place", "product": "Product", "machine": "Machine", "operation": "Operation", "date": "Date"}
DATES = {"date": "First date", "until": "Last date"}


SPAN_CHOICES = {
    "days": ("date", "until"), "degree_days_at_first": ("grass", "place", "date"),
    "degree_days_at_last": ("grass", "place", "until"), "degree_days_of_year": ("grass", "place"),
}


def choices_of(part: str) -> tuple[str, ...]:
    """Which choices a part of an expression waits for: 'week.leaf_growth' for a grass, a place and a date."""
    kind, _, name = part.partition(".")
    if kind in ("grass", "group"):
        return ("grass",)
    if kind == "place":
        return ("place",)
    if kind == "week":
        if name == DAY_OF_YEAR:
            return ("date",)
        return ("grass", "place", "date") if WEEK[name].of_grass else ("place", "date")
    if kind == "span":
        return SPAN_CHOICES[name]
    thing = name.partition(".")[0]
    return {"feed": ("product",), "product": ("product",), "machine": ("machine",), "operation": ("operation",)}.get(thing, ())


def _binds(calculator: Calculator) -> dict[str, tuple[str, ...]]:
    """The parts that wait for a choice, by input."""
    found = {
        name: tuple(part for part in parts_of(asked.binds) if choices_of(part))
        for name, asked in calculator.inputs.items() if asked.binds
    }
    return {name: parts for name, parts in found.items() if parts}


def fill_in_view(book: Book, id: str, here: PageContext) -> dict[str, Any] | None:
    """The component's dict for one calculator; None where no choice fills anything in."""
    calculator = book.calculators[id]
    binds = _binds(calculator)
    parts = [part for each in binds.values() for part in each]
    wanted = {choice for part in parts for choice in choices_of(part)}
    options = {
        "grass": [(key, grass.name) for key, grass in book.grasses.items()],
        "place": [(key, f"{place.name}, {place.region}") for key, place in book.offered_places.items()],
        "product": _products(book, calculator, parts),
        "machine": [(key, machine.name) for key, machine in book.practice.machines.items()],
        "operation": [(key, book.tasks[key].name) for key in book.practice.operations],
    }
    selects: list[dict[str, Any]] = [
        {"kind": kind, "label": LABELS[kind], "options": [{"id": key, "name": name} for key, name in options[kind]]}
        for kind in options if kind in wanted and options[kind]
    ]
    dates = [] if "date" not in wanted else [("date", LABELS["date"])] if "until" not in wanted else list(DATES.items())
    if not selects and not dates:
        return None
    kinds = [select["label"] for select in selects] + (["two dates"] if len(dates) > 1 else ["date"] if dates else [])
    return {
        "id": f"fill-in-{id}", "calculator": f"calc-{id}", "file": here.links.file(FILE), "selects": selects,
        "counts_file": here.links.file(COUNTS_FILE) if "until" in wanted else None,
        "dates": [{"kind": kind, "label": label} for kind, label in dates],
        "binds": json.dumps({name: list(each) for name, each in binds.items()}, separators=(",", ":")),
        "kinds": _listed([kind.lower() for kind in kinds]),
    }


def _listed(words: list[str]) -> str:
    return " and ".join([", ".join(words[:-1]), words[-1]]) if len(words) > 1 else words[0]


def _products(book: Book, calculator: Calculator, parts: Iterable[str]) -> list[tuple[str, str]]:
    """The products for the calculator's tasks that give the first thing it asks of a product: no sand where nitrogen is asked for."""
    first = next((part.rpartition(".")[2] for part in parts if choices_of(part) == ("product",)), None)
    return [
        (id, product.name) for id, product in book.practice.products.items()
        if first and getattr(product, first) is not None
        and (not product.for_tasks or not calculator.tasks or set(product.for_tasks) & set(calculator.tasks))
    ]


def fill_in_script(seasons: SeasonCache) -> str:
    """A classic script with every figure that a choice can fill in, for the calculators' pages to share.

    `needs`: part to the choices that it waits for; `units`: of a run of days; `of`: choice, id and part to [value, unit, words];
    `weeks`: part to its unit and its series of 52 weeks, found by place, or by grass and place.
    """
    book = seasons.book
    parts = sorted({part for calculator in book.calculators.values() for each in _binds(calculator).values() for part in each})
    single = [part for part in parts if len(choices_of(part)) == 1 and choices_of(part)[0] in ("grass", "place", "product", "machine", "operation")]
    tables: dict[str, Mapping[str, Any]] = {
        "grass": book.grasses, "place": book.offered_places, "product": book.practice.products, "machine": book.practice.machines,
        "operation": book.practice.operations,
    }
    figures = {
        kind: {id: _given([part for part in single if choices_of(part) == (kind,)], _alone(seasons, kind, id)) for id in table}
        for kind, table in tables.items()
    }
    data = {
        "of": figures, "weeks": {part: _weeks(seasons, part) for part in parts if "place" in choices_of(part) and part.startswith("week.")},
        "places": {id: place.name for id, place in book.offered_places.items()}, "needs": {part: choices_of(part) for part in parts}, "units": SPAN,
        "words": {"week": WEEK_WORDS, "date": DATE_WORDS, "count": COUNT_WORDS, "year": YEAR_WORDS, "span": SPAN_WORDS},
    }
    return f"Swardbook.fillIn({json.dumps(data, ensure_ascii=True, separators=(',', ':'))});\n"


def counts_script(seasons: SeasonCache) -> str:
    """The running count of degree days by grass and place, as whole numbers: what each day adds, 1 January first, after the count on it."""
    book = seasons.book
    series: dict[tuple[int, ...], int] = {}
    where: dict[str, dict[str, int]] = {}
    for grass in book.grasses:
        where[grass] = {}
        for place in book.offered_places:
            count = [round(value) for value in seasons.season(grass, place).degree_days]
            added = (count[0], *(later - earlier for earlier, later in pairwise(count)))
            where[grass][place] = series.setdefault(added, len(series))
    bases = {id: f"{grass_season_of(id, grass, book.season_groups).growth_base_c:g} °C" for id, grass in book.grasses.items()}
    data = {"of": where, "series": list(series), "bases": bases}
    return f"Swardbook.fillInCounts({json.dumps(data, ensure_ascii=True, separators=(',', ':'))});\n"


def _alone(seasons: SeasonCache, kind: str, id: str) -> Chosen:
    book = seasons.book
    if kind == "place":
        return Chosen(place=book.places[id])
    return Chosen(
        grass=book.grasses[id] if kind == "grass" else None, groups=book.season_groups, practice=book.practice,
        product=id if kind == "product" else None, machine=id if kind == "machine" else None,
        operation=id if kind == "operation" else None,
    )


def _given(parts: Iterable[str], context: Chosen) -> dict[str, list[Any]]:
    found: dict[str, list[Any]] = {}
    for part in parts:
        try:
            bound = bound_value(part, context)
        except Missing:
            continue
        found[part] = [_short(bound.value), bound.unit, bound.where_from]
    return found


def _weeks(seasons: SeasonCache, part: str) -> dict[str, Any]:
    """Unit and series of a quantity of the weeks; grasses that share a series name the same one."""
    book, asked = seasons.book, WEEK[part.partition(".")[2]]
    series: dict[tuple[float, ...], int] = {}

    def of(year: SeasonYear) -> int:
        return series.setdefault(tuple(_short(asked.of(year, week), DIGITS_OF_A_WEEK) for week in year.weeks), len(series))

    if asked.of_grass:
        where: Any = {grass: {place: of(seasons.season(grass, place)) for place in book.offered_places} for grass in book.grasses}
    else:
        where = {place: of(seasons.season(book.practice.home_grass, place)) for place in book.offered_places}
    return {"unit": asked.unit, "of": where, "series": list(series)}


def _short(value: float, digits: int = DIGITS) -> float:
    short = float(f"{value:.{digits}g}")
    return int(short) if short == int(short) else short
