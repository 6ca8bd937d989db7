"""A lawn is written down once: every page goes by it, it goes out and in as one file, and its photographs stay on the device."""

import base64
import json
import random
from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from playwright.sync_api import Browser, Page, expect

from generator.book.lists.lawn_file import read_lawn_file
from generator.cli import main
from tests.asking import ask
from tests.site.reader import Reader
from tests.site.tabs import Tabs, kept
from tests.site.test_kept_work import KEPT_JOB, LAWN
from tests.site.test_two_tabs import ENTRY

ROOT = Path(__file__).parents[2]
LAWNS = "lawns.html"
TO_ODD: list[Any] = [None, 5, -1, 1e308, "", "x", "<img src=x onerror=window.hit=1>", [], {}, True, "9" * 5000, "__proto__", {"__proto__": {"x": 1}}, [[]], "2026-02-31", "\ud83c"]


@pytest.fixture
def page(reader: Callable[..., Reader]) -> Iterator[Page]:
    yield reader(viewport={"width": 360, "height": 640}, accept_downloads=True).open(LAWNS)


def fill(page: Page, **fields: str) -> None:
    for id, text in fields.items():
        field = page.locator(f"#lawns-{id.replace('_', '-')}")
        if not field.is_visible():
            page.locator("details", has=field).locator("summary").click()
        if field.evaluate("each => each.tagName") == "SELECT":
            field.select_option(text)
        else:
            field.fill(text)


def keep(page: Page, **fields: str) -> None:
    fill(page, **fields)
    page.locator(".sb-lawns__form [data-part=save]").click()


def go(page: Page, path: str) -> None:
    page.goto(f"{page.url[: page.url.rindex('/site/')]}/site/{path}")


def saved(page: Page) -> str:
    with page.expect_download() as download:
        page.locator("[data-component=lawn-record] [data-part=export]").click()
    return Path(download.value.path()).read_text(encoding="utf-8")


def take(page: Page, text: str) -> str:
    page.locator("#lawns-file").set_input_files({"name": "lawns.json", "mimeType": "application/json", "buffer": text.encode()})
    told = page.locator(".sb-lawns__told")
    expect(told).not_to_be_empty()
    return told.inner_text()


def value(page: Page, input: str) -> str:
    return page.locator(f"[data-input={input}] .sb-calculator__input").input_value()


def test_every_page_goes_by_the_lawn_that_was_written_down_once(page: Page) -> None:
    keep(page, code="TL-014", grass="kikuyu", place="canberra", area="240", sprinkler_rate="14", sprinkler_evenness="62", soil_type="clay")
    expect(page.locator(".sb-lawns__lawn")).to_contain_text("Kikuyu · Canberra, Australian Capital Territory · Open ground · 240 m²")
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    go(page, "calculators/irrigation-run-time.html")
    assert [value(page, name) for name in ("area", "precipitation_rate", "uniformity")] == ["240", "14", "62"]
    expect(page.locator("[data-input=area] .sb-calculator__from")).to_have_text("from lawn TL-014")
    go(page, "index.html")
    assert [page.locator(f".sb-picker [data-choice={each}]").input_value() for each in ("grass", "place")] == ["kikuyu", "canberra"]
    go(page, "record.html")
    assert [page.locator(f"[data-column={each}] [data-entry]").input_value() for each in ("lawn", "grass", "area")] == ["TL-014", "kikuyu", "240 m2"]
    go(page, "aftercare/maker.html")
    assert [page.locator(f"[name={each}]").input_value() for each in ("grass", "area", "rate", "even")] == ["kikuyu", "240 m2", "14 mm/h", "62 %"]
    # What the inspection measures again is the lawn's from then on.
    go(page, "inspection.html")
    assert page.locator("[data-head=lawn]").input_value() == "TL-014"
    evenness = page.locator("#inspection-sprinkler-evenness-answer")
    assert evenness.input_value() == "62 %"
    evenness.fill("70")
    evenness.blur()
    page.locator("[data-question=pets] input[value=live-out]").check()
    page.locator("#inspection-thatch-depth-answer").fill("30 mm")
    go(page, "calculators/irrigation-run-time.html")
    assert value(page, "uniformity") == "70"
    assert "thatch-depth" not in kept(page, "lawns")[0]["facts"] and kept(page, "lawns")[0]["facts"]["pets"] == "live-out"
    # A second lawn: chosen in the bar, it is the one that the page goes by, and has an inspection of its own.
    go(page, LAWNS)
    keep(page, code="TL-015", grass="couch", place="sydney", area="90 m2")
    go(page, "inspection.html")
    assert page.locator("#inspection-thatch-depth-answer").input_value() == ""
    page.locator("[data-component=lawn-bar] select").select_option(label="TL-014")
    expect(page.locator("#inspection-thatch-depth-answer")).to_have_value("30 mm")


