"""The wording that owners of data ask for, wherever the data is shown."""

from collections.abc import Iterable

from generator.book.book import Book


def place_attribution(book: Book, place: str) -> list[str]:
    """What whoever owns the climate figures of one place asks for, each wording once."""
    normals = book.places[place].normals
    sources = [book.sources[id] for id in (normals.source, normals.rain_source) if id]
    return list(dict.fromkeys(source.attribution for source in sources if source.attribution))


def attribution(book: Book, places: Iterable[str]) -> list[str]:
    """The same for several places."""
    return list(dict.fromkeys(note for id in places for note in place_attribution(book, id)))
