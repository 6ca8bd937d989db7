"""No table that we write holds a cell that a spreadsheet would run, whatever an author or a client wrote; numbers stay numbers."""

import csv
import random
import shutil
from datetime import date
from io import StringIO

import pytest
import yaml
from playwright.sync_api import Page

from generator.book.book import Book
from generator.book.lists.shielding import shielded, unshielded
from generator.files.csv_file import csv_text, weeks_csv
from generator.files.job_text import job_csv
from generator.files.round_values import round_csv
from generator.jobs.job import Request
from generator.jobs.lawn_round import LawnJob, LawnVisit, round_of
from generator.jobs.plans_for_grass import AskedJob, job_of
from generator.season.season_cache import SeasonCache
from generator.site.frame.render import SCRIPT, asset_files
from tests.book_folders import WHOLE, load_book
from tests.yaml_files import read_yaml

# What a spreadsheet runs: OWASP, CSV Injection.
RUN = ("=1+1", "@SUM(A1)", "+1", "-1", "\t=1", "\r=1", "\n=1", "\uff1d1+1", "\uff0b1", "\uff0d1", "\uff20A1")
FIRST = tuple(each[0] for each in RUN)
# Text that stands in a job's table; keys of a plan's and a task's file.
PLANTED = ("title", "why", "wait_for", "name", "note", "text", "say", "because", "check", "reason", "stop_when")


def plant(node: object, text: str) -> object:
    if isinstance(node, dict):
        return {key: text if key in PLANTED and isinstance(value, str) else plant(value, text) for key, value in node.items()}
    return [plant(each, text) for each in node] if isinstance(node, list) else node


@pytest.fixture(scope="module", params=("=1+1", "@SUM(A1)", "+1", "-1", "\uff1d1+1"))
def planted(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Book:
    """The whole book with a formula in every such text. Tabs and returns no name may hold: the cells below have those."""
    folder = tmp_path_factory.mktemp("planted") / "book"
    shutil.copytree(WHOLE, folder)
    for kind in ("renovations", "steps", "tasks", "grasses", "places", "calculators"):
        for file in (folder / "data" / kind).glob("*.yml"):
            file.write_text(yaml.safe_dump(plant(read_yaml(file), request.param), allow_unicode=True), encoding="utf-8")
    loaded = load_book(folder)
    assert loaded.book is not None, loaded.findings
    return loaded.book


def rows(text: str) -> list[list[str]]:
    return list(csv.reader(StringIO(text, newline="")))


def is_number(cell: str) -> bool:
    try:
        return float(cell) is not None
    except ValueError:
        return False


def run_by_a_spreadsheet(text: str, numbers: tuple[str, ...]) -> list[str]:
    """Cells that a spreadsheet would run: all that begin so, save for numbers in columns of numbers."""
    names, *others = rows(text)
    return [cell for row in others for name, cell in zip(names, row, strict=True) if cell.startswith(FIRST) and not (name in numbers and is_number(cell))]


def test_the_tables_of_a_job_and_of_a_round_run_nothing(planted: Book) -> None:
    seasons = SeasonCache(planted)
    grass, place = next(iter(planted.grasses)), next(iter(planted.places))
    plan = planted.grasses[grass].renovation
    job = job_of(planted, seasons, AskedJob(plan, grass, place, Request(240.0, date(2026, 10, 12))))
    lawn = {"renovation": plan, "grass": grass, "place": place, "site": "open"}
    visit = LawnVisit("=1", lawn, "visit-1", "2026-10-01", date(2026, 10, 12), tuple(planted.tasks)[:1], 5.0, ())
    table = job_csv(job)
    titles = [row[rows(table)[0].index("title")] for row in rows(table)[1:]]
    assert titles and all(title.startswith("'") for title in titles)
    assert run_by_a_spreadsheet(table, ("day",)) == []
    assert run_by_a_spreadsheet(round_csv(planted, round_of([LawnJob("-1", lawn, job)], [visit])), ("area_m2",)) == []


def test_days_before_the_job_and_frosty_weeks_stay_numbers(planted: Book) -> None:
    """A cell '-14 is text to a spreadsheet, and nobody can add it up."""
    seasons = SeasonCache(planted)
    grass, place = next(iter(planted.grasses)), next(iter(planted.places))
    table = weeks_csv(seasons.season(grass, place), "=1+1")
    names, *weeks = rows(table)
    assert all(is_number(week[names.index(name)]) for week in weeks for name in ("mean_temperature_c", "minimum_temperature_c", "rain_mm"))
    assert {week[-1] for week in weeks} == {"'=1+1"}
    assert csv_text([["from", -14, -3.2]]) == "from,-14,-3.2\r\n"


def test_every_text_in_a_table_is_shielded() -> None:
    assert rows(csv_text([RUN])) == [[f"'{text}" for text in RUN]]


@pytest.mark.parametrize("text", [*RUN, "'=1", "''@x", "'", "", "a=1", " =1", "TL-014", "1-1"])
def test_what_goes_out_comes_back(text: str) -> None:
    assert unshielded(shielded(text)) == text
    assert not shielded(text).startswith(FIRST)
    assert shielded(text) == text or text.lstrip("'").startswith(FIRST)


def test_the_browser_shields_the_same_texts(page: Page) -> None:
    """The record's page writes and reads as the commands do."""
    draw = random.Random(8)
    texts = [*RUN, *("".join(draw.choice("'=+-@\t\r\uff1d\uff0b\uff0d\uff20a1 ,\"") for _ in range(draw.randrange(1, 6))) for _ in range(300))]
    page.goto("about:blank")
    files = asset_files()
    page.add_script_tag(content=files[SCRIPT] + files["assets/work-record.js"])
    written = page.evaluate("texts => Swardbook.recordCsv.write(['a', 'b'], texts.map(text => ({a: text, b: 'x'})))", texts)
    assert rows(written.removeprefix("\ufeff"))[1:] == [[shielded(text), "x"] for text in texts]
