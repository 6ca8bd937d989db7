"""A word of the trade leads from a text to its own place in the glossary, from a disk as from a server, and is plain on paper."""

from collections import Counter
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import expect

from tests.site.built_pages import built_pages
from tests.site.reader import Reader

LEAST_LINKED_PAGES = 60
WORD = "a.sb-word"


def test_a_word_opens_the_glossary_at_its_entry_which_stands_out(reader: Callable[..., Reader]) -> None:
    page = reader(viewport={"width": 360, "height": 740}).open("tasks/topdress.html")
    page.locator(WORD, has_text="thatch").first.click()
    assert page.url.endswith("glossary.html#thatch")
    entry = page.locator("#thatch")
    expect(entry).to_be_in_viewport()
    paint = "each => getComputedStyle(each).backgroundColor"
    assert entry.evaluate(paint) != page.locator("#tiller").evaluate(paint)
    assert entry.bounding_box()["y"] > page.locator(".md-header").bounding_box()["height"], "the entry hides below the header"


def test_every_link_ends_at_an_entry_and_none_stands_twice_on_a_page(site: Path) -> None:
    entries, linked = built_pages(site)["glossary.html"].ids, 0
    for path in built_pages(site):
        words = [part.split('"')[0] for part in (site / path).read_text(encoding="utf-8").split('<a class="sb-word" href="')[1:]]
        linked += bool(words)
        assert not [word for word, times in Counter(words).items() if times > 1], path
        assert {word.split("#")[1] for word in words} <= set(entries), path
    assert linked >= LEAST_LINKED_PAGES


def test_no_word_is_a_link_in_a_heading_a_button_or_another_link(reader: Callable[..., Reader]) -> None:
    window = reader(java_script_enabled=False)
    for path in ("tasks/topdress.html", "problems/thatch-sponge.html", "renovate/couch.html", "answers/moss.html"):
        expect(window.open(path).locator(f":is(h1, h2, h3, button, summary, a) {WORD}")).to_have_count(0)


def test_on_paper_a_word_is_as_plain_as_the_rest(reader: Callable[..., Reader]) -> None:
    page = reader().open("tasks/topdress.html")
    page.emulate_media(media="print")
    word = page.locator(WORD).first
    look = "each => [getComputedStyle(each).color, getComputedStyle(each).textDecorationLine]"
    assert word.evaluate(look) == [word.evaluate("each => getComputedStyle(each.parentElement).color"), "none"]
