"""What a reader has seen this year: kept on the device, told back with its reasons, and the same as on the command line."""

from collections.abc import Callable
from datetime import date
from typing import Any

from playwright.sync_api import expect

from generator.files.seen_text import seen_lines
from generator.season.seen.seen_place import seen_place
from generator.season.seen.seen_year import SeenNotes, seen_year
from generator.site.year.year_words import WINDOW_LABELS
from generator.units import read_quantity, unit
from tests.asking import ask
from tests.our_book import seasons
from tests.site.reader import Reader
from tests.site.tabs import FULL

# Day of the reading, what it says, how deep, and what else was seen; southern and northern springs and autumns.
CASES = [
    ("canberra", "couch", "open", {"soil": "12.4 °C", "soil_on": "2026-09-20", "last_frost": "2026-11-20"}),
    ("canberra", "tall-fescue", "hollow", {"soil": "17 °C", "soil_depth": "50 mm", "soil_on": "2026-03-20"}),
    ("canberra", "couch", "shade", {"green_up": "2026-11-04", "soil": "9 °C", "soil_on": "2026-07-21"}),
    ("sydney", "kikuyu", "open", {"soil": "61 °F", "soil_depth": "4 in", "soil_on": "2026-09-01", "green_up": "2026-08-20"}),
    ("atlanta", "couch", "wall", {"soil": "14 °C", "soil_on": "2026-03-20", "last_frost": "2026-04-20"}),
    ("atlanta", "tall-fescue", "open", {"soil": "24 °C", "soil_on": "2026-09-20", "last_frost": "2026-03-01"}),
    ("atlanta", "kentucky-bluegrass", "open", {"green_up": "2026-03-20", "soil": "45 °C", "soil_on": "2026-10-01"}),
]
ASK = """async (folder, cases) => {
    const found = [];
    for (const [place, grass, site, notes, today] of cases) {
        await Swardbook.seen.ready(folder, place);
        const year = Swardbook.seen.year(place, grass, site, notes, today), lines = Swardbook.seen.lines(year, notes);
        found.push({told: year.told.map(each => [each.of, each.days, each.idle]), windows: year.windows.map(each => [each.kind, ...each.usual, ...each.moved]), lines});
    }
    return found;
}"""


def notes_of(kept: dict[str, str]) -> SeenNotes:
    days = {name: date.fromisoformat(kept[name]) if name in kept else None for name in ("soil_on", "green_up", "last_frost")}
    soil_c = read_quantity(kept["soil"], unit("°C")) - 273.15 if "soil" in kept else None
    depth_m = read_quantity(kept["soil_depth"], unit("mm")) if "soil_depth" in kept else None
    return SeenNotes(soil_c, depth_m, days["soil_on"], days["green_up"], days["last_frost"])


def test_page_and_command_line_say_the_same(reader: Callable[..., Reader]) -> None:
    page = reader().open("calendars/canberra/couch.html")
    rules, cases = seasons().rules, []
    for place, grass, site, kept in CASES:
        cases.append([place, grass, site, kept, max(day for name, day in kept.items() if name not in ("soil", "soil_depth"))])
    for (place, grass, site, kept, today), there in zip(cases, ask(page, ASK, "../../assets/seen/", cases), strict=True):
        data = seen_place(seasons(), place)
        here = seen_year(data, grass, site, notes_of(kept), date.fromisoformat(today), rules.seen, rules.soil)
        assert [[each.of, each.idle] for each in here.told] == [[of, idle] for of, _, idle in there["told"]]
        assert all(one.days == other[1] or abs(one.days - other[1]) < 1e-9 for one, other in zip(here.told, there["told"], strict=True))
        assert [[each.kind, *each.usual, *each.moved] for each in here.windows] == there["windows"]
        said = seen_lines(here, data, kept.get("soil", ""), rules.seen, dict(WINDOW_LABELS), us=False)
        lines = there["lines"]
        told = [" ".join(filter(None, pair)) for pair in zip(_shorts(there), lines["why"], strict=True)]
        assert said == [*told, *(f"{each['label']}: {each['words']}" for each in lines["windows"]), *([lines["how"]] if lines["how"] else [])]


def _shorts(there: dict[str, Any]) -> list[str]:
    short = iter(there["lines"]["short"])
    return [next(short) if days is not None else "" for _, days, _ in there["told"]]