def test_a_link_and_what_is_typed_go_before_the_lawn(page: Page) -> None:
    keep(page, code="TL-014", area="240")
    go(page, "calculators/granular-feed.html#v=1&area=100+m2")
    assert value(page, "area") == "100"
    go(page, "calculators/coring.html")
    page.locator("[data-input=area] .sb-calculator__input").fill("55")
    page.locator("[data-component=lawn-bar] select").select_option(label="none chosen")
    page.locator("[data-component=lawn-bar] select").select_option(label="TL-014")
    assert value(page, "area") == "55"


def test_what_is_no_lawn_is_refused_at_its_field(page: Page) -> None:
    for code, area, sentence in (("Mr Smith", "240", "A lawn needs a code"), ("TL-1", "-3 m2", "give an area above 0"), ("TL-1", "3 kg", "is a mass, but an area is wanted")):
        keep(page, code=code, area=area)
        expect(page.locator(".sb-lawns__problem")).to_contain_text(sentence)
    keep(page, area="240", sprinkler_evenness="170 %")
    expect(page.locator(".sb-lawns__problem")).to_contain_text("100 %")
    assert page.evaluate("document.activeElement.id") == "lawns-sprinkler-evenness" and kept(page, "lawns") == []
    keep(page, sprinkler_evenness="70")
    keep(page, code="TL-1")
    expect(page.locator(".sb-lawns__problem")).to_contain_text("There is a lawn TL-1 already.")


def test_a_lawn_is_taken_off_and_brought_back_and_its_code_goes_with_its_work(page: Page) -> None:
    keep(page, code="TL-1", area="240")
    page.evaluate("([job, entry]) => { Swardbook.kept('jobs').add(job); Swardbook.kept('record').add(entry); }", [{**KEPT_JOB, "name": "TL-1"}, {**ENTRY, "lawn": "TL-1"}])
    page.get_by_role("button", name="Take off TL-1").click()
    expect(page.locator(".sb-lawns__lawn")).to_have_count(0)
    page.get_by_role("button", name="Undo").click()
    expect(page.locator(".sb-lawns__lawn")).to_have_count(1)
    page.get_by_role("button", name="Change TL-1").click()
    keep(page, code="TL-9")
    assert [kept(page, "jobs")[0]["name"], kept(page, "record")[0]["lawn"]] == ["TL-9", "TL-9"]
    page.get_by_role("button", name="Undo").click()
    assert [kept(page, "lawns")[0]["code"], kept(page, "jobs")[0]["name"], kept(page, "record")[0]["lawn"]] == ["TL-1"] * 3


