"""A year of visits in the browser: planned as the command plans it, kept with the lawn, followed from visit to visit, and told on the first page."""

import json
import random
from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path

import icalendar
from playwright.sync_api import Page, expect

from generator.book.lists.lawn_file import read_lawn_file
from generator.jobs.planned_year import AskedYear, planned_year
from generator.jobs.programme import visit_day
from generator.jobs.programme_works import year_of_work
from generator.jobs.visit_grouping import Movable, best_visits, nearest
from generator.season.task_schedule import due_weeks, weekly_quantities
from tests.asking import ask
from tests.our_book import book, seasons
from tests.site.reader import Reader

LAWN = {"code": "TL-014", "grass": "couch", "place": "sydney", "site": "open", "area": "240 m2", "facts": {}, "machines": []}
KEEP = "(row) => { Swardbook.lawns.choose(Swardbook.kept('lawns').add(row)); }"
GROUPED = """(cases) => cases.map(([works, most]) => {
    const G = Swardbook.visitGroups, visits = G.bestVisits(works, most);
    return [visits, works.map(work => G.nearest(work, visits, 52))];
})"""
DAYS = "(cases) => cases.map(([week, start]) => Swardbook.dates.iso(Swardbook.visitGroups.visitDay(week, Swardbook.dates.fromIso(start))))"
PLANNED = """async (cases) => {
    const targets = JSON.parse(document.querySelector('[data-component=programme]').dataset.targets), out = [];
    for (const [lawn, asked] of cases) {
        await Swardbook.programmeOut.ready(lawn, targets);
        const found = Swardbook.programmeOut.planned(lawn, asked), iso = Swardbook.dates.iso;
        out.push({
            works: found.works.map(each => [each.task, each.rule, each.week]), renovation: found.renovation && iso(found.renovation.day),
            visits: found.visits.map(each => [iso(each.day), each.season, each.tasks, each.placed.map(one => one.moved), Math.round(each.price.minutes * 1e6), each.price.total, each.price.tax]),
            own: found.own.map(each => [each.task, each.week]), cuts: found.cuts, sums: [found.price.before_tax, found.price.tax, found.price.total],
            site: Swardbook.programmeOut.dataOf(lawn).site,
        });
    }
    return out;
}"""


def opened(reader: Callable[..., Reader], path: str = "programme.html") -> Page:
    page = reader(viewport={"width": 360, "height": 740}, accept_downloads=True).open("names.html")
    page.clock.install(time="2026-12-01T08:00:00")
    page.goto(page.url.replace("names.html", path))
    return page


