"""A job on its way: rain, the inspection's answers, hold or go, and what is handed on. What the page says is what the command line says."""

import json
from collections.abc import Callable
from datetime import date
from itertools import pairwise
from pathlib import Path

import pytest
from click.testing import CliRunner
from icalendar import Calendar
from playwright.sync_api import Page, expect

from generator.cli import main
from tests.our_book import book as our_book
from tests.site.reader import Reader
from tests.site.test_jobs import COUCH_AT_CANBERRA, JOB, part, step, unfolded

ROOT = str(Path(__file__).resolve().parents[2])
DECEMBER = JOB + COUCH_AT_CANBERRA + "2026-12-16"
ON_THE_COMMAND_LINE = ("plan", "--book", ROOT, "warm-below-ground", "--grass", "couch", "--place", "canberra", "--area", "240 m2")


def plan(*words: str, on: str = "2026-12-16") -> dict:
    result = CliRunner().invoke(main, [*ON_THE_COMMAND_LINE, "--on", on, *words, "--json"])
    assert result.exit_code == 0, result.output
    return json.loads(result.stdout)


def opened(window: Reader, path: str = DECEMBER) -> Page:
    page = window.open(path)
    expect(step(page, "soil-test").locator("[data-part=controls]")).to_be_visible()
    return page


def rain(page: Page, day: str, text: str) -> None:
    part(page, "rain-box").evaluate("box => { box.open = true; }")
    everything = page.locator("[data-act=rain-all]")
    if everything.is_visible():
        everything.click()
    field = page.locator(f"[data-day='{day}'] input")
    field.fill(text)
    field.dispatch_event("change")


def saved(page: Page, act: str, to: Path) -> bytes:
    with page.expect_download() as waiting:
        page.locator(f"[data-act={act}]").click()
    waiting.value.save_as(to)
    return to.read_bytes()


def test_rain_that_covers_a_watering_spares_what_the_command_line_says(reader: Callable[..., Reader], tmp_path: Path) -> None:
    """Half an inch is 12.7 mm (an inch is 25.4 mm exactly), and covers a day of the first week; 1 mm covers none."""
    page = opened(reader(accept_downloads=True))
    rain(page, "2026-12-17", "0.5 in")
    rain(page, "2026-12-18", "1 mm")
    page.evaluate("Swardbook.preferences.set('units', 'us')")
    rain(page, "2026-12-19", "0.5")
    words = [f"--rain={day}={depth}" for day, depth in (("2026-12-17", "0.5 in"), ("2026-12-18", "1 mm"), ("2026-12-19", "12.7 mm"))]
    found = plan(*words)
    depths = [each["depth_mm"] for step in found["steps"] for each in step["watering"] if each["rain_mm"] is not None]
    assert len(depths) == 2 and found["water"]["spared_litres"] == pytest.approx(sum(depths) * 240 / 0.7)  # a millimetre on a square metre is a litre; the driest quarter gets 70 % of the mean
    expect(part(page, "spared")).to_contain_text(f"Rain covers 2 waterings: {found['water']['spared_litres']:.0f} L")
    expect(part(page, "spared")).to_contain_text(f"{found['water']['litres']:.0f} L")
    first_week = [each for step in found["steps"] for each in step["watering"] if "2026-12-16" <= each["date"] < "2026-12-23" and each["rain_mm"] is None]
    row = part(page, "water").locator("tr", has_text="Week 1,")
    expect(row).to_contain_text(f"{len({each['date'] for each in first_week})} days")
    expect(row).to_contain_text(f"{sum(each['litres'] for each in first_week):.0f} L")
    rain(page, "2026-12-20", "lots")
    expect(page.locator("[data-day='2026-12-20'] [role=status]")).not_to_be_empty()
    kept = json.loads(saved(page, "export", tmp_path / "job.json"))["jobs"][0]["rain"]
    assert kept == {"2026-12-17": pytest.approx(12.7), "2026-12-18": 1, "2026-12-19": pytest.approx(12.7)}
    page.reload()
    expect(part(page, "spared")).to_contain_text("Rain covers 2 waterings")
    expect(page.locator("[data-day='2026-12-17'] input")).to_have_value("0.5 in")
    rain(page, "2026-12-17", "")
    expect(part(page, "spared")).to_contain_text("Rain covers 1 watering:")


