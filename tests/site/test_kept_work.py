"""A reader's work when the device does not keep it, and when what it kept is damaged, of before, or of another book."""

import json
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.site.tabs import FULL, NEVER_SHOWN, Tabs, all_kept, kept, key_of, plant
from tests.site.test_two_tabs import ENTRY, JOB, named, part, put, put_off, step
from tests.slices import first

BLOCKED = "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('blocked', 'SecurityError'); } });"
REFUSED = "Storage.prototype.setItem = function () { throw new Error('refused'); };"
PIECE = {"name": "Rectangle", "sizes": "12 m × 8 m", "area": 96, "hole": False}
KEPT_JOB = {
    "plan": "warm-below-ground", "grass": "couch", "place": "canberra", "site": "open", "area": 240, "on": "2026-12-16", "name": "A", "start": "07:30",
    "typed": "240 m2", "key": "", "visit": {}, "done": {"soil-test": "2026-12-01"}, "put": {}, "rain": {}, "without": [],
}  # fmt: skip
YEAR = {
    "wanted": 6, "start": "2026-11-28", "tasks": ["feed", "soil-test"], "cuts": 30, "visits": {
        "visit-1": {"on": "2027-01-01", "tasks": ["feed"], "done": "2027-01-02"}, "visit-2": {"on": "2027-09-24", "tasks": ["soil-test"], "put": "2027-09-27"},
        "renovation": {"on": "2027-11-19", "plan": "warm-below-ground"},
    },
    "quote": {
        "on": "2026-11-28", "until": "2026-12-28", "currency": "AUD", "rate": 0.1, "inside": False, "before_tax": 19000, "tax": 1900, "total": 20900, "area": 240,
        "lines": {"visit-1": {"name": "Feed", "amount": 9500, "tax": 950}, "visit-2": {"name": "Test the soil", "amount": 9500, "tax": 950}},
    },
}  # fmt: skip
LAWN = {
    "code": "TL-014", "grass": "kikuyu", "place": "canberra", "site": "hollow", "area": "240 m2", "facts": {"slope": "5 %"}, "machines": [], "pieces": [PIECE],
    "programme": YEAR, "seen": {"soil": "14 °C", "soil_depth": "100 mm", "soil_on": "2026-09-20", "green_up": "2026-10-02", "last_frost": "2026-09-30"},
}  # fmt: skip
TODAY = "2026-11-28"
# As editions before kept them: each list whole, under one key.
BEFORE = {
    "jobs": {"v": 1, "chosen": 1, "jobs": [KEPT_JOB, {**KEPT_JOB, "name": "B"}, {**KEPT_JOB, "name": "B"}]},
    "record": {"v": 1, "entries": [ENTRY, {**ENTRY, "date": "2026-04-01"}]},
    "lawn": {"v": 1, "pieces": [PIECE, {**PIECE, "area": 20}]},
    "inspection": {"v": 1, "head": {"lawn": "K-17"}, "answers": {"soil-ph": "5", "pets": "live-out"}, "ticks": {"photo-1": "yes"}},
    "holds": {"v": 1, "days": {TODAY: {"at": "06:10", "all": {"soil": "wet"}, "tasks": {}}, "2026-11-29": {"at": "06:10", "all": {"leaf": "dry"}, "tasks": {}}}},
}
PAGES = {"jobs": JOB, "record": "record.html", "lawn": "calculators/area-rectangle.html", "lawns": "lawns.html", "inspection": "inspection.html", "holds": "tasks/core.html"}


@pytest.fixture
def tabs(browser: Browser, site: Path) -> Iterator[Tabs]:
    made = Tabs(browser, site.as_uri(), viewport={"width": 360, "height": 740})
    yield made
    made.context.close()
    assert [each for each in made.errors if "blocked" not in each] == []


def add_a_piece(page: Page) -> None:
    page.get_by_role("button", name="Add to the lawn").click()


def say_wet(page: Page) -> None:
    page.locator(".sb-hold input[value=wet]").last.check()


def keep_a_lawn(page: Page) -> None:
    page.locator("#lawns-code").fill(f"N-{page.locator('.sb-lawns__lawn').count()}")
    page.locator("[data-component=lawn-record] [data-part=save]").click()


WORK: dict[str, Callable[[Page], Any]] = {
    "jobs": lambda page: step(page, "core").locator("[data-act=done]").check(),
    "record": lambda page: put(page, **ENTRY),
    "lawn": add_a_piece,
    "lawns": keep_a_lawn,
    "inspection": lambda page: page.locator("[data-question=pets] input[value=live-out]").check(),
    "holds": say_wet,
}


