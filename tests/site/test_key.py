"""The key of grasses in a browser: whole and by links without scripts, one question at a time with them, whole again on paper."""

from collections.abc import Callable

from playwright.sync_api import Page, expect

from generator.field.grass_key import Fork, answer, key_of
from tests.our_book import book as our_book
from tests.site.reader import Reader

PAGE = "grasses/key.html"


def answers(grass: str) -> list[str]:
    """What the grass's own record says to each question on its way."""
    book = our_book()
    assert book is not None and book.key is not None
    node, said = key_of(book.key.questions, book.grasses), []
    while isinstance(node, Fork):
        yes = answer(book.key.questions[node.question], book.grasses[grass])
        said.append("Yes" if yes else "No")
        node = node.yes if yes else node.no
    return said


def steps(page: Page) -> list[str]:
    return [step.get_attribute("id") or "" for step in page.locator(".sb-key [data-step]:visible").all()]


def test_one_question_at_a_time_ends_at_the_grass_and_goes_back(reader: Callable[..., Reader]) -> None:
    page = reader(viewport={"width": 360, "height": 720}).open(PAGE)
    page.get_by_role("button", name="One question at a time").click()
    seen = steps(page)
    assert len(seen) == 1
    for word in answers("kikuyu"):
        page.locator(f"[data-answer={word}]:visible").click()
        assert len(steps(page)) == 1
        seen += steps(page)
    expect(page.locator(".sb-key__grass:visible")).to_have_text("Kikuyu")
    expect(page.locator(f"#{seen[-1]}")).to_be_focused()
    page.get_by_role("button", name="Back", exact=True).click()
    assert steps(page) == [seen[-2]]
    page.get_by_role("button", name="Show the whole key").click()
    assert len(steps(page)) > len(seen)


def test_without_scripts_the_links_lead_through_the_whole_key(reader: Callable[..., Reader]) -> None:
    page = reader(java_script_enabled=False).open(PAGE)
    here = page.locator(".sb-key [data-step]").first
    for word in answers("buffalo"):
        target = here.locator(f"[data-answer={word}]").get_attribute("href") or ""
        here = page.locator(target)
        expect(here).to_be_visible()
    expect(here.locator(".sb-key__grass")).to_have_text("Buffalo")


def test_paper_has_the_whole_key_whatever_the_screen_shows(reader: Callable[..., Reader]) -> None:
    page = reader().open(PAGE)
    whole = len(steps(page))
    page.get_by_role("button", name="One question at a time").click()
    page.evaluate("window.dispatchEvent(new Event('beforeprint'))")
    page.emulate_media(media="print")
    assert len(steps(page)) == whole
    expect(page.locator("[data-answer=No]").last).to_be_visible()
    expect(page.get_by_role("button", name="Back", exact=True)).to_be_hidden()
