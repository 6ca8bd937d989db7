"""What may be so and seldom is: told beside the mistakes, as a line of its own kind, and no reason to refuse a book."""

from collections.abc import Iterator
from itertools import chain

from generator.book.book import PartialBook
from generator.book.fields.plausible import MONEY, PLAUSIBLE, Plausible, amount
from generator.book.fields.sourced import Claim
from generator.book.fields.walk import meant
from generator.book.records.calculator import Calculator, Input
from generator.book.records.grass import Grass
from generator.book.records.place import Place
from generator.checks.check import Check
from generator.checks.season.figure_units import held_figures
from generator.checks.sense.filled_sizes import typed_values
from generator.checks.sense.practice_figures import nitrogen_at_full_rate
from generator.findings import Finding
from generator.season.calendar_days import MONTHS
from generator.units import known_unit, to_si, unit

LEAVE = "check it, and leave it if it is so"
# Prices of the table are in money of about the worth of these.
OF_LIKE_WORTH = ("AUD", "NZD", "USD", "CAD", "GBP", "EUR", "CHF", "SGD")
# How far a month lies from the middle of its neighbours: a mean at most 3.3 K in this book, and a lost sign makes more of it.
OUT_OF_STEP_K = {"mean_maximum_c": ("mean maximum", 6), "mean_minimum_c": ("mean minimum", 6), "lowest_minimum_c": ("lowest minimum", 12)}
WIDEST_RANGE_K, NARROWEST_RANGE_K, WIDEST_COLD_K = 26, 1, 32
# Rain of one month against the wetter of its neighbours: where it is both more millimetres and more times that.
SPIKE_MM, SPIKE_TIMES = 250, 5
WIDEST_DEG, TALLEST_DEG = 65, 36
WARM_NIGHT_C, FEWEST_YEARS = 13, 5
US_TIMES = 60  # A round figure for US readers is no other figure: an elevation differs most.


def _check(book: PartialBook) -> Iterator[Finding]:
    yield from _numbers(book)
    for held in held_figures(book):
        given = known_unit(held.figure.unit)
        for key, value in held.numbers() if given and given.dimension == unit(held.row.unit).dimension else ():
            number = held.in_row(value)
            if held.row.allows(number) and not held.row.expects(number):
                what, instead = _said(amount(f"{value:g}", held.figure.unit), held.name, held.row)
                yield Finding(book.where(held.kind, held.id, *held.path, key), what, instead)
    for id, place in book.places.items():
        for path, what in _months(place):
            yield Finding(book.where("places", id, "normals", *path), f"unusual: {what}", LEAVE)
    for id, grass in book.grasses.items():
        for key, what in _grass(grass):
            yield Finding(book.where("grasses", id, key), f"unusual: {what}", LEAVE)
    for id, calculator in book.calculators.items():
        for path, what in _inputs(calculator):
            yield Finding(book.where("calculators", id, "inputs", *path), f"unusual: {what}", LEAVE)
    for typed in typed_values(book):
        filled, asked = typed.in_unit_of_it(), typed.into
        if filled is not None and asked is not None and not _usual(asked, filled):
            yield Finding(typed.where, f"unusual: {typed.value.typed} for '{typed.name}', which the form asks about", LEAVE)
    yield from _feeds(book)
    for id, country in book.countries.items():
        for at, part in enumerate(country.lies):
            wide, tall = (part.east - part.west) % 360, part.north - part.south
            if wide > WIDEST_DEG or tall > TALLEST_DEG:
                what = f"unusual: {part.what} is {wide:g} degrees wide and {tall:g} tall, which lets slips in"
                yield Finding(book.where("countries", id, "lies", at, "east" if wide > WIDEST_DEG else "north"), what, "give it in parts")


def _said(given: str, name: str, row: Plausible) -> tuple[str, str]:
    return f"unusual: {given} for '{name}', where {row.usual} is usual: {row.why}", LEAVE


def _numbers(book: PartialBook) -> Iterator[Finding]:
    """Plain numbers of every record that lie outside what is usual for what they mean."""
    tables = (("sources", id, source) for id, source in book.sources.items())
    like_money = book.practice is not None and book.practice.currency in OF_LIKE_WORTH
    for kind, id, record in chain(book.records(), tables):
        for path, value, row in meant(record):
            if isinstance(value, Claim) or row.expects(value) or not book.written(kind, id, *path) or (row.unit == MONEY and not like_money):
                continue
            name = next(str(step) for step in reversed(path) if isinstance(step, str))
            yield Finding(book.where(kind, id, *path), *_said(amount(f"{value:g}", row.unit), name, row))


Path = tuple[str | int, ...]


