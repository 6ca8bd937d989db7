"""axe-core finds nothing serious or critical on any page kind, light and dark, on a wide screen and on a phone.

Every third kind is read in one of the four looks, by turns; the long run reads each kind in all of them.
"""

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page

from tests.site.reader import KINDS, Reader
from tests.slices import every

AXE = Path(__file__).resolve().parents[1] / "vendor" / "axe.min.js"
GRAVE = ("serious", "critical")
SIZES = {"wide": {"width": 1280, "height": 900}, "phone": {"width": 390, "height": 844}}
SCHEMES = {"light": "default", "dark": "slate"}
LOOKS = [(size, scheme) for size in SIZES for scheme in SCHEMES]
BY_TURNS = [(path, *LOOKS[at % len(LOOKS)]) for at, path in enumerate(KINDS.values())]
IN_ALL = [(path, *look) for path in KINDS.values() for look in LOOKS]
RUN = """async () => (await axe.run(document, {resultTypes: ['violations'], preload: false})).violations.map(
  each => ({impact: each.impact, rule: each.id, where: each.nodes.slice(0, 3).map(node => node.target.join(' '))})
)"""
READ_IN = AXE.read_text(encoding="utf-8")  # As a browser's tool runs it: the policy of a page lets no script in.
# Of more than a dozen alike in a row, the first dozen: axe takes half a minute over five hundred sources. The long run reads all.
FIRST_DOZEN = """() => document.querySelectorAll('article *').forEach(parent => {
  const alike = Map.groupBy(parent.children, each => `${each.tagName} ${each.className}`);
  [...alike.values()].flatMap(each => each.slice(12)).forEach(each => each.remove());
})"""


def grave(page: Page) -> list[tuple[str, list[str]]]:
    return [(found["rule"], found["where"]) for found in page.evaluate(RUN) if found["impact"] in GRAVE]


def scheme(page: Page) -> str | None:
    return page.locator("body").get_attribute("data-md-color-scheme")


def opened(reader: Callable[..., Reader], path: str, size: str, scheme_asked: str) -> Page:
    page = reader(viewport=SIZES[size], color_scheme=scheme_asked).open(path)
    assert page.locator("h1").count() == 1 and scheme(page) == SCHEMES[scheme_asked]
    return page


@pytest.mark.parametrize(("path", "size", "scheme_asked"), every(3, BY_TURNS), ids=KINDS)
def test_no_grave_hindrance_on_any_page_kind(reader: Callable[..., Reader], path: str, size: str, scheme_asked: str) -> None:
    page = opened(reader, path, size, scheme_asked)
    page.evaluate(FIRST_DOZEN)
    page.evaluate(READ_IN)
    assert not grave(page)


@pytest.mark.soak
@pytest.mark.parametrize(("path", "size", "scheme_asked"), IN_ALL)
def test_no_grave_hindrance_in_any_look(reader: Callable[..., Reader], path: str, size: str, scheme_asked: str) -> None:
    page = opened(reader, path, size, scheme_asked)
    page.evaluate(READ_IN)
    assert not grave(page)


def test_who_asks_for_dark_pages_gets_them(reader: Callable[..., Reader]) -> None:
    assert scheme(reader(color_scheme="dark").open("about.html")) == SCHEMES["dark"]


def test_axe_would_find_one(reader: Callable[..., Reader]) -> None:
    page = reader().open("about.html")
    page.evaluate("() => document.querySelector('.md-content').append(document.createElement('button'))")
    page.evaluate(READ_IN)
    assert [rule for rule, _ in grave(page)] == ["button-name"]
