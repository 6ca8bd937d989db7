"""One book, two sites: the practice's own holds all of it, and the one for clients not a trace of what is private."""

import json
import re
import subprocess
import sys
from collections.abc import Callable, Iterator
from datetime import date
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Browser, Page

from generator.book.book import Book
from generator.book.editions import Edition, edition_for, told_to
from generator.book.fields.private import OPENS, opened_by
from generator.book.records.practice import HandWork, Machine, Practice, PricedOperation, Product
from generator.building.book_to_site import build_site
from generator.building.failed import BuildFailed
from generator.building.target import Target
from generator.checks import check_book
from generator.site.book_site import OWN_COPY, BookSite
from generator.site.frame.render import component_names, private_parts
from tests.editions.planted import NUMBERS, PUBLIC, WORDS, every_text, found_in, planted_book
from tests.site.built_pages import BuiltPage, built_pages
from tests.site.reader import Reader
from tests.site.test_axe import AXE, grave
from tests.site.test_links import dead, external

ROOT = Path(__file__).parents[2]
TODAY = date(2026, 11, 30)
PHONE = {"width": 360, "height": 740}
LINK = "aftercare/after-sweeping.html#v=1&on=2026-11-30&grass=plaingrass&area=240"


@pytest.fixture(scope="module")
def root(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return planted_book(tmp_path_factory.mktemp("planted"))


@pytest.fixture(scope="module")
def sites(root: Path) -> dict[str, Path]:
    """Both sites, made by the command its author types, side by side."""
    command = Path(sys.executable).with_name("swardbook")
    runs = {
        audience: subprocess.Popen([command, "build", "--book", root, "--for", audience], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
        for audience in ("practice", "clients")
    }
    told = {audience: run.communicate()[0] for audience, run in runs.items()}
    assert told == {
        "practice": f"Built {root / 'site' / 'index.html'}\n", "clients": f"Built {root / 'site-for-clients' / 'index.html'}\n",
    }  # Nothing to warn about in either.
    return {"practice": root / "site", "clients": root / "site-for-clients"}


@pytest.fixture(scope="module")
def client_pages(sites: dict[str, Path]) -> dict[str, BuiltPage]:
    return built_pages(sites["clients"])


@pytest.fixture(scope="module")
def book(root: Path) -> Book:
    read, findings = check_book(root)
    assert read is not None, findings
    return read


@pytest.fixture
def client(browser: Browser, sites: dict[str, Path]) -> Iterator[Callable[..., Reader]]:
    made: list[Reader] = []

    def make(**window: Any) -> Reader:
        made.append(Reader(browser, sites["clients"], **window))
        return made[-1]

    yield make
    for each in made:
        each.close()
    assert not [wrong for each in made for wrong in each.wrong]


def test_no_private_value_stands_in_any_byte_of_the_site_for_clients(sites: dict[str, Path]) -> None:
    assert {mark: (NUMBERS | WORDS)[mark] for mark in found_in(sites["clients"])} == {}


def test_every_one_of_them_stands_in_the_practices_own(sites: dict[str, Path]) -> None:
    """So that the test above could fail."""
    found = found_in(sites["practice"])
    assert {mark: where for mark, where in (NUMBERS | WORDS).items() if mark not in found} == {}


def test_what_is_public_stands_in_both(sites: dict[str, Path]) -> None:
    for site in sites.values():
        whole = b"\n".join(every_text(site)).decode(errors="replace")
        assert [each for each in PUBLIC if each not in whole] == []


def test_only_the_practices_copy_says_whose_it_is(sites: dict[str, Path]) -> None:
    """Not on the pages that a practice prints for a client."""
    own = {path for path, page in built_pages(sites["practice"]).items() if OWN_COPY in page.footer}
    assert {"index.html", "about.html", "jobs/index.html"} <= own
    assert not {"aftercare/after-sweeping.html", "answers/how-often-sweep.html"} & own
    whole = b"\n".join(every_text(sites["clients"])).lower()
    assert [word for word in (OWN_COPY.lower().encode(), b"data-private", b"data-doors", b"for clients\"") if word in whole] == []


def test_every_address_in_the_site_for_clients_leads_somewhere(client_pages: dict[str, BuiltPage], sites: dict[str, Path]) -> None:
    faults = {
        f"{page.path}: {address.value}: {wrong}" for page in client_pages.values() for address in page.addresses
        if not external(address) and (wrong := dead(address, page, client_pages, sites["clients"]))
    }
    assert not faults


def test_words_that_led_to_a_private_page_stand_without_a_link(client_pages: dict[str, BuiltPage]) -> None:
    page = client_pages["about.html"]
    assert "What it costs stands on its page. All calculators, the sheet." in " ".join(page.text.split())
    assert {address.value for address in page.addresses if address.tag == "a" and "sheet" not in address.value} >= {"aftercare/after-sweeping.html"}
    assert not [address for address in page.addresses if "pricing" in address.value or "calculators/" in address.value]


def test_what_a_client_was_given_stands_at_the_same_address_in_both(sites: dict[str, Path], client_pages: dict[str, BuiltPage]) -> None:
    """Sheets, and all that is open to clients, bear the address that they have in the practice's own site."""
    assert set(client_pages) < set(built_pages(sites["practice"]))
    kept = {"aftercare/after-sweeping.html", "answers/how-often-sweep.html", "cautions/sore-back.html", "problems/dust-patch.html", "grasses/plaingrass.html",
            "renovate/plaingrass.html", "tasks/sweep.html", "calendars/flatfield/plaingrass.html", "glossary.html", "index.html"}  # fmt: skip
    assert kept <= set(client_pages)
    folders = {path.split("/")[0].removesuffix(".html") for path in client_pages}
    assert not folders & {"jobs", "lawns", "record", "inspection", "plans", "calculators", "pricing", "private"}
    assert "aftercare/maker.html" not in client_pages


def test_no_part_of_the_practices_own_is_shipped_to_clients(sites: dict[str, Path]) -> None:
    assert {"job-planner", "job-money", "today", "client-link", "work-record", "inspection-sheet", "hold-or-go", "lawn-record", "paste"} <= set(private_parts())
    assets = {file.stem for file in (sites["clients"] / "assets").iterdir()}
    assert not assets & (set(private_parts()) | {"jobs", "holds", "record", "inspection", "fill-in"})
    assert [file.name for file in (sites["clients"] / "assets" / "calculators").iterdir()] == ["nutrient.js"]  # It stands in a sheet.


def test_the_gallery_of_parts_ships_with_neither(sites: dict[str, Path]) -> None:
    for site in sites.values():
        assert not [file for file in site.rglob("*") if "gallery" in file.name or file.stem == "components"]
        assert not list((site / "book").glob("components*"))


def test_public_data_for_clients_is_whole_and_holds_only_what_is_open(sites: dict[str, Path]) -> None:
    data = sites["clients"] / "book"
    assert {file.name for file in data.glob("*.json")} >= {"grasses.json", "answers.json", "practice.json", "aftercare.json"}
    assert not [name for name in ("calculators", "renovations", "steps", "holds", "inspection", "record") if (data / f"{name}.json").exists()]
    practice = json.loads((data / "practice.json").read_text(encoding="utf-8"))
    assert practice["products"]["plain-feed"]["nitrogen_percent"] == 20 and "price" not in practice["products"]["plain-feed"]
    assert practice["operations"] == {} and practice["machines"] == {} and "public" not in practice


def test_it_is_said_of_every_field_of_the_practice_whether_clients_may_see_it() -> None:
    """A field that is not marked private is published: a new one has to be decided on, and written down here."""
    seen = {
        kind.__name__: {name for name, field in kind.model_fields.items() if opened_by(field) is None} for kind in (Practice, Product, Machine, PricedOperation, HandWork)
    }
    assert seen.pop("Practice") == {
        "name", "invented", "about", "public", "calendar_name", "public_address", "telephone", "email", "currency", "home_place", "places", "calendar_places", "home_grass", "feed",
        "products", "operations", "book_title", "short_name", "description", "colour", "logo", "favicon", "units", "shared_knowledge", "grasses", "plans", "without",
    }  # fmt: skip
    assert seen.pop("Product") == {
        "name", "nitrogen_percent", "phosphate_percent", "potash_percent", "slow_release_percent", "pack_mass_kg", "pack_volume_l", "full_rate_kg_per_100_m2",
        "for_tasks", "for_grasses",
    }  # fmt: skip
    assert seen.pop("PricedOperation") == set()
    assert {"machines", "hand_work"} == {name for name in ("machines", "hand_work", "products") if opened_by(Practice.model_fields[name])}  # Whole, with all in them.


def test_private_fields_have_something_to_stand_in_their_place() -> None:
    for kind in (Practice, Product, Machine, PricedOperation):
        assert [name for name, field in kind.model_fields.items() if opened_by(field) and field.is_required()] == []


def opening(book: Book, *words: Any) -> Edition:
    return edition_for("clients", book.practice.model_copy(update={"public": words}))


def test_a_word_opens_what_it_says_and_no_more(book: Book) -> None:
    told = told_to(opening(book, "prices"), book).practice
    assert (told.hourly_price, told.products["plain-feed"].price, told.operations["sweep"].minimum_price) == (8191.73, 91739.31, 3917.93)
    assert told.operations["sweep"].setup_minutes is None and told.hand_work == {} and told.machines == {}
    assert told_to(opening(book), book).practice.hourly_price is None


def test_with_every_word_clients_have_every_page_of_the_practice_but_its_home(book: Book) -> None:
    own, opened = BookSite(book, TODAY), BookSite(book, TODAY, edition=opening(book, *OPENS))
    assert opened.pages.keys() == own.pages.keys()
    assert {path for path, page in opened.pages.items() if page.kind != own.pages[path].kind} == {"index.md"}
    assert opened.files.keys() == own.files.keys() - {"assets/seasons/plaingrass--flatfield.js", "assets/seasons/cooler--flatfield.js"}


def test_an_answer_that_says_nothing_but_a_price_stops_the_build_for_clients(tmp_path: Path) -> None:
    """In place of an answer with a hole in it."""
    book = planted_book(tmp_path)
    file = book / "data" / "answers" / "how-often-sweep.yml"
    file.write_text(file.read_text(encoding="utf-8").replace("It is swept {task.sweep.sweeps} times.", '"{practice.minimum_charge} a trip."'), encoding="utf-8")
    with pytest.raises(BuildFailed) as told:
        build_site(book, Target(book / "site-for-clients"), audience="clients")
    assert str(told.value) == (
        "data/answers/how-often-sweep.yml:1:1: what it has to say quotes what clients are not shown; "
        "say it without, or name the word that opens it under 'public' in practice.yml"
    )
    assert not (book / "site-for-clients").exists()


def test_the_readme_names_every_word_that_opens_something() -> None:
    assert re.findall(r"^\| `(\w+)` \|", (ROOT / "README.md").read_text(encoding="utf-8"), re.MULTILINE) == list(OPENS)


def test_private_parts_say_a_word_that_there_is() -> None:
    assert set(private_parts().values()) <= set(OPENS) and set(private_parts()) <= set(component_names())


def test_a_client_on_a_phone_meets_the_practice_and_not_its_menu(client: Callable[..., Reader], client_pages: dict[str, BuiltPage]) -> None:
    """A link as it was sent, at 360 px: whose page it is and the number to ring on the first screen, the sheet below, and search."""
    page = client(viewport=PHONE).open(LINK)
    bar = page.locator(".sb-practice-bar")
    assert bar.inner_text().split("\n") == ["Whole Lawns", "Call 02 5550 0134"]
    assert bar.locator("a").get_attribute("href") == "tel:0255500134"
    assert page.locator(".sb-aftercare__today").is_visible()
    for shown in (bar, page.locator("h1"), page.locator(".sb-aftercare__headline")):
        box = shown.bounding_box()
        assert box is not None and box["y"] >= 0 and box["y"] + box["height"] <= PHONE["height"]
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
    assert page.locator(".sb-lawn-bar").count() == 0 and page.locator("#link").count() == 0
    tabs = page.locator(".md-nav--primary > .md-nav__list > li > a, .md-tabs__link").all_text_contents()
    assert {tab.strip() for tab in tabs} <= {"Home", "Aftercare", "Answers", "Problems", "Cautions", "Grasses", "More"}
    assert grave_after_axe(page) == []
    assert hits(page, "after sweeping")[0] == "aftercare/after-sweeping.html"
    assert hits(page, "how often")[0] == "answers/how-often-sweep.html"
    assert set(hits(page, "calculator sweeping plan inspection record price")) <= set(client_pages)


def test_the_first_page_for_clients_leads_to_what_they_look_for(client: Callable[..., Reader]) -> None:
    page = client(viewport={"width": 1280, "height": 850}, color_scheme="dark").open("index.html")
    assert page.locator("h1").inner_text() == "Looking after your lawn"
    assert page.locator("article a[href^='tel:']").inner_text() == "Call 02 5550 0134"
    cards = page.locator(".sb-card a").all_inner_texts()
    assert cards == ["After sweeping", "A question", "Something looks wrong", "What can hurt somebody", "Your grass", "The year of your lawn",
                     "How a lawn is renovated", "Each job on the lawn", "Words of the trade"]  # fmt: skip
    assert grave_after_axe(page) == []


def grave_after_axe(page: Page) -> list[tuple[str, list[str]]]:
    page.evaluate(AXE.read_text(encoding="utf-8"))
    return grave(page)


def hits(page: Page, asked: str) -> list[str]:
    """Paths of the pages that search finds, the best first."""
    page.evaluate("document.getElementById('__search').checked = true")
    page.fill("input[name=query]", asked)
    found = page.locator("#search-results li a")
    found.first.wait_for()
    page.wait_for_timeout(200)
    return [urlsplit(each).path.split("/site-for-clients/")[1] for each in found.evaluate_all("all => all.map(each => each.href)")]