def test_the_inspection_s_answers_change_the_job_as_on_the_command_line(reader: Callable[..., Reader]) -> None:
    window = reader()
    sheet = window.open("inspection.html")
    for question, answer in (("sun-hours", "3 h"), ("thatch-depth", "45 mm"), ("living-cover", "30 %")):
        field = sheet.locator(f"[data-question={question}] .sb-inspection__measure")
        field.fill(answer)
        field.dispatch_event("change")
    page = opened(window)
    before = page.locator("[data-step]").evaluate_all("all => all.map(each => each.dataset.step)")
    page.get_by_role("button", name="Use the inspection").click()
    expect(part(page, "inspection-said")).to_contain_text("Stop: ")
    wanted = plan("--inspection=sun-hours=3 h", "--inspection=thatch-depth=45 mm", "--inspection=living-cover=30 %")
    shown = page.locator("[data-step]").evaluate_all("all => all.map(each => each.dataset.step)")
    assert sorted(shown) == sorted(each["id"] for each in wanted["steps"]) != sorted(before)
    left_out = part(page, "left-out").locator("li").all_text_contents()
    assert left_out == [f"{each['title']}: {each['why']}" for each in wanted["left_out"]]
    said, seen = part(page, "inspection-found").inner_text(), wanted["inspection"]
    told = [*seen["stops"], *seen["added"], *seen["notes"], *(each for why in seen["left_out"].values() for each in why)]
    assert told and not [each["say"] for each in told if each["say"] not in said or each["because"] not in said]
    # This plan takes its thatch out anyway, so nobody is told that it is needed here.
    assert seen["chosen"]["scarify"] and not any(each["say"] in said for each in seen["chosen"]["scarify"])
    page.reload()
    expect(part(page, "inspection-said")).to_contain_text("Stop: ")
    page.get_by_role("button", name="Plan without the inspection").click()
    expect(page.locator("[data-step]")).to_have_count(len(before))


def test_a_frost_holds_the_cut_and_the_job_goes_two_days_later(reader: Callable[..., Reader]) -> None:
    """Frost after cutting down is what the plan waits out: common practice. All that waits for the cut moves by as much."""
    page = opened(reader())
    cut = step(page, "cut-down")
    cut.locator("[data-part=hold] > summary").click()
    expect(cut.locator(".sb-hold__live")).to_be_visible()
    cut.get_by_role("textbox", name="Lowest temperature").fill("-2")
    expect(cut.locator("[data-part=hold-said]")).to_have_text("Hold")
    core = step(page, "core").locator("[data-part=date]")
    expect(core).to_have_text("Wed 16 Dec 2026")
    cut.get_by_role("button", name="Go two days later").click()
    expect(cut.locator("[data-part=date]")).to_have_text("Fri 18 Dec 2026")
    expect(core).to_have_text("Fri 18 Dec 2026")
    expect(step(page, "soil-test").locator("[data-part=date]")).to_have_text(day(plan()["steps"], "soil-test"))
    expect(cut.locator("[data-part=hold-told]")).to_contain_text("Put off to Fri 18 Dec 2026.")
    expect(cut.locator("[data-part=hold-said]")).not_to_have_text("Hold")
    assert "on=2026-12-18" in (part(page, "maker").get_attribute("href") or "")
    assert step(page, "book-gear").locator("[data-part=hold]").is_hidden()


def day(steps: list[dict], id: str) -> str:
    found = date.fromisoformat(next(each["date"] for each in steps if each["id"] == id))
    return f"{found:%a} {found.day} {found:%b %Y}"


