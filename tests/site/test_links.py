"""Every address in every built page leads somewhere, and nothing on a page is fetched from another host."""

from collections import Counter
from pathlib import Path
from posixpath import dirname, join, normpath
from urllib.parse import unquote, urlsplit

import pytest

from tests.site.built_pages import Address, BuiltPage, built_pages, loose_in


@pytest.fixture(scope="module")
def pages(site: Path) -> dict[str, BuiltPage]:
    return built_pages(site)


def external(address: Address) -> bool:
    return bool(urlsplit(address.value).netloc)


def dead(address: Address, page: BuiltPage, pages: dict[str, BuiltPage], site: Path) -> str | None:
    """What is wrong with an address inside the site; None when it leads somewhere."""
    parts = urlsplit(address.value)
    if parts.scheme in ("data", "mailto", "tel", "javascript"):
        return None if parts.scheme != "javascript" else "a script in an address"
    target = normpath(join(dirname(page.path), unquote(parts.path))) if parts.path else page.path
    if parts.path.endswith("/") or target in (".", ".."):
        return "a folder: from the disk that shows a list of files"
    if target not in pages and not (site / target).is_file():
        return "no such file"
    # A link may carry a job or a date (#v=1&on=...): that is for the page's script, and no place on it.
    if parts.fragment and not parts.fragment.startswith("v=1&") and unquote(parts.fragment) not in pages[target].ids:
        return "no such place on that page"
    return None


def test_the_book_has_a_page_for_everything(pages: dict[str, BuiltPage]) -> None:
    """15 grasses at 6 places are 90 calendars, with 34 places, guides and tasks beside them; fewer would make the checks below say little."""
    assert len(pages) > 200


def test_every_address_inside_the_book_leads_somewhere(pages: dict[str, BuiltPage], site: Path) -> None:
    faults = Counter(
        f"{page.path}: {address.value}: {wrong}"
        for page in pages.values() for address in page.addresses
        if not external(address) and (wrong := dead(address, page, pages, site))
    )  # fmt: skip
    assert not faults, list(faults)[:20]


def test_only_links_to_read_lead_out_of_the_book(pages: dict[str, BuiltPage]) -> None:
    fetched = {
        f"{page.path}: {address.tag} {address.value}"
        for page in pages.values() for address in page.addresses
        if external(address) and address.tag != "a" and address.rel != "canonical"
    }  # fmt: skip
    assert not fetched, sorted(fetched)[:20]


def test_every_page_names_itself_once(pages: dict[str, BuiltPage]) -> None:
    unnamed = [page.path for page in pages.values() if len(page.first_headings) != 1 or not page.first_headings[0].strip()]
    assert not unnamed
    assert not [page.path for page in pages.values() if not page.title.strip()]


def test_titles_tell_pages_apart(pages: dict[str, BuiltPage]) -> None:
    titles = Counter(page.title.strip() for page in pages.values())
    assert not [title for title, count in titles.items() if count > 1]


def test_every_page_says_its_language(pages: dict[str, BuiltPage]) -> None:
    assert {page.language for page in pages.values()} == {"en"}


def test_no_id_stands_twice_on_a_page(pages: dict[str, BuiltPage]) -> None:
    twice = {
        page.path: [id for id, count in Counter(page.ids).items() if count > 1]
        for page in pages.values() if len(set(page.ids)) != len(page.ids)
    }  # fmt: skip
    assert not twice, list(twice.items())[:10]


def test_no_page_holds_a_script_a_style_or_a_handler_of_its_own(pages: dict[str, BuiltPage], site: Path) -> None:
    found = {f"{page.path}: {each}" for page in pages.values() for each in page.loose} | set(loose_in(site / "404.html"))
    assert not found, sorted(found)[:10]


def test_the_check_above_would_notice(tmp_path: Path) -> None:
    page = tmp_path / "page.html"
    page.write_text("<p style='x'><script>1</script><script type='application/json'>{}</script><script src='a.js'></script><a href=' JavaScript:x' onclick=y \"=z>")
    assert len(loose_in(page)) == 5
