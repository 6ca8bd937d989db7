"""What of the practice every page carries: logo, sign in the browser's tab, colours of the browser's frame, and the manifest of the book.

Web application manifest: W3C, https://www.w3.org/TR/appmanifest/.
"""

import base64
import json
from typing import Any
from urllib.parse import urljoin

from generator.book.book import Book
from generator.book.palette import DARK, LIGHT, in_a_tab
from generator.book.picture import Picture, read_picture
from generator.book.records.practice import Practice
from generator.site.frame.render import THEME
from generator.site.page import Links
from generator.site.shared.public_lines import telephone_link

MANIFEST = "manifest.webmanifest"
MARK, ICON = "assets/mark.svg", "assets/icon.svg"
# The book's own sign: the header of every page has it in its own colour, a tab in the colour it names.
MARK_DRAWN = (THEME / "partials" / "mark.html").read_text(encoding="utf-8")
MARK_COLOUR = "#548a47"
# Of a sign on a telephone's first screen only a circle of four fifths of its side is sure to be seen
# (https://www.w3.org/TR/appmanifest/#icon-masks): the logo stands in the square within that.
ICON_SIDE, LOGO_SIDE = 512, 288
LOGO_HEIGHT_PX, LOGO_PRINTED_PX = 32, 56  # In the header and on paper; what is wider than there is room for is shown smaller.


def told_to_mkdocs(practice: Practice, previewing: bool) -> dict[str, str]:
    """What mkdocs.yml would say of the practice. A live preview keeps the address of the machine that it runs on."""
    address = {} if previewing else {"site_url": practice.public_address or ""}
    return {"site_name": practice.title, "site_description": practice.described, **address}


def logo_file(book: Book) -> tuple[str, Picture] | None:
    """The practice's logo: path in the site, and what it is."""
    return _picture(book, book.practice.logo, "logo")


def brand_view(book: Book) -> dict[str, Any]:
    """What the head and the header of every page ask for."""
    practice, logo, sign = book.practice, logo_file(book), _sign(book)
    return {
        "logo": {"path": logo[0], **logo_size(logo[1], LOGO_HEIGHT_PX)} if logo else None,
        "favicon": sign[0] if sign else MARK, "touch_icon": sign[0] if sign and sign[1].ending == "png" else None,
        "manifest": MANIFEST, "locale": _locale(book), "paint_light": practice.colour or LIGHT.paper, "paint_dark": DARK.paper,
        "og_image": urljoin(practice.public_address, logo[0]) if practice.public_address and logo and logo[1].ending == "png" else None,
    }


def practice_view(book: Book) -> dict[str, Any]:
    """Whose book it is, for the page of a lost address."""
    practice = book.practice
    return {"name": practice.name, "telephone": practice.telephone, "telephone_link": telephone_link(practice.telephone)}


def brand_files(book: Book) -> dict[str, str | bytes]:
    """Path in the site to content."""
    there = [each for each in (logo_file(book), _picture(book, book.practice.favicon, "favicon")) if each]
    mark = MARK_DRAWN.replace(MARK_COLOUR, in_a_tab(book.practice.colour)) if book.practice.colour else MARK_DRAWN
    return {MARK: mark, ICON: _icon(book, mark), MANIFEST: _manifest(book), **{path: picture.content for path, picture in there}}


def letterhead_view(book: Book, links: Links) -> dict[str, Any]:
    """The dict of the component letterhead, for a page that is printed for a client."""
    logo = logo_file(book)
    return {"logo": {"src": links.file(logo[0]), **logo_size(logo[1], LOGO_PRINTED_PX)} if logo else None}


def logo_size(logo: Picture, height_px: int) -> dict[str, int]:
    return {"width": max(round(height_px * logo.wide), 1), "height": height_px}


def _picture(book: Book, path: str | None, name: str) -> tuple[str, Picture] | None:
    if path is None:
        return None
    picture = read_picture(book.root, path)
    return f"assets/{name}.{picture.ending}", picture


def _sign(book: Book) -> tuple[str, Picture] | None:
    return _picture(book, book.practice.favicon, "favicon") or logo_file(book)


def _locale(book: Book) -> str:
    """As link previews name a language and a country: 'en_AU'."""
    return f"en_{book.places[book.practice.home_place].country}"


def _icon(book: Book, mark: str) -> str:
    """A square sign that any telephone may round: the logo on the book's paper."""
    sign = _sign(book)
    kind, content = ("png" if sign[1].ending == "png" else "svg+xml", sign[1].content) if sign else ("svg+xml", mark.encode())
    at = (ICON_SIDE - LOGO_SIDE) // 2
    held = f"data:image/{kind};base64,{base64.b64encode(content).decode()}"
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {ICON_SIDE} {ICON_SIDE}" width="{ICON_SIDE}" height="{ICON_SIDE}">'
        f'<rect width="{ICON_SIDE}" height="{ICON_SIDE}" fill="{LIGHT.leaf}"/>'
        f'<image x="{at}" y="{at}" width="{LOGO_SIDE}" height="{LOGO_SIDE}" href="{held}"/></svg>\n'
    )


def _manifest(book: Book) -> str:
    practice, sign = book.practice, _sign(book)
    drawn = {"src": ICON, "sizes": "any", "type": "image/svg+xml"}
    icons = [{**drawn, "purpose": "any"}, {**drawn, "purpose": "maskable"}]
    if sign and sign[1].ending == "png":
        width, height = sign[1].pixels
        icons.append({"src": sign[0], "sizes": f"{width}x{height}", "type": "image/png", "purpose": "any"})
    told = {
        "name": practice.title, "short_name": practice.under_its_sign, "description": practice.described, "lang": _locale(book).replace("_", "-"),
        "start_url": "index.html", "scope": ".", "display": "standalone",
        "theme_color": practice.colour or LIGHT.paper, "background_color": LIGHT.paper, "icons": icons,
    }
    return json.dumps(told, ensure_ascii=False, indent=1) + "\n"
