"""The owner-operator's walk on a telephone: from a device with nothing on it to the client's link, and a tick that comes two days late."""

from collections.abc import Callable
from datetime import date, timedelta
from urllib.parse import parse_qs

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.site.reader import Reader
from tests.site.test_asked_today import SHEET
from tests.site.test_jobs import part, step

pytestmark = pytest.mark.walk

PHONE = {"viewport": {"width": 360, "height": 640}, "locale": "en-AU"}
MOST_TAPS = 25
LAWN = {"code": "TL-014", "area": "240", "sprinkler-rate": "14", "sprinkler-evenness": "62"}


class Walk:
    """A reader's hands: each tap, each choice from a list and each field typed counts one, and nothing may be typed a second time."""

    def __init__(self, page: Page):
        self.page = page
        self.taps = 0
        self.typed: list[str] = []

    def tap(self, target: Locator) -> None:
        self.taps += 1
        target.click()
        self.fits()

    def choose(self, label: str, words: str) -> None:
        self.taps += 1
        self.page.get_by_label(label, exact=True).select_option(label=words)

    def type(self, label: str, text: str) -> None:
        assert text not in self.typed, f"{text} has to be typed again"
        self.taps += 1
        self.typed.append(text)
        self.page.get_by_label(label).fill(text)

    def fits(self) -> None:
        assert self.page.evaluate("document.documentElement.scrollWidth") <= PHONE["viewport"]["width"], self.page.url


@pytest.fixture
def window(reader: Callable[..., Reader]) -> Reader:
    opened = reader(**PHONE)
    opened.page.clock.set_fixed_time("2026-10-05T08:00:00")
    return opened


def write_a_lawn_down(walk: Walk) -> None:
    page = walk.page
    walk.tap(page.get_by_role("link", name="Your lawns").first)
    walk.type("Code", LAWN["code"])
    walk.choose("Grass", "Kikuyu")
    walk.choose("Place", "Canberra, Australian Capital Territory")
    walk.type("Area", LAWN["area"])
    walk.tap(page.get_by_text("What stays the same"))
    walk.type("How fast do the sprinklers water?", LAWN["sprinkler-rate"])
    walk.type("How evenly do they water?", LAWN["sprinkler-evenness"])
    walk.tap(page.get_by_role("button", name="Keep this lawn"))
    # What was kept is in sight, with the way on.
    expect(page.get_by_text("TL-014 is kept.")).to_be_in_viewport()
    expect(page.get_by_role("link", name="Plan a job")).to_be_in_viewport()


def plan_its_job(walk: Walk) -> None:
    page = walk.page
    walk.tap(page.get_by_role("link", name="Plan a job"))
    expect(part(page, "what")).to_contain_text("Kikuyu, Canberra")
    expect(page.locator("[data-choice=area]")).to_have_value("240 m2")
    expect(part(page, "day-why")).to_have_text("The next good day here that leaves time to get ready.")
    expect(part(page, "headline")).to_have_text("Inside the window.")


def to_part(walk: Walk, name: str) -> None:
    walk.tap(walk.page.get_by_role("navigation", name="Parts of the job").get_by_role("link", name=name, exact=True))


def test_from_nothing_to_the_clients_link_in_25_taps_with_nothing_typed_twice(window: Reader) -> None:
    """4 mm on the driest quarter at 62 % is a mean of 6.45 mm: 28 minutes at 14 mm an hour."""
    walk = Walk(window.open("index.html"))
    page = walk.page
    write_a_lawn_down(walk)
    plan_its_job(walk)
    day = page.locator("[data-choice=on]").input_value()
    to_part(walk, "Steps")
    expect(part(page, "next").get_by_role("link", name="send a soil sample")).to_be_in_viewport()
    expect(step(page, "soil-test").locator("[data-act=done]")).to_be_in_viewport()
    to_part(walk, "Client")
    walk.tap(page.get_by_role("link", name="Make the client’s link"))
    walk.tap(page.get_by_role("button", name="To the link"))
    link = page.locator("form[data-component=client-link] [data-part=link]")
    expect(link).to_be_in_viewport(ratio=1)
    address, _, told = link.inner_text().partition("#")
    assert address.endswith(SHEET)
    wanted = {"v": ["1"], "on": [day], "grass": ["kikuyu"], "area": ["240"], "rate": ["14"], "even": ["62"], "in": ["AU"]}
    assert parse_qs(told, strict_parsing=True) == wanted
    walk.tap(page.get_by_role("button", name="Copy the link"))
    assert walk.taps <= MOST_TAPS, walk.taps
    assert walk.typed == list(LAWN.values())
    # Three days on the client waters, and sees the minutes of these sprinklers.
    page.clock.set_fixed_time(f"{date.fromisoformat(day) + timedelta(3)}T08:00:00")
    page = window.open(f"{SHEET}#{told}")
    expect(page.locator("[data-part=today] [data-answer=water]")).to_contain_text("28\u00a0min")


def test_a_tick_two_days_late_changes_nothing_unasked(window: Reader) -> None:
    walk = Walk(window.open("lawns.html"))
    page = walk.page
    write_a_lawn_down(walk)
    plan_its_job(walk)
    page.locator("[data-choice=on]").fill("2026-11-23")
    page.clock.set_fixed_time("2026-11-25T17:00:00")
    window.open("index.html")
    late = page.locator(".sb-today [data-part=late-list]")
    walk.tap(late.locator("summary"))
    walk.tap(late.get_by_role("link", name="Cut down in stages"))
    cut, dates, sheet, maker = step(page, "cut-down"), part(page, "date"), part(page, "handover"), part(page, "maker")
    expect(cut.locator("[data-act=done]")).to_be_in_viewport()
    before, links = dates.all_inner_texts(), [each.get_attribute("href") for each in (sheet, maker)]
    walk.tap(cut.locator("[data-act=done]"))
    expect(cut.locator("[data-act=day]")).to_have_value("2026-11-23")
    assert dates.all_inner_texts() == before
    assert [(each.get_attribute("href") or "").removesuffix("&done=cut-down") for each in (sheet, maker)] == links
    cut.locator("[data-act=day]").fill("2026-11-25")
    expect(cut.locator("[data-part=tick-said]")).to_be_visible()
    assert dates.all_inner_texts() == before
    walk.tap(cut.get_by_role("button", name="Leave the dates as they are"))
    assert dates.all_inner_texts() == before
    assert [(each.get_attribute("href") or "").removesuffix("&done=cut-down") for each in (sheet, maker)] == links
    cut.locator("[data-act=day]").fill("2026-11-25")
    walk.tap(cut.get_by_role("button", name="Move them"))
    expect(step(page, "scarify").locator("[data-part=date]")).to_have_text("Wed 25 Nov 2026")
    assert "on=2026-11-25" in (maker.get_attribute("href") or "")