def test_one_file_goes_out_comes_in_elsewhere_and_feeds_the_command_line(page: Page, browser: Browser, site: Path, tmp_path: Path) -> None:
    keep(page, code="TL-014", grass="kikuyu", place="canberra", area="240", sprinkler_rate="14", sprinkler_evenness="62")
    page.evaluate("job => Swardbook.kept('jobs').add(job)", {**KEPT_JOB, "grass": "kikuyu", "name": "TL-014", "visit": {"thatch-depth": "20 mm"}})
    text = saved(page)
    other = Tabs(browser, site.as_uri(), viewport={"width": 360, "height": 640})
    there = other.open(LAWNS)
    assert take(there, text) == "Taken in: 1 new lawn, 1 new job."
    assert [kept(there, each) for each in ("lawns", "jobs")] == [kept(page, each) for each in ("lawns", "jobs")]
    there.locator(".sb-lawns__told").evaluate("each => { each.textContent = ''; }")
    assert take(there, text) == "Everything in that file is here already."
    assert other.errors == []
    other.context.close()
    file = tmp_path / "lawns.json"
    file.write_text(text, encoding="utf-8")
    planned = CliRunner().invoke(main, ["plan", "--book", str(ROOT), "--lawn", "TL-014", "--lawns", str(file), "--json"])
    typed = CliRunner().invoke(main, [
        "plan", "warm-below-ground", "--book", str(ROOT), "--grass", "kikuyu", "--place", "canberra", "--area", "240 m2", "--on", KEPT_JOB["on"], "--done",
        "soil-test=2026-12-01", "--inspection", "thatch-depth=20 mm", "--inspection", "sprinkler-rate=14 mm/h", "--inspection", "sprinkler-evenness=62 %", "--json",
    ])  # fmt: skip
    assert planned.exit_code == 0, planned.output
    assert json.loads(planned.output) == json.loads(typed.output)
    round_ = CliRunner().invoke(main, ["round", "--book", str(ROOT), str(file), "--on", "2027-01-01", "--json"])
    assert [(each["client"], each["on"]) for each in json.loads(round_.output)["jobs"]] == [("TL-014", KEPT_JOB["on"])]


def test_a_done_step_hands_its_entry_to_the_record(page: Page) -> None:
    """2.1 g/m2 of nitrogen on 240 m2 from a bag of 21 % is 2.1 x 240 / 0.21 = 2400 g, 1 kg/100 m2; with what was said of that day."""
    keep(page, code="TL-014", grass="couch", place="canberra", area="240")
    page.evaluate("""job => {
        Swardbook.kept('jobs').add(job);
        Swardbook.kept('holds').add({at: '06:10', all: {wind: '9 km/h', rain_to_come: '2 mm'}, tasks: {}}, '2099-12-24');
    }""", {**KEPT_JOB, "name": "TL-014", "on": "2099-12-16", "done": {"first-feed": "2099-12-24"}})
    go(page, "jobs/index.html#part=all")
    link = page.locator("[data-step=first-feed] [data-part=write-down]")
    expect(link).not_to_have_attribute("href", "#steps")
    assert page.locator("[data-step=core] [data-part=write-down]").is_hidden()
    page.goto(link.evaluate("each => each.href"))
    got = {each: page.locator(f"[data-column={each}] [data-entry]").input_value() for each in ("work", "date", "lawn", "grass", "area", "wind_speed", "rain", "nitrogen_percent")}
    assert got == {
        "work": "feed", "date": "2099-12-24", "lawn": "TL-014", "grass": "couch", "area": "240 m2", "wind_speed": "9 km/h", "rain": "2 mm to come", "nitrogen_percent": "21 %",
    }
    assert "granule" in page.locator("[data-column=product] [data-entry]").input_value()
    assert [page.locator(f"[data-column={each}] [data-entry]").input_value() for each in ("amount", "rate")] == ["2.4 kg", "1 kg/100 m2"]
    page.locator("[data-component=work-record] [data-part=save]").click()
    assert [each["lawn"] for each in kept(page, "record")] == ["TL-014"]


