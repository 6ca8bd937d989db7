"""A client's link, from the page that makes it to the phone that opens it, day by day."""

import io
import json
import random
import re
import string
from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
import segno
from playwright.sync_api import Page, expect
from pypdf import PdfReader

from tests.site.conftest import ROOT
from tests.site.reader import Reader
from tests.slices import every
from tests.yaml_files import read_yaml

DAY = date(2026, 10, 12)  # a spring Monday in Sydney
PHONE = {"viewport": {"width": 360, "height": 780}, "locale": "en-AU"}
SHEET = "aftercare/after-renovation.html"
MAKER = "aftercare/maker.html"
ADDRESS = read_yaml(ROOT / "data/practice.yml")["public_address"]
OLD_LINKS = read_yaml(Path(__file__).with_name("old-links.yml"))


def on_day(window: Reader, path: str, day: date) -> Page:
    """A page opened at nine in the morning of a day."""
    window.page.clock.set_fixed_time(f"{day.isoformat()}T09:00:00")
    window.page.goto("about:blank")  # so that the next address is a new page, and not another place on this one
    return window.open(path)


def make_link(page: Page) -> str:
    form = page.locator("form[data-component=client-link]")
    form.locator("select[name=sheet]").select_option("after-renovation")
    form.locator("input[name=on]").fill(DAY.isoformat())
    form.locator("select[name=grass]").select_option("couch")
    form.locator("input[name=area]").fill("240 m2")
    form.locator("label:has(input[value=scarify]):visible").click()
    form.locator("label:has(input[value=core]):visible").click()
    return form.locator("[data-part=link]").inner_text()


def test_the_whole_way_from_the_maker_to_the_clients_phone(reader: Callable[..., Reader]) -> None:
    window = reader(**PHONE)
    page = on_day(window, MAKER, DAY)
    link = make_link(page)
    assert link.startswith(f"{ADDRESS}{SHEET}#v=1&on=2026-10-12&grass=couch&area=240&done=")
    assert len(link.split("#")[1]) <= 300
    message = page.locator("[data-part=message]").input_value()
    assert link in message and "02 5550 0134" in message and "Tussock Lane Turf Care" in message and "12 Oct" in message
    path = link.removeprefix(ADDRESS)
    today = page.locator("[data-part=today]")

    on_day(window, path, DAY)
    expect(today).to_contain_text("is day 0")
    expect(page.locator(".sb-aftercare__stretch--today")).to_contain_text("Do not rake, roll or mow.")
    expect(today).to_contain_text("Couch, 240 m²")
    expect(today).to_contain_text("Core")
    on_day(window, path, DAY + timedelta(9))
    expect(today.get_by_role("heading")).to_be_in_viewport()
    expect(today).to_contain_text("is day 9")
    for word in ("Water once", "Stay off", "No mowing yet"):
        expect(page.locator(".sb-aftercare__stretch--today")).to_contain_text(word)
    on_day(window, path, DAY + timedelta(40))
    expect(today).to_contain_text("is day 40")
    on_day(window, path, DAY + timedelta(400))
    expect(today).to_contain_text("this sheet is finished")


def test_what_is_past_stands_last_and_shut_and_what_is_for_the_practice_is_out_of_the_way(reader: Callable[..., Reader]) -> None:
    page = on_day(reader(**PHONE), f"{SHEET}#v=1&on={DAY}", DAY + timedelta(9))
    shown = page.locator("[data-from-day]:visible").evaluate_all("all => all.map(each => Number(each.dataset.toDay))")
    assert shown == sorted(shown) and min(shown) >= 9
    page.locator("[data-part=gone] > summary").click()
    assert page.locator("[data-from-day='0']").is_visible()
    assert not page.locator("#link").is_visible() and not page.locator("a[href='#link']:visible").count()
    expect(page.locator(".sb-aftercare__help a[href='tel:0255500134']")).to_be_visible()
    plain = reader().open(SHEET)
    assert plain.locator("#link").is_visible()
    assert not plain.locator("[data-part=today]").is_visible()


def test_a_jump_on_the_page_keeps_the_clients_days_and_so_does_a_reload(reader: Callable[..., Reader]) -> None:
    page = on_day(reader(**PHONE), f"{SHEET}#v=1&on={DAY}&grass=couch", DAY + timedelta(9))
    page.locator(".sb-aftercare__help").get_by_role("link", name="When to call").click()
    expect(page.locator("#call")).to_be_in_viewport()
    expect(page).to_have_url(re.compile(f"#v=1&on={DAY}&grass=couch$"))
    page.reload()
    expect(page.locator("[data-part=today]")).to_contain_text("is day 9")


