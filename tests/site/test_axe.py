"""axe-core finds nothing serious or critical on any page kind, light and dark, on a wide screen and on a phone."""

from collections.abc import Callable
from pathlib import Path

import pytest

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


# Every rule on a wide light page, those of looks on a dark telephone; the long run reads each pair by every rule.
@pytest.mark.parametrize("path", KINDS.values(), ids=KINDS)
@pytest.mark.parametrize(("size", "scheme", "rules"), [
    pytest.param("wide", "light", None, id="wide-light"),
    pytest.param("phone", "dark", OF_LOOKS, id="phone-dark-looks"),
    *(pytest.param(*pair, None, marks=pytest.mark.soak, id="-".join(pair)) for pair in (("phone", "dark"), ("wide", "dark"), ("phone", "light"))),
])
def test_no_grave_hindrance_on_any_page_kind(reader: Callable[..., Reader], scheme: str, size: str, rules: list[str] | None, path: str) -> None:
    page = reader(viewport=SIZES[size], color_scheme=scheme).open(path)
    assert page.locator("h1").count() == 1
    assert page.locator("body").get_attribute("data-md-color-scheme") == SCHEMES[scheme]
    page.evaluate(READ_IN)
    assert not [(found["rule"], found["where"]) for found in page.evaluate(RUN, rules) if found["impact"] in GRAVE]


def test_axe_would_find_one(reader: Callable[..., Reader]) -> None:
    page = reader().open("about.html")
    page.evaluate("() => document.querySelector('.md-content').append(document.createElement('button'))")
    page.evaluate(READ_IN)
    assert [found["rule"] for found in page.evaluate(RUN) if found["impact"] in GRAVE] == ["button-name"]
