"""The inspection sheet of the shipped book: on one sheet of paper, reached from the guides, in the data handed out."""

import io
import json
import unicodedata
from collections.abc import Callable
from pathlib import Path

import pytest
from pypdf import PdfReader

from tests.site.reader import Reader


@pytest.mark.parametrize("scripts", [True, False], ids=["with scripts", "without"])
def test_it_prints_on_one_page_with_every_question(reader: Callable[..., Reader], site: Path, scripts: bool) -> None:
    window = reader(viewport={"width": 1280, "height": 900}, java_script_enabled=scripts)
    page = window.open("inspection.html")
    inspection = json.loads((site / "book" / "inspection.json").read_text(encoding="utf-8"))
    if scripts:
        page.locator("[data-question=thatch-depth] .sb-inspection__measure").fill("60 mm")
        page.locator("[data-question=grass-confirmed] input[value=not-sure]").check()
    for paper in ("A4", "Letter"):
        pages = PdfReader(io.BytesIO(page.pdf(format=paper, prefer_css_page_size=True))).pages
        assert len(pages) == 1, paper
        # A printed "fi" may be one sign.
        text = " ".join(unicodedata.normalize("NFKC", pages[0].extract_text()).split())
        for question in inspection["questions"]:
            assert question["ask"] in text, (paper, question["id"])
            assert all(words in text for words in question.get("choices", {}).values()), (paper, question["id"])
        for each in inspection["before_the_day"]:
            assert each["do"] in text, paper
        for each in inspection["photos"]:
            assert each["what"] in text, paper


def test_it_is_found_before_the_plans(reader: Callable[..., Reader]) -> None:
    page = reader().open("renovate/index.html")
    page.locator(".sb-card__link").first.click()
    assert page.locator("h1").inner_text().startswith("Inspection sheet")


@pytest.mark.parametrize(("old", "button", "heading"), [
    ("visit.html", "Open that page", "Inspection sheet"),
    ("calculators/quote.html#v=1&lines=350%2C+95&tax=10+%25", "Open that calculator", "Estimate"),
    ("answers/why-quote-varies.html", "Open that answer", "Why is your price higher than the other one?"),
], ids=["the sheet", "the calculator", "the answer"])  # fmt: skip
def test_an_address_of_before_leads_to_what_is_called_otherwise_now(reader: Callable[..., Reader], old: str, button: str, heading: str) -> None:
    page = reader().open(old)
    page.get_by_role("link", name=button).click()
    assert page.locator("h1").inner_text() == heading
    assert page.url.partition("#")[2] == old.partition("#")[2]