def test_a_reading_moves_the_window_stays_and_is_forgotten(reader: Callable[..., Reader]) -> None:
    page = reader(viewport={"width": 360, "height": 740}).open("names.html")
    page.clock.set_fixed_time("2026-09-22T08:00:00")
    page.goto(page.url.replace("names.html", "calendars/sydney/couch.html"))
    seen, slot = page.locator(".sb-seen-here"), page.locator("[data-seen-window=pre_emergent]")
    usual = page.locator("[data-slot=window-renovation]").inner_text()
    expect(slot).to_be_hidden()
    expect(seen.locator("[data-part=reasons]")).to_be_hidden()
    seen.locator("summary", has_text="seen this year").click()

    def keep(**typed: str) -> None:
        for name, value in typed.items():
            seen.locator(f"[data-part={name}]").fill(value)
        seen.get_by_role("button", name="Keep").click()

    problem = seen.locator("[data-part=problem]")
    for wrong, why in (
        ({"soil": "warm"}, "quantity"), ({"soil": "200 °C"}, "No soil under grass"), ({"soil": "17 °C", "soil_on": "2026-12-01"}, "still to come"),
        ({"soil_on": "2021-09-20"}, "more than a year ago"), ({"soil_on": ""}, "Give a day"),
    ):
        keep(**wrong)
        expect(problem).to_contain_text(why)
        expect(slot).to_be_hidden()
    keep(soil="15.5", soil_on="2026-08-30")
    expect(seen).to_contain_text("This spring runs")
    expect(seen.locator("[data-part=lines]")).to_contain_text("Renovate: opens about")
    expect(slot).to_contain_text("instead of 19 August")
    # The usual dates stay where they were, and the reason is one tap away.
    assert page.locator("[data-slot=window-renovation]").inner_text() == usual
    seen.locator("[data-part=reasons] summary").click()
    expect(seen.locator("[data-part=why]")).to_contain_text("You read 15.5 °C on 30 August 2026. Soil here usually has")
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    moved = slot.inner_text()
    page.reload()
    expect(slot).to_have_text(moved)
    # In US units the usual soil is told in theirs.
    page.locator("[data-units-choice=us]").first.evaluate("button => button.click()")
    expect(seen.locator("[data-part=why]")).to_contain_text("°F on that day")
    seen.locator("summary", has_text="seen this year").click()
    seen.locator("[data-part=list] button").click()
    expect(slot).to_be_hidden()
    seen.get_by_role("button", name="Undo").click()
    expect(slot).to_have_text(moved)
    # A year on they are last year's, and move nothing.
    page.clock.set_fixed_time("2027-09-01T08:00:00")
    page.reload()
    expect(seen.locator("[data-part=why]")).to_contain_text("belongs to a half-year that is over")
    expect(slot).to_be_hidden()
    page.clock.set_fixed_time("2026-09-22T08:00:00")
    # A lawn has notes of its own, and the book says on Today and on the job what they move.
    page.evaluate("""() => {
        const id = Swardbook.kept('lawns').add({code: 'TL-1', grass: 'couch', place: 'sydney', site: 'open', seen: {soil: '17 °C', soil_on: '2026-08-30'}});
        Swardbook.lawns.choose(id);
    }""")
    site = page.url.partition("/calendars/")[0]
    for at, words in (("index.html", "This spring runs"), ("lawns.html", "This spring runs"), ("jobs/index.html", "The day of the job lies")):
        page.goto(f"{site}/{at}")
        expect(page.locator(".sb-seen-here [data-part=lines]")).to_contain_text(words)


def test_a_full_device_says_so_and_a_damaged_note_moves_nothing(reader: Callable[..., Reader]) -> None:
    page = reader().open("calendars/canberra/couch.html")
    page.evaluate("""() => Swardbook.kept('seen').add({soil: 'a lot', soil_on: '2026-09-20', green_up: 'soon', last_frost: '2026-02-31'}, 'canberra')""")
    page.reload()
    expect(page.locator("[data-seen-window=renovation]")).to_be_hidden()
    page.evaluate(FULL)
    page.locator(".sb-seen-here summary", has_text="seen this year").click()
    day = page.evaluate("Swardbook.dates.iso(Swardbook.dates.today())")
    page.locator(".sb-seen-here [data-part=soil]").fill("14 °C")
    page.locator(".sb-seen-here [data-part=soil_on]").fill(day)
    page.get_by_role("button", name="Keep", exact=True).click()
    assert page.evaluate("Swardbook.kept('seen').unkept()") == 1

