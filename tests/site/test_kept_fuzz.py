"""Hostile stored states, drawn by lot: no page breaks or shows a number that is none, every sound row is still there, and everything
unsound stands somewhere byte for byte."""

import json
import random
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from tests.site.tabs import NEVER_SHOWN, Tabs, all_kept, kept, key_of, plant
from tests.site.test_kept_work import BEFORE, KEPT_JOB, LAWN, PAGES, PIECE, TODAY, WORK, YEAR
from tests.site.test_two_tabs import ENTRY

SEED = 20261128
LONG = "long " * 2000
NO_TEXT: list[Any] = [None, 5, [], {}, True]
NO_ID = ["", "<b>", "__proto__", "A B", "x" * 61, *NO_TEXT]
NO_DAY = ["2026-02-31", "2026-13-01", "yesterday", "", 20261216, LONG, *NO_TEXT]
NO_AREA = ["240", -1, 0, 1e308, 1e-300, None, [], {}, True]
# What makes a whole row senseless, field by field, and what spoils a part of it only.
SENSELESS: dict[str, dict[str, list[Any]]] = {
    "jobs": {"area": NO_AREA, "on": [*NO_DAY, "9999-12-31", "0100-01-01"], "plan": NO_ID, "grass": NO_ID, "place": NO_ID, "site": NO_ID},
    "record": {"date": NO_DAY, "lawn": ["Mr Smith", "", LONG, *NO_TEXT], "product": ["", LONG, *NO_TEXT], "work": NO_ID},
    "lawn": {"area": NO_AREA, "hole": [1, None, "true"], "name": ["", LONG, *NO_TEXT], "sizes": [LONG, *NO_TEXT]},
    "lawns": {"code": ["Mr Smith", "", LONG, *NO_TEXT], "grass": NO_ID, "place": NO_ID},
    "holds": {},
    "inspection": {},
}
SPOILT: dict[str, dict[str, list[Any]]] = {
    "jobs": {
        "name": [5, "x" * 41], "done": [7, {"core": "2026-02-31"}, {"<b>": "2026-12-01"}], "put": [[], {"core": None}], "start": ["25:00", 7],
        "rain": [{"2026-12-17": -1}, {"2026-12-17": "8"}, {"soon": 3}, 4], "visit": [{"soil-ph": 5}, {"soil-ph": LONG}], "without": ["core", ["core", 5]],
        "key": ["a b", 5], "typed": [LONG, 5], "money": [[], 7, {"payments": {"p": {"number": 1, "on": TODAY, "amount": 0.5}}}, {"quotes": {"q": {"total": "5"}}}, {"done": "soon"}],
    },
    "record": {"amount": [5, LONG, {}], "remarks": [None, LONG], "grass": ["<b>", 7]},
    "lawn": {},
    "lawns": {
        "site": NO_ID, "area": [5, LONG], "facts": [7, {"slope": 5}, {"<b>": "x"}, {"slope": LONG}], "machines": ["corer", ["corer", 5]], "town": [LONG],
        "pieces": [4, [{**PIECE, "area": -1}], [PIECE, {"name": ""}]], "programme": [
            7, [], {**YEAR, "wanted": 0}, {**YEAR, "start": "soon"}, {**YEAR, "visits": {"visit-1": {"on": "2026-02-31"}}}, {**YEAR, "visits": {"<b>": {"on": TODAY}}},
            {**YEAR, "visits": {"visit-1": {"on": TODAY, "tasks": ["<b>", 5], "done": 7}}}, {**YEAR, "quote": {**YEAR["quote"], "total": "5"}}, {**YEAR, "cuts": 1e9},
        ], "seen": [7, [], {"soil": 14}, {"soil": LONG}, {"soil_on": "2026-02-31"}, {"green_up": "soon"}, {"last_frost": 20260930}],
    },
    "holds": {"at": ["25:00", 6], "all": [{"soil": 5}, {"low": LONG}, 7], "tasks": [{"core": [1]}, {"core": {"label_wind": 3}}]},
    "inspection": {"answers": [{"soil-ph": 5}, {"soil-ph": LONG}, 7], "head": [[], {"lawn": LONG}], "ticks": [3, {"photo-1": True}]},
}  # fmt: skip
NO_JSON = ["{", "null", "[]", "7", '"v"', "{}", '{"v": 1}', '{"v": "1"}', '{"v": 2}', "\ufeff{}", "x" * 20000, "[" * 20000, '{"v": 1, "row": null}', "\ud83c", "undefined"]
NO_ROW_ID = ["__proto__", "constructor ", "A B", "", "x" * 100, "..", "é"]
CHOICES = ["units", "grass", "place", "year", "week-begins", "site", "soil", "job", "unit.granular-feed.area.metric", "unit.area-rectangle.length.us"]
NO_CHOICE = ["", "constructor", "__proto__", "<img src=x onerror=alert(1)>", "9" * 400, "NaN", "null", "-1", "2026.5", "1e999", "{}"]
OTHER_PAGES = ("calculators/granular-feed.html", "index.html", "calendars/sydney/couch.html", "programme.html")
# How an earlier edition kept them in one text; there were no lawns then.
LISTS = {"jobs": "jobs", "record": "entries", "lawn": "pieces", "lawns": ""}
MARK = {"jobs": "name", "record": "product", "lawn": "name", "lawns": "code"}


