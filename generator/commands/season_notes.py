"""`swardbook season` with what a keeper saw: read, refused in one line where it cannot be, and told."""

import json
from datetime import date
from re import fullmatch
from textwrap import fill

import click

from generator.commands.plan import read_day
from generator.files.season_json import as_json
from generator.files.season_text import KINDS, season_text
from generator.files.seen_text import seen_lines, seen_values
from generator.season.growth import ZERO_CELSIUS_K
from generator.season.season_cache import SeasonCache
from generator.season.seen.seen_place import seen_place
from generator.season.seen.seen_year import SeenNotes, seen_year
from generator.units import QuantityError, read_quantity, unit
from generator.words.seen_sentences import COLDEST_SOIL_C, DEEPEST_MM, HOTTEST_SOIL_C, LONGEST_AGO_DAYS, REFUSALS, SHALLOWEST_MM

MILLIMETRES_A_METRE = 1000.0
WIDTH = 100


def read_notes(today: date, soil: str | None, depth: str | None, soil_on: str | None, green_up: str | None, last_frost: str | None) -> SeenNotes | None:
    """What was seen, from the words of the options; None where nothing was."""
    if soil is None and (depth or soil_on):
        raise click.UsageError("--soil-depth and --soil-on go with --soil: say what the thermometer read")
    if not (soil or green_up or last_frost):
        return None
    soil_c = None if soil is None else _within(soil, "°C", "--soil", "no-soil", COLDEST_SOIL_C, HOTTEST_SOIL_C)
    depth_mm = None if depth is None else _within(depth, "mm", "--soil-depth", "no-depth", SHALLOWEST_MM, DEEPEST_MM)
    return SeenNotes(
        soil_c, None if depth_mm is None else depth_mm / MILLIMETRES_A_METRE, None if soil is None else _seen_on(soil_on, "--soil-on", today) or today,
        _seen_on(green_up, "--green-up", today), _seen_on(last_frost, "--last-frost", today),
    )


def print_seen(seasons: SeasonCache, of_what: dict[str, str], notes: SeenNotes, reading: str, today: date, us: bool, as_data: bool) -> None:
    """The usual year, and before it what the notes move of it."""
    grass, place, site = of_what["grass"], of_what["place"], of_what["site"]
    reading = f"{reading} °C" if fullmatch(r"[-−]?[0-9.,]+", reading.strip()) else reading
    data, rules = seen_place(seasons, place), seasons.rules
    usual = seasons.season(grass, place, site)
    found = seen_year(data, grass, site, notes, today, rules.seen, rules.soil)
    lines = seen_lines(found, data, reading, rules.seen, {kind: name for kind, (name, _) in KINDS.items()}, us)
    if as_data:
        click.echo(json.dumps({**of_what, **as_json(usual), "seen": seen_values(found, lines)}, ensure_ascii=False))
        return
    book, said = seasons.book, "\n".join(fill(line, WIDTH, initial_indent="  ", subsequent_indent="  ") for line in lines)
    click.echo(season_text(usual, book.grasses[grass].name, book.places[place].name, site, us, f"By what you have seen; the usual year stands below.\n{said}"))


def _within(text: str, spelling: str, option: str, code: str, least: float, most: float) -> float:
    """A quantity [in that unit] between two limits. Raises UsageError with one line."""
    try:
        si = read_quantity(text, unit(spelling))
    except QuantityError as error:
        raise click.UsageError(f"{option}: {error}") from error
    value = si - ZERO_CELSIUS_K if spelling == "°C" else si * MILLIMETRES_A_METRE
    if not least <= value <= most:
        raise click.UsageError(f"{option} '{text[:40]}': {REFUSALS[code].format(least=f'{least} {spelling}', most=f'{most} {spelling}')}")
    return value


def _seen_on(text: str | None, option: str, today: date) -> date | None:
    if text is None:
        return None
    day = read_day(text, option)
    if day > today:
        raise click.UsageError(f"{option} '{text}': {REFUSALS['future']}")
    if (today - day).days > LONGEST_AGO_DAYS:
        raise click.UsageError(f"{option} '{text}': {REFUSALS['long-ago']}")
    return day