def test_the_client_link_starts_with_what_the_job_knows(reader: Callable[..., Reader]) -> None:
    page = opened(reader())
    for id in ("cut-down", "core"):
        step(page, id).locator("[data-act=done]").check()
        unfolded(page, id)
        step(page, id).locator("[data-act=day]").fill("2026-12-16")
        step(page, id).locator("[data-act=day]").dispatch_event("change")
    part(page, "maker").click()
    form = page.locator(".sb-client-link")
    expect(form.locator("[name=sheet]")).to_have_value("after-renovation")
    expect(form.locator("[name=on]")).to_have_value("2026-12-16")
    expect(form.locator("[name=grass]")).to_have_value("couch")
    expect(form.locator("[name=area]")).to_have_value("240 m2")
    assert form.locator("[name=done]:checked").evaluate_all("all => all.map(each => each.value).sort()") == ["core", "cut-down"]
    assert form.locator("[data-part=notice]").is_hidden()


def test_a_calendar_of_a_job_that_moved_moves_its_events(reader: Callable[..., Reader], tmp_path: Path) -> None:
    """RFC 5545: the same UID is the same event, and the later SEQUENCE and DTSTAMP count (3.8.4.7, 3.8.7.4). Page and terminal agree."""
    page = opened(reader(accept_downloads=True))
    first = events(saved(page, "calendar", tmp_path / "first.ics"))
    page.locator("[data-choice=on]").fill("2026-12-21")
    expect(step(page, "core").locator("[data-part=date]")).to_have_text("Mon 21 Dec 2026")
    page.reload()
    expect(step(page, "core").locator("[data-part=date]")).to_have_text("Mon 21 Dec 2026")
    moved = events(saved(page, "calendar", tmp_path / "moved.ics"))
    assert moved.keys() == first.keys()
    assert all(moved[uid]["sequence"] >= first[uid]["sequence"] > 0 and moved[uid]["dtstamp"].dt >= first[uid]["dtstamp"].dt for uid in first)
    core = next(uid for uid in first if uid.partition("@")[0].endswith("-core"))
    assert (moved[core]["dtstart"].dt - first[core]["dtstart"].dt).days == 5
    file = tmp_path / "terminal.ics"
    words = [*ON_THE_COMMAND_LINE, "--on", "2026-12-21", "--first-on", "2026-12-16", "--ics", str(file)]
    assert CliRunner().invoke(main, words).exit_code == 0
    told = events(file.read_bytes())
    assert {uid: each["dtstart"].dt for uid, each in told.items()} == {uid: each["dtstart"].dt for uid, each in moved.items()}
    assert all(told[uid]["sequence"] >= moved[uid]["sequence"] for uid in told)


def events(data: bytes) -> dict:
    found = {str(each["uid"]): each for each in Calendar.from_ical(data).walk("VEVENT")}
    assert found
    return found


def test_an_area_stays_as_it_was_typed(reader: Callable[..., Reader]) -> None:
    """2500 square feet are 232.26 m2: a foot is 0.3048 m exactly."""
    page = opened(reader())
    area = page.locator("[data-choice=area]")
    area.fill("2500 ft2")
    expect(part(page, "area")).to_contain_text("232.3 m²")
    page.reload()
    expect(part(page, "area")).to_contain_text("232.3 m²")
    expect(area).to_have_value("2500 ft2")
    page.evaluate("Swardbook.preferences.set('units', 'us')")
    area.fill("2500")
    page.evaluate("Swardbook.preferences.set('units', 'metric')")
    page.reload()
    expect(area).to_have_value("2500 ft2")


def minutes(clock: str) -> int:
    hours, rest = clock.split(":")
    return int(hours) * 60 + int(rest)


