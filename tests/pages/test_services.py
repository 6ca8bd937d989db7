"""Whom to ring: the line of the practice's own country stands with the caution, those of other countries on its page, and nowhere is one
typed twice."""

import re
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner

from generator.cli import main
from generator.site.page_context import PageContext
from generator.site.pages.caution.view import caution_page
from generator.site.pages.names.view import names_page
from tests.book_folders import BOOKS
from tests.our_book import ROOT, seasons
from tests.pages.shipped_book import TODAY

BOOK = seasons().book
CAUTION = "buried-services"


@pytest.fixture(scope="module")
def pages(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site of the book of every kind, whose services.yml has a country that the book knows nowhere else."""
    book = tmp_path_factory.mktemp("services") / "book"
    shutil.copytree(BOOKS / "whole", book)
    run = CliRunner().invoke(main, ["build", "--book", str(book)])
    assert run.exit_code == 0, run.output
    return book / "site"


def text_of(html: str) -> str:
    return " ".join(re.sub(r"<[^>]+>", " ", html).split())


def test_a_caution_shows_the_number_of_the_practices_own_country_and_a_tap_rings_it(pages: Path) -> None:
    page = (pages / "tasks/sweep.html").read_text(encoding="utf-8")
    box = page[page.index('class="sb-caution__lines"'):].partition("</p>")[0]
    assert '<a href="tel:5550100">555 0100</a>' in box and "555 0101" not in box
    assert 'href="../cautions/sore-back.html#lines"' in box


def test_its_own_page_has_every_country_the_home_country_first(pages: Path) -> None:
    page = text_of((pages / "cautions/sore-back.html").read_text(encoding="utf-8").partition('id="lines"')[2])
    assert page.index("Australia 555 0100 , The made-up helpline.") < page.index("Ireland +353 555 0101 , The other helpline. By day only.")


def test_a_country_more_is_its_entry_and_its_lines(pages: Path) -> None:
    """Ireland is named in countries.yml of that book alone, and has lines; the caution, the expert and the sources show them."""
    files = [path for path in (BOOKS / "whole/data").rglob("*.yml") if "Ireland" in path.read_text(encoding="utf-8")]
    assert [path.name for path in files] == ["countries.yml"]
    assert all("Ireland" in (pages / path).read_text(encoding="utf-8") for path in ("cautions/sore-back.html", "problems/index.html"))
    assert "who to ring" in (pages / "sources.html").read_text(encoding="utf-8")


def test_ireland_has_the_lines_that_a_public_body_gives_and_no_other() -> None:
    lines = BOOK.services.countries["IE"].lines
    assert (lines["emergency"].number, lines["poisons"].number) == ("112", "01 809 2166")
    assert "animal-poisons" not in lines and "gas" not in lines


def test_a_country_without_a_name_for_anything_is_no_empty_column() -> None:
    context = names_page(BOOK, PageContext(BOOK, "names", TODAY)).context
    assert "Ireland" not in context["countries"] and "Britain" in context["countries"]
    assert all(len(row["by_country"]) == len(context["countries"]) for group in context["groups"] for row in group["rows"])


@pytest.mark.parametrize("code", ["AU", "NZ", "ZA", "US", "GB"])
def test_our_book_has_whom_to_ring_about_poison_and_pipes_in_each_country_of_its_places(code: str) -> None:
    lines = BOOK.services.countries[code].lines
    assert {"poisons", "animal-poisons", "locating"} <= set(lines)
    assert lines["poisons"].number


def test_our_cautions_on_chemicals_and_pipes_show_them() -> None:
    shown = {
        id: [kind["name"] for kind in caution_page(BOOK, id, PageContext(BOOK, f"cautions/{id}", TODAY)).context["lines"]]
        for id in ("chemical-label", CAUTION)
    }
    assert {"The poisons line", "The animal poisons line"} <= set(shown["chemical-label"])
    assert "The locating service" in shown[CAUTION]


def test_no_other_text_of_the_book_types_a_name_or_a_number_of_theirs() -> None:
    lines = [line for country in BOOK.services.countries.values() for line in country.lines.values() if line.source != "common practice"]
    typed = {word for line in lines for word in (line.name, line.number) if word and len(word) > 3}
    files = [
        *(ROOT / "data").rglob("*.yml"), *(ROOT / "content").glob("*.md"), *(ROOT / "generator/site").rglob("*.j2"),
        *(ROOT / "generator/site").rglob("*.py"),
    ]
    texts = {str(path): path.read_text(encoding="utf-8") for path in files if path.name not in ("services.yml", "sources.yml")}
    assert len(typed) > 10
    assert not {(name, word) for name, text in texts.items() for word in typed if re.search(rf"\b{re.escape(word)}\b", text)}
