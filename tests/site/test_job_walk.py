"""One job on a phone, from "can we do it on that day?" to the client's last watering."""

from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path

from playwright.sync_api import expect

from tests.site.reader import Reader
from tests.site.test_aftercare import ADDRESS, PHONE, on_day
from tests.site.test_job_day import events, saved
from tests.site.test_jobs import JOB, part, step

PLANNED, DONE = date(2026, 12, 16), date(2026, 12, 18)


def test_one_job_from_the_first_question_to_the_last_watering(reader: Callable[..., Reader], tmp_path: Path) -> None:
    window = reader(accept_downloads=True, **PHONE)
    page = on_day(window, JOB, PLANNED)
    for name, value in (("grass", "couch"), ("plan", "warm-below-ground"), ("place", "canberra")):
        page.locator(f"[data-choice={name}]").select_option(value)
    page.locator("[data-choice=area]").fill("240 m2")
    page.locator("[data-choice=on]").fill(PLANNED.isoformat())
    expect(part(page, "headline")).to_have_text("Inside the window.")

    cut = step(page, "cut-down")
    cut.locator("[data-part=hold] > summary").click()
    cut.get_by_role("textbox", name="Lowest temperature").fill("-1 °C")
    expect(cut.locator("[data-part=hold-said]")).to_have_text("Hold")
    cut.get_by_role("button", name="Go two days later").click()
    for id in ("cut-down", "core", "topdress"):
        expect(step(page, id).locator("[data-part=date]")).to_have_text("Fri 18 Dec 2026")
    assert part(page, "shopping").locator("tr").count() > 1
    found = events(saved(page, "calendar", tmp_path / "job.ics"))
    assert [each["dtstart"].dt for uid, each in found.items() if uid.partition("@")[0].endswith("-core")] == [DONE]

    page.clock.set_fixed_time(f"{DONE.isoformat()}T16:00:00")
    for id in ("cut-down", "core", "topdress"):
        step(page, id).locator("[data-act=done]").check()
    part(page, "maker").click()
    link = page.locator("[data-part=link]").inner_text()
    assert link.startswith(f"{ADDRESS}aftercare/after-renovation.html#v=1&on=2026-12-18&grass=couch&area=240&done=")
    assert sorted(link.rpartition("=")[2].split(".")) == ["core", "cut-down", "topdress"]
    expect(page.locator("[data-part=code] svg")).to_be_visible()

    for days in (0, 9, 40):
        on_day(window, link.removeprefix(ADDRESS), DONE + timedelta(days))
        expect(page.locator("[data-part=today]")).to_contain_text(f"is day {days}")
        assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["viewport"]["width"]