def _months(place: Place) -> Iterator[tuple[Path, str]]:
    normals = place.normals
    if normals.first_year <= normals.last_year < normals.first_year + FEWEST_YEARS - 1:
        yield ("last_year",), f"{normals.last_year - normals.first_year + 1} years are few to call normal"
    for key, (called, most) in OUT_OF_STEP_K.items():
        yield from _out_of_step(key, called, most, getattr(normals, key) or ())
    for month, name in enumerate(MONTHS):
        around = (month - 1, (month + 1) % 12)
        low, rain = normals.mean_minimum_c[month], normals.rain_mm[month]
        if normals.mean_maximum_c[month] - low > WIDEST_RANGE_K:
            yield ("mean_maximum_c", month), f"{name}: days are more than {WIDEST_RANGE_K} K warmer than nights"
        elif 0 <= normals.mean_maximum_c[month] - low < NARROWEST_RANGE_K:
            yield ("mean_maximum_c", month), f"{name}: days are no warmer than nights"
        if normals.lowest_minimum_c and low - normals.lowest_minimum_c[month] > WIDEST_COLD_K:
            yield ("lowest_minimum_c", month), f"{name}: the lowest minimum is more than {WIDEST_COLD_K} K below the mean one"
        wetter = max(normals.rain_mm[each] for each in around)
        if rain - wetter > SPIKE_MM and rain > SPIKE_TIMES * wetter:
            yield ("rain_mm", month), f"{name}: {rain:g} mm of rain between months of at most {wetter:g} mm"
        if normals.frost_days and normals.frost_days[month] >= 1 and low > WARM_NIGHT_C:
            yield ("frost_days", month), f"{name}: {normals.frost_days[month]:g} nights of frost at a mean minimum of {low:g} °C"


def _out_of_step(key: str, called: str, most: float, series: tuple[float, ...]) -> Iterator[tuple[Path, str]]:
    """Each month that lies further than that from the middle of its neighbours, and not because of one of them."""
    steps = [value - (series[month - 1] + series[(month + 1) % 12]) / 2 for month, value in enumerate(series)]
    for month, step in enumerate(steps):
        if abs(step) > most and abs(step) >= max(abs(steps[month - 1]), abs(steps[(month + 1) % 12])):
            yield (key, month), f"{MONTHS[month]}: the {called} lies {abs(step):.3g} K {'above' if step > 0 else 'below'} the middle of its neighbours"


def _grass(grass: Grass) -> Iterator[tuple[str, str]]:
    try:
        height = grass.mowing_height.measured_in("mm")
        sand = grass.topdressing_depth and grass.topdressing_depth.measured_in("mm")
        over = grass.overseed_rate and grass.overseed_rate.measured_in("g/m2")
        new = grass.seed_rate and grass.seed_rate.measured_in("g/m2")
    except ValueError:
        return  # Told at the unit itself.
    # Where even the other ends do not fit, it is refused.
    if sand and sand.highest > height.lowest and sand.lowest <= height.highest:
        yield "topdressing_depth", f"up to {sand.highest:g} mm of sand on grass that may be {height.lowest:g} mm high"
    if over and new and over.lowest <= new.highest < over.highest:
        yield "overseed_rate", f"up to {over.highest:g} g/m2 of seed over a living lawn, and {new.highest:g} g/m2 at most for bare ground"


def _inputs(calculator: Calculator) -> Iterator[tuple[Path, str]]:
    for name, asked in calculator.inputs.items():
        for position, value in enumerate(asked.default if isinstance(asked.default, tuple) else (asked.default,)):
            if not asked.label_only and not _usual(asked, value):
                at = (position,) if isinstance(asked.default, tuple) else ()
                yield (name, "default", *at), f"the form starts with {value:g}, about which it would ask"
        american = asked.us_default
        given, us = known_unit(asked.unit), known_unit(asked.us_unit or asked.unit)
        if given and us and isinstance(american, float) and isinstance(asked.default, float) and given.offset == us.offset == 0:
            one, other = abs(to_si(asked.default, given)), abs(to_si(american, us))
            if one and other and not 1 / US_TIMES < other / one < US_TIMES:
                yield (name, "us_default"), f"{american:g} {us} for US readers where others get {asked.default:g} {given}"


def _usual(asked: Input, value: float) -> bool:
    return (asked.usual_low is None or value >= asked.usual_low) and (asked.usual_high is None or value <= asked.usual_high)


def _feeds(book: PartialBook) -> Iterator[Finding]:
    row = PLAUSIBLE["nitrogen of one feed"]
    for id, product in book.practice.products.items() if book.practice else ():
        nitrogen = nitrogen_at_full_rate(product)
        if nitrogen is not None and row.allows(nitrogen) and not row.expects(nitrogen):
            what = f"unusual: this rate brings {nitrogen:g} g/m2 of nitrogen, where {row.usual} is usual: {row.why}"
            yield Finding(book.where("practice", "practice", "products", id, "full_rate_kg_per_100_m2"), what, LEAVE)


CHECK = Check("unusual", "What is possible and seldom so is told, and refuses nothing.", ("grasses", "tasks", "places", "calculators", "practice", "sources"), _check)
