"""axe-core finds nothing serious or critical on any page kind, light and dark, on a wide screen and on a phone."""

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.site.reader import KINDS, Reader

AXE = Path(__file__).resolve().parents[1] / "vendor" / "axe.min.js"
GRAVE = ("serious", "critical")
SIZES = {"wide": {"width": 1280, "height": 900}, "phone": {"width": 390, "height": 844}}
SCHEMES = {"light": "default", "dark": "slate"}
RUN = """async rules => (await axe.run(document, {
  resultTypes: ['violations'], preload: false, ...(rules ? {runOnly: {type: 'rule', values: rules}} : {})
})).violations.map(each => ({impact: each.impact, rule: each.id, where: each.nodes.slice(0, 3).map(node => node.target.join(' '))}))"""
READ_IN = AXE.read_text(encoding="utf-8")  # As a browser's tool runs it: the policy of a page lets no script in.
# What a smaller screen and other colours can break; all else is the same HTML, and is read once.
OF_LOOKS = ["color-contrast", "link-in-text-block", "scrollable-region-focusable", "target-size", "meta-viewport", "aria-hidden-focus", "label", "button-name", "link-name"]
# Of more than sixty alike in a row, the first sixty: axe takes half a minute over five hundred sources. The long run reads all.
FIRST_SIXTY = """() => document.querySelectorAll('article *').forEach(parent => {
  const alike = Map.groupBy(parent.children, each => `${each.tagName} ${each.className}`);
  [...alike.values()].flatMap(each => each.slice(60)).forEach(each => each.remove());
})"""


def grave(page: Page, rules: list[str] | None = None) -> list[tuple[str, list[str]]]:
    return [(found["rule"], found["where"]) for found in page.evaluate(RUN, rules) if found["impact"] in GRAVE]


def scheme(page: Page) -> str | None:
    return page.locator("body").get_attribute("data-md-color-scheme")


@pytest.mark.parametrize("path", KINDS.values(), ids=KINDS)
def test_no_grave_hindrance_on_any_page_kind(reader: Callable[..., Reader], path: str) -> None:
    """By every rule on a wide light page; then, with the same page on a telephone and its switch set to dark, by those of looks."""
    page = reader(viewport=SIZES["wide"], color_scheme="light").open(path)
    assert page.locator("h1").count() == 1 and scheme(page) == SCHEMES["light"]
    page.evaluate(FIRST_SIXTY)
    page.evaluate(READ_IN)
    assert not grave(page)
    page.set_viewport_size(SIZES["phone"])
    page.locator("header").get_by_title("Dark pages").click()
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", SCHEMES["dark"])
    assert not grave(page, OF_LOOKS)


@pytest.mark.soak
@pytest.mark.parametrize("path", KINDS.values(), ids=KINDS)
@pytest.mark.parametrize(("size", "scheme_asked"), [(size, scheme) for size in SIZES for scheme in SCHEMES])
def test_no_grave_hindrance_by_any_rule_in_any_look(reader: Callable[..., Reader], size: str, scheme_asked: str, path: str) -> None:
    page = reader(viewport=SIZES[size], color_scheme=scheme_asked).open(path)
    assert scheme(page) == SCHEMES[scheme_asked]
    page.evaluate(READ_IN)
    assert not grave(page)


def test_who_asks_for_dark_pages_gets_them(reader: Callable[..., Reader]) -> None:
    assert scheme(reader(color_scheme="dark").open("about.html")) == SCHEMES["dark"]


def test_axe_would_find_one(reader: Callable[..., Reader]) -> None:
    page = reader().open("about.html")
    page.evaluate("() => document.querySelector('.md-content').append(document.createElement('button'))")
    page.evaluate(READ_IN)
    assert [rule for rule, _ in grave(page)] == ["button-name"]