@dataclass
class State:
    """What is planted, what has to be there afterwards by its mark, and which texts have to stand somewhere as they are."""

    texts: dict[str, str] = field(default_factory=dict)
    sound: dict[str, list[str]] = field(default_factory=dict)
    aside: list[str] = field(default_factory=list)


def spoil(chance: random.Random, row: dict[str, Any], wrong: dict[str, list[Any]]) -> dict[str, Any]:
    name = chance.choice(sorted(wrong))
    return {**row, name: chance.choice(wrong[name])}


def rows_of(chance: random.Random, collection: str, state: State) -> Iterator[tuple[dict[str, Any], bool]]:
    """Rows, and whether all of each is sound; the marks of those that have to be there go into the state."""
    sample = {"jobs": KEPT_JOB, "record": ENTRY, "lawn": PIECE, "lawns": LAWN}[collection]
    for number in range(chance.randint(1, 4)):
        mark = f"M{len(state.sound.setdefault(collection, []))}x{number}"
        row = {**sample, MARK[collection]: mark}
        kind = chance.choice(["sound", "sound", "senseless", "spoilt", "strange"])
        if kind == "senseless":
            yield spoil(chance, row, SENSELESS[collection]), False
            continue
        if kind == "spoilt" and SPOILT[collection]:
            row, kind = spoil(chance, row, {name: each for name, each in SPOILT[collection].items() if name != MARK[collection]}), "part"
        if kind == "strange":
            row = {**row, **chance.choice([{"grass": "moon-grass"}, {"plan": "constructor"}, {"not-known-here": "x"}])} if collection not in ("lawn", "lawns") else {**row, "lying": "x"}
        state.sound[collection].append(mark)
        yield row, kind != "part"


def envelope(chance: random.Random, row: Any) -> str:
    at = chance.choice(["1", "-5", "1e999", '"x"', "null", "[]", "0.5"])
    return f'{{"v": 1, "at": {at}, "stamp": {chance.choice(["7", "null", json.dumps("abc")])}, "seen": {chance.choice(["[]", "5", "[null, {}]"])}, "row": {json.dumps(row)}}}'