def of_all(*collections: str, among: Iterable[str] = PAGES) -> list[Any]:
    """These at each run; the others, which the same store keeps, in the long one."""
    return first(len(collections), [*collections, *(each for each in among if each not in collections)])


SHOWN = {"lawns": "N-0", "jobs": "core", "record": "Made-up feed", "lawn": "Rectangle", "inspection": "Live on this lawn", "holds": "wet"}


@pytest.mark.parametrize("collection", of_all("jobs"))
def test_no_room_is_told_at_once_and_the_work_stays_until_there_is(tabs: Tabs, collection: str) -> None:
    page = tabs.open(PAGES[collection])
    notice = page.locator(".sb-kept--now").last
    expect(notice).to_be_hidden()
    page.evaluate("() => { window.setItem_ = Storage.prototype.setItem; }")
    page.evaluate(FULL)
    WORK[collection](page)
    expect(notice).to_contain_text("There is no room left on this device to keep this.")
    expect(notice).to_be_in_viewport(ratio=1)
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    with page.expect_download() as waiting:
        notice.get_by_role("button", name="Save it as a file").click()
    assert SHOWN[collection] in Path(waiting.value.path()).read_text(encoding="utf-8")
    before = kept(page, collection)
    assert len(before) == 1
    page.evaluate("() => { Storage.prototype.setItem = window.setItem_; }")
    notice.get_by_role("button", name="Try again").click()
    expect(notice).to_contain_text("It is kept now.")
    page.reload()
    assert kept(page, collection) == before


@pytest.mark.parametrize(("collection", "script"), first(1, [
    ("jobs", BLOCKED), ("inspection", REFUSED), ("record", REFUSED), ("lawn", BLOCKED), ("holds", BLOCKED), ("jobs", REFUSED), ("inspection", BLOCKED),
]), ids=["jobs blocked", "inspection refused", "record refused", "lawn blocked", "holds blocked", "jobs refused", "inspection blocked"])  # fmt: skip
def test_a_browser_that_keeps_nothing_says_so_and_the_page_works(tabs: Tabs, collection: str, script: str) -> None:
    page = tabs.open(PAGES[collection], before=script)
    WORK[collection](page)
    expect(page.locator(".sb-kept--now").last).to_contain_text("This browser keeps nothing for this page.")
    expect(page.locator(".sb-kept--now").last).to_be_in_viewport(ratio=1)
    assert len(kept(page, collection)) == 1


def test_only_who_has_work_that_is_not_kept_is_asked_before_leaving(tabs: Tabs) -> None:
    asked: list[str] = []
    page = tabs.open("record.html")
    page.on("dialog", lambda dialog: asked.append(dialog.type))
    put(page, **ENTRY)
    page.reload()
    assert asked == []
    page.evaluate(FULL)
    put(page, **ENTRY)
    page.reload()
    assert asked == ["beforeunload"]


def test_work_waits_while_another_tab_makes_room(tabs: Tabs) -> None:
    """Five million characters are what this browser gives."""
    one, two = tabs.two("record.html")
    two.evaluate("() => { for (let size = 2 ** 22; size >= 1; size /= 2) { try { localStorage.setItem('filler' + size, 'x'.repeat(size)); } catch (error) { } } }")
    put(one, **ENTRY)
    notice = one.locator(".sb-kept--now")
    expect(notice).to_contain_text("There is no room left")
    expect(one.locator(".sb-work-record__row")).to_have_count(1)
    two.evaluate("() => Object.keys(localStorage).filter(each => each.startsWith('filler')).forEach(each => localStorage.removeItem(each))")
    expect(notice).to_be_hidden()
    expect(two.locator(".sb-work-record__row")).to_have_count(1)


@pytest.mark.parametrize("collection", of_all("jobs", "inspection", among=BEFORE))
def test_what_an_edition_of_before_kept_is_taken_over_once(tabs: Tabs, collection: str) -> None:
    blank, path = tabs.open("404.html"), PAGES[collection].partition("#")[0]
    plant(blank, {key_of(collection): json.dumps(BEFORE[collection])})
    # Killed before the old key was gone, and two tabs at once: nothing is lost and nothing is there twice.
    cut_off = tabs.open(path, before="Storage.prototype.removeItem = function () { throw new Error('killed'); };")
    cut_off.close(run_before_unload=False)
    one, two = tabs.two(path)
    rows = kept(two, collection)
    wanted: Any = BEFORE[collection]
    wanted = wanted.get("jobs") or wanted.get("entries") or wanted.get("pieces") or wanted.get("days")
    if collection == "inspection":
        wanted = [{name: value for name, value in BEFORE["inspection"].items() if name != "v"}]
    assert rows == (list(wanted.values()) if collection == "holds" else wanted)
    assert key_of(collection) not in all_kept(one)
    assert not [key for key in all_kept(one) if key.startswith("swardbook.aside.")]
    if collection == "jobs":
        expect(part(two, "name")).to_have_value("B")  # the one that was chosen


