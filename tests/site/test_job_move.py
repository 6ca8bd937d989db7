"""A job that goes to another day: shown in full before anything moves, done with one button, and undone with another."""

from collections.abc import Callable

from playwright.sync_api import Page, expect

from tests.site.reader import Reader
from tests.site.test_jobs import JOB, part, step

WEDNESDAY = "#v=1&plan=warm-below-ground&grass=couch&place=canberra&site=open&area=240&on=2026-12-16&part=steps"


def on_monday(reader: Callable[..., Reader]) -> Page:
    """Two days before the job, on a telephone."""
    window = reader(viewport={"width": 360, "height": 640})
    window.page.clock.set_fixed_time("2026-12-14T09:00:00")
    page = window.open(JOB + WEDNESDAY)
    expect(step(page, "soil-test").locator("[data-act=done]")).to_be_visible()
    return page


def to(page: Page, name: str) -> None:
    page.locator(f".sb-parts [data-to={name}]").click()


def tick(page: Page, *steps: str) -> None:
    for id in steps:
        step(page, id).locator("[data-act=done]").check()


def test_bookings_past_their_day_are_marked_in_words_until_they_are_made(reader: Callable[..., Reader]) -> None:
    """The practice's hire shop wants 14 days: a scarifier for 16 December is booked by the 2nd."""
    page = on_monday(reader)
    row = part(page, "gear").locator("tr", has_text="Scarifier")
    expect(row).to_contain_text("Wed 2 Dec 2026. Overdue")
    expect(part(page, "late-said")).to_contain_text("Past its day and not ticked")
    tick(page, "book-gear")
    expect(row).to_contain_text("Wed 2 Dec 2026")
    expect(row).not_to_contain_text("Overdue")


def test_a_job_is_moved_with_one_button_once_all_that_it_takes_is_read(reader: Callable[..., Reader]) -> None:
    """Two weeks on, grass that was cut has grown (the step says that a cut holds 14 days) and the hire shop needs its 14 days again."""
    page = on_monday(reader)
    tick(page, "soil-test", "book-gear", "service-plans", "light-cut")  # the cut was a week before the job, on the 9th
    dates, client = part(page, "date"), part(page, "maker")
    before, link = dates.all_inner_texts(), client.get_attribute("href")
    part(page, "late").get_by_role("button", name="Move the job").click()
    box = part(page, "move-box")
    expect(box.get_by_role("heading", name="Move the job")).to_be_focused()
    # The first day on which what is hired can be booked: it should have been two weeks before Wednesday, twelve days ago.
    expect(part(page, "move-on")).to_have_value("2026-12-28")
    expect(part(page, "move-so")).to_contain_text("Inside the window.")
    part(page, "move-on").fill("2026-12-24")
    expect(part(page, "move-again").locator("li")).to_have_text(["Take a light cut: done on Wed 9 Dec 2026, and that holds for 14 days (assumption. Two mowings missed while it grows strongly)."])
    expect(part(page, "move-book").locator("li", has_text="Scarifier (hire)")).to_contain_text("not Wed 16 Dec 2026 but Thu 24 Dec 2026. Book by Thu 10 Dec 2026. Overdue")
    expect(part(page, "move-ring")).to_contain_text("Where you hire: Scarifier, Corer")
    expect(part(page, "move-ring").locator("li").last).to_contain_text("Clear the lawn for tomorrow, Wed 23 Dec 2026")
    part(page, "move-count").click()
    expect(part(page, "move-steps")).to_contain_text("Core the lawn: Wed 16 Dec 2026 → Thu 24 Dec 2026")
    assert "on=2026-12-24&" in part(page, "move-message").input_value() and "Tussock Lane" in part(page, "move-message").input_value()
    # Read, and nothing moved: left as it is, it stays so.
    to(page, "steps")
    assert dates.all_inner_texts() == before and client.get_attribute("href") == link
    to(page, "when")
    page.get_by_role("button", name="Leave it").click()
    expect(box).to_be_hidden()
    page.get_by_role("button", name="Move the job").locator("visible=true").click()
    part(page, "move-on").fill("2026-12-30")
    page.get_by_role("button", name="Move it").click()
    expect(part(page, "move-told")).to_contain_text("Moved from Wed 16 Dec 2026 to Wed 30 Dec 2026.")
    expect(part(page, "what")).to_contain_text("Wed 30 Dec 2026")
    expect(page.locator("[data-choice=on]")).to_have_value("2026-12-30")
    assert "on=2026-12-30" in (client.get_attribute("href") or "")
    ticked = {id: step(page, id).locator("[data-act=done]").is_checked() for id in ("soil-test", "service-plans", "light-cut", "book-gear")}
    assert ticked == {"soil-test": True, "service-plans": True, "light-cut": False, "book-gear": False}
    expect(step(page, "core").locator("[data-part=date]")).to_have_text("Wed 30 Dec 2026")
    page.get_by_role("button", name="Undo the move").click()
    to(page, "steps")
    assert dates.all_inner_texts() == before and step(page, "light-cut").locator("[data-act=done]").is_checked()
