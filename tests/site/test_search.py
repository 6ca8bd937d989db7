"""Things a practitioner types into the search box, and the page that should answer."""

from collections.abc import Callable, Iterator

import pytest
from playwright.sync_api import Browser

from tests.site.reader import Reader

# What is typed, and the pages that would satisfy the one who typed it; one of them must come first or second.
QUERIES = {
    "bermudagrass": ["grasses/couch.html", "grasses/hybrid-couch.html"],
    "st augustine": ["grasses/buffalo.html"],
    "kweek": ["grasses/couch.html"],
    "zoyzia": ["grasses/zoysia.html"],
    "kikuyu renovation": ["renovate/kikuyu.html"],
    "dethatch": ["tasks/scarify.html"],
    "core aeration": ["tasks/core.html"],
    "hollow tine": ["tasks/core.html"],
    "when to scarify": ["tasks/scarify.html"],
    "topdressing": ["tasks/topdress.html"],
    "how much sand": ["calculators/topdressing-sand.html"],
    "sprinkler run time": ["calculators/irrigation-run-time.html"],
    "seeding rate tall fescue": ["grasses/tall-fescue.html", "calculators/seeding.html"],
    "fertiliser bag": ["calculators/granular-feed.html"],
    "tank mix": ["calculators/tank-mix.html"],
    "spray drift": ["cautions/spray-drift.html"],
    "silica dust": ["cautions/silica-dust.html"],
    "buried pipes": ["cautions/buried-services.html"],
    "after renovation watering": ["aftercare/after-renovation.html"],
    "couch sydney": ["calendars/sydney/couch.html"],
    "kentucky bluegrass atlanta": ["calendars/atlanta/kentucky-bluegrass.html"],
    "lawn in chicago": ["places/chicago.html"],
    "frost canberra": ["places/canberra.html"],
    "kikuyu": ["grasses/kikuyu.html"],
    "water": ["tasks/water.html"],
}


@pytest.fixture(scope="module")
def searcher(browser: Browser, site) -> Iterator[Reader]:
    """One window for all queries: searching leaves nothing behind once the box is cleared."""
    reader = Reader(browser, site)
    reader.open("about.html")
    yield reader
    reader.close()
    assert not reader.wrong


def found(searcher: Reader, query: str, wanted: int = 5) -> list[str]:
    """Pages found for a query, best first, as a reader sees them: one hit a page."""
    page = searcher.page
    page.keyboard.press("Escape")
    page.keyboard.press("/")
    box = page.locator("input[data-md-component=search-query]")
    box.fill("")
    box.press_sequentially(query)
    page.wait_for_function(
        "() => /result|document|matching/i.test(document.querySelector('.md-search-result__meta').textContent)"
    )
    page.wait_for_timeout(350)  # the box waits for a pause in the typing before it asks again
    hits = page.locator(".md-search-result__item > a.md-search-result__link")
    addresses = hits.evaluate_all("links => links.map(link => link.href)")
    base = searcher.site.as_uri() + "/"
    paths = (address.removeprefix(base).split("?")[0].split("#")[0] for address in addresses)
    return list(dict.fromkeys(paths))[:wanted]


@pytest.mark.parametrize("query", QUERIES)
def test_the_page_that_answers_comes_first_or_second(searcher: Reader, query: str) -> None:
    hits = found(searcher, query)
    assert set(QUERIES[query]) & set(hits[:2]), hits


def test_search_works_from_a_page_in_a_folder_and_its_hit_opens(reader: Callable[..., Reader]) -> None:
    window = reader()
    window.open("calendars/sydney/couch.html")
    assert found(window, "kikuyu renovation")[0] == "renovate/kikuyu.html"
    window.page.locator(".md-search-result__item > a.md-search-result__link").first.click()
    window.page.wait_for_url("**/renovate/kikuyu.html*")
    assert "Kikuyu" in window.page.locator("h1").inner_text()


def test_words_that_are_nowhere_find_nothing(reader: Callable[..., Reader]) -> None:
    window = reader()
    window.open("index.html")
    assert found(window, "xylophone") == []


def test_what_was_found_is_marked_in_the_other_names_of_a_page(reader: Callable[..., Reader]) -> None:
    """Each mark covers the beginning of a word of the query, and of the other names only those with a mark show."""
    window = reader()
    page = window.open("index.html")
    found(window, "sand")
    shown = page.locator(".md-search-result .md-tag:visible")
    assert shown.count() > 3
    marked = page.locator(".md-search-result .md-tag:visible mark").all_inner_texts()
    assert len(marked) >= shown.count()
    assert not [text for text in marked if not text.lower().startswith("sand")]
