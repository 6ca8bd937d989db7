"""What laws and regulations say against a grass, for the head of its pages."""

from generator.book.book import Book
from generator.book.records.grass import Grass
from generator.jobs.said_first import law_said
from generator.words.reason_text import plain, said, sentence


def laws_said(book: Book, grass: Grass) -> list[str]:
    """A sentence for each law of any country or region against the grass."""
    return [plain(sentence(said(law_said(book, each)))) for each in grass.weed_status if each.declared]
