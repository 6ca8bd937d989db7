"""A climate that could not be: a minimum above its maximum, more sunshine than daylight."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.checks.check import Check
from generator.findings import Finding
from generator.season.climate.climate_faults import climate_faults


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, place in book.places.items():
        for fault in climate_faults(place.normals, place.latitude_deg):
            path = ("latitude_deg",) if fault.series is None else ("normals", fault.series)
            month = () if fault.month is None else (fault.month,)
            yield Finding(book.where("places", id, *path, *month), fault.what, fault.instead)


CHECK = Check("climates", "The monthly figures of a place can be true.", ("places",), _check)
