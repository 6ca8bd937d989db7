"""Two open tabs never lose each other's work, and each shows what the other did."""

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from tests.site.tabs import Tabs, address_of, kept

JOB = "jobs/index.html#v=1&part=all&plan=warm-below-ground&grass=couch&place=canberra&site=open&area=240&on=2026-12-16"
ENTRY = {"work": "feed", "date": "2026-03-01", "lawn": "TL-014", "area": "240", "product": "Made-up feed", "amount": "5", "nitrogen_percent": "21"}


@pytest.fixture(params=["file", pytest.param("http", marks=pytest.mark.soak)])
def tabs(request: pytest.FixtureRequest, browser: Browser, site: Path) -> Iterator[Tabs]:
    with address_of(site, request.param) as address:
        made = Tabs(browser, address)
        yield made
        made.context.close()
        assert made.errors == []


def part(page: Page, name: str) -> Locator:
    return page.locator(f".sb-job [data-part='{name}']")


def step(page: Page, id: str) -> Locator:
    return page.locator(f"[data-step='{id}']")


def put_off(page: Page, id: str, to: str) -> None:
    step(page, id).locator("[data-part=card]").evaluate("card => { card.open = true; }")
    step(page, id).locator("[data-act=day]").fill(to)
    step(page, id).locator("[data-act=day]").dispatch_event("change")


def named(page: Page, name: str) -> None:
    part(page, "name").fill(name)
    part(page, "name").dispatch_event("change")


def test_jobs_of_two_tabs_stand_side_by_side(tabs: Tabs, tmp_path: Path) -> None:
    one, two = tabs.two(JOB)
    for page in (one, two):
        expect(step(page, "core").locator("[data-part=controls]")).to_be_visible()
    named(one, "First")  # each adds a job of its own
    named(two, "Second")
    for page in (one, two):
        expect(part(page, "kept").locator("option")).to_have_count(2)
    part(two, "kept").select_option(index=0)  # now both have the same one open
    expect(part(two, "name")).to_have_value("First")
    step(one, "soil-test").locator("[data-act=done]").check()  # ticked here, put off and renamed there
    put_off(two, "core", "2026-12-18")
    named(two, "First lawn")
    expect(step(one, "core").locator("[data-part=date]")).to_have_text("Fri 18 Dec 2026")
    expect(part(one, "name")).to_have_value("First lawn")
    expect(step(two, "soil-test").locator("[data-act=done]")).to_be_checked()
    part(one, "name").focus()  # what is being typed stays under the finger
    part(one, "name").fill("First lawn, back")
    step(two, "core").locator("[data-act=done]").check()
    expect(step(one, "core").locator("[data-act=done]")).to_be_checked()
    expect(part(one, "name")).to_be_focused()
    expect(part(one, "name")).to_have_value("First lawn, back")
    part(one, "name").dispatch_event("change")
    expect(part(two, "name")).to_have_value("First lawn, back")
    file = tmp_path / "jobs.json"
    file.write_text(json.dumps({"v": 1, "jobs": [{**kept(one, "jobs")[0], "name": "From a file"}]}), encoding="utf-8")
    part(one, "take").set_input_files(file)  # taken in here, changed there
    put_off(two, "core", "2026-12-20")
    expect(part(two, "kept").locator("option")).to_have_count(3)
    assert [each["name"] for each in kept(two, "jobs")] == ["First lawn, back", "Second", "From a file"]
    one.reload()
    expect(part(one, "name")).to_have_value("From a file")
    two.reload()
    expect(part(two, "name")).to_have_value("First lawn, back")
    expect(step(two, "soil-test").locator("[data-act=done]")).to_be_checked()


def test_a_job_that_another_tab_took_off_is_neither_lost_nor_put_back_unasked(tabs: Tabs) -> None:
    one, two = tabs.two(JOB)
    named(one, "First")
    expect(part(two, "kept").locator("option")).to_have_count(2)
    part(two, "kept").select_option(index=0)
    expect(part(two, "name")).to_have_value("First")
    one.locator("[data-act=forget]").click()
    notice = two.locator(".sb-kept--now")
    expect(notice).to_contain_text("taken off the list in another tab")
    step(two, "core").locator("[data-act=done]").check()
    assert kept(two, "jobs") == []
    notice.get_by_role("button", name="Keep it as a new job").click()
    expect(notice).to_be_hidden()
    assert [(each["name"], list(each["done"])) for each in kept(one, "jobs")] == [("First", ["core"])]
    one.locator("[data-act=undo]").click()  # the list moved meanwhile
    expect(part(two, "kept").locator("option")).to_have_count(2)
    assert sorted(list(each["done"]) for each in kept(two, "jobs")) == [[], ["core"]]


def test_answers_of_an_inspection_come_together(tabs: Tabs) -> None:
    one, two = tabs.two("inspection.html")

    def measure(page: Page, id: str) -> Locator:
        return page.locator(f"[data-question={id}] .sb-inspection__measure")

    measure(one, "soil-ph").fill("5")
    measure(two, "thatch-depth").fill("60 mm")
    two.locator("[data-question=pets] input[value=live-out]").check()
    expect(measure(two, "soil-ph")).to_have_value("5")
    expect(measure(one, "thatch-depth")).to_have_value("60 mm")
    expect(one.locator("[data-question=pets] input[value=live-out]")).to_be_checked()
    measure(one, "soil-ph").focus()  # shown, but not being changed: what the other tab says counts
    measure(two, "soil-ph").fill("6")
    expect(measure(one, "soil-ph")).to_have_value("5")
    one.locator("[data-tick=photo-1]").check()
    expect(measure(one, "soil-ph")).to_have_value("6")
    one.locator("[data-part=empty]").click()
    expect(measure(two, "thatch-depth")).to_have_value("")
    measure(two, "sun-hours").fill("3 h")
    one.locator("[data-part=empty]").click()  # bring back
    expect(measure(two, "thatch-depth")).to_have_value("60 mm")
    expect(measure(one, "sun-hours")).to_have_value("3 h")