def test_the_page_groups_dates_and_prices_as_the_command_does(reader: Callable[..., Reader]) -> None:
    page = opened(reader)
    chance = random.Random(20261201)
    cases = [
        ([{"week": chance.randrange(52), "earlier": chance.randrange(7), "later": chance.randrange(7)} for _ in range(chance.randrange(13))], chance.randrange(1, 13))
        for _ in range(60)
    ]
    for (works, most), (visits, near) in zip(cases, ask(page, GROUPED, cases), strict=True):
        movable = [Movable(**each) for each in works]
        assert tuple(visits) == best_visits(movable, most)[-1]
        assert [tuple(each) if each else None for each in near] == [nearest(each, visits) for each in movable]
    days = [(chance.randrange(52), (date(2023, 1, 1) + timedelta(chance.randrange(4000))).isoformat()) for _ in range(200)]
    assert ask(page, DAYS, days) == [visit_day(week, date.fromisoformat(start)).isoformat() for week, start in days]

    every = [each for each in book().tasks if each not in {"scarify"}]
    asked = [
        ("couch", "sydney", "open", "240 m2", 6, "2026-12-01", ["feed", "solid-tine", "soil-test", "spray-out", "vertical-mow"], True),
        ("kikuyu", "canberra", "hollow", "87.5 m2", 4, "2027-07-09", every, False),
        ("tall-fescue", "london-heathrow", "open", "1333 m2", 12, "2028-02-29", every, True),
        ("couch", "darwin", "open", "240 m2", 3, "2026-12-31", every, False),
    ]
    lawns = [
        ({"code": "A", "grass": grass, "place": place, "site": site, "area": area}, {"wanted": wanted, "start": start, "tasks": tasks, "mowing": mowing})
        for grass, place, site, area, wanted, start, tasks, mowing in asked
    ]
    for (grass, place, site, area, wanted, start, tasks, mowing), there in zip(asked, ask(page, PLANNED, lawns), strict=True):
        left = tuple(each for each in book().tasks if each not in tasks)
        here = planned_year(seasons(), AskedYear(
            grass, place, float(area.split()[0]), wanted, date.fromisoformat(start), site, tuple(tasks), left, mowing,
        ))
        assert here.price is not None
        assert there["visits"] == [
            [each.day.isoformat(), each.season, list(each.tasks), [one.moved_weeks for one in each.placed], round((each.price.minutes or 0) * 1e6), each.price.total, each.price.tax]
            for each in here.visits if each.price
        ]
        assert there["own"] == [[each.task, each.week] for each in here.programme.own]
        assert there["renovation"] == (here.renovation_day.isoformat() if here.renovation_day else None)
        assert (there["cuts"], there["sums"]) == (here.cuts, [here.price.before_tax, here.price.tax, here.price.total])
        # The weeks of the page are those of the calendars, from which it was made.
        season = seasons().season(grass, place, site)
        quantities = weekly_quantities(season)
        year = year_of_work(book(), book().grasses[grass], season)
        assert {tuple(each) for each in there["works"]} == {(each.task, each.rule, each.week) for each in year.works}
        for task, rule, week in there["works"]:
            assert week + 1 in {each.week for each in due_weeks(book().tasks[task].due[rule], quantities)}


