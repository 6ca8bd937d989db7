"""Grasses side by side: a reader picks a few, sends the choice on, and without scripts has them all."""

from collections.abc import Callable

from playwright.sync_api import Page, expect

from tests.site.reader import Reader

PAGE = "side-by-side.html"


def shown(page: Page) -> list[str]:
    return page.locator("thead th[data-column]:visible").all_inner_texts()


def test_two_stand_there_and_a_third_is_added_in_the_order_they_were_picked(reader: Callable[..., Reader]) -> None:
    page = reader().open(PAGE)
    assert len(shown(page)) == 2
    page.get_by_label("First grass").select_option(label="Zoysia")
    page.get_by_label("Second grass").select_option(label="Buffalo")
    page.get_by_label("Third grass").select_option(label="Couch")
    assert shown(page) == ["Zoysia", "Buffalo", "Couch"]
    row = page.locator("tbody tr", has=page.get_by_role("rowheader", name="Mowing height")).locator("td:visible")
    expect(row).to_have_count(3)
    assert "25 to 76 mm" in row.first.inner_text()  # UF/IFAS ENH11: zoysia at 1 to 3 inches
    assert page.url.endswith("#grass=zoysia.buffalo.couch")


def test_where_figures_come_from_is_told_once_below_and_only_for_what_is_shown(reader: Callable[..., Reader]) -> None:
    page = reader().open(f"{PAGE}#grass=couch.buffalo")
    table = page.locator(".sb-side-by-side table")
    assert "common practice" not in table.inner_text()
    expect(page.locator(".sb-sources-foot")).to_contain_text("What has no mark is common practice")
    height = page.locator("tbody tr", has=page.get_by_role("rowheader", name="Mowing height")).locator("td:visible").first
    number = height.locator("sup").evaluate("each => each.lastChild.textContent.trim()")
    page.get_by_text("Sources of this table").click()
    listed = page.locator("[data-source]:visible")
    source = page.locator(f"[data-source='{number}']")
    expect(source).to_be_visible()
    assert "sources.html#" in source.locator("a").get_attribute("href")
    assert 0 < listed.count() < page.locator("[data-source]").count()


def test_a_link_opens_what_was_picked_and_a_damaged_one_the_usual(reader: Callable[..., Reader]) -> None:
    window = reader()
    assert shown(window.open(f"{PAGE}#grass=kikuyu.couch")) == ["Kikuyu", "Couch"]
    window.page.goto("about:blank")
    assert len(shown(window.open(f"{PAGE}#grass=<b>.%00"))) == 2


def test_all_can_be_seen_with_and_without_scripts(reader: Callable[..., Reader]) -> None:
    page = reader().open(f"{PAGE}#grass=kikuyu.couch")
    page.get_by_label("First grass").select_option("")
    page.get_by_label("Second grass").select_option("")
    assert len(shown(page)) >= 15
    assert len(shown(reader(java_script_enabled=False).open(PAGE))) >= 15