def test_calculators_of_the_sheet_take_the_links_area(reader: Callable[..., Reader]) -> None:
    """8 mm on 85.5 m2 is 684 litres, and 855 from sprinklers that give the driest quarter 80 %; at 20 mm/h that is half an hour."""
    page = on_day(reader(**PHONE), f"{SHEET}#v=1&on={DAY}&area=85.5&rate=20&even=80", DAY + timedelta(9))
    box = page.locator("[data-from-day='8'] details.sb-aftercare__quantity").first
    box.locator("> summary").click()
    expect(box.locator("[data-input=area] input").first).to_have_value("85.5")
    expect(box.locator(".sb-calculator__result--main output")).to_have_text(["30 min", "855 L"])


def test_every_sheet_prints_on_one_page(reader: Callable[..., Reader], site: Path) -> None:
    window, counts = reader(), {}
    for file in sorted((site / "aftercare").glob("after-*.html")):
        if not (ROOT / f"data/aftercare/{file.stem}.yml").exists():
            continue  # One that has left the book says where its client goes on.
        page = on_day(window, f"aftercare/{file.name}#v=1&on={DAY}&grass=couch&area=240&done=core.topdress", DAY)
        for paper in ("A4", "Letter"):
            counts[file.stem, paper] = len(PdfReader(io.BytesIO(page.pdf(format=paper, prefer_css_page_size=True))).pages)
    assert counts and {name: count for name, count in counts.items() if count != 1} == {}


@pytest.mark.parametrize("link", every(2, OLD_LINKS), ids=lambda link: f"{link['page'].split('/')[1]}#{link['fragment']}")
def test_links_of_earlier_versions_still_open_and_say_what_has_gone(reader: Callable[..., Reader], link: dict[str, Any]) -> None:
    on = date.fromisoformat(re.search(r"\bon=([^&]+)", link["fragment"])[1])
    page = on_day(reader(**PHONE), f"{link['page']}#{link['fragment']}", on + timedelta(9))
    today, notices = page.locator("[data-part=today]"), page.locator(".sb-aftercare__notice").all_inner_texts()
    for word in ("is day 9", *link.get("shows", ())):
        expect(today).to_contain_text(word)
    told = link.get("told", [])
    assert len(notices) == len(told)
    assert not [(want, said) for want, said in zip(told, notices, strict=True) if want not in said]


def test_old_links_name_a_grass_and_a_step_that_never_were_and_some_that_have_gone() -> None:
    """What is kept must go on covering both, whatever is added."""
    told = " ".join(said for link in OLD_LINKS for said in link.get("told", ()))
    for word in ("a grass that is not in this book", "a step that is not in this book", "In its place: ", "Nothing has taken its place"):
        assert word in told


def test_a_sheet_that_has_gone_says_so_and_hands_its_particulars_on(reader: Callable[..., Reader]) -> None:
    page = on_day(reader(**PHONE), f"aftercare/after-scarifying.html#v=1&on={DAY}&grass=couch&area=240", DAY + timedelta(9))
    expect(page.locator("h1")).to_have_text("After scarifying: no longer in this book")
    expect(page.locator("[data-component=retired]")).to_contain_text("In its place: After the renovation.")
    expect(page.locator("a[href='tel:0255500134']")).to_be_visible()
    page.get_by_role("link", name="Open that sheet").click()
    expect(page.locator("[data-part=today]")).to_contain_text("is day 9")
    expect(page.locator("[data-part=today]")).to_contain_text("Couch, 240 m²")


def test_a_page_that_has_gone_is_reached_by_its_address_only(reader: Callable[..., Reader], site: Path) -> None:
    page = reader().open("grasses/soft-leaf-buffalo.html")
    page.get_by_role("link", name="Open that grass").click()
    expect(page.locator("h1")).to_have_text("Buffalo")
    found = (site / "assets/search/book.js").read_text(encoding="utf-8")
    assert "grasses/buffalo" in found and "grasses/soft-leaf-buffalo" not in found and "aftercare/after-scarifying" not in found


def test_the_maker_reads_what_another_page_hands_over_and_says_what_it_does_not_know(reader: Callable[..., Reader]) -> None:
    page = reader().open(f"{MAKER}#v=1&sheet=after-topdressing&on=2026-10-12&grass=moon-grass&area=85.5")
    expect(page.locator("[data-part=notice]")).to_contain_text("moon-grass")
    expect(page.locator("[data-part=link]")).to_have_text(f"{ADDRESS}aftercare/after-topdressing.html#v=1&on=2026-10-12&area=85.5")


