"""What a reader takes away from a calculator: text, a link that carries the figures, a printed card, and remembered units."""

import io

import pytest
from pypdf import PdfReader

from generator.site.frame.render import render, render_component
from generator.site.pages.calculator.view import calculator_page, calculator_view
from tests.components.calculators import BOOK, DESK, component, field, figure, page_with
from tests.slices import every

DAMAGED = "This link is damaged, so its figures are left out and the usual start is shown."


def unit_of(page, name: str):
    return page.locator(f'[data-input="{name}"] .sb-calculator__unit')


def offered(page, part: str) -> str:
    page.locator(f".sb-calculator__share [data-part={part}]").click()
    return page.locator(".sb-calculator__share textarea").input_value()


def with_fragment(page, fragment: str):
    page.goto(page.url.split("#")[0] + fragment)
    page.reload()
    return page


def damaged(page) -> bool:
    return page.locator("[data-part=damaged]").is_visible()


def test_text_has_what_went_in_and_what_came_out_with_units(opened):
    """240 m2 at 3 kg/100 m2 are 7.2 kg (15.9 lb at 0.45359237 kg)."""
    page = opened("granular-feed")
    field(page, "area").fill("240")
    field(page, "rate").fill("3")
    text = offered(page, "copy").split("\n")
    assert text[0] == "Granular feed"
    for line in ("Area to feed: 240 m²", "Rate of this feed: 3 kg/100 m²", "Product for this feed: 7.2 kg (15.87 lb)", "Packs to have in the shed: 1 pack"):
        assert line in text
    assert any("published ceiling" in line for line in text)  # A warning goes along with the figures it is about.


def test_a_link_carries_the_figures_there_and_back(opened):
    page = opened("granular-feed")
    unit_of(page, "area").select_option("ft2")
    field(page, "area").fill("30ft x 12ft")
    field(page, "rate").fill("3 1/2")
    link = offered(page, "link")
    fragment = link[link.index("#"):]
    assert fragment.startswith("#v=1&area=30ft+x+12ft&rate=3+1%2F2+kg%2F100+m2&") and len(fragment) <= 301
    shown = figure(page, "product")
    page.evaluate("window.localStorage.clear()")
    with_fragment(page, fragment)
    assert not damaged(page)
    assert field(page, "area").input_value() == "30ft x 12ft"
    assert field(page, "rate").input_value() == "3 1/2" and unit_of(page, "rate").input_value() == "kg/100 m2"
    assert figure(page, "product") == shown


def test_readings_go_into_a_link(opened):
    page = opened("catch-cans")
    field(page, "readings").fill("12, 14; 15")
    with_fragment(page, "#v=1&readings=10+20+30+40+mm&minutes=30")
    assert figure(page, "precipitation_rate") == "50 mm/h"  # A mean of 25 mm in half an hour.


def test_what_is_too_long_for_a_link_is_not_cut_short(opened):
    page = opened("catch-cans")
    field(page, "readings").fill(", ".join(["12.5"] * 80))
    page.locator(".sb-calculator__share [data-part=link]").click()
    assert page.locator("[data-part=told]").inner_text() == "These figures do not fit into a link; copy them as text."


def test_a_link_is_built_on_the_public_address():
    view = calculator_view(BOOK, "coring", DESK)
    assert view["address"] == f"{BOOK.practice.public_address}calculators/coring.html"


def test_without_a_public_address_it_says_how_far_a_link_reaches(opened):
    view = {**calculator_view(BOOK, "coring", DESK), "address": None}
    page = opened("coring", bodies=[render_component("calculator", view)])
    link = offered(page, "link")
    assert link.startswith(page.url + "#v=1&")
    assert "works only where this copy of the book is" in page.locator("[data-part=told]").inner_text()


def test_headings_are_no_figures(opened):
    page = with_fragment(opened("granular-feed"), "#check-it-yourself")
    assert not damaged(page) and field(page, "area").input_value() == "100"


@pytest.mark.parametrize(
    "fragment",
    every(4, [
        "#v=2&area=240+m2", "#area=240+m2", "#v=1", "#v=1&area=", "#v=1&area=banana", "#v=1&area=-5+m2", "#v=1&area=5+kg",
        "#v=1&aera=240", "#v=1&area=1&area=2", "#v=1&area=%E0%A4%A", "#v=1&area=<img+src=x+onerror=alert(1)>",
        "#v=1&area=%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E", "#v=1&__proto__=1", "#v=1&constructor=1", "#v=1&area=1&javascript:alert(1)=2",
        "#v=1&area=" + "1" * 300, "#v=1&passes=1.5", "#v=1&area=240+m2&rate=", "#v=1&&area=1", "#v=1&area=1e999",
    ]),
)  # fmt: skip
def test_a_damaged_or_hostile_link_gets_a_plain_notice(opened, fragment):
    page = with_fragment(opened("granular-feed"), fragment)
    assert damaged(page) and page.locator("[data-part=damaged]").inner_text() == DAMAGED
    assert field(page, "area").input_value() == "100"
    assert figure(page, "product") == "1.5 kg"
    assert page.locator(".sb-calculator img").count() == 0


def test_an_embedded_calculator_does_not_listen_to_the_address(opened):
    page = with_fragment(opened("granular-feed", bodies=[component("granular-feed", "step")]), "#v=1&area=240+m2")
    assert field(page, "area").input_value() == "100"


def test_a_chosen_unit_is_remembered_for_its_field_and_system(opened):
    page = opened("granular-feed")
    unit_of(page, "area").select_option("ha")
    page.reload()
    assert unit_of(page, "area").input_value() == "ha"
    assert field(page, "area").input_value() == "0.01"  # The usual 100 m2, in hectares.
    assert figure(page, "product") == "1.5 kg"
    page.evaluate("Swardbook.preferences.set('units', 'us')")
    assert unit_of(page, "area").input_value() == "ft2" and field(page, "area").input_value() == "1000"
    page.evaluate("window.localStorage.setItem('swardbook.unit.granular-feed.area.us', 'cubits')")
    page.reload()
    assert unit_of(page, "area").input_value() == "ft2"


@pytest.mark.parametrize(
    ("id", "shown"),
    [
        ("topdressing-sand", ("Area to top-dress", "Depth of sand", "Volume of sand", "1 m³", "1.6 t")),  # 250 m2 at 4 mm.
        ("granular-feed", ("Area to feed", "Nitrogen on the bag", "Product for this feed", "3.75 kg")),  # The fullest; 2.5 x 1.5 kg.
    ],
)
def test_a_card_has_inputs_and_answers_and_nothing_else(browser, tmp_path, id, shown):
    context = browser.new_context()
    page = context.new_page()
    body = f'<article class="md-content__inner md-typeset">{render("pages/calculator/calculator.html.j2", calculator_page(BOOK, id, DESK).context)}</article>'
    page.goto(page_with(tmp_path, [body], [id]))
    page.evaluate("window.print = () => {}")
    field(page, "area").fill("250")
    page.locator(".sb-calculator__share [data-part=print]").click()
    sheets = PdfReader(io.BytesIO(page.pdf(format="A5"))).pages
    assert len(sheets) == 1
    printed = " ".join(sheets[0].extract_text().split())
    for words in shown:
        assert words in printed
    for words in ("Check it yourself", "Copy as text", "Turn it round", "Show the working"):
        assert words not in printed
    page.evaluate("window.dispatchEvent(new Event('afterprint'))")
    assert "Check it yourself" in page.inner_text("body")
    context.close()
