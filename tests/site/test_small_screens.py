"""On the smallest telephone, with gloves on, and with scripts off."""

from collections.abc import Callable

import pytest
from playwright.sync_api import expect

from tests.site.reader import KINDS, Reader
from tests.slices import every

SMALL = {"width": 360, "height": 740}
TOUCH_PX = 44
TARGETS = "button, select, summary, textarea, input:not([type=hidden]):not(.md-toggle), .md-tabs__link, .sb-button, label.md-header__button"
TOO_LOW = """([targets, least]) => [...document.querySelectorAll(targets)].filter(each => {
  const box = each.getBoundingClientRect();
  const style = getComputedStyle(each);
  return box.width > 1 && box.height > 0 && style.visibility !== 'hidden' && style.pointerEvents !== 'none' && box.height < least - 0.5;
}).map(each => `${each.tagName} ${each.className} ${Math.round(each.getBoundingClientRect().height)}`)"""
WIDER = """() => {
  const wide = document.documentElement.clientWidth;
  const over = [...document.querySelectorAll('.md-container *')].filter(each => each.getBoundingClientRect().right > wide + 1
    && !each.closest('.sb-table, .sb-scroll, .md-typeset__scrollwrap, [hidden], .sb-hidden, svg'));
  return [document.documentElement.scrollWidth > wide ? 'scrolls' : '', ...over.slice(0, 3).map(each => `${each.tagName}.${each.className}`)].filter(Boolean);
}"""


@pytest.mark.parametrize("path", every(2, KINDS.values()), ids=KINDS)
def test_at_360_pixels_nothing_scrolls_sideways_and_all_can_be_tapped_in_gloves(reader: Callable[..., Reader], path: str) -> None:
    """44 px, as WCAG 2.2 success criterion 2.5.5 has it; links inside a sentence are exempt there, and so here."""
    page = reader(viewport=SMALL, has_touch=True, is_mobile=True).open(path)
    over = page.evaluate(WIDER)
    assert "scrolls" not in over, over
    page.evaluate("() => document.querySelectorAll('.md-content details').forEach(each => { each.open = true; })")
    assert not page.evaluate(TOO_LOW, [TARGETS, TOUCH_PX])


def test_the_search_box_can_be_opened_cleared_and_left_with_a_glove(reader: Callable[..., Reader]) -> None:
    page = reader(viewport=SMALL, has_touch=True, is_mobile=True).open("index.html")
    page.locator("label.md-header__button[for=__search]").click()
    page.locator(".md-search__input").press_sequentially("sand")
    expect(page.locator(".md-search-result__item").first).to_be_visible()
    low = page.evaluate(TOO_LOW, [".md-search button, .md-search label.md-search__icon, .md-search-result__link", TOUCH_PX])
    assert not low


@pytest.fixture
def without_scripts(reader: Callable[..., Reader]) -> Reader:
    return reader(java_script_enabled=False, viewport=SMALL)


@pytest.mark.parametrize("step", [2, pytest.param(1, marks=pytest.mark.soak)])
def test_without_scripts_page_kinds_still_read(without_scripts: Reader, step: int) -> None:
    for kind, path in list(KINDS.items())[::step]:
        page = without_scripts.open(path)
        expect(page.locator("h1")).to_be_visible()
        assert len(page.locator(".md-content").inner_text()) > 200, kind


def test_without_scripts_the_first_page_lists_the_calendars(without_scripts: Reader) -> None:
    page = without_scripts.open("index.html")
    page.locator(".sb-picker summary", has_text="Canberra").click()
    page.locator(".sb-picker a:visible", has_text="Kikuyu").click()
    expect(page.locator("h1")).to_have_text("Kikuyu at Canberra")


def test_without_scripts_a_calculator_shows_its_usual_case_and_says_so(without_scripts: Reader) -> None:
    """1.5 kg/100 m2 on 100 m2 is 1.5 kg."""
    page = without_scripts.open("calculators/granular-feed.html")
    expect(page.locator("[data-result=product] .sb-calculator__figure")).to_have_text("1.5 kg")
    notice = page.locator("noscript .sb-calculator__notice")
    expect(notice).to_be_visible()
    assert "Scripts are off" in (notice.text_content() or "")
    assert page.locator(".sb-calculator__input:visible").first.is_disabled()


def test_without_scripts_strips_tables_and_both_systems_of_units_stay(without_scripts: Reader) -> None:
    page = without_scripts.open("grasses/kikuyu.html")
    expect(page.locator("svg").locator("visible=true").first).to_be_visible()
    assert page.locator("table:visible").count() >= 1
    expect(page.locator(".sb-level").first).to_be_visible()
    row = page.locator(".sb-facts__row", has_text="Mowing height").first.inner_text()
    assert "mm" in row and "in" in row


def test_without_scripts_a_month_has_its_days_and_no_dead_button(without_scripts: Reader) -> None:
    page = without_scripts.open("calendars/sydney/couch.html")
    sheet = page.locator(".sb-month-sheet[data-month='2']")
    assert sheet.locator(".sb-month-sheet__day").last.inner_text() == "29"
    for dead in (sheet.locator("[data-print-month]"), page.locator("#sheet-year"), page.locator("header [data-units-choice]").first):
        expect(dead).to_be_hidden()


def test_without_scripts_an_aftercare_sheet_counts_in_days(without_scripts: Reader) -> None:
    page = without_scripts.open("aftercare/after-renovation.html#v=1&on=2026-10-05")
    notice = page.locator(".md-content noscript p:not([class])")
    expect(notice).to_be_visible()
    assert "count the days from the job yourself" in (notice.text_content() or "")
    assert page.locator(".sb-aftercare__stretch").count() > 2
