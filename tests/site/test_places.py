"""A place that the practice does not offer has one light page, is found, and stands in no choice; the list of places holds them all."""

import json
import re
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any
from urllib.parse import urldefrag, urljoin

import pytest
from playwright.sync_api import expect

from generator.book.book import Book
from generator.book.records.place import Place
from generator.season.season_cache import SeasonCache
from generator.site.book_site import BookSite
from generator.site.pages.other_place.view import distance_km
from tests.our_book import book, seasons
from tests.pages.shipped_book import TODAY
from tests.site.built_pages import built_pages
from tests.site.reader import Reader
from tests.site.test_search import opened

OTHERS = sorted(book().other_places)
ANSWERS = "text => Swardbook.search.ask(text).slice(0, 5).map(find => find.page.path)"


def test_the_demo_offers_34_of_133_places() -> None:
    assert (len(book().offered_places), len(OTHERS), len(book().places)) == (34, 99, 133)


def test_a_place_not_offered_has_one_page_and_no_other_file(site: Path) -> None:
    """Search and the data of the book hold it besides, and the list of places, which is a page of its own."""
    names = [file.relative_to(site).as_posix() for file in site.rglob("*") if file.is_file()]
    assert [name for name in names if re.search(r"(^|[/.-])phoenix([/.-]|$)", name)] == ["places/phoenix.html"]
    assert all((site / "places" / f"{id}.html").is_file() for id in OTHERS)


def test_no_page_but_the_list_of_places_leads_to_one(site: Path) -> None:
    leading = {
        page.path for page in built_pages(site).values() for address in page.addresses if address.rel != "canonical"
        if (match := re.search(r"(?:^|/)places/([a-z0-9-]+)\.html|^([a-z0-9-]+)\.html", address.value))
        and (match[1] or (page.path.startswith("places/") and match[2])) in OTHERS
    }  # fmt: skip
    assert leading == {"places/index.html"}


def test_its_page_says_how_to_have_it_in_full_and_which_offered_place_is_nearest(reader: Callable[..., Reader]) -> None:
    page = reader().open("places/dublin.html")
    text = page.locator(".md-content").inner_text()
    assert "does not offer this place" in text and "1991 to 2020" in text and "Creative Commons Attribution 4.0" in text
    expect(page.locator("#in-full + p")).to_contain_text("Add dublin to places: in data/practice.yml")
    page.get_by_role("link", name="Sheffield").first.click()
    expect(page.locator("h1")).to_have_text("Sheffield")


def test_its_table_has_the_windows_of_every_grass_as_the_command_gives_them(site: Path) -> None:
    rows = dict(re.findall(r'<tr id="([a-z-]+)">(.*?)</tr>', (site / "places/dublin.html").read_text(encoding="utf-8"), re.DOTALL))
    assert set(rows) == set(book().grasses)
    ours = SeasonCache(book())
    for grass, row in rows.items():
        windows = ours.season(grass, "dublin").renovation.windows
        assert row.count("best ") >= len(windows), grass
        assert windows or "None" in row, grass
    assert "best " in rows["tall-fescue"]
    assert "little growth here" in rows["zoysia"] and "little growth here" not in rows["tall-fescue"]


def test_a_grass_that_is_a_weed_by_law_says_so_in_its_row(site: Path) -> None:
    """7 CFR 360.200: kikuyu in the United States, in full at Chicago and in short at Logan; couch by Utah's rule R68-9."""
    rows = dict(re.findall(r'<tr id="([a-z-]+)">(.*?)</tr>', (site / "places/logan-ut.html").read_text(encoding="utf-8"), re.DOTALL))
    assert {id for id, row in rows.items() if "weed by law" in row} == {"kikuyu", "couch"}
    whole = (site / "places/chicago.html").read_text(encoding="utf-8")
    assert whole.count("A weed by law here.") == 1 and "A federal noxious weed" in whole
    assert "by law" not in (site / "places/sydney.html").read_text(encoding="utf-8")


def test_a_grass_without_a_window_says_why_in_few_words_and_in_full(site: Path) -> None:
    html = (site / "places/eskdalemuir.html").read_text(encoding="utf-8")
    [row] = re.findall(r'<tr id="blue-couch">.*?</tr>', html, re.DOTALL)
    assert "None: closes too slowly." in row and "ground-frost night" in row


