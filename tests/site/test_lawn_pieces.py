"""A lawn measured piece by piece on the built site, and its sum on a calculator's page, in a guide and in US units."""

from collections.abc import Callable

from playwright.sync_api import Page, expect

from tests.site.reader import Reader
from tests.site.test_axe import GRAVE, READ_IN, RUN


def put(page: Page, button: str, **sizes: str) -> None:
    for name, text in sizes.items():
        page.locator(f"[data-input={name}] .sb-calculator__input").fill(text)
    page.get_by_role("button", name=button).click()


def hindrances(page: Page) -> list[str]:
    page.evaluate(READ_IN)
    return [found["rule"] for found in page.evaluate(RUN) if found["impact"] in GRAVE]


def test_a_lawn_is_measured_once_and_fed_with_one_tap(reader: Callable[..., Reader]) -> None:
    """12 x 8 + 16 x 10 - 8 x 4 / 2 = 96 + 160 - 16 = 240 m2; at 1.5 kg/100 m2 they take 3.6 kg. 240 / 0.09290304 = 2583.3 ft2."""
    window = reader(viewport={"width": 360, "height": 740})
    page = window.open("calculators/index.html")
    expect(page.get_by_text("A lawn of several pieces is added up as you measure")).to_be_visible()
    page.get_by_role("link", name="Area of a rectangle").first.click()
    put(page, "Add to the lawn", length="12", width="8")
    put(page, "Add to the lawn", length="16", width="10")
    page.get_by_text("Measure the next piece").click()
    page.locator(".sb-lawn-pieces__shapes").get_by_role("link", name="Area of a triangle", exact=True).click()
    put(page, "Take away from the lawn", base="8", height="4")
    expect(page.locator(".sb-lawn-pieces__total")).to_contain_text("240 m²")
    assert hindrances(page) == []
    page.get_by_label("Use 240 m² in").select_option(label="Granular feed")
    page.get_by_role("link", name="Open").click()
    expect(page.locator("[data-result=product] .sb-calculator__figure")).to_have_text("3.6 kg")
    expect(page.get_by_text("from the lawn of 3 pieces")).to_be_visible()
    page.locator("footer [data-units-choice=us]").click()
    expect(page.get_by_role("button", name="Use the lawn: 2583.3 ft²")).to_be_visible()


def test_a_guide_offers_the_lawn_beside_its_area(reader: Callable[..., Reader]) -> None:
    """250 m2 under 4 mm of sand take 1 m3."""
    window = reader(viewport={"width": 1280, "height": 900}, color_scheme="dark")
    page = window.open("calculators/area-rectangle.html")
    put(page, "Add to the lawn", length="25", width="10")
    assert hindrances(page) == []
    page = window.open("renovate/kikuyu.html")
    sand = page.locator(".sb-calculator[data-calculator=topdressing-sand]").first
    sand.evaluate("box => { for (let each = box; each; each = each.parentElement.closest('details')) if (each.tagName === 'DETAILS') each.open = true; }")
    sand.locator("[data-input=depth] .sb-calculator__input").fill("4")
    sand.get_by_role("button", name="Use the lawn: 250 m²").click()
    expect(sand.locator("[data-result=volume] .sb-calculator__figure")).to_have_text("1 m³")
    assert "from the lawn of 1 piece" in sand.inner_text()
