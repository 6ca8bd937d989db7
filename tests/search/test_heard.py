"""Words that only help search, as a slip or the name somebody sells a grass by: search hears them, and no reader is shown one."""

import json
import shutil
from pathlib import Path

import pytest
import yaml
from click.testing import CliRunner
from playwright.sync_api import Browser

from generator.book.records import KINDS
from generator.cli import main
from tests.book_folders import BOOKS
from tests.site.reader import Reader
from tests.site.test_search import found, opened
from tests.yaml_files import read_yaml

HEARD = ("misspellings", "asked_as")
SEARCH = "assets/search/book.js"


def plant(data: Path) -> list[str]:
    """Puts a word that stands nowhere else into every record that may have such words, and gives the words."""
    words: list[str] = []

    def planted(record: dict, fields: object) -> None:
        for field in (each for each in HEARD if each in fields):
            words.append(f"qzx{len(words):03d}heard")
            record[field] = [*record.get(field, ()), words[-1]]

    for kind, model in KINDS.items():
        for file in sorted((data / kind).glob("*.yml")):
            record = read_yaml(file)
            planted(record, model.model_fields)
            file.write_text(yaml.safe_dump(record, sort_keys=False), encoding="utf-8")
    glossary = read_yaml(data / "glossary.yml")
    for term in glossary["terms"].values():
        planted(term, HEARD[:1])
    (data / "glossary.yml").write_text(yaml.safe_dump(glossary, sort_keys=False), encoding="utf-8")
    return words


@pytest.fixture(scope="module")
def heard(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, list[str]]:
    """A site of the book of every kind, and the words that were put into it."""
    book = tmp_path_factory.mktemp("heard") / "book"
    shutil.copytree(BOOKS / "whole", book)
    words = plant(book / "data")
    run = CliRunner().invoke(main, ["build", "--book", str(book)])
    assert run.exit_code == 0, run.output
    return book / "site", words


def test_they_stand_in_the_search_and_in_no_page_and_no_public_data(heard: tuple[Path, list[str]]) -> None:
    site, words = heard
    assert len(words) >= 8  # A record of each kind that has them, and a word of the glossary.
    holding = {
        path.relative_to(site).as_posix() for path in site.rglob("*")
        if path.is_file() and b"qzx" in path.read_bytes()
    }
    assert holding == {SEARCH}


def test_they_are_none_of_the_names_that_a_hit_may_show(heard: tuple[Path, list[str]]) -> None:
    site, words = heard
    told = json.loads((site / SEARCH).read_text(encoding="utf-8").removeprefix("Swardbook.search.read(").removesuffix(");\n"))
    assert {word for page in told["pages"] for word in page.get("heard", ())} >= set(words)
    rest = [{key: value for key, value in page.items() if key != "heard"} for page in told["pages"]]
    assert "qzx" not in json.dumps([rest, told["same"]])


def test_a_hit_found_by_one_does_not_show_it(heard: tuple[Path, list[str]], browser: Browser) -> None:
    site, words = heard
    searcher = Reader(browser, site)
    opened(searcher)
    for word in words:
        assert found(searcher, word)
        assert word not in searcher.page.locator(".md-search-result__list").inner_text()
    searcher.close()