def test_the_maker_takes_what_took_the_place_of_what_has_gone(reader: Callable[..., Reader]) -> None:
    page = reader().open(f"{MAKER}#v=1&sheet=after-scarifying&on=2026-10-12&grass=soft-leaf-buffalo&done=hollow-tine.yearly-lime.polish")
    expect(page.locator("[data-part=link]")).to_have_text(f"{ADDRESS}{SHEET}#v=1&on=2026-10-12&grass=buffalo&done=core")
    for word in ("In its place: After the renovation.", "In its place: Buffalo.", "“Spread lime”", "'polish' is not among the steps of this job."):
        expect(page.locator("[data-part=notice]")).to_contain_text(word)


def test_an_area_that_cannot_be_read_makes_no_link(reader: Callable[..., Reader]) -> None:
    page = reader().open(MAKER)
    make_link(page)
    page.locator("input[name=area]").fill("a big one")
    expect(page.locator("[data-part=link]")).to_have_text("")
    expect(page.locator("[data-part=problem]")).to_contain_text("area")
    page.locator("input[name=area]").fill("2500 ft2")  # 0.3048 m squared, 2500 times: 232.26 m2
    expect(page.locator("[data-part=link]")).to_contain_text("area=232.26")


def test_without_the_drawing_script_the_link_is_there_and_says_so(reader: Callable[..., Reader]) -> None:
    window = reader()
    page = window.open(MAKER)
    page.evaluate("() => { window.uqr = undefined; }")
    assert make_link(page).startswith(ADDRESS)
    expect(page.locator("[data-part=code]")).to_contain_text("No code")