def test_a_job_kept_before_words_changed_shows_and_changes_as_it_was(tabs: Tabs) -> None:
    old = {**KEPT_JOB, "visit": {"sun-hours": "3 h"}, "done": {"next-visit": "2027-01-15"}, "put": {"visit-sun-hours-0": "2026-12-20"}}
    page = tabs.open("404.html")
    plant(page, {"swardbook.jobs": json.dumps({"v": 1, "jobs": [old]})})
    page.goto(f"{tabs.address}/{JOB}")
    expect(step(page, "next-date").locator("[data-act=done]")).to_be_checked()
    expect(part(page, "inspection-said")).to_contain_text("Looked at: 1 of")
    step(page, "next-date").locator("[data-act=done]").uncheck()
    expect(step(page, "next-date").locator("[data-act=done]")).not_to_be_checked()
    row = kept(page, "jobs")[0]
    assert row["done"] == {} and row["put"] == {"found-sun-hours-0": "2026-12-20"} and row["visit"] == {"sun-hours": "3 h"}


def test_a_job_s_file_says_inspection_and_one_of_before_is_read(tabs: Tabs, tmp_path: Path) -> None:
    page, file = tabs.open(JOB), tmp_path / "jobs.json"
    file.write_text(json.dumps({"v": 1, "jobs": [{**KEPT_JOB, "visit": {"sun-hours": "3 h"}}]}), encoding="utf-8")
    part(page, "take").set_input_files(file)
    expect(part(page, "inspection-said")).to_contain_text("Looked at: 1 of")
    with page.expect_download() as waiting:
        page.locator("[data-act=export]").click()
    job = json.loads(Path(waiting.value.path()).read_text(encoding="utf-8"))["jobs"][0]
    assert job["inspection"] == {"sun-hours": "3 h"} and "visit" not in job
    file.write_text(json.dumps({"v": 1, "jobs": [{**job, "name": "Again"}]}), encoding="utf-8")
    part(page, "take").set_input_files(file)
    expect(part(page, "name")).to_have_value("Again")
    expect(part(page, "inspection-said")).to_contain_text("Looked at: 1 of")
    expect(part(page, "told")).to_have_text("1 job taken from the file.")


# {collection: (what is kept whole, how many rows of it are sound)}
DAMAGED = {
    "jobs": ('{"v": 1, "jobs": [null, ' + json.dumps(KEPT_JOB) + ', {"on": "2026-02-30"}]}', 1),
    "record": ('{"v": 1, "entries": [{"work": "feed", "date": 7}, ' + json.dumps(ENTRY) + "]}", 1),
    "lawn": (json.dumps({"v": 1, "pieces": [PIECE, {**PIECE, "area": "96"}, {**PIECE, "area": -1}]}), 1),
    "inspection": (json.dumps({"v": 1, "answers": {"soil-ph": 5, "pets": "live-out", "sun-hours": "x" * 99}}), 1),
    "holds": (json.dumps({"v": 1, "days": {TODAY: {"at": "06:10", "all": {"soil": "wet", "low": 3}}, "yesterday": {}}}), 1),
}


@pytest.mark.parametrize("collection", of_all("record"))
def test_damaged_work_is_set_aside_as_it_was_and_the_rest_is_there(tabs: Tabs, collection: str) -> None:
    text, sound = DAMAGED[collection]
    page = tabs.open(PAGES[collection])
    plant(page, {key_of(collection): text})
    page.reload()
    assert len(kept(page, collection)) == sound
    aside = page.locator(".sb-kept--aside")
    expect(aside).to_contain_text("could not be read")
    stands = {key: each for key, each in all_kept(page).items() if key.startswith("swardbook.aside.")}
    assert stands == {f"swardbook.aside.{key_of(collection)}.1": text}
    with page.expect_download() as waiting:
        aside.get_by_role("button", name="Save what was set aside").click()
    assert Path(waiting.value.path()).read_text(encoding="utf-8") == text
    plant(page, {key_of(collection): text[:-3]})  # damaged again: the first copy stands
    page.reload()
    stands = {key: each for key, each in all_kept(page).items() if key.startswith("swardbook.aside.")}
    assert stands == {f"swardbook.aside.{key_of(collection)}.1": text, f"swardbook.aside.{key_of(collection)}.2": text[:-3]}
    aside.get_by_role("button", name="Delete it").first.click()
    aside.get_by_role("button", name="Bring it back").click()
    assert stands.items() <= all_kept(page).items()
    aside.get_by_role("button", name="Delete it").first.click()
    aside.get_by_role("button", name="Delete it").first.click()
    page.reload()
    expect(aside).to_be_hidden()
    assert len(kept(page, collection)) == sound


