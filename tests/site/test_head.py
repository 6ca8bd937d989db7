"""What stands at the head of every page: the mark, and nothing of how the page was made."""

import re
from pathlib import Path

from tests.site.built_pages import built_pages

DRAWN = re.compile(r'<path d="([^"]+)"')


def test_no_page_names_the_programs_that_made_it(site: Path) -> None:
    """Not the page of a lost address either, nor what stands where a page was taken out."""
    pages = list(site.rglob("*.html"))
    assert site / "404.html" in pages
    named = [page.name for page in pages if re.search(r'<meta[^>]+name="?generator', page.read_text(encoding="utf-8"), re.IGNORECASE)]
    assert named == []


def test_each_page_has_the_mark_that_the_tab_has(site: Path) -> None:
    drawn = DRAWN.search((site / "assets/mark.svg").read_text(encoding="utf-8"))[1]
    for page in site.rglob("*.html"):
        text = page.read_text(encoding="utf-8")
        assert drawn in text and 'href="assets/mark.svg"' in text.replace("../", "").replace('href="/book/', 'href="'), page.name


def test_what_is_for_builders_is_not_in_the_book(site: Path) -> None:
    pages = built_pages(site)
    assert "index.html" in pages and "components.html" not in pages
    led = [page.path for page in pages.values() for address in page.addresses if "components" in address.value]
    assert led == []