def test_a_photograph_is_made_smaller_kept_deleted_and_brought_back(page: Page, tmp_path: Path) -> None:
    keep(page, code="TL-1")
    page.evaluate("() => { const big = document.createElement('canvas'); big.width = 3000; big.height = 1000; window.big = big.toDataURL('image/png'); }")
    picture = base64.b64decode(page.evaluate("window.big").partition(",")[2])
    page.locator("input[accept='image/*']").set_input_files({"name": "lawn.png", "mimeType": "image/png", "buffer": picture})
    expect(page.locator(".sb-lawns__told")).to_have_text("The photograph is kept.")
    page.reload()
    page.get_by_text("Photographs: 1").click()
    image = page.locator(".sb-lawns__photograph img")
    expect(image).to_have_js_property("naturalWidth", 1600)
    page.get_by_role("button", name="Delete").click()
    expect(image).to_have_count(0)
    page.get_by_role("button", name="Undo").click()
    expect(image).to_have_count(1)
    page.locator("input[accept='image/*']").set_input_files({"name": "no.png", "mimeType": "image/png", "buffer": b"not a picture"})
    expect(page.locator(".sb-lawns__told")).to_have_text("1 could not be read as a picture.")
    # What is left of a lawn that was taken off can still be deleted.
    page.get_by_role("button", name="Take off TL-1").click()
    page.reload()
    stray = page.locator("[data-component=lawn-record] [data-part=strays]")
    stray.get_by_role("button", name="Delete it").click()
    expect(page.locator(".sb-lawns__told")).to_have_text("Deleted.")
    page.reload()
    page.wait_for_timeout(300)
    expect(stray).to_be_empty()


def hostile(chance: random.Random) -> str:
    """A lawns.json with some of it turned into something else, or cut off."""
    def lawn(number: int) -> dict[str, Any]:
        """Few have a year of visits: there is so much in one that hardly a file would be left whole."""
        return {name: each for name, each in {**LAWN, "code": f"TL-{number}"}.items() if name != "programme" or chance.random() < 0.15}

    file = {
        "version": 1, "lawns": [lawn(number) for number in range(chance.randrange(4))], "jobs": [{**KEPT_JOB, "name": "TL-0"}] * chance.randrange(3),
        "record": [ENTRY] * chance.randrange(3), "inspections": [{"lawn": "TL-0", "answers": {"thatch-depth": "20 mm"}}] * chance.randrange(2),
    }  # fmt: skip

    def spoil(node: Any) -> Any:
        if chance.random() < 0.04:
            return chance.choice(TO_ODD)
        if isinstance(node, dict):
            return {(chance.choice(("__proto__", "A B", name)) if chance.random() < 0.02 else name): spoil(each) for name, each in node.items()}
        return [spoil(each) for each in node] if isinstance(node, list) else node

    text = json.dumps(spoil(json.loads(json.dumps(file))))
    return text[: chance.randrange(len(text))] if chance.random() < 0.1 else text


def files_do_no_harm(page: Page, folder: Path, count: int) -> Counter[str]:
    chance, counts = random.Random(20261130), Counter[str]()
    texts = [hostile(chance) for _ in range(count)]
    took = """texts => texts.map(text => {
        const found = Swardbook.lawnFile.read(text);
        if (typeof found === 'string') { return found; }
        const done = Swardbook.lawnFile.take(found), codes = found.lawns.map(each => each.code), there = new Set(Swardbook.lawns.all().map(each => each.code));
        if (done[1]) { done[1](); }
        return {codes, all: codes.every(code => there.has(code)), left: Swardbook.lawns.all().length + Swardbook.kept('jobs').all().length + Swardbook.kept('record').all().length};
    })"""
    for text, took_in in zip(texts, ask(page, took, texts), strict=True):
        file = folder / "lawns.json"
        file.write_bytes(text.encode("utf-8", "surrogatepass"))
        lawns, findings = read_lawn_file(file)
        counts["refused" if isinstance(took_in, str) else "taken in"] += 1
        if not isinstance(took_in, str):
            assert took_in["all"] and took_in["left"] == 0, text
            # What the command line takes without a word, the page takes whole.
            assert findings or [each.lawn.code for each in lawns] == took_in["codes"], text
        counts["read on the command line" if not findings else "told of on the command line"] += 1
    assert page.evaluate("window.hit") is None and page.locator("article img[src=x]").count() == 0
    return counts


def test_hostile_files_do_no_harm(page: Page, tmp_path: Path) -> None:
    counts = files_do_no_harm(page, tmp_path, 500)
    assert min(counts.values()) > 20, counts
