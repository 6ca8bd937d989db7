"""Where a sentence comes from: a short mark for the trade, one line at the foot for what has none, and no mark for a client.

Which sources a page rests on is read from the data files, not from what the book made of them.
"""

import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.site.conftest import ROOT
from tests.yaml_files import read_yaml

UNPUBLISHED = {"common practice", "assumption", "ours"}
FOOT = re.compile(r'<p class="sb-sources-foot".*?</p>', re.DOTALL)
MARK = re.compile(r'sb-source-marks__mark [^>]*>([^<]+)<')
TAG = re.compile(r"<[^>]+>")
FOR_CLIENTS = ("answers", "aftercare")
FOR_THE_TRADE = ("tasks", "cautions", "problems", "grasses")


def sources(node: Any) -> Iterator[str]:
    """Every source under a record, each statement's in turn."""
    if isinstance(node, dict):
        if "source" in node:
            yield from [node["source"]] if isinstance(node["source"], str) else node["source"]
        for value in node.values():
            yield from sources(value)
    elif isinstance(node, list):
        for value in node:
            yield from sources(value)


def records(folder: str) -> dict[str, Any]:
    return {file.stem: read_yaml(file) for file in sorted((ROOT / "data" / folder).glob("*.yml"))}


def page(site: Path, folder: str, id: str) -> str:
    return (site / folder / f"{id}.html").read_text(encoding="utf-8")


def foot(text: str) -> str:
    """The one line at the foot of a page; a page has no second."""
    found = FOOT.findall(text)
    assert len(found) == 1
    return found[0]


def said(html: str) -> str:
    return " ".join(TAG.sub("", html).split())


@pytest.mark.parametrize("folder", FOR_CLIENTS)
def test_a_page_for_a_client_has_no_mark_in_its_text(site: Path, folder: str) -> None:
    files = list((site / folder).glob("*.html"))
    assert len(files) > 10
    for file in files:
        text = file.read_text(encoding="utf-8")
        assert "sb-source-marks" not in text, file.name
        assert "common practice" not in FOOT.sub("", text), file.name


@pytest.mark.parametrize("folder", FOR_CLIENTS)
def test_the_foot_of_a_clients_page_leads_to_every_source_of_its_record(site: Path, folder: str) -> None:
    for id, record in records(folder).items():
        below = foot(page(site, folder, id))
        published = set(sources(record)) - UNPUBLISHED
        assert [each for each in published if f'sources.html#{each}"' not in below] == [], id
        assert not published or said(below).startswith("Sources: "), id


@pytest.mark.parametrize("folder", FOR_THE_TRADE)
def test_common_practice_is_said_once_and_never_as_a_mark(site: Path, folder: str) -> None:
    for id, record in records(folder).items():
        text = page(site, folder, id)
        marks = MARK.findall(text)
        assert "common practice" not in marks, id
        if "common practice" in sources(record):
            below = said(foot(text))
            assert below.count("common practice") == 1, id
            assert below.startswith("What has no mark is " if marks else "What this page says is "), id


def test_a_published_source_keeps_its_mark_where_the_trade_reads(site: Path) -> None:
    for folder in FOR_THE_TRADE:
        for id, record in records(folder).items():
            # What a grass says of renovation stands in its guide.
            text = FOOT.sub("", page(site, folder, id)) + (FOOT.sub("", page(site, "renovate", id)) if folder == "grasses" else "")
            missing = [each for each in set(sources(record)) - UNPUBLISHED if f'sources.html#{each}"' not in text]
            assert missing == [], f"{folder}/{id}"


def test_no_page_has_two_feet(site: Path) -> None:
    counts = {file: len(FOOT.findall(file.read_text(encoding="utf-8"))) for file in site.rglob("*.html")}
    assert sum(counts.values()) > 300  # of some 550 pages; places and lists rest on no sentence of their own
    assert [file.name for file, count in counts.items() if count > 1] == []


def test_a_promise_is_ours_and_no_habit_of_the_trade(site: Path) -> None:
    """What a job costs is up to the practice: no source could stand behind it."""
    below = said(foot(page(site, "answers", "what-does-it-cost")))
    assert below == "What this page says is our own way of working."
    assert set(sources(records("answers")["guarantee"])) == {"ours"}


def test_an_assumption_is_still_called_one(site: Path) -> None:
    """How many weeks each grass takes to recover was chosen by this book, and a client is told so."""
    assert "assumption of this book" in said(foot(page(site, "answers", "how-long-until-green")))
    for id, record in records("grasses").items():
        if "assumption" in sources(record):
            assert "sb-source-marks__mark--assumption" in page(site, "grasses", id), id


@pytest.mark.parametrize("folder", [*FOR_CLIENTS, *FOR_THE_TRADE])
def test_the_data_for_programs_keep_every_source(site: Path, folder: str) -> None:
    told = json.loads((site / "book" / f"{folder}.json").read_text(encoding="utf-8"))["records"]
    for id, record in records(folder).items():
        assert sorted(sources(told[id])) == sorted(sources(record)), id
