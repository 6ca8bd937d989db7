"""Quick-response codes (ISO/IEC 18004) as SVG text, made at build time."""

from io import BytesIO

import segno

from generator.book.book import Book


def qr_svg(text: str) -> bytes:
    """An SVG file that a phone's camera reads as `text`.

    White stands behind the code so that it also reads on a dark page. Medium error correction: a fold or a drop of
    rain on a printed sheet does not spoil it.
    """
    code = segno.make(text, micro=False, error="m")
    file = BytesIO()
    code.save(file, kind="svg", scale=4, border=4, light="#fff", dark="#000", xmldecl=False)
    return file.getvalue()


def qr_files(book: Book) -> dict[str, bytes]:
    """A code for each aftercare sheet at the book's public address; none for a book without one."""
    address = book.practice.public_address
    if address is None:
        return {}
    return {f"assets/qr/{id}.svg": qr_svg(f"{address}aftercare/{id}.html") for id in book.aftercare}
