"""Every name of a grass, in every country, brings up its page: what a reader in Durban or Dallas types first."""

from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.site.reader import Reader
from tests.site.test_search import ANSWERS, opened
from tests.yaml_files import read_yaml

ROOT = Path(__file__).parents[2]


def spellings(misspelt: bool) -> dict[str, set[str]]:
    """Name -> the grasses that go by it, as the YAML files have them."""
    names: dict[str, set[str]] = defaultdict(set)
    for file in sorted((ROOT / "data" / "grasses").glob("*.yml")):
        grass = read_yaml(file)
        if misspelt:
            listed = grass.get("misspellings", [])
        else:
            listed = [name for country in grass["names"].values() for name in country]
        for name in listed:
            names[name].add(file.stem)
    return dict(names)


@pytest.fixture(scope="module")
def searcher(browser: Browser, site: Path) -> Iterator[Reader]:
    reader = Reader(browser, site)
    opened(reader)
    yield reader
    reader.close()
    assert not reader.wrong


def lost(searcher: Reader, names: dict[str, set[str]]) -> dict[str, list[str]]:
    """Names whose grass is not among the first five hits, which is what a screen holds, with what came instead."""
    answers = dict(zip(names, searcher.page.evaluate(ANSWERS, list(names)), strict=True))
    return {
        name: hits for name, hits in answers.items()
        if not {f"{folder}/{grass}.html" for grass in names[name] for folder in ("grasses", "renovate")} & set(hits)
    }


def test_every_name_finds_its_grass(searcher: Reader) -> None:
    names = spellings(misspelt=False)
    assert len(names) > 80
    assert not lost(searcher, names)


@pytest.mark.soak
def test_every_listed_misspelling_finds_its_grass(searcher: Reader) -> None:
    assert not lost(searcher, spellings(misspelt=True))