def test_what_finds_no_room_aside_is_left_alone(tabs: Tabs) -> None:
    page = tabs.open("404.html")
    damaged = {"swardbook.visit": "{", "swardbook.visit.sheet": '{"v": 1, "row": 7}', "swardbook.record.x": "nonsense"}
    plant(page, damaged)
    for collection in ("inspection", "record"):
        page = tabs.open(PAGES[collection], before=REFUSED)
        WORK[collection](page)
        expect(page.locator(".sb-kept--aside")).to_contain_text("could not be read")
        assert damaged.items() <= all_kept(page).items()


def test_a_later_edition_s_rows_are_left_where_they_are(tabs: Tabs) -> None:
    page = tabs.open("record.html")
    later = {"swardbook.record.abc": '{"v": 2, "row": "of a kind not known yet"}'}
    plant(page, later)
    page.reload()
    put(page, **ENTRY)
    expect(page.locator(".sb-kept--aside").get_by_role("button", name="Save what was set aside")).to_be_visible()
    assert page.locator(".sb-kept--aside").get_by_role("button", name="Delete it").count() == 0
    assert later.items() <= all_kept(page).items()


def test_what_another_book_kept_stays_as_it_is(tabs: Tabs) -> None:
    page = tabs.open(JOB)
    strange = {**KEPT_JOB, "name": "Of elsewhere", "grass": "moon-grass", "mower": {"of": "a field not known here"}}
    plant(page, {"swardbook.jobs": json.dumps({"v": 1, "jobs": [strange, {**KEPT_JOB, "site": "no-such"}, {**KEPT_JOB, "grass": "constructor"}]})})
    plant(page, {"swardbook.visit": json.dumps({"v": 1, "answers": {"a-question-of-elsewhere": "yes", "soil-ph": "5"}})})
    plant(page, {"swardbook.record": json.dumps({"v": 1, "entries": [{**ENTRY, "work": "comb", "grass": "moon-grass", "machine": "Big one"}]})})
    plant(page, {"swardbook.holds": json.dumps({"v": 1, "days": {"2020-01-01": {"at": "", "all": {"moonlight": "full"}}, "2020-01-02": {"at": "", "all": {"soil": "wet"}}}})})
    page = tabs.open("jobs/index.html#v=1&part=all")
    part(page, "kept").select_option(index=0)
    expect(part(page, "notice")).to_contain_text("no grass “moon-grass”")
    expect(part(page, "kept").locator("option").first).to_contain_text("(not in this book)")
    expect(page.locator("[data-step]").first).to_be_hidden()
    named(page, "Renamed")
    part(page, "kept").select_option(index=1)
    expect(part(page, "notice")).to_contain_text("no site “no-such”")
    part(page, "kept").select_option(index=2)
    expect(part(page, "notice")).to_contain_text("no grass “constructor”")
    assert kept(page, "jobs")[0] == {**strange, "name": "Renamed"}
    sheet = tabs.open("inspection.html")
    sheet.locator("[data-question=soil-ph] .sb-inspection__measure").fill("6")
    assert kept(sheet, "inspection")[0]["answers"] == {"a-question-of-elsewhere": "yes", "soil-ph": "6"}
    record = tabs.open("record.html")
    record.get_by_role("button", name="Change").click()
    put(record, remarks="Dry")
    row = kept(record, "record")[0]
    assert (row["work"], row["grass"], row["machine"], row["remarks"]) == ("comb", "moon-grass", "Big one", "Dry")
    task = tabs.open("tasks/core.html")
    say_wet(task)  # days that are over go, but for one that holds more than this book knows
    assert [next(iter(each["all"].items())) for each in kept(task, "holds")] == [("moonlight", "full"), ("soil", "wet")]
    assert "swardbook.holds.2020-01-02" not in all_kept(task)


