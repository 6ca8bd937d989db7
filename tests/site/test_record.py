"""The work record of the shipped book: kept on the device, out and in again as CSV, summed up, printed on one sheet."""

import csv
import io
import json
from collections.abc import Callable, Iterator
from pathlib import Path
from unicodedata import normalize

import pytest
from playwright.sync_api import Page
from pypdf import PdfReader

from tests.site.reader import Reader
from tests.slices import every

FEED = {
    "work": "feed", "date": "2026-03-01", "lawn": "TL-014", "grass": "kikuyu", "area": "240", "product": "Made-up feed", "amount": "5",
    "nitrogen_percent": "21", "temperature": "-3",
}  # fmt: skip
KEY = "swardbook.record"
ENTRIES = "() => Swardbook.kept('record').all().map(each => each.row)"
HOSTILE = '<img src=x onerror="window.hit=1">, "quoted"; =cmd()'


@pytest.fixture
def page(reader: Callable[..., Reader]) -> Iterator[Page]:
    yield reader(viewport={"width": 360, "height": 800}, accept_downloads=True).open("record.html")


def put(page: Page, **entry: str) -> None:
    for id, value in entry.items():
        field = page.locator(f"[data-column={id}] [data-entry]")
        if field.evaluate("each => each.tagName") == "SELECT":
            field.select_option(value)
        else:
            field.fill(value)
    page.locator("[data-part=save]").click()


def rows(page: Page) -> list[str]:
    return page.locator(".sb-work-record__row strong").all_inner_texts()


def exported(page: Page) -> str:
    with page.expect_download() as download:
        page.locator("[data-part=export]").click()
    return Path(download.value.path()).read_bytes().decode("utf-8")


def taken_in(page: Page, text: str) -> str:
    page.locator("[data-part=file]").set_input_files({"name": "kept.csv", "mimeType": "text/csv", "buffer": text.encode()})
    page.wait_for_function("() => /taken in/.test(document.querySelector('[data-part=told]').textContent)")
    return page.locator("[data-part=told]").inner_text()


def test_a_year_adds_up_and_a_reload_keeps_it(page: Page) -> None:
    """5 kg at 21 % on 240 m2 are 4.375 g/m2; 2.4 kg at 20 % are 2: 6.375 g/m2, times 0.204816 is 1.31 lb/1000 ft2."""
    put(page, **FEED)
    put(page, **FEED | {"date": "2026-09-20", "amount": "2.4", "nitrogen_percent": "20"})
    put(page, **FEED | {"date": "2026-10-20", "amount": "2 L"})
    page.reload()
    years = page.locator("[data-part=years]")
    assert len(rows(page)) == 3
    assert "TL-014, 2026: 6.38 g/m² (0.638 kg/100 m²) of nitrogen in 2 feeds." in years.inner_text()
    assert "within what it is usually given, 5 to 15 g/m² a year" in years.inner_text()
    assert "Not counted: 2026-10-20, Product spread: '2 L' is a volume" in years.inner_text()
    page.evaluate("() => { document.documentElement.setAttribute('data-units', 'us'); Swardbook.tell('units', {value: 'us'}); }")
    assert "1.31 lb/1000 ft²" in years.inner_text()


def test_an_entry_is_changed_taken_off_and_brought_back(page: Page) -> None:
    put(page, **FEED)
    page.get_by_role("button", name="Change").click()
    put(page, product="Another feed")
    assert rows(page) == ["2026-03-01, TL-014: feed, Another feed"]
    page.get_by_role("button", name="Take off").click()
    assert rows(page) == []
    page.get_by_role("button", name="Undo").click()
    assert rows(page) == ["2026-03-01, TL-014: feed, Another feed"]


def test_what_cannot_stand_is_told_at_its_field(page: Page) -> None:
    put(page, **FEED | {"lawn": "Mr Smith", "area": "much", "product": ""})
    told = {
        each: page.locator(f"[data-column={each}] [data-part=problem]").inner_text() for each in ("lawn", "area", "product")
    }
    assert rows(page) == []
    assert "no name and no address" in told["lawn"] and "not a quantity" in told["area"] and told["product"] == "Fill this in."


