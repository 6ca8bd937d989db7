"""A logo draws, and does nothing else: elements and attributes of SVG 2 (https://www.w3.org/TR/SVG2/) that run, lead or fetch are refused."""

import struct
from pathlib import Path

import pytest

from generator.book.picture import LARGEST_BYTES, UnfitPicture, read_picture

DRAWN = (
    '<?xml version="1.0" encoding="UTF-8"?>\n<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">\n'
    '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" xmlns:draw="http://drawing.example/" {size}>'
    "<draw:view zoom='2'/><defs><linearGradient id='a'><stop offset='0' stop-color='#24527a'/></linearGradient></defs>"
    "<style>.line {{ stroke: #24527a; fill: url(#a) }}</style><g class='line'><path d='M0 0h9'/><use xlink:href='#a'/></g>{more}</svg>"
)


def written(folder: Path, content: bytes | str, name: str = "logo.svg") -> str:
    (folder / name).write_bytes(content.encode() if isinstance(content, str) else content)
    return name


def png(width: int, height: int) -> bytes:
    """The head of a PNG (https://www.w3.org/TR/png-3/#11IHDR)."""
    return b"\x89PNG\r\n\x1a\n" + struct.pack(">I4sIIBBBBB", 13, b"IHDR", width, height, 8, 6, 0, 0, 0) + bytes(4)


@pytest.mark.parametrize(("size", "wide"), [
    ('viewBox="0 0 30 10"', 3), ('viewBox="-5,-5,10,20" width="1cm" height="9cm"', 0.5), ('width="80px" height="40"', 2),
])  # fmt: skip
def test_a_drawing_is_taken_with_its_shape(tmp_path: Path, size: str, wide: float) -> None:
    picture = read_picture(tmp_path, written(tmp_path, DRAWN.format(size=size, more="")))
    assert (picture.ending, picture.wide) == ("svg", pytest.approx(wide))


def test_a_png_is_taken_with_its_pixels(tmp_path: Path) -> None:
    assert read_picture(tmp_path, written(tmp_path, png(512, 256), "logo.png"))[2:] == (2, (512, 256))


BAD = {
    "a script": "<script>alert(1)</script>",
    "a handler": "<path onload='alert(1)' d='M0 0'/>",
    "a link": "<a href='https://lawns.example/'><path d='M0 0'/></a>",
    "a page inside": "<foreignObject><p xmlns='http://www.w3.org/1999/xhtml'>x</p></foreignObject>",
    "an element of a page": "<p xmlns='http://www.w3.org/1999/xhtml'>x</p>",
    "what changes another element": "<set attributeName='href' to='javascript:alert(1)'/>",
    "a picture elsewhere": "<image href='https://lawns.example/a.png'/>",
    "a drawing elsewhere": "<use xlink:href='other.svg#a'/>",
    "a drawing in a drawing": "<image href='data:image/svg+xml;base64,AAAA'/>",
    "a style that fetches": "<style>@import 'a.css';</style>",
    "a style that fetches in an attribute": "<path style='fill: url(https://lawns.example/a.svg#b)' d='M0 0'/>",
    "an instruction": "<?xml-stylesheet href='a.css'?>",
    "no end": "<g>",
}


@pytest.mark.parametrize("more", BAD.values(), ids=BAD)
def test_what_does_more_than_draw_is_refused(tmp_path: Path, more: str) -> None:
    with pytest.raises(UnfitPicture):
        read_picture(tmp_path, written(tmp_path, DRAWN.format(size='viewBox="0 0 9 9"', more=more)))


UNFIT = {
    "words": ("logo.svg", b"no drawing"),
    "a page": ("logo.svg", b"<html xmlns='http://www.w3.org/1999/xhtml'/>"),
    "without a size": ("logo.svg", DRAWN.format(size="", more="").encode()),
    "of no width": ("logo.svg", DRAWN.format(size='viewBox="0 0 0 9"', more="").encode()),
    "entities": ("logo.svg", b"<!DOCTYPE svg [<!ENTITY a 'aaaa'>]><svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 9 9'>&a;</svg>"),
    "a drawing called PNG": ("logo.png", DRAWN.format(size='viewBox="0 0 9 9"', more="").encode()),
    "a PNG cut short": ("logo.png", png(9, 9)[:20]),
    "a PNG of no width": ("logo.png", png(0, 9)),
    "a PNG too large to draw": ("logo.png", png(9, 9_000_000)),
    "too heavy": ("logo.png", png(9, 9) + bytes(LARGEST_BYTES)),
}


@pytest.mark.parametrize(("name", "content"), UNFIT.values(), ids=UNFIT)
def test_what_is_no_picture_is_refused_with_what_would_be_right(tmp_path: Path, name: str, content: bytes) -> None:
    with pytest.raises(UnfitPicture) as refused:
        read_picture(tmp_path, written(tmp_path, content, name))
    assert refused.value.what.startswith(f"'{name}' ") and refused.value.instead


def test_nothing_is_read_from_outside_the_book(tmp_path: Path) -> None:
    book = tmp_path / "book"
    book.mkdir()
    (book / "logo.png").symlink_to(tmp_path / written(tmp_path, png(9, 9), "other.png"))
    (book / "there.png").mkdir()
    for name in ("logo.png", "there.png", "missing.png"):
        with pytest.raises(UnfitPicture):
            read_picture(book, name)
