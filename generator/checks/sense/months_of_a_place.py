"""The monthly figures of a place fit together, and its years are in order and over."""

from collections.abc import Iterator
from math import fsum

from generator.book.book import PartialBook
from generator.book.records.place import Place
from generator.checks.check import Check
from generator.checks.sense.place_on_earth import lies_elsewhere
from generator.findings import Finding
from generator.season.calendar_days import MONTHS

# Outside the tropics summer is plain to see in a station's months.
TROPIC_DEG = 23.5
DECEMBER_TO_FEBRUARY, JUNE_TO_AUGUST = (11, 0, 1), (5, 6, 7)


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, place in book.places.items():
        summer = () if lies_elsewhere(book, place) else _summer(place)  # One cause, one finding.
        for path, what, instead in (*_years(place, book.this_year), *_nights(place), *summer):
            yield Finding(book.where("places", id, *path), what, instead)


Fault = tuple[tuple[str | int, ...], str, str]


def _years(place: Place, this_year: int | None) -> Iterator[Fault]:
    normals = place.normals
    first, last, of_months = normals.first_year, normals.last_year, normals.years_of_each_month
    if first > last:
        yield ("normals", "last_year"), f"the last year, {last}, is before the first, {first}", "swap them"
        return
    for key, year in (("first_year", first), ("last_year", last)):
        if this_year is not None and year > this_year:
            yield ("normals", key), f"{year} is not over yet", "give the years that the record covers"
    if of_months is None:
        return
    fewest, most = of_months
    if fewest > most:
        yield ("normals", "years_of_each_month", 0), f"the fewest years, {fewest}, are more than the most, {most}", "swap them"
    elif most > last - first + 1:
        yield ("normals", "years_of_each_month", 1), f"{most} years do not fit between {first} and {last}", f"give {last - first + 1} or fewer"


def _nights(place: Place) -> Iterator[Fault]:
    normals = place.normals
    for month, lowest in enumerate(normals.lowest_minimum_c or ()):
        mean = normals.mean_minimum_c[month]
        if lowest > mean:
            what = f"{MONTHS[month]}: the lowest minimum {lowest:g} °C is above the mean minimum {mean:g} °C"
            yield ("normals", "lowest_minimum_c", month), what, "check whether the two are swapped"


def _summer(place: Place) -> Iterator[Fault]:
    latitude, highs = place.latitude_deg, place.normals.mean_maximum_c
    warmer = fsum(highs[month] for month in JUNE_TO_AUGUST) - fsum(highs[month] for month in DECEMBER_TO_FEBRUARY)
    if abs(latitude) > TROPIC_DEG and warmer * latitude < 0:
        when, side = ("June to August", "north") if warmer > 0 else ("December to February", "south")
        what = f"its warm months are {when}, as {side} of the equator, and the latitude is {latitude:g}"
        yield ("latitude_deg",), what, f"did you mean {-latitude:g}? Or begin each row of months with January"


CHECK = Check("months-of-a-place", "The monthly figures of a place fit together, and its years are in order and over.", ("places",), _check)