def test_the_sheet_for_the_day_goes_by_the_clock_and_the_crew_and_says_what_rain_stops(reader: Callable[..., Reader]) -> None:
    """A line ends when the next begins, four people barrow twice as fast as two, and what wet weather holds is what the hold rules hold."""
    page = opened(reader())
    part(page, "day-sheet-start").fill("06:00")
    part(page, "day-sheet-start").dispatch_event("change")
    lines = part(page, "day-sheet").locator("tr")
    expect(lines.first.locator("th")).to_contain_text("06:00")
    times = [text.replace("\u200b", "").split("–") for text in lines.locator("th").all_inner_texts()]
    assert len(times) > 10 and all(before[-1] == after[0] for before, after in pairwise(times))
    assert part(page, "day-sheet-end").inner_text() == times[-1][-1]
    steps = {step["title"]: step for step in plan("--crew", "4")["steps"] if step["date"] == "2026-12-16" and step["who"] == "hands"}
    titles = [text.split("\n")[0].partition(". ")[2] for text in lines.locator("td:nth-child(2)").all_inner_texts()]
    assert titles == list(steps)
    expect(lines.filter(has_text="Core the lawn").locator("td").first).to_contain_text("in all 3 passes.")
    expect(part(page, "day-sheet-crew-said")).to_have_text("Times are for 2 people.")
    part(page, "day-sheet-crew").fill("4")
    part(page, "day-sheet-crew").dispatch_event("change")
    expect(part(page, "day-sheet-crew-said")).to_have_text("Times are for 4 people.")
    took = {title: (lambda ends: minutes(ends[-1]) - minutes(ends[0]))(lines.nth(at).locator("th").inner_text().replace("\u200b", "").split("–")) for at, title in enumerate(titles)}
    # On the clock each end is rounded to a minute.
    assert not [title for title, each in steps.items() if each["counted"] and abs(took[title] - (each["minutes"] or 0)) > 1]
    wet = part(page, "day-sheet-wet").inner_text()
    number = {each["id"]: at + 1 for at, each in enumerate(steps.values())}
    assert f"On wet ground, do not begin {number['scarify']}, {number['scarify-across']}, {number['core']}, " in wet
    assert f"before line {number['cut-down']}. On a wet leaf, do not begin {number['cut-down']}, " in wet
    page.reload()
    expect(part(page, "day-sheet-crew")).to_have_value("4")


def test_what_an_inspection_adds_stands_once_in_its_place_and_says_what_to_do() -> None:
    """The fork in place of the corer, before the sand; a fence before the first machine; the sprinklers in the plan's own look at them."""
    found = plan("--inspection=access-width=600 mm", "--inspection=pets=live-out", "--inspection=sprinkler-evenness=40 %", "--inspection=sprinkler-heads=hidden")
    steps, before = found["steps"], plan()["steps"]
    titles = [each["title"] for each in steps]
    assert [each["title"] for each in steps if each["added"]] == ["Fence off a part for the animals", "Spike with a fork"]
    assert titles.index("Fence off a part for the animals") < titles.index("Cut down in stages")
    assert titles.index("Cut and clear once more") < titles.index("Spike with a fork") < titles.index("Carry the cores off") < titles.index("Top-dress with sand")
    for id in ("test-water", "mark"):
        plain, more = (next(each["say"] for each in all_ if each["id"] == id) for all_ in (before, steps))
        assert more.startswith(plain) and len(more) > len(plain), id
    # The corer is not charged, the fork once; nothing else is charged otherwise than without the inspection.
    times, plain = ({line["name"]: line["times"] for line in each["cost"]["lines"] if line["kind"] == "work"} for each in (found, plan()))
    names = our_book().tasks
    assert times == {name: number for name, number in plain.items() if name != names["core"].name} | {names["solid-tine"].name: 1}


def test_every_step_that_an_inspection_may_add_has_a_title_of_its_own() -> None:
    added = [outcome.add for question in our_book().inspection.questions for outcome in question.outcomes if outcome.add]
    names = {task.name for task in our_book().tasks.values()}
    assert added and not [each.say for each in added if not each.title or each.title in names]