# The reader of links, and what the sheet makes of what it read, for many at once in one page.
OPEN_ALL = """fragments => {
  const root = document.querySelector("[data-component=aftercare-sheet]"), before = document.querySelectorAll("*").length;
  const panel = root.querySelector("[data-part=today]"), wrong = [];
  for (const fragment of fragments) {
    try {
      Swardbook.aftercareSheet.open(Swardbook.clientLink.read(fragment));
      const dated = [...root.querySelectorAll("[data-part=dates]")].some(each => each.textContent);
      if (panel.hidden || !panel.textContent.includes("damaged") || dated) wrong.push([fragment, panel.textContent]);
      if (document.querySelectorAll("*").length !== before + 1) wrong.push([fragment, "something became markup"]);
    } catch (problem) { wrong.push([fragment, String(problem)]); }
  }
  return wrong;
}"""
GOOD = "v=1&on=2026-10-12&grass=couch&area=240&rate=15.5&even=70&done=core.topdress"
WORDS = ("草坪", "газон", "عشب", "γρασίδι", "🌱", "\u202e", "%00", "%3Cscript%3E", "<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "javascript:alert(1)", "__proto__")


def hostile(dice: random.Random) -> str:
    """One damaged or hostile fragment; never one that is sound."""
    value = dice.choice((*WORDS, "9" * dice.randint(7, 400), "-1", "1e309", "NaN", "Infinity", "2026-02-30", "0", ""))
    noise = "".join(dice.choices(string.printable + "ÄßÇ№字", k=dice.randint(1, 120)))
    name = dice.choice(("on", "area", "rate", "even", "v"))
    grass = dice.choice((*WORDS, ""))
    return dice.choice((
        re.sub(rf"\b{name}=[^&]*", lambda _: f"{name}={value}", GOOD), GOOD.replace("couch", grass), GOOD.replace("core", grass or "."),
        GOOD.replace("v=1", f"v={dice.choice((0, 2, 10, '1.0', ' 1', value))}"), GOOD[2:], GOOD[: dice.randint(4, 12)], GOOD + "&" + noise,
        GOOD + "." + "a" * dice.randint(300, 20000), "&".join([GOOD] * 2), GOOD + "&name=Jane", "&" + noise + "=" + GOOD, GOOD + "&",
    ))


def hostile_fragments(count: int) -> list[str]:
    dice = random.Random(20261012)
    return [hostile(dice) for _ in range(count)]


def opens_none_of(page: Page, fragments: list[str]) -> None:
    wrong = page.evaluate(OPEN_ALL, fragments)
    assert wrong == [], json.dumps(wrong[:5], ensure_ascii=False)


def test_hostile_links_show_the_sheet_and_a_notice(reader: Callable[..., Reader]) -> None:
    opens_none_of(on_day(reader(), SHEET, DAY), hostile_fragments(300))


@pytest.mark.soak
def test_five_thousand_hostile_links(reader: Callable[..., Reader]) -> None:
    opens_none_of(on_day(reader(), SHEET, DAY), hostile_fragments(5000))


# Fragments put into the address bar, one after the other: what then stands on the page that was not there, and what a reader is told.
VISIT_ALL = """async ([fragments, told]) => {
  const count = () => document.querySelectorAll("body *").length, plain = count(), seen = [];
  for (const fragment of fragments) {
    const changed = new Promise(done => window.addEventListener("hashchange", done, { once: true }));
    window.location.hash = fragment;
    await changed;
    seen.push([count() - plain, document.querySelector(told).textContent]);
  }
  return seen;
}"""


@pytest.mark.parametrize(("path", "told"), [(SHEET, "[data-part=today]"), (MAKER, "[data-part=notice]")], ids=["sheet", "maker"])
def test_hostile_links_in_the_address_bar_are_called_damaged(reader: Callable[..., Reader], path: str, told: str) -> None:
    page = on_day(reader(), path, DAY)
    fragments = list(dict.fromkeys(hostile_fragments(60)))
    seen = page.evaluate(VISIT_ALL, [[f"x={number}&{fragment}" for number, fragment in enumerate(fragments)], told])
    assert len(seen) == len(fragments)
    assert not [(fragment, said) for fragment, said in zip(fragments, seen, strict=True) if said[0] > 1 or "damaged" not in said[1]]


def test_a_link_cut_short_anywhere_shows_its_day_or_says_that_it_is_damaged(reader: Callable[..., Reader]) -> None:
    page = on_day(reader(), SHEET, DAY)
    for length in range(1, len(GOOD)):
        page.evaluate("text => Swardbook.aftercareSheet.open(Swardbook.clientLink.read(text))", GOOD[:length])
        said = page.locator("[data-part=today]").text_content()
        whole_day = length >= GOOD.index("2026-10-12") + len("2026-10-12")
        assert "damaged" in said or (whole_day and "is day 0" in said) or said == "", GOOD[:length]
        assert ("damaged" in said) == (page.evaluate("text => Swardbook.clientLink.read(text)", GOOD[:length]) is None), GOOD[:length]


def test_what_is_sound_is_not_called_damaged(reader: Callable[..., Reader]) -> None:
    page = on_day(reader(), SHEET, DAY)
    assert page.evaluate("text => Swardbook.clientLink.read(text)", GOOD) == {
        "v": "1", "on": "2026-10-12", "grass": "couch", "area": 240, "rate": 15.5, "even": 70, "done": ["core", "topdress"],
    }
    assert page.evaluate("text => Swardbook.clientLink.write(Swardbook.clientLink.read(text))", GOOD) == GOOD


def modules(page: Page, text: str, mask: int) -> list[list[bool]]:
    return page.evaluate("([text, maskPattern]) => window.uqr.encode(text, { ecc: 'M', border: 0, maskPattern }).data", [text, mask])


# ISO/IEC 18004, table 7: bytes that a code of versions 7 to 13 holds at error level M. A text that fills a code leaves nothing to pad
# with, and only there two encoders must agree on every module: segno pads the rest its own way, which no reader minds.
BYTES_AT_LEVEL_M = (122, 152, 180, 213, 251, 287, 331)


def test_the_codes_are_those_that_another_encoder_draws(reader: Callable[..., Reader]) -> None:
    """segno, written independently, is the judge: same text, version, mask and error level, module for module."""
    page = reader().open(MAKER)
    link = make_link(page)
    for length in BYTES_AT_LEVEL_M:
        text = (link + "a" * length)[:length]
        for mask in range(8):
            code = segno.make(text, micro=False, error="m", boost_error=False, mask=mask)
            assert modules(page, text, mask) == [[bool(module) for module in row] for row in code.matrix], (text, mask)


def test_the_code_on_the_page_is_the_links(reader: Callable[..., Reader]) -> None:
    """What is drawn: 4 modules of white around, one square for each dark module of the code of that link."""
    page = reader().open(MAKER)
    link = make_link(page)
    picture = page.locator("[data-part=code] svg")
    size = int(picture.get_attribute("viewBox").split()[2]) - 8
    squares = re.findall(r"M(\d+) (\d+)h1v1h-1z", picture.locator("path").get_attribute("d"))
    dark = {(int(x) - 4, int(y) - 4) for x, y in squares}
    assert [[(x, y) in dark for x in range(size)] for y in range(size)] == modules(page, link, -1)