@pytest.mark.parametrize(("asked", "page"), [
    ("phoenix", "places/phoenix.html"), ("bemidji", "places/bemidji.html"), ("dublin", "places/dublin.html"),
    ("lawn in las vegas", "places/las-vegas.html"), ("beltsville", "places/college-park.html"), ("nevada", "places/las-vegas.html"),
    ("northern ireland", "places/armagh.html"),
])  # fmt: skip
def test_it_is_found_by_its_name_its_station_and_its_region(reader: Callable[..., Reader], asked: str, page: str) -> None:
    assert page in opened(reader()).evaluate(ANSWERS, asked)[:3]


def test_no_choice_of_a_place_has_it(reader: Callable[..., Reader], site: Path) -> None:
    page = reader().open("jobs/index.html")
    choices = page.locator("select").evaluate_all("all => all.flatMap(each => Array.from(each.options).map(option => option.value))")
    assert {"canberra", "hobart"} <= set(choices) and not set(choices) & set(OTHERS)
    scripts = [file for file in site.glob("assets/**/*.js") if "search" not in file.parts]
    assert [file.name for file in scripts if re.search(r'"(phoenix|dublin|bemidji)"', file.read_text(encoding="utf-8"))] == []


def test_the_list_has_every_place_under_its_country_and_region_closed(reader: Callable[..., Reader]) -> None:
    page = reader(viewport={"width": 360, "height": 800}).open("places/index.html")
    assert sorted(page.locator("li[data-place]").evaluate_all("all => all.map(each => each.dataset.place)")) == sorted(book().places)
    assert page.locator("li[data-place]:visible").count() == 0
    assert page.evaluate("document.documentElement.scrollHeight") < 1200
    page.locator("#us > summary").click()
    page.get_by_text("Arizona").click()
    page.get_by_role("link", name="Tucson").click()
    expect(page.locator("h1")).to_have_text("Tucson")


def test_distances_are_those_along_the_ground() -> None:
    """Heathrow to Dublin airport is 449 km, as airlines give the great circle."""
    assert distance_km(book().places["london-heathrow"], book().places["dublin"]) == pytest.approx(449, abs=2)


def offering(*places: str) -> Book:
    """Our book as a practice in the first of some places would have it."""
    ours = book()
    practice = ours.practice.model_copy(update={"places": places, "home_place": places[0], "calendar_places": None})
    return replace(ours, practice=practice)


@pytest.mark.soak
def test_a_book_that_offers_one_place_leads_nowhere_that_is_not_there() -> None:
    site = BookSite(offering("canberra"), TODAY)
    pages: dict[str, Any] = {f"{page.path}.html": site.html(page)[0] for page in site.pages.values()}
    there = {*pages, *site.files, "methods.html", "assets/search/book.js"}
    assert "calendars/canberra/couch.html" in there and not any(path.startswith("calendars/sydney") for path in there)
    assert {path for path in there if path.startswith("book/seasons/")} == {f"book/seasons/canberra/{id}.json" for id in book().grasses}
    dead = {
        (path, target) for path, html in pages.items() for link in re.findall(r'(?:href|src)="([^"]+)"', html)
        if not re.match(r"[a-z]+:|#", link) and (target := urldefrag(urljoin(path, link.partition("?")[0]))[0]) not in there
    }  # fmt: skip
    assert dead == set()
    assert json.loads(site.files["book/practice.json"])["places"] == ["canberra"]


def test_a_practice_that_names_no_places_offers_all() -> None:
    every = replace(book(), practice=book().practice.model_copy(update={"places": None}))
    assert list(every.offered_places) == list(book().places) and every.other_places == {}
    assert set(seasons().calendar_places) < set(book().offered_places)


def test_every_place_not_offered_has_some_way_to_the_nearest(site: Path) -> None:
    def nearest(place: Place) -> str:
        return min(book().offered_places, key=lambda id: distance_km(place, book().places[id]))

    for id in OTHERS:
        assert f'href="../places/{nearest(book().places[id])}.html"' in (site / f"places/{id}.html").read_text(encoding="utf-8"), id
