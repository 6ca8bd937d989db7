"""A logo: an SVG or PNG file of the book, read only if it draws and does nothing else."""

import re
import struct
from collections.abc import Mapping
from pathlib import Path
from typing import NamedTuple
from xml.parsers import expat

from generator.book.loading.disk import unfit
from generator.findings import shown

LARGEST_BYTES = 200_000  # Every page loads it: 20 kB is a generous drawing.
SVG = "http://www.w3.org/2000/svg"
# What draws, of SVG 2 (https://www.w3.org/TR/SVG2/): no script, no link, no page inside, nothing that changes another element. Elements of a
# drawing program's own name space draw nothing and do nothing.
DRAWS = set(
    "svg g defs symbol use title desc metadata style path rect circle ellipse line polyline polygon text tspan textPath image linearGradient "
    "radialGradient stop pattern clipPath mask marker switch filter feGaussianBlur feOffset feBlend feColorMatrix feComposite feFlood feMerge "
    "feMergeNode feMorphology feTurbulence feDisplacementMap feComponentTransfer feFuncR feFuncG feFuncB feFuncA".split()
)
_HELD_INSIDE = re.compile(r"\s*(#[^\s\"'<>]*|data:image/(png|jpeg|gif|webp);base64,[A-Za-z0-9+/=\s]*)\s*")
_LED_OUT = re.compile(r"@import|\\|url\(\s*[\"']?\s*(?!#|data:image/(?:png|jpeg|gif|webp);)|javascript:", re.IGNORECASE)
_LENGTH = re.compile(r"\s*([0-9]*\.?[0-9]+)\s*(px|pt|pc|mm|cm|in|em)?\s*")
_PNG = b"\x89PNG\r\n\x1a\n"


class UnfitPicture(Exception):
    """A picture that a book cannot show: what is wrong with it, and what would be right."""

    def __init__(self, what: str, instead: str) -> None:
        super().__init__(what)
        self.what, self.instead = what, instead


class Picture(NamedTuple):
    """ending: 'svg' or 'png'. wide: width for a height of 1; pixels: width and height of a PNG, (0, 0) of a drawing of lines."""

    ending: str
    content: bytes
    wide: float
    pixels: tuple[int, int]


def read_picture(root: Path, path: str) -> Picture:
    """The picture at a path of the book. Raises UnfitPicture for one that is not there, not one, or does more than draw."""
    file = root / path
    wrong = unfit(file, root) if file.is_symlink() or file.exists() else ("is not in the book", "put the file there, or name another")
    if wrong is None and not file.is_file():
        wrong = "is a folder", "name a file in it"
    if wrong is None and file.stat().st_size > LARGEST_BYTES:
        wrong = f"is larger than {LARGEST_BYTES // 1000} kB, and every page loads it", "make it smaller"
    if wrong is not None:
        raise UnfitPicture(f"'{shown(path)}' {wrong[0]}", wrong[1])
    content = file.read_bytes()
    return _png(content, path) if path.endswith(".png") else _svg(content, path)


def _png(content: bytes, path: str) -> Picture:
    """The first part of a PNG gives its size (https://www.w3.org/TR/png-3/#11IHDR)."""
    if not content.startswith(_PNG) or content[12:16] != b"IHDR" or len(content) < 24:
        raise UnfitPicture(f"'{shown(path)}' is no PNG picture", "save it as PNG, or name an SVG file")
    width, height = struct.unpack(">II", content[16:24])
    if not 0 < width <= 4096 or not 0 < height <= 4096:
        raise UnfitPicture(f"'{shown(path)}' is {width} by {height} pixels", "make it 16 to 4096 pixels wide and high")
    return Picture("png", content, width / height, (width, height))


def _svg(content: bytes, path: str) -> Picture:
    reading = _Drawing(path)
    try:
        reading.read(content)
    except expat.ExpatError as error:
        raise UnfitPicture(f"'{shown(path)}' is no SVG drawing: line {error.lineno} of it cannot be read", "save it again from the program that drew it") from error
    return Picture("svg", content, reading.wide(), (0, 0))


class _Drawing:
    """Reads an SVG file element by element, and ends at the first thing that is not drawing."""

    def __init__(self, path: str) -> None:
        self.path = path
        self.inside: list[str] = []
        self.head: Mapping[str, str] = {}
        self.style = ""

    def read(self, content: bytes) -> None:
        parser = expat.ParserCreate(namespace_separator=" ")
        parser.StartElementHandler, parser.EndElementHandler, parser.CharacterDataHandler = self._begin, self._end, self._text
        parser.EntityDeclHandler = lambda *_: self._refuse("declares entities")
        parser.ProcessingInstructionHandler = lambda target, _: self._refuse(f"holds an instruction '{shown(target)}'")
        parser.Parse(content, True)
        if _LED_OUT.search(self.style):
            self._refuse("has a style that leads out of the file")

    def wide(self) -> float:
        """Width for a height of 1, by the view box or else by width and height."""
        box = [float(each) for each in re.findall(r"-?[0-9]*\.?[0-9]+", self.head.get("viewBox", ""))]
        sides = [_LENGTH.fullmatch(self.head.get(side, "")) for side in ("width", "height")]
        sized = (box[2], box[3]) if len(box) == 4 else tuple(float(each[1]) for each in sides if each)
        if len(sized) != 2 or min(sized) <= 0:
            raise UnfitPicture(f"'{shown(self.path)}' says neither a viewBox nor a width and a height", "save it again with its size")
        return sized[0] / sized[1]

    def _begin(self, name: str, given: dict[str, str]) -> None:
        space, _, local = name.rpartition(" ")
        if not self.inside:
            if (space, local) != (SVG, "svg"):
                self._refuse(f"begins with '{shown(local)}' and not with 'svg'")
            self.head = given
        self.inside.append(local)
        if (space == SVG and local not in DRAWS) or space.endswith("/xhtml"):
            self._refuse(f"holds the element '{shown(local)}', which does more than draw")
        for attribute, value in given.items():
            bare = attribute.rpartition(" ")[2]
            if bare.lower().startswith("on"):
                self._refuse(f"holds '{shown(bare)}', which runs something")
            if not _HELD_INSIDE.fullmatch(value) if bare == "href" else _LED_OUT.search(value):
                self._refuse(f"leads out of the file by '{shown(bare)}'")

    def _end(self, name: str) -> None:
        self.inside.pop()

    def _text(self, text: str) -> None:
        if self.inside and self.inside[-1] == "style":
            self.style += text

    def _refuse(self, what: str) -> None:
        raise UnfitPicture(f"'{shown(self.path)}' {what}", "save it as a plain SVG drawing, or as PNG")
