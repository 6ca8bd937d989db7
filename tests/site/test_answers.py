"""A client's answer in the browser: figures in the reader's units, and an address to paste."""

from collections.abc import Callable

from playwright.sync_api import expect

from tests.site.reader import Reader

PAGE = "answers/how-often-water.html"
PUBLIC = "https://tussocklane.example/book/answers/how-often-water.html"


def test_a_figure_in_a_sentence_follows_the_units_chosen(reader: Callable[..., Reader]) -> None:
    """10 mm is 0.394 in (NIST SP 811: an inch is 25.4 mm), and a ruler's nearest eighth is 3/8."""
    page = reader().open(PAGE)
    sentence = page.locator(".sb-said li", has_text="One soak on sand")
    expect(sentence.locator(".sb-quantity")).to_have_text("10 mm (⅜ in)")
    page.locator("header [data-units-choice=us]").click()
    assert "⅜ in" in sentence.inner_text() and "10 mm" not in sentence.inner_text()


def test_the_short_answer_and_its_address_are_copied_for_a_reply(reader: Callable[..., Reader]) -> None:
    window = reader()
    window.context.grant_permissions(["clipboard-read", "clipboard-write"])
    page = window.open(PAGE)
    page.get_by_role("button", name="Copy the answer").click()
    expect(page.locator("[data-part=done]").first).to_have_text("Copied.")
    copied = page.evaluate("() => navigator.clipboard.readText()")
    assert copied.startswith("How often should I water?") and copied.endswith(PUBLIC)
    page.get_by_role("button", name="Copy the address").click()
    expect(page.locator("[data-part=done]").last).to_have_text("Copied.")
    assert page.evaluate("() => navigator.clipboard.readText()") == PUBLIC


def test_without_scripts_the_answer_can_still_be_marked_and_copied(reader: Callable[..., Reader]) -> None:
    page = reader(java_script_enabled=False).open(PAGE)
    expect(page.get_by_label("Address of this page")).to_have_value(PUBLIC)
    expect(page.get_by_role("button", name="Copy the address")).to_be_hidden()
