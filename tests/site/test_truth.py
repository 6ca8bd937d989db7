"""What the book owes its reader in the open: sources at the figures, thanks to the owners of data, and what is invented."""

import json
import re
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest

from generator.book.records import KINDS, SINGULAR
from tests.our_book import book
from tests.site.built_pages import VOID, built_pages

INVENTED = "an invented practice. Its people, clients, products and prices do not exist."
# As their owners word them: WMO normals at NCEI, the Australian bureau, the Met Office under the Open Government Licence, the Irish
# service under a Creative Commons one, and NOAA's monthly summaries.
ATTRIBUTIONS = (
    "WMO Climatological Standard Normals for 1991-2020",
    "Commonwealth of Australia, Bureau of Meteorology",
    "Contains Met Office data",
    "Copyright Met Éireann. Source met.ie.",
    "Global Summary of the Month (GSOM)",
)
# Works of the United States government, which asks for no such line: NOAA's daily record and its normals, and NASA's rain.
ASK_FOR_NOTHING = ("ghcn-power-auckland", "noaa-normals-1981-2010")
# What the foot of a page says of sentences without a mark.
UNMARKED = "What has no mark is "
# So much of a product on so much ground, as a label would print it.
PRODUCT_RATE = re.compile(r"\d\s*(mL|L|g|kg|oz|fl oz|lb|pt|qt|gal)\s*(/|per )\s*(ha|acre|ac\b|hectare|100 m|1,?000 ft|m²|m2)")
PAGES_ABOUT_PESTICIDES = (
    "tasks/spray-out.html", "tasks/pre-emergent.html", "tasks/scout.html", "aftercare/after-weed-removal.html", "cautions/chemical-label.html",
    "cautions/licensing.html", "cautions/re-entry.html", "cautions/spray-drift.html",
)  # fmt: skip


class Rows(HTMLParser):
    """The parts of a page with a given class: how many, and how many hold a source mark."""

    def __init__(self, css_class: str) -> None:
        super().__init__()
        self.css_class = css_class
        self.marked: list[bool] = []
        self.depth = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        classes = (dict(attrs).get("class") or "").split()
        if self.depth:
            self.depth += tag not in VOID
            if any(each.startswith("sb-source-marks__mark") for each in classes):
                self.marked[-1] = True
        elif self.css_class in classes:
            self.depth = 1
            self.marked.append(False)

    def handle_endtag(self, tag: str) -> None:
        if self.depth and tag not in VOID:
            self.depth -= 1


def marked_rows(file: Path, css_class: str) -> list[bool]:
    rows = Rows(css_class)
    rows.feed(file.read_text(encoding="utf-8"))
    return rows.marked


def paths(site: Path, folder: str) -> list[Path]:
    return [file for file in sorted((site / folder).rglob("*.html")) if file.name != "index.html"]


def data(site: Path) -> dict[str, Any]:
    """Every JSON file of the book, by its path; NaN and Infinity are no JSON and fail here."""

    def refuse(word: str) -> None:
        raise AssertionError(f"{word} is not JSON")

    return {
        file.relative_to(site).as_posix(): json.loads(file.read_text(encoding="utf-8"), parse_constant=refuse)
        for file in sorted((site / "book").rglob("*.json"))
    }


def of_grasses(site: Path, folder: str) -> list[Path]:
    """A page for each grass; the key that names them, and pages of grasses that have left the book, stand beside."""
    ids = json.loads((site / "book/grasses.json").read_text(encoding="utf-8"))["records"]
    found = [file for file in paths(site, folder) if file.stem in ids]
    assert len(found) >= 14
    return found


def test_every_figure_of_a_grass_names_its_source(site: Path) -> None:
    for file in of_grasses(site, "grasses"):
        rows = marked_rows(file, "sb-facts__row")
        assert len(rows) >= 5, file.name
        assert all(rows) or UNMARKED in file.read_text(encoding="utf-8"), file.name


def test_every_statement_about_a_grass_names_its_source(site: Path) -> None:
    for file in [*of_grasses(site, "grasses"), *of_grasses(site, "renovate")]:
        text = file.read_text(encoding="utf-8")
        never = text.split('<h2 id="never">')[1].split("<h2")[0]
        assert never.count("<li>") > 0, file.name
        assert never.count("<li>") == never.count('class="sb-source-marks"') or UNMARKED in text, file.name


def test_every_page_says_what_is_invented(site: Path) -> None:
    silent = [page.path for page in built_pages(site).values() if INVENTED not in page.footer]
    assert not silent