def test_csv_goes_out_and_comes_back(page: Page) -> None:
    """Read by Python's csv module; RFC 4180 line ends; nothing begins with what a spreadsheet would run."""
    put(page, **FEED | {"product": "=1+2", "remarks": HOSTILE})
    put(page, **FEED | {"product": "'@x", "remarks": "+44"})
    text = exported(page)
    assert text.startswith("\ufeff") and text.count("\r\n") == text.count("\n") == 3
    kept = list(csv.DictReader(io.StringIO(text.removeprefix("\ufeff"), newline="")))
    assert [each["product"] for each in kept] == ["'=1+2", "''@x"]
    assert (kept[0]["remarks"], kept[1]["remarks"], kept[0]["temperature"]) == (HOSTILE, "'+44", "'-3 °C")
    assert not [value for each in kept for value in each.values() if value[:1] in "=+-@\t\r" and value]
    before = page.evaluate(ENTRIES)
    assert taken_in(page, text) == "0 entries are taken in; 2 were here already."
    page.evaluate("() => localStorage.clear()")
    page.reload()
    assert taken_in(page, text) == "2 entries are taken in."
    assert page.evaluate(ENTRIES) == before
    assert page.evaluate("() => window.hit") is None
    assert page.locator(".sb-work-record img").count() == 0


def test_wrong_rows_of_a_file_are_told_by_line(page: Page) -> None:
    said = taken_in(page, "work,date,lawn,product\nfeed,2026-02-30,L1,P\nfeed,2026-02-03,L1,P\n")
    assert said == "1 entry is taken in; 1 could not be read."
    assert page.locator("[data-part=faults] li").all_inner_texts() == [
        "Line 2: Date: This is not a date; write year, month and day, such as 2026-10-12."
    ]
    assert taken_in(page, 'work,date,lawn,product\nfeed,2026-02-03,L2,P\nfeed,2026-02-04,L2,"P\nfeed,2026-02-05,L2,P\n') == "1 entry is taken in; 1 could not be read."
    assert "Line 3: a quote is opened and never closed" in page.locator("[data-part=faults]").inner_text()
    assert "taken in" in taken_in(page, "wrong,columns\n1,2\n")
    assert "unknown column 'wrong'" in page.locator("[data-part=faults]").inner_text()


@pytest.mark.parametrize("damage", every(4, [
    "{", "null", "[]", '{"v":2,"entries":[]}', '{"v":1,"entries":[null]}', '{"v":1,"entries":[{"work":"feed","date":7}]}',
    '{"v":1,"entries":[{"work":"<b>","date":"2026-01-01","lawn":"L","product":"P"}]}', '{"v":1,"entries":{"length":3}}',
]))  # fmt: skip
def test_a_damaged_record_is_set_aside_and_a_new_one_begins(page: Page, damage: str) -> None:
    page.evaluate("([key, text]) => localStorage.setItem(key, text)", [KEY, damage])
    page.reload()
    assert "damaged" in page.locator(".sb-kept--aside").inner_text()
    assert page.evaluate(f"() => localStorage.getItem('swardbook.aside.{KEY}.1')") == damage
    put(page, **FEED)
    page.reload()
    assert len(rows(page)) == 1


@pytest.mark.parametrize("scripts", [True, False], ids=["with scripts", "without"])
def test_the_form_prints_on_one_page_with_every_field(reader: Callable[..., Reader], site: Path, scripts: bool) -> None:
    page = reader(viewport={"width": 1280, "height": 900}, java_script_enabled=scripts).open("record.html")
    columns = json.loads((site / "book" / "record.json").read_text(encoding="utf-8"))["columns"]
    if scripts:
        put(page, **FEED)
    for paper in ("A4", "Letter"):
        pages = PdfReader(io.BytesIO(page.pdf(format=paper, prefer_css_page_size=True))).pages
        assert len(pages) == 1, paper
        text = normalize("NFKC", " ".join(pages[0].extract_text().split()))  # the font joins f and i
        assert [each["label"] for each in columns.values() if each["label"] not in text] == [], paper
        assert "not the law" in text


def test_it_is_reached_from_home_and_from_its_tasks(reader: Callable[..., Reader]) -> None:
    window = reader()
    for path in ("index.html", "tasks/feed.html", "tasks/spray-out.html"):
        window.open(path).get_by_role("link", name="Work record").first.click()
        assert window.page.locator("h1").inner_text().startswith("Work record"), path
