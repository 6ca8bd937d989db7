"""Texts as people of a country say them: names, seasons, dates and the figures that a sentence holds; in Python and in the browser alike."""

import json
import re
from datetime import date
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from generator.site.frame.render import LOCAL_SCRIPT, SCRIPT, asset_files
from generator.site.year.year_files import year_calendar
from generator.words.figures import US_TWIN, converted, range_words
from generator.words.local_words import local_words
from generator.words.typed_figures import in_us_units
from tests.our_book import ROOT, book, seasons

TEXTS = {
    # Names: USDA PLANTS has bermudagrass for Cynodon dactylon and St. Augustine grass for Stenotaphrum secundatum.
    "Couch and buffalo grass": "Bermudagrass and St. Augustinegrass",
    "hybrid couch as hard as common couch": "hybrid bermudagrass as hard as common bermudagrass",
    "No couch in buffalo, and no saltwater couch": "No bermudagrass in St. Augustinegrass, and no seashore paspalum",
    # Another plant, a botanical name, an address, an id and a person are no grass and no season.
    "English couch, Zoysia japonica, American buffalograss": "English couch, Zoysia japonica, American buffalograss",
    "https://book.example/grasses/couch.html#grass=buffalo": "https://book.example/grasses/couch.html#grass=buffalo",
    "For Autumn Reed": "For Autumn Reed",
    "Autumn is best; an autumn feed": "Fall is best; a fall feed",
    # Dates.
    "From 3 September to 5 October 2026": "From September 3 to October 5, 2026",
    "Mon 12 Oct 2026, 12 to 18 October": "Mon, Oct 12, 2026, October 12 to 18",
    # 25.4 mm are an inch, 0 °C are 32 °F, 1 °C of difference is 1.8 °F; 100 m2 are 1076 ft2; a US gallon is 3.785 L.
    "Blades 25 mm apart, 5 to 10 mm deep": "Blades 1 in apart, 0.2 to ⅜ in deep",
    "between −6 and −9 °C, colder by 5 °C": "between 21 and 15.8 °F, colder by 9 °F",
    "31 °C (88 °F), then 88 °F (31 °C)": "88 °F, then 88 °F",
    "2 kg/100 m2 on 100 m2 takes 20 litres": "4.1 lb/1000 ft² on 1 076 ft² takes 5.3 US gal",
    "type g/m2, kg/100 m2 or 3 L/min": "type g/m2, kg/100 m2 or 0.79 US gal/min",
    "One of 12 months, 14 days, 120 °C day, 50 %": "One of 12 months, 14 days, 120 °C day, 50 %",
}


@pytest.fixture(scope="module")
def told_in_browser(browser: Browser, tmp_path_factory: pytest.TempPathFactory):
    """The script's answers for a list of texts, as a reader in a country gets them."""
    folder = tmp_path_factory.mktemp("told")
    for name, path in (("book.js", SCRIPT), ("local.js", LOCAL_SCRIPT)):
        (folder / name).write_text(asset_files(book())[path], encoding="utf-8")
    scripts = "".join(f'<script src="{name}" defer></script>' for name in ("book.js", "local.js"))
    (folder / "page.html").write_text(f'<!doctype html><meta charset="utf-8">{scripts}', encoding="utf-8")
    context = browser.new_context(offline=True)
    page = context.new_page()
    page.goto(Path(folder / "page.html").as_uri())

    def told(country: str, texts: list[str]) -> list[str]:
        page.evaluate("country => Swardbook.preferences.set('country', country)", country)
        return json.loads(page.evaluate("texts => JSON.stringify(texts.map(Swardbook.told))", texts))

    yield told
    context.close()


@pytest.mark.parametrize("text", TEXTS)
def test_a_text_as_an_american_reads_it(text):
    assert local_words(book(), "US").told(text) == TEXTS[text]


def test_the_browser_says_the_same_in_each_country(told_in_browser):
    for country in book().countries:
        words = local_words(book(), country)
        texts = [*TEXTS, *(grass.summary for grass in book().grasses.values()), *(name for grass in book().grasses.values() for name in (grass.name, f"{grass.name} grass"))]
        assert told_in_browser(country, texts) == [words.told(text) for text in texts]


def test_the_browser_rounds_a_figure_as_a_pair_is_rounded(told_in_browser):
    """A pair is what a record's figure prints as; a typed one beside it has to read alike."""
    values = ("0.05", "0.3", "1", "2.5", "3.175", "5", "12.7", "20", "25", "38", "63.5", "100", "1250", "20500")
    spelt = [unit for unit in US_TWIN if unit not in ("100 m2", "K", "°C difference")]
    texts = [f"{value} {unit}" for value in values for unit in spelt]
    expected = [range_words(*[converted(float(value), unit, US_TWIN[unit])] * 2, US_TWIN[unit]) for value in values for unit in spelt]
    assert told_in_browser("US", texts) == expected == [in_us_units(text) for text in texts]


def test_in_britain_couch_is_bermuda_grass_for_couch_is_a_weed_there():
    """Couch is Elymus repens in Britain (Kew); the book's couch is Bermuda grass."""
    told = local_words(book(), "GB").told("Core couch in autumn, on 3 September, 25 mm apart. English couch is a weed.")
    assert told == "Core Bermuda grass in autumn, on 3 September, 25 mm apart. English couch is a weed."


def test_a_country_whose_people_know_the_books_name_keeps_it():
    """New Zealand and Australia both say couch and buffalo."""
    for country in ("AU", "NZ"):
        assert local_words(book(), country).told("Couch, buffalo and kikuyu in autumn") == "Couch, buffalo and kikuyu in autumn"


def test_a_calendar_file_for_a_place_in_the_united_states_is_in_its_words():
    text = year_calendar(seasons(), "couch", "atlanta", date(2026, 9, 3)).decode().replace("\r\n ", "")
    read = [line for line in text.splitlines() if line.startswith(("SUMMARY", "DESCRIPTION", "NAME"))]
    assert any("(Bermudagrass)" in line for line in read)
    assert not [line for line in read if re.search("[Cc]ouch|[Aa]utumn|°C| mm", line)]


def test_what_a_country_says_for_a_phrase_is_a_phrase_of_the_book() -> None:
    """A text that is written anew would leave its American words behind, unseen."""
    files = [*ROOT.glob("data/**/*.yml"), *ROOT.glob("content/**/*.md")]
    texts = " ".join(" ".join(file.read_text(encoding="utf-8").split()) for file in files if file.name != "countries.yml").casefold()
    assert [word for country in book().countries.values() for word in country.words if word.casefold() not in texts] == []