def asks_for_nothing(path: str) -> bool:
    """For the page or the file of a place."""
    places = [id for part in Path(path).parts if (id := part.partition(".")[0]) in book().places]
    return any(book().places[id].normals.source in ASK_FOR_NOTHING for id in places)


def test_climate_pages_thank_the_owners_of_their_data(site: Path) -> None:
    climate = [
        page for page in built_pages(site).values()
        if page.path.startswith(("places/", "calendars/")) and not page.path.endswith("index.html") and not asks_for_nothing(page.path)
    ]  # fmt: skip
    assert len(climate) > 150  # 74 of the 133 places, and 15 grasses at 6 of them
    assert not [page.path for page in climate if not any(each in page.footer for each in ATTRIBUTIONS)]


@pytest.mark.parametrize(
    ("place", "owner"), [("london-heathrow", ATTRIBUTIONS[2]), ("sydney", ATTRIBUTIONS[1]), ("chicago", ATTRIBUTIONS[0])],
)
def test_each_owner_is_named_where_their_figures_are(site: Path, place: str, owner: str) -> None:
    assert owner in built_pages(site)[f"places/{place}.html"].footer
    assert owner in " ".join(data(site)[f"book/seasons/{place}/couch.json"]["attribution"])


@pytest.mark.parametrize(
    ("place", "owner"),
    [("dublin", ATTRIBUTIONS[3]), ("raleigh", ATTRIBUTIONS[4]), ("cambridge", ATTRIBUTIONS[2]), ("newcastle", ATTRIBUTIONS[1])],
)
def test_each_owner_is_named_on_the_light_pages_too(site: Path, place: str, owner: str) -> None:
    assert owner in built_pages(site)[f"places/{place}.html"].footer


def test_the_data_of_the_book_carries_the_thanks(site: Path) -> None:
    files = data(site)
    for name in ("book/book.json", "book/places.json"):
        assert all(owner in " ".join(files[name]["attribution"]) for owner in ATTRIBUTIONS), name
    seasons = {name: content for name, content in files.items() if name.startswith("book/seasons/") and not asks_for_nothing(name)}
    assert not [name for name, content in seasons.items() if not content["attribution"]]


def test_the_data_says_that_the_practice_is_invented(site: Path) -> None:
    assert data(site)["book/book.json"]["invented"] is True


@pytest.mark.parametrize("kind", KINDS)
def test_each_record_of_the_data_fits_its_schema(site: Path, kind: str) -> None:
    files = data(site)
    schema = files[f"book/schema/{SINGULAR[kind]}.schema.json"]
    records = files[f"book/{kind}.json"]["records"]
    assert len(records) == files["book/book.json"]["kinds"][kind] > 0
    for id, record in records.items():
        KINDS[kind].model_validate_json(json.dumps(record))
        assert set(record) <= set(schema["properties"]), id
        assert set(schema["else"]["required"]) <= set(record), id


def test_a_season_stands_in_the_data_for_each_grass_and_place(site: Path) -> None:
    files = data(site)
    wanted = {
        f"book/seasons/{place}/{grass}.json"
        for place in files["book/practice.json"]["places"] for grass in files["book/grasses.json"]["records"]
    }  # fmt: skip
    assert wanted == {name for name in files if name.startswith("book/seasons/")}


def test_no_page_about_pesticides_gives_a_rate(site: Path) -> None:
    """The label does. (On other pages feed and seed have rates, and those are not pesticides.)"""
    pages = built_pages(site)
    found = {path: match[0] for path in PAGES_ABOUT_PESTICIDES if (match := PRODUCT_RATE.search(pages[path].text))}
    assert not found


def test_the_search_for_rates_would_find_one() -> None:
    assert PRODUCT_RATE.search("spray 30 mL/100 m² of it")
    assert PRODUCT_RATE.search("at 2 L per hectare")


def test_a_label_rate_is_never_filled_in(site: Path) -> None:
    """Wherever a field asks for the rate on the label, the page has it empty, in metric and in US units."""
    field = re.compile(r'<div class="sb-calculator__field" data-input="label_rate".*?<input[^>]*>', re.DOTALL)
    fields = [match for page in built_pages(site) for match in field.findall((site / page).read_text(encoding="utf-8"))]
    assert fields
    for each in fields:
        assert 'data-metric=""' in each and 'data-us=""' in each
        assert re.search(r'<input[^>]*value=""', each)