def test_limits_are_told_and_nothing_is_cut_off(tabs: Tabs, tmp_path: Path) -> None:
    page = tabs.open(JOB)
    plant(page, {"swardbook.jobs": json.dumps({"v": 1, "jobs": [{**KEPT_JOB, "name": f"J{number}"} for number in range(201)]})})
    plant(page, {"swardbook.lawn": json.dumps({"v": 1, "pieces": [PIECE] * 101})})
    page = tabs.open(JOB)
    assert len(kept(page, "jobs")) == 201
    page.locator("[data-act=new]").click()
    expect(part(page, "told")).to_contain_text("The list holds 200 jobs, and no more fit.")
    file = tmp_path / "jobs.json"
    file.write_text(json.dumps({"v": 1, "jobs": [KEPT_JOB]}), encoding="utf-8")
    part(page, "take").set_input_files(file)
    expect(part(page, "told")).to_contain_text("1 job did not fit.")
    assert len(kept(page, "jobs")) == 201
    lawn = tabs.open(PAGES["lawn"])
    assert len(kept(lawn, "lawn")) == 101
    add_a_piece(lawn)
    expect(lawn.locator("[data-part=answered]")).to_contain_text("The lawn holds 100 pieces, and no more fit.")


def test_a_file_with_bad_jobs_gives_the_sound_ones_and_names_the_rest(tabs: Tabs, tmp_path: Path) -> None:
    page = tabs.open(JOB)
    jobs = [{**KEPT_JOB, "name": "Sound"}, {**KEPT_JOB, "area": "240", "on": "2026-02-31"}, {**KEPT_JOB, "done": {"core": "2026-02-31", "cut-down": "2026-12-01"}}, 7]
    file = tmp_path / "jobs.json"
    file.write_text(json.dumps({"v": 1, "jobs": jobs}), encoding="utf-8")
    part(page, "take").set_input_files(file)
    told = part(page, "told")
    expect(told).to_contain_text("2 jobs taken from the file.")
    expect(told).to_contain_text("Job 2 in it is left out, because this is wrong or missing: area, day.")
    expect(told).to_contain_text("Job 3 in it is taken without what could not be read: done.")
    expect(told).to_contain_text("Job 4 in it is left out")
    assert [each["done"] for each in kept(page, "jobs")] == [KEPT_JOB["done"], {"cut-down": "2026-12-01"}]


def test_an_emptied_field_and_an_odd_date_keep_the_job_as_it_was(tabs: Tabs) -> None:
    page = tabs.open(JOB)
    named(page, "A")
    before = kept(page, "jobs")
    for text in ("", " ", "0", "-4", "1e308", "NaN", "Infinity", "1e-300"):
        page.locator("[data-choice=area]").fill(text)
        expect(part(page, "area-trouble")).to_be_visible()
    for day in ("", "0202-01-01", "9999-12-31"):
        page.locator("[data-choice=on]").fill(day)
        page.locator("[data-choice=on]").dispatch_event("change")
        put_off(page, "core", day)
    shown = page.locator(".sb-job").inner_text()
    assert not [word for word in NEVER_SHOWN if word in shown]
    assert kept(page, "jobs") == before


def test_a_long_name_in_another_script_is_kept_with_its_calendar(tabs: Tabs) -> None:
    page = tabs.open(JOB)
    named(page, "草" * 40)
    with page.expect_download():
        page.locator("[data-act=calendar]").click()
    page.reload()
    assert kept(page, "jobs")[0]["key"].count("%E8%8D%89") == 40
    expect(page.locator(".sb-kept--aside")).to_be_hidden()


def test_what_was_typed_last_is_kept_when_the_page_is_closed_at_once(tabs: Tabs) -> None:
    page = tabs.open(PAGES["holds"])
    page.locator(".sb-hold__measure").first.fill("-3")
    page.reload()
    assert "-3" in str(kept(page, "holds"))


def test_what_was_said_of_a_day_in_two_tabs_comes_together(tabs: Tabs) -> None:
    one, two = tabs.two(PAGES["holds"])
    say_wet(one)
    two.locator(".sb-hold input[value=dry]").first.check()
    expect(one.locator(".sb-hold input[value=dry]").first).to_be_checked()
    expect(two.locator(".sb-hold input[value=wet]").last).to_be_checked()
    one.get_by_role("button", name="Clear what was said about this day").click()
    expect(two.locator(".sb-hold input[value=wet]").last).not_to_be_checked()