def test_a_year_is_chosen_kept_followed_and_told_today(reader: Callable[..., Reader], tmp_path: Path) -> None:
    page = opened(reader)
    expect(page.locator(".sb-visits [data-part=none]")).to_be_visible()
    expect(page.locator("[data-part=example]")).to_contain_text("Feed")
    page.evaluate(KEEP, LAWN)
    expect(page.locator("[data-part=example]")).to_be_hidden()
    page.locator("[data-part=wanted]").select_option("6")
    page.locator("input[value=spray-out]").check()
    page.locator("[data-part=mowing]").check()
    lines = page.locator("[data-part=list] li")
    expect(lines).to_have_count(6)
    expect(lines.first).to_contain_text("Thu 24 Dec 2026 Feed 13 min, 104.50")
    expect(page.locator("[data-part=beside]")).to_contain_text("a job of its own")
    expect(page.locator("[data-part=sums]")).to_contain_text("Mowing between the visits: 32 times in the year")
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    total = page.locator("[data-part=sums] td").last.inner_text()
    page.locator("[data-act=keep]").click()
    expect(page.locator("[data-part=kept-sum]")).to_have_text(f"{total} AUD in the year")
    # What was agreed is a row of the lawn, in whole cents, and stands after a reload.
    page.reload()
    expect(page.locator("[data-part=kept-sum]")).to_have_text(f"{total} AUD in the year")
    quote = page.evaluate("Swardbook.lawns.chosen().programme.quote")
    assert round(float(total) * 100) == quote["total"] == sum(each["amount"] + each["tax"] for each in quote["lines"].values())
    assert page.evaluate("document.documentElement.scrollWidth") <= 360

    # The client's copy has days and sums, and nothing of our own.
    page.locator("[data-act=sheet]").click()
    text = page.locator("[data-part=text]")
    expect(page.locator("[data-part=paper]")).to_contain_text("Thu 24 Dec 2026: Feed")
    told = text.input_value()
    assert f"To pay in the year, AUD: {total}" in told
    assert not [word for word in (" min", "hour", "margin", "undefined", "NaN") if word in told]
    page.locator("[data-act=close]").click()
    with page.expect_download() as download:
        page.locator("[data-act=calendar]").click()
    events = icalendar.Calendar.from_ical(Path(download.value.path()).read_bytes()).walk("VEVENT")
    assert date(2026, 12, 24) in {event.decoded("dtstart") for event in events}
    assert len(events) == 7

    # On the day, the first page asks what the day is like, and answers for the visit's work.
    page.clock.set_fixed_time("2026-12-24T07:00:00")
    page.goto(page.url.replace("programme.html", "index.html"))
    due = page.locator(".sb-today [data-part=due-list]")
    expect(due).to_contain_text("TL-014 Visit: Feed")
    expect(due).to_contain_text("Feed: Not known yet.")
    page.locator(".sb-today summary", has_text="What the day is like").click()
    page.locator(".sb-today input[value=wet]").first.check()
    expect(due).to_contain_text("Feed: Hold")
    due.get_by_role("link").click()

    # Done makes an entry of the record; undone takes it back; done again on its day it stays, and Today has it no more.
    visit = page.locator("[data-visit=visit-1]")
    visit.get_by_role("button", name="Done").click()
    expect(page.locator("[data-part=told]")).to_contain_text("An entry is in the work record.")
    [entry] = page.evaluate("Swardbook.kept('record').all().map(each => each.row)")
    assert (entry["work"], entry["date"], entry["lawn"], entry["amount"], entry["rate"]) == ("feed", "2026-12-24", "TL-014", "3.43 kg", "1.43 kg/100 m2")
    page.locator("[data-act=undo]").click()
    assert page.evaluate("Swardbook.kept('record').all().length") == 0
    visit.get_by_role("button", name="Done").click()
    expect(visit).to_have_attribute("data-state", "done")
    # Another day for one visit moves no other; a visit that is skipped is not owed to anybody's day.
    days = "Object.values(Swardbook.lawns.chosen().programme.visits).map(each => each.put || each.on)"
    before = page.evaluate(days)
    second = page.locator("[data-visit=visit-2]")
    second.locator("summary").click()
    second.locator("input[type=date]").fill("2026-12-27")
    second.get_by_role("button", name="Move it").click()
    after = page.evaluate(days)
    assert [new for old, new in zip(before, after, strict=True) if old != new] == ["2026-12-27"]
    third = page.locator("[data-visit=visit-3]")
    third.locator("summary").click()
    third.get_by_role("button", name="Skip it").click()
    expect(third).to_have_attribute("data-state", "skipped")
    page.goto(page.url.replace("programme.html", "index.html"))
    expect(page.locator(".sb-today [data-part=soon-list]")).to_contain_text("TL-014 Visit:")
    expect(due).not_to_contain_text("TL-014")

    # The lawn's form leaves its year alone, and the file carries it to the command line.
    page.goto(page.url.replace("index.html", "lawns.html"))
    expect(page.locator("#lawn-TL-014")).to_contain_text("A year of visits: kept")
    page.locator("#lawn-TL-014").get_by_role("button", name="Change").click()
    page.locator("#lawns-town").evaluate("each => { each.closest('details').open = true; }")
    page.locator("#lawns-town").fill("North")
    page.locator(".sb-lawns__form [data-part=save]").click()
    with page.expect_download() as download:
        page.locator("[data-component=lawn-record] [data-part=export]").click()
    file = tmp_path / "lawns.json"
    file.write_text(Path(download.value.path()).read_text(encoding="utf-8"), encoding="utf-8")
    [kept], findings = read_lawn_file(file)
    assert not findings
    assert kept.lawn.programme is not None and kept.lawn.programme.quote is not None
    assert kept.lawn.town == "North"
    assert kept.lawn.programme.quote.total == quote["total"]
    assert kept.lawn.programme.visits["visit-1"].done == "2026-12-24"
    # Taken in where the lawn is not, it brings its year along.
    page.evaluate("() => Swardbook.kept('lawns').all().forEach(each => Swardbook.kept('lawns').remove(each.id))")
    page.locator("#lawns-file").set_input_files(file)
    expect(page.locator(".sb-lawns__told")).to_contain_text("1 new lawn")
    assert json.loads(page.evaluate("JSON.stringify(Swardbook.lawns.byCode('TL-014').programme.quote.total)")) == quote["total"]