def drawn(chance: random.Random, collections: list[str]) -> State:
    state = State()
    for collection in collections:
        key = key_of(collection)
        if chance.random() < 0.2 and collection != "lawns":
            state.texts[key] = text = chance.choice(NO_JSON)
            if text not in ('{"v": 1}', '{"v": 1, "row": null}') or collection != "inspection":  # an empty sheet is a sheet
                state.aside.append(text)
        elif collection in LISTS:
            if LISTS[collection]:
                rows = list(rows_of(chance, collection, state))
                state.texts[key] = text = json.dumps({"v": 1, "chosen": chance.choice([0, -1, "x", 99]), LISTS[collection]: [row for row, _ in rows]})
                state.aside += [] if all(whole for _, whole in rows) else [text]
            for number, (row, whole) in enumerate(rows_of(chance, collection, state)):
                good = chance.random() < 0.8
                state.texts[f"{key}.{'r' + str(number) if good else chance.choice(NO_ROW_ID) + ' ' * number}"] = text = envelope(chance, row)
                if not good:  # no row of the book has such a name
                    state.sound[collection] = [mark for mark in state.sound[collection] if mark != row.get(MARK[collection])]
                state.aside += [] if good and whole else [text]
        else:
            spoilt = chance.random() < 0.6
            row = BEFORE["inspection"] if collection == "inspection" else BEFORE["holds"]["days"][TODAY]
            row = spoil(chance, row, SPOILT[collection]) if spoilt else row
            text = json.dumps({**row, "v": 1} if collection == "inspection" else {"v": 1, "days": {TODAY: row}})
            state.texts[key] = text
            state.aside += [text] if spoilt else []
        if chance.random() < 0.5:
            state.texts[f"{key}.later"] = text = '{"v": 2, "row": {"of": "a later edition"}}'
            state.aside.append(text)
    for name in chance.sample(CHOICES, 4):
        state.texts[f"swardbook.{name}"] = chance.choice(NO_CHOICE)
    return state


def looked_at(page: Page, collection: str, state: State) -> None:
    text = page.locator("body").inner_text()
    assert not [word for word in NEVER_SHOWN if word in text], (collection, state.texts)
    assert page.locator("article img[src=x]").count() == 0
    there = [each.get(MARK.get(collection, "")) for each in kept(page, collection)] if collection in PAGES else []
    wanted = Counter(state.sound.get(collection, []))
    assert not wanted - Counter(there), (collection, state.texts)


def run(browser: Browser, site: Path, states: int, pages: int) -> Counter:
    chance = random.Random(SEED)
    counts: Counter = Counter()
    for number in range(states):
        collections = chance.sample(sorted(PAGES), min(pages, len(PAGES)))
        state = drawn(chance, collections)
        tabs = Tabs(browser, site.as_uri())
        page = tabs.open("404.html")
        plant(page, state.texts)
        paths = [(each, PAGES[each]) for each in collections] + [("", chance.choice(OTHER_PAGES))]
        for collection, path in paths:
            page.goto(f"{tabs.address}/{path}")
            if collection == "jobs":
                page.locator("[data-part=kept] option").first.wait_for(state="attached")
            looked_at(page, collection, state)
        if collections[0] != "jobs":  # whose first job may be another book's
            page.goto(f"{tabs.address}/{PAGES[collections[0]]}")
            work: Callable[[Page], Any] = WORK[collections[0]]
            work(page)
            looked_at(page, collections[0], state)
        texts = set(all_kept(page).values())
        assert [text for text in state.aside if text not in texts] == [], (number, state.texts)
        assert tabs.errors == [], (number, state.texts)
        counts.update(states=1, pages=len(paths), planted=len(state.texts), sound=sum(map(len, state.sound.values())), unsound=len(state.aside))
        tabs.context.close()
    return counts


def test_hostile_states_do_no_harm(browser: Browser, site: Path) -> None:
    counts = run(browser, site, 4, 2)
    assert counts["sound"] and counts["unsound"]


@pytest.mark.soak
def test_hundreds_of_hostile_states_do_no_harm(browser: Browser, site: Path) -> None:
    counts = run(browser, site, 300, 5)
    print("stored states:", dict(counts))
    assert counts["states"] == 300
