"""A place lies in the country that it names, as far as data/countries.yml says where that is."""

from collections.abc import Iterator

from generator.book.book import PartialBook
from generator.book.records.place import Country, Place
from generator.checks.check import Check
from generator.findings import Finding


def _check(book: PartialBook) -> Iterator[Finding]:
    for id, place in book.places.items():
        if country := lies_elsewhere(book, place):
            key, instead = _meant(book, place, country)
            what = f"latitude {place.latitude_deg:g} and longitude {place.longitude_deg:g} are not in {country.in_a_sentence or country.name}"
            yield Finding(book.where("places", id, key), what, instead)


def lies_elsewhere(book: PartialBook, place: Place) -> Country | None:
    """The country that a place names and does not lie in; None where it does, or where nothing tells."""
    country = book.countries.get(place.country)
    return country if country and country.lies and not _lies_in(country, place.latitude_deg, place.longitude_deg) else None


def _lies_in(country: Country, latitude_deg: float, longitude_deg: float) -> bool:
    return any(part.holds(latitude_deg, longitude_deg) for part in country.lies)


def _meant(book: PartialBook, place: Place, country: Country) -> tuple[str, str]:
    """The key that is most likely wrong, and what would be right: a sign, two numbers swapped, another country, or one number."""
    south_north, west_east = place.latitude_deg, place.longitude_deg
    for key, latitude, longitude, instead in (
        ("latitude_deg", -south_north, west_east, f"did you mean {-south_north:g}? South is negative"),
        ("longitude_deg", south_north, -west_east, f"did you mean {-west_east:g}? West is negative"),
        ("latitude_deg", west_east, south_north, "did you mean to swap the two?"),
        ("latitude_deg", -south_north, -west_east, f"did you mean {-south_north:g} and {-west_east:g}? South and west are negative"),
    ):
        if _lies_in(country, latitude, longitude):
            return key, instead
    other = next((code for code, each in book.countries.items() if _lies_in(each, south_north, west_east)), None)
    if other is not None:
        return "country", f"did you mean country '{other}'?"
    edges = [(part.south, part.north) for part in country.lies]
    if not any(south <= south_north <= north for south, north in edges):
        return "latitude_deg", f"give one from {min(south for south, _ in edges):g} to {max(north for _, north in edges):g}, or correct the country"
    return "longitude_deg", "give both as a map does, or correct the country"


CHECK = Check("place-on-earth", "A place lies in the country that it names.", ("places",), _check)