def put(page: Page, **entry: str) -> None:
    for id, value in entry.items():
        field = page.locator(f"[data-column={id}] [data-entry]")
        if field.evaluate("each => each.tagName") == "SELECT":
            field.select_option(value)
        else:
            field.fill(value)
    page.locator("[data-part=save]").click()


def test_entries_of_two_tabs_stand_in_one_record(tabs: Tabs) -> None:
    one, two = tabs.two("record.html")
    put(one, **ENTRY)
    put(two, **ENTRY | {"date": "2026-04-01", "product": "Another feed"})
    for page in (one, two):
        expect(page.locator(".sb-work-record__row")).to_have_count(2)
    newest = [page.locator(".sb-work-record__row").first for page in (one, two)]
    for row in newest:  # both change the same entry
        row.get_by_role("button", name="Change").click()
    put(one, area="300")
    expect(newest[1]).to_contain_text("300 m")
    put(two, remarks="Dry")
    expect(newest[0]).to_contain_text("Dry")
    row = next(each for each in kept(one, "record") if each["date"] == "2026-04-01")
    assert (row["area"], row["remarks"], row["product"]) == ("300 m2", "Dry", "Another feed")
    newest[1].get_by_role("button", name="Change").click()
    two.locator("[data-column=remarks] [data-entry]").fill("Wet")
    newest[0].get_by_role("button", name="Take off").click()
    notice = two.locator(".sb-kept--now")
    expect(notice).to_contain_text("taken off the record in another tab")
    expect(two.locator("[data-column=remarks] [data-entry]")).to_have_value("Wet")
    notice.get_by_role("button", name="Keep it as a new entry").click()
    one.get_by_role("button", name="Undo").click()
    expect(two.locator(".sb-work-record__row")).to_have_count(3)
    assert sorted(each.get("remarks", "") for each in kept(one, "record")) == ["", "Dry", "Wet"]


def test_pieces_of_two_tabs_make_one_lawn(tabs: Tabs) -> None:
    """12 x 8 is 96 m2, 5 x 4 is 20, 3 x 2 is 6: 122 m2."""
    one, two = tabs.two("calculators/area-rectangle.html")

    def add(page: Page, length: str, width: str) -> None:
        page.locator("[data-input=length] .sb-calculator__input").fill(length)
        page.locator("[data-input=width] .sb-calculator__input").fill(width)
        page.get_by_role("button", name="Add to the lawn").click()

    add(one, "12", "8")
    add(two, "5", "4")
    for page in (one, two):
        expect(page.locator(".sb-lawn-pieces__piece")).to_have_count(2)
    one.get_by_role("button", name="Remove piece 1").click()
    add(two, "3", "2")  # the list moves before the piece comes back
    one.get_by_role("button", name="Put it back").click()
    expect(two.locator("[data-part=figure]")).to_have_text("122 m²")
    assert [each["area"] for each in kept(two, "lawn")] == [96, 20, 6]
    expect(two.locator("[data-input=length] .sb-calculator__input")).to_have_value("3")
    two.get_by_role("button", name="Start a new lawn").click()
    add(one, "3", "2")
    two.get_by_role("button", name="Put it back").click()
    expect(one.locator("[data-part=figure]")).to_have_text("128 m²")


# Both tabs write at the same instants, before either can have heard of the other.
AT_ONCE = """([name, start, rounds]) => new Promise(done => {
  const rows = Swardbook.kept('inspection');
  for (let round = 0; round < rounds; round += 1) {
    setTimeout(() => {
      const before = rows.get('sheet') || {}, after = structuredClone(before);
      (after.answers = after.answers || {})[name + '-' + round] = String(round);
      if (!rows.change('sheet', before, after)) { rows.add(after, 'sheet'); }
    }, start + round * 60 - Date.now());
  }
  setTimeout(done, start + rounds * 60 + 500 - Date.now());
})"""


@pytest.mark.parametrize("tabs", ["file", "http"], indirect=True)
def test_changes_of_one_moment_are_all_kept(tabs: Tabs) -> None:
    one, two = tabs.two("inspection.html")
    rounds, start = 30, one.evaluate("() => Date.now()") + 400
    for page, name in ((one, "left"), (two, "right")):
        page.evaluate(f"given => {{ window.running = ({AT_ONCE})(given); }}", [name, start, rounds])
    for page in (one, two):
        page.evaluate("() => window.running")
    answers = kept(one, "inspection")[0]["answers"]
    assert len(answers) == 2 * rounds, sorted({f"{side}-{round}" for side in ("left", "right") for round in range(rounds)} - answers.keys())


@pytest.mark.parametrize("tabs", ["file", "http"], indirect=True)
def test_the_units_of_one_tab_are_those_of_the_other(tabs: Tabs) -> None:
    one, two = tabs.two("record.html")
    one.evaluate("() => Swardbook.preferences.set('units', 'us')")
    expect(two.locator("html")).to_have_attribute("data-units", "us")
